#pragma once
// Keys whose leads run on within a line, or a whole paragraph.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Parts "… 2 – Wings dark … Aus bus 2. Head …" where a lead with leaders and a destination is
// followed by a label that carries the count on.  Pieces of one line share its number.
[[nodiscard]] std::vector<SourceLine> part_run_on_lines(std::vector<SourceLine> lines);

}  // namespace keydrift::printed
