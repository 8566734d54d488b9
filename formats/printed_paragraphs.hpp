#pragma once
// Keys that run on in a paragraph which the page wrapped into lines.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// The lines, parted where leads begin within paragraphs: "TABLE OF AUS.—1. Wings clear, 2. — Wings
// dark, bus Roe. 2. Legs pale, …" over several lines, told by the count of the couplets as
// count_cuts() tells them in one line.  nullopt where no paragraph is such.
[[nodiscard]] std::optional<std::vector<SourceLine>> part_paragraphs(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
