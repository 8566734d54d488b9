#pragma once
// Parts of what attributes and style sheets hold.  Inner header of formats.

#include <algorithm>
#include <string_view>

#include "keydrift/formats/hypertext_lines.hpp"

namespace keydrift::hypertext {

[[nodiscard]] inline std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_white(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_white(text.back())) text.remove_suffix(1);
  return text;
}

// Calls take(part) for the parts of the text between the signs, blanks aside.
template <class Take>
void for_parts(std::string_view text, char sign, Take take) {
  while (!text.empty()) {
    auto const end = std::min(text.find(sign), text.size());
    take(trimmed(text.substr(0, end)));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

}  // namespace keydrift::hypertext
