#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <string>
#include <tuple>
#include <utility>

#include "keydrift/collation/ground.hpp"

namespace keydrift::collating {
namespace {

std::size_t index_of(Of of) { return static_cast<std::size_t>(of); }

// Routes looked at for one taxon in one edition.  A taxon that has more is compared by these.
constexpr std::size_t most_routes = 32;

// Two routes laid side by side.
struct Laid {
  std::vector<RouteStep> steps;
  std::size_t agreeing{};  // steps with the same lead and nothing restated
  std::size_t aligned{};
  std::optional<std::size_t> parting;
};

bool agrees(RouteStep const& step) { return step.aligned && step.same_lead && !step.restated; }

class Routing {
 public:
  explicit Routing(Ground const& ground) : ground_{ground} {
    for (auto const of : {Of::old_edition, Of::new_edition}) {
      auto const& side = ground_.side(of);
      position_[index_of(of)].assign(side.couplet_count(), none);
      excepting_[index_of(of)].resize(side.edition->taxa.size());
      for (std::uint32_t row = 0; row < side.leads.size(); ++row) {
        for (auto const& statement : side.lead(row).statements) {
          if (statement.strength != Strength::excepted) continue;
          for (auto const& group : statement.except) {
            for (auto const taxon : ground_.exceptions.members(of, group)) {
              auto& rows = excepting_[index_of(of)][taxon.index];
              if (rows.empty() || rows.back() != row) rows.push_back(row);
            }
          }
        }
      }
    }
  }

  std::vector<TaxonChange> run() {
    std::vector<TaxonChange> changes;
    auto const& edition = *ground_.new_side.edition;
    // In order of the new edition; what left comes last.
    std::vector<TaxonMatch const*> matches;
    std::vector<char> has_new(ground_.old_side.edition->taxa.size(), 0);
    for (auto const& match : ground_.matching.matches) {
      if (match.relation == Relation::disjoint) continue;
      matches.push_back(&match);
      has_new[match.old_taxon.index] = 1;
    }
    std::stable_sort(matches.begin(), matches.end(), [](TaxonMatch const* a, TaxonMatch const* b) {
      return std::tie(a->new_taxon, a->old_taxon) < std::tie(b->new_taxon, b->old_taxon);
    });
    auto next = matches.begin();
    for (std::uint32_t i = 0; i < edition.taxa.size(); ++i) {
      if (next == matches.end() || (*next)->new_taxon.index != i) {
        changes.push_back(alone(Of::new_edition, TaxonId{i}));
      }
      for (; next != matches.end() && (*next)->new_taxon.index == i; ++next) {
        changes.push_back(matched(**next));
      }
    }
    for (std::uint32_t i = 0; i < has_new.size(); ++i) {
      if (has_new[i] == 0) changes.push_back(alone(Of::old_edition, TaxonId{i}));
    }
    return changes;
  }

 private:
  TaxonChange alone(Of of, TaxonId taxon) {
    TaxonChange change;
    bool const is_new = of == Of::new_edition;
    (is_new ? change.new_taxa : change.old_taxa).push_back(taxon);
    change.relation = Relation::disjoint;
    change.events = {is_new ? TaxonEvent::entered : TaxonEvent::left};
    auto const& graph = *ground_.side(of).graph;
    (is_new ? change.new_ends : change.old_ends) = graph.leads_to(taxon).size();
    auto const routes = graph.routes_to(taxon, 1);
    if (!routes.routes.empty()) {
      for (auto const lead : routes.routes.front()) {
        RouteStep step;
        (is_new ? step.new_lead : step.old_lead) = lead;
        change.steps.push_back(step);
      }
    }
    if (!change.steps.empty()) change.parting = 0;
    auto const characters = characters_on(of, taxon);
    (is_new ? change.characters_gained : change.characters_lost)
        .assign(characters.begin(), characters.end());
    return change;
  }

  TaxonChange matched(TaxonMatch const& match) {
    TaxonChange change;
    change.old_taxa = {match.old_taxon};
    change.new_taxa = {match.new_taxon};
    change.relation = match.relation;
    change.basis = match.basis;
    auto const& old_graph = *ground_.old_side.graph;
    auto const& new_graph = *ground_.new_side.graph;
    change.old_ends = old_graph.leads_to(match.old_taxon).size();
    change.new_ends = new_graph.leads_to(match.new_taxon).size();

    auto const old_routes = old_graph.routes_to(match.old_taxon, most_routes);
    auto const new_routes = new_graph.routes_to(match.new_taxon, most_routes);
    // Routes with an equal on the other side are set aside: what is shown is what changed.
    auto [olds, news] = without_equals(old_routes.routes, new_routes.routes);
    bool const same =
        olds.empty() && news.empty() &&
        old_graph.route_count(match.old_taxon) == new_graph.route_count(match.new_taxon);
    auto const laid = best_pair(olds.empty() ? all(old_routes.routes) : olds,
                                news.empty() ? all(new_routes.routes) : news);
    change.steps = laid.steps;
    change.parting = laid.parting;

    auto& events = change.events;
    if (same) {
      events.push_back(TaxonEvent::same_route);
    } else if (olds.size() == news.size() && !laid.steps.empty() &&
               std::all_of(laid.steps.begin(), laid.steps.end(),
                           [](RouteStep const& s) { return s.aligned && s.same_lead; })) {
      events.push_back(TaxonEvent::restated_route);
    } else {
      events.push_back(TaxonEvent::other_route);
    }
    switch (match.relation) {
      case Relation::congruent:
        if (!match.same_name) events.push_back(TaxonEvent::renamed);
        break;
      case Relation::includes:
        events.push_back(TaxonEvent::split);
        break;
      case Relation::included_in:
        events.push_back(TaxonEvent::lumped);
        break;
      case Relation::overlaps:
        events.push_back(TaxonEvent::overlapping);
        break;
      case Relation::disjoint:
        break;
    }
    if (change.new_ends > change.old_ends) events.push_back(TaxonEvent::more_ends);
    if (change.new_ends < change.old_ends) events.push_back(TaxonEvent::fewer_ends);
    bool const was = by_exception_only(Of::old_edition, match.old_taxon);
    bool const is = by_exception_only(Of::new_edition, match.new_taxon);
    if (is && !was) events.push_back(TaxonEvent::only_by_exception);
    if (was && !is) events.push_back(TaxonEvent::no_longer_by_exception);
    std::sort(events.begin(), events.end());

    if (!same) {
      auto const before = characters_on(Of::old_edition, match.old_taxon);
      auto const after = characters_on(Of::new_edition, match.new_taxon);
      std::set_difference(before.begin(), before.end(), after.begin(), after.end(),
                          std::back_inserter(change.characters_lost));
      std::set_difference(after.begin(), after.end(), before.begin(), before.end(),
                          std::back_inserter(change.characters_gained));
    }
    return change;
  }

  using Some = std::vector<Route const*>;
  static Some all(std::vector<Route> const& routes) {
    Some some;
    for (auto const& route : routes) some.push_back(&route);
    return some;
  }

  // Does the new route take the counterparts of the old one's leads, none of them restated?
  [[nodiscard]] bool equal(Route const& old_route, Route const& new_route) const {
    return std::equal(old_route.begin(), old_route.end(), new_route.begin(), new_route.end(),
                      [&](LeadId a, LeadId b) {
                        auto const row = ground_.old_side.row(a);
                        return ground_.counterparts.lead[0][row] == ground_.new_side.row(b) &&
                               !ground_.lead_changes[row].restated;
                      });
  }

  [[nodiscard]] std::pair<Some, Some> without_equals(std::vector<Route> const& olds,
                                                     std::vector<Route> const& news) const {
    std::vector<char> taken(news.size(), 0);
    Some old_rest;
    for (auto const& old_route : olds) {
      bool found = false;
      for (std::size_t j = 0; j < news.size() && !found; ++j) {
        if (taken[j] != 0 || !equal(old_route, news[j])) continue;
        taken[j] = 1;
        found = true;
      }
      if (!found) old_rest.push_back(&old_route);
    }
    Some new_rest;
    for (std::size_t j = 0; j < news.size(); ++j) {
      if (taken[j] == 0) new_rest.push_back(&news[j]);
    }
    return {std::move(old_rest), std::move(new_rest)};
  }

  Laid best_pair(Some const& olds, Some const& news) {
    if (olds.empty() || news.empty()) {
      Route const nowhere;
      return lay(olds.empty() ? nowhere : *olds.front(), news.empty() ? nowhere : *news.front());
    }
    Laid best;
    // More steps that agree, more that are aligned, fewer steps; then the routes printed first, in
    // an order that is the same when the editions change places.
    auto best_key =
        std::tuple{std::size_t{0}, std::size_t{0}, std::size_t{0}, std::size_t{0}, std::size_t{0}};
    for (std::size_t i = 0; i < olds.size(); ++i) {
      for (std::size_t j = 0; j < news.size(); ++j) {
        auto laid = lay(*olds[i], *news[j]);
        auto const last = ~std::size_t{0};
        auto const key = std::tuple{laid.agreeing + 1, laid.aligned, last - laid.steps.size(),
                                    last - (i + j), last - std::max(i, j)};
        if (key > best_key) {
          best_key = key;
          best = std::move(laid);
        }
      }
    }
    return best;
  }

  // The longest chain of aligned couplets that stand in the same order on both routes, the rest of
  // each route between them, the old one's first (Fredman 1975, "On computing the length of longest
  // increasing subsequences", Discrete Mathematics 11: 29-35).
  Laid lay(Route const& old_route, Route const& new_route) {
    auto& at = position_[1];
    for (std::uint32_t j = 0; j < new_route.size(); ++j) at[new_route[j].couplet.index] = j;
    std::vector<std::uint32_t> tails;  // old step that ends the best chain of each length
    std::vector<std::uint32_t> before(old_route.size(), none);
    auto const place = [&](std::uint32_t i) {
      auto const there = ground_.counterparts.couplet[0][old_route[i].couplet.index];
      return there == none ? none : at[there];
    };
    for (std::uint32_t i = 0; i < old_route.size(); ++i) {
      auto const j = place(i);
      if (j == none) continue;
      auto const longer =
          std::lower_bound(tails.begin(), tails.end(), j,
                           [&](std::uint32_t k, std::uint32_t value) { return place(k) < value; });
      if (longer != tails.begin()) before[i] = *std::prev(longer);
      if (longer == tails.end()) {
        tails.push_back(i);
      } else {
        *longer = i;
      }
    }
    std::vector<std::uint32_t> chain;
    for (auto i = tails.empty() ? none : tails.back(); i != none; i = before[i]) chain.push_back(i);
    std::reverse(chain.begin(), chain.end());

    Laid laid;
    std::uint32_t i = 0;
    std::uint32_t j = 0;
    auto const lonely_until = [&](std::uint32_t old_end, std::uint32_t new_end) {
      for (; i < old_end; ++i) laid.steps.push_back({.old_lead = old_route[i], .new_lead = {}});
      for (; j < new_end; ++j) laid.steps.push_back({.old_lead = {}, .new_lead = new_route[j]});
    };
    for (auto const step : chain) {
      lonely_until(step, place(step));
      auto const old_row = ground_.old_side.row(old_route[i]);
      bool const same_lead =
          ground_.counterparts.lead[0][old_row] == ground_.new_side.row(new_route[j]);
      laid.steps.push_back({.old_lead = old_route[i],
                            .new_lead = new_route[j],
                            .aligned = true,
                            .same_lead = same_lead,
                            .restated = same_lead && ground_.lead_changes[old_row].restated});
      ++i;
      ++j;
    }
    lonely_until(static_cast<std::uint32_t>(old_route.size()),
                 static_cast<std::uint32_t>(new_route.size()));
    for (auto const lead : new_route) at[lead.couplet.index] = none;

    for (std::size_t k = 0; k < laid.steps.size(); ++k) {
      laid.aligned += laid.steps[k].aligned ? 1U : 0U;
      if (agrees(laid.steps[k])) {
        ++laid.agreeing;
      } else if (!laid.parting) {
        laid.parting = k;
      }
    }
    return laid;
  }

  // Every lead on a way to the taxon, rows; those of `without` are not passed.
  template <class Visit>
  void walk_back(Of of, TaxonId taxon, std::vector<std::uint32_t> const& without,
                 Visit const& visit) {
    auto const& side = ground_.side(of);
    std::vector<std::uint32_t> waiting;
    std::set<std::uint32_t> seen;
    auto const take = [&](std::span<LeadId const> leads) {
      for (auto const lead : leads) {
        auto const row = side.row(lead);
        if (std::binary_search(without.begin(), without.end(), row)) continue;
        if (!side.graph->reachable(lead.couplet)) continue;
        visit(row);
        if (seen.insert(lead.couplet.index).second) waiting.push_back(lead.couplet.index);
      }
    };
    take(side.graph->leads_to(taxon));
    while (!waiting.empty()) {
      auto const couplet = waiting.back();
      waiting.pop_back();
      take(side.graph->leads_to(CoupletId{couplet}));
    }
  }

  [[nodiscard]] std::set<std::string> characters_on(Of of, TaxonId taxon) {
    std::set<std::string> characters;
    auto const& side = ground_.side(of);
    walk_back(of, taxon, {}, [&](std::uint32_t row) {
      for (auto const& statement : side.lead(row).statements) {
        if (statement.strength != Strength::firm && statement.strength != Strength::excepted) {
          continue;
        }
        for (auto const& atom : statement.any_of) characters.insert(atom.character);
      }
    });
    return characters;
  }

  // A route goes through an exception at a lead one of whose excepted statements excepts a group
  // that the taxon belongs to.  True when there is a route and every route does so: the start
  // cannot be reached from the taxon by other leads alone.
  [[nodiscard]] bool by_exception_only(Of of, TaxonId taxon) {
    auto const& rows = excepting_[index_of(of)][taxon.index];
    if (rows.empty()) return false;
    auto const& edition = *ground_.side(of).edition;
    if (edition.parts.empty()) return false;
    auto const start = edition.parts.front().start;
    auto const& side = ground_.side(of);
    bool any = false;
    walk_back(of, taxon, {},
              [&](std::uint32_t row) { any = any || side.leads[row].couplet == start; });
    if (!any) return false;
    bool around = false;
    walk_back(of, taxon, rows,
              [&](std::uint32_t row) { around = around || side.leads[row].couplet == start; });
    return !around;
  }

  Ground const& ground_;
  std::array<std::vector<std::uint32_t>, 2> position_;  // by couplet: step on the route being laid
  std::array<std::vector<std::vector<std::uint32_t>>, 2> excepting_;  // by taxon: rows, ascending
};

}  // namespace

std::vector<TaxonChange> taxon_changes(Ground const& ground) { return Routing{ground}.run(); }

}  // namespace keydrift::collating
