#pragma once
// Aligning the couplets of two editions one to one.

#include <array>
#include <cstdint>
#include <vector>

#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/comparison.hpp"

namespace keydrift::collating {

// The alignment by row numbers, for looking up both ways.
struct Counterparts {
  // By couplet / by row of lead, of the old and of the new edition; none: no counterpart.
  std::array<std::vector<std::uint32_t>, 2> couplet;
  std::array<std::vector<std::uint32_t>, 2> lead;
};

// Aligns: candidates, similarities, the heaviest assignment, and again with what was aligned as
// neighbourhood until nothing changes (at most `most_rounds` times).  Pairs that are too unlike to
// be one couplet stay apart.
inline constexpr unsigned most_rounds = 12;
[[nodiscard]] Alignment align(Comparison const& comparison);

[[nodiscard]] Counterparts counterparts(Comparison const& comparison, Alignment const& alignment);

}  // namespace keydrift::collating
