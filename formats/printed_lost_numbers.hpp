#pragma once
// Couplets whose numbers a word processor counted and a copy of the text lost.  Inner header of
// formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "Gills single ..... 2" / "– Gills in groups ..... 9": first leads without labels above second
// ones with dashes, which lead to numbers that nothing bears.  Tells the labels of the first leads,
// counted from 1 on, where nearly every number that is led to stands for exactly one of them.
void tell_lost_numbers(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
