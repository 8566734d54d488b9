#pragma once
// Labels of outlines that were misread or misprinted.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_ranks.hpp"

namespace keydrift::printed {

// By line, what lines begin with as labels: letters and signs, and the same as Roman numerals.
using LineRanks = std::vector<std::optional<RankLabel>>;

// Puts right what other labels of the text tell: "al." beside "b1.", "62." for "b2.", "6." for the
// "b." that "bb." answers, "I." for the 1 and "h." for the b that the count misses, "11." for
// "ll.", "DD," and "D D." for "DD.", "d'}" for "d')", "V." for b', "O" and "X" for a ring and a
// cross.
void mend_rank_labels(std::vector<SourceLine> const& lines, LineRanks& ranks, LineRanks& numerals);

}  // namespace keydrift::printed
