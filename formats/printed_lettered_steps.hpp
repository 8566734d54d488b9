#pragma once
// Couplets with a title that bears their number, whose leads bear letters alone.  Inner header of
// formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Tells the labels of the leads, 2a and 2b of "2. Shape" / "a) round … 3" / "b) square … 4", where
// leads lead to such numbers, and marks the titles as such that begin no lead.
void tell_lettered_steps(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
