// A piece published between editions, applied with the real binary, and the result compared.

#include <gtest/gtest.h>

#include "binary.hpp"
#include "golden.hpp"

namespace keydrift::test {
namespace {

constexpr char kKeyToAmend[] =
    "Edition: 1998\n\n"
    "1      Wings clear ..... 2\n"
    "–      Wings dark ..... Aus bus\n"
    "2 (1)  Legs pale ..... Aus cus\n"
    "–      Legs dark ..... Aus dus\n";

// In the sandbox, so that the report names files and no folders.
Ran amend_demo(std::vector<std::string> const& more, Sandbox const& sandbox) {
  for (auto const* name : {"edition-1998.txt", "amendment-2003.txt", "lexicon.csv"}) {
    (void)sandbox.write(name, slurp(fixture(std::string{"velunaceae/"} + name)));
  }
  std::vector<std::string> arguments{"amend",      "edition-1998.txt", "amendment-2003.txt",
                                     "-o",         "edition-2003.txt", "--lexicon",
                                     "lexicon.csv"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return run_keydrift(arguments, sandbox.path());
}

// The line of the report that begins with `words`; "" where none does.
std::string line_with(std::string const& report, std::string const& words) {
  auto const at = report.find(words);
  if (at == std::string::npos) return {};
  return report.substr(at, report.find('\n', at) - at);
}

TEST(AmendCommand, MakesTheEditionThatTheDemoExpects) {
  Sandbox const sandbox;
  auto const ran = amend_demo({}, sandbox);
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_EQ(ran.err, "");
  expect_golden("program/amend.txt", ran.out);
  EXPECT_EQ(slurp((sandbox.path() / "edition-2003.txt").string()),
            slurp(fixture("velunaceae/expected-edition-2003.txt")));
}

TEST(AmendCommand, LeavesWhatCollateFindsAndNothingElse) {
  Sandbox const sandbox;
  ASSERT_EQ(amend_demo({}, sandbox).exit, 0);
  auto const ran =
      run_keydrift({"collate", "edition-1998.txt", (sandbox.path() / "edition-2003.txt").string(),
                    "--lexicon", "lexicon.csv"},
                   fixture("velunaceae"));
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(line_with(ran.out, "Couplets in 1998 and in 2003 ..").find(" 27 and 28"),
            std::string::npos)
      << ran.out;
  EXPECT_NE(line_with(ran.out, "kept as they are ..").find(" 25"), std::string::npos);
  EXPECT_NE(line_with(ran.out, "* inserted ..").find(" 1"), std::string::npos);
  EXPECT_NE(line_with(ran.out, "§ saying something else ..").find(" 2"), std::string::npos);
  EXPECT_EQ(line_with(ran.out, "† removed"), "");
  EXPECT_NE(line_with(ran.out, "entered ..").find(" 1"), std::string::npos);
  EXPECT_NE(line_with(ran.out, "Faults of the key mended, introduced, lasting").find(" 2, 0, 0"),
            std::string::npos);
}

TEST(AmendCommand, CountsTheCoupletsAnewWhenAsked) {
  Sandbox const sandbox;
  auto const ran = amend_demo({"--renumber"}, sandbox);
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_NE(ran.out.find("15a is now 16, 16 is now 17"), std::string::npos) << ran.out;
  auto const text = slurp((sandbox.path() / "edition-2003.txt").string());
  EXPECT_NE(text.find("\n16 (15). "), std::string::npos);
  EXPECT_NE(text.find("\n18 (1). "), std::string::npos);
  EXPECT_EQ(text.find("15a"), std::string::npos);
  auto const collated = run_keydrift({"collate", fixture("velunaceae/edition-1998.txt"),
                                      (sandbox.path() / "edition-2003.txt").string()});
  EXPECT_EQ(line_with(collated.out, "† removed"), "");
}

TEST(AmendCommand, SaysWhatItCouldNotDoAndWritesTheRest) {
  Sandbox const sandbox;
  auto const key = sandbox.write("key.txt", kKeyToAmend);
  auto const piece = sandbox.write("piece.txt",
                                   "Delete couplet 7.\n"
                                   "Lead 1b: for ‘dark’ read ‘black’.\n"
                                   "In couplet 2, swap the leads and change them.\n");
  auto const ran = run_keydrift({"amend", "key.txt", "piece.txt", "-o", "new.json", "--to", "json"},
                                sandbox.path());
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.out.find("Not everything that is asked for could be done."), std::string::npos);
  EXPECT_NE(ran.out.find("piece.txt:1:1 [no-such-couplet]"), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("remedy   the last couplet is 2"), std::string::npos) << ran.out;
  auto const json = slurp((sandbox.path() / "new.json").string());
  EXPECT_NE(json.find("\"Wings black\""), std::string::npos) << json;
}

TEST(AmendCommand, SaysWhichFaultsThePieceMakes) {
  Sandbox const sandbox;
  (void)sandbox.write("key.txt", kKeyToAmend);
  (void)sandbox.write("piece.txt", "Lead 1a now leads to Aus cus.\n");
  auto const ran = run_keydrift({"amend", "key.txt", "piece.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.out.find("FAULTS THAT THE AMENDMENT MAKES"), std::string::npos);
  EXPECT_NE(ran.out.find("key.txt:5:1 [unreachable-couplet]"), std::string::npos) << ran.out;
  EXPECT_EQ(sandbox.files(), (std::vector<std::string>{"key.txt", "piece.txt"}));
}

TEST(AmendCommand, RefusesAnOutputInAFormThatIsNotWritten) {
  Sandbox const sandbox;
  (void)sandbox.write("key.txt", kKeyToAmend);
  (void)sandbox.write("piece.txt", "Lead 1b: for ‘dark’ read ‘black’.\n");
  auto const ran =
      run_keydrift({"amend", "key.txt", "piece.txt", "-o", "new.docx"}, sandbox.path());
  EXPECT_EQ(ran.exit, 2);
  EXPECT_EQ(ran.out, "");
  EXPECT_EQ(ran.err,
            "keydrift amend: say the form with --to, or name an output that ends in .txt, .json, "
            ".xml, .html or .md\n");
  EXPECT_EQ(sandbox.files(), (std::vector<std::string>{"key.txt", "piece.txt"}));
  for (std::vector<std::string> const& more :
       {std::vector<std::string>{"new.docx", "--to", "text"}, std::vector<std::string>{"new"}}) {
    std::vector<std::string> arguments{"amend", "key.txt", "piece.txt", "-o"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    EXPECT_EQ(run_keydrift(arguments, sandbox.path()).exit, 0) << more.front();
  }
}

TEST(AmendCommand, RefusesAPieceThatHoldsNothing) {
  Sandbox const sandbox;
  (void)sandbox.write("key.txt", kKeyToAmend);
  (void)sandbox.write("letter.txt", "Dear colleagues,\nthe key is very good.\n");
  auto const ran =
      run_keydrift({"amend", "key.txt", "letter.txt", "-o", "new.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 3);
  EXPECT_EQ(ran.out, "");
  EXPECT_EQ(ran.err,
            "letter.txt:1:1: error: neither a couplet nor an instruction was found "
            "[no-amendment]\n"
            "  Dear colleagues,\n"
            "  write couplets with their numbers, or lines such as \"Delete couplet 9\" and "
            "\"Couplet 8b: for 9 read 10\"\n");
  EXPECT_EQ(sandbox.files(), (std::vector<std::string>{"key.txt", "letter.txt"}));
}

}  // namespace
}  // namespace keydrift::test
