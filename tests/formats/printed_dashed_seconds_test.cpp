// Further leads that bear the number of their couplet behind a dash.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedDashedSeconds, ADashWithTheCoupletsNumberIsALabel) {
  EXPECT_EQ(sketch("1. Wings clear ..... 2\n"
                   "–1. Wings dark ..... 3\n"
                   "2. Legs pale ..... Aus bus\n"
                   "–2. Legs dark ..... Aus cus\n"
                   "3. Head long ..... Aus dus\n"
                   "–3. Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[–1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[–2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n3[–3] Head short -> Aus eus\n");
}

TEST(PrintedDashedSeconds, TheNumberMayBearNoStop) {
  EXPECT_EQ(sketch("1 Wings clear ..... 2\n"
                   "-1 Wings dark ..... 3\n"
                   "2 Legs pale ..... Aus bus\n"
                   "-2 Legs dark ..... Aus cus\n"
                   "-2 Legs red ..... Aus fus\n"
                   "3 Head long ..... Aus dus\n"
                   "-3 Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[-1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[-2] Legs dark -> Aus cus\n2[-2] Legs red -> Aus fus\n"
            "3[3] Head long -> Aus dus\n3[-3] Head short -> Aus eus\n");
}

TEST(PrintedDashedSeconds, AKeyOfOneCouplet) {
  EXPECT_EQ(sketch("1. Legs pale ..... Aus bus\n"
                   "–1. Legs dark ..... Aus cus\n"),
            "1[1] Legs pale -> Aus bus\n1[–1] Legs dark -> Aus cus\n");
}

TEST(PrintedDashedSeconds, OfANestedKeyTheyStandFarBelow) {
  EXPECT_EQ(sketch("1. Wings clear\n"
                   "  2. Legs pale ..... Aus bus\n"
                   "  –2. Legs dark ..... Aus cus\n"
                   "–1. Wings dark\n"
                   "  3. Head long ..... Aus dus\n"
                   "  –3. Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[–1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[–2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n3[–3] Head short -> Aus eus\n");
}

TEST(PrintedDashedSeconds, TheNumberOfAnotherCoupletIsNoLabel) {
  auto const read = sketch(
      "1. Wings clear ..... 2\n"
      "–7. Antennal segment long ..... 3\n"
      "2. Legs pale ..... Aus bus\n"
      "–2. Antennal segment long ..... Aus cus\n"
      "3. Head long ..... Aus dus\n"
      "–3. Antennal segment long ..... Aus eus\n");
  EXPECT_EQ(read.find("[–2]"), std::string::npos) << read;
  EXPECT_EQ(read.find("[–3]"), std::string::npos) << read;
}

// "–4." beneath couplet 3 is a slip, "–15" a range that begins a line.
TEST(PrintedDashedSeconds, OneThatAnswersNothingIsNoReasonToForgetTheOthers) {
  for (auto const& [slip, read] : {std::pair{"–4. Head small", "–4. Head small"},
                                   std::pair{"– Head small, palps in figs 12\n–15 Shown, bare",
                                             "Head small, palps in figs 12 –15 Shown, bare"}}) {
    auto const text = sketch(std::string{"1. Wings clear ..... 2\n–1. Wings dark ..... 3\n"
                                         "2. Legs red ..... Aus bus\n–2. Legs black ..... Aus cus\n"
                                         "3. Head large ..... 4\n"} +
                             slip +
                             " ..... Aus dus\n4. Eyes bare ..... 5\n–4. Eyes hairy ..... Aus eus\n"
                             "5. Palps pale ..... Aus fus\n–5. Palps dark ..... Aus gus\n");
    EXPECT_NE(text.find("1[–1] Wings dark -> 3\n"), std::string::npos) << text;
    EXPECT_NE(text.find("4[–4] Eyes hairy -> Aus eus\n"), std::string::npos) << text;
    EXPECT_NE(text.find(std::string{read} + " -> Aus dus\n"), std::string::npos) << text;
  }
}

TEST(PrintedDashedSeconds, MayBeginInSmallLettersBehindASign) {
  EXPECT_EQ(sketch("1. wings clear ..... 2\n–1. wings dark ..... 3\n"
                   "2. legs red ..... Aus bus\n–2. legs black ..... Aus cus\n"
                   "3. head large ..... Aus dus\n–3. head small ..... Aus eus\n"),
            "1[1] wings clear -> 2\n1[–1] wings dark -> 3\n"
            "2[2] legs red -> Aus bus\n2[–2] legs black -> Aus cus\n"
            "3[3] head large -> Aus dus\n3[–3] head small -> Aus eus\n");
}

TEST(PrintedDashedSeconds, StarsStandBeforeTheNumberAsWell) {
  EXPECT_EQ(sketch("1  Wings clear ........ 2\n"
                   "*1  Wings dark ........ Ausella busa\n"
                   "2  Legs red ........ Ausella cusa\n"
                   "*2  Legs black ........ 3\n"
                   "3  Head large ........ Ausella dusa\n"
                   "*3  Head small ........ Ausella fusa\n"),
            "1[1] Wings clear -> 2\n"
            "1[*1] Wings dark -> Ausella busa\n"
            "2[2] Legs red -> Ausella cusa\n"
            "2[*2] Legs black -> 3\n"
            "3[3] Head large -> Ausella dusa\n"
            "3[*3] Head small -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
