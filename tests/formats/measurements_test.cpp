#include "keydrift/formats/measurements.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "golden.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

struct Rows {
  Loaded<MeasurementTable> loaded;
  Lines rejects;
  Lines findings;
};

Rows read_rows(std::string_view text, MeasurementOptions const& options = {}) {
  Rows rows;
  auto const stream = stream_of(text, 100);
  rows.loaded = read_measurements(*stream, "m.csv", options, [&](Reject const& reject) {
    rows.rejects.push_back(std::to_string(reject.line) + ": " + std::string{reject.code} + ": " +
                           std::string{reject.message} + ": " + std::string{reject.raw});
  });
  rows.findings = one_line_each(rows.loaded.findings);
  return rows;
}

Lines observed_of(MeasurementTable& table, std::string const& occurrence,
                  std::string const& number) {
  Specimen specimen;
  specimen.occurrence_id = occurrence;
  specimen.catalog_number = number;
  table.add_to(specimen);
  Lines lines;
  for (auto const& observation : specimen.observations) {
    lines.push_back(observation.character + "=" + observation.value + "[" + observation.unit +
                    "]@" + std::to_string(observation.line) + ":" +
                    std::to_string(observation.column));
  }
  if (!specimen.storage.empty()) lines.push_back("in " + specimen.storage);
  return lines;
}

TEST(Measurements, JoinsRowsByOccurrenceIdAndCatalogueNumber) {
  auto rows = read_rows(
      "occurrenceID,catalogNumber,measurementType,measurementValue,measurementUnit\n"
      "o1,,spike length,19,mm\n,H 1,beak,bifid,\no1,,beak,,\no2,H 1,beak,entire,\n"
      "o1,,storage location,Drawer 3,\no1,,storageLocation,Drawer 4,\n");
  ASSERT_TRUE(rows.loaded);
  EXPECT_EQ(rows.findings, Lines{});
  EXPECT_EQ(rows.loaded.value->row_count(), 6U);
  EXPECT_EQ(observed_of(*rows.loaded.value, "o1", "H 1"),
            (Lines{"spike length=19[mm]@2:0", "beak=bifid[]@3:0", "in Drawer 3"}));
  EXPECT_EQ(one_line_each(rows.loaded.value->findings_on_unused()),
            Lines{"m.csv:5:1: warning: no specimen is called \"o2\"; its row was not used "
                  "[unknown-id] (check the id against the table of specimens)"});
  EXPECT_EQ(observed_of(*rows.loaded.value, "o2", ""), (Lines{"beak=entire[]@5:0"}));
  EXPECT_EQ(observed_of(*rows.loaded.value, "", ""), Lines{});
  EXPECT_TRUE(rows.loaded.value->findings_on_unused().empty());
}

TEST(Measurements, KeepsTheStorageThatTheTableOfSpecimensGives) {
  auto rows =
      read_rows("catalogNumber,measurementType,measurementValue\n1,location name,Drawer 3\n");
  Specimen specimen;
  specimen.catalog_number = "1";
  specimen.storage = "Cabinet 1";
  rows.loaded.value->add_to(specimen);
  EXPECT_EQ(specimen.storage, "Cabinet 1");
}

TEST(Measurements, ListsTypesThatAreNoCharactersOnce) {
  auto rows = read_rows(
      "catalogNumber,measurementType,measurementValue\n"
      "1,Beak (mm),3\n1,beek,4\n1,weight,5\n1,weight,6\n1,storage location,x\n",
      {.characters = {"beak"}});
  EXPECT_EQ(rows.findings,
            Lines{"m.csv:1:1: information: these types are not characters of the lexicon and were "
                  "not used: \"beek\" and \"weight\" [unknown-type] (did you mean \"beak\" "
                  "by \"beek\"?)"});
  EXPECT_EQ(observed_of(*rows.loaded.value, "", "1"), (Lines{"Beak=3[mm]@2:0", "in x"}));
}

TEST(Measurements, SetsRowsWithoutIdOrTypeAside) {
  auto const rows = read_rows(
      "catalogNumber,measurementType,measurementValue\n,beak,x\n1,,x\n1,beak,x,y\n1,beak,z\n");
  EXPECT_EQ(rows.rejects,
            (Lines{"2: no-id: the row names no specimen: ,beak,x",
                   "3: no-type: the row does not say what was measured: 1,,x",
                   "4: too-many-cells: the row has 4 cells where the header has 3: 1,beak,x,y"}));
  EXPECT_EQ(rows.loaded.value->row_count(), 1U);
}

TEST(Measurements, SaysWhichColumnsAreMissing) {
  EXPECT_EQ(read_rows("id,type,measurementValue\n1,beak,x\n").findings,
            Lines{"m.csv:1:1: error: the first row has no column \"occurrenceID\" and "
                  "\"measurementType\"; it has \"id\", \"type\" and \"measurementValue\" "
                  "[missing-column] (measurement rows want the columns \"occurrenceID\" or "
                  "\"catalogNumber\", \"measurementType\" and \"measurementValue\", and may have "
                  "\"measurementUnit\")"});
  EXPECT_EQ(read_rows("\n").findings,
            Lines{"m.csv:1:1: error: the file has no header row [empty-file] (check that this is "
                  "the right file and that it was saved)"});
}

TEST(Measurements, ListsAtMostTwentyUnknownIds) {
  std::string text = "catalogNumber,measurementType,measurementValue\n";
  for (int i = 0; i < 25; ++i) text += "n" + std::to_string(i) + ",beak,x\n";
  text += "n0,beak,y\n";
  auto const findings = one_line_each(read_rows(text).loaded.value->findings_on_unused());
  ASSERT_EQ(findings.size(), 20U);
  EXPECT_EQ(findings.front(),
            "m.csv:2:1: warning: no specimen is called \"n0\"; its 2 rows were not used "
            "[unknown-id] (check the id against the table of specimens)");
  EXPECT_EQ(findings.back(),
            "m.csv:21:1: warning: no specimen is called \"n19\"; its row was not used, nor were "
            "those of 5 further ids [unknown-id] (check the id against the table of specimens)");
}

TEST(Measurements, AreJoinedWhileOccurrencesAreRead) {
  auto rows = read_rows(
      "catalogNumber,measurementType,measurementValue\n2,beak,x\n2,storage location,D\n"
      "9,beak,x\n");
  auto const stream = stream_of("catalogNumber,scientificName,beak\n1,Aus,a\n2,Bus,b\n3,Cus,\n");
  Lines seen;
  auto const loaded = read_occurrences(
      *stream, "s.csv", {.characters = {"beak"}, .measurements = &*rows.loaded.value},
      [&](Specimen const& specimen) {
        std::string line = specimen.catalog_number + specimen.storage + ":";
        for (auto const& observation : specimen.observations) line += " " + observation.value;
        seen.push_back(line);
      },
      {});
  EXPECT_EQ(seen, (Lines{"1: a", "2D: b x", "3:"}));
  EXPECT_EQ(one_line_each(loaded.findings),
            Lines{"m.csv:4:1: warning: no specimen is called \"9\"; its row was not used "
                  "[unknown-id] (check the id against the table of specimens)"});
}

TEST(Measurements, ReadTheRowsOfTheScenario) {
  auto const text =
      test::slurp(std::string{KEYDRIFT_SOURCE_DIR} + "/fixtures/velunaceae/measurements.csv");
  auto const rows = read_rows(text);
  ASSERT_TRUE(rows.loaded);
  EXPECT_EQ(rows.rejects, Lines{});
  EXPECT_GT(rows.loaded.value->row_count(), 5U);
}

TEST(Measurements, NeverYieldATableTogetherWithAnError) {
  test::read_damaged(
      "occurrenceID,measurementType,measurementValue,measurementUnit\no1,\"be\"\"ak\",x,mm\n"
      "o2,storage location,é,\n",
      [](std::string_view bytes) {
        return std::move(read_rows(bytes, {.characters = {"a"}}).loaded);
      });
}

}  // namespace
}  // namespace keydrift
