#pragma once
// Tables whose cells were pasted one below the other: number, words and destination, each on a line
// of its own.  Inner header of formats.

#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

enum class CellRole : std::uint8_t { none, label, words, destination };

// The role of every line; empty when the text is not set cell by cell.  Lines without a role are
// read like any others.
[[nodiscard]] std::vector<CellRole> find_cells(std::vector<SourceLine> const& lines,
                                               Numbering const& numbering);

}  // namespace keydrift::printed
