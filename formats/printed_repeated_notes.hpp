#pragma once
// Notes that stand beneath each species of a key: "Host: Fagella alba.", "Distribution: Halvern."
// Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks them as lines that begin no lead: no label stands before them, what stands before their
// colon is the same beneath several leads, and each of those leads has its end already.
void mark_repeated_notes(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
