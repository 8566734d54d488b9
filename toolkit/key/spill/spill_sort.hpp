#pragma once
// Sorting more records than memory holds.
//
// Records are gathered up to a budget, sorted, and written to one temporary file as a run; the runs
// are merged when they are read back.  What fits into the budget never touches the disk.  Cost:
// every record is written once and read once, in order; memory is the budget, whatever the number.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string_view>

#include "keydrift/key/finding.hpp"

namespace keydrift {

enum class SpillOrder {
  key,               // equal keys in the order in which they were added
  key_then_payload,  // equal keys by the bytes of their payloads
};

class SpillSort {
 public:
  struct Record {
    std::uint64_t key{};
    std::string_view payload{};  // valid until the next call of next()
  };

  explicit SpillSort(std::size_t memory_bytes = std::size_t{16} << 20,
                     SpillOrder order = SpillOrder::key);
  ~SpillSort();
  SpillSort(SpillSort&&) noexcept;
  SpillSort& operator=(SpillSort&&) noexcept;

  void add(std::uint64_t key, std::string_view payload);
  // Ends adding.  Records then come ascending.
  void sort();
  [[nodiscard]] bool next(Record& record);
  [[nodiscard]] std::uint64_t spilled_bytes() const;  // written to the disk so far
  // temporary-file: it could not be made, written (a full disk) or read back.  Nothing that next()
  // gave out may be used then.
  [[nodiscard]] std::optional<Finding> failure() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace keydrift
