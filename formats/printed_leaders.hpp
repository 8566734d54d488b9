#pragma once
// Where a lead's words end and its destination begins: rows of dots, arrows, gaps, dashes.  Inner
// header of formats.

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

enum class LeaderKind : std::uint8_t {
  none,
  dots,  // dots in any form, ellipses, bullets, low lines, rows of dashes
  arrow,
  gap,    // a tab or a run of blanks
  dash,   // a dash that stands alone
  words,  // "go to"
  blank,  // a single blank before a number or a name
  cell,   // the border of a table's cell
};

// Something printed that leads to a destination, though there be none; an empty cell is not.
[[nodiscard]] inline bool are_leaders(LeaderKind kind) {
  return kind != LeaderKind::none && kind != LeaderKind::cell;
}

// text[0, words_end) are the words, text[destination_begin, …) the destination (possibly empty,
// where leaders lead to nothing yet).
struct TailSplit {
  LeaderKind kind{LeaderKind::none};
  std::size_t words_end{};
  std::size_t destination_begin{};
};

// "...", ". . ." or an ellipsis anywhere.
[[nodiscard]] bool has_row_of_dots(std::string_view text);

// The last leader in `text` that a destination follows, or that ends the text.  `text` may be one
// line or a whole lead; gaps and dashes are leaders only in front of what can be a destination.
[[nodiscard]] TailSplit split_at_leader(std::string_view text, Numbering const& numbering);

// "… usually patterned . . . . 11": leaders of dots, and behind them where they lead.
[[nodiscard]] bool has_led_end(std::string_view text, Numbering const& numbering);

// Bytes of the arrow ("→", "->", "=>", ">>") at `at`; 0 when there is none.
[[nodiscard]] std::size_t arrow_length(std::string_view text, std::size_t at);

}  // namespace keydrift::printed
