#pragma once
// What all threads of a run have judged and counted, in bounded memory.  Inner header of
// redetermination.
//
// What was judged of each evidence is stored once (on the disk beyond a few megabytes) and found by
// its fingerprint as long as the evidence is among those met lately.  How many specimens it has is
// counted by each thread, written down here when the thread's table is full, and summed up at the
// end: by sorting, so that neither the number of different verdicts nor that of groups of sheets
// is bounded by memory.

#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/key/spill/fingerprint.hpp"
#include "keydrift/key/spill/record_store.hpp"
#include "keydrift/key/spill/spill_sort.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

// What counting has to know of a verdict.
struct JudgedSummary {
  Fingerprint id{};         // of the evidence: equal ones, equal verdicts
  Fingerprint question{};   // equal where the same is asked; set where `look`
  std::uint64_t address{};  // of all that was judged, in the store
  Outcome outcome{Outcome::not_keyed};
  bool look{false};     // somebody must look at its specimens
  bool relabel{false};  // the record alone gives another name
};

// A verdict and its specimens.
struct CountedVerdict {
  Fingerprint id{};
  std::uint64_t address{};
  std::uint64_t specimens{};
  std::uint64_t first_place{};  // of the first of them
};

// Sheets of one storage unit of which the same is asked.
struct CountedGroup {
  Fingerprint id{};
  std::uint64_t sheets{};
  // The sheet that is first on the worklist: types, then vouchers, then by place; and its verdict.
  struct Rank {
    std::uint64_t kind{}, place{};
    auto operator<=>(Rank const&) const = default;
  };
  Rank first{};
  Fingerprint verdict{};
  std::uint32_t storage{};  // VerdictLedger::storage_number()
  bool has_types{false};
  bool has_vouchers{false};

  void take(CountedGroup const& other);  // of the same id
};

class VerdictLedger {
 public:
  // `kept`: summaries found by their ids; beyond that all are forgotten, and judged again.
  explicit VerdictLedger(std::size_t kept);

  // --- while specimens are counted: any thread ---
  [[nodiscard]] std::optional<JudgedSummary> find(Fingerprint const& id);
  // Stores what was judged, unless somebody did before; what is kept is that of whoever came first.
  [[nodiscard]] JudgedSummary keep(JudgedSummary summary, std::string_view judged);
  void read(std::uint64_t address, std::string& judged) const { store_->read(address, judged); }
  void add(CountedVerdict const& counted);
  void add(CountedGroup const& counted);
  [[nodiscard]] std::uint32_t storage_number(std::string_view storage);

  // --- at the end: one thread, in this order ---
  // Verdicts by their first specimens.
  using OnVerdict = std::function<void(CountedVerdict const&)>;
  void number_verdicts(OnVerdict const& on_verdict);
  // Groups, with the ordinals of their verdicts in that order, as they happen to come.
  using OnGroup = std::function<void(CountedGroup const&, std::uint64_t verdict)>;
  void tell_groups(OnGroup const& on_group);
  [[nodiscard]] std::vector<std::string> const& storages() const { return storages_; }
  [[nodiscard]] std::shared_ptr<RecordStore> const& store() const { return store_; }
  [[nodiscard]] std::optional<Finding> failure();

 private:
  std::size_t kept_;
  std::shared_ptr<RecordStore> store_;
  std::mutex mutex_;
  std::unordered_map<Fingerprint, JudgedSummary> known_;
  SpillSort verdicts_, groups_;  // by the upper half of the id
  SpillSort ordinals_;           // of verdicts, likewise
  std::vector<std::string> storages_;
  std::unordered_map<std::string, std::uint32_t> storage_numbers_;
  std::optional<Finding> failed_;
};

}  // namespace keydrift
