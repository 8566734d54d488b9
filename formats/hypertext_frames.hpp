#pragma once
// Tables that set a page's columns rather than rows of a key.  Inner header of formats.

#include <cstddef>
#include <string_view>
#include <unordered_set>

namespace keydrift::hypertext {

// The tags ("<td>", by offset) that open cells of many paragraphs, lists or tables: frames around a
// page's text, whose lines are lines.  Linear in the text.
[[nodiscard]] std::unordered_set<std::size_t> frame_cells(std::string_view text);

}  // namespace keydrift::hypertext
