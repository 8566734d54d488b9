#pragma once
// Counts in brackets behind the names that leads end in.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "Aus (4)" leads on to couplet 4, or to Aus with its 4 species: where such numbers lead back,
// they are counts, and all of them become remarks of the name.
void take_counts_behind(std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
