#pragma once
// Lines of prose that happen to begin with a number as labels do.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks as no leads: dates ("12. vii. 1988"), items of captions ("1. A. busa. 2. A. cusa." beneath
// "Figs 1-4."), and lines that go on with a paragraph which no label begins ("… by grant no." /
// "12. The drawings …").
void mark_numbered_prose(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
