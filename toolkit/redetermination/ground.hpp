#pragma once
// What everybody who redetermines the specimens of one run shares: made once, never changed, so
// that threads may look at it together.  Inner header of redetermination.

#include <vector>

#include "keydrift/redetermination/judge.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {

struct RedeterminationGround {
  RedeterminationGround(Edition const& an_old_edition, KeyGraph const& old_graph,
                        Edition const& a_new_edition, KeyGraph const& new_graph,
                        Collation const& collation, Lexicon const& lexicon,
                        ParentTable const& parents, RedetermineOptions the_options)
      : old_edition{an_old_edition},
        new_edition{a_new_edition},
        options{the_options},
        old_names{old_edition, parents},
        new_names{new_edition, parents},
        space{std::vector<Edition const*>{&old_edition, &new_edition}, lexicon},
        old_key{old_edition, old_graph, old_names, space},
        new_key{new_edition, new_graph, new_names, space},
        editions{options.citations, old_edition.front, new_edition.front},
        judge{{.old_key = &old_key, .new_key = &new_key, .collation = &collation}} {}
  RedeterminationGround(RedeterminationGround const&) = delete;
  RedeterminationGround& operator=(RedeterminationGround const&) = delete;

  Edition const& old_edition;
  Edition const& new_edition;
  RedetermineOptions options;
  NameIndex old_names;
  NameIndex new_names;
  CharacterSpace space;
  CompiledKey old_key;
  CompiledKey new_key;
  EditionsUsed editions;  // to be copied: of() remembers
  Judge judge;
};

}  // namespace keydrift
