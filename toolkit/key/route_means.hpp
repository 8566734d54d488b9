#pragma once
// Means over all routes to each taxon.  Internal to this folder.

#include <functional>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

// By row of Edition::taxa: the mean over the taxon's routes of what a value that begins as
// `at_start` has become at the end, `answer` being applied at each couplet on the way; NaN where no
// route ends.  `answer` must be affine in the value, so that the mean may be taken wherever routes
// meet.
using Answer = std::function<double(double value, CoupletId couplet)>;
[[nodiscard]] std::vector<double> mean_over_routes(Edition const& edition, KeyGraph const& graph,
                                                   double at_start, Answer const& answer);

}  // namespace keydrift
