#pragma once
// Outlines whose letters tell the depth and whose raised signs tell the leads of a couplet apart.
// Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_rank_damage.hpp"

namespace keydrift::printed {

// "A'." above "B'.", "B-.", "A^.": where each scan made something else of the raised sign, the
// letters still tell the depth and their order which lead of two it is.  Such labels are read as
// A' and A" where all of the key agrees: each couplet has two leads, none stands deeper than one
// step beneath the one above, and most signs are whole.
void mend_letter_ranks(std::vector<SourceLine> const& lines, LineRanks& ranks, LineRanks& numerals);

}  // namespace keydrift::printed
