#pragma once
// From a decoded text to the reading of its lines that hangs together best.  Inner header of
// formats.

#include <cstdint>
#include <span>
#include <vector>

#include "keydrift/formats/line_markup.hpp"
#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_lines_of_pages.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// Borrows the text.
struct TextReading {
  std::vector<SourceLine> lines;       // as the reading needed them: columns parted, and so on
  std::vector<std::uint32_t> between;  // numbers of blank lines that part nothing
  std::vector<TakenLine> taken_out;    // lines that no reading had to know of
  Attempt attempt;
  std::vector<Finding> findings;  // what was mended; those of the attempt are its own
};

// Mends `text` where scanning made other signs of its own, unless marks of its lines are given,
// which hold its places.
[[nodiscard]] TextReading read_text(DecodedText& text, std::span<LineMarkup const> markup);

}  // namespace keydrift::printed
