#pragma once
// Couplets of keys whose ranks are told by labels or by indentation.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

// What makes rivals of two labels of one rank.
enum class Rivals : std::uint8_t {
  by_rank,   // A, B and C, where A is not answered otherwise; each rank as its labels suggest
  counted,   // a and b, a' and b', a1 and b1: primes and indices tell ranks, too
  repeated,  // A and AA, 1 and 1', * and **: the next letter or number is the next couplet
};

// The leads of `sorted` were found by `plan`.
[[nodiscard]] Grouping group_by_ranks(KeyText const& key, SortedLines const& sorted,
                                      std::vector<ReadLead> const& reads, LeadPlan const& plan,
                                      Rivals rivals);

// Rivals are indented alike; labels count for nothing.
[[nodiscard]] Grouping group_by_indentation(KeyText const& key, SortedLines const& sorted,
                                            std::vector<ReadLead> const& reads,
                                            LeadPlan const& plan);

// The same where indentation wavers: the ends of leads have a say (printed_indent_course.hpp).
// nullopt where that is no likelier.
[[nodiscard]] std::optional<Grouping> group_by_indentation_and_ends(
    KeyText const& key, SortedLines const& sorted, std::vector<ReadLead> const& reads,
    LeadPlan const& plan);

// Leads without labels of which the indentation was lost, as scans lose it: behind a lead that
// leads on stands the first of the couplet beneath it, behind one with its destination the rival of
// the innermost that lacks one.  A further rival begins with the word that its couplet begins with.
// nullopt where leads are indented, or hardly a couplet's leads begin with the same word.
[[nodiscard]] std::optional<Grouping> group_by_order(KeyText const& key, SortedLines const& sorted,
                                                     std::vector<ReadLead> const& reads,
                                                     LeadPlan const& plan);

}  // namespace keydrift::printed
