#pragma once
// Outcomes by region, for specimens whose words are known by number.  Inner header of
// redetermination.

#include <array>
#include <cstdint>
#include <string>
#include <unordered_map>

#include "keydrift/characters/coded_specimen.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

class RegionSums {
 public:
  using Totals = std::array<std::uint64_t, kOutcomes>;
  using TotalsByRegion = std::unordered_map<std::string, Totals>;

  // Counts into `sums`, which it borrows and nobody may empty.
  explicit RegionSums(TotalsByRegion& sums) : sums_{sums} {}

  void add(CodedSpecimen const& specimen, CodedWords const& words, std::size_t outcome);

 private:
  TotalsByRegion& sums_;
  std::unordered_map<std::uint64_t, Totals*> by_codes_;  // of country, stateProvince and county
  std::uint64_t last_codes_{};
  Totals* last_{};
};

}  // namespace keydrift
