#pragma once
// Which couplets are worth comparing: inverted indexes instead of all pairs.

#include <cstdint>
#include <vector>

#include "keydrift/collation/comparison.hpp"

namespace keydrift::collating {

// An old and a new couplet (by index) that may be the same.
struct CandidatePair {
  std::uint32_t old_couplet{};
  std::uint32_t new_couplet{};
  auto operator<=>(CandidatePair const&) const = default;
};

// Pairs that share the set of taxa below them or below one of their leads, or a great part of it,
// or statements, leads or words that few couplets have.  Sorted, without repeats, at most a fixed
// number per couplet, and the same pairs turned round when the editions change places.
[[nodiscard]] std::vector<CandidatePair> find_candidates(Comparison const& comparison);

}  // namespace keydrift::collating
