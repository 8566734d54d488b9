// Where a lead ends and the name it leads to begins, if no leaders or uncommon ones tell.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

TEST(PrintedNameEnds, AnUnnamedSpeciesNeedsNoLeaders) {
  EXPECT_EQ(sketch("1. Leaves hairy 2\n"
                   "1. Leaves bare Ausella sp. 2\n"
                   "2. Stem low Ausella alba\n"
                   "2. Stem tall Ausella lutea\n"),
            "1[1] Leaves hairy -> 2\n1[1] Leaves bare -> Ausella sp. 2\n"
            "2[2] Stem low -> Ausella alba\n2[2] Stem tall -> Ausella lutea\n");
}

TEST(PrintedNameEnds, AGenusWithAuthorAndYearNeedsNoLeadersBehindASentence) {
  EXPECT_EQ(sketch("1. Leaves hairy. 2\n"
                   "1. Leaves bare, as is the whole of the plant. Aus Roe, 1926\n"
                   "2. Stem low, with a few leaves. Busella Dorn, 1901\n"
                   "2. Stem tall. Cusella Roe & Dorn, 1888\n"),
            "1[1] Leaves hairy. -> 2\n"
            "1[1] Leaves bare, as is the whole of the plant. -> Aus\n"
            "2[2] Stem low, with a few leaves. -> Busella\n2[2] Stem tall. -> Cusella\n");
}

TEST(PrintedNameEnds, APageBeforeANameStandsFarInOnALineOfItsOwn) {
  auto const text =
      "1. Leaves hairy, as is the rest of the plant\n"
      "                                             (p. 36) AUSELLA Roe\n"
      "1. Leaves bare ..... 2\n"
      "2. Stem low ..... BUSELLA Roe\n"
      "2. Stem tall ..... CUSELLA Roe\n";
  EXPECT_EQ(sketch(text),
            "1[1] Leaves hairy, as is the rest of the plant -> Ausella (p. 36)\n"
            "1[1] Leaves bare -> 2\n2[2] Stem low -> Busella\n"
            "2[2] Stem tall -> Cusella\n");
  EXPECT_EQ(line_kinds(text), "lead, destination, lead, lead, lead");
}

TEST(PrintedNameEnds, ANumberBeforeANameFarInIsNoLabelThoughItCarriesTheCountOn) {
  auto const text =
      "9. Leaves hairy, as is the rest of the plant\n"
      "                                     10. maurum (Roe)\n"
      "- Leaves bare ..... 10\n"
      "10. Stem low, with few leaves\n"
      "                                     11. album (Roe)\n"
      "- Stem tall ..... 11\n"
      "11. Flowers white, with many spots\n"
      "                                     12. laeve, new species\n"
      "- Flowers red ..... luteum (Roe)\n";
  EXPECT_EQ(sketch(text),
            "9[9] Leaves hairy, as is the rest of the plant -> maurum\n"
            "9[-] Leaves bare -> 10\n10[10] Stem low, with few leaves -> album\n"
            "10[-] Stem tall -> 11\n"
            "11[11] Flowers white, with many spots -> laeve (new species)\n"
            "11[-] Flowers red -> luteum\n");
  EXPECT_EQ(line_kinds(text),
            "lead, destination, lead, lead, destination, lead, lead, destination, lead");
}

TEST(PrintedNameEnds, TwoDotsBetweenWordsAreLeaders) {
  EXPECT_EQ(sketch("1. Leaves hairy, green ..... 2\n"
                   "1. Leaves bare, grey..bus Roe\n"
                   "2. Stem low ..... cus Roe\n"
                   "2. Stem tall..dus Roe\n"),
            "1[1] Leaves hairy, green -> 2\n1[1] Leaves bare, grey -> bus\n"
            "2[2] Stem low -> cus\n2[2] Stem tall -> dus\n");
}

TEST(PrintedNameEnds, AnArrowBetweenColoursIsNoLeader) {
  EXPECT_EQ(sketch("1. Thallus P-, K+ yellow → red   Aus bus\n"
                   "1. Thallus K- → 2\n"
                   "2. Medulla C-, K+ pale → brown   Aus cus\n"
                   "2. Medulla C-   Aus dus\n"),
            "1[1] Thallus P-, K+ yellow → red -> Aus bus\n1[1] Thallus K- -> 2\n"
            "2[2] Medulla C-, K+ pale → brown -> Aus cus\n2[2] Medulla C- -> Aus dus\n");
}

TEST(PrintedNameEnds, LowLinesMayBeMixedWithDashesOrStandApart) {
  EXPECT_EQ(sketch("1. Leaves hairy ____—__ bus, p. 8\n"
                   "1. Leaves bare _ _ _ _ 2\n"
                   "2. Stem low _ _ _ _ cus, p. 9\n"
                   "2. Stem tall ___—___ dus, p. 10\n"),
            "1[1] Leaves hairy -> bus (p. 8)\n1[1] Leaves bare -> 2\n"
            "2[2] Stem low -> cus (p. 9)\n2[2] Stem tall -> dus (p. 10)\n");
}

TEST(PrintedNameEnds, AnEpithetWithItsPageNeedsNoLeaders) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Leaves hairy ..... albus (p. 30)\n"
                   "1. Leaves bare, but not so in very young individuals bus (p. 31)\n"
                   "2. Stem low ..... nanus (p. 32)\n"
                   "2. Stem tall ..... altus (p. 33)\n"),
            "1[1] Leaves hairy -> Ausella albus (p. 30)\n"
            "1[1] Leaves bare, but not so in very young individuals -> Ausella bus (p. 31)\n"
            "2[2] Stem low -> Ausella nanus (p. 32)\n"
            "2[2] Stem tall -> Ausella altus (p. 33)\n");
}

TEST(PrintedNameEnds, ANewSpeciesBehindACommaNeedsNoLeaders) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear, the veins pale ..... 2\n"
                   "1. Wings dark, the face golden, aurifrons, n. sp.\n"
                   "2. Legs pale, the tips dark ..... pallipes Roe\n"
                   "2. Legs wholly black ..... tristis Roe\n"),
            "1[1] Wings clear, the veins pale -> 2\n"
            "1[1] Wings dark, the face golden, -> Ausella aurifrons (n. sp.)\n"
            "2[2] Legs pale, the tips dark -> Ausella pallipes\n"
            "2[2] Legs wholly black -> Ausella tristis\n");
}

TEST(PrintedNameEnds, AnEpithetAndItsAuthorBehindACommaNeedNoLeaders) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear, the veins pale ..... 2\n"
                   "1. Wings dark ..... tristis Roe\n"
                   "2. Legs pale ..... pallipes Roe\n"
                   "2. Legs wholly black, niger Roe.\n"),
            "1[1] Wings clear, the veins pale -> 2\n1[1] Wings dark -> Ausella tristis\n"
            "2[2] Legs pale -> Ausella pallipes\n"
            "2[2] Legs wholly black, -> Ausella niger\n");
}

}  // namespace
}  // namespace keydrift
