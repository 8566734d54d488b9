#include "keydrift/key/spill/spill_sort.hpp"

#include <algorithm>
#include <cstring>
#include <string>
#include <vector>

#include "keydrift/key/spill/temporary_file.hpp"

namespace keydrift {
namespace {

struct Entry {
  std::uint64_t key{};
  std::uint32_t size{};
  std::uint64_t offset{};
};
constexpr std::size_t kHead = sizeof(std::uint64_t) + sizeof(std::uint32_t);

}  // namespace

struct SpillSort::State {
  State(std::size_t budget, SpillOrder an_order)
      : memory{std::max<std::size_t>(budget, 1U << 16)}, by{an_order} {}

  // A run on the disk and the part of it that is in memory.
  struct Run {
    std::uint64_t at{};  // in the file: what was not read yet
    std::uint64_t end{};
    std::vector<char> block;
    std::size_t given{};  // of the block
    std::uint64_t key{};
    std::string_view payload;
  };

  void add(std::uint64_t key, std::string_view payload) {
    if (failed()) return;
    // Before it grows: a buffer that doubles would take twice the budget.
    if (bytes.size() + payload.size() + (entries.size() + 1) * sizeof(Entry) > memory) spill();
    entries.push_back({key, static_cast<std::uint32_t>(payload.size()), bytes.size()});
    bytes.append(payload);
  }

  void sort_entries() {
    auto const payload = [this](Entry const& entry) {
      return std::string_view{bytes}.substr(entry.offset, entry.size);
    };
    std::stable_sort(entries.begin(), entries.end(), [&](Entry const& a, Entry const& b) {
      if (a.key != b.key || by == SpillOrder::key) return a.key < b.key;
      return payload(a) < payload(b);
    });
  }

  void spill() {
    if (entries.empty()) return;
    sort_entries();
    auto const begin = file.size();
    std::string out;
    auto const flush = [&] {
      file.append(out);
      out.clear();
    };
    for (auto const& entry : entries) {
      char head[kHead];
      std::memcpy(head, &entry.key, sizeof entry.key);
      std::memcpy(head + sizeof entry.key, &entry.size, sizeof entry.size);
      out.append(head, kHead);
      out.append(bytes, entry.offset, entry.size);
      constexpr std::size_t kBlock = std::size_t{256} << 10;
      if (out.size() >= kBlock) flush();
      if (failed()) return;
    }
    flush();
    runs.push_back({.at = begin, .end = file.size(), .block = {}, .payload = {}});
    entries.clear();
    bytes.clear();
  }

  void sort() {
    if (runs.empty()) {
      sort_entries();
      return;
    }
    spill();
    entries = {};
    bytes = {};
    window = std::clamp<std::size_t>(memory / (runs.size() + 1), 1U << 12, std::size_t{1} << 20);
    for (std::size_t r = 0; r < runs.size(); ++r) {
      if (advance(runs[r])) push(r);
    }
  }

  // Makes `wanted` bytes of the run available behind `given`; false: it ends before.
  bool have(Run& run, std::size_t wanted) {
    auto const left = run.block.size() - run.given;
    if (left >= wanted) return true;
    std::memmove(run.block.data(), run.block.data() + run.given, left);
    run.given = 0;
    auto const more = std::min<std::uint64_t>(std::max(window, wanted) - left, run.end - run.at);
    run.block.resize(left + static_cast<std::size_t>(more));
    if (!file.read(run.at, run.block.data() + left, static_cast<std::size_t>(more))) {
      file.fail("read back");
      return false;
    }
    run.at += more;
    return run.block.size() >= wanted;
  }

  bool advance(Run& run) {
    if (!have(run, kHead)) return false;
    std::uint32_t size = 0;
    std::memcpy(&run.key, run.block.data() + run.given, sizeof run.key);
    std::memcpy(&size, run.block.data() + run.given + sizeof run.key, sizeof size);
    if (!have(run, kHead + size)) return false;
    run.payload = {run.block.data() + run.given + kHead, size};
    run.given += kHead + size;
    return true;
  }

  // Of two runs: does the record at hand of the first come behind that of the second?
  [[nodiscard]] auto comes_later() const {
    return [this](std::size_t a, std::size_t b) {
      auto const& one = runs[a];
      auto const& other = runs[b];
      if (one.key != other.key) return one.key > other.key;
      if (by == SpillOrder::key_then_payload && one.payload != other.payload) {
        return one.payload > other.payload;
      }
      return a > b;
    };
  }
  void push(std::size_t run) {
    order.push_back(run);
    std::push_heap(order.begin(), order.end(), comes_later());
  }

  bool next(Record& record) {
    if (failed()) return false;
    if (runs.empty()) {
      if (at == entries.size()) return false;
      auto const& entry = entries[at++];
      record = {entry.key, std::string_view{bytes}.substr(entry.offset, entry.size)};
      return true;
    }
    if (held) {
      if (advance(runs[*held])) push(*held);
      held.reset();
    }
    if (failed() || order.empty()) return false;
    std::pop_heap(order.begin(), order.end(), comes_later());
    auto const r = order.back();
    order.pop_back();
    held = r;
    record = {runs[r].key, runs[r].payload};
    return true;
  }

  [[nodiscard]] bool failed() const { return file.failure().has_value(); }

  std::size_t memory;
  SpillOrder by;
  std::string bytes;
  std::vector<Entry> entries;
  std::size_t at{};
  TemporaryFile file;
  std::vector<Run> runs;
  std::size_t window{};
  std::vector<std::size_t> order;   // a heap of runs: the first record on top
  std::optional<std::size_t> held;  // whose payload was given out last
};

SpillSort::SpillSort(std::size_t memory_bytes, SpillOrder order)
    : state_{std::make_unique<State>(memory_bytes, order)} {}
SpillSort::~SpillSort() = default;
SpillSort::SpillSort(SpillSort&&) noexcept = default;
SpillSort& SpillSort::operator=(SpillSort&&) noexcept = default;

void SpillSort::add(std::uint64_t key, std::string_view payload) { state_->add(key, payload); }
void SpillSort::sort() { state_->sort(); }
bool SpillSort::next(Record& record) { return state_->next(record); }
std::uint64_t SpillSort::spilled_bytes() const { return state_->file.size(); }
std::optional<Finding> SpillSort::failure() const { return state_->file.failure(); }

}  // namespace keydrift
