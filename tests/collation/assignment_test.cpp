// The heaviest assignment against trying out every choice.

#include "keydrift/collation/assignment.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <set>

#include "histories.hpp"

namespace keydrift {
namespace {

using collating::heaviest_assignment;
using collating::Offer;

constexpr auto single = std::numeric_limits<std::uint32_t>::max();

// Worth of the best choice for rows from `row` on, columns of `used` being taken.
std::int64_t best_by_trying(std::vector<Offer> const& offers, std::uint32_t row, std::uint32_t rows,
                            unsigned used) {
  if (row == rows) return 0;
  auto best = best_by_trying(offers, row + 1, rows, used);
  for (auto const& offer : offers) {
    if (offer.row != row || ((used >> offer.column) & 1U) != 0) continue;
    best = std::max(
        best, offer.worth + best_by_trying(offers, row + 1, rows, used | (1U << offer.column)));
  }
  return best;
}

TEST(HeaviestAssignment, IsWorthAsMuchAsTheBestOfAllChoices) {
  test::Dice dice{11};
  for (int round = 0; round < 400; ++round) {
    auto const rows = static_cast<std::uint32_t>(1 + dice.below(6));
    auto const columns = static_cast<std::uint32_t>(1 + dice.below(6));
    auto const density = 20 + dice.below(80);
    // Few different values, so that ties are common.
    auto const values = 1 + dice.below(9);
    std::vector<Offer> offers;
    for (std::uint32_t i = 0; i < rows; ++i) {
      for (std::uint32_t j = 0; j < columns; ++j) {
        if (!dice.percent(density)) continue;
        offers.push_back({i, j, static_cast<std::int64_t>(1 + dice.below(values))});
      }
    }
    auto const chosen = heaviest_assignment(rows, columns, offers);
    ASSERT_EQ(chosen.size(), rows);
    std::set<std::uint32_t> columns_taken;
    std::int64_t worth = 0;
    for (std::uint32_t i = 0; i < rows; ++i) {
      if (chosen[i] == single) continue;
      ASSERT_LT(chosen[i], offers.size());
      EXPECT_EQ(offers[chosen[i]].row, i);
      EXPECT_TRUE(columns_taken.insert(offers[chosen[i]].column).second) << "column taken twice";
      worth += offers[chosen[i]].worth;
    }
    EXPECT_EQ(worth, best_by_trying(offers, 0, rows, 0)) << "round " << round;
  }
}

TEST(HeaviestAssignment, LeavesARowSingleWhereThatIsWorthMore) {
  // Taking both small offers (3 + 3) would cost the large one.
  std::vector<Offer> const offers{{0, 0, 3}, {1, 0, 10}, {1, 1, 3}};
  EXPECT_EQ(heaviest_assignment(2, 2, offers), (std::vector<std::uint32_t>{single, 1}));
}

TEST(HeaviestAssignment, TakesNothingWhereNothingIsOffered) {
  EXPECT_EQ(heaviest_assignment(2, 0, {}), (std::vector<std::uint32_t>{single, single}));
  EXPECT_TRUE(heaviest_assignment(0, 0, {}).empty());
}

}  // namespace
}  // namespace keydrift
