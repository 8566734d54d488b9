#pragma once
// What stands between a lead's words and the name behind them where no leaders do: the number of
// the species or a sign.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "Flowers white 12 Aus bus", "Flowers white – 1. Aus bus": where two of three leads with names
// have a number of their own there, it is the species' and stands with its name. "Stamens 10. A.
// bus", "figs 14, 15. A. bus": where few leads have one, or a list or a comma before it, it is one
// of the words'.
void settle_species_numbers(SortedLines const& sorted, LeadCutter& cutter,
                            std::vector<ReadLead>& reads);

// "Flowers white > 2", "Flowers white = Aus bus": a sign that three of four destinations stand
// behind is none of the words'.
void drop_signs_before_ends(LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
