#pragma once
// Genera that were taken for the authors of the words before them.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "… una sola spina ventrale Potamocharis", where other leads end in "apicale Oecetopsis" and
// "evidente Rheotrichia": as many names that end as genera do, each at one lead, are genera, and
// what stands before them is of the words.
void take_genera_for_authors(LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
