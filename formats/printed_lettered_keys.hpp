#pragma once
// Keys of one couplet behind a numbered key, their leads lettered: "a. Spire low … subsp. bus" /
// "b. Spire high … subsp. cus" in the account of a species.  Inner header of formats.

#include <cstddef>
#include <string>
#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

struct LetteredKey {
  std::vector<std::size_t> lines;  // with which its leads begin
  std::string species;             // of the account around it, as printed; may be empty
  std::size_t title{};             // line of that account's head, where there is a species
};

// Behind line `from`, where each lead ends in leaders and a destination.
[[nodiscard]] std::vector<LetteredKey> find_lettered_keys(std::vector<SourceLine> const& lines,
                                                          Numbering const& numbering,
                                                          std::size_t from);

// The leads that `sorted` has, by a plan or without one, and those of the keys.
[[nodiscard]] LeadPlan with_lettered_leads(SortedLines const& sorted, LeadPlan const* plan,
                                           std::vector<LetteredKey> const& keys,
                                           std::vector<SourceLine> const& lines);

// Each key's couplet becomes a part of its own; its leads are those from `first_lead` on.  "subsp.
// bus" becomes one of the account's species.
void add_lettered_couplets(std::vector<LetteredKey> const& keys, std::size_t first_lead,
                           SortedLines const& sorted, Grouping& grouping,
                           std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
