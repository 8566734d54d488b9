#pragma once
// Leads of couplets that were split or merged: which answer to each other across the parts.

#include <array>
#include <cstdint>
#include <vector>

#include "keydrift/collation/ground.hpp"

namespace keydrift::collating {

class DividedLeads {
 public:
  // Borrows the ground.
  //
  // Of a couplet that was split or merged every lead may answer to a lead of any of its parts:
  // those that agree most in taxa and words, best first.  A lead from one part to another sums up
  // what stands behind it and answers to none, unless what would answer to it is such a lead too.
  explicit DividedLeads(Ground const& ground);

  // Row of the lead that answers; none.  Of all other leads the counterpart.
  [[nodiscard]] std::uint32_t counterpart(Of of, std::uint32_t row) const {
    return lead_[static_cast<std::size_t>(of)][row];
  }
  // Does the lead stand in a couplet that was split or merged, or in a part of one?
  [[nodiscard]] bool divided(Of of, std::uint32_t row) const {
    return group_[static_cast<std::size_t>(of)][row] != none;
  }

  // Does the lead go from one part of a whole to another?  Then it sums up what stands behind it.
  [[nodiscard]] bool is_joint(Of of, std::uint32_t row) const;

  // A statement, by the row of its lead.
  struct Said {
    std::uint32_t row{none};
    std::uint32_t statement{};
  };
  // What the other edition says in the parts of the same whole, of taxa that lie below both leads,
  // on a character that this statement speaks of too: the same if anything says the same.  The row
  // is `none` where nothing does.
  [[nodiscard]] Said said_there(Of of, std::uint32_t row, Statement const& statement) const;

 private:
  using Rows = std::array<std::vector<std::uint32_t>, 2>;
  void pair_leads(std::uint32_t group);

  Ground const& ground_;
  Rows lead_;               // by row
  Rows group_;              // by row
  std::vector<Rows> rows_;  // by group
};

}  // namespace keydrift::collating
