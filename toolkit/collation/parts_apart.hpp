#pragma once
// Parts of a divided couplet that hang nowhere near each other: in one revision couplets were first
// brought together and then united, or divided and then taken apart.

#include <cstdint>
#include <optional>

#include "keydrift/collation/divisions.hpp"

namespace keydrift::collating {

// Two couplets of one edition that are one couplet of the other, although no lead leads from one to
// the other.
struct Joining {
  std::uint32_t upper{};
  std::uint32_t lower{};
  std::uint32_t joint{};  // row of the upper one's lead that once led, or would lead, to the lower
  Comparison::Result agreement;
  Grade lower_taxa{};  // of the lower one's leads alone
  Grade upper_taxa{};  // of the upper one's but for the joint
};

// The joining of two couplets of edition `of` that agrees best with a couplet of the other one;
// nothing where the numbers of leads do not fit, or the leads of one of the two are not among those
// of `whole_couplet`: each must be said there again, by more than half, and what the joint says
// must be said again in the leads behind it.
[[nodiscard]] std::optional<Joining> joining(Comparison const& comparison, Of of, std::uint32_t one,
                                             std::uint32_t other, std::uint32_t whole_couplet);

// Looks for such parts among the couplets without counterpart and without a whole.  Of the two the
// upper one becomes the counterpart.  Candidates are found by the statements that a leftover has in
// common with a paired couplet of more leads than its counterpart.
void find_parts_apart(Comparison const& comparison, Alignment& alignment, Divisions& divisions);

}  // namespace keydrift::collating
