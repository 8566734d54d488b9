#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "keydrift/collation/followed_ways.hpp"
#include "keydrift/collation/ground.hpp"
#include "keydrift/collation/routes.hpp"
#include "keydrift/collation/ways.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::collating {
namespace {

// Routes looked at for one taxon in one edition when they changed.  Of a taxon that has more the
// ones printed first are shown; whether its ways are the same is told from all of them.
constexpr std::size_t most_routes = 32;

class TaxonTelling {
 public:
  explicit TaxonTelling(Ground const& ground)
      : ground_{ground},
        numbers_{ground.numbers},
        routes_{ground},
        ways_{both_ways(ground)},
        followed_{ground.old_side, ground.new_side, ways_} {}

  // Taxa are told apart from each other, each thread with marks of its own on the ways.
  [[nodiscard]] std::vector<TaxonChange> run() const {
    auto const subjects = in_order();
    std::vector<TaxonChange> changes(subjects.size());
    constexpr std::size_t worth_a_thread = 2000;
    in_parts(subjects.size(), worth_a_thread, [&](std::size_t begin, std::size_t end) {
      auto telling = *this;
      for (auto i = begin; i < end; ++i) {
        auto const& [match, of, taxon] = subjects[i];
        changes[i] = match != nullptr ? telling.matched(*match) : telling.alone(of, taxon);
      }
    });
    return changes;
  }

 private:
  struct Subject {
    TaxonMatch const* match{};  // null: a taxon of one edition only
    Of of{};
    TaxonId taxon{};
  };

  // In order of the new edition; what left comes last.
  [[nodiscard]] std::vector<Subject> in_order() const {
    std::vector<Subject> subjects;
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
    for (std::uint32_t i = 0; i < ground_.new_side.edition->taxa.size(); ++i) {
      if (next == matches.end() || (*next)->new_taxon.index != i) {
        subjects.push_back({nullptr, Of::new_edition, TaxonId{i}});
      }
      for (; next != matches.end() && (*next)->new_taxon.index == i; ++next) {
        subjects.push_back({.match = *next});
      }
    }
    for (std::uint32_t i = 0; i < has_new.size(); ++i) {
      if (has_new[i] == 0) subjects.push_back({nullptr, Of::old_edition, TaxonId{i}});
    }
    return subjects;
  }

  static std::array<Ways, 2> both_ways(Ground const& ground) {
    std::array<std::optional<Ways>, 2> made;
    side_by_side({
        [&] {
          made[0].emplace(ground.old_side, Of::old_edition, ground.exceptions, ground.numbers);
        },
        [&] {
          made[1].emplace(ground.new_side, Of::new_edition, ground.exceptions, ground.numbers);
        },
    });
    return {std::move(*made[0]), std::move(*made[1])};
  }

  Ways& ways(Of of) { return ways_[index_of(of)]; }

  void show(LaidRoutes laid, TaxonChange& change) const {
    change.steps = std::move(laid.steps);
    change.parting = laid.parting;
    change.steps_before = laid.left_out_before;
    change.steps_after = laid.left_out_after;
  }

  TaxonChange alone(Of of, TaxonId taxon) {
    TaxonChange change;
    bool const is_new = of == Of::new_edition;
    (is_new ? change.new_taxa : change.old_taxa).push_back(taxon);
    change.relation = Relation::disjoint;
    change.events = {is_new ? TaxonEvent::entered : TaxonEvent::left};
    auto const& graph = *ground_.side(of).graph;
    (is_new ? change.new_ends : change.old_ends) = graph.leads_to(taxon).size();
    auto& names = is_new ? change.characters_gained : change.characters_lost;
    auto& others = is_new ? change.others_gained : change.others_lost;
    Route const nowhere;
    auto const lay = [&](Route const& route) {
      return is_new ? routes_.lay(nowhere, route) : routes_.lay(route, nowhere);
    };
    if (followed_.has_one(of, taxon)) {
      followed_.follow(of, taxon);
      show(lay(followed_.path(of)), change);
      name_first(followed_.on_path(of), names, others);
      return change;
    }
    auto const routes = graph.routes_to(taxon, 1).routes;
    show(lay(routes.empty() ? nowhere : routes.front()), change);
    auto characters = ways(of).characters(taxon);
    name_first(characters, names, others);
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

    auto& events = change.events;
    bool const same =
        routes_.same_ways(match.old_taxon, match.new_taxon, RouteComparison::Restated::differs);
    if (same) {
      events.push_back(TaxonEvent::same_route);
      show_same(match, change);
    } else if (followed_.has_one(Of::old_edition, match.old_taxon) &&
               followed_.has_one(Of::new_edition, match.new_taxon)) {
      events.push_back(follow_other(match, change));
    } else {
      events.push_back(show_other(match, change));
      tell_characters(match, change);
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
    bool const was = ways(Of::old_edition).only_by_exception(match.old_taxon);
    bool const is = ways(Of::new_edition).only_by_exception(match.new_taxon);
    if (is && !was) events.push_back(TaxonEvent::only_by_exception);
    if (was && !is) events.push_back(TaxonEvent::no_longer_by_exception);
    std::sort(events.begin(), events.end());
    return change;
  }

  // The first route in the old edition beside the same route in the new one.
  void show_same(TaxonMatch const& match, TaxonChange& change) {
    if (followed_.has_one(Of::old_edition, match.old_taxon)) {
      auto const end = followed_.end_of(Of::old_edition, match.old_taxon, most_steps);
      show(routes_.lay_same(end.leads, end.length), change);
      return;
    }
    auto const olds = ground_.old_side.graph->routes_to(match.old_taxon, 1).routes;
    if (olds.empty()) return;
    Route there;
    there.reserve(olds.front().size());
    for (auto const lead : olds.front()) {
      auto const row = ground_.counterparts.lead[0][ground_.old_side.row(lead)];
      there.push_back(ground_.new_side.leads[row]);
    }
    show(routes_.lay(olds.front(), there), change);
  }

  // How the one route of the taxon changed, and the characters on it.
  TaxonEvent follow_other(TaxonMatch const& match, TaxonChange& change) {
    followed_.follow(Of::old_edition, match.old_taxon);
    followed_.follow(Of::new_edition, match.new_taxon);
    auto const old_kept = followed_.kept_since(Of::old_edition);
    auto const new_kept = followed_.kept_since(Of::new_edition);
    show(routes_.lay_followed(followed_.path(Of::old_edition), old_kept,
                              followed_.path(Of::new_edition), new_kept),
         change);
    name_first(followed_.on_this_path_only(Of::old_edition), change.characters_lost,
               change.others_lost);
    name_first(followed_.on_this_path_only(Of::new_edition), change.characters_gained,
               change.others_gained);
    return routes_.same_ways(match.old_taxon, match.new_taxon,
                             RouteComparison::Restated::is_the_same)
               ? TaxonEvent::restated_route
               : TaxonEvent::other_route;
  }

  // How the taxon's routes changed.  Shown is, of the routes that have no equal on the other side,
  // the pair that agrees best.
  TaxonEvent show_other(TaxonMatch const& match, TaxonChange& change) {
    using Restated = RouteComparison::Restated;
    bool const restated =
        routes_.same_ways(match.old_taxon, match.new_taxon, Restated::is_the_same);
    auto const olds = ground_.old_side.graph->routes_to(match.old_taxon, most_routes);
    auto const news = ground_.new_side.graph->routes_to(match.new_taxon, most_routes);
    auto [old_rest, new_rest] = without_equal(olds.routes, news.routes,
                                              restated ? Restated::differs : Restated::is_the_same);
    Route const nowhere;
    if (old_rest.empty()) old_rest.push_back(&nowhere);
    if (new_rest.empty()) new_rest.push_back(&nowhere);
    show(routes_.lay_best(old_rest, new_rest), change);
    return restated ? TaxonEvent::restated_route : TaxonEvent::other_route;
  }

  using Some = std::vector<Route const*>;
  // A route that came or went is shown beside the nearest one of the other edition: where one side
  // has nothing left, all of it is returned.
  [[nodiscard]] std::pair<Some, Some> without_equal(std::vector<Route> const& olds,
                                                    std::vector<Route> const& news,
                                                    RouteComparison::Restated restated) const {
    std::vector<char> taken(news.size(), 0);
    Some old_rest;
    Some new_rest;
    for (auto const& old_route : olds) {
      bool found = false;
      for (std::size_t j = 0; j < news.size() && !found; ++j) {
        if (taken[j] != 0 || !routes_.same(old_route, news[j], restated)) continue;
        taken[j] = 1;
        found = true;
      }
      if (!found) old_rest.push_back(&old_route);
    }
    for (std::size_t j = 0; j < news.size(); ++j) {
      if (taken[j] == 0) new_rest.push_back(&news[j]);
    }
    if (old_rest.empty()) {
      for (auto const& route : olds) old_rest.push_back(&route);
    }
    if (new_rest.empty()) {
      for (auto const& route : news) new_rest.push_back(&route);
    }
    return {std::move(old_rest), std::move(new_rest)};
  }

  void tell_characters(TaxonMatch const& match, TaxonChange& change) {
    auto& before = ways(Of::old_edition);
    auto& after = ways(Of::new_edition);
    auto lost = before.characters(match.old_taxon);
    auto gained = after.characters(match.new_taxon);
    std::erase_if(lost, [&](std::uint32_t number) { return after.among_last(number); });
    std::erase_if(gained, [&](std::uint32_t number) { return before.among_last(number); });
    name_first(lost, change.characters_lost, change.others_lost);
    name_first(gained, change.characters_gained, change.others_gained);
  }

  void name_first(FollowedWays::Characters const& numbers, std::vector<std::string>& names,
                  std::size_t& others) const {
    for (auto const number : numbers) {
      if (names.size() == most_characters_told) break;
      names.push_back(numbers_.character(number));
    }
    others = numbers.size() - names.size();
  }

  void name_first(std::vector<std::uint32_t>& numbers, std::vector<std::string>& names,
                  std::size_t& others) const {
    auto const told = std::min(numbers.size(), most_characters_told);
    std::partial_sort(numbers.begin(), numbers.begin() + static_cast<std::ptrdiff_t>(told),
                      numbers.end());
    for (std::size_t i = 0; i < told; ++i) names.push_back(numbers_.character(numbers[i]));
    others = numbers.size() - told;
  }

  Ground const& ground_;
  CharacterNumbers const& numbers_;
  RouteComparison routes_;
  std::array<Ways, 2> ways_;
  FollowedWays followed_;
};

}  // namespace

std::vector<TaxonChange> taxon_changes(Ground const& ground) { return TaxonTelling{ground}.run(); }

}  // namespace keydrift::collating
