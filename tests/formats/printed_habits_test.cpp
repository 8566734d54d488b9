// Habits of floras, faunas and journals: genera over the keys of a file, epithets with capitals,
// numbers left out, signs of second leads, footnotes.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

// What the second lead of a key leads to whose other leads end like that.
std::string led_beside(std::string_view destination, std::string_view others = "A. bus") {
  auto const text = "Key to the species of Aus\n\n1. Wings clear ..... 2\n– Wings dark ..... " +
                    std::string{destination} + "\n2. Legs pale ..... " + std::string{others} +
                    "\n– Legs dark ..... " + std::string{others} + "\n";
  auto const whole = sketch(text);
  auto const begin = whole.find("Wings dark -> ") + 14;
  return whole.substr(begin, whole.find('\n', begin) - begin);
}

TEST(PrintedHabits, AGenusOverAKeyIsThatOfItsEpithets) {
  for (std::string const title : {"Gen. BUSELLA Roe, 1890", "Genus BUSELLA Roe",
                                  "Род BUSELLA Roe, 1911", "Gattung Busella"}) {
    auto const text = "Genus AUSELLA Roe\n\n1. Wings clear ..... bus\n– Wings dark ..... cus\n\n" +
                      title +
                      "\n\nKey to species\n\n1. Legs pale ..... dus\n– Legs dark ..... eus\n";
    EXPECT_EQ(sketch(text),
              "1[1] Wings clear -> Ausella bus\n1[–] Wings dark -> Ausella cus\n"
              "1[1] Legs pale -> Busella dus\n1[–] Legs dark -> Busella eus\n")
        << title;
  }
}

TEST(PrintedHabits, AGenusOverAKeyIsThatOfItsAbbreviations) {
  EXPECT_EQ(sketch("Genus ATERA Roe\n\n1. Wings clear ..... A. bus\n– Wings dark ..... A. cus\n\n"
                   "Genus AUSELLA Roe\n\n1. Legs pale ..... A. dus\n– Legs dark ..... A. eus\n"),
            "1[1] Wings clear -> Atera bus\n1[–] Wings dark -> Atera cus\n"
            "1[1] Legs pale -> Ausella dus\n1[–] Legs dark -> Ausella eus\n");
}

TEST(PrintedHabits, SerialKeysFollowEachOtherWithoutAHeading) {
  EXPECT_EQ(
      sketch("1 (2). Wings clear ..... Aus bus\n2 (1). Wings dark.\n3 (4). Legs pale ..... Aus "
             "cus\n4 (3). Legs dark ..... Aus dus\n\nOf Bus two species are known.\n\n"
             "1 (2). Head red ..... Bus bus\n2 (1). Head black.\n3 (4). Eyes round ..... Bus "
             "cus\n4 (3). Eyes oval ..... Bus dus\n"),
      "1[1] Wings clear -> Aus bus\n1[2] Wings dark. -> 3\n3[3] Legs pale -> Aus cus\n"
      "3[4] Legs dark -> Aus dus\n1[1] Head red -> Bus bus\n1[2] Head black. -> 3\n"
      "3[3] Eyes round -> Bus cus\n3[4] Eyes oval -> Bus dus\n");
}

TEST(PrintedHabits, TheSpeciesInCapitalsIsNoGenus) {
  EXPECT_EQ(
      sketch("KEY TO THE SPECIES OF AUSON\n\n1. Wings clear ..... bus\n– Wings dark ..... cus\n\n"
             "AUSON BUSUS BUSUS Roe\n\nScales smooth.\n"),
      "1[1] Wings clear -> Auson bus\n1[–] Wings dark -> Auson cus\n");
}

TEST(PrintedHabits, AWorkIsNoGenus) {
  EXPECT_EQ(
      sketch("11      MONOGRAPHIA AUSELLARUM\n\nCONSPECTUS SPECIERUM\n\n1. Alae clarae ..... A. "
             "bus\n– Alae fuscae ..... A. cus\n"),
      "1[1] Alae clarae -> Ausellarum bus\n1[–] Alae fuscae -> Ausellarum cus\n");
}

TEST(PrintedHabits, AnAccountNamesTheGenusOfItsSpecies) {
  EXPECT_EQ(sketch("1. Wings clear ..... A. bus\n– Wings dark ..... A. cus\n\n"
                   "Ausomyces cus (Roe) Dorn. Cap white.\n"),
            "1[1] Wings clear -> Ausomyces bus\n1[–] Wings dark -> Ausomyces cus\n");
}

TEST(PrintedHabits, EpithetsOfPersonsMayHaveACapital) {
  EXPECT_EQ(led_beside("A. Smithi Roe"), "Aus smithi");
  EXPECT_EQ(led_beside("A. Dorniana"), "Aus dorniana");
  EXPECT_EQ(led_beside("Ausella Smithii Roe"), "Ausella smithii");
  EXPECT_EQ(led_beside("Ausella Rossi, 1790"), "Ausella");
  EXPECT_EQ(led_beside("7. Smithi Roe", "bus Roe"), "Smithi Roe");  // two epithets are no habit
  EXPECT_EQ(
      sketch("Gen. AUSELLA Roe, 1834\n\n1. Wings clear ..... 2\n– Wings dark ..... 1. Smithi Roe.\n"
             "2. Legs pale ..... 2. bus Roe\n– Legs dark ..... 3\n3. Head red ..... 3. cus "
             "Roe\n– Head black ..... 4. dus Roe\n"),
      "1[1] Wings clear -> 2\n1[–] Wings dark -> Ausella smithi\n2[2] Legs pale -> Ausella bus\n"
      "2[–] Legs dark -> 3\n3[3] Head red -> Ausella cus\n3[–] Head black -> Ausella dus\n");
}

TEST(PrintedHabits, TheNumberOfTheNextCoupletMayBeLeftOut) {
  EXPECT_EQ(
      sketch("1\tWings clear\n1:\tWings dark\t4\n2\tLegs pale\n2:\tLegs dark\t1. Aus bus\n"
             "3\tHead red\t2. Aus cus\n3:\tHead black\t3. Aus dus\n4\tEyes round\t4. Aus eus\n"
             "4:\tEyes oval\n5\tLip thin\t5. Aus fus\n5:\tLip thick\t6. Aus gus\n"),
      "1[1] Wings clear -> 2\n1[1] Wings dark -> 4\n2[2] Legs pale -> 3\n"
      "2[2] Legs dark -> Aus bus\n3[3] Head red -> Aus cus\n3[3] Head black -> Aus dus\n"
      "4[4] Eyes round -> Aus eus\n4[4] Eyes oval -> 5\n5[5] Lip thin -> Aus fus\n"
      "5[5] Lip thick -> Aus gus\n");
  // Where other numbers are led to by dots, one was forgotten.
  EXPECT_NE(sketch("1. Wings clear ..... 2\n– Wings dark ..... Aus bus\n2. Legs pale\n– Legs dark "
                   "..... Aus cus\n3. Head red ..... Aus dus\n– Head black ..... Aus eus\n")
                .find("2[2] Legs pale -> ?\n"),
            std::string::npos);
}

TEST(PrintedHabits, APlusMayMarkTheOtherLead) {
  auto const text =
      "1\tWings clear\t(2)\n+\tWings dark\t1 Aus bus\n2\tLegs pale\t2 Aus cus\n"
      "+\tLegs dark\t3 Aus dus\n\nRelated Objects\nLower Taxa: Aus bus · Aus cus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n1[+] Wings dark -> Aus bus\n2[2] Legs pale -> Aus cus\n"
            "2[+] Legs dark -> Aus dus\n");
}

TEST(PrintedHabits, FullWidthDigitsAreDigits) {
  auto const text =
      std::string{"１．叶对生…………２\n１．叶互生…………Aus bus\n２．花瓣白色，长5～7毫米…………"} +
      "白哈 Aus cus\n２．花瓣红色…………Aus dus\n";
  EXPECT_EQ(sketch(text),
            "1[1] 叶对生 -> 2\n1[1] 叶互生 -> Aus bus\n2[2] 花瓣白色，长5~7毫米 -> Aus cus "
            "(白哈)\n2[2] 花瓣红色 -> Aus dus\n");
  auto const edition = test::read_key(text).edition;
  EXPECT_EQ(edition.couplets.at(1).leads.at(0).destination_place.column, 18U);
  EXPECT_EQ(test::findings_of(text).front().substr(0, 64),
            "key.txt:1:1: information: 10 full-width digits, letters and sign");
  EXPECT_EQ(sketch("1 叶对生 (2)\n+ 叶互生 Aus bus\n2 花瓣白色 Aus cus\n+ 花瓣红色 Aus dus\n"),
            "1[1] 叶对生 -> 2\n1[+] 叶互生 -> Aus bus\n2[2] 花瓣白色 -> Aus cus\n"
            "2[+] 花瓣红色 -> Aus dus\n");
}

TEST(PrintedHabits, WordsBeforeANameMayBeSeveral) {
  EXPECT_EQ(led_beside("see Busella, p. 50"), "Busella (see; p. 50)");
  EXPECT_EQ(sketch("1. Wings clear ..... vit halvört A. bus L.\n– Wings dark ..... Aus cus\n"),
            "1[1] Wings clear -> Aus bus (vit halvört)\n1[–] Wings dark -> Aus cus\n");
}

TEST(PrintedHabits, ATribeMayStandBehindItsSubfamily) {
  EXPECT_EQ(led_beside("Ausinae: Busini Roe, 1844"), "Busini (Ausinae)");
}

TEST(PrintedHabits, AStarBehindTheKeyIsANote) {
  auto const text =
      std::string{
          "1. Wings clear ..... 2\n– Wings dark ..... 3\n2. Legs pale ..... Aus "
          "bus*\n– Legs dark ..... Aus cus\n3. Head red ..... 4\n– Head black ..... Aus "
          "dus\n4. Eyes round ..... Aus eus\n– Eyes oval ..... Aus fus\n\n"} +
      "* Not yet recorded here but to be expected.\n";
  auto const whole = sketch(text);
  EXPECT_NE(whole.find("Legs pale -> Aus bus\n"), std::string::npos) << whole;
  EXPECT_EQ(whole.find("Not yet"), std::string::npos) << whole;
}

TEST(PrintedHabits, ADashBeforeTheSizeOpensNoLead) {
  EXPECT_EQ(sketch("1. — Élytres bruns, à pubescence fauve.\n— Long. 4,5 mm ..... 1. bus Roe\n"
                   "— Élytres noirs; front plan. — Long.\n3 mm ..... 2. cus Roe\n"),
            "1[1] Élytres bruns, à pubescence fauve. — Long. 4,5 mm -> bus\n"
            "1[—] Élytres noirs; front plan. — Long. 3 mm -> cus\n");
}

TEST(PrintedHabits, AMisreadOneOpensTheKeyUnderAHeading) {
  EXPECT_EQ(
      sketch("1. Wings clear ..... 2\n– Wings dark ..... Aus bus\n2. Legs pale ..... Aus cus\n"
             "– Legs dark ..... Aus dus\n\nGenus BUSELLA Roe\n\nl. Head red ..... 2\n– Head black "
             "..... bus\n2. Eyes round ..... cus\n– Eyes oval ..... dus\n"),
      "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n2[2] Legs pale -> Aus cus\n"
      "2[–] Legs dark -> Aus dus\n1[l] Head red -> 2\n1[–] Head black -> Busella bus\n"
      "2[2] Eyes round -> Busella cus\n2[–] Eyes oval -> Busella dus\n");
}

TEST(PrintedHabits, NamesInCapitalsStandBeforeTheSpecies) {
  EXPECT_EQ(led_beside("SWAMP SABINE, Busella virginea"), "Busella virginea (SWAMP SABINE)");
  EXPECT_EQ(led_beside("HAWBERRY, Busella sp."), "Busella sp. (HAWBERRY)");
  EXPECT_EQ(led_beside("AUSELLA, Busella cus"), "Ausella + Busella cus");
}

TEST(PrintedHabits, SubspeciesMayLackTheirGenus) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSON\n\n1. Wings clear; ventrals 160-171\n"
                   "                                        rubrus rubrus (p. 66)\n"
                   "Wings dark ------------- 2\n2. Legs pale ------------- albus (p. 67)\n"
                   "Legs dark ------------- longus (p. 68)\n"),
            "1[1] Wings clear; ventrals 160-171 -> Auson rubrus rubrus (p. 66)\n"
            "1[] Wings dark -> 2\n2[2] Legs pale -> Auson albus (p. 67)\n"
            "2[] Legs dark -> Auson longus (p. 68)\n");
}

TEST(PrintedHabits, EpithetsMayBeTwoBeforeANote) {
  EXPECT_EQ(led_beside("alata or rubrata (see the notes under the former)", "nigra"),
            "Aus alata + Aus rubrata (see the notes under the former)");
}

TEST(PrintedHabits, TheBracketSaysWhichSpeciesAGroupHas) {
  EXPECT_EQ(led_beside("gruppo di A. dus (A. dus (Roe), A. eus Dorn)"),
            "Aus dus + Aus eus (gruppo di A. dus)");
  EXPECT_EQ(led_beside("A. dus group (A. dus, A. eus)"), "Aus dus group (A. dus, A. eus)");
}

TEST(PrintedHabits, WhatIsLeftOfLeadersMayBeTwoDots) {
  EXPECT_EQ(
      sketch("1. Wings clear. (Eastern ranges.)..Aus bus (p. 4).\n– Wings dark ..... Aus cus\n"),
      "1[1] Wings clear. (Eastern ranges.) -> Aus bus (p. 4)\n1[–] Wings dark -> Aus cus\n");
}

TEST(PrintedHabits, NamesInCapitalsMayBePartedAtTheLinesEnd) {
  EXPECT_EQ(
      sketch("1. Wings clear ... CALYPTO-\n   TERAX Roe, p. 69\n– Wings dark; eyes with rings  "
             "BUSELLA Dorn, p. 93\n"),
      "1[1] Wings clear -> Calyptoterax (p. 69)\n1[–] Wings dark; eyes with rings -> Busella "
      "(p. 93)\n");
}

TEST(PrintedHabits, AThirdLeadMayBeForTheRest) {
  auto const key = [](std::string const& third) {
    return "Key to twigs\n\n1. Buds long → 2\n1. Buds short → 3\n2. Twigs red → Aus bus\n"
           "2. Twigs blue → Aus cus\n3. Buds naked → Aus dus\n3. Buds shiny → Aus eus\n" +
           third + "\n\nThat is all. Send us what you find.\n";
  };
  std::string const leads =
      "1[1] Buds long -> 2\n1[1] Buds short -> 3\n2[2] Twigs red -> Aus bus\n"
      "2[2] Twigs blue -> Aus cus\n3[3] Buds naked -> Aus dus\n3[3] Buds shiny -> Aus eus\n";
  EXPECT_EQ(sketch(key("3. Neither of these → you have found what I have not; tell me!")),
            leads + "3[3] Neither of these → you have found what I have not; tell me! -> ?\n");
  EXPECT_EQ(sketch(key("3. None of the above")), leads + "3[3] None of the above -> ?\n");
  // A line of a list that follows.
  EXPECT_EQ(sketch(key("3. Maps of all trails are sold at the gate of the park; ask for them")),
            leads);
}

TEST(PrintedHabits, TwoDotsTouchTheNumberOfASpecies) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "Rachis winged.\n"
                   "Rachis with a point at its end............. 1. A. platyrachis.\n"
                   "Rachis ending in a spikelet................ 2. A. floridula.\n"
                   "Rachis wingless.\n"
                   "Sheaths hirsute............................ 3. A. ciliatifolia.\n"
                   "Sheaths glabrous, or the collar sparsely pilose..4. A. glabra.\n"),
            "1[] Rachis winged. -> 2\n"
            "1[] Rachis wingless. -> 3\n"
            "2[] Rachis with a point at its end -> Ausella platyrachis\n"
            "2[] Rachis ending in a spikelet -> Ausella floridula\n"
            "3[] Sheaths hirsute -> Ausella ciliatifolia\n"
            "3[] Sheaths glabrous, or the collar sparsely pilose -> Ausella glabra\n");
}

TEST(PrintedHabits, TwoDotsStandBeforeANumberAtTheLinesEnd) {
  EXPECT_EQ(sketch("Key to Hydromelina\n"
                   "\n"
                   "1. Eyes hairy....................................2.\n"
                   "—. Eyes bare.....................................3.\n"
                   "2. Legs yellow...................flavipes Sturtee.\n"
                   "—. Legs black, rarely the knob brown..4.\n"
                   "3. Thorax with vittae.......................nubila Brann.\n"
                   "—. Thorax without vittae.....................notata, n. sp.\n"
                   "4. Halteres black....................aterrima Sturtee.\n"
                   "—. Halteres yellow....................morula Brann.\n"),
            "1[1] Eyes hairy -> 2\n"
            "1[—] Eyes bare -> 3\n"
            "2[2] Legs yellow -> Hydromelina flavipes\n"
            "2[—] Legs black, rarely the knob brown -> 4\n"
            "3[3] Thorax with vittae -> Hydromelina nubila\n"
            "3[—] Thorax without vittae -> Hydromelina notata (n. sp.)\n"
            "4[4] Halteres black -> Hydromelina aterrima\n"
            "4[—] Halteres yellow -> Hydromelina morula\n");
}

}  // namespace
}  // namespace keydrift
