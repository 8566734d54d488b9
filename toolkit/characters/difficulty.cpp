#include "keydrift/characters/difficulty.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <unordered_map>

#include "keydrift/key/numbers.hpp"

namespace keydrift {
namespace {

using Rated = std::unordered_map<std::string_view, Difficulty>;

std::optional<Difficulty> difficulty_of(Couplet const& couplet, Rated const& rated) {
  struct Use {
    std::size_t leads{};
    std::size_t last{};
  };
  std::map<std::string_view, Use> uses;
  for (std::size_t i = 0; i < couplet.leads.size(); ++i) {
    for (auto const& statement : couplet.leads[i].statements) {
      if (statement.strength == Strength::noted) continue;
      for (auto const& atom : statement.any_of) {
        auto& use = uses[atom.character];
        if (use.leads == 0 || use.last != i) ++use.leads;
        use.last = i;
      }
    }
  }
  bool const contrasted = std::any_of(uses.begin(), uses.end(),
                                      [](auto const& entry) { return entry.second.leads > 1; });
  std::optional<Difficulty> easiest;
  bool unknown = false;
  for (auto const& [character, use] : uses) {
    if (contrasted && use.leads < 2) continue;
    auto const found = rated.find(character);
    if (found == rated.end()) {
      unknown = true;
    } else if (!easiest || found->second < *easiest) {
      easiest = found->second;
    }
  }
  // Nothing is easier than what the naked eye sees.
  if (unknown && easiest != Difficulty::naked_eye) return std::nullopt;
  return easiest;
}

double cost_or_least(std::optional<Difficulty> difficulty) {
  return cost_of(difficulty.value_or(Difficulty::naked_eye));
}

}  // namespace

std::vector<std::optional<Difficulty>> couplet_difficulties(Edition const& edition,
                                                            Lexicon const& lexicon) {
  Rated rated;
  for (auto const& character : lexicon.characters) {
    rated.emplace(character.id, character.difficulty);
  }
  std::vector<std::optional<Difficulty>> difficulties;
  difficulties.reserve(edition.couplets.size());
  for (auto const& couplet : edition.couplets) {
    difficulties.push_back(difficulty_of(couplet, rated));
  }
  return difficulties;
}

std::vector<HardEarly> hard_early(Edition const& edition, KeyGraph const& graph,
                                  std::span<std::optional<Difficulty> const> difficulties) {
  // By couplet: the easiest couplet at or below it, itself where none is easier.
  std::vector<std::optional<CoupletId>> easiest(edition.couplets.size());
  std::vector<HardEarly> found;
  auto const order = graph.topological_order();
  for (auto at = order.rbegin(); at != order.rend(); ++at) {
    auto const couplet = *at;
    std::optional<CoupletId> below;
    for (auto const& lead : edition[couplet].leads) {
      auto const* to = std::get_if<ToCouplet>(&lead.destination);
      if (to == nullptr || !easiest[to->couplet.index]) continue;
      auto const there = *easiest[to->couplet.index];
      if (!below || difficulties[there.index] < difficulties[below->index]) below = there;
    }
    auto const& own = difficulties[couplet.index];
    if (own && below && hard(own) && difficulties[below->index] < own) {
      found.push_back({couplet, *own, *below});
    }
    bool const easier_here = own && (!below || own <= difficulties[below->index]);
    easiest[couplet.index] = easier_here ? couplet : below;
  }
  std::sort(found.begin(), found.end(),
            [](HardEarly const& a, HardEarly const& b) { return a.couplet < b.couplet; });
  return found;
}

DifficultyNumbers difficulty_numbers(Edition const& edition, KeyGraph const& graph,
                                     std::span<std::optional<Difficulty> const> difficulties) {
  DifficultyNumbers numbers;
  std::vector<double> cost;
  std::vector<double> past_hard;  // 0 where a route goes on without having met a hard couplet
  for (auto const& difficulty : difficulties) {
    cost.push_back(cost_or_least(difficulty));
    past_hard.push_back(hard(difficulty) ? 1 : 0);
    if (difficulty) {
      ++numbers.couplets[static_cast<std::size_t>(*difficulty)];
    } else {
      ++numbers.unrated;
    }
  }
  numbers.hard_early = hard_early(edition, graph, difficulties).size();
  for (TaxonId t; t.index < edition.taxa.size(); ++t.index) {
    auto const ends = graph.leads_to(t);
    if (std::any_of(ends.begin(), ends.end(),
                    [&](LeadId lead) { return graph.reachable(lead.couplet); })) {
      ++numbers.taxa;
    }
  }
  if (taxa_behind_circles(graph) > 0) return numbers;
  double sum = 0;
  for (auto const mean : mean_route_costs(edition, graph, cost)) {
    if (!std::isnan(mean)) sum += mean;
  }
  numbers.mean_cost = numbers.taxa > 0 ? sum / static_cast<double>(numbers.taxa) : 0;
  numbers.taxa_behind_hard = 0;
  // The chance of meeting no hard couplet is 0 exactly where every route has one.
  for (auto const chance : chances_of_right(edition, graph, past_hard)) {
    if (chance == 0) ++*numbers.taxa_behind_hard;
  }
  return numbers;
}

double ErrorRates::of(std::optional<Difficulty> difficulty) const {
  return difficulty ? by_difficulty[static_cast<std::size_t>(*difficulty)].value_or(rate) : rate;
}

std::optional<ExpectedRight> expected_right(Edition const& edition, KeyGraph const& graph,
                                            std::span<std::optional<Difficulty> const> difficulties,
                                            ErrorRates const& rates,
                                            std::span<double const> weights) {
  if (taxa_behind_circles(graph) > 0) return std::nullopt;
  std::vector<double> error;
  error.reserve(difficulties.size());
  for (auto const& difficulty : difficulties) error.push_back(rates.of(difficulty));
  auto const chances = chances_of_right(edition, graph, error);
  ExpectedRight result{.rates = rates, .mean = 0, .frequency_mean = {}, .taxa = {}};
  double sum = 0, weighted = 0, total = 0;
  for (TaxonId t; t.index < chances.size(); ++t.index) {
    auto const chance = chances[t.index];
    if (std::isnan(chance)) continue;
    result.taxa.push_back({t, chance});
    sum += chance;
    if (t.index >= weights.size()) continue;
    weighted += weights[t.index] * chance;
    total += weights[t.index];
  }
  if (result.taxa.empty()) return std::nullopt;
  result.mean = sum / static_cast<double>(result.taxa.size());
  if (total > 0) result.frequency_mean = weighted / total;
  std::stable_sort(result.taxa.begin(), result.taxa.end(),
                   [](TaxonChance const& a, TaxonChance const& b) { return a.chance < b.chance; });
  return result;
}

}  // namespace keydrift
