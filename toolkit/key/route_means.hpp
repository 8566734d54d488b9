#pragma once
// Means over all routes to each taxon.  Internal to this folder.

#include <functional>
#include <limits>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

// A mean and over how many routes.  The count is kept as its logarithm: reticulate keys have more
// routes than any number type holds.
class RouteMean {
 public:
  RouteMean() = default;
  explicit RouteMean(double value) : any_{true}, value_{value} {}

  // As many routes more as `from` has, whose value has become `value`.
  void add(RouteMean const& from, double value);

  [[nodiscard]] bool any() const { return any_; }
  // NaN without routes.
  [[nodiscard]] double value() const {
    return any_ ? value_ : std::numeric_limits<double>::quiet_NaN();
  }
  // Without meaning where there are none.
  [[nodiscard]] double log2_count() const { return log2_count_; }

 private:
  bool any_{false};
  double log2_count_{0};
  double value_{0};
};

// `answer` is applied at each couplet on the way.  It must be affine in the value, so that the mean
// may be taken wherever routes meet.
using Answer = std::function<double(double value, CoupletId couplet)>;

// By row of Edition::couplets: the mean over the routes to the couplet of what a value that begins
// as `at_start` has become before it is answered.
[[nodiscard]] std::vector<RouteMean> means_at_couplets(Edition const& edition,
                                                       KeyGraph const& graph, double at_start,
                                                       Answer const& answer);

// By row of Edition::taxa: the mean over the taxon's routes of what the value has become at the
// end; NaN where no route ends.
[[nodiscard]] std::vector<double> mean_over_routes(Edition const& edition, KeyGraph const& graph,
                                                   double at_start, Answer const& answer);

}  // namespace keydrift
