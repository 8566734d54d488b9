#pragma once
// The numbers of a key: how long its ways are, how near that comes to the least possible, and how
// often a determination comes out right.
//
// Where a taxon has several routes, each of them counts alike, and its figure is their mean.  All
// functions take time in proportion to the edition and never recurse.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

// Routes are counted from the start; a "step" is one couplet answered.
struct KeyNumbers {
  std::size_t couplets{};
  std::size_t leads{};
  std::size_t terminals{};       // different taxa that the start leads to
  std::size_t terminal_ends{};   // leads' ends that name a taxon, counted with repeats
  std::size_t beyond_start{};    // taxa that leads end in, none of which the start leads to
  std::size_t behind_circles{};  // of the terminals: some way to them goes through a circle
  std::size_t polytomies{};      // couplets of three or more leads
  std::size_t reticulations{};   // surplus incoming leads over couplets
  std::size_t shortest_route{};  // steps
  // Ways that may go round in a circle have no greatest length and no mean: nullopt where taxa
  // stand behind one.
  std::optional<std::size_t> longest_route;
  std::optional<double> mean_route;  // over terminals, equal frequencies
  // Bounds of that mean for keys to the same ends: taxa that are not parted count as one. Shannon's
  // is never more than mean_route, and Huffman's is not where all couplets have two leads.
  double entropy_bound{};       // Shannon: entropy of the ends / mean log2 of the couplets' widths
  double huffman_bound{};       // mean of the best dichotomous key (Huffman 1952)
  std::size_t unparted_ends{};  // different ends that name several taxa, which the key never parts
  // By leads that name taxa.  nullopt as well where the comb is the most even key there is (fewer
  // than four ends, of couplets of two leads).
  std::optional<double> evenness;  // (comb sum - actual) / (comb sum - least sum): 1 even, 0 comb
  std::optional<double> colless;   // Colless index over its value for a comb: 0 even, 1 comb
  std::size_t comb_couplets{};     // couplets one of whose leads ends in a single taxon
  double root_share{};             // share of terminals on the smaller side of the first couplet
  std::size_t single_statement_couplets{};  // all of whose leads rest on one statement
};

// nullopt when the start leads to no taxon.
[[nodiscard]] std::optional<KeyNumbers> key_numbers(Edition const& edition, KeyGraph const& graph);

// The same under given frequencies of the taxa, by row of Edition::taxa; none is negative, and
// they need not sum to 1.  Taxa that the start does not lead to are left out.
struct FrequencyNumbers {
  std::size_t taxa{};      // with a frequency above 0
  double total{};          // sum of their frequencies
  double mean_route{};     // steps
  double entropy{};        // Shannon's H = -sum w log2 w of the taxa, in bits
  double entropy_bound{};  // as in KeyNumbers
  double huffman_bound{};
};
// nullopt when no taxon that the start leads to has a frequency above 0, or taxa stand behind a
// circle.
[[nodiscard]] std::optional<FrequencyNumbers> frequency_numbers(Edition const& edition,
                                                                KeyGraph const& graph,
                                                                std::span<double const> weights);

// Taxa of which some way from the start goes through a circle, so that their routes are without end
// and nothing can be averaged over them.
[[nodiscard]] std::size_t taxa_behind_circles(KeyGraph const& graph);

// By row of Edition::taxa: the sum of the costs of the couplets answered on the way to the taxon;
// NaN where there is no way, or none but through a circle.  `cost` is by row of Edition::couplets.
[[nodiscard]] std::vector<double> mean_route_costs(Edition const& edition, KeyGraph const& graph,
                                                   std::span<double const> cost);

// By row of Edition::taxa: the chance that a specimen of the taxon comes out as it, when couplet c
// is answered wrongly with the chance error[c], independently of the others: the product over its
// route of (1 - error).  NaN where there is no way, or none but through a circle.
//
// The product is that of Osborne 1963, "Some aspects of the theory of dichotomous keys", New
// Phytologist 62: 144-160 (formula from memory).  It takes it that a wrong turn never comes back to
// the right name, and that nobody turns back; people who cross-check do better (J. Wäldchen et al.
// 2022, People and Nature 4: 1603-1615, from its abstract).
[[nodiscard]] std::vector<double> chances_of_right(Edition const& edition, KeyGraph const& graph,
                                                   std::span<double const> error);

// Mean depth of an optimal code for the weights (Huffman 1952, "A method for the construction of
// minimum-redundancy codes", Proc. IRE 40: 1098-1101), `arity` >= 2; weights need not sum to 1.
// 0 for fewer than two positive weights.
[[nodiscard]] double huffman_mean(std::span<double const> weights, unsigned arity = 2);

// Shannon's entropy of the weights in bits; 0 for fewer than two positive weights.
[[nodiscard]] double entropy(std::span<double const> weights);

}  // namespace keydrift
