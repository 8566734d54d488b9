#pragma once
// A key that is no plain text (a word-processor manuscript, article XML), read by way of lines.
// Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/line_markup.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/told_names.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// From `text_begin` on (a byte of ManuscriptLine::text, up to the next stretch) the characters
// stand one after the other at this place.
struct ManuscriptStretch {
  std::size_t text_begin{};
  std::uint32_t number{};
  std::uint32_t column{1};
};

// One paragraph or one row of a table, its cells parted by tabs.
struct ManuscriptLine {
  std::string text;
  // The place that messages name for its first byte: paragraph of a .docx, line of an XML file.
  std::uint32_t number{};
  std::uint32_t column{1};
  // Where the words are broken up by markup; ascending.  Empty: the whole line stands at `number`,
  // `column`.
  std::vector<ManuscriptStretch> stretches{};
  LineMarkup markup{};  // offsets into `text`
};

// Sets the text of `front`, which has its own place, and a tab before the line, whose role and
// borders it keeps.
void put_before(ManuscriptLine&& front, ManuscriptLine& line);

// Reads the lines as printed text.  Every Place (of the edition, the findings, the accounts) has
// the lines and columns of the origin; its bytes are those of SourceReading::text, whose k-th line
// is the k-th of `lines`.  Blanks other than tabs within a line's text (line feeds above all) are
// taken for spaces.  `told`: names that the origin tells.  Codes: those of read_printed_key.
[[nodiscard]] Loaded<PrintedReading> read_manuscript(std::string_view name,
                                                     std::vector<ManuscriptLine> const& lines,
                                                     ReadLimits const& limits = {},
                                                     ToldNames const& told = {});

}  // namespace keydrift
