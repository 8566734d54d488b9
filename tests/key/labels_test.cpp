#include "keydrift/key/labels.hpp"

#include <gtest/gtest.h>

#include "edition_builder.hpp"

namespace keydrift {
namespace {

using test::make_edition;

TEST(LabelKey, LeavesOutWhatPrintPutsAroundALabel) {
  EXPECT_EQ(label_key("(7a)."), "7a");
  EXPECT_EQ(label_key(" 7: "), "7");
  EXPECT_EQ(label_key("[12]"), "12");
  EXPECT_EQ(label_key(""), "");
  EXPECT_EQ(label_key("–"), "–");
}

TEST(LabelKey, MakesEveryPrimeOneKind) {
  for (auto const* prime : {"'", "\u2019", "\u2018", "\u2032", "\u00B4", "\u02B9", "`"}) {
    EXPECT_EQ(label_key("10a" + std::string{prime}), "10a'") << prime;
  }
}

TEST(LabelNumber, TakesNumbersWithShortSuffixes) {
  EXPECT_EQ(label_number("7"), (LabelNumber{7, ""}));
  EXPECT_EQ(label_number("7a"), (LabelNumber{7, "a"}));
  EXPECT_EQ(label_number("15\u2019."), (LabelNumber{15, "'"}));
  EXPECT_LT(*label_number("7"), *label_number("7a"));
  EXPECT_LT(*label_number("7b"), *label_number("10"));
}

TEST(LabelNumber, TakesNoLettersDecimalsNamesOrHugeNumbers) {
  for (auto const* label :
       {"", "A", "aa", "1.1", "1.", "7 a", "12abcd", "7a1", "Aus", "99999999999999999999"}) {
    if (std::string_view{label} == "1.") {
      EXPECT_EQ(label_number(label), (LabelNumber{1, ""}));
    } else {
      EXPECT_EQ(label_number(label), std::nullopt) << label;
    }
  }
}

// Two keys in one file, each numbered from 1.
Edition two_parts() {
  auto edition = make_edition("k", {{"1", {{"a", "2"}, {"b", "A"}}},
                                    {"2", {{"a", "B"}, {"b", "C"}}},
                                    {"1", {{"a", "D"}, {"b", "E"}}},
                                    {"2a", {{"a", "F"}, {"b", "G"}}}});
  edition.parts.push_back({.title = "Larvae", .start = CoupletId{2}, .place = {}});
  return edition;
}

TEST(LabelIndex, FindsACoupletInThePartThatSpeaksOfItFirst) {
  auto const edition = two_parts();
  LabelIndex const labels{edition};
  ASSERT_EQ(labels.part_count(), 2U);
  EXPECT_EQ(labels.part_of(CoupletId{1}), 0U);
  EXPECT_EQ(labels.part_of(CoupletId{3}), 1U);
  EXPECT_EQ(labels.part_begin(1), CoupletId{2});
  EXPECT_EQ(labels.part_end(0), CoupletId{2});
  EXPECT_EQ(labels.part_end(1), CoupletId{4});
  EXPECT_EQ(labels.find("1", 0), CoupletId{0});
  EXPECT_EQ(labels.find("(1)", 1), CoupletId{2});
  EXPECT_EQ(labels.find("2", 1), CoupletId{1});   // only the other part has it
  EXPECT_EQ(labels.find("2a", 0), CoupletId{3});  // likewise
  EXPECT_EQ(labels.find("3", 0), std::nullopt);
  EXPECT_EQ(labels.find("", 0), std::nullopt);
}

TEST(LabelIndex, FindsNoLabelThatSeveralOtherPartsBear) {
  auto edition = two_parts();
  edition.couplets.push_back(edition.couplets[0]);
  edition.couplets.back().label = "9";
  edition.parts.push_back({.title = "Pupae", .start = CoupletId{4}, .place = {}});
  EXPECT_EQ((LabelIndex{edition}.find("1", 2)), std::nullopt);
}

TEST(LabelIndex, FindsALeadByItsPrintedLabelOrByWhatProseCallsIt) {
  auto edition = two_parts();
  edition.couplets[1].leads[1].label = "2\u2032";
  LabelIndex const labels{edition};
  EXPECT_EQ(labels.find_lead("1b", 0), (LeadId{CoupletId{0}, 1}));
  EXPECT_EQ(labels.find_lead("1b", 1), (LeadId{CoupletId{2}, 1}));
  EXPECT_EQ(labels.find_lead("2'", 0), (LeadId{CoupletId{1}, 1}));
  EXPECT_EQ(labels.find_lead("2ab", 1), (LeadId{CoupletId{3}, 1}));
  EXPECT_EQ(labels.find_lead("1c", 0), std::nullopt);
  EXPECT_EQ(labels.find_lead("1", 0), std::nullopt);
}

TEST(LabelIndex, ProposesLabelsOneSlipAwayTheNearestNumbersFirst) {
  std::vector<test::CoupletSketch> couplets;
  for (int i = 1; i <= 40; ++i) couplets.push_back({std::to_string(i), {{"a", "A"}, {"b", "B"}}});
  auto const edition = make_edition("k", couplets);
  LabelIndex const labels{edition};
  std::vector<char> reached(40, 1);
  EXPECT_EQ(labels.near("41", 0, reached), (std::vector<std::string>{"40", "31", "21"}));
  EXPECT_EQ(labels.near("0", 0, reached), (std::vector<std::string>{}));
  reached[13] = 0;  // couplet 14 is reached by nothing, and is 41 with its digits swapped
  EXPECT_EQ(labels.near("41", 0, reached), (std::vector<std::string>{"14"}));
}

TEST(LabelIndex, CountsCoupletsBeforeTheFirstStartToTheFirstPart) {
  auto edition =
      make_edition("k", {{"1", {{"a", "A"}, {"b", "B"}}}, {"2", {{"a", "1"}, {"b", "C"}}}});
  edition.parts[0].start = CoupletId{1};
  LabelIndex const labels{edition};
  EXPECT_EQ(labels.part_count(), 1U);
  EXPECT_EQ(labels.find("1", 0), CoupletId{0});
}

}  // namespace
}  // namespace keydrift
