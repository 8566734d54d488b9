#pragma once
// Digits and signs as wide as an ideograph: "１．" for "1.".  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// Puts the plain forms for full-width digits, letters, full stops, dashes, arrows' heads and
// brackets (U+FF01–U+FF5E; commas, colons and semicolons stay, which part words only).  The number
// of them; columns stay, for each is one character before and after.
std::size_t narrow_full_width(std::string& text);

}  // namespace keydrift::printed
