// The numbers of a key.  Bounds of route lengths: C. E. Shannon 1948, Bell System Technical Journal
// 27: 379-423; D. A. Huffman 1952 (see numbers.hpp).

#include <algorithm>
#include <cmath>
#include <deque>

#include "keydrift/key/numbers.hpp"
#include "keydrift/key/parted_ends.hpp"
#include "keydrift/key/route_means.hpp"

namespace keydrift {
namespace {

std::size_t count(std::span<TaxonRun const> runs) {
  std::size_t taxa = 0;
  for (auto const run : runs) taxa += run.end - run.begin;
  return taxa;
}

bool rests_on_one_statement(Couplet const& couplet) {
  return !couplet.leads.empty() &&
         std::all_of(couplet.leads.begin(), couplet.leads.end(), [](Lead const& lead) {
           return std::count_if(lead.statements.begin(), lead.statements.end(),
                                [](Statement const& statement) {
                                  return statement.strength != Strength::noted;
                                }) == 1;
         });
}

// What can be counted couplet by couplet, ways left aside.
void count_couplets(Edition const& edition, KeyGraph const& graph, KeyNumbers& numbers) {
  numbers.couplets = edition.couplets.size();
  for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
    auto const& couplet = edition[c];
    numbers.leads += couplet.leads.size();
    if (couplet.leads.size() > 2) ++numbers.polytomies;
    if (rests_on_one_statement(couplet)) ++numbers.single_statement_couplets;
    auto const leads_here = graph.leads_to(c).size();
    if (leads_here > 1) numbers.reticulations += leads_here - 1;

    bool takes_off_one = false;
    for (auto const& lead : couplet.leads) {
      if (auto const* to = std::get_if<ToTaxa>(&lead.destination)) {
        ++numbers.terminal_ends;
        takes_off_one = takes_off_one || to->taxa.size() == 1;
      }
    }
    if (takes_off_one) ++numbers.comb_couplets;
  }
}

std::vector<double> route_lengths(Edition const& edition, KeyGraph const& graph) {
  return mean_over_routes(edition, graph, 0, [](double steps, CoupletId) { return steps + 1; });
}

// The taxa that the start leads to, and what is nearest of them; false if there is none.
bool count_taxa(Edition const& edition, KeyGraph const& graph, KeyNumbers& numbers) {
  numbers.shortest_route = edition.couplets.size();
  for (TaxonId t; t.index < edition.taxa.size(); ++t.index) {
    std::optional<std::size_t> nearest;
    for (auto const lead : graph.leads_to(t)) {
      auto const depth = graph.depth(lead.couplet);
      if (depth && (!nearest || *depth < *nearest)) nearest = *depth;
    }
    if (nearest) {
      ++numbers.terminals;
      numbers.shortest_route = std::min(numbers.shortest_route, *nearest);
    } else if (!graph.leads_to(t).empty()) {
      ++numbers.beyond_start;
    }
  }
  return numbers.terminals > 0;
}

// Answers on the longest way to a taxon; taxa must not stand behind a circle.
std::size_t longest_route(Edition const& edition, KeyGraph const& graph) {
  std::vector<std::size_t> to_couplet(edition.couplets.size(), 0);
  std::size_t longest = 0;
  // Leads into a couplet have been counted when its turn comes, for they stand higher in the order.
  for (auto const c : graph.topological_order()) {
    if (graph.route_count(c) == 0) continue;
    auto& here = to_couplet[c.index];
    for (auto const lead : graph.leads_to(c)) {
      if (graph.route_count(lead.couplet) == 0) continue;
      here = std::max(here, to_couplet[lead.couplet.index] + 1);
    }
    bool const ends = std::any_of(
        edition[c].leads.begin(), edition[c].leads.end(),
        [](Lead const& lead) { return std::holds_alternative<ToTaxa>(lead.destination); });
    if (ends) longest = std::max(longest, here + 1);
  }
  return longest;
}

// What an answer tells at most, in bits, on the average of all answers given: couplets of two leads
// tell one.
double mean_width(Edition const& edition, KeyGraph const& graph, std::span<double const> weights,
                  double answers) {
  auto const bits = mean_over_routes(edition, graph, 0, [&](double sum, CoupletId c) {
    auto const leads = std::max<std::size_t>(edition[c].leads.size(), 2);
    return sum + std::log2(static_cast<double>(leads));
  });
  double all = 0;
  for (std::size_t i = 0; i < bits.size(); ++i) {
    if (!std::isnan(bits[i]) && weights[i] > 0) all += weights[i] * bits[i];
  }
  return all / answers;
}

struct Bounds {
  double entropy{};
  double huffman{};
};
// `answers`: the sum of the lengths of ways, each times its weight.
Bounds bounds_of(Edition const& edition, KeyGraph const& graph, std::span<double const> weights,
                 double answers) {
  auto const ends = weights_of_ends(edition, graph, weights);
  return {entropy(ends) / mean_width(edition, graph, weights, answers), huffman_mean(ends)};
}

void count_ways(Edition const& edition, KeyGraph const& graph, KeyNumbers& numbers) {
  double sum = 0;
  for (auto const length : route_lengths(edition, graph)) sum += std::isnan(length) ? 0 : length;
  numbers.longest_route = longest_route(edition, graph);
  numbers.mean_route = sum / static_cast<double>(numbers.terminals);
  std::vector<double> const equal(edition.taxa.size(), 1);
  auto const bounds = bounds_of(edition, graph, equal, sum);
  numbers.entropy_bound = bounds.entropy;
  numbers.huffman_bound = bounds.huffman;
  numbers.evenness = evenness_of_ends(edition, graph);
  if (numbers.evenness) numbers.colless = colless_of_ends(edition, graph);
}

double root_share(Edition const& edition, KeyGraph const& graph, std::size_t terminals) {
  CoupletId const start = edition.parts.empty() ? CoupletId{} : edition.parts.front().start;
  auto smallest = terminals;
  for (std::uint32_t ordinal = 0; ordinal < edition[start].leads.size(); ++ordinal) {
    smallest = std::min(smallest, count(graph.taxa_below(LeadId{start, ordinal})));
  }
  return static_cast<double>(smallest) / static_cast<double>(terminals);
}

}  // namespace

std::optional<KeyNumbers> key_numbers(Edition const& edition, KeyGraph const& graph) {
  KeyNumbers numbers;
  count_couplets(edition, graph, numbers);
  if (!count_taxa(edition, graph, numbers)) return std::nullopt;

  numbers.unparted_ends = count_unparted_ends(edition, graph);
  numbers.behind_circles = taxa_behind_circles(graph);
  numbers.root_share = root_share(edition, graph, numbers.terminals);
  if (numbers.behind_circles == 0) count_ways(edition, graph, numbers);
  return numbers;
}

std::size_t taxa_behind_circles(KeyGraph const& graph) {
  // By position of the terminals: how many runs begin there, less those that end.
  std::vector<std::ptrdiff_t> change(graph.taxon_count() + 1, 0);
  for (auto const& cycle : graph.cycles()) {
    if (!graph.reachable(cycle.front())) continue;
    for (auto const run : graph.taxa_below(cycle.front())) {
      ++change[run.begin];
      --change[run.end];
    }
  }
  std::size_t taxa = 0;
  std::ptrdiff_t runs = 0;
  for (auto const more : change) {
    runs += more;
    if (runs > 0) ++taxa;
  }
  return taxa;
}

std::optional<FrequencyNumbers> frequency_numbers(Edition const& edition, KeyGraph const& graph,
                                                  std::span<double const> weights) {
  if (taxa_behind_circles(graph) > 0) return std::nullopt;
  auto const lengths = route_lengths(edition, graph);
  FrequencyNumbers numbers;
  std::vector<double> kept;
  double sum = 0;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    if (std::isnan(lengths[i]) || !(weights[i] > 0)) continue;
    kept.push_back(weights[i]);
    numbers.total += weights[i];
    sum += weights[i] * lengths[i];
  }
  if (kept.empty()) return std::nullopt;
  numbers.taxa = kept.size();
  numbers.mean_route = sum / numbers.total;
  numbers.entropy = entropy(kept);
  auto const bounds = bounds_of(edition, graph, weights, sum);
  numbers.entropy_bound = bounds.entropy;
  numbers.huffman_bound = bounds.huffman;
  return numbers;
}

std::vector<double> mean_route_costs(Edition const& edition, KeyGraph const& graph,
                                     std::span<double const> cost) {
  return mean_over_routes(edition, graph, 0,
                          [&](double sum, CoupletId couplet) { return sum + cost[couplet.index]; });
}

std::vector<double> chances_of_right(Edition const& edition, KeyGraph const& graph,
                                     std::span<double const> error) {
  return mean_over_routes(edition, graph, 1, [&](double chance, CoupletId couplet) {
    return chance * (1 - error[couplet.index]);
  });
}

double entropy(std::span<double const> weights) {
  double total = 0;
  for (auto const weight : weights) total += weight > 0 && std::isfinite(weight) ? weight : 0;
  double bits = 0;
  for (auto const weight : weights) {
    if (!(weight > 0) || !std::isfinite(weight) || weight == total) continue;
    auto const share = weight / total;
    bits -= share * std::log2(share);
  }
  return bits;
}

double huffman_mean(std::span<double const> weights, unsigned arity) {
  std::vector<double> sorted;
  for (auto const weight : weights) {
    if (weight > 0 && std::isfinite(weight)) sorted.push_back(weight);
  }
  if (sorted.size() < 2 || arity < 2) return 0;
  std::sort(sorted.begin(), sorted.end());
  double total = 0;
  for (auto const weight : sorted) total += weight;

  // The first, narrower joint is what padding with symbols of no weight comes to.
  std::size_t const surplus = (sorted.size() - 1) % (arity - 1);
  std::size_t width = surplus == 0 ? arity : surplus + 1;
  // Joints come out in ascending order, so two queues do for a heap.
  std::size_t next = 0;
  std::deque<double> joints;
  double mean = 0;
  while (sorted.size() - next + joints.size() > 1) {
    double joint = 0;
    for (; width > 0; --width) {
      if (joints.empty() || (next < sorted.size() && sorted[next] <= joints.front())) {
        joint += sorted[next++];
      } else {
        joint += joints.front();
        joints.pop_front();
      }
    }
    joints.push_back(joint);
    mean += joint / total;
    width = arity;
  }
  return mean;
}

}  // namespace keydrift
