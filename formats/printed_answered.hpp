#pragma once
// Which labelled lines answer each other by standing equally deep.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// By line: another line is set in as far and bears a dash or the same number, and whatever stands
// between the two is set in further.  So the leads of an indented key stand; numbers that open a
// line of words or a destination hardly ever do.
[[nodiscard]] std::vector<bool> find_answered(std::vector<SourceLine> const& lines,
                                              Numbering const& numbering);

}  // namespace keydrift::printed
