#include "keydrift/formats/repeated_numbers.hpp"

#include <algorithm>
#include <functional>
#include <limits>
#include <utility>

#include "keydrift/key/spill/bytes.hpp"

namespace keydrift::tables {
namespace {

constexpr std::size_t kSortMemory = std::size_t{4} << 20;
constexpr std::uint32_t kElsewhere = 0;  // lines count from 1

}  // namespace

std::uint64_t RepeatedNumbers::fingerprint(std::string_view key) {
  auto const hash = static_cast<std::uint64_t>(std::hash<std::string_view>{}(key));
  return hash == 0 ? 1 : hash;
}

// The line of the first row with this number: the row's own where it is new, kElsewhere where it
// is new and there is no room for it.
std::uint32_t RepeatedNumbers::line_in_memory(std::uint64_t fingerprint, std::uint64_t line) {
  bool const full = used_ >= limit_ || line > std::numeric_limits<std::uint32_t>::max();
  if (slots_.empty() || (4 * (used_ + 1) > 3 * slots_.size() && !full)) grow();
  Slot const wanted{static_cast<std::uint32_t>(fingerprint >> 32),
                    static_cast<std::uint32_t>(fingerprint), static_cast<std::uint32_t>(line)};
  auto const mask = slots_.size() - 1;
  auto at = static_cast<std::size_t>(fingerprint) & mask;
  for (; (slots_[at].high | slots_[at].low) != 0; at = (at + 1) & mask) {
    if (slots_[at].high == wanted.high && slots_[at].low == wanted.low) return slots_[at].line;
  }
  if (full) return kElsewhere;
  slots_[at] = wanted;
  ++used_;
  return wanted.line;
}

void RepeatedNumbers::grow() {
  auto const old = std::exchange(slots_, {});
  slots_.assign(std::max<std::size_t>(64, old.size() * 2), {});
  auto const mask = slots_.size() - 1;
  for (auto const& slot : old) {
    if ((slot.high | slot.low) == 0) continue;
    auto at = static_cast<std::size_t>(slot.low) & mask;
    while ((slots_[at].high | slots_[at].low) != 0) at = (at + 1) & mask;
    slots_[at] = slot;
  }
}

bool RepeatedNumbers::meet(std::uint64_t fingerprint, std::uint64_t line) {
  first_line_ = line_in_memory(fingerprint, line);
  if (first_line_ == line) return false;
  fingerprint_ = fingerprint;
  line_ = line;
  if (first_line_ == kElsewhere) return true;
  return ++count_ <= kListed;
}

void RepeatedNumbers::take(std::string_view printed) {
  if (first_line_ != kElsewhere) {
    first_.push_back({std::string{printed}, first_line_, line_});
    return;
  }
  if (!others_) others_.emplace(kSortMemory);
  payload_.clear();
  ByteWriter{payload_}.number(line_);
  payload_ += printed;
  others_->add(fingerprint_, payload_);
}

void RepeatedNumbers::keep_first() {
  std::sort(first_.begin(), first_.end(),
            [](Repeat const& a, Repeat const& b) { return a.line < b.line; });
  if (first_.size() > kListed) first_.resize(kListed);
}

std::optional<Finding> RepeatedNumbers::finish() {
  slots_ = {};
  if (!others_) return std::nullopt;
  auto others = std::exchange(others_, std::nullopt);
  others->sort();
  SpillSort::Record record;
  std::optional<std::uint64_t> last;
  std::uint64_t first_line = 0;
  while (others->next(record)) {
    ByteReader reader{record.payload};
    auto const line = reader.number();
    if (last != record.key) {
      last = record.key;
      first_line = line;
      continue;
    }
    ++count_;
    if (first_.size() == kListed && first_.back().line < line) continue;
    first_.push_back({std::string{reader.rest()}, first_line, line});
    if (first_.size() >= 2 * kListed) keep_first();
  }
  keep_first();
  return others->failure();
}

}  // namespace keydrift::tables
