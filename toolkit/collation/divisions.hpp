#pragma once
// Couplets without counterpart that are parts of a couplet which was split, or were merged into
// one.

#include <array>
#include <cstdint>
#include <vector>

#include "keydrift/collation/alignment.hpp"

namespace keydrift::collating {

// By couplet of the new [1] or the old [0] edition: the aligned couplet *of the other edition* of
// which it is a part besides that couplet's counterpart; none for all others.
using Divisions = std::array<std::vector<std::uint32_t>, 2>;

// A couplet without counterpart is a part when it hangs directly before or behind the counterpart
// (or behind another part), and
//  - the shared taxa below it lie below the divided couplet, and most of what it says was said by
//    the divided couplet and is not said by the counterpart (a couplet resting on several
//    characters was split by character), or
//  - the shared taxa below it lie below the divided couplet, which had more leads, and one of them
//    went to the same taxa as a lead of the part (a polytomy was resolved), or
//  - some do, and all but a tenth of what it says was said by the divided couplet and is not said
//    by the counterpart (taxa moved at the same time).
[[nodiscard]] Divisions find_divisions(Comparison const& comparison, Alignment const& alignment,
                                       Counterparts const& counterparts);

// Of the parts of one couplet the one that stands above the others becomes its counterpart, so that
// what hangs before the divided couplet hangs before its counterpart.  Changes both values; the
// agreements of neighbours are reckoned anew.
void prefer_upper_parts(Comparison const& comparison, Alignment& alignment, Divisions& divisions);

}  // namespace keydrift::collating
