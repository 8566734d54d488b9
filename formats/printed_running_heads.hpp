#pragma once
// What a page prints above and below its text.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks the lines that recur at page borders with another page number or beside page numbers, and
// those that stand once with a page number far out or alone.
[[nodiscard]] std::vector<bool> find_running_heads(std::vector<SourceLine> const& lines,
                                                   Numbering const& numbering);

}  // namespace keydrift::printed
