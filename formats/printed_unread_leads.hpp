#pragma once
// Lines that look like leads and were read as none.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// Reports the lines among the leads, and those directly beneath the last, that lead by a row of
// dots to a couplet or a taxon and were taken for notes or titles: one finding, which names the
// others.
void report_unread_leads(KeyText const& key, SortedLines const& sorted,
                         std::vector<Finding>& findings);

}  // namespace keydrift::printed
