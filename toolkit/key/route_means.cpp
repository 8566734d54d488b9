#include "keydrift/key/route_means.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace keydrift {
namespace {

// A mean and over how many routes.  The count is kept as its logarithm: reticulate keys have more
// routes than any number type holds.
class Mean {
 public:
  Mean() = default;
  explicit Mean(double value) : any_{true}, value_{value} {}

  // As many routes more, whose value has become `value`.
  void add(Mean const& from, double value) {
    if (!any_) {
      *this = from;
      value_ = value;
      return;
    }
    auto const larger = std::max(log2_count_, from.log2_count_);
    auto const mine = std::exp2(log2_count_ - larger);
    auto const theirs = std::exp2(from.log2_count_ - larger);
    value_ = (mine * value_ + theirs * value) / (mine + theirs);
    log2_count_ = larger + std::log2(mine + theirs);
  }
  [[nodiscard]] bool any() const { return any_; }
  [[nodiscard]] double value() const {
    return any_ ? value_ : std::numeric_limits<double>::quiet_NaN();
  }

 private:
  bool any_{false};
  double log2_count_{0};
  double value_{0};
};

}  // namespace

std::vector<double> mean_over_routes(Edition const& edition, KeyGraph const& graph, double at_start,
                                     Answer const& answer) {
  std::vector<Mean> to_couplet(edition.couplets.size());
  auto const order = graph.topological_order();
  // The start is the one couplet at depth 1.
  for (auto const c : order) {
    if (graph.depth(c) == 1U) to_couplet[c.index] = Mean{at_start};
  }
  auto const add = [&](Mean& mean, std::span<LeadId const> leads) {
    for (auto const lead : leads) {
      auto const& from = to_couplet[lead.couplet.index];
      if (graph.route_count(lead.couplet) == 0 || !from.any()) continue;
      mean.add(from, answer(from.value(), lead.couplet));
    }
  };
  // Leads into a couplet have been counted when its turn comes, for they stand higher in the order.
  for (auto const c : order) {
    if (graph.route_count(c) > 0) add(to_couplet[c.index], graph.leads_to(c));
  }
  std::vector<double> means;
  means.reserve(edition.taxa.size());
  for (TaxonId t; t.index < edition.taxa.size(); ++t.index) {
    Mean mean;
    add(mean, graph.leads_to(t));
    means.push_back(mean.value());
  }
  return means;
}

}  // namespace keydrift
