#pragma once
// What is said of the lines as a whole once they are read: lines kept nowhere, a text that breaks
// off.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines_of_pages.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// Of leads that run on within a line, only the first one's account is kept, so that there is one
// for each line.
void keep_one_account_a_line(std::vector<LineAccount>& accounts);

// One finding (skipped-lines) for all page numbers, running heads and ruled lines; `taken_out` has
// those that are no lines of the key's text any more.
void report_skipped_lines(KeyText const& key, std::vector<LineAccount> const& accounts,
                          std::vector<TakenLine> const& taken_out, std::vector<Finding>& findings);

// The last lead has no end, and the layout does not lead it on: the text was cut off
// (text-breaks-off).
void report_text_that_breaks_off(KeyText const& key, SortedLines const& sorted,
                                 Grouping const& grouping, std::vector<ReadLead> const& reads,
                                 std::vector<Finding>& findings);

}  // namespace keydrift::printed
