#include "keydrift/collation/routes.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

namespace keydrift::collating {
namespace {

bool agrees(RouteStep const& step) { return step.aligned && step.same_lead && !step.restated; }

std::size_t count_reachable(Side const& side, std::span<LeadId const> leads) {
  return static_cast<std::size_t>(std::count_if(leads.begin(), leads.end(), [&](LeadId lead) {
    return side.graph->reachable(lead.couplet);
  }));
}

}  // namespace

RouteComparison::RouteComparison(Ground const& ground)
    : ground_{ground}, chain_{ground.counterparts}, followed_{ground.counterparts} {
  for (auto const restated : {Restated::differs, Restated::is_the_same}) {
    changed_above_[static_cast<std::size_t>(restated)] = find_changed_above(restated);
  }
}

std::vector<char> RouteComparison::find_changed_above(Restated restated) const {
  auto const& old_side = ground_.old_side;
  auto const& new_side = ground_.new_side;
  std::array<std::vector<char>, 2> is_start;
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    auto& starts = is_start[index_of(of)];
    starts.assign(ground_.side(of).couplet_count(), 0);
    for (auto const& part : ground_.side(of).edition->parts) {
      if (part.start.index < starts.size()) starts[part.start.index] = 1;
    }
  }
  // A couplet's ways differ where its own incoming leads differ, and below every such couplet.
  // Starting from "nothing differs" this holds on cycles too.
  std::vector<char> changed_above(old_side.couplet_count(), 0);
  std::vector<std::uint32_t> waiting;
  for (std::uint32_t i = 0; i < old_side.couplet_count(); ++i) {
    auto const there = ground_.counterparts.couplet[0][i];
    if (there != none && is_start[0][i] == is_start[1][there] &&
        same_leads_to(old_side.graph->leads_to(CoupletId{i}),
                      new_side.graph->leads_to(CoupletId{there}), restated)) {
      continue;
    }
    changed_above[i] = 1;
    waiting.push_back(i);
  }
  while (!waiting.empty()) {
    auto const couplet = waiting.back();
    waiting.pop_back();
    for (auto row = old_side.first_lead[couplet]; row < old_side.end_lead(couplet); ++row) {
      auto const next = old_side.behind[row];
      if (next == none || changed_above[next] != 0) continue;
      changed_above[next] = 1;
      waiting.push_back(next);
    }
  }
  return changed_above;
}

// Leads of unreachable couplets are on no way and do not count.
bool RouteComparison::same_leads_to(std::span<LeadId const> old_leads,
                                    std::span<LeadId const> new_leads, Restated restated) const {
  auto const& old_side = ground_.old_side;
  auto const& new_side = ground_.new_side;
  for (auto const lead : old_leads) {
    if (!old_side.graph->reachable(lead.couplet)) continue;
    auto const row = old_side.row(lead);
    auto const there = ground_.counterparts.lead[0][row];
    if (there == none) return false;
    if (restated == Restated::differs && ground_.lead_changes[row].restated) return false;
    // Leads in printed order: they are sorted.
    if (!std::binary_search(new_leads.begin(), new_leads.end(), new_side.leads[there])) {
      return false;
    }
  }
  return count_reachable(old_side, old_leads) == count_reachable(new_side, new_leads);
}

bool RouteComparison::same_ways(TaxonId old_taxon, TaxonId new_taxon, Restated restated) const {
  auto const& changed_above = changed_above_[static_cast<std::size_t>(restated)];
  auto const old_leads = ground_.old_side.graph->leads_to(old_taxon);
  auto const new_leads = ground_.new_side.graph->leads_to(new_taxon);
  return same_leads_to(old_leads, new_leads, restated) &&
         std::none_of(old_leads.begin(), old_leads.end(), [&](LeadId lead) {
           return ground_.old_side.graph->reachable(lead.couplet) &&
                  changed_above[lead.couplet.index] != 0;
         });
}

bool RouteComparison::same(Route const& old_route, Route const& new_route,
                           Restated restated) const {
  return std::equal(old_route.begin(), old_route.end(), new_route.begin(), new_route.end(),
                    [&](LeadId a, LeadId b) {
                      auto const step = step_of(a, b);
                      return agrees(step) || (restated == Restated::is_the_same && step.same_lead);
                    });
}

// Of two steps whose couplets are aligned (or not, then nothing agrees).
RouteStep RouteComparison::step_of(LeadId old_lead, LeadId new_lead) const {
  auto const row = ground_.old_side.row(old_lead);
  bool const same_lead = ground_.counterparts.lead[0][row] == ground_.new_side.row(new_lead);
  return {
      .old_lead = old_lead,
      .new_lead = new_lead,
      .aligned = ground_.counterparts.couplet[0][old_lead.couplet.index] == new_lead.couplet.index,
      .same_lead = same_lead,
      .restated = same_lead && ground_.lead_changes[row].restated};
}

std::size_t RouteComparison::agreeing_steps(Route const& old_route, Route const& new_route,
                                            Links const& links, std::size_t known) const {
  auto agreeing = known;
  while (agreeing < links.size() && links[agreeing].old_step == agreeing &&
         links[agreeing].new_step == agreeing &&
         agrees(step_of(old_route[agreeing], new_route[agreeing]))) {
    ++agreeing;
  }
  return agreeing;
}

LaidRoutes RouteComparison::lay(Route const& old_route, Route const& new_route) {
  chain_.update(old_route, 0, new_route, 0);
  return lay(old_route, new_route, chain_.links(),
             agreeing_steps(old_route, new_route, chain_.links(), 0));
}

LaidRoutes RouteComparison::lay_followed(Route const& old_route, std::size_t old_kept,
                                         Route const& new_route, std::size_t new_kept) {
  followed_.update(old_route, old_kept, new_route, new_kept);
  followed_agreeing_ = agreeing_steps(old_route, new_route, followed_.links(),
                                      std::min(followed_agreeing_, followed_.links_kept()));
  return lay(old_route, new_route, followed_.links(), followed_agreeing_);
}

LaidRoutes RouteComparison::lay(Route const& old_route, Route const& new_route, Links const& links,
                                std::size_t agreeing) const {
  LaidRoutes laid;
  if (old_route.empty() || new_route.empty()) {
    auto const& route = old_route.empty() ? new_route : old_route;
    laid.left_out_before = route.size() - std::min(route.size(), most_steps);
    for (auto k = laid.left_out_before; k < route.size(); ++k) {
      laid.steps.push_back(old_route.empty() ? RouteStep{.old_lead = {}, .new_lead = route[k]}
                                             : RouteStep{.old_lead = route[k], .new_lead = {}});
    }
    if (!route.empty() && laid.left_out_before == 0) laid.parting = 0;
    return laid;
  }
  // Steps that agree from the start on are counted, so that only those shown are made.
  laid.left_out_before = agreeing - std::min(agreeing, most_steps);
  for (auto k = laid.left_out_before; k < agreeing; ++k) {
    laid.steps.push_back(step_of(old_route[k], new_route[k]));
  }
  auto const whole_route = old_route.size() + new_route.size() - links.size();
  if (agreeing < whole_route) laid.parting = laid.steps.size();

  auto const room = laid.steps.size() + most_steps;
  auto i = agreeing;
  auto j = agreeing;
  auto const lonely_until = [&](std::size_t old_end, std::size_t new_end) {
    for (; i < old_end && laid.steps.size() < room; ++i) {
      laid.steps.push_back({.old_lead = old_route[i], .new_lead = {}});
    }
    for (; j < new_end && laid.steps.size() < room; ++j) {
      laid.steps.push_back({.old_lead = {}, .new_lead = new_route[j]});
    }
  };
  for (auto k = agreeing; k < links.size() && laid.steps.size() < room; ++k) {
    lonely_until(links[k].old_step, links[k].new_step);
    if (laid.steps.size() == room) break;
    laid.steps.push_back(step_of(old_route[i], new_route[j]));
    ++i;
    ++j;
  }
  lonely_until(old_route.size(), new_route.size());
  laid.left_out_after = whole_route - laid.left_out_before - laid.steps.size();
  return laid;
}

LaidRoutes RouteComparison::lay_same(Route const& end, std::size_t length) const {
  LaidRoutes laid;
  laid.left_out_before = length - end.size();
  for (auto const lead : end) {
    auto const there = ground_.counterparts.lead[0][ground_.old_side.row(lead)];
    laid.steps.push_back(step_of(lead, ground_.new_side.leads[there]));
  }
  return laid;
}

LaidRoutes RouteComparison::lay_best(std::span<Route const* const> old_routes,
                                     std::span<Route const* const> new_routes) {
  std::size_t best_old = 0;
  std::size_t best_new = 0;
  if (old_routes.size() > 1 || new_routes.size() > 1) {
    // More steps that agree, more that are aligned, fewer steps; then the routes printed first, in
    // an order that is the same when the editions change places.
    auto const last = ~std::size_t{0};
    auto best_key =
        std::tuple{std::size_t{0}, std::size_t{0}, std::size_t{0}, std::size_t{0}, std::size_t{0}};
    for (std::size_t i = 0; i < old_routes.size(); ++i) {
      for (std::size_t j = 0; j < new_routes.size(); ++j) {
        auto const& old_route = *old_routes[i];
        auto const& new_route = *new_routes[j];
        chain_.update(old_route, 0, new_route, 0);
        auto const& links = chain_.links();
        auto const agreeing = static_cast<std::size_t>(
            std::count_if(links.begin(), links.end(), [&](RouteChain::Link const& link) {
              return agrees(step_of(old_route[link.old_step], new_route[link.new_step]));
            }));
        auto const steps = old_route.size() + new_route.size() - links.size();
        auto const key = std::tuple{agreeing + 1, links.size(), last - steps, last - (i + j),
                                    last - std::max(i, j)};
        if (key > best_key) {
          best_key = key;
          best_old = i;
          best_new = j;
        }
      }
    }
  }
  return lay(*old_routes[best_old], *new_routes[best_new]);
}

}  // namespace keydrift::collating
