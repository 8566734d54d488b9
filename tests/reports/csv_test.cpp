#include "keydrift/reports/csv.hpp"

#include <gtest/gtest.h>

#include "golden.hpp"
#include "keydrift/reports/csv_cell.hpp"
#include "sample.hpp"

namespace keydrift::reports {
namespace {

using test::make_sample;
using Table = std::vector<std::vector<std::string>>;

// RFC 4180 by the letter, independent of the writer.
Table parse(std::string const& text) {
  Table table;
  std::vector<std::string> row;
  std::string cell;
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    auto const c = text[i];
    if (quoted) {
      if (c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
        cell += '"';
        ++i;
      } else if (c == '"') {
        quoted = false;
      } else {
        cell += c;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',' || c == '\n') {
      row.push_back(std::move(cell));
      cell.clear();
      if (c == '\n') {
        table.push_back(std::move(row));
        row.clear();
      }
    } else {
      cell += c;
    }
  }
  EXPECT_FALSE(quoted);
  EXPECT_TRUE(cell.empty());
  return table;
}

std::string cell(std::string_view text) {
  std::string out;
  append_csv_cell(out, text);
  return out;
}

TEST(CsvCell, QuotesOnlyWhatNeedsIt) {
  EXPECT_EQ(cell("Orla major"), "Orla major");
  EXPECT_EQ(cell("a,b"), "\"a,b\"");
  EXPECT_EQ(cell("say \"b\""), "\"say \"\"b\"\"\"");
  EXPECT_EQ(cell("a\nb"), "\"a\nb\"");
  EXPECT_EQ(cell(" a"), "\" a\"");
  EXPECT_EQ(cell(""), "");
}

TEST(CsvCell, NeutralisesWhatASpreadsheetWouldRun) {
  EXPECT_EQ(cell("=1+1"), "'=1+1");
  EXPECT_EQ(cell("+A1"), "'+A1");
  EXPECT_EQ(cell("-A1"), "'-A1");
  EXPECT_EQ(cell("@SUM(A1,A2)"), "\"'@SUM(A1,A2)\"");
  EXPECT_EQ(cell("\t=1"), "\"'\t=1\"");
  EXPECT_EQ(cell("\r=1"), "\"'\r=1\"");
  EXPECT_EQ(cell("\n=1"), "\"'\n=1\"");
  EXPECT_EQ(cell("'=1"), "''=1");
}

TEST(CsvCell, LeavesPlainNumbersAlone) {
  EXPECT_EQ(cell("-5"), "-5");
  EXPECT_EQ(cell("+3.2e-4"), "+3.2e-4");
  EXPECT_EQ(cell("-3,5"), "\"-3,5\"");
  EXPECT_EQ(cell("-"), "'-");
  EXPECT_EQ(cell("-5-3"), "'-5-3");
  EXPECT_EQ(cell("-5e"), "'-5e");
}

TEST(SpecimensCsv, BeginsWithTheColumnsOfTheContract) {
  EXPECT_TRUE(specimens_csv_header().starts_with(
      "catalogNumber,scientificName,outcome,newScientificName,oldCouplet,newCouplet,reason,lookAt,"
      "oldName,possibleOutcomes,"));
}

TEST(SpecimensCsv, RowsReadBackAsTheValues) {
  auto const sample = make_sample();
  auto const& result = sample.redetermination;
  auto text = specimens_csv_header();
  for (auto const& outcome : result.to_look_at) {
    append_specimen_row(
        text, outcome.specimen, outcome.new_names,
        verdict_cells(result.verdicts[outcome.verdict], sample.old_edition, sample.new_edition),
        edition_cells({.basis = EditionBasis::cited, .edition = 1}, {"", "1968"}));
  }
  auto const table = parse(text);
  ASSERT_EQ(table.size(), 5);
  for (auto const& row : table) EXPECT_EQ(row.size(), 14);
  std::vector<std::string> const want{
      "HLVN 0010",
      "Orla major Smith, 1901",
      "narrowed",
      "Orla rubra | Orla major",
      "2",
      "3",
      "Orla major of 1968 is divided in 2003: Orla rubra or Orla major; the ways part at couplet 3 "
      "of 2003, lead 2a of 1968; what decides is “Underside of the claws red” (3a; not recorded)",
      "look at underside of the claws (naked eye): red → Orla rubra; white → stands",
      "Orla major",
      "stands | changes",
      "",
      "Cabinet 1 / Shelf 2",
      "1968",
      "cited"};
  EXPECT_EQ(table[1], want);
  EXPECT_EQ(table[2][10], "holotype of Orla major");
  EXPECT_EQ(table[4][2], "stranded");
  EXPECT_EQ(table[4][5], "5");
}

TEST(SpecimensCsv, HostileRecordsStayWithinTheirCells) {
  auto const sample = make_sample();
  Specimen specimen;
  specimen.catalog_number = "=HYPERLINK(\"x\")";
  specimen.scientific_name = "Orla\n\"major\", pale";
  auto text = specimens_csv_header();
  append_specimen_row(
      text, specimen, "",
      verdict_cells(sample.redetermination.verdicts[5], sample.old_edition, sample.new_edition),
      edition_cells({}, {"=1968"}));
  auto const table = parse(text);
  ASSERT_EQ(table.size(), 2);
  ASSERT_EQ(table[1].size(), 14);
  EXPECT_EQ(table[1][12], "'=1968");
  EXPECT_EQ(table[1][13], "not known");
  EXPECT_EQ(table[1][0], "'=HYPERLINK(\"x\")");
  EXPECT_EQ(table[1][1], specimen.scientific_name);
}

TEST(WorklistCsv, GivesEachSpecimenInTheOrderOfTheWalkWithColumnsToFillIn) {
  auto const sample = make_sample();
  auto const& result = sample.redetermination;
  auto text = worklist_csv_header();
  for (auto const& group : result.worklist) {
    for (auto const index : group.specimens) {
      auto const& outcome = result.to_look_at[index];
      append_work_row(text, outcome.specimen,
                      work_cells(result.verdicts[outcome.verdict], sample.new_edition));
    }
  }
  auto const table = parse(text);
  ASSERT_EQ(table.size(), 5);
  std::vector<std::string> const header{"storageLocation",
                                        "catalogNumber",
                                        "scientificName",
                                        "typeOrVoucher",
                                        "question",
                                        "answersAllowed",
                                        "possibleResults",
                                        "answer",
                                        "newName",
                                        "by",
                                        "date",
                                        "remarks",
                                        "character",
                                        "occurrenceID",
                                        "rowCheck"};
  EXPECT_EQ(table[0], header);
  std::vector<std::string> const first{
      "Cabinet 1 / Shelf 1",
      "HLVN 0007",
      "Orla major",
      "holotype of Orla major",
      "look at underside of the claws (naked eye): red → Orla rubra; white → stands",
      "red | white",
      "red → Orla rubra | white → stands",
      "",
      "",
      "",
      "",
      "",
      "claw-underside",
      "",
      "RTFFZD"};
  EXPECT_EQ(table[1], first);
  EXPECT_EQ(table[2][1], "line 12");
  test::expect_golden("reports/worklist.csv", text);
}

TEST(TaxaCsv, HasARowForEveryTaxonWithBothRoutes) {
  auto const sample = make_sample();
  auto const text = taxa_csv(sample.old_edition, sample.new_edition, sample.collation);
  auto const table = parse(text);
  ASSERT_EQ(table.size(), 1 + sample.collation.taxa.size());
  std::vector<std::string> const want{"Pellucina nigra",
                                      "Nigrella nigra",
                                      "congruent",
                                      "synonymy",
                                      "other route | renamed",
                                      "1",
                                      "1",
                                      "1b 4b 5a",
                                      "1b 5b",
                                      "5a",
                                      "",
                                      "colour of the eyes",
                                      ""};
  EXPECT_EQ(table[5], want);
  EXPECT_EQ(table[1][2], "");  // a taxon that entered has no relation
  test::expect_golden("reports/taxa.csv", text);
}

TEST(CharactersCsv, HasARowForEveryChangeOfRoleExceptionNotesFirst) {
  auto const sample = make_sample();
  auto const text = characters_csv(sample.old_edition, sample.new_edition, sample.collation);
  auto const table = parse(text);
  ASSERT_EQ(table.size(), 1 + sample.collation.roles.size());
  std::vector<std::string> const want{"claw-hair",
                                      "hair of the claws",
                                      "became an exception note",
                                      "1a",
                                      "1a",
                                      "claws hairy",
                                      "claws hairy (except in Orla clausa)",
                                      "firm",
                                      "excepted",
                                      "Orla clausa",
                                      "",
                                      "",
                                      "Orla major | Orla minor | Orla clausa",
                                      "Orla rubra | Orla major | Orla clausa | Orla minor"};
  EXPECT_EQ(table[1], want);
  EXPECT_EQ(table[3][4], "");  // the new edition has no lead that answers to it
  test::expect_golden("reports/characters.csv", text);
}

}  // namespace
}  // namespace keydrift::reports
