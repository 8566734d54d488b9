#include "keydrift/key/spill/record_store.hpp"

#include <algorithm>
#include <cstring>

namespace keydrift {
namespace {

using Size = std::uint32_t;

}  // namespace

std::uint64_t RecordStore::add(std::string_view record) {
  std::lock_guard const lock{mutex_};
  auto const size = static_cast<Size>(record.size());
  if (tail_.size() + sizeof size + record.size() > memory_) {
    file_.append(tail_);
    tail_.clear();
  }
  auto const address = file_.size() + tail_.size();
  tail_.append(reinterpret_cast<char const*>(&size), sizeof size);
  tail_.append(record);
  return address;
}

void RecordStore::read(std::uint64_t address, std::string& record) {
  std::lock_guard const lock{mutex_};
  record.clear();
  if (file_.failure()) return;
  Size size = 0;
  if (address >= file_.size()) {
    auto const at = static_cast<std::size_t>(address - file_.size());
    std::memcpy(&size, tail_.data() + at, sizeof size);
    record.assign(tail_, at + sizeof size, size);
    return;
  }
  // Most records are short: one look gets the size and the record.
  constexpr std::uint64_t kGuess = 2048;
  auto const guess = static_cast<std::size_t>(std::min(kGuess, file_.size() - address));
  record.resize(guess);
  if (!file_.read(address, record.data(), guess)) {
    file_.fail("read back");
    record.clear();
    return;
  }
  std::memcpy(&size, record.data(), sizeof size);
  record.erase(0, sizeof size);
  auto const have = record.size();
  record.resize(size);
  if (size > have && !file_.read(address + sizeof size + have, record.data() + have, size - have)) {
    file_.fail("read back");
    record.clear();
  }
}

std::optional<Finding> RecordStore::failure() {
  std::lock_guard const lock{mutex_};
  return file_.failure();
}

}  // namespace keydrift
