#pragma once
// Dashes that stand before the numbers of couplets as they do before the further leads.  Inner
// header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "— 1. Wings clear" / "— Wings dark" / "— 2. Legs pale": the dash before a number is taken out
// where the numbers so marked count from 1 and hardly one stands without it.  Returns the number of
// lines.
std::size_t clear_dashes_before_numbers(std::string& text);

}  // namespace keydrift::printed
