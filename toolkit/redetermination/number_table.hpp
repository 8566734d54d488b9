#pragma once
// A table of numbers.  Inner header of redetermination.

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace keydrift {

// From numbers to numbers, by open addressing: the one table that every specimen asks.
class NumberTable {
 public:
  static constexpr std::uint32_t kNone = ~std::uint32_t{};

  // kNone: there is none.
  [[nodiscard]] std::uint32_t find(std::uint64_t key) const {
    if (slots_.empty()) return kNone;
    auto const mask = slots_.size() - 1;
    for (auto at = spread(key) & mask;; at = (at + 1) & mask) {
      if (slots_[at].value == kNone || slots_[at].key == key) return slots_[at].value;
    }
  }
  void insert(std::uint64_t key, std::uint32_t value) {
    if (slots_.size() < 2 * (count_ + 1)) grow();
    put(key, value);
    ++count_;
  }
  void clear() {
    slots_.clear();
    count_ = 0;
  }

 private:
  struct Slot {
    std::uint64_t key{};
    std::uint32_t value{kNone};
  };
  static std::size_t spread(std::uint64_t key) {
    key *= 0x9E3779B97F4A7C15U;
    return static_cast<std::size_t>(key ^ (key >> 32));
  }
  void put(std::uint64_t key, std::uint32_t value) {
    auto const mask = slots_.size() - 1;
    auto at = spread(key) & mask;
    while (slots_[at].value != kNone) at = (at + 1) & mask;
    slots_[at] = {key, value};
  }
  void grow() {
    auto const old = std::exchange(slots_, {});
    slots_.resize(old.empty() ? 1024 : old.size() * 2);
    for (auto const& slot : old) {
      if (slot.value != kNone) put(slot.key, slot.value);
    }
  }
  std::vector<Slot> slots_;  // a power of two, at most half full
  std::size_t count_{};
};

}  // namespace keydrift
