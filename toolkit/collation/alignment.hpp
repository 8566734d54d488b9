#pragma once
// Aligning the couplets of two editions one to one.

#include <array>
#include <cstdint>
#include <vector>

#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/comparison.hpp"

namespace keydrift::collating {

// The alignment by row numbers, for looking up both ways.
struct Counterparts {
  // By couplet / by row of lead, of the old and of the new edition; none: no counterpart.
  std::array<std::vector<std::uint32_t>, 2> couplet;
  std::array<std::vector<std::uint32_t>, 2> lead;
};

// Pairs below this total are two couplets, not one.  The assignment maximises the sum of what pairs
// have above it, so that two poor pairs never outbid a good one.
inline constexpr Grade floor_total = whole * 7 / 25;
[[nodiscard]] constexpr Grade total_grade(Grade taxa, Grade statements, Grade neighbours) {
  return static_cast<Grade>((std::uint64_t{taxa_weight} * taxa +
                             std::uint64_t{statements_weight} * statements +
                             std::uint64_t{neighbours_weight} * neighbours) /
                            (taxa_weight + statements_weight + neighbours_weight));
}

// …and so are pairs that neither part the taxa nor speak alike (credible_taxa,
// credible_statements). A couplet that was rewritten while taxa moved about below it is told by
// where it stands: more than half of how it parts the taxa has to have stayed, which an inserted
// couplet in the place of a removed one does not reach.
inline constexpr Grade passable_taxa = whole * 13 / 25;
inline constexpr Grade credible_neighbours = whole * 2 / 5;
// One that was changed in everything at once is told by all of it together.
inline constexpr Grade lesser_taxa = whole * 2 / 5;
inline constexpr Grade lesser_statements = whole * 3 / 10;
inline constexpr Grade lesser_total = whole * 9 / 25;
// …and one whose taxa all but changed by where it stands and what it still says.
// Words alone do not do where nothing else agrees.
inline constexpr Grade spoken_total = whole * 3 / 10;
inline constexpr Grade placed_statements = whole * 2 / 5;
inline constexpr Grade placed_neighbours = whole * 3 / 5;

// Would the pair be credible if the neighbours agreed in full?
[[nodiscard]] constexpr bool may_become_credible(Grade taxa, Grade statements) {
  return taxa >= passable_taxa || statements >= placed_statements ||
         (taxa >= lesser_taxa && statements >= lesser_statements);
}
[[nodiscard]] constexpr bool credible(Grade taxa, Grade statements, Grade neighbours) {
  auto const total = total_grade(taxa, statements, neighbours);
  return taxa >= credible_taxa || (statements >= credible_statements && total > spoken_total) ||
         (taxa >= passable_taxa && neighbours >= credible_neighbours) ||
         (statements >= placed_statements && neighbours >= placed_neighbours) ||
         (taxa >= lesser_taxa && statements >= lesser_statements && total >= lesser_total);
}

// Aligns: candidates, similarities, the heaviest assignment, and again with what was aligned as
// neighbourhood until nothing changes (at most `most_rounds` times).  Pairs that are too unlike to
// be one couplet stay apart.
inline constexpr unsigned most_rounds = 12;
[[nodiscard]] Alignment align(Comparison const& comparison);

// Pairs the leads of every pair anew and reckons all agreements and `pair_of_new` for the pairs as
// they stand.
void regrade(Comparison const& comparison, Alignment& alignment);

[[nodiscard]] Counterparts counterparts(Comparison const& comparison, Alignment const& alignment);

}  // namespace keydrift::collating
