#pragma once
// An edition made ready for keying: every statement as sets of cells over a CharacterSpace.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/space.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/redetermination/keyout.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {

struct CompiledAtom {
  CharacterIndex character{};
  Cells allowed{};         // by the extremes: outside, the atom fails
  Cells supported{};       // by the usual range: inside, it holds
  bool from_limit{false};  // holds because the statement does not speak of such a specimen
};

struct CompiledStatement {
  std::uint32_t ordinal{};  // in Lead::statements
  Strength strength{Strength::firm};
  std::vector<CompiledAtom> any_of{};  // at most one atom per character, and at least one atom
  std::vector<TaxonId> excepted{};     // terminals of the groups named by the exception, ascending
};

struct CompiledLead {
  LeadId id{};
  std::vector<CompiledStatement> statements{};  // printed order; notes left out
  std::optional<std::size_t> primary{};         // first firm or excepted one
  std::vector<TaxonId> ends{};                  // terminals named by the lead
  std::optional<CoupletId> next{};
};

struct CompiledKey {
  // The edition, graph and space must outlive the compiled key.
  CompiledKey(Edition const& edition, KeyGraph const& graph, NameIndex const& names,
              CharacterSpace const& space);

  Edition const* edition{};
  KeyGraph const* graph{};
  CharacterSpace const* space{};
  CoupletId start{};
  std::vector<std::vector<CompiledLead>> couplets{};  // by CoupletId, then lead
  std::vector<CharacterIndex> character_of_word{};    // by word of a Box
  std::vector<std::string> name_keys{};               // name_key() of the terminals, by TaxonId
  // "Some other state" of the characters that have one, as a word of a Box and a bit of it.
  struct OtherState {
    CharacterIndex character{};
    std::uint32_t word{};
    std::uint64_t bit{};
  };
  std::vector<OtherState> other_states{};
};

// Does any of the terminals lie below the lead?
[[nodiscard]] bool any_below(KeyGraph const& graph, LeadId lead, std::vector<TaxonId> const& taxa);

// Strong three-valued logic (Kleene 1952): what the box says of the statement.
[[nodiscard]] Truth truth_of(CompiledStatement const& statement, CharacterSpace const& space,
                             Box const& box);

// What the box says of the statement's characters, in words; "" when it says nothing.
[[nodiscard]] std::string known_words(CompiledStatement const& statement,
                                      CharacterSpace const& space, Box const& box);

// The fit of a lead as a person sees it who knows exactly what the box says.
[[nodiscard]] LeadFit fit_of(CompiledKey const& key, CompiledLead const& lead, Box const& box);

}  // namespace keydrift
