#pragma once
// What two editions have in common below their leads, reckoned in taxa.
//
// Every pair of an old and a new taxon that share something is a *tie* with a weight.  The mass of
// a set of taxa is the weight of their ties, what two sets have in common is the weight of the ties
// between them.  A taxon matched one to one weighs the same as a taxon split in two together with
// its parts, so that a split far below changes nothing in the couplets above it.  Taxa with no
// counterpart weigh nothing: the reckoning is over shared concepts only.
//
// Sets are never listed.  Fingerprints and masses are differences of running sums; what two sets
// have in common is a two-dimensional range sum, answered from a wavelet matrix (Claude, Navarro &
// Ordóñez 2015, "The wavelet matrix", Information Systems 47: 15-32) in O(log taxa) a pair of runs.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "keydrift/collation/sides.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/taxa/concepts.hpp"

namespace keydrift::collating {

// Weight of the tie of two taxa matched one to one; divisible by every small number of parts.
inline constexpr std::uint64_t tie_weight = 5040;

class SharedTaxa {
 public:
  static constexpr unsigned shuffles = 4;  // independent orders for least()

  // Copies what it needs.
  SharedTaxa(TaxonMatching const& matching, Side const& old_side, Side const& new_side);

  [[nodiscard]] std::uint64_t mass(Of of, std::span<TaxonRun const> runs) const;
  // Equal for equal sets of ties; 0 for sets without a tie.
  [[nodiscard]] std::uint64_t fingerprint(Of of, std::span<TaxonRun const> runs) const;
  // Mass of the ties from the old set to the new one.
  [[nodiscard]] std::uint64_t common(std::span<TaxonRun const> old_runs,
                                     std::span<TaxonRun const> new_runs) const;
  // The number of the tie that comes first in a shuffled order, `none` for sets without a tie.  Two
  // sets have the same first tie with a chance equal to the share of ties that they have in common
  // (Broder 1997, "On the resemblance and containment of documents").
  [[nodiscard]] std::uint32_t least(Of of, unsigned shuffle, std::span<TaxonRun const> runs) const;
  [[nodiscard]] std::uint32_t tie_count() const { return tie_count_; }

 private:
  struct Running {  // by position, one longer than the taxa
    std::vector<std::uint64_t> mass;
    std::vector<std::uint64_t> fingerprint;
    std::vector<std::uint32_t> ties;  // number of ties before the position
  };
  struct Level {
    std::uint32_t zeros{};                    // values whose bit is 0
    std::vector<std::uint32_t> zeros_before;  // by place, one longer
    std::vector<std::uint64_t> mass_before;   // in the order that the next level starts from
  };
  // order[k][i]: least shuffled place among positions i … i + 2^k - 1.
  using Least = std::vector<std::vector<std::uint32_t>>;

  [[nodiscard]] std::uint64_t sum_below(std::uint32_t begin, std::uint32_t end,
                                        std::uint32_t bound) const;

  std::uint32_t tie_count_{};
  std::array<Running, 2> running_;
  std::vector<std::uint32_t> new_position_;     // of ties in order of old position
  std::vector<std::uint64_t> tie_mass_before_;  // running sum in that order
  std::vector<Level> levels_;                   // highest bit first
  std::array<std::array<Least, shuffles>, 2> least_;
  std::array<std::vector<std::uint32_t>, shuffles> tie_at_;  // shuffled place -> tie
};

}  // namespace keydrift::collating
