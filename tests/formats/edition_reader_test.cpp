#include "keydrift/formats/edition_reader.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "golden.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::one_line_each;
using Lines = std::vector<std::string>;

constexpr std::string_view kPrinted =
    "1. Beak bifid ..... 2\n– Beak entire ..... Cus cus\n"
    "2. Scales dark ..... Aus bus\n– Scales pale ..... Aus dus\n";

Loaded<Edition> read_any(std::string_view bytes) {
  auto reading = read_edition({.name = "k", .bytes = bytes});
  Loaded<Edition> loaded;
  loaded.findings = std::move(reading.findings);
  if (reading) loaded.value = std::move(reading.value->edition);
  return loaded;
}

std::string utf_16(std::string_view ascii) {
  std::string out = "\xFF\xFE";
  for (char const c : ascii) {
    out += c;
    out += '\0';
  }
  return out;
}

TEST(EditionReader, ReadsPrintedTextAndJsonAlike) {
  auto const printed = read_any(kPrinted);
  ASSERT_TRUE(printed) << one_line_each(printed.findings).front();
  ASSERT_EQ(printed.value->couplets.size(), 2U);
  auto const text = write_key_json(*printed.value);
  for (auto const& json : {text, "\xEF\xBB\xBF \n" + text}) {
    auto const loaded = read_any(json);
    ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
    EXPECT_TRUE(same_content(*loaded.value, *printed.value));
    EXPECT_EQ(write_key_json(*loaded.value), text);
  }
}

std::string sketch_of_table(std::string_view bytes) {
  auto const loaded = read_any(bytes);
  if (!loaded) return one_line_each(loaded.findings).front();
  std::string sketch;
  for (auto const& couplet : loaded.value->couplets) {
    for (auto const& lead : couplet.leads) {
      sketch += couplet.label + " " + lead.text + " -> " + lead.destination_printed + "\n";
    }
  }
  return sketch;
}

// A sheet of a spreadsheet program, saved with commas or, in half of Europe, with semicolons.
TEST(EditionReader, ReadsASheetSavedAsCsv) {
  constexpr std::string_view kSays =
      "1 Wings clear, long; legs black -> 2\n"
      "1 Wings dark (\"smoky\") -> Aus dus Brast, 1911\n"
      "2 Scutellum flat -> Aus bus\n"
      "2 Scutellum raised; pitted -> Aus cus\n";
  EXPECT_EQ(sketch_of_table("1,\"Wings clear, long; legs black\",2\n"
                            "–,\"Wings dark (\"\"smoky\"\")\",\"Aus dus Brast, 1911\"\n"
                            "2,Scutellum flat,Aus bus\n"
                            "–,Scutellum raised; pitted,Aus cus\n"),
            kSays);
  EXPECT_EQ(sketch_of_table("\xEF\xBB\xBF"
                            "1;\"Wings clear, long; legs black\";2\r\n"
                            "–;\"Wings dark (\"\"smoky\"\")\";Aus dus Brast, 1911\r\n"
                            "2;Scutellum flat;Aus bus\r\n"
                            "–;\"Scutellum raised; pitted\";Aus cus\r\n"),
            kSays);
  EXPECT_EQ(sketch_of_table("1a,\"Wings clear, long; legs black\",2\n"
                            "1b,\"Wings dark (\"\"smoky\"\")\",\"Aus dus Brast, 1911\"\n"
                            "2a,Scutellum flat,Aus bus\n"
                            "2b,Scutellum raised; pitted,Aus cus\n"),
            kSays);
  // Names of columns above, empty rows between.
  EXPECT_EQ(sketch_of_table("No.,Lead,To\n"
                            "1,\"Wings clear, long; legs black\",2\n"
                            "–,\"Wings dark (\"\"smoky\"\")\",\"Aus dus Brast, 1911\"\n"
                            ",,\n"
                            "2,Scutellum flat,Aus bus\n"
                            "–,Scutellum raised; pitted,Aus cus\n"),
            kSays);
}

TEST(EditionReader, PlacesWhatItFindsInASheetWhereItStands) {
  auto const loaded = read_any(
      "1,\"Wings clear, long\",2\n–,Wings dark,Aus dus\n"
      "2,Scutellum flat,Aus bus\n–,Scutellum raised,Aus cus\n");
  ASSERT_TRUE(loaded);
  auto const& lead = loaded.value->couplets[1].leads[1];
  EXPECT_EQ(lead.place.line, 4U);
  EXPECT_EQ(lead.destination_place.column, 20U);
}

// A quote that a cell says is doubled, and a separator may stand behind it; a cell may have lines.
TEST(EditionReader, CellsMayHaveQuotesSeparatorsAndLines) {
  constexpr std::string_view kSheet =
      "1;\"Wings clear,\nwith dark veins\";2\n"
      "1;\"Wings \"\"smoky\"\"; dark\";Aus bus\n"
      "2;Legs red;Aus cus\n"
      "2;\"Legs \"\"black\"\"; hairy\";Aus dus\n";
  EXPECT_EQ(sketch_of_table(kSheet),
            "1 Wings clear, with dark veins -> 2\n"
            "1 Wings \"smoky\"; dark -> Aus bus\n"
            "2 Legs red -> Aus cus\n"
            "2 Legs \"black\"; hairy -> Aus dus\n");
  auto const loaded = read_any(kSheet);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->couplets[1].leads[1].place.line, 5U);
}

TEST(EditionReader, TakesNoKeyForASheetThatOnlyHasCommas) {
  constexpr std::string_view kKey =
      "1, Leaves flat, hairy, long ..... 2\n–, Leaves round, smooth ..... Aus bus\n"
      "2, Stem red, hollow ..... Aus cus\n–, Stem green, solid ..... Aus dus\n";
  auto const loaded = read_any(kKey);
  if (!loaded) return;
  for (auto const& couplet : loaded.value->couplets) {
    for (auto const& lead : couplet.leads) EXPECT_EQ(lead.text.find('\t'), std::string::npos);
  }
  EXPECT_EQ(loaded.value->couplets[0].leads[0].text, "Leaves flat, hairy, long");
}

TEST(EditionReader, SaysWhatIsMissingOfAListCalledJson) {
  EXPECT_EQ(one_line_each(read_edition({.name = "k.json", .bytes = "[1,2]\n"}).findings),
            Lines{"k.json:1:1: error: the JSON is a list, not an object that says \"keydrift\": 1 "
                  "[no-version] (check that this is the right file)"});
}

TEST(EditionReader, RecognisesJsonInUtf16) {
  auto const json =
      R"({"keydrift": 1, "couplets": [{"label": "1", "leads": [{"text": "a"}, {"text": "b"}]}]})";
  auto const loaded = read_any(utf_16(json));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->couplets[0].leads[1].text, "b");
  EXPECT_TRUE(read_any(utf_16("1. Beak bifid ..... Aus\n1. Beak entire ..... Bus\n")));
}

TEST(EditionReader, RefusesWhatItCannotReadAndSaysWhatToDo) {
  struct Case {
    std::string_view bytes;
    std::string what;
    std::string remedy;
  };
  std::vector<Case> const cases{
      {"PK\x03\x04...."sv, "a zip file", "unpack it and load the file inside"},
      {"PK\x03\x04....meta.xml"sv, "a zip file with a meta.xml (a Darwin Core archive)",
       "unpack it and load the occurrence table inside"},
      {"%PDF-1.7", "a PDF", "copy its text into a plain text file (UTF-8) and load that file"},
      {"\x1F\x8B\x08", "a gzip-compressed file", "unpack it and load the file inside"},
      {"\xD0\xCF\x11\xE0", "an old word-processor or spreadsheet file (.doc, .xls)",
       "open it in the program that made it, save it as plain text (UTF-8) and load that file"},
      {"{\\rtf1 1. Beak", "a rich-text file (.rtf)",
       "open it in the program that made it, save it as plain text (UTF-8) and load that file"},
      {"\x89PNG....", "a picture",
       "have its text recognised, check it, and load it as plain text (UTF-8)"},
      {"BZh9", "a compressed file", "unpack it and load the file inside"},
      {"SQLite format 3\0"sv, "a database file",
       "export the table as CSV (UTF-8) and load that file"},
      {"\x7F"
       "ELF\0\0\1\2"sv,
       "a binary file (it holds NUL bytes)", "check that this is the right file"},
  };
  for (auto const& wanted : cases) {
    auto const loaded = read_any(wanted.bytes);
    EXPECT_FALSE(loaded) << wanted.what;
    EXPECT_EQ(
        one_line_each(loaded.findings),
        Lines{"k:1:1: error: this is " + wanted.what +
              ", which is no form of key that is read [unsupported-file] (" + wanted.remedy + ")"});
  }
}

TEST(EditionReader, TellsWhereANulStandsInText) {
  auto const loaded = read_any("1. Beak bifid ..... Aus bus\n– Be\0k entire ..... Aus c\0s\n"sv);
  EXPECT_FALSE(loaded);
  EXPECT_EQ(one_line_each(loaded.findings),
            Lines{"k:2:5: error: a NUL byte stands here, and text holds none; it has 1 further one "
                  "[unsupported-file] (take it out and compare the word with the original)"});
}

TEST(EditionReader, TellsWhereUtf16BeginsWithinOtherText) {
  std::string text{"1. Beak bifid ..... Aus bus\n"};
  for (char const c : std::string_view{"2. Beak entire ..... Aus cus\n"}) {
    text += c;
    text += '\0';
  }
  auto const loaded = read_any(text);
  EXPECT_FALSE(loaded);
  EXPECT_EQ(
      one_line_each(loaded.findings),
      Lines{"k:2:2: error: two encodings are mixed in this file: from line 2 on it is UTF-16, "
            "which the lines before are not [unsupported-file] (save both parts as UTF-8 and "
            "put them together anew)"});
}

TEST(EditionReader, RefusesAnEmptyFile) {
  auto const loaded = read_any("");
  EXPECT_FALSE(loaded);
  EXPECT_EQ(one_line_each(loaded.findings),
            Lines{"k:1:1: error: the file is empty [empty-file] (check that this is the right file "
                  "and that it was saved)"});
}

TEST(EditionReader, TakesTheEditionsOfTheScenarioThroughJson) {
  for (auto const* year : {"1974", "1998", "2024"}) {
    auto const text = test::slurp(std::string{KEYDRIFT_SOURCE_DIR} +
                                  "/fixtures/velunaceae/edition-" + year + ".txt");
    auto const printed = read_any(text);
    ASSERT_TRUE(printed);
    auto const json = write_key_json(*printed.value);
    auto const loaded = read_any(json);
    ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
    EXPECT_EQ(one_line_each(loaded.findings), Lines{});
    EXPECT_TRUE(same_content(*loaded.value, *printed.value));
    EXPECT_EQ(write_key_json(*loaded.value), json);
  }
}

TEST(EditionReader, KeepsTheStatementsOfTheScenarioInJson) {
  auto const folder = std::string{KEYDRIFT_SOURCE_DIR} + "/fixtures/velunaceae/";
  auto edition = read_any(test::slurp(folder + "edition-2024.txt")).value;
  auto const words = test::slurp(folder + "lexicon.csv");
  auto const lexicon = read_lexicon({.name = "lexicon.csv", .bytes = words});
  ASSERT_TRUE(edition && lexicon);
  read_statements(*edition, *lexicon.value);
  auto const json = write_key_json(*edition);
  auto const loaded = read_any(json);
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  EXPECT_EQ(write_key_json(*loaded.value), json);
  std::size_t by_lexicon = 0;
  for (std::size_t i = 0; i < edition->couplets.size(); ++i) {
    for (std::size_t j = 0; j < edition->couplets[i].leads.size(); ++j) {
      auto const& wanted = edition->couplets[i].leads[j].statements;
      auto const& got = loaded.value->couplets[i].leads[j].statements;
      ASSERT_EQ(got.size(), wanted.size());
      for (std::size_t k = 0; k < wanted.size(); ++k) {
        EXPECT_EQ(got[k].any_of, wanted[k].any_of);
        EXPECT_EQ(got[k].strength, wanted[k].strength);
        EXPECT_EQ(got[k].except, wanted[k].except);
        EXPECT_EQ(got[k].place, wanted[k].place);
        if (wanted[k].origin == Origin::lexicon) ++by_lexicon;
      }
    }
  }
  EXPECT_GT(by_lexicon, 50U);
}

TEST(EditionReader, NeverYieldsAnEditionTogetherWithAnError) {
  test::read_damaged(kPrinted, read_any);
}

}  // namespace
}  // namespace keydrift
