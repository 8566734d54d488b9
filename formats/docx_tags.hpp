#pragma once
// What the elements of a manuscript's text mean.  Inner header of formats.

#include <cstdint>
#include <string_view>

namespace keydrift::docx {

enum class Tag : std::uint8_t {
  other,  // passed through: its content counts
  passed_over,
  paragraph,
  run,
  text,
  tab,
  line_break,
  hyphen,
  symbol,
  field_mark,
  field_code,
  inserted,
  deleted,
  moved_away,
  moved_here,
  table,
  row,
  cell,
  box,
  alternative,
  note_mark,
  comment_mark,
  embedded,
};

// ISO/IEC 29500-1, 17.3 to 17.16; what is not named here (hyperlinks, smart tags, content controls,
// simple fields, custom XML) is only a wrapping of what it holds.
[[nodiscard]] Tag tag_of(std::string_view local_name);

}  // namespace keydrift::docx
