#include "keydrift/program/specimen_threads.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/program/round.hpp"

namespace keydrift::program {
namespace {

// Enough that handing them over costs nothing, and no more text than that at a time.
constexpr std::size_t kBatch = 256;  // rows
constexpr std::size_t kBatchBytes = std::size_t{1} << 20;
constexpr std::size_t kLargeRow = std::size_t{16} << 10;  // bytes; its memory is given back

struct Row {
  bool rejected{false};
  std::size_t bytes{};
  Specimen specimen;
  std::uint64_t line{};  // of a reject, as the following
  std::string code, message, raw;
};

std::size_t bytes_of(Specimen const& specimen) {
  auto bytes = specimen.scientific_name.size() + specimen.remarks.size() + specimen.storage.size() +
               specimen.type_status.size() + specimen.identification_references.size();
  for (auto const& place : specimen.places) bytes += place.size();
  for (auto const& observation : specimen.observations) bytes += observation.value.size();
  return bytes;
}

struct Batch {
  std::uint64_t first_place{};
  std::size_t bytes{};
  std::size_t used{};
  std::vector<Row> rows{std::vector<Row>(kBatch)};  // reused, so that strings keep their memory
  RowTexts texts;
};

// What one thread counts with.
class BatchCounter {
 public:
  BatchCounter(ThreadedRun const& run, Lexicon const* drafted)
      : redeterminer_{run.redeterminer.assistant()},
        writer_{run.comparison, *redeterminer_, run.wanted} {
    if (drafted != nullptr) tying_.emplace(*drafted);
  }

  void count(Batch& batch) {
    batch.texts.clear();
    for (std::size_t i = 0; i < batch.used; ++i) {
      auto& row = batch.rows[i];
      ++batch.texts.rows;
      redeterminer_->stand_at(batch.first_place + i);
      if (row.rejected) {
        writer_.reject({row.line, row.code, row.message, row.raw}, batch.texts);
        continue;
      }
      if (tying_) tying_->tie(row.specimen);
      writer_.write(row.specimen, redeterminer_->count(row.specimen), batch.texts);
    }
  }

  void finish(ThreadedRun const& run, RecordTying* tying) {
    run.redeterminer.absorb(*redeterminer_);
    if (tying != nullptr) tying->absorb(*tying_);
  }

 private:
  std::unique_ptr<Redeterminer> redeterminer_;
  RowWriter writer_;
  std::optional<RecordTying> tying_;
};

}  // namespace

struct SpecimenThreads::State {
  State(ThreadedRun const& a_run, Lexicon const& drafted, RecordTying* the_tying)
      : run{a_run}, tying{the_tying}, threads{std::clamp(run.threads, 1U, kMostThreads)} {
    for (std::uint32_t i = 0; i < threads; ++i) {
      counters.push_back(
          std::make_unique<BatchCounter>(run, tying != nullptr ? &drafted : nullptr));
    }
    // With one thread there is but one batch, and nobody to hand it to.
    if (threads > 1) crew.emplace(round, counters);
  }

  Row& next(std::size_t bytes) {
    auto& batch = round.to_fill();
    if (batch.used == 0) batch.first_place = rows;
    ++rows;
    batch.bytes += bytes;
    auto& row = batch.rows[batch.used++];
    row.bytes = bytes;
    return row;
  }
  void submit_if_full() {
    auto const& batch = round.to_fill();
    if (batch.used == kBatch || batch.bytes >= kBatchBytes) submit();
  }

  void submit() {
    if (!crew) {
      auto& batch = round.to_fill();
      counters.front()->count(batch);
      hand_on(batch);
      return;
    }
    round.submit();
    if (!round.has_room()) hand_on_oldest();
  }

  void hand_on_oldest() {
    hand_on(round.oldest());
    round.hand_on();
  }

  void hand_on(Batch& batch) const {
    run.in_order(batch.texts);
    if (run.progress != nullptr) run.progress->step(batch.texts.rows);
    for (std::size_t i = 0; i < batch.used; ++i) {
      if (batch.rows[i].bytes > kLargeRow) batch.rows[i] = {};
    }
    batch.used = 0;
    batch.bytes = 0;
  }

  void finish() {
    if (round.to_fill().used > 0) submit();
    while (!round.is_empty()) hand_on_oldest();
    if (crew) crew->join();
    for (auto& counter : counters) counter->finish(run, tying);
  }

  ThreadedRun const& run;
  RecordTying* tying;
  unsigned threads;
  std::uint64_t rows{};
  std::vector<std::unique_ptr<BatchCounter>> counters;
  Round<Batch> round{4 * threads + 1};
  std::optional<Crew<Batch, BatchCounter>> crew;  // ends before what it works with
};

SpecimenThreads::SpecimenThreads(ThreadedRun const& run, Lexicon const& drafted, RecordTying* tying)
    : state_{std::make_unique<State>(run, drafted, tying)} {}
SpecimenThreads::~SpecimenThreads() = default;

void SpecimenThreads::add(Specimen const& specimen) {
  auto& row = state_->next(bytes_of(specimen));
  row.rejected = false;
  row.specimen = specimen;
  state_->submit_if_full();
}

void SpecimenThreads::add(Reject const& reject) {
  auto& row = state_->next(reject.raw.size());
  row.rejected = true;
  row.line = reject.line;
  row.code.assign(reject.code);
  row.message.assign(reject.message);
  row.raw.assign(reject.raw);
  state_->submit_if_full();
}

void SpecimenThreads::finish() { state_->finish(); }

}  // namespace keydrift::program
