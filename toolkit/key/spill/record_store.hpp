#pragma once
// Records that are written once and read back by their addresses, from memory or from the disk.

#include <cstddef>
#include <cstdint>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>

#include "keydrift/key/spill/temporary_file.hpp"

namespace keydrift {

// Any number of threads may add and read.  Memory is the budget; what goes beyond is on the disk.
class RecordStore {
 public:
  explicit RecordStore(std::size_t memory_bytes = std::size_t{4} << 20) : memory_{memory_bytes} {}

  // Its address.
  std::uint64_t add(std::string_view record);
  // The record of an address, into `record`; empty where the store has failed.
  void read(std::uint64_t address, std::string& record);
  // temporary-file.  What was read since must not be used.
  [[nodiscard]] std::optional<Finding> failure();

 private:
  std::size_t memory_;
  std::mutex mutex_;
  TemporaryFile file_;
  std::string tail_;  // what stands behind the end of the file
};

}  // namespace keydrift
