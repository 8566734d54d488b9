// What memory does not hold comes back from the disk as it was.
#include <gtest/gtest.h>
#include <stdlib.h>  // setenv
#include <unistd.h>  // truncate

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <random>
#include <set>

#include "keydrift/key/spill/fingerprint.hpp"
#include "keydrift/key/spill/spill_sort.hpp"
#include "keydrift/key/spill/stored_list.hpp"

namespace keydrift::test {

// A value to be listed.
struct Named {
  std::uint64_t number{};
  std::string name;
  bool operator==(Named const&) const = default;
};
void write_bytes(ByteWriter& writer, Named const& named) {
  writer.number(named.number);
  writer.text(named.name);
}
void read_bytes(ByteReader& reader, Named& named) {
  named.number = reader.number();
  named.name.assign(reader.text());
}

namespace {

void expect_no_folder(std::optional<Finding> const& failure) {
  ASSERT_TRUE(failure);
  EXPECT_EQ(failure->code, "temporary-file");
  EXPECT_EQ(to_text(*failure),
            "/nowhere/at/all: error: a temporary file cannot be made: No such file or directory "
            "[temporary-file]\n  make room on the disk, or say where there is some by TMPDIR\n");
}

using Records = std::vector<std::pair<std::uint64_t, std::string>>;

// In memory and by way of the disk.
void expect_sorted(Records const& records, Records const& sorted, SpillOrder order) {
  for (auto const budget : {std::size_t{1} << 16, std::size_t{1} << 24}) {
    SpillSort sort{budget, order};
    for (auto const& [key, payload] : records) sort.add(key, payload);
    sort.sort();
    std::size_t at = 0;
    SpillSort::Record record;
    while (sort.next(record)) {
      ASSERT_LT(at, sorted.size());
      ASSERT_EQ(record.key, sorted[at].first);
      ASSERT_EQ(record.payload, sorted[at].second);
      ++at;
    }
    EXPECT_EQ(at, sorted.size());
    EXPECT_FALSE(sort.failure());
    EXPECT_EQ(sort.spilled_bytes() > 0, budget == std::size_t{1} << 16);
  }
}

TEST(SpillSort, SortsAsMemoryWouldWhateverTheBudget) {
  std::mt19937 random{20240517};
  Records records;
  for (int i = 0; i < 30'000; ++i) {
    records.emplace_back(random() % 5000, std::string(random() % 40, 'a') + std::to_string(i));
  }
  auto sorted = records;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](auto const& a, auto const& b) { return a.first < b.first; });
  expect_sorted(records, sorted, SpillOrder::key);
}

TEST(Spilling, SaysWhenThereIsNoRoomOnTheDisk) {
  char const* const before = std::getenv("TMPDIR");
  std::string const kept = before == nullptr ? "" : before;
  ::setenv("TMPDIR", "/nowhere/at/all", 1);
  SpillSort sort{1};
  for (int i = 0; i < 10'000; ++i) sort.add(1, "some words to fill the memory with");
  sort.sort();
  SpillSort::Record record;
  EXPECT_FALSE(sort.next(record));
  expect_no_folder(sort.failure());

  RecordStore store{16};
  (void)store.add("a record that is long");
  auto const address = store.add("another one");
  std::string read = "what stood there";
  store.read(address, read);
  EXPECT_EQ(read, "");
  expect_no_folder(store.failure());
  before == nullptr ? ::unsetenv("TMPDIR") : ::setenv("TMPDIR", kept.c_str(), 1);
}

// Somebody else cuts the temporary files of this process to nothing.
int cut_temporary_files() {
  namespace fs = std::filesystem;
  int cut = 0;
  for (auto const& entry : fs::directory_iterator{"/proc/self/fd"}) {
    std::error_code gone;
    auto const target = fs::read_symlink(entry.path(), gone).string();
    if (target.find("/keydrift-") == std::string::npos) continue;
    cut += ::truncate(entry.path().c_str(), 0) == 0 ? 1 : 0;
  }
  return cut;
}

TEST(Spilling, SaysWhenAFileIsShorterThanWhatWasWritten) {
  RecordStore store{16};
  auto const address = store.add("a record that is long");
  (void)store.add("another one");
  if (cut_temporary_files() == 0) GTEST_SKIP() << "no /proc";
  errno = ENOENT;  // of some call before
  std::string read;
  store.read(address, read);
  EXPECT_EQ(read, "");
  auto const failure = store.failure();
  ASSERT_TRUE(failure);
  EXPECT_EQ(failure->message,
            "a temporary file cannot be read back: it is shorter than what was written");
}

TEST(SpillSort, SortsEqualKeysByTheirPayloadsWhereAsked) {
  std::mt19937 random{20240518};
  Records records;
  for (int i = 0; i < 20'000; ++i) {
    std::string payload(random() % 12, '\xE4');
    payload += static_cast<char>(random() % 256);
    records.emplace_back(random() % 9, payload);
  }
  auto sorted = records;
  std::sort(sorted.begin(), sorted.end());
  expect_sorted(records, sorted, SpillOrder::key_then_payload);
}

TEST(StoredList, GivesBackWhatWasPutInWhereverItIs) {
  std::mt19937 random{20240519};
  // A small store, so that most records are on the disk, and records longer than one look takes.
  auto const store = std::make_shared<RecordStore>(std::size_t{1} << 14);
  StoredList<Named> list{store};
  std::vector<Named> all;
  for (int i = 0; i < 40'000; ++i) {
    Named one{.number = random() * std::uint64_t{random()},
              .name = std::string(random() % (i % 1000 == 0 ? 9000 : 12), 'x')};
    if (i % 7 == 0) (void)store->add("somebody else's record");
    list.push_back(one);
    all.push_back(std::move(one));
  }
  ASSERT_EQ(list.size(), all.size());
  EXPECT_EQ(list.to_vector(), all);
  for (int i = 0; i < 2'000; ++i) {
    auto const at = random() % all.size();
    ASSERT_EQ(list[at], all[at]);
  }
  EXPECT_FALSE(list.failure());
}

TEST(Bytes, BehindTheEndThereIsNothing) {
  std::string bytes;
  ByteWriter writer{bytes};
  writer.number(300);
  writer.text("abc");
  ByteReader torn{std::string_view{bytes}.substr(0, 4)};
  EXPECT_EQ(torn.number(), 300U);
  EXPECT_EQ(torn.text(), "a");
  EXPECT_EQ(torn.number(), 0U);
  EXPECT_EQ(torn.text(), "");
  EXPECT_EQ(torn.raw<std::uint64_t>(), 0U);
}

// Texts that differ in a bit, in length or in what stands before them.
TEST(Fingerprint, TellsTextsApart) {
  std::set<Fingerprint> met;
  std::size_t texts = 0;
  auto const meet = [&](Fingerprint const& print) {
    ++texts;
    met.insert(print);
  };
  for (std::size_t length = 0; length < 40; ++length) {
    std::string text(length, '\0');
    meet(fingerprint_of(text));
    for (std::size_t bit = 0; bit < 8 * length; ++bit) {
      auto& byte = text[bit / 8];
      byte = static_cast<char>(1U << bit % 8);
      meet(fingerprint_of(text));
      meet(fingerprint_of(text, fingerprint_of("before")));
      byte = '\0';
    }
  }
  EXPECT_EQ(met.size(), texts);
  // Each half tells them apart by itself, or one would be as good as none.
  std::set<std::uint64_t> high, low;
  for (auto const& print : met) {
    high.insert(print.high);
    low.insert(print.low);
  }
  EXPECT_EQ(high.size(), texts);
  EXPECT_EQ(low.size(), texts);
}

}  // namespace
}  // namespace keydrift::test
