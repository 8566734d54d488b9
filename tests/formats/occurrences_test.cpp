#include "keydrift/formats/occurrences.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>  // setenv

#include "finding_text.hpp"
#include "golden.hpp"
#include "gzip_text.hpp"
#include "keydrift/formats/darwin_core.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::gzip_text;
using test::one_line_each;
using Lines = std::vector<std::string>;

struct Archive {
  std::vector<Specimen> specimens;
  Lines rejects;
  Loaded<OccurrenceCounts> loaded;
  Lines findings;
};

Archive read_archive(std::string_view bytes, OccurrenceOptions const& options = {},
                     std::size_t chunk = 1000) {
  Archive archive;
  auto const stream = unpacked(stream_of(bytes, chunk), "s.csv");
  if (!stream) {
    archive.loaded.findings = stream.findings;
  } else {
    archive.loaded = read_occurrences(
        **stream.value, "s.csv", options,
        [&](Specimen const& specimen) { archive.specimens.push_back(specimen); },
        [&](Reject const& reject) {
          archive.rejects.push_back(std::to_string(reject.line) + ": " + std::string{reject.code} +
                                    ": " + std::string{reject.message} + ": " +
                                    std::string{reject.raw});
        });
  }
  archive.findings = one_line_each(archive.loaded.findings);
  return archive;
}

Lines observations_of(Specimen const& specimen) {
  Lines lines;
  for (auto const& observation : specimen.observations) {
    lines.push_back(observation.character + "=" + observation.value + "[" + observation.unit +
                    "]@" + std::to_string(observation.line) + ":" +
                    std::to_string(observation.column));
  }
  return lines;
}

TEST(Occurrences, TakesEveryColumnThatIsNoTermForACharacterWhenAsked) {
  constexpr auto kTable =
      "catalogNumber,scientificName,basisOfRecord,Leaf margin,spike length (mm)\n"
      "H 7,Aus bus,PreservedSpecimen,rough,12\n";
  EXPECT_TRUE(read_archive(kTable).specimens.at(0).observations.empty());
  auto const archive = read_archive(kTable, {.any_character = true});
  EXPECT_EQ(observations_of(archive.specimens.at(0)),
            (Lines{"Leaf margin=rough[]@2:4", "spike length=12[mm]@2:5"}));
  EXPECT_EQ(archive.findings,
            Lines{"s.csv:1:30: information: the column \"basisOfRecord\" was not used "
                  "[unused-columns] (to use one as a character, head it with the character's id or "
                  "label in the lexicon)"});
}

TEST(Occurrences, FillsEveryFieldOfASpecimen) {
  auto const archive = read_archive(
      "catalogNumber,occurrenceID,scientificName,scientificNameAuthorship,identificationQualifier,"
      "identifiedBy,dateIdentified,identificationReferences,typeStatus,sex,lifeStage,"
      "reproductiveCondition,locality,country,countryCode,stateProvince,county,municipality,island,"
      "waterBody,higherGeography,storageLocation,occurrenceRemarks,identificationRemarks,voucher\n"
      "H 7,urn:x:7,Aus bus,Roe,cf. bus,R. Roe | D. Doe,1998-05,\"Roe 1998, Key\",holotype of Aus "
      "bus,female,adult,fruiting,Mill Gate,Halvern,HV,North,Dun,Marsh,Long Isle,Great Pan,"
      "Basin | Outer Basin ||,Cabinet 3 / Shelf 2,loose fruit,with doubt,YES\n"
      "H 8,,,,,,,,,,,,,,,,,,,,,,,,no\n");
  EXPECT_EQ(archive.findings, Lines{"s.csv:3:1: information: 1 specimen has no name [no-name]"});
  ASSERT_EQ(archive.specimens.size(), 2U);
  auto const& first = archive.specimens[0];
  EXPECT_EQ(first.line, 2U);
  EXPECT_EQ(first.catalog_number, "H 7");
  EXPECT_EQ(first.occurrence_id, "urn:x:7");
  EXPECT_EQ(first.scientific_name, "Aus bus");
  EXPECT_EQ(first.authorship, "Roe");
  EXPECT_EQ(first.qualifier, "cf. bus");
  EXPECT_EQ(first.identified_by, "R. Roe | D. Doe");
  EXPECT_EQ(first.date_identified, "1998-05");
  EXPECT_EQ(first.identification_references, "Roe 1998, Key");
  EXPECT_EQ(first.type_status, "holotype of Aus bus");
  EXPECT_EQ(first.sex, "female");
  EXPECT_EQ(first.life_stage, "adult");
  EXPECT_EQ(first.reproductive_condition, "fruiting");
  EXPECT_EQ(first.places, (Lines{"Basin", "Outer Basin", "Great Pan", "Long Isle", "Halvern", "HV",
                                 "North", "Dun", "Marsh", "Mill Gate"}));
  EXPECT_EQ(first.storage, "Cabinet 3 / Shelf 2");
  EXPECT_EQ(first.remarks, "loose fruit; with doubt");
  EXPECT_TRUE(first.voucher);
  EXPECT_TRUE(first.observations.empty());
  // Nothing of the first row stays in the second.
  auto const& second = archive.specimens[1];
  EXPECT_EQ(second.line, 3U);
  EXPECT_EQ(second.catalog_number, "H 8");
  EXPECT_EQ(second.occurrence_id + second.scientific_name + second.authorship + second.qualifier +
                second.identified_by + second.date_identified + second.identification_references +
                second.type_status + second.sex + second.life_stage +
                second.reproductive_condition + second.storage + second.remarks,
            "");
  EXPECT_TRUE(second.places.empty());
  EXPECT_FALSE(second.voucher);
}

TEST(Occurrences, KnowsTermsByLocalNamePrefixIriAndOwnNames) {
  auto const archive = read_archive(
      "CATALOGNUMBER\thttp://rs.tdwg.org/dwc/terms/scientificName\tdwc:identifiedBy\t"
      "http://rs.tdwg.org/dwc/terms/version/dateIdentified-2023-06-28\tLocation Name\tFundort\n"
      "1\tAus\tRoe\t1999\tShelf 2\tMill\n",
      {.column_terms = {{"fundort", "locality"}}});
  EXPECT_EQ(archive.findings, Lines{});
  ASSERT_EQ(archive.specimens.size(), 1U);
  EXPECT_EQ(archive.specimens[0].catalog_number, "1");
  EXPECT_EQ(archive.specimens[0].scientific_name, "Aus");
  EXPECT_EQ(archive.specimens[0].identified_by, "Roe");
  EXPECT_EQ(archive.specimens[0].date_identified, "1999");
  EXPECT_EQ(archive.specimens[0].storage, "Shelf 2");
  EXPECT_EQ(archive.specimens[0].places, Lines{"Mill"});
}

TEST(Occurrences, TakesCharacterColumnsByIdLabelAndUnit) {
  auto const archive = read_archive(
      "catalogNumber,scientificName,Beak-Tip,Länge der Ähre (mm),Sex,habitat,beek-tip\n"
      "1,Aus,bifid | entire,4.5-6,male,fen,x\n"
      "2,Aus,,,,,\n"
      "3,Aus,,7,,,\n",
      {.characters = {"beak-tip", "tip of the beak", "spike", "länge der ähre", "sex"}});
  EXPECT_EQ(archive.findings,
            (Lines{"s.csv:1:71: warning: the column \"beek-tip\" is not a character of the lexicon "
                   "and was not used [unused-column] (did you mean \"beak-tip\"?)",
                   "s.csv:1:63: information: these columns were not used: \"habitat\" and "
                   "\"beek-tip\" [unused-columns] (to use one as a character, head it with the "
                   "character's id or label in the lexicon)"}));
  ASSERT_EQ(archive.specimens.size(), 3U);
  EXPECT_EQ(
      observations_of(archive.specimens[0]),
      (Lines{"Beak-Tip=bifid | entire[]@2:3", "Länge der Ähre=4.5-6[mm]@2:4", "Sex=male[]@2:5"}));
  EXPECT_EQ(archive.specimens[0].sex, "male");
  EXPECT_EQ(observations_of(archive.specimens[1]), Lines{});
  EXPECT_EQ(observations_of(archive.specimens[2]), (Lines{"Länge der Ähre=7[mm]@4:4"}));
}

TEST(Occurrences, ListsColumnsThatAreNotUsedOnce) {
  auto const archive =
      read_archive("scientificName,basisOfRecord,\nAus,PreservedSpecimen,\nBus,x,\n");
  EXPECT_EQ(archive.findings,
            Lines{"s.csv:1:16: information: the column \"basisOfRecord\" was not used "
                  "[unused-columns] (to use one as a character, head it with the character's id or "
                  "label in the lexicon)"});
}

TEST(Occurrences, NeedsAColumnForTheName) {
  auto archive = read_archive("catalogNumber,Scientific Nmae,\"country\"\n1,Aus,x\n");
  EXPECT_FALSE(archive.loaded);
  EXPECT_TRUE(archive.specimens.empty());
  EXPECT_EQ(
      archive.findings,
      Lines{"s.csv:1:1: error: no column holds the name of the specimens; the columns are "
            "\"catalogNumber\", \"Scientific Nmae\" and \"country\" [no-name-column] (did you "
            "mean \"scientificName\" by \"Scientific Nmae\"?)"});
  archive = read_archive("id;Art\n1;Aus\n");
  EXPECT_EQ(
      archive.findings,
      Lines{"s.csv:1:1: error: no column holds the name of the specimens; the columns are "
            "\"id\" and \"Art\" [no-name-column] (head the column that holds the current name "
            "\"scientificName\")"});
  EXPECT_TRUE(
      read_archive("id;Art\n1;Aus\n", {.column_terms = {{"Art", "scientificName"}}}).loaded);
}

TEST(Occurrences, GivesOutRowsWithoutANameAndRejectsThoseWithNothing) {
  auto const archive =
      read_archive("catalogNumber,scientificName,beak,habitat\n1,,,\n,,bifid,\n,,,fen\n",
                   {.characters = {"beak"}});
  ASSERT_EQ(archive.specimens.size(), 2U);
  EXPECT_EQ(archive.rejects,
            Lines{"4: nothing-usable: the row has neither a name nor a number nor a character: "
                  ",,,fen"});
  ASSERT_TRUE(archive.loaded);
  EXPECT_EQ(archive.loaded.value->rows, 3U);
  EXPECT_EQ(archive.loaded.value->specimens, 2U);
  EXPECT_EQ(archive.loaded.value->rejected, 1U);
  EXPECT_EQ(archive.loaded.value->without_name, 2U);
}

TEST(Occurrences, SetsBadRowsAsideAndReadsOn) {
  auto const archive = read_archive(
      "catalogNumber,scientificName\n1,Aus\n2,Bus,extra,cells\n3,\"Cus\n4,Dus\n5,\"Eus\nfus\"\n");
  ASSERT_EQ(archive.specimens.size(), 4U);
  EXPECT_EQ(archive.specimens[1].scientific_name, "\"Cus");
  EXPECT_EQ(archive.specimens[3].scientific_name, "Eus fus");
  EXPECT_EQ(archive.specimens[3].line, 6U);
  EXPECT_EQ(archive.rejects, Lines{"3: too-many-cells: the row has 4 cells where the header has 2: "
                                   "2,Bus,extra,cells"});
  EXPECT_EQ(archive.loaded.value->rows, 5U);
}

TEST(Occurrences, TakesDatabaseNullsForEmptyAndTrims) {
  auto const archive = read_archive(
      "catalogNumber,scientificName,country\n 1 ,  Aus bus ,NULL\n\\N,\"\u00A0Bus\",x\n");
  ASSERT_EQ(archive.specimens.size(), 2U);
  EXPECT_EQ(archive.specimens[0].catalog_number, "1");
  EXPECT_EQ(archive.specimens[0].scientific_name, "Aus bus");
  EXPECT_TRUE(archive.specimens[0].places.empty());
  EXPECT_EQ(archive.specimens[1].catalog_number, "");
  EXPECT_EQ(archive.specimens[1].scientific_name, "Bus");
}

TEST(Occurrences, ComposesLettersAndReadsOtherEncodings) {
  auto const archive = read_archive("scientificName,locality\nAus,Be\u0301ta\nBus,M\xFChle\n");
  EXPECT_EQ(archive.specimens[0].places, Lines{"Béta"});
  EXPECT_EQ(archive.specimens[1].places, Lines{"Mühle"});
  EXPECT_EQ(archive.findings,
            Lines{"s.csv:3:1: information: 1 cell is not UTF-8 and was read as Windows-1252 "
                  "[encoding] (save the table as UTF-8 if any character looks wrong)"});
  EXPECT_EQ(read_archive("\xFF\xFEs\0"
                         "c\0i\0"
                         "e\0n\0t\0i\0"
                         "f\0i\0"
                         "c\0N\0"
                         "a\0m\0"
                         "e\0\n\0\xC4\0\n\0"sv)
                .specimens.at(0)
                .scientific_name,
            "Ä");
}

TEST(Occurrences, ReadsGzip) {
  auto const archive = read_archive(gzip_text("catalogNumber,scientificName\n1,Aus\n"));
  ASSERT_EQ(archive.specimens.size(), 1U);
  auto packed = gzip_text("catalogNumber,scientificName\n1,Aus\n2,Bus\n");
  packed.resize(packed.size() - 4);
  auto const cut = read_archive(packed);
  EXPECT_FALSE(cut.loaded);
  EXPECT_EQ(cut.findings, Lines{"s.csv:1:1: error: the gzip file cannot be unpacked: it ends too "
                                "early [damaged-gzip] (copy or download the file again, and try to "
                                "unpack it by itself)"});
}

TEST(Occurrences, ReportsNumbersThatOccurTwiceInOneCollection) {
  auto const archive = read_archive(
      "institutionCode,collectionCode,catalogNumber,occurrenceID,scientificName\n"
      "H,V,1,,Aus\nH,W,1,,Aus\nH,V,1,,Bus\nH,V,,o1,Bus\nH,V,,o1,Bus\nH,V,,,Bus\nH,V,,,Bus\n");
  EXPECT_EQ(archive.specimens.size(), 7U);
  EXPECT_EQ(archive.loaded.value->repeated_numbers, 2U);
  EXPECT_EQ(archive.findings,
            (Lines{"s.csv:4:1: information: \"1\" stands in line 2 already; both rows are used "
                   "[repeated-number] (check whether it is one specimen)",
                   "s.csv:6:1: information: \"o1\" stands in line 5 already; both rows are used "
                   "[repeated-number] (check whether it is one specimen)"}));
}

TEST(Occurrences, BoundsWhatItRemembersAndSays) {
  std::string text = "catalogNumber,scientificName\n";
  for (int i = 0; i < 100; ++i) text += std::to_string(i % 50) + ",Aus\n";
  auto const all = read_archive(text);
  EXPECT_EQ(all.loaded.value->repeated_numbers, 50U);
  ASSERT_EQ(all.findings.size(), 21U);
  EXPECT_EQ(all.findings.back(),
            "s.csv:1:1: information: 30 further rows repeat a number [repeated-number]");
  // Where memory holds but a few numbers, or none, the others are sorted: the same is found.
  for (auto const remembered : {0U, 1U, 10U, 49U}) {
    auto const few = read_archive(text, {.numbers_remembered = remembered});
    EXPECT_EQ(few.loaded.value->repeated_numbers, 50U);
    EXPECT_EQ(few.findings, all.findings);
  }
}

TEST(Occurrences, FindsRepeatsThatMemoryDoesNotHoldByWayOfTheDisk) {
  // More than the sort has memory for; the last rows repeat numbers from all over the table.
  constexpr int kRows = 150'000;
  std::string text = "catalogNumber,scientificName\n";
  for (int i = 0; i < kRows; ++i) text += "number-" + std::to_string(i) + ",Aus\n";
  for (int i = 0; i < 30; ++i) text += "number-" + std::to_string((29 - i) * 5'000) + ",Aus\n";
  text += "number-0,Aus\n";
  auto const all = read_archive(text);
  ASSERT_EQ(all.findings.size(), 21U);
  EXPECT_EQ(all.findings[0],
            "s.csv:150002:1: information: \"number-145000\" stands in line 145002 already; both "
            "rows are used [repeated-number] (check whether it is one specimen)");
  EXPECT_EQ(all.findings[19],
            "s.csv:150021:1: information: \"number-50000\" stands in line 50002 already; both "
            "rows are used [repeated-number] (check whether it is one specimen)");
  EXPECT_EQ(all.findings[20],
            "s.csv:1:1: information: 11 further rows repeat a number [repeated-number]");
  auto const sorted = read_archive(text, {.numbers_remembered = 1'000});
  EXPECT_EQ(sorted.findings, all.findings);
  EXPECT_EQ(sorted.loaded.value->repeated_numbers, 31U);
}

TEST(Occurrences, FailsWhereRepeatsCannotBeLookedFor) {
  constexpr int kRows = 150'000;
  std::string text = "catalogNumber,scientificName\n";
  for (int i = 0; i < kRows; ++i) text += "number-" + std::to_string(i) + ",Aus\n";
  char const* const before = std::getenv("TMPDIR");
  std::string const kept = before == nullptr ? "" : before;
  ::setenv("TMPDIR", "/nowhere/at/all", 1);
  auto const archive = read_archive(text, {.numbers_remembered = 1'000});
  before == nullptr ? ::unsetenv("TMPDIR") : ::setenv("TMPDIR", kept.c_str(), 1);
  EXPECT_FALSE(archive.loaded);
  ASSERT_EQ(archive.findings.size(), 1U);
  EXPECT_EQ(
      archive.findings[0],
      "/nowhere/at/all:0:1: error: a temporary file cannot be made: No such file or directory "
      "[temporary-file] (make room on the disk, or say where there is some by TMPDIR)");
}

TEST(Occurrences, WarnsOfColumnsThatMeanTheSameAndOfUnclearVouchers) {
  auto const archive = read_archive(
      "scientificName,voucher,dwc:scientificName\nAus,maybe,Bus\nAus,x,Bus\nAus,?,Bus\n");
  EXPECT_EQ(archive.findings,
            (Lines{"s.csv:1:24: warning: the column \"dwc:scientificName\" means the same as "
                   "\"scientificName\", which is used [duplicate-column] (remove or rename one of "
                   "the two)",
                   "s.csv:2:1: warning: \"maybe\" does not say whether this is a voucher, nor do 1 "
                   "further cells [unclear-voucher] (write true or false)"}));
  EXPECT_FALSE(archive.specimens[0].voucher);
  EXPECT_TRUE(archive.specimens[1].voucher);
  EXPECT_TRUE(
      read_archive("scientificName\nAus\n", {.all_are_vouchers = true}).specimens[0].voucher);
}

TEST(Occurrences, SaysWhatIsWrongWithAFileThatIsNoTable) {
  EXPECT_EQ(read_archive("").findings,
            Lines{"s.csv:1:1: error: the file is empty [empty-file] (check that "
                  "this is the right file and that it was saved)"});
  EXPECT_EQ(read_archive(" \n\n").findings,
            Lines{"s.csv:1:1: error: the file holds nothing but blanks [empty-file] (check that "
                  "this is the right file and that it was saved)"});
  EXPECT_EQ(read_archive("scientificName\n").findings,
            Lines{"s.csv:1:1: warning: the table has a header but no rows [no-specimens] (check "
                  "that this is the right file)"});
  EXPECT_EQ(read_archive("\x01\x02\xFE junk \x7F").findings,
            Lines{"s.csv:1:1: error: no column holds the name of the specimens; the columns are "
                  "\"þ junk\" [no-name-column] (head the column that holds the current name "
                  "\"scientificName\")"});
  EXPECT_EQ(read_archive("scientificName,\0\nAus\n"sv).findings,
            Lines{"s.csv:1:1: error: this is a binary file (it holds NUL bytes), not a table of "
                  "text [binary-file] (check that this is the right file)"});
  EXPECT_EQ(
      read_archive(std::string(2'000'000, 'x')).findings,
      Lines{"s.csv:1:1: error: the header cannot be read: the row is longer than the limit of "
            "1048576 bytes [row-too-long] (check that this is a table with the names of its "
            "columns in the first row)"});
}

TEST(Occurrences, ReadTheSheetsOfTheScenario) {
  auto const folder = std::string{KEYDRIFT_SOURCE_DIR} + "/fixtures/velunaceae/";
  auto const sheets =
      read_archive(test::slurp(folder + "sheets.csv"), {.characters = {"spike-length"}});
  ASSERT_TRUE(sheets.loaded);
  EXPECT_EQ(sheets.rejects, Lines{});
  EXPECT_GT(sheets.specimens.size(), 1700U);
  EXPECT_EQ(sheets.loaded.value->rows, sheets.specimens.size());
  for (auto const& specimen : sheets.specimens) EXPECT_FALSE(specimen.catalog_number.empty());
}

TEST(Occurrences, GiveTheSameHoweverTheBytesAreCut) {
  auto const text =
      "catalogNumber,scientificName,beak\r\n1,\"Aus \"\"b\"\"\",é\r\n2,Bus,\"x\r\ny\"\r\n"sv;
  auto const whole = read_archive(text, {.characters = {"beak"}});
  for (std::size_t chunk = 1; chunk < 40; ++chunk) {
    auto const cut = read_archive(text, {.characters = {"beak"}}, chunk);
    ASSERT_EQ(cut.specimens.size(), 2U);
    for (std::size_t i = 0; i < 2; ++i) {
      EXPECT_EQ(cut.specimens[i].scientific_name, whole.specimens[i].scientific_name);
      EXPECT_EQ(cut.specimens[i].observations, whole.specimens[i].observations);
    }
  }
}

TEST(Occurrences, NeverYieldCountsTogetherWithAnError) {
  auto const read_loaded = [](std::string_view bytes) {
    auto archive = read_archive(bytes, {.characters = {"beak"}}, 3);
    if (archive.loaded) {
      EXPECT_EQ(archive.loaded.value->rows,
                archive.loaded.value->specimens + archive.loaded.value->rejected);
      EXPECT_EQ(archive.loaded.value->specimens, archive.specimens.size());
      EXPECT_EQ(archive.loaded.value->rejected, archive.rejects.size());
    }
    return std::move(archive.loaded);
  };
  auto const text =
      "scientificName,beak,higherGeography,voucher\r\n\"Aus \"\"b\",é,a | b,x\nB,\"\n\",,no\n"sv;
  test::read_damaged(text, read_loaded);
  test::read_damaged(gzip_text(text), read_loaded);
}

TEST(TermKey, StripsPrefixesAndNamespaces) {
  EXPECT_EQ(tables::term_key(" scientificName "), "scientificname");
  EXPECT_EQ(tables::term_key("http://rs.tdwg.org/ltc/terms/locationName"), "locationname");
  EXPECT_EQ(tables::term_key("https://example.org/x#sex"), "sex");
  EXPECT_EQ(tables::term_key("scientificName-2023-06-28"), "scientificname20230628");
  EXPECT_EQ(tables::term_key("dwciri:identifiedBy"), "identifiedby");
}

}  // namespace
}  // namespace keydrift
