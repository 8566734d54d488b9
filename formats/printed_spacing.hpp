#pragma once
// Blank lines that part nothing: those of double-spaced typescripts, and those that text layers of
// scans set between the blocks of a page.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Takes the blank lines out that stand behind every line of a double-spaced typescript; returns
// their numbers, none where the text is spaced otherwise.
[[nodiscard]] std::vector<std::uint32_t> take_out_double_spacing(std::vector<SourceLine>& lines);

// Which blank lines are taken for those of a text layer.
enum class StrayBlanks : std::uint8_t {
  before_small_letters,  // and before rows of dots
  before_unnumbered      // before every line without a number, but for titles
};

// The lines without stray blank ones, whose numbers are `taken`.
struct CloserLines {
  std::vector<SourceLine> lines;
  std::vector<std::uint32_t> taken;
};

// nullopt where hardly any line goes on behind a blank one, so that these part what they should.
[[nodiscard]] std::optional<CloserLines> without_stray_blanks(std::vector<SourceLine> const& lines,
                                                              StrayBlanks which);

}  // namespace keydrift::printed
