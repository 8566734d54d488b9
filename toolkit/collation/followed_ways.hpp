#pragma once
// Taxa that one way alone leads to, as most are: their ways followed from one taxon to the next.
//
// In a comb every way is as long as the key, but from one taxon to the next in printed order little
// of it changes: what lies on it is kept, which costs what changes and not the whole length.

#include <array>
#include <cstddef>
#include <cstdint>
#include <set>
#include <vector>

#include "keydrift/collation/sides.hpp"
#include "keydrift/collation/ways.hpp"

namespace keydrift::collating {

class FollowedWays {
 public:
  // Borrows the sides and the ways (old, new).
  FollowedWays(Side const& old_side, Side const& new_side, std::array<Ways, 2> const& ways);

  // Is there exactly one way from the start, those through cycles counted too?
  [[nodiscard]] bool has_one(Of of, TaxonId taxon) const {
    return at(of).last_lead[taxon.index] != none;
  }

  // The last leads of the way, at most so many, and how many it has.  Precondition: has_one().
  struct End {
    Route leads;
    std::size_t length{};
  };
  [[nodiscard]] End end_of(Of of, TaxonId taxon, std::size_t most) const;

  // Makes path() the way to the taxon.  Precondition: has_one().
  void follow(Of of, TaxonId taxon);
  [[nodiscard]] Route const& path(Of of) const { return at(of).path; }
  // How many of its first leads have not changed since this was asked last.
  [[nodiscard]] std::size_t kept_since(Of of);

  // Characters (by number) that a firm or excepted statement on the path speaks of.
  using Characters = std::set<std::uint32_t>;
  [[nodiscard]] Characters const& on_path(Of of) const { return at(of).characters; }
  // …and none on the path of the other edition.
  [[nodiscard]] Characters const& on_this_path_only(Of of) const { return at(of).only_here; }

 private:
  struct Followed {
    std::vector<std::uint32_t> last_lead;  // by taxon: row; none where there is not one way
    std::vector<std::uint32_t> lead_to;    // by couplet with one way: row; none at the start
    std::vector<std::uint32_t> depth;      // by couplet: leads before it; none: not one way
    Route path;
    std::size_t kept{};                // leads of it since kept_since()
    std::vector<std::uint32_t> times;  // by character: statements on the path
    Characters characters;
    Characters only_here;
  };
  [[nodiscard]] Followed& at(Of of) { return followed_[index_of(of)]; }
  [[nodiscard]] Followed const& at(Of of) const { return followed_[index_of(of)]; }
  [[nodiscard]] Side const& side(Of of) const { return *sides_[index_of(of)]; }
  void find_single_ways(Of of);
  void take(Of of, std::uint32_t row);
  void leave(Of of, std::uint32_t row);

  std::array<Side const*, 2> sides_;
  std::array<Ways, 2> const& ways_;
  std::array<Followed, 2> followed_;
  std::vector<std::uint32_t> way_up_;  // scratch
};

}  // namespace keydrift::collating
