#pragma once
// Numbers that neither count nor measure by themselves: "3-2-1", "2 + 3", "1 : 1.5", "XII, 14–16".

#include "keydrift/characters/reading/lead_text.hpp"

namespace keydrift::reading {

// Sets Token::formula where numbers stand together as a formula: they are words then, told apart by
// how they are printed.  Called when figure references have been set aside.
void mark_formulas(LeadText& text);

}  // namespace keydrift::reading
