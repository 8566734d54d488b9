#include "keydrift/formats/csv.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <random>

#include "finding_text.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::one_line_each;
using Lines = std::vector<std::string>;

struct ReadAll {
  Lines rows;     // "line: cell|cell"
  Lines rejects;  // "line: code: message: raw"
  CsvCounts counts;
  Lines remarks;
  char separator{};
};

ReadAll read_all(std::string_view bytes, CsvOptions options = {}, std::size_t chunk = 7) {
  ReadAll all;
  auto const stream = stream_of(bytes, chunk);
  CsvReader reader{*stream, std::move(options)};
  for (auto next = reader.next(); next != CsvReader::Next::end; next = reader.next()) {
    if (next == CsvReader::Next::row) {
      std::string line = std::to_string(reader.row().line) + ":";
      char before = ' ';
      for (auto const cell : reader.row().cells) {
        line += before + std::string{cell};
        before = '^';
      }
      all.rows.push_back(line);
    } else {
      auto const& reject = reader.reject();
      all.rejects.push_back(std::to_string(reject.line) + ": " + std::string{reject.code} + ": " +
                            std::string{reject.message} + ": " + std::string{reject.raw});
    }
  }
  all.counts = reader.counts();
  all.remarks = one_line_each(reader.remarks("s.csv"));
  all.separator = reader.separator();
  return all;
}

TEST(CsvReader, ReadsQuotedCellsDoubledQuotesAndLineBreaksInCells) {
  auto const all = read_all("a,b,c\r\n\"x, y\",\"say \"\"no\"\"\",\"two\r\nlines\"\r\nlast,,\r\n");
  EXPECT_EQ(all.rows, (Lines{"1: a^b^c", "2: x, y^say \"no\"^two\r\nlines", "4: last^^"}));
  EXPECT_TRUE(all.rejects.empty());
  EXPECT_TRUE(all.remarks.empty());
}

TEST(CsvReader, GivesTheSameRowsHoweverTheBytesAreCut) {
  auto const text =
      "\xEF\xBB\xBFid;note\n1;\"a;\"\"b\"\"\r\nc\" \r2; \"d\"\n\n3;e\"f\n\"4;g\n5;h;i\n6\n7;\"j"sv;
  auto const whole = read_all(text, {}, 1000);
  EXPECT_EQ(whole.rows, (Lines{"1: id^note", "2: 1^a;\"b\"\r\nc", "4: 2^d", "6: 3^e\"f", "7: \"4^g",
                               "9: 6", "10: 7^\"j"}));
  EXPECT_EQ(whole.rejects,
            (Lines{"8: too-many-cells: the row has 3 cells where the header has 2: 5;h;i"}));
  EXPECT_EQ(whole.counts.rows, 7U);
  EXPECT_EQ(whole.counts.rejects, 1U);
  EXPECT_EQ(whole.counts.blank_rows, 1U);
  for (std::size_t block = 1; block < text.size(); ++block) {
    auto const cut = read_all(text, {.block_bytes = block}, block);
    EXPECT_EQ(cut.rows, whole.rows) << block;
    EXPECT_EQ(cut.rejects, whole.rejects) << block;
  }
}

TEST(CsvReader, FindsTheSeparatorByTheColumnsItKnows) {
  EXPECT_EQ(read_all("a,b\n1,2\n").separator, ',');
  EXPECT_EQ(read_all("a;b\n").separator, ';');
  EXPECT_EQ(read_all("a\tb,c\td\n").separator, '\t');
  EXPECT_EQ(read_all("a|b\n").separator, '|');
  EXPECT_EQ(read_all("only one column\n").separator, ',');
  auto const known = [](std::string_view name) { return name == "taxon" || name == "parent"; };
  EXPECT_EQ(read_all("note, a, b, c;taxon;parent\n", {.known_column = known}).separator, ';');
  EXPECT_EQ(read_all("a,b\n", {.separator = ';'}).rows, Lines{"1: a,b"});
}

TEST(CsvReader, ObeysALineThatNamesTheSeparator) {
  auto const all = read_all("sep=;\na,b;c\n1;2\n");
  EXPECT_EQ(all.rows, (Lines{"2: a,b^c", "3: 1^2"}));
}

TEST(CsvReader, PassesOverBlankRowsAndKeepsCountOfLines) {
  auto const all = read_all("\n \n,,\na,b\n,,,\n\r\n1,2\n");
  EXPECT_EQ(all.rows, (Lines{"4: a^b", "7: 1^2"}));
  EXPECT_EQ(all.counts.blank_rows, 3U);  // those before the header's place is known are not rows
}

TEST(CsvReader, TakesMissingCellsAsEmptyAndSaysSoOnce) {
  auto const all = read_all("a,b,c\n1,2\n3\n4,5,6\n");
  EXPECT_EQ(all.rows, (Lines{"1: a^b^c", "2: 1^2", "3: 3", "4: 4^5^6"}));
  EXPECT_EQ(all.remarks,
            Lines{"s.csv:2:1: information: 2 rows have fewer cells than the header; the missing "
                  "ones were taken as empty [short-rows] (check whether a line break or a "
                  "separator is missing there)"});
}

TEST(CsvReader, DropsEmptySurplusCellsAndRejectsFullOnes) {
  auto const all = read_all("a,b\n1,2,, \n3,4,5\n6,7\n");
  EXPECT_EQ(all.rows, (Lines{"1: a^b", "2: 1^2", "4: 6^7"}));
  EXPECT_EQ(all.rejects,
            Lines{"3: too-many-cells: the row has 3 cells where the header has 2: 3,4,5"});
}

TEST(CsvReader, KeepsStrayQuotesAsTheyStand) {
  auto const all = read_all("a,b\n5\" long,\"the \"big\" one\"\n \"x\" ,y\n");
  EXPECT_EQ(all.rows, (Lines{"1: a^b", "2: 5\" long^the \"big\" one", "3: x^y"}));
  EXPECT_EQ(all.remarks,
            Lines{"s.csv:2:1: information: 1 row holds a quotation mark where none should be; it "
                  "was kept as it stands [stray-quotes] (double the quotation marks inside quoted "
                  "cells)"});
}

TEST(CsvReader, LosesOnlyTheLineInWhichAQuoteNeverCloses) {
  auto const all = read_all(
      "a,b,c\n1,\"two,3\n4,\"5\",6\n7,\"8\n9,\"1,\"2\n3,\"\"\"x\"\"\",4\n5,\"un\nclosed,6\n7,8,9");
  EXPECT_EQ(all.rows, (Lines{"1: a^b^c", "2: 1^\"two^3", "3: 4^5^6", "5: 9^\"1^\"2", "6: 3^\"x\"^4",
                             "8: closed^6", "9: 7^8^9"}));
  EXPECT_EQ(
      all.rejects,
      (Lines{"4: unclosed-quote: a quoted cell that begins in this row does not close: 7,\"8",
             "7: unclosed-quote: a quoted cell that begins in this row does not close: 5,\"un"}));
}

TEST(CsvReader, BlamesAQuoteWhenARowOfSeveralLinesHasTooManyCells) {
  // The quote of line 2 happens to be closed by that of line 3.
  auto const all = read_all("a,b\n1,\"x\ny\",2,3\n4,5\n");
  EXPECT_EQ(all.rows, (Lines{"1: a^b", "2: 1^\"x", "4: 4^5"}));
  EXPECT_EQ(all.rejects,
            Lines{"3: too-many-cells: the row has 3 cells where the header has 2: y\",2,3"});
}

TEST(CsvReader, RejectsRowsOverTheLimitAndReadsOn) {
  auto const text =
      "a,b\n1," + std::string(300, 'x') + "\r\n2,y\n3,\"" + std::string(300, 'z') + "\n\"\n4,w\n";
  for (std::size_t const block : {1, 64, 100'000}) {
    auto const all = read_all(text, {.maximum_row_bytes = 100, .block_bytes = block}, 100'000);
    EXPECT_EQ(all.rows, (Lines{"1: a^b", "3: 2^y", "6: 4^w"})) << block;
    ASSERT_EQ(all.rejects.size(), 2U) << block;
    EXPECT_EQ(all.rejects[0].substr(0, 70),
              "2: row-too-long: the row is longer than the limit of 100 bytes: 1,xxxx");
    EXPECT_EQ(all.rejects[1].substr(0, 70),
              "4: row-too-long: the row is longer than the limit of 100 bytes: 3,\"zzz");
  }
}

TEST(CsvReader, TakesARowOfJustTheLimitWhereverTheBlocksAreCut) {
  auto const longest = "1," + std::string(98, 'x');
  for (std::size_t block = 1; block < 120; ++block) {
    auto const all =
        read_all("a,b\n" + longest + "\r\n2,y\n", {.maximum_row_bytes = 100, .block_bytes = block});
    EXPECT_EQ(all.rows, (Lines{"1: a^b", "2: 1^" + longest.substr(2), "3: 2^y"})) << block;
    EXPECT_EQ(all.rejects, Lines{}) << block;
  }
}

TEST(CsvReader, RejectsRowsWithNulBytes) {
  auto const all = read_all("a,b\n1,\0\n2,3\n"sv);
  EXPECT_EQ(all.rows, (Lines{"1: a^b", "3: 2^3"}));
  ASSERT_EQ(all.rejects.size(), 1U);
  EXPECT_EQ(all.rejects[0], "2: nul-byte: the row holds a NUL byte: 1,\0"sv);
}

TEST(CsvReader, TellsTheLineAndColumnOfACell) {
  auto const stream = stream_of("a,b,c\n\"µ\nµm\",é,\"x\"\n");
  CsvReader reader{*stream};
  ASSERT_EQ(reader.next(), CsvReader::Next::row);
  EXPECT_EQ(place_of(reader.row(), 2), (Place{.line = 1, .column = 5, .begin = 4, .end = 5}));
  ASSERT_EQ(reader.next(), CsvReader::Next::row);
  EXPECT_EQ(place_of(reader.row(), 0), (Place{.line = 2, .column = 1, .begin = 6, .end = 14}));
  EXPECT_EQ(place_of(reader.row(), 1), (Place{.line = 3, .column = 5, .begin = 15, .end = 17}));
  EXPECT_EQ(place_of(reader.row(), 2), (Place{.line = 3, .column = 7, .begin = 18, .end = 21}));
  EXPECT_EQ(place_of(reader.row(), 3), (Place{.line = 3, .column = 10, .begin = 21, .end = 21}));
  EXPECT_EQ(reader.next(), CsvReader::Next::end);
}

TEST(CsvReader, TakesEachLineByItselfWhenEveryOneOpensAQuote) {
  constexpr std::size_t kLines = 100'000;
  std::string text = "a,b\n";
  for (std::size_t i = 0; i < kLines; ++i) text += "\"x,y\n";
  auto const all = read_all(text, {}, 1 << 16);
  EXPECT_EQ(all.counts.rows, kLines + 1);
  EXPECT_EQ(all.counts.stray_quotes, kLines);
  EXPECT_EQ(all.counts.rejects, 0U);
}

TEST(CsvReader, StaysLinearOnQuotesThatNeverClose) {
  std::string text = "a,b,c\n";
  while (text.size() < (std::size_t{1} << 20)) text += "\",\n";
  // From the start of any line below, quotes open and close without end, two cells a line.
  std::string columns = "c0";
  for (int i = 1; i < 9999; ++i) columns += ",c";
  columns += '\n';
  while (columns.size() < (std::size_t{1} << 20)) columns += "\",z\",\"\n";
  auto const begin = std::chrono::steady_clock::now();
  for (auto const& bytes : {text, columns}) {
    auto const all = read_all(bytes, {}, 1 << 16);
    EXPECT_GT(all.counts.rows, 0U);
  }
  EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds{10});
}

std::string written(Lines const& cells, CsvWriteOptions options = {}) {
  std::string out;
  append_csv_row(out, std::span<std::string const>{cells}, options);
  return out;
}

TEST(CsvWriter, QuotesWhatRfc4180AsksFor) {
  EXPECT_EQ(written({"a", "b,c", "say \"no\"", "two\nlines", ""}),
            "a,\"b,c\",\"say \"\"no\"\"\",\"two\nlines\",\n");
  EXPECT_EQ(written({"a;b", "c"}, {.separator = ';', .line_end = LineEnd::crlf}), "\"a;b\";c\r\n");
  EXPECT_EQ(written({""}), "\"\"\n");
}

TEST(CsvWriter, NeutralisesFormulasButNotNumbers) {
  EXPECT_EQ(written({"=1+1", "+x", "-x", "@x", "\tx", "-3.5", "+2", "-1,5e-3", "-3-5"}),
            "'=1+1,'+x,'-x,'@x,'\tx,-3.5,+2,\"-1,5e-3\",'-3-5\n");
  EXPECT_EQ(written({"\rx", "a=b", "'=1"}), "\"'\rx\",a=b,''=1\n");
  EXPECT_EQ(written({"=1+1"}, {.guard_formulas = false}), "=1+1\n");
}

TEST(CsvWriter, GuardsCellsSoThatTheyCanBeGotBack) {
  for (std::string const cell : {"=x", "'=x", "''=x", "-3.5", "'-3.5", "x", "'x", "'", "", "+",
                                 "'+", "-", "@", "\t", "\n", "'\r"}) {
    EXPECT_EQ(unguarded(guarded(cell)), cell);
  }
}

TEST(CsvWriter, WritesWhatTheReaderReadsBack) {
  std::vector<Lines> const rows{{"h1", "h2", "h3"},
                                {"a,b", "\"", "\"\""},
                                {" x ", "\n\r\n", "''=1"},
                                {";\t|", " \"q\" ", "é\u2028"}};
  std::string text;
  for (auto const& row : rows) append_csv_row(text, std::span<std::string const>{row});
  auto const stream = stream_of(text, 3);
  CsvReader reader{*stream};
  for (auto const& row : rows) {
    ASSERT_EQ(reader.next(), CsvReader::Next::row);
    Lines cells;
    for (auto const cell : reader.row().cells) cells.emplace_back(unguarded(cell));
    EXPECT_EQ(cells, row);
  }
  EXPECT_EQ(reader.next(), CsvReader::Next::end);
}

TEST(CsvWriter, WritesRandomRowsSoThatTheyReadBack) {
  std::vector<std::string> const pieces{"a",  ",",  "\"", "\"\"",  "\n", "\r\n",
                                        "\r", ";",  " ",  "\t",    "é",  "=",
                                        "'",  "-3", "|",  "sep=;", "@x", "long words that go on"};
  std::mt19937 random{static_cast<unsigned>(testing::UnitTest::GetInstance()->random_seed())};
  auto const below = [&random](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>{0, n - 1}(random);
  };
  for (int file = 0; file < 200; ++file) {
    CsvWriteOptions const options{.separator = ",;\t|"[below(4)],
                                  .line_end = below(2) == 0 ? LineEnd::lf : LineEnd::crlf};
    auto const columns = 1 + below(5);
    std::vector<Lines> rows(1 + below(8));
    std::string text;
    for (auto& row : rows) {
      row.push_back("k");  // a row of blanks would be passed over
      while (row.size() < columns) {
        std::string cell;
        for (auto left = below(5); left > 0; --left) cell += pieces[below(pieces.size())];
        row.push_back(cell);
      }
      append_csv_row(text, std::span<std::string const>{row}, options);
    }
    auto const stream = stream_of(text, 1 + below(20));
    CsvReader reader{*stream, {.separator = options.separator, .block_bytes = 1 + below(30)}};
    for (auto const& row : rows) {
      ASSERT_EQ(reader.next(), CsvReader::Next::row) << text;
      Lines cells;
      for (auto const cell : reader.row().cells) cells.emplace_back(unguarded(cell));
      EXPECT_EQ(cells, row) << text;
    }
    EXPECT_EQ(reader.next(), CsvReader::Next::end) << text;
    EXPECT_TRUE(reader.remarks("r.csv").empty()) << text;
  }
}

}  // namespace
}  // namespace keydrift
