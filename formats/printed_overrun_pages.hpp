#pragma once
// Pages of accounts that a full line had no room for.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "… not longer than its distance from the end [p. 313." above "of the snout … 5. busa,": printers
// set what a full line has no room for at the end of a line next to it, behind a bracket that is
// never closed (common practice).  Puts it on a line of its own behind the line that it is of,
// whose name ends in a comma.
void carry_overrun_pages(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
