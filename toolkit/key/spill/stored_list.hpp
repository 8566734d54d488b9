#pragma once
// A list that memory need not hold: short ones stay in memory, long ones are on the disk, and what
// is asked of is made anew each time.
//
// Value needs write_bytes(ByteWriter&, Value const&) and read_bytes(ByteReader&, Value&).

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <iterator>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/key/spill/bytes.hpp"
#include "keydrift/key/spill/record_store.hpp"
#include "keydrift/key/spill/stored_numbers.hpp"

namespace keydrift {

// Moved, not copied.  By one thread at a time, reading as well.
template <class Value>
class StoredList {
 public:
  StoredList() : StoredList{std::make_shared<RecordStore>(std::size_t{1} << 20)} {}
  // Of records in a store that others write to as well.
  explicit StoredList(std::shared_ptr<RecordStore> store)
      : store_{std::move(store)}, addresses_{std::make_unique<StoredNumbers>()} {}
  StoredList(std::initializer_list<Value> values) : StoredList{} {
    for (auto const& value : values) push_back(value);
  }
  explicit StoredList(std::vector<Value> const& values) : StoredList{} {
    for (auto const& value : values) push_back(value);
  }

  void push_back(Value const& value) {
    std::string record;
    ByteWriter writer{record};
    write_bytes(writer, value);
    push_stored(store_->add(record));
  }
  // The record at that address of the store begins with such a value.
  void push_stored(std::uint64_t address) { addresses_->push_back(address); }

  [[nodiscard]] std::size_t size() const { return addresses_->size(); }
  [[nodiscard]] bool empty() const { return size() == 0; }
  [[nodiscard]] Value operator[](std::size_t index) const {
    std::string record;
    store_->read((*addresses_)[index], record);
    ByteReader reader{record};
    Value value;
    read_bytes(reader, value);
    return value;
  }

  class Iterator {
   public:
    using iterator_category = std::input_iterator_tag;
    using value_type = Value;
    using difference_type = std::ptrdiff_t;
    using pointer = void;
    using reference = Value;
    Iterator(StoredList const& list, std::size_t at) : list_{&list}, at_{at} {}
    [[nodiscard]] Value operator*() const { return (*list_)[at_]; }
    Iterator& operator++() {
      ++at_;
      return *this;
    }
    Iterator operator++(int) {
      auto const before = *this;
      ++at_;
      return before;
    }
    bool operator==(Iterator const& other) const { return at_ == other.at_; }

   private:
    StoredList const* list_;
    std::size_t at_;
  };
  [[nodiscard]] Iterator begin() const { return {*this, 0}; }
  [[nodiscard]] Iterator end() const { return {*this, size()}; }
  [[nodiscard]] std::vector<Value> to_vector() const { return {begin(), end()}; }

  // temporary-file.  What was read since must not be used.
  [[nodiscard]] std::optional<Finding> failure() const {
    if (auto failed = store_->failure()) return failed;
    return addresses_->failure();
  }

 private:
  std::shared_ptr<RecordStore> store_;
  std::unique_ptr<StoredNumbers> addresses_;
};

}  // namespace keydrift
