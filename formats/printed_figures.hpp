#pragma once
// The figures 0 to 9 in a text.  Inner header of formats.

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace keydrift::printed {

inline constexpr std::string_view kFigures = "0123456789";

// How many figures the text begins with.
[[nodiscard]] inline std::size_t leading_figures(std::string_view text) {
  return std::min(text.find_first_not_of(kFigures), text.size());
}
// Nothing but figures; true of an empty text.
[[nodiscard]] inline bool only_figures(std::string_view text) {
  return text.find_first_not_of(kFigures) == std::string_view::npos;
}

}  // namespace keydrift::printed
