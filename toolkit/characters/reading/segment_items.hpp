#pragma once
// The statements of a segment in which the lexicon's states or numbers were found.

#include <cstdint>
#include <string>
#include <vector>

#include "keydrift/characters/reading/clause_reader.hpp"
#include "keydrift/characters/reading/groups.hpp"
#include "keydrift/characters/reading/matches.hpp"
#include "keydrift/characters/reading/numbers.hpp"
#include "keydrift/characters/reading/parts.hpp"

namespace keydrift::reading {

// What was found in a clause.
struct Found {
  ClauseMatches const* matches{};
  std::vector<StateMatch> states;
  std::vector<std::vector<Measure>> measures;  // several for "4–6 × 2–3 mm"
};

// Some token of it is part of a state or a number.
[[nodiscard]] bool has_items(LeadText const& text, Segment const& segment);

// The groups in order of their beginnings.  Words that were not read and speak of another part, or
// describe the part that a number measures, become opaque statements; the rest of them is kept in
// Group::rest.
[[nodiscard]] std::vector<Group> read_items(LeadText const& text, Clause const& clause,
                                            Segment const& segment, Found const& found,
                                            ReadingRules const& rules, Carried const& carried);

}  // namespace keydrift::reading
