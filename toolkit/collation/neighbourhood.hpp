#pragma once
// How well the surroundings of two couplets agree under an alignment.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "keydrift/collation/comparison.hpp"

namespace keydrift::collating {

// One thing looked at around two couplets: that both begin a key, a lead that leads to one of them,
// or a pair of their leads (one of a pair without the other counts as well, and never agrees).
struct NeighbourSlot {
  std::uint32_t old_row{none};  // lead; both none: the start
  std::uint32_t new_row{none};
  bool before{false};  // the lead leads here (one side only); else a lead of the couplet
  Grade grade{};
  std::uint32_t weight{1};
};

// The alignment as it stands; by couplet and by lead row, of both editions.
class Neighbourhood {
 public:
  // Borrows the comparison.
  explicit Neighbourhood(Comparison const& comparison);

  // Forgets all pairs, then takes these.
  void clear();
  // `pairing` as Comparison::compare gives it.
  void set(std::uint32_t old_couplet, std::uint32_t new_couplet,
           std::span<std::uint32_t const> pairing);

  [[nodiscard]] std::uint32_t counterpart(Of of, std::uint32_t couplet) const {
    return couplet_[index_of(of)][couplet];
  }
  [[nodiscard]] std::uint32_t lead_counterpart(Of of, std::uint32_t row) const {
    return lead_[index_of(of)][row];
  }

  // Agreement of the couplets that lead here and of those that the paired leads lead to: the same
  // couplet (by the same lead) or the same taxa count in full, one that is reached across a single
  // couplet without counterpart counts half.  Symmetric; `whole` for the same couplet in two equal
  // editions that are aligned in full.
  [[nodiscard]] Grade agreement(std::uint32_t old_couplet, std::uint32_t new_couplet,
                                std::span<std::uint32_t const> pairing) const;
  // What that agreement is the weighted mean of.
  [[nodiscard]] std::vector<NeighbourSlot> slots(std::uint32_t old_couplet,
                                                 std::uint32_t new_couplet,
                                                 std::span<std::uint32_t const> pairing) const;

 private:
  template <class Visit>
  void each_slot(std::uint32_t old_couplet, std::uint32_t new_couplet,
                 std::span<std::uint32_t const> pairing, Visit const& visit) const;
  [[nodiscard]] Grade before(Of of, LeadId parent, std::uint32_t there) const;
  [[nodiscard]] Grade behind(std::uint32_t old_row, std::uint32_t new_row) const;
  [[nodiscard]] Grade across(Of of, std::uint32_t goal_row, std::uint32_t between) const;
  [[nodiscard]] bool leads_to(Of of, std::uint32_t from, std::uint32_t to) const;

  Comparison const& comparison_;
  std::array<std::vector<std::uint32_t>, 2> couplet_;
  std::array<std::vector<std::uint32_t>, 2> lead_;
  std::array<std::vector<char>, 2> is_start_;
};

}  // namespace keydrift::collating
