#pragma once
// From grouped leads to an Edition: destinations, taxa, notes, parts.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// Moves the leads out of `reads` into `edition`, whose front matter has been read.
void build_edition(KeyText const& key, SortedLines const& sorted, Grouping const& grouping,
                   std::vector<ReadLead>&& reads, Edition& edition, std::vector<Finding>& findings);

}  // namespace keydrift::printed
