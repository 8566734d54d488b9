// Tables read in blocks give what they give row by row, however they are cut.

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

#include "table_lines.hpp"

namespace keydrift {
namespace {

// Rows of three cells, mostly; with everything that tables have in them.
std::string made_table(unsigned seed) {
  std::mt19937 random{seed};
  auto const below = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  std::vector<std::string> const ordinary{"a", "bus", "x y",         "\"q\"",        "\"a, b\"",
                                          "",  "12",  "Aus bus Orm", "\"two words\""};
  std::vector<std::string> const odd{"\"say \"\"no\"\"\"",
                                     "\"two\nlines\"",
                                     " \"z\" ",
                                     "o\"p",
                                     "\"never closed",
                                     std::string{"n\0l", 3},
                                     "\"w\" x",
                                     "\"\"",
                                     std::string(70, 'l'),
                                     "\r",
                                     " "};
  bool const unruly = below(3) != 0;
  std::string text = "one,two,three\n";
  auto const rows = 5 + below(60);
  for (unsigned i = 0; i < rows; ++i) {
    auto const cells = unruly && below(12) == 0 ? 1 + below(5) : 3;
    for (unsigned c = 0; c < cells; ++c) {
      if (c > 0) text += ',';
      bool const strange = unruly && below(10) == 0;
      text += strange ? odd[below(static_cast<unsigned>(odd.size()))]
                      : ordinary[below(static_cast<unsigned>(ordinary.size()))];
    }
    if (unruly && below(15) == 0) text += ",,";
    text += below(4) == 0 ? "\r\n" : unruly && below(20) == 0 ? "\r" : "\n";
    if (unruly && below(15) == 0) text += below(2) == 0 ? "\n" : ",,\n";
  }
  if (below(2) == 0) text += "last,row,open";
  return text;
}

TEST(CsvBlocks, GiveTheRowsAndRejectsOfTheReader) {
  for (unsigned seed = 1; seed <= 400; ++seed) {
    auto const text = made_table(seed);
    for (char const quote : {'"', '\0'}) {
      CsvOptions const options{.separator = ',', .quote = quote, .maximum_row_bytes = 60};
      auto const whole = test::rows_one_by_one(text, options, 7);
      for (auto const& [block, chunk] :
           {std::pair<std::size_t, std::size_t>{1, 5}, {64, 200}, {200, 64}, {100'000, 100'000}}) {
        auto cut = options;
        cut.block_bytes = std::max<std::size_t>(chunk, 16);
        ASSERT_EQ(test::rows_in_blocks(text, cut, chunk, block), whole)
            << "seed " << seed << ", blocks of " << block << ", chunks of " << chunk;
      }
    }
  }
}

std::string made_archive(unsigned seed, unsigned rows, bool many_words) {
  std::mt19937 random{seed};
  auto const below = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  std::string text =
      "catalogNumber,occurrenceID,institutionCode,scientificName,identificationQualifier,"
      "identifiedBy,dateIdentified,identificationReferences,typeStatus,sex,lifeStage,"
      "storageLocation,occurrenceRemarks,country,higherGeography,voucher,margin,spike length (mm)"
      "\n";
  auto const pick = [&](std::initializer_list<char const*> words) {
    return std::string{*(words.begin() + below(static_cast<unsigned>(words.size())))};
  };
  for (unsigned i = 0; i < rows; ++i) {
    text += pick({"", "A 1", "A 2", " B 3 "}) + (below(3) == 0 ? "" : std::to_string(below(999)));
    text += "," + pick({"", "", "urn:x:1", "urn:x:2"}) + "," + pick({"", "HLV", "ORM"}) + ",";
    text += many_words ? "Aus b" + std::to_string(i) + "us"
                       : pick({"Aus bus", "  Aus cus ", "", "NULL", "\\N", "Aus d\xC3\xBCs",
                               "Aus d\x75\xCC\x88s", "Aus d\xFCs", "Aus  extremely-long-epithetus",
                               "\"Aus, \"\"bus\"\"\""});
    text += "," + pick({"", "", "cf.", "aff."}) + "," + pick({"Orm", "Tal", "\"Orm, A.\""});
    text += "," + pick({"1998", "1998-05-01", ""}) + "," + pick({"", "Orm 1998"});
    text += "," + pick({"", "", "", "holotype of Aus bus"}) + "," + pick({"male", "female", ""});
    text += "," + pick({"adult", ""}) + ",Cabinet " + std::to_string(below(many_words ? 9999 : 9));
    text += "," + pick({"", "seen", "se\xE9n"}) + "," + pick({"Halvern", ""});
    text += "," + pick({"", "Halvern | Orm | Tal", " | "});
    text += "," + pick({"", "", "no", "yes", "x", "perhaps"}) + ",";
    text += pick({"scabrid", "smooth", "scabrid or smooth", "", "se\nx"}).substr(0, 17);
    text += "," + (below(2) == 0 ? "" : std::to_string(below(many_words ? 100'000 : 30)));
    text += below(30) == 0 ? ",,,,too many\n" : "\n";
    if (below(40) == 0) text += ",,,,,,,,,,,,x\n";
  }
  return text;
}

constexpr std::size_t kChunk = 1000;

TEST(OccurrenceBlocks, GiveTheSpecimensAndFindingsOfTheReader) {
  std::size_t coded = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    auto const text = made_archive(seed, 60, false);
    auto const whole = test::specimens_one_by_one(text, kChunk);
    for (auto const& [block, workers] :
         {std::pair<std::size_t, std::size_t>{300, 1}, {900, 3}, {1'000'000, 2}}) {
      auto const read = test::specimens_in_blocks(text, kChunk, block, workers);
      ASSERT_EQ(read.lines, whole) << "seed " << seed << ", blocks of " << block;
      ASSERT_EQ(read.otherwise, test::Lines{}) << "seed " << seed << ", blocks of " << block;
      coded += read.coded;
    }
  }
  EXPECT_GT(coded, 4000U);
}

TEST(OccurrenceBlocks, GoOnWhenAColumnHasTooManyDifferentWords) {
  auto const text = made_archive(7, 12'000, true);
  auto const read = test::specimens_in_blocks(text, kChunk, 100'000, 1);
  EXPECT_TRUE(read.lines == test::specimens_one_by_one(text, kChunk));
  EXPECT_EQ(read.otherwise, test::Lines{});
  EXPECT_GT(read.coded, 6000U);
}

}  // namespace
}  // namespace keydrift
