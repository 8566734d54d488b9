#pragma once
// Tables copied line by line whose last column holds the destinations.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// The lines with what stands in the last column behind the words of its lead, marked as the
// destination:
//   "3a  One ray on top of the head; gut not trailing;    Ausella laterna"
//   "    swimbladder large                                (page 188)"
// Parts of a line keep its number.  nullopt where no such column runs down beside the leads, or
// where no lead's words go on beneath its destination: then lines tell as much.
[[nodiscard]] std::optional<std::vector<SourceLine>> part_result_column(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
