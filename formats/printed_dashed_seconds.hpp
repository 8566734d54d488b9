#pragma once
// Further leads that bear the number of their couplet behind a dash or a star.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Tells the labels of further leads, "–1. Wings dark" or "*1 Wings dark" under "1. Wings clear",
// where nearly each sign with a number answers a lead above that bears this number.
void tell_dashed_seconds(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
