#pragma once
// Names on lines of their own at the ends of leads, with lines beneath them that say where the
// species lives.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "1. Body keeled" / "Ausella busa Roe, 1931" / "Upper Marl; rare.": where names stand so again and
// again, they are told to be destinations, and the lines beneath them begin no lead and are no
// authors.
void mark_names_above_remarks(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
