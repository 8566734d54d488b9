#pragma once
// Ends of leads that give a species' number in the list or the accounts around the key.  Inner
// header of formats.

#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "… pointed No. 5" where other leads lead to couplets by numbers alone, and "5. A. busa Roe"
// stands in a list or over an account: the lead leads to Ausella busa.  Only where two such ends of
// three are found; says so once.
void take_species_by_number(KeyText const& key, SortedLines const& sorted,
                            std::vector<ReadLead>& reads, std::vector<Finding>& findings);

}  // namespace keydrift::printed
