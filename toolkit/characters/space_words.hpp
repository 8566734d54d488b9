#pragma once
// Values of characters in words.  Inner header of space.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/space.hpp"

namespace keydrift {

// "4.5 mm", "4.5 %", "4.5"
[[nodiscard]] std::string with_unit(std::string text, Domain const& domain);

// What a record enumerates: parted by "|", ";", "/" or " or "; blanks around the items and items of
// nothing but blanks are kept.
[[nodiscard]] std::vector<std::string_view> alternatives_in(std::string_view value);

// "a, b or c"
[[nodiscard]] std::string join_or(std::vector<std::string> const& items);

}  // namespace keydrift
