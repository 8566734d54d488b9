#pragma once
// Pages of two columns that were copied line by line across both.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// The lines with the left column of each page before its right one; both parts of a line keep its
// number.  nullopt where no gutter runs down the text between two columns of words.
[[nodiscard]] std::optional<std::vector<SourceLine>> part_columns(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
