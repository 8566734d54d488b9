#pragma once
// Whether a lead ends in a name, told by the couplets around it.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

// What a lead's words may not tell, its place does: where leads go on with the couplet behind them
// (serial and indented keys), one with a couplet beneath it ends in no name ("Arista lang, wie das
// dritte Glied breit" goes on), one without ends in one ("… Crown black   alba, p. 226"); where
// couplets stand together, every lead leads somewhere.  Cuts leads that were cut otherwise, where
// no leaders speak for it; true when there were any.
bool end_by_structure(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
                      std::vector<ReadLead>& reads, std::vector<Finding>& findings);

}  // namespace keydrift::printed
