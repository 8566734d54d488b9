#include "keydrift/formats/spill_sort.hpp"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <queue>
#include <string>
#include <system_error>
#include <vector>

namespace keydrift {
namespace {

struct Entry {
  std::uint64_t key{};
  std::uint32_t size{};
  std::uint64_t offset{};
};
constexpr std::size_t kHead = sizeof(std::uint64_t) + sizeof(std::uint32_t);

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

}  // namespace

struct SpillSort::State {
  explicit State(std::size_t budget) : memory{std::max<std::size_t>(budget, 1U << 16)} {}

  // A run on the disk and the part of it that is in memory.
  struct Run {
    std::uint64_t at{};  // in the file: what was not read yet
    std::uint64_t end{};
    std::vector<char> block;
    std::size_t given{};  // of the block
    std::uint64_t key{};
    std::string_view payload;
  };

  void stop_at(char const* what) {
    if (failed) return;
    Finding finding;
    finding.code = "temporary-file";
    finding.severity = Severity::error;
    finding.message = std::string{"a temporary file cannot be "} + what + ": " +
                      std::generic_category().message(errno);
    finding.remedy = "make room on the disk, or say where there is some by TMPDIR";
    failed = std::move(finding);
  }

  void add(std::uint64_t key, std::string_view payload) {
    if (failed) return;
    entries.push_back({key, static_cast<std::uint32_t>(payload.size()), bytes.size()});
    bytes.append(payload);
    if (bytes.size() + entries.size() * sizeof(Entry) > memory) spill();
  }

  void sort_entries() {
    std::stable_sort(entries.begin(), entries.end(),
                     [](Entry const& a, Entry const& b) { return a.key < b.key; });
  }

  bool open() {
    if (file) return true;
    char const* folder = std::getenv("TMPDIR");
    std::string path =
        std::string{folder != nullptr && *folder != '\0' ? folder : "/tmp"} + "/keydrift-XXXXXX";
    int const handle = ::mkstemp(path.data());
    if (handle < 0) {
      stop_at("made");
      return false;
    }
    ::unlink(path.c_str());  // gone with the process, whatever becomes of it
    file.reset(::fdopen(handle, "w+b"));
    if (!file) stop_at("made");
    return file != nullptr;
  }

  void spill() {
    if (entries.empty() || !open()) return;
    sort_entries();
    auto const begin = written;
    std::string out;
    auto const flush = [&] {
      if (std::fwrite(out.data(), 1, out.size(), file.get()) != out.size()) stop_at("written");
      written += out.size();
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
      if (failed) return;
    }
    flush();
    runs.push_back({.at = begin, .end = written, .block = {}, .payload = {}});
    entries.clear();
    bytes.clear();
  }

  void sort() {
    if (runs.empty()) {
      sort_entries();
      return;
    }
    spill();
    if (!failed && std::fflush(file.get()) != 0) stop_at("written");
    entries = {};
    bytes = {};
    window = std::clamp<std::size_t>(memory / (runs.size() + 1), 1U << 12, std::size_t{1} << 20);
    for (std::size_t r = 0; r < runs.size(); ++r) {
      if (advance(runs[r])) order.push({runs[r].key, r});
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
    std::size_t got = 0;
    while (got < more) {
      auto const size =
          ::pread(::fileno(file.get()), run.block.data() + left + got,
                  static_cast<std::size_t>(more) - got, static_cast<off_t>(run.at + got));
      if (size <= 0) {
        stop_at("read back");
        return false;
      }
      got += static_cast<std::size_t>(size);
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

  bool next(Record& record) {
    if (failed) return false;
    if (runs.empty()) {
      if (at == entries.size()) return false;
      auto const& entry = entries[at++];
      record = {entry.key, std::string_view{bytes}.substr(entry.offset, entry.size)};
      return true;
    }
    if (held) {
      auto& run = runs[*held];
      if (advance(run)) order.push({run.key, *held});
      held.reset();
    }
    if (failed || order.empty()) return false;
    auto const r = order.top().second;
    order.pop();
    held = r;
    record = {runs[r].key, runs[r].payload};
    return true;
  }

  std::size_t memory;
  std::string bytes;
  std::vector<Entry> entries;
  std::size_t at{};
  std::unique_ptr<std::FILE, CloseFile> file;
  std::uint64_t written{};
  std::vector<Run> runs;
  std::size_t window{};
  // (key, run): the least key first, of equal ones the earlier run.
  using Head = std::pair<std::uint64_t, std::size_t>;
  std::priority_queue<Head, std::vector<Head>, std::greater<>> order;
  std::optional<std::size_t> held;  // whose payload was given out last
  std::optional<Finding> failed;
};

SpillSort::SpillSort(std::size_t memory_bytes) : state_{std::make_unique<State>(memory_bytes)} {}
SpillSort::~SpillSort() = default;
SpillSort::SpillSort(SpillSort&&) noexcept = default;
SpillSort& SpillSort::operator=(SpillSort&&) noexcept = default;

void SpillSort::add(std::uint64_t key, std::string_view payload) { state_->add(key, payload); }
void SpillSort::sort() { state_->sort(); }
bool SpillSort::next(Record& record) { return state_->next(record); }
std::uint64_t SpillSort::spilled_bytes() const { return state_->written; }
std::optional<Finding> SpillSort::failure() const { return state_->failed; }

}  // namespace keydrift
