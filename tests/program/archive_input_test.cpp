// Archives and worklists as they come in damaged, packed wrongly, or changed by a spreadsheet: told
// with place and remedy, with a stated exit status; nothing lost, nothing half-written.

#include <gtest/gtest.h>

#include <cstdlib>

#include "binary.hpp"
#include "golden.hpp"
#include "planted_support.hpp"
#include "table.hpp"

namespace keydrift::test {
namespace {

using namespace std::string_literals;
using Lines = std::vector<std::string>;

constexpr char const* kMeta =
    "<archive xmlns=\"http://rs.tdwg.org/dwc/text/\">\n"
    "<core rowType=\"http://rs.tdwg.org/dwc/terms/Occurrence\" ignoreHeaderLines=\"1\">\n"
    "<files><location>TABLE</location></files><id index=\"0\"/>\n"
    "<field index=\"0\" term=\"http://rs.tdwg.org/dwc/terms/occurrenceID\"/>\n"
    "<field index=\"1\" term=\"http://rs.tdwg.org/dwc/terms/scientificName\"/></core>\n"
    "<extension rowType=\"http://rs.tdwg.org/dwc/terms/Identification\" ignoreHeaderLines=\"1\">\n"
    "<files><location>history.csv</location></files><coreid index=\"0\"/>\n"
    "<field index=\"1\" term=\"http://rs.tdwg.org/dwc/terms/scientificName\"/>\n"
    "<field index=\"2\" term=\"http://rs.tdwg.org/dwc/terms/dateIdentified\"/></extension>\n"
    "</archive>\n";

class ArchiveInput : public testing::Test {
 protected:
  ArchiveInput() {
    (void)sandbox.write("key.txt", kSmallKey);
    (void)sandbox.write("meta.xml", replaced(kMeta, "TABLE", "core.csv"));
    (void)sandbox.write("core.csv", "id,name\na,Aus bus\nb,\nc,Aus cus\n");
    (void)sandbox.write("history.csv", "id,name,date\nb,Aus bus,1990\nb,Aus cus,2001\n");
  }
  [[nodiscard]] Ran run(std::string const& archive, Lines options = {}) const {
    Lines arguments{"redetermine", "key.txt", "key.txt", archive};
    arguments.insert(arguments.end(), options.begin(), options.end());
    return run_keydrift(arguments, sandbox.path());
  }
  // Refused with this message, before anything is written.
  void expect_refused(std::string const& archive, std::string const& message) const {
    auto const before = sandbox.files();
    auto const ran = run(archive, {"--specimens", "out.csv", "--html", "out.html"});
    EXPECT_EQ(ran.exit, 3);
    EXPECT_EQ(ran.err, message);
    EXPECT_EQ(ran.out, "");
    EXPECT_EQ(sandbox.files(), before);
  }
  // tar, gzip: from the machine.
  void pack(Lines const& command) const {
    ASSERT_EQ(run_program(command, sandbox.path()).exit, 0) << command.front();
  }
  Sandbox sandbox;
};

TEST_F(ArchiveInput, AFileThatMetaXmlNamesIsMissing) {
  (void)sandbox.write("meta.xml", replaced(kMeta, "TABLE", "cores.csv"));
  expect_refused("meta.xml",
                 "./meta.xml:2:1: error: the archive has no file \"cores.csv\", which meta.xml "
                 "names [missing-table]\n  check that the archive is complete\n");
}

TEST_F(ArchiveInput, APathLeavesTheArchive) {
  (void)sandbox.write("meta.xml", replaced(kMeta, "TABLE", "../../etc/core.csv"));
  auto const ran = run(".", {"--specimens", "out.csv"});
  EXPECT_EQ(ran.exit, 3);
  EXPECT_NE(ran.err.find("../../etc/core.csv"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("[unsafe-path]"), std::string::npos) << ran.err;
}

TEST_F(ArchiveInput, ATarArchiveIsRefusedWithTheWayOut) {
  pack({"tar", "czf", "dwca.tar.gz", "meta.xml", "core.csv", "history.csv"});
  pack({"tar", "cf", "dwca.tar", "meta.xml", "core.csv", "history.csv"});
  for (std::string const archive : {"dwca.tar.gz", "dwca.tar"}) {
    expect_refused(archive, archive +
                                ":1:1: error: this is a tar archive, not a table of text "
                                "[binary-file]\n  unpack it and load the file inside; of a Darwin "
                                "Core archive name the folder\n");
  }
}

TEST_F(ArchiveInput, APackedMetaXmlIsRefusedWithTheWayOut) {
  pack({"gzip", "-k", "meta.xml"});
  expect_refused("meta.xml.gz",
                 "meta.xml.gz:1:1: error: this is what describes a Darwin Core archive "
                 "(meta.xml), not a table of text [binary-file]\n  unpack it, call it meta.xml, "
                 "put the archive's tables beside it, and name it\n");
}

TEST_F(ArchiveInput, AFullDiskLeavesNoFileBehind) {
  auto const before = sandbox.files();
  for (std::string const option : {"--specimens", "--json", "--html", "--worklist", "--summaries",
                                   "--rejects", "--worklist-html"}) {
    auto const ran = run(".", {option, "/dev/full", "--take-back-log", "log.csv"});
    EXPECT_EQ(ran.exit, 4) << option;
    EXPECT_EQ(ran.err,
              "/dev/full:1:1: error: \"/dev/full\" cannot be written: No space left on device "
              "[unwritable-output]\n  check the folder, the permissions and the free space; no "
              "output file was changed\n")
        << option;
    EXPECT_EQ(ran.out, "") << option;
  }
  EXPECT_EQ(sandbox.files(), before);
}

TEST_F(ArchiveInput, AFileThatMayNotGrowLeavesTheOldOneAsItWas) {
  std::string sheets = "catalogNumber,scientificName\n";
  for (int i = 0; i < 4000; ++i) sheets += "X" + std::to_string(i) + ",Aus bus\n";
  (void)sandbox.write("sheets.csv", sheets);
  (void)sandbox.write("out.csv", "as it was\n");
  auto const before = sandbox.files();
  // 8 blocks of 512 or 1024 bytes, by the shell.
  auto const ran = run_program({"sh", "-c",
                                "ulimit -f 8; exec \"$0\" redetermine key.txt key.txt sheets.csv "
                                "--specimens out.csv --summaries sums.csv",
                                KEYDRIFT_BINARY},
                               sandbox.path());
  EXPECT_EQ(ran.exit, 4);
  EXPECT_EQ(ran.err,
            "out.csv:1:1: error: \"out.csv\" cannot be written: File too large "
            "[unwritable-output]\n  check the folder, the permissions and the free space; no "
            "output file was changed\n");
  EXPECT_EQ(sandbox.files(), before);
  EXPECT_EQ(slurp((sandbox.path() / "out.csv").string()), "as it was\n");
}

TEST_F(ArchiveInput, RowsWithNulsAreSetAsideAndTheRestIsRead) {
  (void)sandbox.write("sheets.csv", "catalogNumber,scientificName\nX1,Aus bus\nX2,Aus\0bus\n"s +
                                        "X3,Aus cus\n" + std::string(50, '\0') + "\nX4,Aus bus\n");
  auto const ran = run("sheets.csv", {"--specimens", "out.csv", "--rejects", "rejects.csv"});
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_NE(ran.out.find("  5 records read: 3 specimens judged, 2 set aside as unreadable.\n"),
            std::string::npos)
      << ran.out;
  Lines rejected;
  for (auto const& row : read_table_file((sandbox.path() / "rejects.csv").string())) {
    rejected.push_back(row.at("line") + " " + row.at("code"));
  }
  EXPECT_EQ(rejected, (Lines{"3 nul-byte", "5 nul-byte"}));
}

// 50 MB by KEYDRIFT_MEGABYTES=50; a little of it by default.
TEST_F(ArchiveInput, AQuoteThatNeverClosesCostsItsOwnRowAtMost) {
  char const* const given = std::getenv("KEYDRIFT_MEGABYTES");
  auto const bytes = static_cast<std::size_t>(given == nullptr ? 2 : std::atoi(given)) << 20U;
  std::string sheets = "catalogNumber,scientificName\nX,\"Aus bus\n";
  std::size_t rows = 1;
  for (; sheets.size() < bytes; ++rows) sheets += "X" + std::to_string(rows) + ",Aus cus\n";
  (void)sandbox.write("sheets.csv", sheets);
  auto const ran = run("sheets.csv", {"--rejects", "rejects.csv", "--json", "out.json"});
  EXPECT_EQ(ran.exit, 0) << ran.err;
  auto const result = nlohmann::json::parse(slurp((sandbox.path() / "out.json").string()));
  EXPECT_EQ(result.at("read").get<std::size_t>() + result.at("rejected").get<std::size_t>(), rows);
  EXPECT_LE(result.at("rejected").get<std::size_t>(), 1U);
  EXPECT_LT(ran.peak_bytes, std::size_t{150} << 20U);
}

TEST_F(ArchiveInput, ANameOfAnotherAuthorIsNotThatOfTheKey) {
  (void)sandbox.write("key.txt",
                      "1 Beak bifid ........ Aus bus Roe, 1901\n"
                      "- Beak entire ....... Aus cus\n");
  (void)sandbox.write("sheets.csv",
                      "catalogNumber,scientificName\n1,\"Aus bus (Roe, 1901)\"\n"
                      "2,\"Aus bus Loe, 1950\"\n3,Aus bus auct. non Roe\n4,Aus cus Loe\n");
  auto const ran = run("sheets.csv", {"--specimens", "out.csv"});
  ASSERT_EQ(ran.exit, 0) << ran.err;
  Lines told;
  for (auto const& row : read_table_file((sandbox.path() / "out.csv").string())) {
    told.push_back(row.at("catalogNumber") + " " + row.at("outcome") + ": " + row.at("reason"));
  }
  EXPECT_EQ(told, (Lines{"1 stands: every way that the evidence leaves ends in Aus bus",
                         "2 not keyed: the recorded name is in neither edition: the author is "
                         "not that of Aus bus Roe, 1901",
                         "3 not keyed: the recorded name is in neither edition: it was "
                         "misapplied, and Aus bus Roe, 1901 is not what is meant",
                         "4 stands: every way that the evidence leaves ends in Aus cus"}));
}

TEST_F(ArchiveInput, AnAuthorInAColumnOfItsOwnBelongsToTheName) {
  (void)sandbox.write("key.txt",
                      "1 Beak bifid ........ Aus bus Roe, 1901\n"
                      "- Beak entire ....... Aus cus\n");
  // The bytes that are not UTF-8 have their rows read in words.
  std::string const rows =
      "Aus bus,\"(Roe, 1901)\",,\nAus bus,\"Loe, 1950\",,\n\"Aus bus Roe, 1901\",\"Loe, 1950\",,\n"
      "Aus bus,,,\nAus bus,\"Loe, 1950\",cf.,\nAus cus,\"Loe, 1950\",,\n"
      "Aus bus,\"Loe, 1950\",,\xE9\nAus bus,\"(Roe, 1901)\",,\xE9\n";
  (void)sandbox.write(
      "sheets.csv",
      "scientificName,scientificNameAuthorship,identificationQualifier,occurrenceRemarks\n" + rows +
          rows);
  auto const ran = run("sheets.csv", {"--specimens", "out.csv"});
  ASSERT_EQ(ran.exit, 0) << ran.err;
  Lines told;
  for (auto const& row : read_table_file((sandbox.path() / "out.csv").string())) {
    told.push_back(row.at("outcome") + ": " + row.at("reason"));
  }
  std::string const stands = "stands: every way that the evidence leaves ends in Aus bus";
  std::string const another =
      "not keyed: the recorded name is in neither edition: the author is not that of Aus bus Roe, "
      "1901";
  Lines expected{stands,
                 another,
                 stands,
                 stands,
                 "stands: every way that the evidence leaves ends in Aus bus or Aus cus",
                 "stands: every way that the evidence leaves ends in Aus cus",
                 another,
                 stands};
  auto const once = expected;
  expected.insert(expected.end(), once.begin(), once.end());
  EXPECT_EQ(told, expected);
}

TEST_F(ArchiveInput, SumsAreMadeByCollectorAndByRegionAsRecorded) {
  std::string sheets =
      "catalogNumber,scientificName,recordedBy,county,country,stateProvince,locality\n"
      "1,Aus bus,K. | L.,Low,Halvern,Aldmere,by the lode\n"
      "2,Aus bus,K.,,Halvern,Aldmere,\n"
      "3,Aus cus,K.,Low,Halvern,Aldmere,\n"
      "4,Dus,,,,,on the moor\n"
      "5,Aus bus,M.,Low,,,\n";
  (void)sandbox.write("sheets.csv", sheets);
  // One of the cells leaves its row to be read in words.
  (void)sandbox.write("words.csv", replaced(sheets, "on the moor", "on\x01the moor"));
  std::string const wanted =
      "collector,,,1,0,0,0,0,0,0,0,0,0,1\n"
      "collector,K.,,2,2,0,0,0,0,0,0,0,0,0\n"
      "collector,K. | L.,,1,1,0,0,0,0,0,0,0,0,0\n"
      "collector,M.,,1,1,0,0,0,0,0,0,0,0,0\n"
      "region,,,1,0,0,0,0,0,0,0,0,0,1\n"
      "region,Halvern / Aldmere,,1,1,0,0,0,0,0,0,0,0,0\n"
      "region,Halvern / Aldmere / Low,,2,2,0,0,0,0,0,0,0,0,0\n"
      "region,Low,,1,1,0,0,0,0,0,0,0,0,0\n";
  for (std::string const archive : {"sheets.csv", "words.csv"}) {
    ASSERT_EQ(run(archive, {"--summaries", "sums.csv"}).exit, 0) << archive;
    auto const sums = slurp((sandbox.path() / "sums.csv").string());
    EXPECT_EQ(sums.substr(sums.find("collector,")), wanted) << archive;
  }
}

TEST_F(ArchiveInput, TheHistoryAndIdsThatStandTwiceAreToldInEveryReport) {
  (void)sandbox.write("core.csv", "id,name\na,Aus bus\nb,\nc,Aus cus\nb,Aus bus\n");
  auto const ran = run(".", {"--json", "out.json", "--html", "out.html"});
  EXPECT_EQ(ran.exit, 0);
  EXPECT_EQ(ran.err,
            "./core.csv:5:1: warning: \"b\" is the id of line 3 already; all rows are used, and "
            "what extensions say goes to the first of an id [repeated-occurrence]\n  b\n  check "
            "whether it is one specimen, and give each an id of its own\n");
  EXPECT_NE(ran.out.find(
                "Name taken from the history of determinations\n"
                "  the latest by date ......................................................... 1\n"
                "  of these, chosen among several ............................................. 1\n"
                "\n"
                "Rows whose number or id an earlier row has; all are used\n"
                "  Rows ....................................................................... 1\n"
                "    b: ./core.csv, lines 3 and 5\n"),
            std::string::npos)
      << ran.out;
  auto const result = nlohmann::json::parse(slurp((sandbox.path() / "out.json").string()));
  EXPECT_EQ(result.at("read"), 4);
  EXPECT_EQ(result.at("determinationHistory").dump(),
            R"({"accepted":0,"amongSeveral":1,"byCore":0,"latest":1})");
  EXPECT_EQ(result.at("repeats").dump(),
            R"([{"file":"./core.csv","firstFile":"./core.csv","firstLine":3,"id":"b","line":5}])");
  auto const html = slurp((sandbox.path() / "out.html").string());
  EXPECT_NE(html.find("b: ./core.csv, lines 3 and 5"), std::string::npos);
}

}  // namespace
}  // namespace keydrift::test
