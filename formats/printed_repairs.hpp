#pragma once
// Destinations that were misread by a machine, put right where the key's graph confirms it.  Inner
// header of formats.

#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// "l0" is couplet 10 where a couplet 10 stands in the same key and no other lead leads to it. Every
// repair is a finding (misread-destination) with the printed words.
void repair_destinations(KeyText const& key, Grouping const& grouping, std::vector<ReadLead>& reads,
                         std::vector<Finding>& findings);

}  // namespace keydrift::printed
