#include "keydrift/formats/filled_worklist.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"

namespace keydrift::test {
namespace {

struct Written {
  char const* text;
  char const* iso;
  bool rewritten;
};

class ADay : public testing::TestWithParam<Written> {};

TEST_P(ADay, IsReadAsPeopleAndSpreadsheetsWriteIt) {
  auto const read = read_day(GetParam().text);
  EXPECT_EQ(read.iso, GetParam().iso) << read.problem;
  EXPECT_EQ(read.rewritten, GetParam().rewritten);
  EXPECT_EQ(read.problem, "");
}

INSTANTIATE_TEST_SUITE_P(
    Forms, ADay,
    testing::Values(
        Written{"2024-05-17", "2024-05-17", false}, Written{"2024-05", "2024-05", false},
        Written{"2024", "2024", false}, Written{" 2024-05-17 ", "2024-05-17", false},
        Written{"2024-05-17T09:30", "2024-05-17", true},
        Written{"2024-05-17 00:00:00", "2024-05-17", true},
        Written{"17.5.2024", "2024-05-17", true}, Written{"3.4.2024", "2024-04-03", true},
        Written{"17/05/2024", "2024-05-17", true}, Written{"5/17/2024", "2024-05-17", true},
        Written{"4/4/2024", "2024-04-04", true}, Written{"2024/5/17", "2024-05-17", true},
        Written{"17 May 2024", "2024-05-17", true}, Written{"17-Mai-2024", "2024-05-17", true},
        Written{"May 17, 2024", "2024-05-17", true}, Written{"17. März 2024", "2024-03-17", true},
        Written{"5 juil. 2024", "2024-07-05", true}, Written{"Dez 2024", "2024-12", true},
        Written{"29.2.2024", "2024-02-29", true}, Written{"45429", "2024-05-17", true},
        Written{"45429.0", "2024-05-17", true}, Written{"45429,00", "2024-05-17", true}));

TEST(ADayThatCannotBeTold, SaysWhyAndWhatToWrite) {
  auto const problem = [](char const* text) { return read_day(text).problem; };
  EXPECT_EQ(problem("29.2.2023"), "there is no day \"29.2.2023\"; write it as 2024-05-17");
  EXPECT_EQ(problem("17.5.24"), "\"17.5.24\" has no year of four digits; write it as 2024-05-17");
  EXPECT_EQ(problem("last week"), "\"last week\" is no date; write it as 2024-05-17");
  EXPECT_EQ(problem("3/4/2024"),
            "\"3/4/2024\" may be two days; say --dates day-first or --dates month-first");
  EXPECT_TRUE(read_day("3/4/2024").needs_order);
  EXPECT_EQ(read_day("3/4/2024", DayOrder::day_first).iso, "2024-04-03");
  EXPECT_EQ(read_day("3/4/2024", DayOrder::month_first).iso, "2024-03-04");
}

Loaded<FilledWorklist> read(std::string_view bytes, DayOrder order = DayOrder::unknown) {
  auto const stream = stream_of(bytes);
  return read_filled_worklist(*stream, "back.csv", order, {});
}

TEST(FilledWorklist, KeepsFilledRowsAndCountsBlankOnes) {
  auto const loaded = read(
      "storageLocation,catalogNumber,scientificName,answer,newName,by,date,remarks\n"
      "C 1,0012,Aus bus,bifid,,K.,2024-05-17,\n"
      "C 1,0013,Aus bus,,,,,\n"
      "C 1,0014,Aus bus,,,,,on loan\n");
  ASSERT_TRUE(loaded.value);
  EXPECT_EQ(loaded.value->blank, 1U);
  ASSERT_EQ(loaded.value->rows.size(), 2U);
  auto const& row = loaded.value->rows.front();
  EXPECT_EQ(row.number, "0012");
  EXPECT_EQ(row.answer, "bifid");
  EXPECT_EQ(row.day, "2024-05-17");
  EXPECT_EQ(row.line, 2U);
  EXPECT_EQ(loaded.value->rows.back().remarks, "on loan");
}

TEST(FilledWorklist, PutsUpWithWhatSpreadsheetsMakeOfIt) {
  auto const loaded = read(
      "\xEF\xBB\xBF"
      "answer;Catalog Number;date;by\r\n"
      "\"a; b\";12;17.05.2024;M\xFCller\r\n"
      "'-3;13;45429;K.\r\n");
  ASSERT_TRUE(loaded.value);
  EXPECT_EQ(loaded.value->separator, ';');
  EXPECT_EQ(loaded.value->dates_rewritten, 2U);
  ASSERT_EQ(loaded.value->rows.size(), 2U);
  EXPECT_EQ(loaded.value->rows[0].answer, "a; b");
  EXPECT_EQ(loaded.value->rows[0].by, "Müller");
  EXPECT_EQ(loaded.value->rows[0].day, "2024-05-17");
  EXPECT_EQ(loaded.value->rows[1].answer, "-3");
  EXPECT_EQ(loaded.value->rows[1].day, "2024-05-17");
}

TEST(FilledWorklist, TakesTheOrderOfDayAndMonthFromTheDatesThatShowIt) {
  constexpr std::string_view kShown =
      "catalogNumber,answer,by,date\n1,a,K.,3/4/2024\n2,a,K.,17/4/2024\n";
  EXPECT_EQ(read(kShown).value->rows[0].day, "2024-04-03");
  EXPECT_EQ(read(kShown, DayOrder::month_first).value->rows[0].day, "2024-03-04");
  constexpr std::string_view kAtOdds =
      "catalogNumber,answer,by,date\n1,a,K.,3/4/2024\n2,a,K.,17/4/2024\n3,a,K.,4/17/2024\n";
  EXPECT_EQ(read(kAtOdds).value->rows[0].day, "");
  EXPECT_EQ(read(kAtOdds).value->rows[2].day, "2024-04-17");
}

TEST(FilledWorklist, IsRefusedWithoutTheColumnsThatMatter) {
  auto const loaded = read("sheet,seen\n1,a\n");
  EXPECT_FALSE(loaded.value);
  ASSERT_EQ(loaded.findings.size(), 1U);
  EXPECT_EQ(one_line(loaded.findings.front()),
            "back.csv:1:1: error: the first row has no column \"catalogNumber\" and \"answer\"; it "
            "has \"sheet\" and \"seen\" [missing-column] "
            "(give the worklist back with the header that it came with)");
}

// Columns that somebody renamed or copied are never left out without a word.
TEST(FilledWorklist, TellsOfColumnsThatItDoesNotRead) {
  auto const loaded = read(
      "catalogNumber,typeOrVoucher,answersAllowed,possibleResults,answer,dates,determiner,Answer,,"
      "\n"
      "1,,a | b,a to Aus,a,2024-05-17,K.,b,,\n");
  ASSERT_TRUE(loaded.value);
  EXPECT_EQ(loaded.value->rows.front().answer, "a");
  std::vector<std::string> const expected{
      "back.csv:1:67: warning: the column \"dates\" is none of the worklist's and is not read "
      "[unknown-column] (if \"date\" is meant, call it so)",
      "back.csv:1:73: warning: the column \"determiner\" is none of the worklist's and is not read "
      "[unknown-column] (give back what it holds under the header that it came with)",
      "back.csv:1:84: warning: the column \"Answer\" stands twice; the first is read "
      "[duplicate-column] (remove or rename one of them)",
      "back.csv:1:1: warning: the first row has no column \"by\", so no answer can be taken "
      "[missing-column] (give the worklist back with the header that it came with)",
      "back.csv:1:1: warning: the first row has no column \"date\", so no answer can be taken "
      "[missing-column] (give the worklist back with the header that it came with)",
      "back.csv:1:1: information: the first row has no column \"rowCheck\", so nothing tells "
      "whether "
      "a column was sorted without the others [no-row-check] (worklists that are written now have "
      "it; this one is taken as it is)"};
  EXPECT_EQ(one_line_each(loaded.findings), expected);
}

}  // namespace
}  // namespace keydrift::test
