// Where the ways of the two editions part, and which statements decide it.

#include <algorithm>
#include <set>

#include "keydrift/redetermination/judge.hpp"

namespace keydrift {
namespace {

std::size_t common_prefix(Route const& a, Route const& b) {
  auto const ends = std::mismatch(a.begin(), a.end(), b.begin(), b.end());
  return static_cast<std::size_t>(ends.first - a.begin());
}

// The step of `old_route` that answers to a couplet of the new route: the one aligned with the
// parting couplet itself, else with the nearest couplet before it; else the step that names the
// taxon.
std::optional<LeadId> matching_old_step(Alignment const& alignment, Route const& old_route,
                                        Route const& new_route, std::size_t at) {
  if (old_route.empty()) return std::nullopt;
  for (std::size_t i = std::min(at + 1, new_route.size()); i-- > 0;) {
    auto const* pair = alignment.of_new(new_route[i].couplet);
    if (pair == nullptr) continue;
    auto const step = std::find_if(old_route.begin(), old_route.end(),
                                   [&](LeadId lead) { return lead.couplet == pair->old_couplet; });
    if (step == old_route.end()) continue;
    if (i < at && step + 1 != old_route.end()) return *(step + 1);
    return *step;
  }
  return old_route.back();
}

}  // namespace

std::optional<Parting> Judge::parting(Determination const& determination,
                                      Possibilities const& possibilities,
                                      std::optional<CoupletId> strands_at,
                                      Box const& recorded) const {
  auto const& alignment = sides_.collation->alignment;
  auto const& new_key = *sides_.new_key;
  auto const& space = *new_key.space;
  Parting parting;

  // The way to compare: another concept's, or for a split the second part's.
  Hypothesis const* actual = nullptr;
  std::vector<Route> expected;
  for (auto const& hypothesis : possibilities.hypotheses) {
    auto const kin = kinship(determination, hypothesis.old_taxon, hypothesis.new_taxon);
    if (kin == Kinship::same || kin == Kinship::renamed) {
      expected.push_back(hypothesis.route);
    } else if (actual == nullptr) {
      actual = &hypothesis;
    }
  }
  if (actual == nullptr && strands_at) {
    auto const& old_leaf = possibilities.old_leaves.front();
    parting.new_couplet = strands_at;
    auto const* pair = alignment.of_new(*strands_at);
    for (auto const& step : old_leaf.route) {
      if (pair != nullptr && step.couplet == pair->old_couplet) parting.old_lead = step;
    }
    if (!parting.old_lead && !old_leaf.route.empty()) parting.old_lead = old_leaf.route.back();
  }
  if (actual == nullptr && !strands_at) return std::nullopt;

  std::set<LeadId> concerned;  // leads of the new edition whose statements decide
  Box const* evidence = &recorded;
  if (actual != nullptr) {
    auto const& old_leaf = possibilities.old_leaves[actual->old_leaf];
    if (possibilities.implied) evidence = &old_leaf.box;
    if (expected.empty()) {
      for (auto const& hypothesis : possibilities.hypotheses) {
        if (hypothesis.new_taxon != actual->new_taxon) expected.push_back(hypothesis.route);
      }
    }
    if (expected.empty() && actual->old_taxon) {
      // The way that the same concept has in the new edition, though the evidence bars it.
      for (auto const* match : sides_.collation->taxa_matching.of_old(*actual->old_taxon)) {
        if (match->new_taxon == actual->new_taxon) continue;
        auto const routes = new_key.graph->routes_to(match->new_taxon, 16).routes;
        expected.insert(expected.end(), routes.begin(), routes.end());
      }
    }
    std::size_t at = 0;
    Route const* nearest = nullptr;
    for (auto const& route : expected) {
      auto const shared = common_prefix(route, actual->route);
      if (shared >= actual->route.size() || shared >= route.size()) continue;
      if (nearest == nullptr || shared > at) {
        nearest = &route;
        at = shared;
      }
    }
    if (nearest == nullptr) {
      // No counterpart: the first step that the old route does not take as well.
      while (at + 1 < actual->route.size()) {
        auto const* pair = alignment.of_new(actual->route[at].couplet);
        bool const shared =
            pair != nullptr &&
            std::any_of(old_leaf.route.begin(), old_leaf.route.end(), [&](LeadId step) {
              return step.couplet == pair->old_couplet &&
                     std::find(pair->leads.begin(), pair->leads.end(),
                               LeadPair{step.ordinal, actual->route[at].ordinal}) !=
                         pair->leads.end();
            });
        if (!shared) break;
        ++at;
      }
    } else {
      concerned.insert((*nearest)[at]);
    }
    if (at >= actual->route.size()) return std::nullopt;
    parting.new_couplet = actual->route[at].couplet;
    parting.new_lead = actual->route[at];
    concerned.insert(actual->route[at]);
    parting.old_lead = matching_old_step(alignment, old_leaf.route, actual->route, at);
  } else {
    auto const& leads = new_key.couplets[strands_at->index];
    for (auto const& lead : leads) concerned.insert(lead.id);
    if (possibilities.implied) evidence = &possibilities.old_leaves.front().box;
  }

  // Statements that the evidence does not already grant, and what the old route says of the same
  // characters.
  std::set<CharacterIndex> characters;
  auto const add = [&](LeadId lead, CompiledStatement const& statement, bool in_new) {
    DecidingStatement deciding{.in_new = in_new,
                               .lead = lead,
                               .statement = statement.ordinal,
                               .known = known_words(statement, space, *evidence),
                               .recorded = false};
    deciding.recorded = !deciding.known.empty() && !known_words(statement, space, recorded).empty();
    parting.deciding.push_back(std::move(deciding));
  };
  for (auto const lead : concerned) {
    for (auto const& statement : new_key.couplets[lead.couplet.index][lead.ordinal].statements) {
      if (statement.strength == Strength::hedged) continue;
      bool const granted = truth_of(statement, space, *evidence) == Truth::holds;
      bool const chosen = parting.new_lead && lead == *parting.new_lead;
      if (granted && !chosen) continue;
      add(lead, statement, true);
      for (auto const& atom : statement.any_of) {
        if (!atom.from_limit) characters.insert(atom.character);
      }
    }
  }
  auto const& old_key = *sides_.old_key;
  Route const* old_route = nullptr;
  if (actual != nullptr) old_route = &possibilities.old_leaves[actual->old_leaf].route;
  if (old_route == nullptr && !possibilities.old_leaves.empty()) {
    old_route = &possibilities.old_leaves.front().route;
  }
  if (old_route != nullptr) {
    for (auto const lead : *old_route) {
      for (auto const& statement : old_key.couplets[lead.couplet.index][lead.ordinal].statements) {
        bool const concerns = std::any_of(
            statement.any_of.begin(), statement.any_of.end(),
            [&](CompiledAtom const& atom) { return characters.contains(atom.character); });
        if (concerns) add(lead, statement, false);
      }
    }
  }
  return parting;
}

}  // namespace keydrift
