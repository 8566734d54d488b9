// Files that are huge, made to exhaust a machine, damaged, or not what their name says: refused in
// little memory with a message that helps, or read in full.

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>
#include <zip.h>

#include <filesystem>
#include <fstream>
#include <thread>

#include "binary.hpp"
#include "golden.hpp"

namespace keydrift::test {
namespace {

using namespace std::string_literals;

constexpr std::uint64_t kMega = std::uint64_t{1} << 20;

// `count` times the same character, without the test holding them in memory.
void write_repeated(std::filesystem::path const& file, char c, std::uint64_t count) {
  std::ofstream out{file, std::ios::binary};
  std::string const block(kMega, c);
  for (; count >= kMega; count -= kMega) out.write(block.data(), kMega);
  out.write(block.data(), static_cast<std::streamsize>(count));
}

// A zip with these entries, deflated.
std::string write_zip(Sandbox const& sandbox, std::string const& name,
                      std::vector<std::pair<std::string, std::string>> const& entries) {
  auto const file = (sandbox.path() / name).string();
  int error = 0;
  auto* archive = zip_open(file.c_str(), ZIP_CREATE | ZIP_TRUNCATE, &error);
  for (auto const& [entry, bytes] : entries) {
    zip_file_add(archive, entry.c_str(), zip_source_buffer(archive, bytes.data(), bytes.size(), 0),
                 ZIP_FL_ENC_UTF_8);
  }
  EXPECT_EQ(zip_close(archive), 0);
  return file;
}

constexpr char kPackage[] =
    "<Relationships><Relationship Type=\"x/officeDocument\" Target=\"word/document.xml\"/>"
    "</Relationships>";
std::string document(std::string const& body) {
  return "<w:document xmlns:w=\"x\"><w:body>" + body + "</w:body></w:document>";
}
std::string const kManuscript = document(
    "<w:p><w:r><w:t>1 Beak bifid ........ Aus bus</w:t></w:r></w:p>"
    "<w:p><w:r><w:t>- Beak entire ....... Aus cus</w:t></w:r></w:p>");

std::string refusal(std::vector<std::string> const& arguments, Sandbox const& sandbox) {
  auto const ran = run_keydrift(arguments, sandbox.path());
  EXPECT_EQ(ran.exit, 3) << ran.err;
  EXPECT_EQ(ran.out, "");
  return ran.err;
}

TEST(HugeFiles, ALineOfAHundredMegabytesIsRefusedAtSight) {
  Sandbox const sandbox;
  write_repeated(sandbox.path() / "long.txt", 'x', 100 * kMega);
  auto const ran = run_keydrift({"proof", "long.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 3);
  EXPECT_EQ(ran.err,
            "long.txt:1:1: error: line 1 has 104857600 bytes, more than the limit of 1M "
            "[line-too-long]\n"
            "  break the key into lines, one lead each; if such a line is meant, --limit line=113M "
            "takes it in\n");
  EXPECT_LT(ran.peak_bytes, 150 * kMega);  // the file itself, and nothing made of it
}

TEST(HugeFiles, AFileOfThreeHundredMegabytesIsRefusedUnread) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("big.txt", ""));
  std::filesystem::resize_file(sandbox.path() / "big.txt", 300 * kMega);
  auto const ran = run_keydrift({"proof", "big.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 3);
  EXPECT_EQ(ran.err,
            "big.txt:1:1: error: it holds 314572800 bytes, and at most 268435456 are read "
            "[too-large]\n"
            "  see whether this is the right file; a key takes far less, but --limit size=338M "
            "takes it in\n");
  EXPECT_LT(ran.peak_bytes, 50 * kMega);
}

TEST(HugeFiles, ADeviceWithoutEndIsReadUpToTheLimit) {
  Sandbox const sandbox;
  auto const ran = run_keydrift({"proof", "/dev/zero", "--limit", "size=16M"}, sandbox.path());
  EXPECT_EQ(ran.exit, 3);
  EXPECT_EQ(ran.err,
            "/dev/zero:1:1: error: it holds more than 16777216 bytes, the most that are read "
            "[too-large]\n"
            "  see whether this is the right file; a key takes far less, but --limit size=32M "
            "takes it in\n");
  EXPECT_LT(ran.peak_bytes, 80 * kMega);
}

TEST(HugeFiles, APipeIsReadToItsEnd) {
  Sandbox const sandbox;
  auto const pipe = (sandbox.path() / "pipe").string();
  ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
  std::thread writer{[&pipe] { std::ofstream{pipe} << kSmallKey; }};
  auto const ran = run_keydrift({"convert", "pipe", "--to", "text"}, sandbox.path());
  writer.join();
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_NE(ran.out.find("Beak bifid"), std::string::npos) << ran.out;
}

TEST(HugeFiles, ALimitIsLiftedAsTheMessageSays) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kSmallKey));
  auto const said = refusal({"proof", "key.txt", "--limit", "line=20"}, sandbox);
  auto const at = said.find("--limit line=");
  ASSERT_NE(at, std::string::npos) << said;
  auto const value = said.substr(at + 8, said.find(' ', at + 8) - at - 8);
  auto const ran =
      run_keydrift({"convert", "key.txt", "--to", "json", "--limit", value}, sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.err;
}

TEST(HugeFiles, AWrongLimitIsBadUsageOfEveryCommand) {
  for (auto const& arguments :
       std::vector<std::vector<std::string>>{{"proof", "k"},
                                             {"collate", "k", "k"},
                                             {"convert", "k", "--to", "json"},
                                             {"keyout", "k"},
                                             {"redetermine", "k", "k", "s"}}) {
    auto command = arguments;
    command.insert(command.end(), {"--limit", "size=lots"});
    auto const ran = run_keydrift(command);
    EXPECT_EQ(ran.exit, 2);
    EXPECT_EQ(ran.err,
              "keydrift: --limit: \"lots\" is no value of the limit \"size\": it takes a whole "
              "number, K, M or G may follow it, as in \"size=512M\"\n  `keydrift " +
                  arguments[0] + " --help` shows what is possible\n");
  }
}

TEST(HostileFiles, AZipBombIsRefusedInLittleMemory) {
  Sandbox const sandbox;
  static_cast<void>(
      write_zip(sandbox, "bomb.docx",
                {{"_rels/.rels", kPackage}, {"word/document.xml", std::string(20 * kMega, ' ')}}));
  ASSERT_LT(std::filesystem::file_size(sandbox.path() / "bomb.docx"), kMega / 16);
  auto const ran = run_keydrift({"proof", "bomb.docx"}, sandbox.path());
  EXPECT_EQ(ran.exit, 3);
  EXPECT_EQ(ran.err,
            "bomb.docx:1:1: error: the entry \"word/document.xml\" unpacks to 1029 times its size, "
            "and at most 400 times is taken in [too-large]\n"
            "  check where the file comes from; --limit expansion=1157 takes it in\n");
  EXPECT_LT(ran.peak_bytes, 60 * kMega);
  EXPECT_EQ(refusal({"proof", "bomb.docx", "--limit", "unpacked=1M"}, sandbox),
            "bomb.docx:1:1: error: the entry \"word/document.xml\" takes what is unpacked to "
            "20971617 bytes, more than the limit of 1M [too-large]\n"
            "  see whether this is the right file; --limit unpacked=23M takes it in\n");
}

// Nor does a table of specimens pack a thousandfold.
TEST(HostileFiles, AnArchiveThatUnpacksBeyondReasonIsRefusedUntilTheLimitIsLifted) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt",
                                 "1 Beak bifid ........ Aus bus\n"
                                 "- Beak entire ....... Aus cus\n");
  std::string const meta =
      "<archive xmlns=\"http://rs.tdwg.org/dwc/text/\">"
      "<core rowType=\"http://rs.tdwg.org/dwc/terms/Occurrence\" fieldsTerminatedBy=\",\" "
      "linesTerminatedBy=\"\\n\" ignoreHeaderLines=\"1\">"
      "<files><location>sheets.csv</location></files><id index=\"0\"/>"
      "<field index=\"0\" term=\"http://rs.tdwg.org/dwc/terms/catalogNumber\"/>"
      "<field index=\"1\" term=\"http://rs.tdwg.org/dwc/terms/scientificName\"/>"
      "</core></archive>";
  auto const table = "catalogNumber,scientificName\nX1,Aus bus\n" + std::string(20 * kMega, ' ');
  auto const bomb = write_zip(sandbox, "bomb.zip", {{"meta.xml", meta}, {"sheets.csv", table}});
  std::vector<std::string> arguments{"redetermine", key, key, bomb, "--specimens", "out.csv"};
  auto const refused = run_keydrift(arguments, sandbox.path());
  EXPECT_EQ(refused.exit, 3);
  EXPECT_EQ(refused.out, "");
  EXPECT_NE(refused.err.find("the entry \"sheets.csv\" unpacks to "), std::string::npos)
      << refused.err;
  EXPECT_NE(refused.err.find("[too-large]"), std::string::npos) << refused.err;
  EXPECT_NE(refused.err.find("--limit expansion="), std::string::npos) << refused.err;
  EXPECT_FALSE(std::filesystem::exists(sandbox.path() / "out.csv"));
  arguments.insert(arguments.end(), {"--limit", "expansion=2000"});
  auto const taken = run_keydrift(arguments, sandbox.path());
  EXPECT_EQ(taken.exit, 0) << taken.err;
  EXPECT_NE(taken.out.find("1 specimen judged"), std::string::npos) << taken.out;
}

TEST(HostileFiles, ATruncatedManuscriptIsRefused) {
  Sandbox const sandbox;
  auto const whole = slurp(write_zip(
      sandbox, "key.docx", {{"_rels/.rels", kPackage}, {"word/document.xml", kManuscript}}));
  static_cast<void>(sandbox.write("cut.docx", whole.substr(0, whole.size() / 2)));
  EXPECT_EQ(refusal({"proof", "cut.docx"}, sandbox),
            "cut.docx:1:1: error: the zip file cannot be opened: it has no list of entries, as if "
            "it were cut short [damaged-archive]\n"
            "  copy or download the file again, and try to open it by itself\n");
  auto const ran = run_keydrift({"convert", "key.docx", "--to", "text"}, sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_NE(ran.out.find("Beak bifid"), std::string::npos);
  // What a file is called does not matter.
  static_cast<void>(sandbox.write("key.txt", whole));
  static_cast<void>(sandbox.write("text.docx", kSmallKey));
  for (auto const* name : {"key.txt", "text.docx"}) {
    EXPECT_EQ(run_keydrift({"convert", name, "--to", "text"}, sandbox.path()).out, ran.out) << name;
  }
}

TEST(HostileFiles, EntitiesAreRefusedInXmlAndInManuscripts) {
  Sandbox const sandbox;
  auto const bomb =
      "<!DOCTYPE w [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>"s + document("&b;");
  static_cast<void>(sandbox.write("key.xml", "<?xml version=\"1.0\"?>" + bomb));
  static_cast<void>(
      write_zip(sandbox, "key.docx", {{"_rels/.rels", kPackage}, {"word/document.xml", bomb}}));
  EXPECT_NE(refusal({"proof", "key.xml"}, sandbox).find("key.xml:1:"), std::string::npos);
  auto const said = refusal({"proof", "key.docx"}, sandbox);
  EXPECT_EQ(said.substr(0, 31), "key.docx (word/document.xml):1:") << said;
}

TEST(MixedFiles, LinesOfTwoEncodingsAreReadAndSaid) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt",
                                  "1 Fr\xFC"
                                  "chte gr\xFCn ..... Aus bus\r\n– Früchte rot ..... Aus cus\r\n"));
  auto const ran = run_keydrift({"proof", "key.txt"}, sandbox.path());
  EXPECT_NE(ran.out.find("key.txt:1:1 [mixed-encodings]"), std::string::npos) << ran.out;
  auto const json = run_keydrift({"convert", "key.txt", "--to", "json"}, sandbox.path());
  EXPECT_NE(json.out.find("\"Früchte grün\""), std::string::npos) << json.out;
  EXPECT_NE(json.out.find("\"Früchte rot\""), std::string::npos) << json.out;
}

// The same key however it is saved.
TEST(MixedFiles, EveryEncodingAndLineEndGivesTheSameKey) {
  Sandbox const sandbox;
  std::string const plain =
      "1 Beak bifid\t2\n- Beak entire\tAus bus\n"
      "2 Spike long\tAus cus\n- Spike short\tAus dus\n";
  auto const with_ends = [&plain](std::string const& end) {
    std::string text;
    for (char const c : plain) text += c == '\n' ? end : std::string{c};
    return text;
  };
  auto const wide = [&plain](std::string const& mark, std::size_t before, std::size_t after) {
    auto text = mark;
    for (char const c : plain) text += std::string(before, '\0') + c + std::string(after, '\0');
    return text;
  };
  std::vector<std::string> const forms{plain,
                                       "\xEF\xBB\xBF" + plain,
                                       with_ends("\r\n"),
                                       with_ends("\r"),
                                       with_ends("\xC2\x85"),
                                       with_ends("\u2028"),
                                       wide("\xFF\xFE", 0, 1),
                                       wide("\xFE\xFF", 1, 0),
                                       wide("", 0, 1),
                                       wide("\xFF\xFE\0\0"s, 0, 3),
                                       wide("\0\0\xFE\xFF"s, 3, 0)};
  std::string wanted;
  for (std::size_t i = 0; i < forms.size(); ++i) {
    static_cast<void>(sandbox.write("key.txt", forms[i]));
    auto const ran = run_keydrift({"convert", "key.txt", "--to", "text"}, sandbox.path());
    EXPECT_EQ(ran.exit, 0) << i << ran.err;
    if (i == 0) wanted = ran.out;
    EXPECT_EQ(ran.out, wanted) << i;
  }
  EXPECT_NE(wanted.find("Spike short"), std::string::npos);
}

TEST(RepeatedCouplets, BothAreKeptAndSaid) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt",
                                  "1 Beak bifid ..... 7\n- Beak entire ..... Aus bus\n"
                                  "7 Spike long ..... Aus cus\n- Spike short ..... Aus dus\n"
                                  "7 Leaf long ..... Aus eus\n- Leaf short ..... Aus fus\n"));
  auto const ran = run_keydrift({"proof", "key.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.out.find("key.txt:5:1 [duplicate-couplet]"), std::string::npos) << ran.out;
  auto const json = run_keydrift({"convert", "key.txt", "--to", "json"}, sandbox.path());
  EXPECT_EQ(json.exit, 0) << json.err;
  for (auto const* words : {"Spike long", "Spike short", "Leaf long", "Leaf short"}) {
    EXPECT_NE(json.out.find("\""s + words + "\""), std::string::npos) << words;
  }
}

}  // namespace
}  // namespace keydrift::test
