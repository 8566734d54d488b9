#include "keydrift/formats/byte_stream.hpp"

#include <gtest/gtest.h>
#include <unistd.h>
#include <zlib.h>

#include <filesystem>
#include <fstream>

#include "finding_text.hpp"
#include "gzip_text.hpp"
#include "keydrift/formats/file_kind.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::gzip_text;
using test::one_line_each;
using Lines = std::vector<std::string>;

struct Drained {
  std::string text;
  Lines findings;
};

Drained drain(Loaded<std::unique_ptr<ByteStream>> loaded, std::size_t piece = 5) {
  Drained drained{"", one_line_each(loaded.findings)};
  if (!loaded) return drained;
  std::string buffer(piece, '\0');
  while (auto const size = (*loaded.value)->read(buffer)) drained.text.append(buffer, 0, size);
  if (auto const failure = (*loaded.value)->failure()) {
    drained.findings.push_back(test::one_line(*failure));
  }
  return drained;
}

Drained drain_bytes(std::string_view bytes, StreamLimits const& limits = {},
                    std::size_t chunk = 3) {
  return drain(unpacked(stream_of(bytes, chunk), "s.csv", limits));
}

TEST(ByteStream, PassesPlainTextThrough) {
  auto const drained = drain_bytes("id,name\n1,Aus bus\n");
  EXPECT_EQ(drained.text, "id,name\n1,Aus bus\n");
  EXPECT_TRUE(drained.findings.empty());
}

TEST(ByteStream, UnpacksGzipOfSeveralMembersAndIgnoresPadding) {
  auto const packed = gzip_text("id,name\n1,Aus") + gzip_text(" bus\n") + std::string(64, '\0');
  auto const drained = drain_bytes(packed);
  EXPECT_EQ(drained.text, "id,name\n1,Aus bus\n");
  EXPECT_TRUE(drained.findings.empty());
}

TEST(ByteStream, RefusesUtf32) {
  EXPECT_EQ(drain_bytes("\xFF\xFE\0\0i\0\0\0"sv).findings,
            Lines{"s.csv:1:1: error: this is text in UTF-32, which tables are not read in "
                  "[binary-file] (save it as UTF-8 and load that file)"});
}

TEST(ByteStream, TurnsUtf16IntoUtf8HoweverItIsCut) {
  auto const text = "\xFF\xFEi\0\t\0\xE9\0\x3D\xD8\x0A\xDE\n\0"sv;
  for (std::size_t chunk = 1; chunk < 8; ++chunk) {
    EXPECT_EQ(drain_bytes(text, {}, chunk).text, "i\té\U0001F60A\n") << chunk;
  }
  EXPECT_EQ(drain_bytes(gzip_text(text)).text, "i\té\U0001F60A\n");
  EXPECT_EQ(drain_bytes("\xFE\xFF\0x"sv).text, "x");
  EXPECT_EQ(drain_bytes("i\0d\0\n\0"sv).text, "id\n");
  EXPECT_EQ(drain_bytes("\0i\0d\0\n"sv).text, "id\n");
}

TEST(ByteStream, SaysThatGzipIsCutOffOrDamaged) {
  std::string long_text;
  for (int i = 0; i < 60'000; ++i) long_text += std::to_string(i * 7919 % 65537) + ",";
  auto packed = gzip_text(long_text);
  EXPECT_EQ(
      drain(unpacked(stream_of(std::string_view{packed}.substr(0, packed.size() - 40)), "s.csv.gz"),
            4096)
          .findings,
      Lines{"s.csv.gz:1:1: error: the gzip file cannot be unpacked: it ends too early "
            "[damaged-gzip] (copy or download the file again, and try to unpack it by "
            "itself)"});
  packed[packed.size() - 6] = static_cast<char>(packed[packed.size() - 6] ^ 0x55);
  EXPECT_EQ(drain(unpacked(stream_of(packed), "s.csv.gz"), 4096).findings,
            Lines{"s.csv.gz:1:1: error: the gzip file cannot be unpacked: incorrect data check "
                  "[damaged-gzip] (copy or download the file again, and try to unpack it by "
                  "itself)"});
}

TEST(ByteStream, StopsUnpackingAtTheLimits) {
  std::string const zeros(std::size_t{4} << 20, '0');
  auto const packed = gzip_text(zeros);
  EXPECT_EQ(drain(unpacked(stream_of(packed), "s.csv", {.expansion_from_bytes = 1 << 20}), 1 << 16)
                .findings,
            Lines{"s.csv:1:1: error: the gzip file unpacks to 415 times its size, as no table of "
                  "specimens does [too-large] (check where the file comes from; --limit "
                  "expansion=800 takes it in)"});
  EXPECT_EQ(drain(unpacked(stream_of(packed), "s.csv",
                           {.maximum_expansion = 1200, .expansion_from_bytes = 1 << 20}),
                  1 << 16)
                .findings,
            Lines{});
  EXPECT_EQ(
      drain(unpacked(stream_of(packed), "s.csv", {.maximum_bytes = 1 << 20}), 1 << 16).findings,
      Lines{"s.csv:1:1: error: the gzip file unpacks to more than the limit of 1048576 bytes "
            "[too-large] (split the file into several and take them "
            "one by one)"});
}

TEST(ByteStream, RefusesWhatIsNoTable) {
  EXPECT_EQ(drain_bytes("").findings,
            Lines{"s.csv:1:1: error: the file is empty [empty-file] (check that this is the right "
                  "file and that it was saved)"});
  EXPECT_EQ(drain_bytes("PK\x03\x04....meta.xml...."sv).findings,
            Lines{"s.csv:1:1: error: this is a zip file with a meta.xml (a Darwin Core archive), "
                  "not a table of text [binary-file] (unpack it and load the occurrence table "
                  "inside)"});
  EXPECT_EQ(drain_bytes(gzip_text("a\0b\0\0\1"sv)).findings,
            Lines{"s.csv:1:1: error: this is a binary file (it holds NUL bytes), not a table of "
                  "text [binary-file] (check that this is the right file)"});
  std::string tape(512, '\0');
  tape.replace(0, 8, "meta.xml");
  tape.replace(257, 5, "ustar");
  EXPECT_EQ(
      drain_bytes(gzip_text(tape)).findings,
      Lines{"s.csv:1:1: error: this is a tar archive, not a table of text [binary-file] "
            "(unpack it and load the file inside; of a Darwin Core archive name the folder)"});
  EXPECT_EQ(drain_bytes(gzip_text("<archive xmlns=\"http://rs.tdwg.org/dwc/text/\"/>")).findings,
            Lines{"s.csv:1:1: error: this is what describes a Darwin Core archive (meta.xml), not "
                  "a table of text [binary-file] (unpack it, call it meta.xml, put the archive's "
                  "tables beside it, and name it)"});
  EXPECT_EQ(drain_bytes(gzip_text(gzip_text("id\n"))).findings,
            Lines{"s.csv:1:1: error: this is a gzip-compressed file, not a table of text "
                  "[binary-file] (unpack it and load the file inside)"});
}

TEST(ByteStream, TakesATableWithNulsBehindASoundHeader) {
  auto const damaged = drain_bytes("id,name\n1,a\0b\n\0\0\0\0"sv);
  EXPECT_EQ(damaged.text, "id,name\n1,a\0b\n\0\0\0\0"sv);
  EXPECT_EQ(damaged.findings, Lines{});
  EXPECT_EQ(drain_bytes("id,\0name\n1,a\n"sv).findings,
            Lines{"s.csv:1:1: error: this is a binary file (it holds NUL bytes), not a table of "
                  "text [binary-file] (check that this is the right file)"});
}

TEST(ByteStream, SaysWhatIsWrongWithAPath) {
  namespace fs = std::filesystem;
  EXPECT_EQ(drain(open_stream("no/such/file.csv")).findings,
            Lines{"no/such/file.csv:1:1: error: there is no such file [no-such-file] (check the "
                  "path)"});
  auto const directory =
      fs::temp_directory_path() / ("keydrift_stream_" + std::to_string(getpid()));
  fs::create_directories(directory);
  EXPECT_EQ(
      drain(open_stream(directory.string())).findings,
      Lines{directory.string() +
            ":1:1: error: this is a directory, not a file [is-a-directory] (name the table of "
            "specimens inside it)"});
  auto const file = (directory / "t.csv.gz").string();
  std::ofstream{file, std::ios::binary} << gzip_text("id,name\n");
  EXPECT_EQ(drain(open_stream(file)).text, "id,name\n");
  if (geteuid() != 0) {
    fs::permissions(file, fs::perms::none);
    EXPECT_EQ(drain(open_stream(file)).findings,
              Lines{file + ":1:1: error: the file cannot be opened: Permission denied "
                           "[unreadable-file] (check that it may be read)"});
  }
  fs::remove_all(directory);
}

TEST(FileKind, TellsFilesByTheirFirstBytes) {
  EXPECT_EQ(file_kind("PK\x03\x04......word/document.xml"sv), FileKind::word_2007);
  EXPECT_EQ(file_kind("PK\x03\x04......xl/workbook.xml"sv), FileKind::sheet_2007);
  EXPECT_EQ(file_kind("PK\x03\x04..mimetypeapplication/vnd.oasis.opendocument.text"sv),
            FileKind::open_document);
  EXPECT_EQ(file_kind("PK\x03\x04...."sv), FileKind::zip);
  EXPECT_EQ(file_kind("%PDF-1.7"), FileKind::pdf);
  EXPECT_EQ(file_kind("\x1F\x8B\x08"), FileKind::gzip);
  EXPECT_EQ(file_kind("{\\rtf1 x}"), FileKind::rich_text);
  EXPECT_EQ(file_kind("\xEF\xBB\xBF <?xml version='1.0'?><a/>"), FileKind::xml);
  EXPECT_EQ(file_kind("<!DOCTYPE html><p>"), FileKind::html);
  EXPECT_EQ(file_kind("<?xml version='1.0'?><html>"), FileKind::html);
  EXPECT_EQ(file_kind("\n {\n \"keydrift\": 1}"), FileKind::json);
  EXPECT_EQ(file_kind("[ {\"a\": 1}]"), FileKind::json);
  EXPECT_EQ(file_kind("[Key to the species]\n1. x"), FileKind::text);
  EXPECT_EQ(file_kind("{beak: bifid} 1. x"), FileKind::text);
  EXPECT_EQ(file_kind("1. Beak bifid ... 2"), FileKind::text);
  EXPECT_EQ(file_kind("1\0.\0 \0x\0"sv), FileKind::text);
  EXPECT_EQ(file_kind("\x7F"
                      "ELF\0\0\1"sv),
            FileKind::binary);
  EXPECT_EQ(file_kind(""), FileKind::empty);
}

}  // namespace
}  // namespace keydrift
