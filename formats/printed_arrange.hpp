#pragma once
// The order in which a layout prints the leads of an edition.  Inner header of formats.

#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_write.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

struct PrintedLead {
  LeadId lead;
  std::uint32_t depth{};   // couplets between the start and this lead's; 0 in parallel layout
  std::uint32_t number{};  // counted from 1, part by part unless leads lead across parts
  std::uint32_t part{};    // index into Edition::parts
  bool goes_on{false};     // the couplet it leads to is printed next
};

struct PrintOrder {
  std::vector<PrintedLead> leads;       // all, once each
  std::vector<std::uint32_t> couplets;  // all, in the order of their first leads
};

// No recursion.
[[nodiscard]] PrintOrder print_order(Edition const& edition, PrintLayout layout);

}  // namespace keydrift::printed
