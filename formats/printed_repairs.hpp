#pragma once
// Destinations that were misread by a machine, put right where the key's graph confirms it.  Inner
// header of formats.

#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// "l0" is couplet 10, and "5 |" couplet 5, where such a couplet stands in the same key and no other
// lead leads to it. Every repair is a finding (misread-destination) with the printed words. A name
// with specks around it behind leaders, "..... 'Aus bus", is taken as the destination.
// The same of letters, "/" for f, where leads end in those of couplets.
// `damaged_labels`: how many were put right, besides those that `sorted` and `findings` tell of.
// Whether anything was put right.
bool repair_destinations(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
                         std::vector<ReadLead>& reads, std::vector<Finding>& findings,
                         std::size_t damaged_labels = 0);

}  // namespace keydrift::printed
