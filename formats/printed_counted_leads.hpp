#pragma once
// Leads that are counted behind the number of their couplet.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Tells the labels "1/1 Wings clear", "1/2 Wings dark", "2/1 Legs pale", where the leads of each
// couplet count up from 1 behind the stroke and couplets before it, but for a slip or a fraction.
void tell_counted_leads(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
