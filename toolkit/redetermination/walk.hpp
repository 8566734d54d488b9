#pragma once
// Walking a key with incomplete evidence: every way that some completion of the evidence takes.
//
// A way carries what its choices assume: the box shrinks lead by lead, and a way whose assumptions
// contradict each other is no way.  So the result is exact over completions, not couplet by
// couplet.

#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/redetermination/compiled_key.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

// The completions in `box` take `route` and come out as `taxon`.
struct Leaf {
  TaxonId taxon{};
  Box box{};
  Route route{};
  bool through_exception{false};
};

// Completions that find no lead at a couplet.
struct Strand {
  CoupletId couplet{};
  std::uint32_t depth{};  // couplets answered before
};

// At a couplet that the walk came to: which leads some completion takes (bit = ordinal; couplets of
// more than 64 leads fold).
struct Followed {
  CoupletId couplet{};
  std::uint64_t leads{};
  auto operator<=>(Followed const&) const = default;
};

struct WalkLimits {
  std::size_t maximum_leaves{4096};
  std::size_t maximum_steps{100000};
  bool seek_strands{true};  // false: they do not matter
};

struct Walk {
  std::vector<Leaf> leaves{};        // in a stable order: couplet by couplet as met
  std::vector<Strand> strands{};     // in the order met; one per visit at most
  std::vector<Followed> followed{};  // ascending, one per couplet
  bool complete{true};               // false: a limit cut the walk
};

// `targets` (by TaxonId) keeps to the ways that lead to one of these terminals; nullptr: all.
// Strands are looked for only when targets is nullptr; states that no lead names ("some other
// state") do not count as stranding, or every specimen would.
[[nodiscard]] Walk walk(CompiledKey const& key, Box const& evidence, Reading reading,
                        std::vector<TaxonId> const* targets = nullptr, WalkLimits limits = {});

// Do all completions in `box` take this route and no other, whatever the reading?  False may also
// mean that it cannot be told without walking.  Precondition: the box is settled, and the route
// leads from the start of the key to a terminal.
[[nodiscard]] bool surely_takes(CompiledKey const& key, Box const& box, Route const& route);

}  // namespace keydrift
