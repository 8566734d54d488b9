// redetermine --citations: each sheet judged by the edition that it was determined with.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "binary.hpp"
#include "golden.hpp"
#include "table.hpp"

namespace keydrift::test {
namespace {

constexpr char const* kOld =
    "Edition: 1998\nYear: 1998\n\n"
    "1 Flowers white .......... Aus bus\n"
    "– Flowers blue ............ 2\n"
    "2 Leaves flat ........... Aus cus\n"
    "– Leaves rolled .......... Aus dus\n";
// Aus bus is divided by its leaves.
constexpr char const* kNew =
    "Edition: 2024\nYear: 2024\n\n"
    "1 Flowers white .......... 2\n"
    "– Flowers blue ........... 3\n"
    "2 Leaves flat ............ Aus bus\n"
    "– Leaves rolled ......... Aus eus\n"
    "3 Leaves flat ............ Aus cus\n"
    "– Leaves rolled .......... Aus dus\n";
constexpr char const* kLexicon =
    "character,label,structure,property,subjects,kind,unit,difficulty,applicable "
    "if,tolerance,state,"
    "phrases\n"
    "flowers,flowers,flower,colour,flowers,categorical,,naked eye,,,white,white\n"
    ",,,,,,,,,,blue,blue\n"
    "leaves,leaves,leaf,shape,leaves,categorical,,naked eye,,,flat,flat\n"
    ",,,,,,,,,,rolled,rolled\n";
constexpr char const* kCitations =
    "citation,edition,published\n"
    "Orm 1998,1998,1998-05\n"
    "Orm & Tal 2024,2024,2024-02\n"
    "Tal 1974,1974,\n";

// number, name, cited work, date, flowers, leaves
constexpr char const* kCitedSheets =
    "catalogNumber,scientificName,identificationReferences,dateIdentified,flowers,leaves\n"
    "1,Aus bus,\"Orm, A. (1998): A key\",2001,,\n"
    "2,Aus bus,Orm & Tal 2024,2025-03,,\n"
    "3,Aus bus,Tal 1974,,,\n"
    "4,Aus bus,Tal 1974,,white,rolled\n"
    "5,Aus bus,,1981-06,,\n"
    "6,Aus bus,,2025,,\n"
    "7,Aus bus,Orm & Tal 2024,2019,,\n"
    "8,Aus bus,Orm & Tal 2024,,blue,\n"
    "9,Aus eus,Orm & Tal 2024,,,\n"
    "10,Aus bus,Dul 1960,,,\n"
    "11,Aus bus,,,,\n"
    "12,Aus bus,,1950/1960,white,\n"
    "13,Aus bus,Orm 1998 | Orm & Tal 2024,2024-06-01/30,,\n";

struct Told {
  Ran ran;
  std::vector<std::string> rows;
  nlohmann::json json;
};

Told redetermined(std::vector<std::string> const& options) {
  Sandbox const sandbox;
  (void)sandbox.write("old.txt", kOld);
  (void)sandbox.write("new.txt", kNew);
  (void)sandbox.write("lexicon.csv", kLexicon);
  (void)sandbox.write("citations.csv", kCitations);
  (void)sandbox.write("concepts.csv",
                      "old,relation,new\nAus bus,includes,Aus bus\nAus bus,includes,Aus eus\n");
  (void)sandbox.write("sheets.csv", kCitedSheets);
  std::vector<std::string> arguments{"redetermine", "old.txt",     "new.txt",    "sheets.csv",
                                     "--lexicon",   "lexicon.csv", "--concepts", "concepts.csv",
                                     "--specimens", "out.csv",     "--json",     "out.json"};
  arguments.insert(arguments.end(), options.begin(), options.end());
  Told told{.ran = run_keydrift(arguments, sandbox.path()), .rows = {}, .json = {}};
  if (told.ran.exit != 0) return told;
  for (auto const& row : read_table_file((sandbox.path() / "out.csv").string())) {
    told.rows.push_back(row.at("catalogNumber") + " " + row.at("outcome") + ": " +
                        row.at("newScientificName") + "; " + row.at("determinedWith") + ", " +
                        row.at("editionBasis"));
  }
  told.json = nlohmann::json::parse(slurp((sandbox.path() / "out.json").string()));
  return told;
}

// The last part of what the outcomes rest on.
std::string determined_with(Told const& told) {
  auto const at = told.ran.out.find("Determined with");
  auto const end = told.ran.out.find("\n\nCAUTION");
  return at < end ? told.ran.out.substr(at, end - at) : "(not told)";
}

TEST(Citations, EachSheetIsJudgedByTheEditionItWasDeterminedWith) {
  auto const told = redetermined({"--citations", "citations.csv"});
  ASSERT_EQ(told.ran.exit, 0) << told.ran.err;
  EXPECT_EQ(told.rows, (std::vector<std::string>{
                           "1 narrowed: Aus bus | Aus eus; 1998, cited",
                           "2 stands: Aus bus; 2024, cited",
                           "3 not keyed: ; 1974, cited",
                           "4 changes: Aus eus; 1974, cited",
                           "5 not keyed: ; 1974, presumed by date",
                           "6 narrowed: Aus bus | Aus eus; 1998, presumed by date",
                           "7 narrowed: Aus bus | Aus eus; 2024, citation and date contradict",
                           "8 doubtful: Aus cus | Aus dus; 2024, cited",
                           "9 stands: Aus eus; 2024, cited",
                           "10 narrowed: Aus bus | Aus eus; , not known",
                           "11 narrowed: Aus bus | Aus eus; , not known",
                           "12 narrowed: Aus bus | Aus eus; , presumed by date",
                           "13 stands: Aus bus; 2024, cited",
                       }));
  auto const& editions = told.json.at("editions");
  EXPECT_EQ(editions.at("decide"), true);
  EXPECT_EQ(editions.at("citingUnnamedWorks"), 1);
  EXPECT_EQ(editions.at("unnamedWorks").dump(), R"([{"citation":"Dul 1960","specimens":1}])");
  std::vector<std::string> counts;
  for (auto const& count : editions.at("counts")) {
    counts.push_back(count.at("edition").get<std::string>() + " " +
                     count.at("role").get<std::string>() + ", " +
                     count.at("basis").get<std::string>() + ": " + count.at("specimens").dump());
  }
  EXPECT_EQ(counts, (std::vector<std::string>{
                        "1998 old, cited: 1", "1998 old, presumed by date: 1", "2024 new, cited: 4",
                        "2024 old, citation and date contradict: 1", "1974 other, cited: 2",
                        "1974 other, presumed by date: 1", " other, presumed by date: 1",
                        " old, not known: 2"}));
  EXPECT_EQ(determined_with(told),
            "Determined with\n"
            "  1998, cited ................................................................ 1\n"
            "  1998, presumed by date ..................................................... 1\n"
            "  2024, cited: the name is its own already ................................... 4\n"
            "  2024 cited, but dated before it was published: 1998 presumed ............... 1\n"
            "  1974, cited: not judged by the leads of 1998 ............................... 2\n"
            "  1974, presumed by date: not judged by the leads of 1998 .................... 1\n"
            "  an older work than any that is named, presumed by date: not judged by the\n"
            "    leads of 1998 ............................................................ 1\n"
            "  not known, 1998 presumed ................................................... 2\n"
            "  citing only works that the table of citations does not name ................ 1\n"
            "    “Dul 1960” ............................................................... 1\n"
            "\n"
            "  What the leads of 1998 say is not known of specimens that another edition\n"
            "  named. Keyed from that edition, as in `redetermine 1974 2024`, their names\n"
            "  tell more.");
}

TEST(Citations, WithoutTheTableAllAreJudgedAsNamedByTheOldEditionAndThatIsSaid) {
  auto const told = redetermined({});
  ASSERT_EQ(told.ran.exit, 0) << told.ran.err;
  EXPECT_EQ(told.rows[1], "2 narrowed: Aus bus | Aus eus; 2024, cited");
  EXPECT_EQ(told.rows[2], "3 narrowed: Aus bus | Aus eus; , not known");
  EXPECT_EQ(told.rows[4], "5 narrowed: Aus bus | Aus eus; , presumed by date");
  EXPECT_EQ(told.json.at("editions").at("decide"), false);
  EXPECT_EQ(determined_with(told),
            "Determined with\n"
            "  1998 cited by the record ................................................... 2\n"
            "  1998 presumed ............................................................. 11\n"
            "  of these, seemingly determined with 2024 ................................... 3\n"
            "  of these, dated before 1998 was published .................................. 3\n"
            "\n"
            "  These were judged as if 1998 had given their names. --citations TABLE tells\n"
            "  the editions apart.");
}

TEST(Citations, ABadTableIsRefusedBeforeAnythingIsWritten) {
  Sandbox const sandbox;
  (void)sandbox.write("old.txt", kOld);
  (void)sandbox.write("new.txt", kNew);
  (void)sandbox.write("sheets.csv", kCitedSheets);
  (void)sandbox.write("c.csv", "citation,edition,published\nOrm 1998,1998,soon\n");
  auto const ran = run_keydrift({"redetermine", "old.txt", "new.txt", "sheets.csv", "--citations",
                                 "c.csv", "--specimens", "out.csv"},
                                sandbox.path());
  EXPECT_EQ(ran.exit, 3);
  EXPECT_EQ(ran.err,
            "c.csv:2:15: error: \"soon\" does not say when the edition was published "
            "[unclear-day]\n  soon\n  write the year, or a date as in 1998-07 or 1998-07-14\n");
  EXPECT_EQ(sandbox.files(),
            (std::vector<std::string>{"c.csv", "new.txt", "old.txt", "sheets.csv"}));
}

}  // namespace
}  // namespace keydrift::test
