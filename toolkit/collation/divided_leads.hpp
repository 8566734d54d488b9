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
  // those that agree most in taxa and words, best first.  What the leads from part to part say
  // holds for the leads behind them too, so that a lead of a merger may say it again.  A lead from
  // one part to another sums up what stands behind it and answers to none, unless what would answer
  // to it is such a lead too.  Where the parts stand apart (parts_apart.hpp) the lead that once
  // led, or would lead, from one to the other is such a lead.
  explicit DividedLeads(Ground const& ground);

  // Row of the lead that answers; none.  Of all other leads the counterpart.
  [[nodiscard]] std::uint32_t counterpart(Of of, std::uint32_t row) const {
    return lead_[index_of(of)][row];
  }
  // Does the lead stand in a couplet that was split or merged, or in a part of one?
  [[nodiscard]] bool divided(Of of, std::uint32_t row) const {
    return group_[index_of(of)][row] != none;
  }

  // Does the lead go from one part of a whole to another?  Then it sums up what stands behind it.
  [[nodiscard]] bool is_joint(Of of, std::uint32_t row) const;

  // A statement, by the row of its lead.
  struct Said {
    std::uint32_t row{none};
    std::uint32_t statement{};
  };
  // What the other edition says in the parts of the same whole on a character that this statement
  // speaks of too: the same if anything says the same.  Asked are the leads below which shared taxa
  // lie as below this one, those on the way to the lead that answers to it, and those to whose
  // answering leads this one is on the way.  The row is `none` where nothing is said.
  [[nodiscard]] Said said_there(Of of, std::uint32_t row, Statement const& statement) const;

 private:
  using Rows = std::array<std::vector<std::uint32_t>, 2>;
  void pair_leads(std::uint32_t group);
  // Two parts of one couplet that no lead joins.
  void join(Of of, std::uint32_t one, std::uint32_t other, std::uint32_t whole_couplet);
  // What must hold to get through this lead from the first part.
  [[nodiscard]] SaidLead said_on_the_way(Of of, std::uint32_t row) const;
  // Is the lead `upper` the lead `lower`, or does it lead there from part to part?
  [[nodiscard]] bool on_the_way(Of of, std::uint32_t upper, std::uint32_t lower) const;

  Ground const& ground_;
  Rows lead_;               // by row
  Rows group_;              // by row
  Rows joint_;              // by row: the lead from another part to the lead's couplet; none
  Rows joins_;              // rows of leads that join parts which stand apart
  std::vector<Rows> rows_;  // by group
};

}  // namespace keydrift::collating
