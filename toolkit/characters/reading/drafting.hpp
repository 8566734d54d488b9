#pragma once
// From the groups of a clause to drafts of statements: slices of the text, strength, limits.

#include <vector>

#include "keydrift/characters/reading/clause_reader.hpp"
#include "keydrift/characters/reading/groups.hpp"
#include "keydrift/characters/reading/matches.hpp"

namespace keydrift::reading {

// Every token of the clause goes to the group in front of it (what stands before the first group,
// to that), so that no word of the clause is outside of all statements.  A limit that heads the
// clause ("Males:") is left in `carried`.  `matches` may be null where none were looked for.
// Takes what the groups say.  Precondition: groups is not empty.
[[nodiscard]] std::vector<Draft> make_drafts(LeadText const& text, Clause const& clause,
                                             std::vector<Group>& groups, Qualifiers const& found,
                                             Carried& carried, ClauseMatches const* matches);

}  // namespace keydrift::reading
