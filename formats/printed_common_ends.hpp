#pragma once
// Common names that nothing but a stop, a dash or brackets set apart from a lead's words.  Inner
// header of formats.

#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "Head flat … go to 2", "Dull black. Dark mealworm": where no lead ends in a scientific name, the
// numbers lead to every couplet, and all other leads end in the same form in a few words with a
// capital that no two share, these are the names.  Each is reported.
void take_common_names_at_ends(LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
