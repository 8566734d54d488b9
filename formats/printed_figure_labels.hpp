#pragma once
// What drawings say beside their parts, copied into the text.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks "mentum              mentum              plate" / "A. busa             A. cusa
// A. dusa" beneath a lead that has its end: no lead begins there.  Two such lines at least.
void mark_figure_labels(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
