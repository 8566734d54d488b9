#pragma once
// Lists of words that decide what a text is.  Inner header.

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

namespace keydrift {

// Most words that are asked about are on no list: their length and first letter tell that sooner
// than the words do.
template <std::size_t N>
[[nodiscard]] constexpr bool is_one_of(std::array<std::string_view, N> const& words,
                                       std::string_view word) {
  if (word.empty()) return false;
  return std::any_of(words.begin(), words.end(), [word](std::string_view one) {
    return one.size() == word.size() && one.front() == word.front() && one == word;
  });
}

}  // namespace keydrift
