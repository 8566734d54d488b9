#pragma once
// Letters at the ends of an outline's leads that say which rank stands beneath.  Inner header of
// formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "a. Leaves basal . . . .b." above "b. Flowers solitary": where letters are those of ranks, which
// each couplet of a rank bears again, the letter at the end is no couplet's but that of the next
// lead, and tells no more than that the lead goes on beneath (common practice of some floras).
// Takes these letters and their leaders off the lines.
void take_off_level_pointers(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
