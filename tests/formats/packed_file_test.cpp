#include "keydrift/formats/packed_file.hpp"

#include <gtest/gtest.h>
#include <zlib.h>

#include <cstdint>

#include "finding_text.hpp"
#include "zip_bytes.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::one_line_each;
using test::patched;
using test::zip_bytes;
using Lines = std::vector<std::string>;

Loaded<PackedFile> open(std::string_view bytes, ReadLimits const& limits = {}) {
  return PackedFile::open({.name = "m.zip", .bytes = bytes}, limits);
}

Lines refusal(std::string_view bytes, ReadLimits const& limits = {}) {
  auto const loaded = open(bytes, limits);
  EXPECT_FALSE(loaded);
  return one_line_each(loaded.findings);
}

// What an archive of stored entries looks like when it is put together by hand (.ZIP File Format
// Specification 6.3.10, 4.3.7, 4.3.12, 4.3.16): `listed` entries that all lie at the first byte.
std::string overlapping(std::string_view content, std::size_t listed) {
  auto const number = [](std::uint64_t value, int bytes) {
    std::string text;
    for (int i = 0; i < bytes; ++i) text += static_cast<char>(value >> (8 * i));
    return text;
  };
  auto const checksum =
      crc32(0, reinterpret_cast<Bytef const*>(content.data()), static_cast<uInt>(content.size()));
  // Version, flags, method, time, date, checksum, packed and unpacked size, lengths of name, extra.
  auto const common = number(20, 2) + number(0, 8) + number(checksum, 4) +
                      number(content.size(), 4) + number(content.size(), 4) + number(1, 2) +
                      number(0, 2);
  auto bytes = "PK\x03\x04" + common + "a" + std::string{content};
  auto const list_at = bytes.size();
  for (std::size_t i = 0; i < listed; ++i) {
    bytes += "PK\x01\x02" + number(20, 2) + common + number(0, 10) + number(0, 4) +
             static_cast<char>('a' + i);
  }
  auto const list_size = bytes.size() - list_at;
  return bytes + "PK\x05\x06" + number(0, 4) + number(listed, 2) + number(listed, 2) +
         number(list_size, 4) + number(list_at, 4) + number(0, 2);
}

TEST(PackedFile, GivesEntriesByNameWithTheirSizes) {
  auto const bytes = zip_bytes({{"word/document.xml", "<a/>"},
                                {"word/media/", ""},
                                {"word/pr\u00FCf.xml", std::string(5000, 'x')}});
  auto const loaded = open(bytes);
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  auto const& file = *loaded.value;
  ASSERT_EQ(file.entries().size(), 2U);
  EXPECT_EQ(file.entries()[1].name, "word/pr\u00FCf.xml");
  EXPECT_EQ(file.entries()[1].unpacked_bytes, 5000U);
  EXPECT_LT(file.entries()[1].packed_bytes, 100U);
  EXPECT_EQ(file.find("word/document.xml"), 0U);
  EXPECT_EQ(file.find("Word/Document.XML"), 0U);
  EXPECT_EQ(file.find("word/documents.xml"), std::nullopt);
  EXPECT_EQ(file.read(0).value, "<a/>");
  EXPECT_EQ(file.read(1).value, std::string(5000, 'x'));
}

TEST(PackedFile, StreamsSeveralEntriesSideBySide) {
  std::string first;
  std::string second;
  for (int i = 0; i < 20'000; ++i) {
    first += std::to_string(i);
    second += std::to_string(7 * i);
  }
  auto const bytes = zip_bytes({{"core.txt", first}, {"extension.txt", second}});
  auto const loaded = open(bytes);
  ASSERT_TRUE(loaded);
  auto const a = loaded.value->stream(0);
  auto const b = loaded.value->stream(1);
  std::string got_a;
  std::string got_b;
  std::string buffer(777, '\0');
  for (bool more = true; more;) {
    auto const from_a = a->read(buffer);
    got_a.append(buffer, 0, from_a);
    auto const from_b = b->read(buffer);
    got_b.append(buffer, 0, from_b);
    more = from_a + from_b > 0;
  }
  EXPECT_EQ(got_a, first);
  EXPECT_EQ(got_b, second);
  EXPECT_FALSE(a->failure() || b->failure());
}

TEST(PackedFile, RefusesNamesThatLeaveTheArchive) {
  EXPECT_EQ(refusal(zip_bytes({{"../a", "x"}, {"b/../../c", "x"}, {"d", "x"}})),
            Lines{"m.zip:1:1: error: the entries \"../a\" and \"b/../../c\" would lie outside of "
                  "the archive [unsafe-archive] (check where the file comes from)"});
  for (auto const* name : {"/etc/a", "C:/a", "c:a", "..\\a", "a\\..\\..\\b", "a/.."}) {
    auto const lines = refusal(zip_bytes({{name, "x"}}));
    ASSERT_EQ(lines.size(), 1U) << name;
    EXPECT_NE(lines[0].find("would lie outside of the archive [unsafe-archive]"), std::string::npos)
        << lines[0];
  }
  EXPECT_TRUE(open(zip_bytes({{"a..b/c..", "x"}, {".../d", "x"}})));
}

TEST(PackedFile, RefusesEncryptedEntriesAndTwoOfOneName) {
  auto encrypted = zip_bytes({{"a", "x"}});
  // Bit 0 of the flags, in the entry's own header and in the list.
  encrypted[6] = '\x01';
  encrypted[encrypted.find("PK\x01\x02"sv) + 8] = '\x01';
  EXPECT_EQ(refusal(encrypted),
            Lines{"m.zip:1:1: error: the entry \"a\" is encrypted [encrypted-archive] (save the "
                  "file without a password)"});
  auto const twice = patched(zip_bytes({{"name1", "x"}, {"name2", "y"}}), "name2", "name1");
  EXPECT_EQ(refusal(twice),
            Lines{"m.zip:1:1: error: the entry \"name1\" is there more than once, and programs "
                  "differ in which one they read [damaged-archive] (open it in the program that "
                  "made it and save it again)"});
}

TEST(PackedFile, RefusesMoreEntriesThanAllowedBeforeReadingTheirList) {
  std::vector<test::ZipEntry> many;
  for (int i = 0; i < 12; ++i) many.push_back({"e" + std::to_string(i), "x"});
  auto const bytes = zip_bytes(many);
  EXPECT_TRUE(open(bytes, {.entries = 12}));
  EXPECT_EQ(refusal(bytes, {.entries = 11}),
            Lines{"m.zip:1:1: error: the zip file has 12 entries, more than the limit of 11 "
                  "[too-large] (see whether this is the right file; --limit entries=13 takes it "
                  "in)"});
}

TEST(PackedFile, HoldsAllStreamsTogetherToTheLimit) {
  auto const bytes = zip_bytes({{"a", std::string(600, 'x')}, {"b", std::string(600, 'y')}});
  auto const loaded = open(bytes, {.unpacked_bytes = 1000});
  ASSERT_TRUE(loaded);
  EXPECT_TRUE(loaded.value->read(0));
  auto const second = loaded.value->read(1);
  EXPECT_FALSE(second);
  EXPECT_EQ(one_line_each(second.findings),
            Lines{"m.zip:1:1: error: the entry \"b\" takes what is unpacked to 1200 bytes, more "
                  "than the limit of 1000 [too-large] (see whether this is the right file; --limit "
                  "unpacked=1350 takes it in)"});
}

TEST(PackedFile, RefusesABombByItsExpansion) {
  auto const bytes = zip_bytes({{"bomb", std::string(std::size_t{20} << 20, '\0')}});
  ASSERT_LT(bytes.size(), 30'000U);
  auto const loaded = open(bytes);
  ASSERT_TRUE(loaded);
  auto const bomb = loaded.value->read(0);
  EXPECT_FALSE(bomb);
  auto const lines = one_line_each(bomb.findings);
  ASSERT_EQ(lines.size(), 1U);
  EXPECT_EQ(lines[0],
            "m.zip:1:1: error: the entry \"bomb\" unpacks to 1029 times its size, and at most 400 "
            "times is taken in [too-large] (check where the file comes from; --limit "
            "expansion=1157 takes it in)");
}

// The archive says that its entry is small.
TEST(PackedFile, StopsAtTheStatedSize) {
  std::string const content(100'000, 'x');
  auto bytes = zip_bytes({{"liar", content}});
  bytes = patched(bytes, "\xA0\x86\x01\0"sv, "\x0A\0\0\0"sv);
  auto const loaded = open(bytes);
  ASSERT_TRUE(loaded);
  auto const liar = loaded.value->read(0);
  EXPECT_FALSE(liar);
  EXPECT_EQ(one_line_each(liar.findings),
            Lines{"m.zip:1:1: error: the entry \"liar\" cannot be unpacked: its size is not the 10 "
                  "bytes that the archive states [damaged-archive] (copy or download the file "
                  "again, and try to open it by itself)"});
}

TEST(PackedFile, RefusesOverlappingEntries) {
  auto const sound = overlapping("content that is long enough to be counted", 1);
  auto const loaded = open(sound);
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(loaded.value->read(0).value, "content that is long enough to be counted");
  EXPECT_EQ(refusal(overlapping(std::string(4000, 'x'), 9)),
            Lines{"m.zip:1:1: error: the zip file cannot be opened: its entries overlap, as only "
                  "those of a made-up file do [damaged-archive] (copy or download the file again, "
                  "and try to open it by itself)"});
}

TEST(PackedFile, LeavesArchivesWithinArchivesPacked) {
  auto inner = zip_bytes({{"bomb", std::string(std::size_t{2} << 20, '\0')}});
  auto const outer = zip_bytes({{"inner.zip", inner}});
  auto const loaded = open(outer);
  ASSERT_TRUE(loaded);
  ASSERT_EQ(loaded.value->entries().size(), 1U);
  EXPECT_EQ(loaded.value->read(0).value, inner);
}

// Whatever is cut off or changed: every entry comes out whole, or something is said.
TEST(PackedFile, GivesNothingSilentlyFromDamagedArchives) {
  std::string const content = "1. Beak bifid ..... 2, 1. Beak entire ..... Aus bus";
  auto const whole = zip_bytes({{"a", content}, {"b", content + content}});
  auto const check = [&](std::string const& bytes) {
    auto const loaded = open(bytes);
    EXPECT_NE(loaded.value.has_value(), !loaded.findings.empty());
    if (!loaded) return false;
    bool sound = true;
    for (std::size_t i = 0; i < loaded.value->entries().size(); ++i) {
      auto const entry = loaded.value->read(i);
      EXPECT_NE(entry.value.has_value(), !entry.findings.empty());
      sound = sound && entry;
      if (entry) {
        EXPECT_TRUE(*entry.value == content || *entry.value == content + content) << *entry.value;
      }
    }
    return sound;
  };
  for (std::size_t size = 0; size < whole.size(); ++size) {
    EXPECT_FALSE(check(whole.substr(0, size))) << size;
  }
  for (std::size_t i = 0; i < whole.size(); ++i) {
    for (int const mask : {0x01, 0x80, 0xFF}) {
      auto damaged = whole;
      damaged[i] = static_cast<char>(damaged[i] ^ mask);
      static_cast<void>(check(damaged));
    }
  }
  EXPECT_TRUE(check(whole));
}

}  // namespace
}  // namespace keydrift
