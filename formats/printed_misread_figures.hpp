#pragma once
// Figures that scanning made letters and other signs of.  Common practice: no published table of
// such slips is known to us; these are the ones that text layers of old print show.  Inner header
// of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace keydrift::printed {

// The figure that the character is, or mostly is where it stands for one: 1 for 'l', 5 for 'S'.
[[nodiscard]] std::optional<std::uint32_t> figure_seen_in(char32_t c);

// The figure that a letter less often stands for, before the one that it mostly does: 8 for 'S'.
[[nodiscard]] std::optional<std::uint32_t> figure_rarely_seen_in(char32_t c);

// May the character be a misreading of the figure (0 to 9), where that one is likely anyway?
[[nodiscard]] bool may_be_figure(char32_t c, std::uint32_t figure);

// The same where that very figure is missing and nothing else stands in its place: 'A' for 4.
[[nodiscard]] bool may_replace_figure(char32_t c, std::uint32_t figure);

// Bytes of `number` at the beginning of the text, misread figures among them: 2 of "I0. busa" for
// 10; 0 where another number or none stands.
[[nodiscard]] std::size_t figures_of(std::uint32_t number, std::string_view text);

// The figure that a letter alone may be where one is missing: 6 for "G", 5 for "s"; 0 for any other
// text.
[[nodiscard]] std::uint32_t figure_behind_letter(std::string_view text);

// The same of the last word of several, "… more or less convex G"; of up to three characters where
// a figure is among them, "… on sterile shoots. I0".
[[nodiscard]] std::uint32_t figure_at_end(std::string_view text);

}  // namespace keydrift::printed
