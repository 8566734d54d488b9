#pragma once
// Leads whose leaders lead to the page of a taxon that stands before them.  Inner header of
// formats.

#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "… dull" / "Pond Saucer (Ausella orbis) ........ p. 16": the name, on a line of its own or at the
// end of the words, is the destination, where two leads at least end in a page.
void take_names_before_pages(KeyText const& key, LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
