#pragma once
// A list of numbers, on the disk beyond a bound.  Inner header of spill.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "keydrift/key/spill/temporary_file.hpp"

namespace keydrift {

class StoredNumbers {
 public:
  void push_back(std::uint64_t number);
  [[nodiscard]] std::size_t size() const { return on_disk_ + tail_.size(); }
  [[nodiscard]] std::uint64_t operator[](std::size_t index);  // 0 where the file has failed
  [[nodiscard]] std::optional<Finding> const& failure() const { return file_.failure(); }

 private:
  TemporaryFile file_;
  std::size_t on_disk_{};
  std::vector<std::uint64_t> tail_;
  std::vector<std::uint64_t> page_;  // of the file, that was asked for last
  std::size_t first_of_page_{};
};

}  // namespace keydrift
