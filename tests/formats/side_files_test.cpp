// The concept map's and the parent table's files.

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "golden.hpp"
#include "keydrift/formats/citations_file.hpp"
#include "keydrift/formats/concept_map_file.hpp"
#include "keydrift/formats/parents_file.hpp"
#include "keydrift/formats/wording.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

Loaded<ConceptMap> concepts(std::string_view text) {
  return read_concept_map({.name = "c.csv", .bytes = text});
}
Lines concept_errors(std::string_view text) {
  auto const loaded = concepts(text);
  EXPECT_FALSE(loaded);
  return one_line_each(loaded.findings);
}
Loaded<ParentTable> parents(std::string_view text) {
  return read_parents({.name = "p.csv", .bytes = text});
}
Lines parent_errors(std::string_view text) {
  auto const loaded = parents(text);
  EXPECT_FALSE(loaded);
  return one_line_each(loaded.findings);
}

TEST(ConceptMapFile, ReadsWordsSignsAndStandardTerms) {
  auto const loaded = concepts(
      "old,relation,new,note\n"
      "Aus bus,Congruent,Aus bus,same\n"
      "Aus cus,>,Aus cus,\n"
      " Aus cus ,'==,\"Aus dus\",\"told, by hand\"\n"
      "Bus,included_in,Cus\n"
      "Dus,partiallyOverlaps,Dus,\n"
      "Eus,|,Fus,\n");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(loaded.value->name, "c.csv");
  Lines rows;
  for (auto const& row : loaded.value->rows) {
    rows.push_back(std::to_string(row.place.line) + " " + row.old_name + " " +
                   to_word(row.relation) + " " + row.new_name + " (" + row.note + ")");
  }
  EXPECT_EQ(rows, (Lines{"2 Aus bus congruent Aus bus (same)", "3 Aus cus includes Aus cus ()",
                         "4 Aus cus congruent Aus dus (told, by hand)", "5 Bus included in Cus ()",
                         "6 Dus overlaps Dus ()", "7 Eus disjoint Fus ()"}));
}

TEST(ConceptMapFile, FindsColumnsInAnyOrderAndSpelling) {
  auto const loaded = concepts("\xEF\xBB\xBFNEW;Relation;Old\r\nAus dus;includes;Aus cus\r\n");
  ASSERT_TRUE(loaded);
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  EXPECT_EQ(loaded.value->rows[0].old_name, "Aus cus");
  EXPECT_EQ(loaded.value->rows[0].new_name, "Aus dus");
}

TEST(ConceptMapFile, NamesTheRelationThatWasMeant) {
  EXPECT_EQ(concept_errors("old,relation,new\nAus,inclueds,Bus\nAus,sort of,Cus\nAus,,Dus\n"),
            (Lines{"c.csv:2:5: error: \"inclueds\" is not a relation between two concepts "
                   "[unknown-relation] (did you mean \"includes\"?)",
                   "c.csv:3:5: error: \"sort of\" is not a relation between two concepts "
                   "[unknown-relation] (write congruent (==), includes (>), included in (<), "
                   "overlaps (><) or disjoint (|))",
                   "c.csv:4:5: error: the row has no relation [unknown-relation] (write congruent "
                   "(==), includes (>), included in (<), overlaps (><) or disjoint (|))"}));
}

TEST(ConceptMapFile, WantsATaxonOnEachSide) {
  EXPECT_EQ(concept_errors("old,relation,new\n,includes,Bus\n\"é, x\",includes, \n"),
            (Lines{"c.csv:2:1: error: the row has no name in the column \"old\" [missing-name] "
                   "(name one taxon of each edition in every row)",
                   "c.csv:3:17: error: the row has no name in the column \"new\" [missing-name] "
                   "(name one taxon of each edition in every row)"}));
}

TEST(ConceptMapFile, ReportsRowsThatContradictOrRepeatEachOther) {
  EXPECT_EQ(concept_errors("old,relation,new\nAus,includes,Bus\nAus,overlaps,Bus\n"),
            Lines{"c.csv:3:5: error: \"Aus\" and \"Bus\" are called \"overlaps\" here and "
                  "\"includes\" in line 2 [contradictory-rows] (keep the row that is right)"});
  auto const loaded = concepts("old,relation,new\nAus,includes,Bus\nAus,>,Bus\n");
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->rows.size(), 1U);
  EXPECT_EQ(one_line_each(loaded.findings),
            Lines{"c.csv:3:1: information: \"Aus\" and \"Bus\" stand in an earlier row with the "
                  "same relation [repeated-row] (remove one of the two rows)"});
}

TEST(ConceptMapFile, SaysWhichColumnsAreMissingAndWhichAreThere) {
  EXPECT_EQ(
      concept_errors("old,relationship,new name\nAus,includes,Bus\n"),
      (Lines{"c.csv:1:1: error: the first row has no column \"relation\" and \"new\"; it has "
             "\"old\", \"relationship\" and \"new name\" [missing-column] (a concept map "
             "wants the columns \"old\", \"relation\" and \"new\" named in its first row)",
             "c.csv:1:5: warning: the column \"relationship\" is not one of a concept map; it "
             "was not read [unknown-column] (did you mean \"relation\"?)",
             "c.csv:1:18: warning: the column \"new name\" is not one of a concept map; it "
             "was not read [unknown-column] (did you mean \"new\"?)"}));
}

TEST(ConceptMapFile, ReportsEveryRowThatCannotBeRead) {
  EXPECT_EQ(concept_errors("old,relation,new,note\nAus,includes,Bus,x,y\nAus,includes,Cus\n"),
            (Lines{"c.csv:2:1: error: the row has 5 cells where the header has 4 [too-many-cells] "
                   "(put cells that hold a separator in quotation marks)",
                   "c.csv:3:1: information: 1 row has fewer cells than the header; the missing "
                   "ones were taken as empty [short-rows] (check whether a line break or a "
                   "separator is missing there)"}));
  EXPECT_EQ(concept_errors("old,old,relation,new,grade\n"),
            (Lines{"c.csv:1:5: error: the column \"old\" stands here a second time "
                   "[duplicate-column] (remove or rename one of the two)",
                   "c.csv:1:22: information: the column \"grade\" is not one of a concept map; it "
                   "was not read [unknown-column] (its columns are \"old\", \"relation\", "
                   "\"new\" and \"note\")"}));
}

TEST(ConceptMapFile, RefusesWhatIsNoTable) {
  EXPECT_EQ(concept_errors(""),
            Lines{"c.csv:1:1: error: the file is empty [empty-file] (check that this is the right "
                  "file and that it was saved)"});
  EXPECT_EQ(concept_errors("{\"old\": \"Aus\"}"),
            Lines{"c.csv:1:1: error: this is a JSON file, not a concept map [not-a-table] (a "
                  "concept map is a CSV file with the columns \"old\", \"relation\" and \"new\")"});
}

TEST(ParentsFile, ReadsTaxaAndTheirParents) {
  auto const loaded = parents("taxon\tparent\nAus bus\tAus\nAus\tAusidae\n");
  ASSERT_TRUE(loaded);
  ASSERT_EQ(loaded.value->rows.size(), 2U);
  EXPECT_EQ(loaded.value->rows[0].taxon, "Aus bus");
  EXPECT_EQ(loaded.value->rows[1].parent, "Ausidae");
  EXPECT_EQ(loaded.value->rows[1].place.line, 3U);
}

TEST(ParentsFile, ReportsCirclesAndContradictions) {
  EXPECT_EQ(parent_errors("taxon,parent\nAus,Bus\nBus,Cus\nCus,Aus\nDus,Aus\nEus,Eus\n"),
            (Lines{"p.csv:4:1: error: \"Cus\" is below \"Aus\", which is below \"Cus\" "
                   "[parent-cycle] (remove the row that is wrong)",
                   "p.csv:6:5: error: \"Eus\" is said to be its own parent [own-parent] (name the "
                   "next higher taxon)"}));
  EXPECT_EQ(
      parent_errors("taxon,parent\nAus bus,Aus\nAus bus,Bus\n,Aus\nAus cus,\n"),
      (Lines{"p.csv:3:9: error: \"Aus bus\" has the parent \"Bus\" here and \"Aus\" in line 2 "
             "[two-parents] (keep the row that is right)",
             "p.csv:4:1: error: the row has no name in the column \"taxon\" [missing-name] "
             "(give a taxon and its parent in every row)",
             "p.csv:5:9: error: the row has no name in the column \"parent\" [missing-name] "
             "(give a taxon and its parent in every row)"}));
  auto const repeated = parents("taxon,parent\nAus bus,Aus\nAus bus,Aus\n");
  ASSERT_TRUE(repeated);
  EXPECT_EQ(one_line_each(repeated.findings),
            Lines{"p.csv:3:1: information: \"Aus bus\" stands in an earlier row with the same "
                  "parent [repeated-row] (remove one of the two rows)"});
}

Loaded<CitationTable> citations(std::string_view text) {
  return read_citations({.name = "c.csv", .bytes = text});
}

TEST(CitationsFile, ReadsWorksEditionsAndDays) {
  auto const loaded = citations(
      "citation;edition;published\r\nOrm & Tal 1998;1998;\r\n\"Tal 1974: a \"\"field key\"\"\";"
      "1974;1974-03\r\n;2010;2010-01-05\r\nTal 1974;1974;1974-03\r\n");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  Lines rows;
  for (auto const& row : loaded.value->rows) {
    auto const day = row.published ? std::to_string(row.published->first) : "";
    rows.push_back(row.citation + "|" + row.edition + "|" + day + "|" +
                   std::to_string(row.place.line));
  }
  EXPECT_EQ(rows, (Lines{"Orm & Tal 1998|1998||2", "Tal 1974: a \"field key\"|1974|19740301|3",
                         "|2010|20100105|4", "Tal 1974|1974|19740301|5"}));
}

TEST(CitationsFile, ReportsEveryRowThatSaysNothingOrTwoThings) {
  auto const loaded = citations(
      "citation,edition,published\nOrm 1998,1998,14.7.1998\nOrm 1998,,\n,1974,\nOrm "
      "1998,1998,1998\n"
      "ORM  1998,1974,\n,1998,1999\n");
  EXPECT_FALSE(loaded);
  EXPECT_EQ(
      one_line_each(loaded.findings),
      (Lines{"c.csv:2:15: error: \"14.7.1998\" does not say when the edition was published "
             "[unclear-day] (write the year, or a date as in 1998-07 or 1998-07-14)",
             "c.csv:3:10: error: the row of \"Orm 1998\" names no edition [missing-edition] (write "
             "the label of the edition, or OLD or NEW)",
             "c.csv:4:1: warning: the row has neither a citation nor a date, and says nothing "
             "[idle-row] (write the work as it is cited, or when the edition was published)",
             "c.csv:6:1: error: another row says that this is the edition \"1998\" [two-editions] "
             "(keep the one that is right)",
             "c.csv:7:7: error: another row says that the edition \"1998\" was published in 1998 "
             "[two-days] (keep the one that is right)"}));
}

TEST(SideFiles, ReadTheTablesOfTheScenario) {
  auto const folder = std::string{KEYDRIFT_SOURCE_DIR} + "/fixtures/velunaceae/";
  for (auto const* name : {"concepts-1974-1998.csv", "concepts-1998-2024.csv"}) {
    auto const loaded = concepts(test::slurp(folder + name));
    ASSERT_TRUE(loaded);
    EXPECT_EQ(one_line_each(loaded.findings), Lines{});
    EXPECT_GT(loaded.value->rows.size(), 2U);
  }
  EXPECT_TRUE(parents(test::slurp(folder + "parents.csv")));
  EXPECT_TRUE(citations(test::slurp(folder + "citations.csv")));
}

TEST(SideFiles, NeverYieldAValueTogetherWithAnError) {
  test::read_damaged("old,relation,new,note\nAus \"b\",'==,\"B\nus\",x\nAus,|,Cus,é\n", concepts);
  test::read_damaged("citation,edition,published\n\"Orm, 1998\",OLD,1998-05\n,é,2024\n", citations);
  test::read_damaged("taxon,parent\nAus,Bus\r\n\"Bus\",Cus\n", parents);
}

TEST(Wording, SuggestsTheNearestWord) {
  std::vector<std::string_view> const known{"includes", "overlaps", "note"};
  EXPECT_EQ(tables::suggestion("inlcudes", known, "x"), "did you mean \"includes\"?");
  EXPECT_EQ(tables::suggestion("xyz", known, "look"), "look");
  EXPECT_EQ(tables::suggestion(std::string(1000, 'o'), known, "look"), "look");
}

}  // namespace
}  // namespace keydrift
