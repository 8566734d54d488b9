// Sums of the lengths of ways: M. Fischer 2021, "Extremal values of the Sackin tree balance index",
// Annals of Combinatorics 25: 515-541 (the comb and the most even tree are the extremes); D. H.
// Colless 1982, Systematic Zoology 31: 100-104.

#include "keydrift/key/parted_ends.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "keydrift/key/route_means.hpp"

namespace keydrift {
namespace {

// Calls visit(couplet, taxa) for each lead that names taxa and that a way comes to.
template <class Visit>
void for_each_end(Edition const& edition, KeyGraph const& graph, Visit visit) {
  for (auto const c : graph.topological_order()) {
    if (graph.route_count(c) == 0) continue;
    for (auto const& lead : edition[c].leads) {
      auto const* to = std::get_if<ToTaxa>(&lead.destination);
      if (to != nullptr && !to->taxa.empty()) visit(c, to->taxa);
    }
  }
}

std::vector<std::uint32_t> sorted_rows(std::vector<TaxonId> const& taxa) {
  std::vector<std::uint32_t> rows;
  rows.reserve(taxa.size());
  for (auto const taxon : taxa) rows.push_back(taxon.index);
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  return rows;
}

std::vector<RouteMean> steps_to_couplets(Edition const& edition, KeyGraph const& graph) {
  return means_at_couplets(edition, graph, 0, [](double steps, CoupletId) { return steps + 1; });
}

// Of the widest couplets as many as make `ends` ends, the widest first; the last may be narrower.
std::vector<std::size_t> widths_for(Edition const& edition, KeyGraph const& graph,
                                    std::size_t ends) {
  std::vector<std::size_t> widths;
  for (auto const c : graph.topological_order()) {
    auto const width = edition[c].leads.size();
    if (graph.route_count(c) > 0 && width > 1) widths.push_back(width);
  }
  std::sort(widths.begin(), widths.end(), std::greater<>{});
  std::size_t made = 1;
  std::size_t kept = 0;
  while (kept < widths.size() && made < ends) {
    widths[kept] = std::min(widths[kept], ends - made + 1);
    made += widths[kept] - 1;
    ++kept;
  }
  widths.resize(kept);
  return made == ends ? widths : std::vector<std::size_t>{};
}

// The least sum of the lengths of ways: the widest couplets stand highest, and each takes the place
// of an end that is nearest to the start.
double least_sum_of(std::vector<std::size_t> const& widths) {
  double sum = 0;
  double depth = 0;
  std::size_t open = 1;  // ends at `depth`
  std::size_t next = 0;  // and those one step further on
  for (auto const width : widths) {
    if (open == 0) {
      ++depth;
      open = std::exchange(next, 0);
    }
    --open;
    next += width;
    sum += static_cast<double>(width) * (depth + 1) - depth;
  }
  return sum;
}

// The greatest: a comb with the widest couplets at its end.
double comb_sum_of(std::vector<std::size_t> const& widths) {
  double sum = 0;
  double depth = 0;
  for (auto width = widths.rbegin(); width != widths.rend(); ++width) {
    ++depth;
    sum += depth * static_cast<double>(*width - 1);
  }
  return sum + depth;
}

}  // namespace

std::vector<double> weights_of_ends(Edition const& edition, KeyGraph const& graph,
                                    std::span<double const> weights) {
  auto const at_couplets = steps_to_couplets(edition, graph);
  std::vector<RouteMean> routes(edition.taxa.size());
  for_each_end(edition, graph, [&](CoupletId c, std::vector<TaxonId> const& taxa) {
    for (auto const row : sorted_rows(taxa)) routes[row].add(at_couplets[c.index], 0);
  });
  std::map<std::vector<std::uint32_t>, double> by_end;
  for_each_end(edition, graph, [&](CoupletId c, std::vector<TaxonId> const& taxa) {
    auto rows = sorted_rows(taxa);
    double weight = 0;
    for (auto const row : rows) {
      if (!(weights[row] > 0)) continue;
      weight +=
          weights[row] * std::exp2(at_couplets[c.index].log2_count() - routes[row].log2_count());
    }
    by_end[std::move(rows)] += weight;
  });
  std::vector<double> ends;
  ends.reserve(by_end.size());
  for (auto const& [rows, weight] : by_end) ends.push_back(weight);
  return ends;
}

std::size_t count_unparted_ends(Edition const& edition, KeyGraph const& graph) {
  std::set<std::vector<std::uint32_t>> ends;
  for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
    if (!graph.reachable(c)) continue;
    for (auto const& lead : edition[c].leads) {
      auto const* to = std::get_if<ToTaxa>(&lead.destination);
      if (to != nullptr && to->taxa.size() > 1) ends.insert(sorted_rows(to->taxa));
    }
  }
  return ends.size();
}

std::optional<double> evenness_of_ends(Edition const& edition, KeyGraph const& graph) {
  auto const at_couplets = steps_to_couplets(edition, graph);
  double sum = 0;
  std::size_t ends = 0;
  for_each_end(edition, graph, [&](CoupletId c, std::vector<TaxonId> const&) {
    sum += at_couplets[c.index].value() + 1;
    ++ends;
  });
  auto const widths = widths_for(edition, graph, ends);
  auto const comb = comb_sum_of(widths);
  auto const room = comb - least_sum_of(widths);
  if (!(room > 0)) return std::nullopt;
  auto const evenness = (comb - sum) / room;
  constexpr double kRounding = 1e-9;
  if (evenness > 1 + kRounding) return std::nullopt;
  return std::clamp(evenness, 0.0, 1.0);
}

std::optional<double> colless_of_ends(Edition const& edition, KeyGraph const& graph) {
  // Ends that a taxon stands for: of those that name several its part.
  std::vector<double> parts(edition.taxa.size(), 0);
  double ends = 0;
  for_each_end(edition, graph, [&](CoupletId, std::vector<TaxonId> const& taxa) {
    auto const rows = sorted_rows(taxa);
    for (auto const row : rows) parts[row] += 1 / static_cast<double>(rows.size());
    ++ends;
  });
  auto const comb = (ends - 1) * (ends - 2) / 2;
  if (!(comb > 0)) return std::nullopt;
  std::vector<double> before{0};  // by position of the taxa
  for (std::uint32_t at = 0; at < graph.taxon_count(); ++at) {
    before.push_back(before.back() + parts[graph.taxon_at(at).index]);
  }
  double unevenness = 0;
  for (auto const c : graph.topological_order()) {
    auto const leads = static_cast<std::uint32_t>(edition[c].leads.size());
    if (leads < 2) continue;
    double most = 0;
    double least = ends;
    for (LeadId lead{c, 0}; lead.ordinal < leads; ++lead.ordinal) {
      double below = 0;
      for (auto const run : graph.taxa_below(lead)) below += before[run.end] - before[run.begin];
      most = std::max(most, below);
      least = std::min(least, below);
    }
    unevenness += most - least;
  }
  return std::min(unevenness / comb, 1.0);
}

}  // namespace keydrift
