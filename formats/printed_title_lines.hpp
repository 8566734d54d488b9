#pragma once
// Titles of keys that are longer than a line.  Inner header of formats.

#include <string_view>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "Key to the species of Ausella known from the hills and" / "neighbouring marshes": does `line`,
// directly beneath the title of a key, go on with it?
[[nodiscard]] bool goes_on_with_title(std::string_view title, std::string_view line,
                                      Numbering const& numbering);

}  // namespace keydrift::printed
