#pragma once
// Random keys and random histories of them, with the truth about every couplet known.

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "edition_builder.hpp"
#include "keydrift/taxa/concepts.hpp"

namespace keydrift::test {

// The same numbers on every platform, which the distributions of <random> do not promise.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_{seed} {}
  std::size_t below(std::size_t bound) { return static_cast<std::size_t>(engine_() % bound); }
  bool one_in(std::size_t n) { return below(n) == 0; }
  bool percent(std::size_t share) { return below(100) < share; }

 private:
  std::mt19937_64 engine_;
};

// A key under revision.  Nodes keep their number through all edits; couplet labels are given when
// it is printed.
struct DraftLead {
  std::vector<std::string> statements;  // in the notation of sketch.hpp
  std::size_t node{};                   // behind it; `terminal` for a taxon
  std::string taxon;
};
struct DraftNode {
  std::vector<DraftLead> leads;
  bool alive{true};
};
inline constexpr std::size_t terminal = ~std::size_t{0};

struct Draft {
  std::vector<DraftNode> nodes;
  std::size_t root{0};
  std::size_t taxa{0};  // names given so far
};

enum class Shape { bushy, comb };
[[nodiscard]] Draft make_draft(std::size_t couplets, Shape shape, Dice& dice);

// Depth first from the root, numbered from 1; `order` gets the node of each couplet.
[[nodiscard]] std::vector<CoupletSketch> print(Draft const& draft, std::vector<std::size_t>& order);

// What an edit history did besides changing the draft.
struct History {
  std::vector<ConceptRow> rows;  // the concept map that goes with it
  // Node that became (old node, further new node) by a split, or (further old node, new node) by a
  // merge: either may be taken for the counterpart.
  std::vector<std::pair<std::size_t, std::size_t>> parts;
};

// Edits about `percent` in a hundred couplets: other words, another predicate, swapped leads,
// couplets inserted with a newcomer, removed with their taxon, split, merged, subtrees exchanged,
// taxa split and renamed.  Inserting and removing renumber everything behind.
[[nodiscard]] History revise(Draft& draft, std::size_t percent, Dice& dice);

// A key that nobody should print: couplets and taxa reached from several leads; with `broken`
// also cycles, couplets out of reach, leads to nowhere and couplets with a single lead.
enum class Tangle { sound, broken };
[[nodiscard]] std::vector<CoupletSketch> make_tangle(std::size_t couplets, std::size_t taxa,
                                                     Tangle kind, Dice& dice);

}  // namespace keydrift::test
