// Answers tests/oracles/assignment.py: reads graphs from standard input, each "rows columns offers"
// and then as many lines "row column worth" by row, and prints for each the worth of the pairs that
// the aligner's assignment takes, or "twice" where it takes a row or column twice.

#include <cstdint>
#include <iostream>
#include <set>
#include <vector>

#include "keydrift/collation/assignment.hpp"

int main() {
  using keydrift::collating::Offer;
  std::uint32_t rows = 0;
  std::uint32_t columns = 0;
  std::size_t count = 0;
  while (std::cin >> rows >> columns >> count) {
    std::vector<Offer> offers(count);
    for (auto& offer : offers) std::cin >> offer.row >> offer.column >> offer.worth;
    std::int64_t worth = 0;
    std::set<std::uint32_t> taken;
    bool twice = false;
    auto const chosen = keydrift::collating::heaviest_assignment(rows, columns, offers);
    for (std::uint32_t row = 0; row < rows; ++row) {
      if (chosen[row] == UINT32_MAX) continue;
      auto const& offer = offers[chosen[row]];
      twice = twice || offer.row != row || !taken.insert(offer.column).second;
      worth += offer.worth;
    }
    std::cout << (twice ? "twice" : std::to_string(worth)) << '\n';
  }
  return 0;
}
