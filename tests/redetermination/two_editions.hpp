#pragma once
// Two editions ready for judging, with everything that points into them.

#include <array>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "edition_builder.hpp"
#include "keydrift/characters/space.hpp"
#include "keydrift/redetermination/judge.hpp"
#include "keydrift/taxa/concepts.hpp"

namespace keydrift::test {

class TwoEditions {
 public:
  TwoEditions(Edition old_one, Edition new_one, Lexicon a_lexicon = {}, ConceptMap map = {})
      : old_edition{std::move(old_one)},
        new_edition{std::move(new_one)},
        lexicon{std::move(a_lexicon)},
        old_graph{old_edition},
        new_graph{new_edition},
        old_names{old_edition, parents},
        new_names{new_edition, parents},
        space{std::array<Edition const*, 2>{&old_edition, &new_edition}, lexicon},
        old_key{old_edition, old_graph, old_names, space},
        new_key{new_edition, new_graph, new_names, space},
        judge{{.old_key = &old_key, .new_key = &new_key, .collation = &collation}} {
    collation.taxa_matching = match_taxa(old_edition, new_edition, &map);
  }
  TwoEditions(TwoEditions const&) = delete;
  TwoEditions& operator=(TwoEditions const&) = delete;

  using Record = std::vector<std::pair<std::string, std::string>>;  // character id, value

  [[nodiscard]] Box record(Record const& values) const {
    Box box = space.anything();
    for (auto const& [character, value] : values) {
      auto const index = *space.find(character);
      auto const observed = space.observe(index, value, "");
      if (!observed.cells.empty()) intersect(space.part(box, index), observed.cells);
    }
    return box;
  }

  [[nodiscard]] Verdict verdict(std::string const& name, Record const& values,
                                Reading reading = Reading::strict) const {
    Determination determination;
    if (!name.empty()) {
      determination.named = true;
      determination.name = name;
      determination.in_old = old_names.place(name);
      determination.in_new = new_names.place(name);
    }
    return judge.judge(determination, record(values), !values.empty(), reading);
  }

  // "A1>B, B>B": old and new names of the possible pairs by name; "-" for none.
  [[nodiscard]] std::string pairs(Verdict const& verdict) const {
    std::set<std::string> sorted;
    for (auto const& pair : verdict.pairs) {
      sorted.insert((pair.old_taxon ? old_edition[*pair.old_taxon].name : "-") + ">" +
                    (pair.new_taxon ? new_edition[*pair.new_taxon].name : "-"));
    }
    std::string text;
    for (auto const& pair : sorted) text += (text.empty() ? "" : ", ") + pair;
    return text;
  }

  [[nodiscard]] std::string new_names_of(Verdict const& verdict) const {
    std::string text;
    for (auto const& terminal : verdict.terminals) {
      if (!text.empty()) text += " | ";
      text += new_edition[terminal.taxon].name;
    }
    return text;
  }

  Edition old_edition;
  Edition new_edition;
  Lexicon lexicon;
  ParentTable parents;
  KeyGraph old_graph;
  KeyGraph new_graph;
  NameIndex old_names;
  NameIndex new_names;
  CharacterSpace space;
  CompiledKey old_key;
  CompiledKey new_key;
  Collation collation;
  Judge judge;
};

}  // namespace keydrift::test
