#pragma once
// The title of a species' account behind a key.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

// "… stouter, black crassula Roe", a blank line, "AUSELLA ALBICINCTA (Dorn)": the key's last lead
// has its end already, and what stands behind it titles an account.  To be called before the leads
// are read.
void leave_titles_behind(std::vector<SourceLine> const& lines, Numbering const& numbering,
                         SortedLines& sorted);

}  // namespace keydrift::printed
