#include "keydrift/redetermination/region_sums.hpp"

#include "keydrift/characters/specimen.hpp"

namespace keydrift {

void RegionSums::add(CodedSpecimen const& specimen, CodedWords const& words, std::size_t outcome) {
  constexpr unsigned kBits = 21;  // for each of three codes
  std::uint64_t codes = 0;
  bool numbered = true;
  for (auto const column : words.regions()) {
    auto const code = specimen.places[column];
    numbered = numbered && code >> kBits == 0;
    codes = codes << kBits | (code & ((1U << kBits) - 1));
  }
  if (numbered && last_ != nullptr && codes == last_codes_) {
    ++(*last_)[outcome];
    return;
  }
  if (numbered) {
    if (auto const known = by_codes_.find(codes); known != by_codes_.end()) {
      last_codes_ = codes;
      last_ = known->second;
      ++(*last_)[outcome];
      return;
    }
  }
  std::string region;
  for (auto const column : words.regions()) {
    for (auto const& place : words.places(column, specimen.places[column])) {
      if (!region.empty()) region += kWithin;
      region += place;
    }
  }
  auto& totals = sums_[region];
  ++totals[outcome];
  if (numbered) by_codes_.emplace(codes, &totals);
}

}  // namespace keydrift
