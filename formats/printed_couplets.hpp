#pragma once
// Which leads make up a couplet, and how the key is laid out.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

enum class Layout : std::uint8_t {
  parallel,        // the leads of a couplet stand together
  indented,        // the couplets beneath a lead stand between it and its rival
  serial,          // every lead has a number, its rival's stands in brackets
  outline,         // as indented; labels tell ranks and may come back in every branch
  by_indentation,  // as indented; nothing else tells which leads are rivals
  by_order,        // the same where the indentation was lost: their order and first words tell
};

struct RawCouplet {
  std::string label;
  LabelKey key{};
  std::uint32_t first_member{};  // into Grouping::members
  std::uint32_t member_count{};
  std::uint32_t part{};
};

struct RawPart {
  std::uint32_t first_lead{};
  std::uint32_t heading{kNone};  // remark index
  bool goes_on{false};           // a key of its own in which a lead without destination goes on
};

struct Grouping {
  Layout layout{Layout::parallel};
  std::vector<RawCouplet> couplets;    // in printed order of their first leads
  std::vector<std::uint32_t> members;  // lead indices, couplet by couplet
  std::vector<RawPart> parts;
  // For layouts where a lead without destination goes on with the next lead.
  bool goes_on{false};
  // The labels of the couplets are not printed: counted in printed order, part by part.
  bool numbered_here{false};
  // Layout by_indentation: leads that belong elsewhere than their indentation alone tells.
  std::vector<std::uint32_t> set_otherwise;
};

// By lead: its couplet's index; kNone for a lead of none.
[[nodiscard]] std::vector<std::uint32_t> homes_of(Grouping const& grouping, std::size_t leads);

// Is it the first of its couplet?
[[nodiscard]] inline bool opens_couplet(Grouping const& grouping,
                                        std::vector<std::uint32_t> const& homes, std::size_t lead) {
  return homes[lead] != kNone &&
         grouping.members[grouping.couplets[homes[lead]].first_member] == lead;
}

// The keys of couplets that are numbered here: no printed number means them.
inline constexpr LabelKey kCountedHere = LabelKey{7} << 48U;

// The key of a label within a part, since labels come back in other parts.
[[nodiscard]] inline LabelKey in_part(std::uint32_t part, LabelKey key) {
  return key ^ (static_cast<LabelKey>(part) << 50U);
}

// The layout that the labels and destinations speak for at first sight.
[[nodiscard]] Layout likely_layout(KeyText const& key, SortedLines const& sorted,
                                   std::vector<ReadLead> const& reads);

// Many leads name their rivals in brackets, and the rivals name them: without that, numbers in
// brackets are back-references.
[[nodiscard]] bool may_be_serial(KeyText const& key, SortedLines const& sorted,
                                 std::vector<ReadLead> const& reads);

// Layouts parallel, indented and serial.
[[nodiscard]] Grouping group_leads(KeyText const& key, SortedLines const& sorted,
                                   std::vector<ReadLead> const& reads, Layout layout);

}  // namespace keydrift::printed
