#include "keydrift/redetermination/verdict_ledger.hpp"

#include <algorithm>

#include "keydrift/key/spill/bytes.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kLedgerSortMemory = std::size_t{2} << 20;

// Where a verdict stands among all, by their first specimens.
struct Ordinal {
  Fingerprint id{};
  std::uint64_t ordinal{};
};

template <class Value>
std::string_view bytes_of(Value const& value) {
  return {reinterpret_cast<char const*>(&value), sizeof value};
}

template <class Value>
Value value_of(std::string_view bytes) {
  return ByteReader{bytes}.raw<Value>();
}

// The records of a sort by the upper half of their ids, those of one such half at a time: nearly
// always of one id.
template <class Value>
class Ids {
 public:
  explicit Ids(SpillSort& sorted) : sorted_{sorted} { more_ = sorted_.next(record_); }
  [[nodiscard]] bool next(std::vector<Value>& values) {
    values.clear();
    if (!more_) return false;
    auto const high = record_.key;
    while (more_ && record_.key == high) {
      values.push_back(value_of<Value>(record_.payload));
      more_ = sorted_.next(record_);
    }
    return true;
  }

 private:
  SpillSort& sorted_;
  SpillSort::Record record_;
  bool more_{false};
};

// Sums up the values of equal ids.
template <class Value, class Add>
void merge(std::vector<Value>& values, Add const& add) {
  std::stable_sort(values.begin(), values.end(),
                   [](Value const& a, Value const& b) { return a.id.low < b.id.low; });
  std::size_t kept = 0;
  for (auto const& value : values) {
    if (kept > 0 && values[kept - 1].id == value.id) {
      add(values[kept - 1], value);
    } else {
      values[kept++] = value;
    }
  }
  values.resize(kept);
}

}  // namespace

void CountedGroup::take(CountedGroup const& other) {
  if (other.first < first) {
    first = other.first;
    verdict = other.verdict;
  }
  sheets += other.sheets;
  has_types = has_types || other.has_types;
  has_vouchers = has_vouchers || other.has_vouchers;
}

VerdictLedger::VerdictLedger(std::size_t kept)
    : kept_{kept},
      store_{std::make_shared<RecordStore>()},
      verdicts_{kLedgerSortMemory},
      groups_{kLedgerSortMemory},
      ordinals_{kLedgerSortMemory} {}

std::optional<JudgedSummary> VerdictLedger::find(Fingerprint const& id) {
  std::lock_guard const lock{mutex_};
  auto const known = known_.find(id);
  if (known == known_.end()) return std::nullopt;
  return known->second;
}

JudgedSummary VerdictLedger::keep(JudgedSummary summary, std::string_view judged) {
  std::lock_guard const lock{mutex_};
  if (auto const known = known_.find(summary.id); known != known_.end()) return known->second;
  if (known_.size() >= kept_) known_.clear();
  summary.address = store_->add(judged);
  known_.emplace(summary.id, summary);
  return summary;
}

void VerdictLedger::add(CountedVerdict const& counted) {
  std::lock_guard const lock{mutex_};
  verdicts_.add(counted.id.high, bytes_of(counted));
}

void VerdictLedger::add(CountedGroup const& counted) {
  std::lock_guard const lock{mutex_};
  groups_.add(counted.id.high, bytes_of(counted));
}

std::uint32_t VerdictLedger::storage_number(std::string_view storage) {
  std::lock_guard const lock{mutex_};
  auto const [at, fresh] = storage_numbers_.try_emplace(
      std::string{storage}, static_cast<std::uint32_t>(storages_.size()));
  if (fresh) storages_.emplace_back(storage);
  return at->second;
}

void VerdictLedger::number_verdicts(OnVerdict const& on_verdict) {
  known_ = {};
  SpillSort by_place{kLedgerSortMemory};
  {
    auto all = std::move(verdicts_);  // gone when they are summed up
    all.sort();
    Ids<CountedVerdict> ids{all};
    std::vector<CountedVerdict> values;
    while (ids.next(values)) {
      merge(values, [](CountedVerdict& sum, CountedVerdict const& more) {
        sum.specimens += more.specimens;
        sum.first_place = std::min(sum.first_place, more.first_place);
      });
      for (auto const& value : values) by_place.add(value.first_place, bytes_of(value));
    }
    if (!failed_) failed_ = all.failure();
  }
  by_place.sort();
  std::uint64_t ordinal = 0;
  SpillSort::Record record;
  while (by_place.next(record)) {
    auto const counted = value_of<CountedVerdict>(record.payload);
    on_verdict(counted);
    ordinals_.add(counted.id.high, bytes_of(Ordinal{counted.id, ordinal++}));
  }
  if (!failed_) failed_ = by_place.failure();
}

void VerdictLedger::tell_groups(OnGroup const& on_group) {
  SpillSort by_verdict{kLedgerSortMemory};
  groups_.sort();
  {
    Ids<CountedGroup> ids{groups_};
    std::vector<CountedGroup> values;
    while (ids.next(values)) {
      merge(values, [](CountedGroup& sum, CountedGroup const& more) { sum.take(more); });
      for (auto const& value : values) by_verdict.add(value.verdict.high, bytes_of(value));
    }
  }
  by_verdict.sort();
  ordinals_.sort();
  Ids<Ordinal> ordinals{ordinals_};
  std::vector<Ordinal> of_half;
  SpillSort::Record record;
  while (by_verdict.next(record)) {
    while (of_half.empty() || of_half.front().id.high < record.key) {
      if (!ordinals.next(of_half)) break;
    }
    auto const group = value_of<CountedGroup>(record.payload);
    for (auto const& known : of_half) {
      if (known.id == group.verdict) on_group(group, known.ordinal);
    }
  }
  for (auto* sort : {&groups_, &by_verdict, &ordinals_}) {
    if (!failed_) failed_ = sort->failure();
  }
}

std::optional<Finding> VerdictLedger::failure() { return failed_ ? failed_ : store_->failure(); }

}  // namespace keydrift
