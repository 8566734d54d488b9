#pragma once
// Synonyms behind the names that leads end in.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "… five spines" / "Aus bus (Roe)" / "= Aus cus Dorn": the lead leads to the name before the sign,
// of which the one behind it is a synonym.
void take_names_before_synonyms(LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
