// `--encoding` as a user gives it.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "binary.hpp"

namespace keydrift::test {
namespace {

// "žlutý" and "černý" in Windows-1250, which nothing in the file tells.
constexpr char const* kCzech =
    "1 Zob\xE1k \x9Elut\xFD ........ Aus bus\n- Zob\xE1k \xE8"
    "ern\xFD ....... Aus cus\n";

TEST(EncodingOption, SaysWhatAnEditionIsIn) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kCzech));
  auto const untold = run_keydrift({"convert", "key.txt", "--to", "text"}, sandbox.path());
  EXPECT_EQ(untold.exit, 0) << untold.err;
  EXPECT_EQ(untold.out.find("černý"), std::string::npos) << untold.out;
  auto const told = run_keydrift(
      {"convert", "key.txt", "--to", "text", "--encoding", "Windows-1250"}, sandbox.path());
  EXPECT_EQ(told.exit, 0) << told.err;
  EXPECT_NE(told.out.find("Zobák žlutý"), std::string::npos) << told.out;
  EXPECT_NE(told.out.find("Zobák černý"), std::string::npos) << told.out;
}

TEST(EncodingOption, HoldsForBothEditionsAndSideTables) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("old.txt", kCzech));
  static_cast<void>(
      sandbox.write("new.txt", "1 Zobák žlutý ........ Aus bus\n- Zobák černý ....... Aus cus\n"));
  static_cast<void>(
      sandbox.write("lexicon.csv", "phrase,character,state\n\x9Elut\xFD,colour,\x9Elut\xFD\n"));
  auto const ran = run_keydrift({"collate", "old.txt", "new.txt", "--lexicon", "lexicon.csv",
                                 "--encoding", "cp1250", "--json", "out.json"},
                                sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.err << ran.out;
}

TEST(EncodingOption, AnUnknownNameIsBadUsageOfEveryCommand) {
  for (auto const& arguments :
       std::vector<std::vector<std::string>>{{"proof", "k"},
                                             {"collate", "k", "k"},
                                             {"amend", "k", "k"},
                                             {"convert", "k", "--to", "json"},
                                             {"keyout", "k"},
                                             {"redetermine", "k", "k", "s"},
                                             {"lexicon", "check", "k", "k"},
                                             {"lexicon", "draft", "k"}}) {
    auto command = arguments;
    command.insert(command.end(), {"--encoding", "windows-1299"});
    auto const ran = run_keydrift(command);
    EXPECT_EQ(ran.exit, 2);
    EXPECT_EQ(ran.err.rfind("keydrift: --encoding: \"windows-1299\" is no encoding that is known: "
                            "utf-8, utf-16le, ",
                            0),
              0U)
        << ran.err;
    EXPECT_NE(ran.err.find(", windows-1251, "), std::string::npos) << ran.err;
  }
}

}  // namespace
}  // namespace keydrift::test
