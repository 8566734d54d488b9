#pragma once
// Which couplets are worth comparing: inverted indexes instead of all pairs.

#include <array>
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

struct Candidates {
  std::vector<CandidatePair> pairs;  // sorted, without repeats
  // By couplet of each edition: it says the same and parts the taxa in the same way as one couplet
  // of the other edition and no more than one.  That couplet is its only candidate.
  std::array<std::vector<char>, 2> settled;
};

// Pairs that share the set of taxa below them or below one of their leads, or a great part of it,
// or statements, leads or words that few couplets have.  At most a fixed number per couplet, and
// the same pairs turned round when the editions change places.
[[nodiscard]] Candidates find_candidates(Comparison const& comparison);

}  // namespace keydrift::collating
