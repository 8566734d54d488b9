// How much a line's front has to be damaged to be a label that is expected there.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "keydrift/formats/printed_worn_label.hpp"

namespace keydrift::printed {
namespace {

std::u32string const kSix = U"6.";
std::u32string const kSixFromFive = {U'6', U'(', kAnyFigures, U')', U'.'};

float wear_of(std::string_view line, std::u32string const& expected) {
  auto const worn = worn_label(line, expected, true);
  return worn ? worn->wear : -1;
}

TEST(WornLabel, NothingIsAmissWithASoundOne) {
  EXPECT_EQ(wear_of("6. Wings clear", kSix), 0);
  EXPECT_EQ(wear_of("6(5). Wings clear", kSixFromFive), 0);
  EXPECT_EQ(wear_of("6 (15). Wings clear", kSixFromFive), 0);
  EXPECT_EQ(wear_of("— Wings clear", {kAnyDash}), 0);
  EXPECT_EQ(wear_of("6’. Wings clear", U"6'."), 0);
}

TEST(WornLabel, NoWordInCapitalsBeginsWithOne) {
  EXPECT_EQ(wear_of("AUSELLA. 259", U"a."), -1);
  EXPECT_GE(wear_of("aWings clear", U"a."), 0);
}

TEST(WornLabel, EachDamagedSignWearsIt) {
  auto const one = wear_of("b. Wings clear", kSix);
  EXPECT_GT(one, 0);
  EXPECT_GT(wear_of("b Wings clear", kSix), one);  // and the full stop is lost
  for (std::string_view const line : {"6, Wings clear", "6 . Wings clear", ".6. Wings clear",
                                      "'6. Wings clear", "6 Wings clear", "6.Wings clear"}) {
    EXPECT_GE(wear_of(line, kSix), 0) << line;
    EXPECT_LT(wear_of(line, kSix), 1) << line;
  }
  for (std::string_view const line :
       {"6{5). Wings clear", "6 (S). Wings clear", "b(5) Wings clear", "6C5). Wings clear"}) {
    EXPECT_GT(wear_of(line, kSixFromFive), 0) << line;
    EXPECT_LT(wear_of(line, kSixFromFive), 2) << line;
  }
  for (std::string_view const line : {"~ Wings clear", "■ Wings clear", "_ Wings clear"}) {
    EXPECT_GT(wear_of(line, {kAnyDash}), 0) << line;
  }
}

TEST(WornLabel, FiguresThatLookAlikeWearLessThanOthers) {
  EXPECT_LT(wear_of("8. Wings clear", U"3."), wear_of("7. Wings clear", U"3."));
  EXPECT_LT(wear_of("S. Wings clear", U"5."), wear_of("3. Wings clear", U"5."));
}

TEST(WornLabel, PrimesAndIndices) {
  std::u32string const one{U'b', kOnePrime, U'.'};
  std::u32string const three{U'b', kThreePrimes, U'.'};
  std::u32string const fourth{U'b', kIndex + 4, U'.'};
  for (std::string_view const line : {"b\"'. Wings", "b'\". Wings", "b'''. Wings"}) {
    EXPECT_EQ(wear_of(line, three), 0) << line;
  }
  for (std::string_view const line : {"b4. Wings", "b⁴. Wings"}) {
    EXPECT_EQ(wear_of(line, fourth), 0) << line;
  }
  // "V" is all of b'; a prime too many is more amiss than none.
  EXPECT_LT(wear_of("V. Wings", one), 1);
  EXPECT_GT(wear_of("V. Wings", three), 1);
  EXPECT_GT(wear_of("b\". Wings", one), 0);
  EXPECT_GT(wear_of("b'. Wings", three), wear_of("b\". Wings", three));
  EXPECT_GT(wear_of("b^. Wings", fourth), 0);
  EXPECT_GT(wear_of("b 4 . Wings", fourth), 0);
}

TEST(WornLabel, SaysWhereLabelAndWordsBegin) {
  auto const worn = worn_label("'6 .  Wings clear", kSix, true);
  ASSERT_TRUE(worn);
  EXPECT_EQ(worn->end, 4U);
  EXPECT_EQ(worn->words, 6U);
}

TEST(WornLabel, WordsAreNoLabel) {
  for (std::string_view const line :
       {"Wings clear", "of wings 6. Clear", "six wings", "Bug on grass", "60 mm long"}) {
    EXPECT_EQ(wear_of(line, kSix), -1) << line;
  }
  EXPECT_EQ(wear_of("6. wings clear", kSix), -1);  // where words begin with a capital
  EXPECT_TRUE(worn_label("6. wings clear", kSix, false));
}

TEST(WornLabel, OneSignMayStandForTwoAndTwoForOne) {
  EXPECT_GT(wear_of("n. Wings clear", U"11."), 0);
  EXPECT_GT(wear_of("V. Wings clear", U"1'."), 0);
  EXPECT_GT(wear_of("cl. Wings clear", U"d."), 0);
  EXPECT_GT(wear_of("DI). Wings clear", U"DD."), 0);
}

TEST(WornLabel, NumbersAtEnds) {
  EXPECT_TRUE(worn_sign("h", "4"));
  EXPECT_TRUE(worn_sign("1 5", "15"));
  EXPECT_TRUE(worn_sign("?", "7"));
  EXPECT_FALSE(worn_sign("15", "15"));  // nothing is the matter
  EXPECT_FALSE(worn_sign("wings", "4"));
  EXPECT_LT(*worn_sign("S", "5"), *worn_sign("A", "5"));
}

}  // namespace
}  // namespace keydrift::printed
