#pragma once
// Numbers for the short words of one column.  Inner header of formats.

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/characters/coded_specimen.hpp"

namespace keydrift::tables {

// Cells of at most eight bytes, of which most columns of characters consist.  Each has a slot to
// itself: the multiplier of the hash is chosen so that no two fall together.  So a look-up is one
// comparison, and which word of the column it is costs no foretelling.
//
// A column with too many words for that keeps some of them here; the others are asked elsewhere.
class ShortCells {
 public:
  static constexpr std::size_t kBytes = 8;

  // The cell's bytes as a number: different cells, different numbers, since no cell holds a NUL.
  // Precondition: at most kBytes; so many may be read from where it begins.
  [[nodiscard]] static std::uint64_t key_of(char const* cell, std::size_t size) {
    std::uint64_t key = 0;
    std::memcpy(&key, cell, kBytes);
    return key & kMasks[size];
  }

  // False: it is not here.
  [[nodiscard]] bool find(std::uint64_t key, WordCode& code) const {
    auto const& slot = slots_[key * multiplier_ >> shift_];
    code = slot.code;
    return slot.key == key;
  }

  // Precondition: it is not here.  The empty cell is from the beginning, as kNoWord.
  void add(std::uint64_t key, WordCode code) {
    if (full_) return;
    auto& slot = slots_[key * multiplier_ >> shift_];
    if (slot.key == 0 && key * multiplier_ >> shift_ != 0) {
      slot = {key, code};
    } else {
      part({key, code});
    }
  }
  // What the empty cell stands for.
  void set_default(WordCode code) { slots_.front().code = code; }

 private:
  struct Slot {
    std::uint64_t key{};  // 0: the empty cell in the first slot, nothing in the others
    WordCode code{kNoWord};
  };
  static constexpr std::array<std::uint64_t, kBytes + 1> kMasks = [] {
    std::array<std::uint64_t, kBytes + 1> masks{};
    for (std::size_t size = 0; size <= kBytes; ++size) {
      for (std::size_t byte = 0; byte < size; ++byte) {
        auto const place = std::endian::native == std::endian::little ? byte : kBytes - 1 - byte;
        masks[size] |= std::uint64_t{0xFF} << (8 * place);
      }
    }
    return masks;
  }();
  static constexpr std::size_t kMostSlots = 256;
  static constexpr int kTrials = 32;  // multipliers for each number of slots

  // Another multiplier, or more slots, so that the new one has a slot to itself.
  void part(Slot added) {
    std::vector<Slot> all{added};
    for (std::size_t i = 1; i < slots_.size(); ++i) {
      if (slots_[i].key != 0) all.push_back(slots_[i]);
    }
    auto const empty = slots_.front().code;
    for (auto slots = slots_.size(); slots <= kMostSlots; slots *= 2) {
      auto const shift = 64 - std::countr_zero(slots);
      auto multiplier = multiplier_;
      for (int trial = 0; trial < kTrials; ++trial) {
        // The multiplier of Steele & Vigna's linear congruential generators, from memory; odd, and
        // so is every sum here.
        multiplier = multiplier * 0xD1342543DE82EF95U + 2;
        std::vector<Slot> tried(slots);
        bool apart = true;
        for (auto const& slot : all) {
          auto const at = slot.key * multiplier >> shift;
          apart = at != 0 && tried[at].key == 0;
          if (!apart) break;
          tried[at] = slot;
        }
        if (!apart) continue;
        slots_ = std::move(tried);
        slots_.front().code = empty;
        multiplier_ = multiplier;
        shift_ = shift;
        return;
      }
    }
    full_ = true;
  }

  std::vector<Slot> slots_{std::vector<Slot>(16)};
  std::uint64_t multiplier_{0x9E3779B97F4A7C15U};
  int shift_{60};
  bool full_{false};
};

}  // namespace keydrift::tables
