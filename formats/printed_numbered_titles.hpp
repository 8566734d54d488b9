#pragma once
// Heads of families and genera, and titles of keys, that are numbered as leads are: "2. Ausella
// Roe" between two keys, "3.2 KEY TO THE SNAILS" above couplet 1.1.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks them as titles that begin no lead.  What such a line says could be a lead's; that the
// numbering begins with 1 anew behind it could not.
void mark_numbered_titles(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
