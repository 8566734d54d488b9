#include "keydrift/redetermination/edition_tally.hpp"

#include <algorithm>
#include <iterator>

namespace keydrift {
namespace {

// Works kept that no row of the table fits: the first by their words, whoever counts them and in
// whatever order.  Further ones are counted in the sum only.
constexpr std::size_t kWorksKept = 10'000;

}  // namespace

void EditionTally::add(EditionUse const& use, std::string_view references,
                       std::uint64_t specimens) {
  by_edition_[{use.edition, use.basis}] += specimens;
  if (use.unnamed_work) {
    unnamed_ += specimens;
    add_work(references, specimens);
  }
}

void EditionTally::add_work(std::string_view references, std::uint64_t specimens) {
  if (auto const known = unnamed_works_.find(references); known != unnamed_works_.end()) {
    known->second += specimens;
    return;
  }
  if (unnamed_works_.size() >= kWorksKept) {
    auto const last = std::prev(unnamed_works_.end());
    if (last->first < references) return;
    unnamed_works_.erase(last);
  }
  unnamed_works_.emplace(references, specimens);
}

void EditionTally::absorb(EditionTally const& other) {
  for (auto const& [what, specimens] : other.by_edition_) by_edition_[what] += specimens;
  unnamed_ += other.unnamed_;
  for (auto const& [work, specimens] : other.unnamed_works_) add_work(work, specimens);
}

EditionCounts EditionTally::counts(EditionsUsed const& editions) const {
  EditionCounts told;
  told.decides = editions.has_table();
  // In the order of the labels; those that are not known, or older than any, come last.
  auto const add_those = [&](bool labelled) {
    for (auto const& [what, specimens] : by_edition_) {
      auto const& [edition, basis] = what;
      if ((edition != 0) != labelled) continue;
      told.counts.push_back({.edition = editions.labels()[edition],
                             .role = editions.role_of(edition, basis),
                             .basis = basis,
                             .specimens = specimens});
    }
  };
  add_those(true);
  add_those(false);
  told.unnamed = unnamed_;
  told.unnamed_works.assign(unnamed_works_.begin(), unnamed_works_.end());
  std::stable_sort(told.unnamed_works.begin(), told.unnamed_works.end(),
                   [](auto const& a, auto const& b) { return a.second > b.second; });
  return told;
}

}  // namespace keydrift
