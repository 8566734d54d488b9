// Every input a user can get wrong: one clear message with place and remedy, a stated exit status,
// no partial output.

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include "binary.hpp"
#include "golden.hpp"

namespace keydrift::test {
namespace {

constexpr char kOneSheet[] = "catalogNumber,scientificName\nX1,Aus bus\n";

// The message names the file, the code, and something to do; standard output stays empty and no
// output file appears.
void expect_refused(std::vector<std::string> arguments, Sandbox const& sandbox,
                    std::string const& code, std::vector<std::string> const& said) {
  auto const before = sandbox.files();
  auto const ran = run_keydrift(arguments, sandbox.path());
  EXPECT_EQ(ran.exit, 3) << ran.err;
  EXPECT_EQ(ran.out, "");
  EXPECT_NE(ran.err.find("[" + code + "]"), std::string::npos) << ran.err;
  for (auto const& words : said) EXPECT_NE(ran.err.find(words), std::string::npos) << ran.err;
  EXPECT_EQ(sandbox.files(), before);
}

std::vector<std::string> redetermine_to_files(std::string const& old_edition,
                                              std::string const& new_edition,
                                              std::string const& sheets) {
  return {"redetermine", old_edition, new_edition,   sheets,    "--html",     "out.html",
          "--json",      "out.json",  "--specimens", "out.csv", "--worklist", "work.csv"};
}

TEST(BadInput, AnEmptyKeyIsRefused) {
  Sandbox const sandbox;
  auto const empty = sandbox.write("empty.txt", "");
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const sheets = sandbox.write("sheets.csv", kOneSheet);
  expect_refused(redetermine_to_files(empty, key, sheets), sandbox, "empty-file", {"empty.txt"});
  expect_refused({"proof", empty}, sandbox, "empty-file", {"empty.txt"});
}

TEST(BadInput, AnUnknownCommandIsNamed) {
  auto const ran = run_keydrift({"prof", "key.txt"});
  EXPECT_EQ(ran.exit, 2);
  EXPECT_EQ(ran.err,
            "keydrift: \"prof\" is no command; did you mean \"proof\"?\n"
            "  `keydrift --help` shows what is possible\n");
  auto const second = run_keydrift({"lexicon", "quux", "key.txt"});
  EXPECT_EQ(second.exit, 2);
  EXPECT_EQ(second.err,
            "keydrift: \"quux\" is no command of \"lexicon\"\n"
            "  `keydrift lexicon --help` shows what is possible\n");
  auto const none = run_keydrift({});
  EXPECT_EQ(none.exit, 2);
  EXPECT_EQ(none.err,
            "keydrift: A subcommand is required\n"
            "  `keydrift --help` shows what is possible\n");
}

TEST(BadInput, ATextWithoutCoupletsIsRefused) {
  Sandbox const sandbox;
  auto const prose = sandbox.write("prose.txt", "This is a letter.\nIt has no couplet at all.\n");
  expect_refused({"proof", prose}, sandbox, "no-couplets", {"prose.txt"});
}

TEST(BadInput, ADanglingCoupletNumberIsAFindingWithItsPlace) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt",
                                  "1 Beak bifid ........ 2\n- Beak entire ....... Aus bus\n"
                                  "2 Spike long ........ Aus cus\n- Spike short ....... 27\n"));
  auto const ran = run_keydrift({"proof", "key.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.out.find("key.txt:4:23"), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("dangling"), std::string::npos) << ran.out;
}

TEST(BadInput, ACycleIsAFindingWithItsCouplets) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt",
                                 "1 Beak bifid ........ 2\n- Beak entire ....... Aus bus\n"
                                 "2 Spike long ........ Aus cus\n- Spike short ....... 1\n");
  auto const ran = run_keydrift({"proof", key}, sandbox.path());
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.out.find("cycle"), std::string::npos) << ran.out;
}

TEST(BadInput, ACyclicKeyStillRedetermines) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const cyclic = sandbox.write("cyclic.txt",
                                    "1 Beak bifid ........ 2\n- Beak entire ....... Aus cus\n"
                                    "2 Spike long ........ Aus bus\n- Spike short ....... 1\n");
  auto const sheets = sandbox.write("sheets.csv", kOneSheet);
  auto const ran = run_keydrift(redetermine_to_files(key, cyclic, sheets), sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.err;
}

TEST(BadInput, ASpecimenFileWithoutANameColumnIsRefused) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const sheets = sandbox.write("sheets.csv", "catalogNumber,colour\nX1,red\n");
  expect_refused(redetermine_to_files(key, key, sheets), sandbox, "no-name-column",
                 {"sheets.csv:1", "scientificName"});
}

TEST(BadInput, AConceptMapNamingAnUnknownTaxonSaysSoWithItsPlace) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const map = sandbox.write("map.csv", "old,relation,new\nAus buss,congruent,Aus bus\n");
  auto const ran =
      run_keydrift({"collate", key, key, "--concepts", map, "--html", "out.html"}, sandbox.path());
  EXPECT_EQ(ran.exit, 3) << ran.err;
  EXPECT_EQ(ran.out, "");
  EXPECT_NE(ran.err.find("map.csv:2:1"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("Aus buss"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("Aus bus"), std::string::npos) << ran.err;
  EXPECT_EQ(sandbox.files(), (std::vector<std::string>{"key.txt", "map.csv"}));
}

TEST(BadInput, AConceptMapWithAnUnknownRelationIsRefused) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const map = sandbox.write("map.csv", "old,relation,new\nAus bus,inclodes,Aus bus\n");
  expect_refused({"collate", key, key, "--concepts", map}, sandbox, "unknown-relation",
                 {"map.csv:2", "includes"});
}

TEST(BadInput, AFolderIsRefused) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  expect_refused({"proof", sandbox.path().string()}, sandbox, "is-a-directory", {});
  expect_refused(redetermine_to_files(key, key, sandbox.path().string()), sandbox, "is-a-directory",
                 {});
}

TEST(BadInput, AMissingFileIsRefusedWithNearNames) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key-2024.txt", kSmallKey));
  expect_refused({"proof", "key-2042.txt"}, sandbox, "no-such-file", {"key-2024.txt"});
}

TEST(BadInput, AnUnreadableFileIsRefused) {
  if (::geteuid() == 0) GTEST_SKIP() << "root reads everything";
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  ::chmod(key.c_str(), 0);
  expect_refused({"proof", key}, sandbox, "unreadable-file", {"key.txt"});
}

TEST(BadInput, BinaryJunkIsRefused) {
  Sandbox const sandbox;
  std::string junk;
  unsigned state = 12345;
  for (int i = 0; i < 4096; ++i) {
    state = state * 1103515245U + 12345U;
    junk += static_cast<char>(state >> 16);
  }
  auto const file = sandbox.write("junk.txt", junk);
  auto const key = sandbox.write("key.txt", kSmallKey);
  expect_refused({"proof", file}, sandbox, "unsupported-file", {"junk.txt", "binary file"});
  expect_refused(redetermine_to_files(key, key, file), sandbox, "binary-file", {"junk.txt"});
}

TEST(BadInput, AnUnknownStateInARecordIsReportedOnceAndTheRunGoesOn) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const lexicon = sandbox.write("lexicon.csv",
                                     "character,subjects,kind,state,phrases\n"
                                     "beak,beak,categorical,bifid,bifid\n,,,entire,entire\n");
  auto const sheets = sandbox.write("sheets.csv",
                                    "catalogNumber,scientificName,beak\n"
                                    "X1,Aus bus,bifd\nX2,Aus bus,bifd\nX3,Aus bus,bifid\n");
  auto arguments = redetermine_to_files(key, key, sheets);
  arguments.insert(arguments.end(), {"--lexicon", lexicon});
  auto const ran = run_keydrift(arguments, sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_NE(ran.err.find("sheets.csv:2:3"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("bifd"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("bifid or entire"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("(2 records)"), std::string::npos) << ran.err;
}

TEST(BadInput, AnOutputThatCannotBeWrittenLeavesNothingBehind) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const sheets = sandbox.write("sheets.csv", kOneSheet);
  auto const ran = run_keydrift({"redetermine", key, key, sheets, "--specimens", "out.csv",
                                 "--html", "no-such-folder/out.html"},
                                sandbox.path());
  EXPECT_EQ(ran.exit, 4) << ran.err;
  EXPECT_NE(ran.err.find("no-such-folder/out.html"), std::string::npos) << ran.err;
  EXPECT_EQ(sandbox.files(), (std::vector<std::string>{"key.txt", "sheets.csv"}));
}

TEST(OutputFiles, ReplaceWhatWasThereAndLeaveNothingElse) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kSmallKey);
  auto const sheets = sandbox.write("sheets.csv", kOneSheet);
  static_cast<void>(sandbox.write("out.csv", "old"));
  auto const ran = run_keydrift(redetermine_to_files(key, key, sheets), sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_EQ(sandbox.files(), (std::vector<std::string>{"key.txt", "out.csv", "out.html", "out.json",
                                                       "sheets.csv", "work.csv"}));
  EXPECT_EQ(slurp((sandbox.path() / "out.csv").string()).substr(0, 14), "catalogNumber,");
}

TEST(Usage, AWrongCommandLineSaysHowToGoOn) {
  for (auto const& arguments : std::vector<std::vector<std::string>>{
           {}, {"proof"}, {"collate", "one"}, {"nothing"}, {"proof", "x", "--no-such-option"}}) {
    auto const ran = run_keydrift(arguments);
    EXPECT_EQ(ran.exit, 2);
    EXPECT_EQ(ran.out, "");
    EXPECT_NE(ran.err.find("--help"), std::string::npos) << ran.err;
  }
}

TEST(Usage, HelpShowsExamplesForEveryCommand) {
  for (auto const* command : {"proof", "collate", "redetermine", "keyout", "convert"}) {
    auto const ran = run_keydrift({command, "--help"});
    EXPECT_EQ(ran.exit, 0);
    EXPECT_EQ(ran.err, "");
    EXPECT_NE(ran.out.find("Examples:\n  keydrift " + std::string{command}), std::string::npos)
        << ran.out;
  }
}

TEST(Usage, VersionIsOneLine) {
  auto const ran = run_keydrift({"--version"});
  EXPECT_EQ(ran.exit, 0);
  EXPECT_EQ(ran.out, "keydrift " KEYDRIFT_VERSION "\n");
}

}  // namespace
}  // namespace keydrift::test
