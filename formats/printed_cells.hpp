#pragma once
// Tables whose cells were pasted one below the other: number, words and destination, each on a line
// of its own.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"

namespace keydrift::printed {

// Where the cells stand; nullopt when the text is not set cell by cell.  Lines that are no cells
// are read like any others.
[[nodiscard]] std::optional<LeadPlan> find_cells(std::vector<SourceLine> const& lines,
                                                 Numbering const& numbering);

}  // namespace keydrift::printed
