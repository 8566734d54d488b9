#pragma once
// Which rows bear a number that an earlier one bears.  Inner header of formats.
//
// The first so many different numbers are looked up in memory; whatever comes behind them and is
// none of them is sorted on the disk, and its repeats are known at the end.  Numbers are told apart
// by fingerprints of 64 bits.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/spill/spill_sort.hpp"

namespace keydrift::tables {

class RepeatedNumbers {
 public:
  explicit RepeatedNumbers(std::size_t in_memory) : limit_{in_memory} {}

  // Never 0.
  [[nodiscard]] static std::uint64_t fingerprint(std::string_view key);
  // Rows in their order.  True: take() must be told the row's number as printed.
  [[nodiscard]] bool meet(std::uint64_t fingerprint, std::uint64_t line);
  void take(std::string_view printed);

  // --- when all rows were met ---

  struct Repeat {
    std::string printed;
    std::uint64_t first_line{};
    std::uint64_t line{};
  };
  // Nothing: done.  temporary-file.
  [[nodiscard]] std::optional<Finding> finish();
  [[nodiscard]] std::uint64_t count() const { return count_; }  // rows that repeat
  // The first of them, in their order.
  static constexpr std::size_t kListed = 20;
  [[nodiscard]] std::vector<Repeat> const& first() const { return first_; }

 private:
  // In three words, for there are many: a line beyond 32 bits is left to the disk.
  struct Slot {
    std::uint32_t high{}, low{};  // of the fingerprint; both 0: free
    std::uint32_t line{};
  };
  [[nodiscard]] std::uint32_t line_in_memory(std::uint64_t fingerprint, std::uint64_t line);
  void grow();
  void keep_first();

  std::size_t limit_;
  std::size_t used_{};
  std::vector<Slot> slots_;  // a power of two, at most three quarters full
  std::optional<SpillSort> others_;
  std::uint64_t fingerprint_{}, line_{}, first_line_{};  // of the number to be taken
  std::string payload_;
  std::uint64_t count_{};
  std::vector<Repeat> first_;
};

}  // namespace keydrift::tables
