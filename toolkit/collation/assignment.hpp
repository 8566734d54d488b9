#pragma once
// The best one-to-one assignment on a sparse graph.

#include <cstdint>
#include <span>
#include <vector>

namespace keydrift::collating {

// A pair that may be made, and what it is worth.
struct Offer {
  std::uint32_t row{};
  std::uint32_t column{};
  std::int64_t worth{};  // > 0 and < 2^61; others are never taken
};

// Maximum-weight bipartite matching: no other choice of offers that uses each row and each column
// at most once is worth more.  Exact: whole numbers, no rounding.  Among equals the choice is
// deterministic (it depends on the order of offers and on nothing else).
//
// Rows are brought in one by one, each along a shortest augmenting path over reduced costs
// (Edmonds & Karp 1972, J. ACM 19: 248-264; Tomizawa 1971, Networks 1: 173-194), leaving a row
// single where that is worth more.  O(rows * offers * log) at worst; close to linear where most
// rows have one offer far better than the rest, as couplets have.
//
// Returns, by row, the index into `offers` of the one taken, or UINT32_MAX.
// Precondition: offers are sorted by row.
[[nodiscard]] std::vector<std::uint32_t> heaviest_assignment(std::uint32_t rows,
                                                             std::uint32_t columns,
                                                             std::span<Offer const> offers);

}  // namespace keydrift::collating
