#pragma once
// Names of groups of genera in the keys of handbooks: "… Fruit a capsule . . . . I. Auseae." stands
// at the end of a lead beneath which the key goes on.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "I. Auseae.": a numeral and the name of a tribe, and nothing else.
[[nodiscard]] bool is_numbered_group(std::string_view text);

// Where such names count up behind leaders: those alone on their lines are marked as ends of the
// leads above, and behind the key the same names as titles, with the accounts of the genera beneath
// them that leads lead to by number ("1. Ausella Roe. Herbs …").
void mark_group_names(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
