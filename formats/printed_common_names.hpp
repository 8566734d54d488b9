#pragma once
// Common names of Latin form before the names of taxa.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "Velutina azzurra (V. pilosula Roe)", "Blauwe velutina – V. coerulans Roe": where leads end so as
// a rule, and no species stands without its author but in front, what stands in front is a common
// name.  One lead alone would not tell it from a name with its synonym.  So is what stands before
// a comma where that is the rule, "Comma scale, Commataspis pomicola", and before a species that
// another lead ends in alone, "Rusty flour beetle Tribolodes ferrugo".
void take_names_behind_common_ones(std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
