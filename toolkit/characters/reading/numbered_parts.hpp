#pragma once
// Numbers that say which of the parts in a row is meant: "tergite 1", "segments 2–4".

#include <vector>

#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/characters/reading/lead_text.hpp"

namespace keydrift::reading {

// Makes words of them (Token::names_part): they belong to the name of the part then, and neither
// count nor measure.  Called when figure references and formulas have been set aside.
void name_numbered_parts(LeadText& text, std::vector<Clause> const& clauses);

}  // namespace keydrift::reading
