#pragma once
// Columns that were copied line by line, or one behind the other.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// The lines with the left column of each page before its right one; both parts of a line keep its
// number.  nullopt where no gutter runs down the text between two columns of words.
[[nodiscard]] std::optional<std::vector<SourceLine>> part_columns(
    std::vector<SourceLine> const& lines);

// The lines with each destination behind its lead where some leads have none and as many lines
// behind them, four at least, hold nothing but destinations; nullopt where there is no such column.
[[nodiscard]] std::optional<std::vector<SourceLine>> put_destinations_behind_leads(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
