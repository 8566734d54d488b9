#include "keydrift/collation/assignment.hpp"

#include <algorithm>
#include <limits>
#include <queue>
#include <utility>

namespace keydrift::collating {
namespace {

constexpr auto no_index = std::numeric_limits<std::uint32_t>::max();

// Invariants between insertions: row_price + column_price >= worth for every offer, with equality
// for those taken; prices are never negative; the price of an unmatched row or column is 0.  These
// are the conditions of complementary slackness, so the assignment is optimal at every moment for
// the rows that are in.
class Assigning {
 public:
  Assigning(std::uint32_t rows, std::uint32_t columns, std::span<Offer const> offers)
      : offers_{offers},
        first_(rows + std::size_t{1}, 0),
        row_price_(rows, 0),
        column_price_(columns, 0),
        offer_of_row_(rows, no_index),
        row_of_column_(columns, no_index),
        distance_(columns, 0),
        reached_by_(columns, no_index),
        seen_in_(columns, 0),
        settled_in_(columns, 0) {
    for (auto const& offer : offers_) ++first_[offer.row + std::size_t{1}];
    for (std::size_t i = 1; i < first_.size(); ++i) first_[i] += first_[i - 1];
  }

  void bring_in(std::uint32_t root) {
    std::int64_t price = 0;
    std::uint32_t best = no_index;
    for (auto k = first_[root]; k < first_[root + std::size_t{1}]; ++k) {
      auto const gain = offers_[k].worth - column_price_[offers_[k].column];
      if (gain > price) {
        price = gain;
        best = k;
      }
    }
    row_price_[root] = price;
    if (best == no_index) return;  // better single
    if (row_of_column_[offers_[best].column] == no_index) {
      take(root, best);
      return;
    }
    augment(root);
  }

  std::vector<std::uint32_t> result() && { return std::move(offer_of_row_); }

 private:
  using Entry = std::pair<std::int64_t, std::uint32_t>;  // distance, column

  void take(std::uint32_t row, std::uint32_t offer) {
    offer_of_row_[row] = offer;
    row_of_column_[offers_[offer].column] = row;
  }

  void augment(std::uint32_t root) {
    ++round_;
    settled_.clear();
    queue_ = {};
    // Leaving `row` single ends the path as well, at the cost of its price.
    std::int64_t end_distance = std::numeric_limits<std::int64_t>::max();
    std::uint32_t single = no_index;
    auto const scan = [&](std::uint32_t row, std::int64_t so_far) {
      if (so_far + row_price_[row] < end_distance) {
        end_distance = so_far + row_price_[row];
        single = row;
      }
      for (auto k = first_[row]; k < first_[row + std::size_t{1}]; ++k) {
        auto const column = offers_[k].column;
        if (settled_in_[column] == round_) continue;
        auto const distance = so_far + row_price_[row] + column_price_[column] - offers_[k].worth;
        if (distance > end_distance) continue;
        if (seen_in_[column] == round_ && distance_[column] <= distance) continue;
        seen_in_[column] = round_;
        distance_[column] = distance;
        reached_by_[column] = k;
        queue_.emplace(distance, column);
      }
    };
    scan(root, 0);
    std::uint32_t end_column = no_index;
    while (!queue_.empty()) {
      auto const [distance, column] = queue_.top();
      queue_.pop();
      if (settled_in_[column] == round_ || distance != distance_[column]) continue;
      if (distance > end_distance) break;
      settled_in_[column] = round_;
      if (row_of_column_[column] == no_index) {
        // At equal distance a free column is taken rather than a row left single.
        end_distance = distance;
        end_column = column;
        break;
      }
      settled_.push_back(column);
      scan(row_of_column_[column], distance);
    }

    row_price_[root] -= end_distance;
    for (auto const column : settled_) {
      if (distance_[column] >= end_distance) continue;
      auto const slack = end_distance - distance_[column];
      row_price_[row_of_column_[column]] -= slack;
      column_price_[column] += slack;
    }

    std::uint32_t offer = no_index;
    if (end_column != no_index) {
      offer = reached_by_[end_column];
    } else {
      if (single == root) return;
      offer = reached_by_[offers_[offer_of_row_[single]].column];
      offer_of_row_[single] = no_index;
    }
    for (;;) {
      auto const row = offers_[offer].row;
      auto const before = offer_of_row_[row];
      take(row, offer);
      if (row == root) return;
      offer = reached_by_[offers_[before].column];
    }
  }

  std::span<Offer const> offers_;
  std::vector<std::uint32_t> first_;  // by row: first offer
  std::vector<std::int64_t> row_price_;
  std::vector<std::int64_t> column_price_;
  std::vector<std::uint32_t> offer_of_row_;
  std::vector<std::uint32_t> row_of_column_;
  // Of the search under way; valid where the stamp equals round_.
  std::vector<std::int64_t> distance_;
  std::vector<std::uint32_t> reached_by_;  // offer
  std::vector<std::uint32_t> seen_in_;
  std::vector<std::uint32_t> settled_in_;
  std::vector<std::uint32_t> settled_;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue_;
  std::uint32_t round_{0};
};

}  // namespace

std::vector<std::uint32_t> heaviest_assignment(std::uint32_t rows, std::uint32_t columns,
                                               std::span<Offer const> offers) {
  Assigning assigning{rows, columns, offers};
  for (std::uint32_t row = 0; row < rows; ++row) assigning.bring_in(row);
  return std::move(assigning).result();
}

}  // namespace keydrift::collating
