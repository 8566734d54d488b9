#pragma once
// Routes of two editions laid side by side.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/ground.hpp"
#include "keydrift/collation/route_chain.hpp"

namespace keydrift::collating {

// Two routes side by side, cut to what a reader can use: no more than `most_steps` before the place
// where they part (before the end, where they do not part) and no more from there on.  Of a route
// that stands alone, the last ones: those that lead to where it ends.
inline constexpr std::size_t most_steps = 128;
struct LaidRoutes {
  std::vector<RouteStep> steps;
  std::optional<std::size_t> parting;  // index into steps
  std::size_t left_out_before{};       // steps, all of which agree, or are of one edition
  std::size_t left_out_after{};
};

class RouteComparison {
 public:
  // Borrows the ground.
  explicit RouteComparison(Ground const& ground);

  // Whether a lead that says something else than before is still the same lead.
  enum class Restated { differs, is_the_same };

  // Do the ways to the two taxa correspond, lead for lead?  Exact for any number of ways:
  // O(leads that name the taxa).
  [[nodiscard]] bool same_ways(TaxonId old_taxon, TaxonId new_taxon, Restated restated) const;

  // Does the new route take the counterparts of the old one's leads?
  [[nodiscard]] bool same(Route const& old_route, Route const& new_route, Restated restated) const;

  // Two routes side by side: the longest chain of aligned couplets that stand in the same order on
  // both (route_chain.hpp), the rest of each route between them, the old one's first.
  [[nodiscard]] LaidRoutes lay(Route const& old_route, Route const& new_route);

  // The same of routes that are followed from taxon to taxon: the first so many leads of each are
  // those of the call before of this function.
  [[nodiscard]] LaidRoutes lay_followed(Route const& old_route, std::size_t old_kept,
                                        Route const& new_route, std::size_t new_kept);

  // A way that is the same in both editions (same_ways()): its last leads in the old one, as many
  // as LaidRoutes holds of it, and how many it has in all.
  [[nodiscard]] LaidRoutes lay_same(Route const& end, std::size_t length) const;

  // The pair of routes that agrees best.  Precondition: neither is empty.
  [[nodiscard]] LaidRoutes lay_best(std::span<Route const* const> old_routes,
                                    std::span<Route const* const> new_routes);

 private:
  using Links = std::vector<RouteChain::Link>;
  // How many steps from the start agree, so many being known to.
  [[nodiscard]] std::size_t agreeing_steps(Route const& old_route, Route const& new_route,
                                           Links const& links, std::size_t known) const;
  [[nodiscard]] LaidRoutes lay(Route const& old_route, Route const& new_route, Links const& links,
                               std::size_t agreeing) const;
  [[nodiscard]] RouteStep step_of(LeadId old_lead, LeadId new_lead) const;
  [[nodiscard]] bool same_leads_to(std::span<LeadId const> old_leads,
                                   std::span<LeadId const> new_leads, Restated restated) const;
  [[nodiscard]] std::vector<char> find_changed_above(Restated restated) const;

  Ground const& ground_;
  // By Restated and old couplet: its ways differ from its counterpart's.
  std::array<std::vector<char>, 2> changed_above_;
  RouteChain chain_;     // of two routes at a time
  RouteChain followed_;  // of lay_followed()
  std::size_t followed_agreeing_{};
};

}  // namespace keydrift::collating
