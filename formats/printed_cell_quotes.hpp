#pragma once
// The quotation marks that spreadsheets set around cells when they are saved as text, taken off the
// text itself before it is parted into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// Between tabs, "\"Aus bus Roe, in lochs\"" and "\"so-called \"\"spurs\"\" none\"": the marks
// around the cell become blanks, and of two within it one does, so that no place moves.  Only where
// such cells stand in two lines at least.  Returns the number of cells.
std::size_t take_off_cell_quotes(std::string& text);

}  // namespace keydrift::printed
