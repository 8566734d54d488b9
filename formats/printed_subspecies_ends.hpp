#pragma once
// Subspecies at ends without leaders.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "… pale yellow bus bus (Roe)" / "… black bus cus Dorn": the species' epithet goes with that of
// its subspecies, where one lead ends in the species' own.
void take_subspecies_at_ends(LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
