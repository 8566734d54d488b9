#pragma once
// The key as a rooted directed graph: couplets and terminals are vertices, leads are edges.
//
// Built once per edition; borrows nothing (safe to keep after the Edition moves).  No function here
// recurses over depth: a comb of a million couplets is fine.

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/id.hpp"

namespace keydrift {

// A sorted set of terminals as half-open runs of TaxonOrder positions.  Positions follow a
// depth-first walk of the key, so that the taxa below a lead are few runs (one, in a tree).
struct TaxonRun {
  std::uint32_t begin{};
  std::uint32_t end{};
  bool operator==(TaxonRun const&) const = default;
};

// One way from the start to a terminal: the leads taken, in order.
using Route = std::vector<LeadId>;

struct Routes {
  std::vector<Route> routes;  // in printed order (depth first, leads in printed order)
  bool complete{true};        // false: more than the asked maximum exist
};

class KeyGraph {
 public:
  explicit KeyGraph(Edition const& edition);
  ~KeyGraph();
  KeyGraph(KeyGraph&&) noexcept;
  KeyGraph& operator=(KeyGraph&&) noexcept;

  [[nodiscard]] std::size_t couplet_count() const;
  [[nodiscard]] std::size_t taxon_count() const;

  // Leads whose destination is the couplet / names the taxon, in printed order.  A lead to another
  // key leads to the couplet that key starts with, when its title names a part of the edition.
  [[nodiscard]] std::span<LeadId const> leads_to(CoupletId couplet) const&;
  [[nodiscard]] std::span<LeadId const> leads_to(TaxonId taxon) const&;

  // Is there a way from the start of the first part?  ToKey destinations are followed when their
  // title names a part of the same edition.
  [[nodiscard]] bool reachable(CoupletId couplet) const;

  // The couplets of each cycle (strongly connected component of several couplets, or one couplet
  // leading to itself), each in ascending order; empty in a sound key.
  [[nodiscard]] std::vector<std::vector<CoupletId>> const& cycles() const&;

  // Reachable couplets, every couplet before those it leads to.  Couplets on cycles come last, in
  // ascending order.
  [[nodiscard]] std::span<CoupletId const> topological_order() const&;

  // Terminals below a lead / a couplet, as runs of positions.  Couplets on cycles: what is
  // reachable from them all the same.  A tree costs one run each; a taxon that keys out again adds
  // at most one run to each couplet above its other ends.
  [[nodiscard]] std::span<TaxonRun const> taxa_below(LeadId lead) const&;
  [[nodiscard]] std::span<TaxonRun const> taxa_below(CoupletId couplet) const&;
  [[nodiscard]] TaxonId taxon_at(std::uint32_t position) const;
  [[nodiscard]] std::uint32_t position_of(TaxonId taxon) const;
  // Convenience: the terminals themselves, in position order.
  [[nodiscard]] std::vector<TaxonId> list(std::span<TaxonRun const> runs) const;

  // Number of ways from the start to the vertex, saturating at 2^63; 0 when unreachable or when a
  // cycle lies on the way.
  [[nodiscard]] std::uint64_t route_count(CoupletId couplet) const;
  [[nodiscard]] std::uint64_t route_count(TaxonId taxon) const;

  // The ways to a terminal / to a couplet, at most `maximum` of them.  Ways through a cycle are
  // not listed.
  [[nodiscard]] Routes routes_to(TaxonId taxon, std::size_t maximum = 256) const;
  [[nodiscard]] Routes routes_to(CoupletId couplet, std::size_t maximum = 256) const;

  // Couplets answered on the shortest way from the start (the couplet itself included: the start
  // has 1); nullopt when unreachable.
  [[nodiscard]] std::optional<std::uint32_t> depth(CoupletId couplet) const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace keydrift
