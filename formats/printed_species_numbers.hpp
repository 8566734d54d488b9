#pragma once
// Numbers of species at the ends of leads that scanning damaged, mended in the text itself before
// it is parted into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "petals white. I. busa" before "2. cusa" and "3. dusa", "eye large. BUSA, Y." between "CUSA, 6."
// and "DUSA, 8.": the number that the ends before and behind call for, at the ends of lines,
// without leaders or behind them, before an initial ("i. A. busa") or a genus ("ll. Ausella"). Only
// letters and signs change that may stand for its figures
// (printed_misread_figures). Returns the number of lines.
std::size_t restore_numbers_at_ends(std::string& text);

}  // namespace keydrift::printed
