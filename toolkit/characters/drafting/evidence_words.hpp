#pragma once
// The couplets that an entry rests on, in words.  Inner header of drafting.

#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/drafting/grouping.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::drafting {

// Borrows the editions.
class EvidenceWords {
 public:
  explicit EvidenceWords(std::span<Edition const* const> editions);

  // "contrasted in 3 couplets (1998: 5, 19; 2024: 6)".  Editions by year, then by name; couplets by
  // number; of many couplets of an edition the first few.
  [[nodiscard]] std::string words(std::string_view what,
                                  std::set<CoupletSpot> const& couplets) const;

 private:
  std::span<Edition const* const> editions_;
  std::vector<std::size_t> rank_;  // of every edition
};

}  // namespace keydrift::drafting
