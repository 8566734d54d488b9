#pragma once
// From a decoded text to the reading of its lines that hangs together best.  Inner header of
// formats.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "keydrift/formats/line_markup.hpp"
#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// Borrows the text.
struct TextReading {
  std::vector<SourceLine> lines;       // as the reading needed them: columns parted, and so on
  std::vector<std::uint32_t> between;  // numbers of the blank lines of double spacing
  Attempt attempt;
  std::vector<Finding> findings;  // what was mended; those of the attempt are its own
};

// Mends `text` where scanning made other signs of its own, unless marks of its lines are given,
// which hold its places.
[[nodiscard]] TextReading read_text(DecodedText& text, std::span<LineMarkup const> markup);

// A lead goes on with a line whose first sign may be what is left of a label: "'b. Wings", "c :
// Legs".
[[nodiscard]] bool hides_labels(TextReading const& reading);

// The reading of the text with its labels put right (printed_label_course.hpp), if it hangs
// together better than `reading`; `relabelled` is then that text.  nullopt, and no text, if it does
// not.
[[nodiscard]] std::optional<TextReading> read_by_label_course(
    DecodedText const& text, TextReading const& reading, std::optional<DecodedText>& relabelled);

}  // namespace keydrift::printed
