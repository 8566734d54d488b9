#pragma once
// Leads without labels beneath labelled ones.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"

namespace keydrift::printed {

// Puts the leads without labels that stand beneath those of the plan into it.  False where there
// are too few of them to be a habit; the plan is as it was then.
[[nodiscard]] bool add_leaves(std::vector<SourceLine> const& lines, Numbering const& numbering,
                              LeadPlan& plan);

}  // namespace keydrift::printed
