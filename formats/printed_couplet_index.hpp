#pragma once
// Where a printed number leads, part by part.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {

class CoupletIndex {
 public:
  void add(std::uint32_t part, LabelKey key, CoupletId couplet) {
    by_part_.emplace(in_part(part, key), couplet);
    anywhere_.emplace(key, Home{couplet, part});
    if (((key >> 16U) & 0xFFFFFFFFU) == 1) first_.insert(part);
  }
  // The couplet of that label in the part, else in the whole file.
  [[nodiscard]] std::optional<CoupletId> find(std::uint32_t part, LabelKey key) const {
    if (auto const here = by_part_.find(in_part(part, key)); here != by_part_.end()) {
      return here->second;
    }
    auto const there = anywhere_.find(key);
    if (there == anywhere_.end()) return std::nullopt;
    // Keys that begin with 1 each do not lead into each other by numbers.
    bool const apart = first_.contains(part) && first_.contains(there->second.part);
    return apart ? std::nullopt : std::optional{there->second.couplet};
  }

 private:
  std::unordered_map<LabelKey, CoupletId> by_part_;
  struct Home {
    CoupletId couplet;
    std::uint32_t part{};
  };
  std::unordered_map<LabelKey, Home> anywhere_;
  std::unordered_set<std::uint32_t> first_;  // parts that have a couplet 1
};

}  // namespace keydrift::printed
