#pragma once
// The number of a page at the outer edge of its head or foot, and the capitals that set such lines.
// Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// A head is one short line; the blanks that set its page number at the far edge do not count.
[[nodiscard]] bool may_be_running_head(std::string_view text);
inline constexpr std::size_t kLongestPageNumber = 5;     // digits
inline constexpr std::size_t kTabBlanks = 8;             // that a tab stands for
// Blanks that part the number from the words of a line between blank lines.
inline constexpr std::size_t kGapBlanks = 3;

// The line without a page number at either end; empty when it has none.  A year in front leaves the
// page to the end: "2011  ROE: MARSHES  201".
[[nodiscard]] std::string_view without_page_number(std::string_view line);

// A page's number at the outer edge of a line, far from its words: "18        ROE & DORN".
struct EdgeNumber {
  std::uint32_t number{};
  std::string_view words;
  std::size_t blanks{};  // between the two
};
[[nodiscard]] std::optional<EdgeNumber> number_at_edge(SourceLine const& line);

[[nodiscard]] bool mostly_capitals(std::string_view text);
// "AUSELLA. 149": capitals and the number of a page.
[[nodiscard]] bool is_head_with_page(SourceLine const& line);
// "REVISION OF THE GENUS AUSELLA — ROE 13": four words or more, which read as a lead to couplet 13.
[[nodiscard]] bool is_head_in_capitals(std::string_view text);

// "Journal of Marshes 44 (2)", "Marsh Press © 2009": what a journal prints at the top of its pages.
[[nodiscard]] bool names_a_volume(std::string_view words);
// "Marsh Studies 412: 45–98 (2014)", "Marsh Studies 12(3): 45-98": a volume and pages of it.
[[nodiscard]] bool names_volume_and_pages(std::string_view words);

// A third of all lines are set in capitals: no sign of a head.
[[nodiscard]] bool is_set_in_capitals(std::vector<SourceLine> const& lines);

// The key's largest number: one that others stand close before.
[[nodiscard]] std::uint32_t largest_of_key(Numbering const& numbering);

// A number that the key counts with: one far from all others may have been taken for a label
// because it begins its line.
[[nodiscard]] bool is_of_key(std::uint32_t number, Numbering const& numbering);

}  // namespace keydrift::printed
