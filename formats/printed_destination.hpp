#pragma once
// Where a lead's words end and its destination begins.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

enum class LeaderKind : std::uint8_t {
  none,
  dots,  // dots in any form, ellipses, bullets, low lines
  arrow,
  gap,    // a tab or a run of blanks
  words,  // "go to"
  blank,  // a single blank before a number or a name
  cell,   // the border of a table's cell
};

// text[0, words_end) are the words, text[destination_begin, …) the destination (possibly empty,
// where leaders lead to nothing yet).
struct TailSplit {
  LeaderKind kind{LeaderKind::none};
  std::size_t words_end{};
  std::size_t destination_begin{};
};

// The last leader in `text` that a destination follows, or that ends the text.  `text` may be one
// line or a whole lead; gaps are leaders only in front of what can be a destination.
[[nodiscard]] TailSplit split_at_leader(std::string_view text, Numbering const& numbering);

// "… go to 5", "… 5": a couplet number at the end without leaders.  Numbers of figures, pages and
// plates are none.
struct TrailingReference {
  std::size_t words_end{};
  std::size_t destination_begin{};
  Reference reference;
  bool pointed{false};  // "go to", "see", "siehe", … stands before it
};
[[nodiscard]] std::optional<TrailingReference> trailing_reference(std::string_view text);

// Could this be a destination at all: a number, a pointer to a key, a name?
[[nodiscard]] bool plausible_destination(std::string_view text, Numbering const& numbering);

// Takes brackets off the end of a destination: "[in part]" once, as a remark, "(Fig. 7)" as often
// as they come.
void take_brackets(std::string_view& rest, std::string& remark, std::vector<std::string>& figures);

// Without "go to", "see couplet", "siehe", arrows, brackets and the last full stop.
[[nodiscard]] std::string_view strip_pointer(std::string_view text);

// "Key B", "Group 2", "Schlüssel der Larven": the name of another key.
[[nodiscard]] bool names_a_key(std::string_view text);

// "Key: Larvae": the words behind the colon; empty for any other text.
[[nodiscard]] std::string_view explicit_key_title(std::string_view text);

// "3b, in AUSACEAE, p. 22": a couplet of another key.
[[nodiscard]] bool points_into_other_work(std::string_view text);

}  // namespace keydrift::printed
