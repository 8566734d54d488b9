// Numbers that stand together as a formula are words; numbers with decimals measure, though they
// print no unit.

#include <gtest/gtest.h>

#include "reading_support.hpp"

namespace keydrift::test {
namespace {

class Formulas : public testing::TestWithParam<ReadingCase> {};

TEST_P(Formulas, AreWords) {
  EXPECT_EQ(reading_of(GetParam().text, Lexicon{}), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kFormulas[]{
    {"Tarsi 5-5-4", "~tarsi 5 - 5 - 4 = tarsi 5 - 5 - 4"},
    {"Leg formula 4-1-2-3", "~leg formula 4 - 1 - 2 - 3 = leg formula 4 - 1 - 2 - 3"},
    {"Leg formula: 4123", "~leg formula 4123 = leg formula 4123"},
    {"Legs 4-1-2-3 in length", "~legs 4 - 1 - 2 - 3 in length = legs 4 - 1 - 2 - 3 in length"},
    {"Palp with 2-2 spines", "~palp with 2 - 2 spines = palp with 2 - 2 spines"},
    {"Palp with 2–3 spines", "~n:palp spine|1 2–3"},
    {"Scutum with 2 + 3 bristles", "~scutum with 2 + 3 bristles = scutum with 2 + 3 bristles"},
    {"Vertebrae 24 (10 + 14)", "~n:vertebra|1 24 & ~vertebrae 10 + 14 = vertebrae 10 + 14"},
    {"Gill rakers 5–6 + 12–14", "~gill rakers 5 - 6 + 12 - 14 = gill rakers 5 - 6 + 12 - 14"},
    {"Femur to tibia 1:1.5", "~femur to tibia 1 : 1.5 = femur to tibia 1 : 1.5"},
    {"Umbilicus 1/12 of shell", "~umbilicus 1 / 12 of shell = umbilicus 1 / 12 of shell"},
    {"Vein R4+5 with 3 setae", "~n:vein r4 seta|1 3"},
    {"Vein R4+5 curved", "~vein r4 + 5 curved = vein r4 + 5 curved"},
    {"Dorsal fin IX, 12", "~dorsal fin ix , 12 = dorsal fin ix , 12"},
    {"D. X–XI, 14–16; A. III, 8",
     "~d x - xi , 14 - 16 = d x - xi , 14 - 16 & ~a iii , 8 = a iii , 8"},
    {"Tergite V, 3 spots", "~tergite v = tergite v & ~n:spot|1 3"},
    {"Anal fin I,11 or 12", "~anal fin i , 11 or 12 = anal fin i , 11 or 12"},
    {"Gill rakers 8 + 17 to 19", "~gill rakers 8 + 17 to 19 = gill rakers 8 + 17 to 19"},
    {"Spurs 2.4.4", "~spurs 2.4 4 = spurs 2.4 4"},
    {"Sc. 31–33; L. lat. 34", "~n:sc|1 31–33 & ~n:l lat|1 34"},
    // figures are what they were
    {"Legs black, as in Figs 3-4-5", "~legs black = legs black"},
    // what may be a part of something or two numbers
    {"Stamens 4/5", "~stamens 0.8 = stamens 0.8"},
};

INSTANTIATE_TEST_SUITE_P(Numbers, Formulas, testing::ValuesIn(kFormulas));

class Decimals : public testing::TestWithParam<ReadingCase> {};

TEST_P(Decimals, MeasureWithoutAUnit) {
  EXPECT_EQ(reading_of(GetParam().text, Lexicon{}), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kDecimalCases[]{
    {"Carapace length 1.8", "~n:carapace length| 1.8"},
    {"Head/eye ratio 2", "~n:head eye| 2"},
    {"Depth 3.2–3.6 in SL", "~n:sl depth| 3.2–3.6"},
    {"Umbilicus 1/4 of diameter", "~n:umbilicus diameter| 0.25"},
    {"Article 2 1.2× article 1", "~n:article 2 article 1| 1.2"},
    {"Male 3.5–4.2, female 4.0–5.1 mm",
     "~n:male length|mm 3.5–4.2 mm & ~n:female length|mm 4–5.1 mm"},
    {"Vertex/eye ratio 0.75", "~n:vertex eye| 0.75"},
    {"Spores 8–10/5–6 µm", "~n:spore length|mm 0.008–0.01 mm & ~n:spore width|mm 0.005–0.006 mm"},
    {"Head at most 3x width", "~n:head width| ≤3"},
    // what counts all the same
    {"Tibia with hairs of two lengths", "~n:tibia hair length|1 2"},
    {"Spots 3, palps 2 mm", "~n:spot|1 3 & ~n:palp length|mm 2 mm"},
};

INSTANTIATE_TEST_SUITE_P(Numbers, Decimals, testing::ValuesIn(kDecimalCases));

TEST(NumbersOfOneName, AreMeasuredWhereOneOfThemHasDecimals) {
  EXPECT_EQ(readings_of({"Eye depth index 2", "Eye depth index 1.5"}, Lexicon{}),
            (std::vector<std::string>{"~n:eye index depth| 2", "~n:eye index depth| 1.5"}));
  EXPECT_EQ(readings_of({"Eyes 2 OD", "Eyes 1.5 OD"}, Lexicon{}),
            (std::vector<std::string>{"~n:eye od| 2", "~n:eye od| 1.5"}));
}

TEST(NumbersOfOneName, AreWordsWhereTheyExcludeEachOther) {
  EXPECT_EQ(reading_of("Lateral scales 34, scales 12", Lexicon{}),
            "~n:lateral scale|1 34 & ~n:scale|1 12");
  EXPECT_EQ(reading_of("Scales 34; scales 12", Lexicon{}),
            "~scales 34 = scales 34 & ~scales 12 = scales 12");
  // Months and heights, as floras print them.
  EXPECT_EQ(reading_of("Style 5. 0.3–0.7. 6–8.", Lexicon{}),
            "~n:style|1 5 & ~style 0.3 0.7 = style 0.3 0.7 & ~style 6 8 = style 6 8");
  EXPECT_EQ(reading_of("Scales 34; scales 30–40", Lexicon{}), "~n:scale|1 34 & ~n:scale|1 30–40");
}

}  // namespace
}  // namespace keydrift::test
