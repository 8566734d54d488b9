#pragma once
// Habitats that stand directly behind an author who is cut short.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "A. bus Roth. Wiesen; häufig": the full stop of the author serves for the sentence's as well.
// What follows it is no second author where other leads name the first one alone, and none names
// the other.
void part_habitats_from_authors(std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
