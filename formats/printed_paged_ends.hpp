#pragma once
// Epithets with the pages of their accounts at the ends of leads.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "… over 4 mm agreste (p. 47)", "… pale agreste (p. 47), cinctipes (p. 50)": where most leads end
// in an epithet and its page, so do those whose epithet alone would not tell, and what stands
// before it is of the words: "… a loose" / "coil (fig. 2) fumidum (p. 5)".
void take_paged_ends(LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
