#pragma once
// Heads and feet of pages that stand among the leads of a key with no blank line beside them. Inner
// header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Sets `heads` for lines between two leads, or within one, that no lead would hold: a page's number
// that is none of the key's ("Marsh Beetles          37"), capitals, an address of the web, the
// key's title once more, the binder's sign of a sheet.
void find_heads_among_leads(std::vector<SourceLine> const& lines, Numbering const& numbering,
                            std::vector<bool>& heads);

}  // namespace keydrift::printed
