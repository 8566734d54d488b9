#pragma once
// Specks that a scan or a page's margin adds to a destination: "5 |", "'5", "(5", "Aus bus .".
// Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace keydrift::printed {

// What stands behind the last row of three dots or more in a lead's text.
struct BehindDots {
  std::size_t words_end{};
  std::size_t begin{};  // of what stands behind, without blanks
};
// nullopt where there is no such row, nothing behind it, or more than a name takes.
[[nodiscard]] std::optional<BehindDots> behind_dots(std::string_view text);

// The text without the signs and blanks around its letters and figures.
[[nodiscard]] std::string_view without_stray_signs(std::string_view text);

// The number that is left of "5 |", "'5", "5 l", "5 5" without the speck, of "s" where a 5 was
// read as a letter; nullopt where none is, or where nothing is the matter.
[[nodiscard]] std::optional<std::uint32_t> number_beside_specks(std::string_view printed);

}  // namespace keydrift::printed
