#include "keydrift/formats/frequencies_file.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

Loaded<FrequencyTable> frequencies(std::string_view text) {
  return read_frequencies({.name = "f.csv", .bytes = text});
}

TEST(FrequenciesFile, ReadsCountsAndShares) {
  auto const loaded = frequencies("Count;Taxon\r\n12;Aus bus\r\n0.5;Aus cus\r\n0;Aus bus\r\n");
  ASSERT_TRUE(loaded);
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  Lines rows;
  for (auto const& row : loaded.value->rows) {
    rows.push_back(row.taxon + " " + std::to_string(row.count) + " @" +
                   std::to_string(row.place.line));
  }
  EXPECT_EQ(rows, (Lines{"Aus bus 12.000000 @2", "Aus cus 0.500000 @3", "Aus bus 0.000000 @4"}));
}

TEST(FrequenciesFile, RefusesWhatIsNoCount) {
  auto const loaded =
      frequencies("taxon,count\nAus bus,many\nAus cus,-1\nAus dus,\n,3\nAus eus,1e999\n");
  EXPECT_FALSE(loaded);
  EXPECT_EQ(
      one_line_each(loaded.findings),
      (Lines{
          "f.csv:2:9: error: \"many\" is no count [bad-count] (write a number of 0 or more, with "
          "a point before decimals)",
          "f.csv:3:9: error: \"-1\" is no count [bad-count] (write a number of 0 or more, with a "
          "point before decimals)",
          "f.csv:4:9: error: the row of \"Aus dus\" has no count [bad-count] (write a number of 0 "
          "or more, with a point before decimals)",
          "f.csv:5:1: error: the row has no name in the column \"taxon\" [missing-name] (name the "
          "taxon that is counted)",
          "f.csv:6:9: error: \"1e999\" is no count [bad-count] (write a number of 0 or more, with "
          "a point before decimals)"}));
}

TEST(FrequenciesFile, WantsItsColumns) {
  auto const loaded = frequencies("name,count\nAus bus,3\n");
  EXPECT_FALSE(loaded);
  ASSERT_FALSE(loaded.findings.empty());
  EXPECT_EQ(loaded.findings.front().code, "missing-column");
}

TEST(FrequenciesFile, NeverYieldsAValueTogetherWithAnError) {
  test::read_damaged("taxon,count\nAus \"b\",12\n\"Aus\ncus\",0.5\n", frequencies);
}

}  // namespace
}  // namespace keydrift
