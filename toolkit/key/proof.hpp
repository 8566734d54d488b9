#pragma once
// Proofreading one edition: what is wrong in it, and its numbers.

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

// All structural findings in one run, in order of place.  Findings that need characters come from
// keydrift/characters (contrast.hpp).
[[nodiscard]] std::vector<Finding> proof_structure(Edition const& edition, KeyGraph const& graph);

// One entry of the table of finding codes; `keydrift proof --explain-finding CODE` prints it.
struct FindingKind {
  std::string_view code;
  Severity severity;
  std::string_view title;        // one line
  std::string_view explanation;  // why it matters and what to do; may hold line feeds
};
[[nodiscard]] std::span<FindingKind const> structural_finding_kinds();

// The numbers of a key.  Routes are counted from the start; a "step" is one couplet answered.
struct KeyNumbers {
  std::size_t couplets{};
  std::size_t leads{};
  std::size_t terminals{};       // different taxa keyed
  std::size_t terminal_ends{};   // leads' ends that name a taxon, counted with repeats
  std::size_t polytomies{};      // couplets of three or more leads
  std::size_t reticulations{};   // surplus incoming leads over couplets
  std::size_t shortest_route{};  // steps
  std::size_t longest_route{};
  double mean_route{};           // over terminals, equal frequencies; several routes averaged
  double entropy_bound{};        // Shannon: log2(terminals) / log2(widest couplet), bits or t-its
  double huffman_bound{};        // mean of the best dichotomous key (Huffman 1952), equal weights
  double evenness{};             // (comb sum - actual) / (comb sum - least sum): 1 even, 0 comb
  double colless{};              // Colless index over its value for a comb: 0 even, 1 comb
  std::size_t comb_couplets{};   // couplets one of whose leads ends in a single taxon
  double root_share{};           // share of terminals on the smaller side of the first couplet
  std::size_t single_statement_couplets{};  // all of whose leads rest on one statement
};

// nullopt when the key has no terminal or a cycle that leaves no route.
[[nodiscard]] std::optional<KeyNumbers> key_numbers(Edition const& edition, KeyGraph const& graph);

// Mean depth of an optimal code for the weights (Huffman 1952, "A method for the construction of
// minimum-redundancy codes", Proc. IRE 40: 1098-1101), `arity` >= 2; weights need not sum to 1.
// 0 for fewer than two positive weights.
[[nodiscard]] double huffman_mean(std::span<double const> weights, unsigned arity = 2);

}  // namespace keydrift
