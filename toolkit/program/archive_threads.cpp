#include "keydrift/program/archive_threads.hpp"

#include <algorithm>
#include <memory>
#include <thread>
#include <utility>
#include <vector>

#include "keydrift/program/round.hpp"

namespace keydrift::program {
namespace {

constexpr std::size_t kBlockBytes = std::size_t{256} << 10;
// What is written of a row may be ten times as long as the row, and several blocks are on their
// way.
constexpr std::size_t kWrittenBlockBytes = std::size_t{128} << 10;

// A block on its way.
struct Job {
  OccurrenceBlock block;
  RowTexts texts;
  std::vector<std::pair<std::uint64_t, std::uint32_t>> numbers;  // fingerprint, row
};

// What one thread counts with.
class BlockCounter {
 public:
  BlockCounter(OccurrenceReader const& reader, ThreadedRun const& run)
      : rows_{reader.worker()},
        redeterminer_{run.redeterminer.assistant()},
        writer_{run.comparison, *redeterminer_, run.wanted} {}

  void count(Job& job) {
    job.texts.clear();
    job.numbers.clear();
    rows_->begin(job.block);
    auto const& rows = job.block.csv.rows;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      ++job.texts.rows;
      redeterminer_->stand_at(job.block.first_place + i);
      if (rows[i].rejected) {
        auto const& why = job.block.csv.rejects[rows[i].first_cell];
        reject(job, i, why.code, why.message);
        continue;
      }
      if (!count_coded(job, i) && !count_in_words(job, i)) {
        reject(job, i, kNothingUsable, kNothingUsableWords);
        continue;
      }
      if (auto const number = rows_->number(); number != 0) {
        job.numbers.emplace_back(number, static_cast<std::uint32_t>(i));
      }
    }
  }

  void finish(OccurrenceReader& reader, ThreadedRun const& run) {
    run.redeterminer.absorb(*redeterminer_);
    reader.absorb(*rows_);
  }

 private:
  bool count_coded(Job& job, std::size_t row) {
    auto const* coded = rows_->coded(row);
    if (coded == nullptr) return false;
    auto const counted = redeterminer_->count(*coded, *rows_);
    if (!counted) return false;
    rows_->take_coded();
    bool const keeps = redeterminer_->keeps(*counted);
    if (!keeps && !writer_.wants(*counted)) return true;
    if (keeps) {
      auto const& specimen = *rows_->read(row);
      redeterminer_->keep(*counted, specimen);
      writer_.write(specimen, *counted, job.texts);
    } else {
      writer_.write(rows_->brief(row), *counted, job.texts);
    }
    return true;
  }

  bool count_in_words(Job& job, std::size_t row) {
    auto const* specimen = rows_->read(row);
    if (specimen == nullptr) return false;
    writer_.write(*specimen, redeterminer_->count(*specimen), job.texts);
    return true;
  }

  void reject(Job& job, std::size_t row, std::string_view code, std::string_view message) {
    writer_.reject({.line = job.block.csv.rows[row].line,
                    .code = code,
                    .message = message,
                    .raw = job.block.csv.raw(job.block.csv.rows[row])},
                   job.texts);
  }

  std::unique_ptr<OccurrenceWorker> rows_;
  std::unique_ptr<Redeterminer> redeterminer_;
  RowWriter writer_;
};

}  // namespace

unsigned usual_threads() {
  return std::clamp(std::thread::hardware_concurrency(), 1U, kMostThreads);
}

bool count_specimens(OccurrenceReader& reader, ThreadedRun const& run) {
  if (!reader.start()) return false;
  auto const block_bytes =
      run.wanted.specimens || run.wanted.sheets() ? kWrittenBlockBytes : kBlockBytes;
  auto const scribe = reader.worker();
  auto const hand_on = [&](Job const& job) {
    for (auto const& [number, row] : job.numbers) {
      auto const line = job.block.csv.rows[row].line;
      if (!reader.meet_number(number, line)) continue;
      scribe->begin(job.block);
      reader.take_number(scribe->printed_number(row));
    }
    run.in_order(job.texts);
    if (run.progress != nullptr) run.progress->step(job.texts.rows);
  };
  std::vector<std::unique_ptr<BlockCounter>> counters;
  for (std::uint32_t i = 0; i < std::clamp(run.threads, 1U, kMostThreads); ++i) {
    counters.push_back(std::make_unique<BlockCounter>(reader, run));
  }
  auto next = OccurrenceReader::NextBlock::block;
  if (counters.size() == 1) {
    Job job;
    while ((next = reader.next_block(job.block, block_bytes)) ==
           OccurrenceReader::NextBlock::block) {
      counters.front()->count(job);
      hand_on(job);
    }
  } else {
    Round<Job> round{2 * counters.size() + 1};
    Crew<Job, BlockCounter> crew{round, counters};
    while (next == OccurrenceReader::NextBlock::block || !round.is_empty()) {
      if (next == OccurrenceReader::NextBlock::block && round.has_room()) {
        next = reader.next_block(round.to_fill().block, block_bytes);
        if (next == OccurrenceReader::NextBlock::block) round.submit();
      } else {
        hand_on(round.oldest());
        round.hand_on();
      }
    }
    crew.join();
  }
  for (auto& counter : counters) counter->finish(reader, run);
  return next == OccurrenceReader::NextBlock::end;
}

}  // namespace keydrift::program
