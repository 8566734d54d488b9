#pragma once
// The longest chain of aligned couplets that stand in the same order on two routes (Fredman 1975,
// "On computing the length of longest increasing subsequences", Discrete Mathematics 11: 29-35),
// kept up while the routes change at their ends.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "keydrift/collation/alignment.hpp"

namespace keydrift::collating {

class RouteChain {
 public:
  // Borrows the counterparts.
  explicit RouteChain(Counterparts const& counterparts);

  struct Link {
    std::uint32_t old_step{};
    std::uint32_t new_step{};
    bool operator==(Link const&) const = default;
  };

  // Makes links() the chain of two routes.  The first so many leads of each are those of the call
  // before (0: another route).  Of several longest chains it is the one that looking at the old
  // route's steps one by one finds, whatever was kept.  Costs what changed, and all steps behind
  // the first one that answers to something changed.
  // Precondition: no couplet stands twice on a route.
  void update(Route const& old_route, std::size_t old_kept, Route const& new_route,
              std::size_t new_kept);

  [[nodiscard]] std::vector<Link> const& links() const { return links_; }
  // So many links at the start are those of the call before, and so are the leads they are of.
  [[nodiscard]] std::size_t links_kept() const { return links_kept_; }

 private:
  // What a step did to the tails, to be taken back.
  struct Done {
    std::uint32_t level{};   // of the chain that the step ends; none where it has no place
    std::uint32_t before{};  // step before it on that chain
    std::uint32_t ousted{};  // tail of that level until then
  };
  [[nodiscard]] std::uint32_t place(std::uint32_t old_step) const;
  // First old step whose place may have changed.
  [[nodiscard]] std::uint32_t exchange_ends(Route const& old_route, std::size_t old_kept,
                                            Route const& new_route, std::size_t new_kept);
  void take_back(std::uint32_t first);
  void take_in();
  void relink();

  Counterparts const& counterparts_;
  Route old_route_;
  Route new_route_;
  std::vector<std::uint32_t> old_at_;  // by couplet: step on the route; none
  std::vector<std::uint32_t> new_at_;
  std::vector<Done> done_;            // by old step
  std::vector<std::uint32_t> tails_;  // by level: the old step that ends the best chain so far
  std::vector<Link> links_;
  std::size_t links_kept_{};
};

}  // namespace keydrift::collating
