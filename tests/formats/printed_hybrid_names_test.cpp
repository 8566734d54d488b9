// Names of hybrids, with the sign of the cross close to the epithet and away from it, and formulas.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::led_to;
using test::read_key;
using test::sketch;

constexpr auto kWhiteAndYellow =
    "1[1] Flowers white -> Ausella ×alba\n1[1] Flowers yellow -> Ausella ×flava\n";

TEST(PrintedHybridNames, TheCrossMayStandCloseToTheEpithet) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white ..... A. ×alba\n"
                   "1. Flowers yellow ..... A. ×flava Weng.\n"),
            kWhiteAndYellow);
  EXPECT_EQ(sketch("1. Flowers white ..... Ausella ×alba\n"
                   "1. Flowers yellow ..... Ausella ×flava Weng.\n"),
            kWhiteAndYellow);
}

TEST(PrintedHybridNames, ItsAuthorFollowsAsElsewhere) {
  auto const reading = read_key(
      "1. Flowers white ..... Ausella ×alba\n"
      "1. Flowers yellow ..... Ausella ×flava Weng.\n");
  ASSERT_EQ(reading.edition.taxa.size(), 2U);
  EXPECT_EQ(reading.edition.taxa.back().authorship, "Weng.");
}

TEST(PrintedHybridNames, ABlankAloneMayPartItFromTheWords) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white A. ×alba Weng.\n"
                   "1. Flowers yellow Ausella ×flava\n"),
            kWhiteAndYellow);
}

TEST(PrintedHybridNames, AnArrowADashOrALineMayPartItFromTheWords) {
  EXPECT_EQ(sketch("1. Flowers white → Ausella ×alba\n"
                   "1. Flowers yellow → Ausella ×flava Weng.\n"),
            kWhiteAndYellow);
  EXPECT_EQ(sketch("1. Flowers white – Ausella ×alba\n"
                   "1. Flowers yellow – Ausella ×flava Weng.\n"),
            kWhiteAndYellow);
  EXPECT_EQ(sketch("1. Flowers white\n"
                   "   Ausella ×alba\n"
                   "1. Flowers yellow\n"
                   "   Ausella ×flava Weng.\n"),
            kWhiteAndYellow);
}

TEST(PrintedHybridNames, TheEpithetMayStandAlone) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white ..... ×alba Weng.\n"
                   "1. Flowers yellow ..... ×flava\n"),
            kWhiteAndYellow);
}

TEST(PrintedHybridNames, AListMayHoldThem) {
  EXPECT_EQ(led_to("A. bus, A. ×alba"), "Aus bus + Aus ×alba");
  EXPECT_EQ(led_to("Aus bus and A. ×alba Weng."), "Aus bus + Aus ×alba");
}

TEST(PrintedHybridNames, HybridGeneraKeepTheirSignBehindABlank) {
  EXPECT_EQ(sketch("1. Flowers white ×Ausobusella alba\n"
                   "1. Flowers yellow Ausella flava\n"),
            "1[1] Flowers white -> ×Ausobusella alba\n1[1] Flowers yellow -> Ausella flava\n");
  EXPECT_EQ(sketch("1. Flowers white × Ausobusella alba Weng.\n"
                   "1. Flowers yellow Ausella flava Tor.\n"),
            "1[1] Flowers white -> × Ausobusella alba\n1[1] Flowers yellow -> Ausella flava\n");
}

TEST(PrintedHybridNames, ParentsOfAFormulaMayBearAuthors) {
  EXPECT_EQ(led_to("Aus dus Roe × Aus eus (Roe) Dorn"), "Aus dus × Aus eus");
  EXPECT_EQ(led_to("A. dus × A. eus"), "Aus dus × Aus eus");
}

TEST(PrintedHybridNames, AFormulaMayStandBehindABlank) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white A. alba Roe × A. busa\n"
                   "1. Flowers yellow A. flava\n"),
            "1[1] Flowers white -> Ausella alba × Ausella busa\n"
            "1[1] Flowers yellow -> Ausella flava\n");
}

TEST(PrintedHybridNames, NothosubspeciesAreOfTheName) {
  EXPECT_EQ(led_to("Aus bus nothosubsp. minor Tor."), "Aus bus nothosubsp. minor");
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white A. alba nothosubsp. minor Tor.\n"
                   "1. Flowers yellow A. flava nothovar. major\n"),
            "1[1] Flowers white -> Ausella alba nothosubsp. minor\n"
            "1[1] Flowers yellow -> Ausella flava nothovar. major\n");
}

TEST(PrintedHybridNames, ACountBeforeTheSignIsNoName) {
  EXPECT_EQ(sketch("1. Spores 3 × 4 µm Ausella alba\n"
                   "1. Spores 5 × 6 µm Ausella flava\n"),
            "1[1] Spores 3 × 4 µm -> Ausella alba\n1[1] Spores 5 × 6 µm -> Ausella flava\n");
}

}  // namespace
}  // namespace keydrift
