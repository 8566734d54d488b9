#pragma once
// Authors that a comma sets behind their names: "A. busa, Roe", as British and American works of
// the nineteenth century print them.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// What stands behind the comma is a place as well ("A. busa, Alaska"): only where three names or
// more, and two of three, have such words, and some of them are cut short, bracketed or come again.
void take_authors_behind_commas(std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
