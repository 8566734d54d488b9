// Units and recorded numbers.

#include "keydrift/characters/units.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace keydrift::test {
namespace {

struct UnitCase {
  char const* printed;
  char const* unit;
  double factor;
};

class Units : public testing::TestWithParam<UnitCase> {};

TEST_P(Units, HaveOneCanonicalUnitPerDimension) {
  auto const unit = canonical_unit(GetParam().printed);
  ASSERT_TRUE(unit) << GetParam().printed;
  EXPECT_EQ(unit->unit, GetParam().unit);
  EXPECT_DOUBLE_EQ(unit->factor, GetParam().factor);
}

constexpr UnitCase kUnitCases[]{
    {"mm", "mm", 1},     {"cm", "mm", 10},
    {"dm", "mm", 100},   {"m", "mm", 1000},
    {"µm", "mm", 0.001}, {"μm", "mm", 0.001},
    {"um", "mm", 0.001}, {"microns", "mm", 0.001},
    {"in", "mm", 25.4},  {"inches", "mm", 25.4},
    {"ft", "mm", 304.8}, {"CM", "mm", 10},
    {"mm.", "mm", 1},    {"mm²", "mm2", 1},
    {"cm2", "mm2", 100}, {"sq mm", "mm2", 1},
    {"°", "°", 1},       {"degrees", "°", 1},
    {"%", "%", 1},       {"per cent", "%", 1},
    {"1", "1", 1},       {"", "", 1},
};

INSTANTIATE_TEST_SUITE_P(Printed, Units, testing::ValuesIn(kUnitCases));

TEST(UnknownUnits, AreNone) {
  EXPECT_FALSE(canonical_unit("furlong"));
  EXPECT_FALSE(canonical_unit("mmm"));
}

struct NumberCase {
  char const* text;
  char const* default_unit;
  double low;
  double high;
  char const* unit;
};

class RecordedNumbers : public testing::TestWithParam<NumberCase> {};

TEST_P(RecordedNumbers, AreIntervals) {
  auto const& row = GetParam();
  auto const number = read_number(row.text, row.default_unit);
  ASSERT_TRUE(number) << row.text;
  EXPECT_DOUBLE_EQ(number->low, row.low) << row.text;
  EXPECT_DOUBLE_EQ(number->high, row.high) << row.text;
  EXPECT_EQ(number->unit, row.unit) << row.text;
}

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr NumberCase kNumbers[]{
    {"4.5", "mm", 4.5, 4.5, "mm"},
    {"4,5", "mm", 4.5, 4.5, "mm"},
    {"4.5", "cm", 45, 45, "mm"},
    {"4.5 mm", "cm", 4.5, 4.5, "mm"},
    {"0.45 cm", "mm", 4.5, 4.5, "mm"},
    {"4.5-6.2", "mm", 4.5, 6.2, "mm"},
    {"4.5–6.2 mm", "mm", 4.5, 6.2, "mm"},
    {"(3-)4-6(-8) mm", "mm", 3, 8, "mm"},
    {"ca. 5 mm", "mm", 4.5, 5.5, "mm"},
    {"> 3 cm", "mm", 30, kInfinity, "mm"},
    {"3", "1", 3, 3, "1"},
    {"three", "1", 3, 3, "1"},
    {"2.5", "", 2.5, 2.5, ""},
    {" 7 mm. ", "mm", 7, 7, "mm"},
};

INSTANTIATE_TEST_SUITE_P(Texts, RecordedNumbers, testing::ValuesIn(kNumbers));

TEST(RecordedWords, AreNoNumbers) {
  for (auto const* text : {"", "long", "3 or long", "?", "3 x 4 mm", "mm", "3 mm long leaf", "-"}) {
    EXPECT_FALSE(read_number(text, "mm")) << text;
  }
  EXPECT_FALSE(read_number("3", "furlong"));
}

}  // namespace
}  // namespace keydrift::test
