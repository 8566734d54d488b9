#pragma once
// Titles among the lines of a manuscript, by their styles and by how they are set.  Inner header of
// formats.

#include <vector>

#include "keydrift/formats/docx_lines.hpp"

namespace keydrift::docx {

// Gives titles that role: lines with the style of a heading, and lines set apart as titles are
// (centred, in bold type, kept with the next); unless a key's leads are set so.
void mark_up_headings(std::vector<Line>& lines);

}  // namespace keydrift::docx
