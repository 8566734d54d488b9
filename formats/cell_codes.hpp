#pragma once
// Numbers for the words of one column.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/coded_specimen.hpp"

namespace keydrift::tables {

// Each different cell of a column gets a number; what the number stands for is the cell cleaned.
// Memory is bounded: after `most` different cells further ones have none.
class CellCodes {
 public:
  explicit CellCodes(std::size_t most) : most_{most} {}

  // The code of a cell that was met before; nothing: it is to be added.  At least 16 bytes may be
  // read from where the cell begins.
  [[nodiscard]] WordCode const* find(std::string_view cell) const {
    if (slots_.empty()) return nullptr;
    auto const key = key_of(cell);
    auto const mask = slots_.size() - 1;
    for (auto at = spread(key) & mask;; at = (at + 1) & mask) {
      auto const& slot = slots_[at];
      if (!slot.used) return nullptr;
      if (slot.key == key && (key.size <= 16 || cells_[slot.cell] == cell)) return &slot.code;
    }
  }

  [[nodiscard]] bool full() const { return used_ >= most_; }
  // `cleaned`: what the cell says; "" has the code kNoWord.  Precondition: it is not full, and the
  // cell is not in it.
  WordCode add(std::string_view cell, std::string_view cleaned);

  // What a code stands for.
  [[nodiscard]] std::string_view word(WordCode code) const {
    return code == kNoWord ? std::string_view{} : std::string_view{words_[code - 1]};
  }

 private:
  // A cell of at most 16 bytes is its first and last eight bytes and its size.
  struct Key {
    std::uint64_t front{}, back{};
    std::uint32_t size{};
    bool operator==(Key const&) const = default;
  };
  struct Slot {
    Key key{};
    WordCode code{};
    std::uint32_t cell{};  // of long ones, in cells_
    bool used{false};
  };

  static Key key_of(std::string_view cell) {
    Key key;
    key.size = static_cast<std::uint32_t>(cell.size());
    std::memcpy(&key.front, cell.data(), 8);
    if (cell.size() < 8) {
      key.front &= (std::uint64_t{1} << (8 * cell.size())) - 1;
    } else {
      std::memcpy(&key.back, cell.data() + cell.size() - 8, 8);
    }
    return key;
  }
  static std::size_t spread(Key const& key) {
    auto hash = (key.front ^ (key.back << 29 | key.back >> 35) ^ key.size) * 0x9E3779B97F4A7C15U;
    hash ^= hash >> 32;
    return static_cast<std::size_t>(hash);
  }
  void put(Slot const& slot);
  void grow();

  std::size_t most_;
  std::size_t used_{};
  std::vector<Slot> slots_;        // a power of two, at most half full
  std::deque<std::string> words_;  // by code - 1
  std::deque<std::string> cells_;  // the long ones
};

}  // namespace keydrift::tables
