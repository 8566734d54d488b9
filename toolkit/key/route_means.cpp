#include "keydrift/key/route_means.hpp"

#include <algorithm>
#include <cmath>

namespace keydrift {
namespace {

void add_routes(RouteMean& mean, std::span<LeadId const> leads, KeyGraph const& graph,
                std::vector<RouteMean> const& at_couplets, Answer const& answer) {
  for (auto const lead : leads) {
    auto const& from = at_couplets[lead.couplet.index];
    if (graph.route_count(lead.couplet) == 0 || !from.any()) continue;
    mean.add(from, answer(from.value(), lead.couplet));
  }
}

}  // namespace

void RouteMean::add(RouteMean const& from, double value) {
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

std::vector<RouteMean> means_at_couplets(Edition const& edition, KeyGraph const& graph,
                                         double at_start, Answer const& answer) {
  std::vector<RouteMean> means(edition.couplets.size());
  auto const order = graph.topological_order();
  // The start is the one couplet at depth 1.
  for (auto const c : order) {
    if (graph.depth(c) == 1U) means[c.index] = RouteMean{at_start};
  }
  // Leads into a couplet have been counted when its turn comes, for they stand higher in the order.
  for (auto const c : order) {
    if (graph.route_count(c) > 0) {
      add_routes(means[c.index], graph.leads_to(c), graph, means, answer);
    }
  }
  return means;
}

std::vector<double> mean_over_routes(Edition const& edition, KeyGraph const& graph, double at_start,
                                     Answer const& answer) {
  auto const at_couplets = means_at_couplets(edition, graph, at_start, answer);
  std::vector<double> means;
  means.reserve(edition.taxa.size());
  for (TaxonId t; t.index < edition.taxa.size(); ++t.index) {
    RouteMean mean;
    add_routes(mean, graph.leads_to(t), graph, at_couplets, answer);
    means.push_back(mean.value());
  }
  return means;
}

}  // namespace keydrift
