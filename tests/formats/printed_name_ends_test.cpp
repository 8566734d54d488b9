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

TEST(PrintedNameEnds, TwoLowLinesMayLeadToANumber) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Tibia straight, without a tooth on its margin__ lO\n"
                   "   Tibia sinuate, with a tooth before the middle ....... busa (Roe)\n"
                   "10. Third interval of elytra with a tuft ....... cusa Dorn\n"
                   "   Third interval of elytra without tuft or hairs__ 11\n"
                   "11. Legs red ....... dusa Dorn\n"
                   "   Legs black ....... fusa Dorn\n"),
            "1[1] Tibia straight, without a tooth on its margin -> 10\n"
            "1[] Tibia sinuate, with a tooth before the middle -> Ausella busa\n"
            "10[10] Third interval of elytra with a tuft -> Ausella cusa\n"
            "10[] Third interval of elytra without tuft or hairs -> 11\n"
            "11[11] Legs red -> Ausella dusa\n"
            "11[] Legs black -> Ausella fusa\n");
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

TEST(PrintedNameEnds, AGenusAloneEndsTheLastSentence) {
  EXPECT_EQ(sketch("1. Shell with a keel ..... Ausella\n"
                   "1. Shell round ..... 2\n"
                   "2. Ribs strong; body chamber long ..... Busella\n"
                   "2. Ribs weak; body chamber unknown. Cusella\n"),
            "1[1] Shell with a keel -> Ausella\n1[1] Shell round -> 2\n"
            "2[2] Ribs strong; body chamber long -> Busella\n"
            "2[2] Ribs weak; body chamber unknown. -> Cusella\n");
}

// Where leaders are the rule; the last lead without label ends in `end`.
std::string genera_ending_in(std::string_view end) {
  auto const all = sketch(
      "Key to the genera of Auselleae\n\n"
      "1. Face convex, the clypeus wide....... Busella Roe\n   Face flat....... 2\n"
      "2. Legs red....... Cusella Dorn\n   Legs black....... 3\n"
      "3. Crown with a carina....... Dusella Roe\n   Crown rounded, " +
      std::string{end} +
      "\n4. Ocelli near the eyes....... Gusella Dorn\n   Ocelli far apart....... Husella Roe\n");
  return all.substr(all.find("Crown with a carina"), all.find("4[4]") - all.find("Crown with"));
}

TEST(PrintedNameEnds, AGenusNeedsNoLeadersWithAnAuthorOfOthersOrTheWordsThatItIsNew) {
  std::string const front = "Crown with a carina -> Dusella\n3[] Crown rounded, ";
  EXPECT_EQ(genera_ending_in("the\n     color green. Fusella Dorn"),
            front + "the color green. -> Fusella\n");
  EXPECT_EQ(genera_ending_in("narrow\n     at middle Fusella, new genus"),
            front + "narrow at middle -> Fusella (new genus)\n");
  EXPECT_EQ(genera_ending_in("narrow\n     at middle Fusella, gen. nov."),
            front + "narrow at middle -> Fusella (gen. nov.)\n");
  // Another author than those of other genera; a genus that is spoken of.
  auto const unknown = genera_ending_in("the\n     color green. Fusella Moor");
  EXPECT_EQ(unknown.find("-> Fusella"), std::string::npos) << unknown;
  auto const spoken = genera_ending_in("as in\n     Fusella Dorn");
  EXPECT_EQ(spoken.find("-> Fusella"), std::string::npos) << spoken;
}

TEST(PrintedNameEnds, TwoHyphensBetweenWordsAreLeaders) {
  EXPECT_EQ(sketch("1. Scape dark; gaster longer than thorax------ 2\n"
                   "   Scape pale; gaster shorter than thorax--flavoscapus Lenz\n"
                   "2. Ovipositor long----californica Roe\n"
                   "   Ovipositor short----atriceps Roe\n"),
            "1[1] Scape dark; gaster longer than thorax -> 2\n"
            "1[] Scape pale; gaster shorter than thorax -> flavoscapus\n"
            "2[2] Ovipositor long -> californica\n2[] Ovipositor short -> atriceps\n");
}

TEST(PrintedNameEnds, AListMayGoOnOnTheNextLine) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear ..... 2\n"
                   "1. Wings dark ..... alba\n"
                   "2. Legs pale, as are the feet and the head .... durandi et\n"
                   "      millotini (females alike)\n"
                   "2. Legs dark ..... nigra\n"),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> Ausella alba\n"
            "2[2] Legs pale, as are the feet and the head -> Ausella durandi + Ausella millotini "
            "(females alike)\n"
            "2[2] Legs dark -> Ausella nigra\n");
}

TEST(PrintedNameEnds, APageBehindLeadersMayStandAboveTheName) {
  auto const text =
      "a.  Legs of one colour.\n"
      "   a1.  Size large  ......................  [p. 207.\n"
      "                                            cyanipes, Wend.,\n"
      "   b1.  Size small  ......................  rufa, Wend., p. 208.\n"
      "b.  Legs of two colours.\n"
      "   a2.  Head red  ........................  fulva, Wend., p. 209.\n"
      "   b2.  Head black  ......................  nigra, Wend., p. 210.\n";
  EXPECT_EQ(sketch(text),
            "1[a] Legs of one colour. -> 2\n1[b] Legs of two colours. -> 3\n"
            "2[a1] Size large -> cyanipes (Wend., p. 207.)\n"
            "2[b1] Size small -> rufa (Wend., p. 208.)\n"
            "3[a2] Head red -> fulva (Wend., p. 209.)\n"
            "3[b2] Head black -> nigra (Wend., p. 210.)\n");
  EXPECT_EQ(line_kinds(text), "lead, lead, destination, lead, lead, lead, lead");
}

TEST(PrintedNameEnds, AnEpithetInCapitalsAndItsPageStandOnALineOfTheirOwn) {
  auto const text =
      "Key to the species of Ausella\n"
      "\n"
      "a. Head rugose above.\n"
      "b. Fins short.\n"
      "ASPER, 2283.\n"
      "bb. Fins long.\n"
      "FALCATUS, 2284.\n"
      "aa. Head smooth.\n"
      "c. Rakers many.\n"
      "ALBUS, 2285.\n"
      "cc. Rakers few.\n"
      "NIGER, 2286.\n";
  EXPECT_EQ(sketch(text),
            "a[a] Head rugose above. -> b\na[aa] Head smooth. -> c\n"
            "b[b] Fins short. -> Ausella asper\nb[bb] Fins long. -> Ausella falcatus\n"
            "c[c] Rakers many. -> Ausella albus\nc[cc] Rakers few. -> Ausella niger\n");
  EXPECT_EQ(line_kinds(text),
            "heading, blank, lead, lead, destination, lead, destination, lead, lead, destination, "
            "lead, destination");
}

TEST(PrintedNameEnds, ACellMayListEpithetsWithTheirAuthors) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1.\tWings clear\tbus Roe or cus Dorn, n. sp.\n"
                   "–\tWings dark\t2\n"
                   "2.\tLegs pale\tdus Roe\n"
                   "–\tLegs dark\tfus (Roe), gus (Roe)\n"),
            "1[1] Wings clear -> Ausella bus + Ausella cus (n. sp.)\n1[–] Wings dark -> 2\n"
            "2[2] Legs pale -> Ausella dus\n2[–] Legs dark -> Ausella fus + Ausella gus\n");
}

TEST(PrintedNameEnds, ANumberAndADashBeforeANameFarInAreNoWordsOfTheLead) {
  auto const text =
      "Key to the species of Serella\n"
      "\n"
      "1. Calyx with long white hairs; bracts long\n"
      "                                        2841 — S. capitata Lor.\n"
      "1. Calyx bare ..... 2\n"
      "2. Flowers white ..... S. alba Lor.\n"
      "2. Flowers red; stems erect, much divided\n"
      "                                        2843 — S. rosea Lor.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Calyx with long white hairs; bracts long -> Serella capitata\n"
            "1[1] Calyx bare -> 2\n2[2] Flowers white -> Serella alba\n"
            "2[2] Flowers red; stems erect, much divided -> Serella rosea\n");
  EXPECT_EQ(line_kinds(text), "heading, blank, lead, destination, lead, lead, lead, destination");
}

TEST(PrintedNameEnds, AnEpithetMayBeBrokenOverTwoLines) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "(a) Cap white. 411.\n"
                   "     A. albida Roe.\n"
                   "(aa) Cap yellow, in grassy places. 415. A. distanti-\n"
                   "     folia Roe.\n"
                   "\n"
                   "402. Ausella lignicola Roe. (EDIBLE)\n"),
            "a[a] Cap white. -> Ausella albida\n"
            "a[aa] Cap yellow, in grassy places. -> Ausella distantifolia\n");
}

TEST(PrintedNameEnds, ABracketMayAskWhetherTheSpeciesAreDistinct) {
  auto const text =
      "1   Spores smooth . . . . . . . . . . . . . 2\n"
      "1*  Spores rough . . . . . . . . . . . . . . 3\n"
      "2   Cap dry . . . . . . . . . . . . A. busa Roe\n"
      "2*  Cap wet, in woods. Roads.\n"
      "    Heath C. A. cusa (Roe) Dorn (whether distinct from A. dusa Roe?)\n"
      "\n"
      "      Two kinds of this size are known\n"
      "\n"
      "3   Stem hollow . . . . . . . . . . A. eusa Roe\n"
      "3*  Stem solid . . . . . . . . . . . A. fusa Roe\n";
  EXPECT_EQ(
      sketch(text),
      "1[1] Spores smooth -> 2\n"
      "1[1*] Spores rough -> 3\n"
      "2[2] Cap dry -> A. busa\n"
      "2[2*] Cap wet, in woods. Roads. Heath C. -> A. cusa (whether distinct from A. dusa Roe?)\n"
      "3[3] Stem hollow -> A. eusa\n"
      "3[3*] Stem solid -> A. fusa\n");
  EXPECT_EQ(line_kinds(text),
            "lead, lead, lead, lead, continuation, blank, heading, blank, lead, lead");
}

TEST(PrintedNameEnds, CapitalsBehindAFullStopNeedNoLatinEnding) {
  EXPECT_EQ(sketch("83. AUSELLA Roe.\n\n"
                   "a. Scales large; eye large.\n"
                   "b. Body deep. MINOR, 417.\n"
                   "bb. Body slender. OHKANUS, 418.\n"
                   "aa. Scales small; lateral line running close to the base of the\n"
                   "anal. ELASSOCHIR, 416.\n"),
            "a[a] Scales large; eye large. -> b\n"
            "a[aa] Scales small; lateral line running close to the base of the anal. -> Ausella "
            "elassochir (416.)\n"
            "b[b] Body deep. -> Ausella minor (417.)\n"
            "b[bb] Body slender. -> Ausella ohkanus (418.)\n");
}

TEST(PrintedNameEnds, ARangeOverTwoLinesLeadsNowhere) {
  EXPECT_EQ(sketch("83. AUSELLA Roe.\n\n"
                   "a. Mouth oblique; anal rays 8. OHKANUS, 412.\n"
                   "aa. Mouth level; anal rays 9\n"
                   "to 11.\n"
                   "b. Head pale. MINOR, 413.\n"
                   "bb. Head dark. NEBRODES, 414.\n"),
            "a[a] Mouth oblique; anal rays 8. -> Ausella ohkanus (412.)\n"
            "a[aa] Mouth level; anal rays 9 to 11. -> b\n"
            "b[b] Head pale. -> Ausella minor (413.)\n"
            "b[bb] Head dark. -> Ausella nebrodes (414.)\n");
}

TEST(PrintedNameEnds, NewSubspeciesBehindLeadersCloseALead) {
  EXPECT_EQ(sketch("Genus Ausella Roe\n\n"
                   "1. Bands entire--------rufa rufa Roe (p. 122)\n"
                   "   Bands broken--------2\n"
                   "2. Legs dark brown--------rufa fracta n. subsp. (p. 123)\n"
                   "   Legs rufous--------pallida Dorn (p. 124)\n"),
            "1[1] Bands entire -> Ausella rufa rufa (p. 122)\n"
            "1[] Bands broken -> 2\n"
            "2[2] Legs dark brown -> Ausella rufa fracta (n. subsp. (p. 123))\n"
            "2[] Legs rufous -> Ausella pallida (p. 124)\n");
}

TEST(PrintedNameEnds, AKnownAuthorTellsAnEpithetFromWords) {
  EXPECT_EQ(sketch("Genus Ausella Roe\n\n"
                   "1 (4) Mouth with teeth.\n"
                   "2 (3) Three teeth, one above and two below tridens Ogbourne.\n"
                   "3 (2) One tooth ... ... ... ... unidens Ogbourne.\n"
                   "4 (1) Mouth without teeth.\n"
                   "5 (6) Polished ... ... ... ... vitrina Penhal.\n"
                   "6 (5) Dull.\n"
                   "7 (8) Spire high; height exceeding the width turbinella Ogb.\n"
                   "8 (7) Spire low ... ... ... ... depressa Penhal.\n"),
            "1[1] Mouth with teeth. -> 2\n"
            "1[4] Mouth without teeth. -> 5\n"
            "2[2] Three teeth, one above and two below -> Ausella tridens\n"
            "2[3] One tooth -> Ausella unidens\n"
            "5[5] Polished -> Ausella vitrina\n"
            "5[6] Dull. -> 7\n"
            "7[7] Spire high; height exceeding the width -> Ausella turbinella\n"
            "7[8] Spire low -> Ausella depressa\n");
}

TEST(PrintedNameEnds, ANounBehindAPrepositionIsNoGenus) {
  EXPECT_EQ(sketch("Gattung Ausella Roe\n\n"
                   "1 (2) Kleiner, fast kugelig. — Insel, im Moos. globulus Roe.\n"
                   "2 (1) Größer.\n"
                   "3 (4) Schenkel mit Zähnen. — Tal des Flusses. Dornwegi n. sp.\n"
                   "4 (3) Schenkel glatt.\n"
                   "5 (6) Stirn breit. — Hochland. submaculosus Roe.\n"
                   "6 (5) Stirn schmal. — Hochland. nudus Roe.\n"),
            "1[1] Kleiner, fast kugelig. — Insel, im Moos. -> Ausella globulus\n"
            "1[2] Größer. -> 3\n"
            "3[3] Schenkel mit Zähnen. — Tal des Flusses. -> Ausella dornwegi (n. sp.)\n"
            "3[4] Schenkel glatt. -> 5\n"
            "5[5] Stirn breit. — Hochland. -> Ausella submaculosus\n"
            "5[6] Stirn schmal. — Hochland. -> Ausella nudus\n");
}

TEST(PrintedNameEnds, ABinomialInBracketsFollowsACommonName) {
  EXPECT_EQ(sketch("1A. Juice milky ..... Go to 2\n"
                   "1B. Juice clear ..... Go to 3\n"
                   "2A. Prickles along the midrib\n"
                   "COMMON BITTERLEAF (Amarotis echinata). Winter annual. See photo 1.\n"
                   "2B. No prickles\n"
                   "SMALL BITTERLEAF (Amarotis campestris). Photo 2.\n"
                   "3A. Plant prostrate ..... UPRIGHT MATSPURGE (Chamaelacta erecta)\n"
                   "3B. Plant upright\n"
                   "        Red Mole (Terricastor ruber)\n"),
            "1[1A] Juice milky -> 2\n"
            "1[1B] Juice clear -> 3\n"
            "2[2A] Prickles along the midrib -> Amarotis echinata (COMMON BITTERLEAF; Winter "
            "annual. See photo 1.)\n"
            "2[2B] No prickles -> Amarotis campestris (SMALL BITTERLEAF; Photo 2.)\n"
            "3[3A] Plant prostrate -> Chamaelacta erecta (UPRIGHT MATSPURGE)\n"
            "3[3B] Plant upright -> Terricastor ruber (Red Mole)\n");
}

TEST(PrintedNameEnds, AGenusMayBeLedToWithItsOneSpecies) {
  EXPECT_EQ(sketch("1. Gills present ..... 2\n"
                   "- Gills absent ..... 3\n"
                   "2. Three ocelli ..... Tribratha, only T. marginata (Esker)\n"
                   "- Two ocelli ..... Dinobratha Roe, 1999 (single species: D. binoculata Roe)\n"
                   "3. Frons hairy ..... Monoctera Roe (2 species)\n"
                   "- Frons bare ..... Ammoderis (one species)\n"),
            "1[1] Gills present -> 2\n"
            "1[-] Gills absent -> 3\n"
            "2[2] Three ocelli -> Tribratha marginata (Tribratha, only)\n"
            "2[-] Two ocelli -> Dinobratha (single species: D. binoculata Roe)\n"
            "3[3] Frons hairy -> Monoctera (2 species)\n"
            "3[-] Frons bare -> Ammoderis (one species)\n");
}

TEST(PrintedNameEnds, ABracketMayPointAtAKeyByItsTitle) {
  EXPECT_EQ(sketch("1. Setae long ..... Ausella s. str. (see Key to species of subgenus Ausella)\n"
                   "- Setae short ..... Key to Bats (Chapter 6)\n"
                   "\n"
                   "Key to species of subgenus Ausella\n"
                   "\n"
                   "1. Wing spotted ..... A. busa\n"
                   "- Wing hyaline ..... A. cusa\n"),
            "1[1] Setae long -> key: Key to species of subgenus Ausella (Ausella s. str.)\n"
            "1[-] Setae short -> key: Key to Bats\n"
            "1[1] Wing spotted -> A. busa\n"
            "1[-] Wing hyaline -> A. cusa\n");
}

TEST(PrintedNameEnds, SayingThatASpeciesIsNewEndsALead) {
  EXPECT_EQ(sketch("Genus Ausella Roe\n\n"
                   "1. Eyes large ..... 2\n"
                   "- Eyes small; elytra short nana, n. sp.\n"
                   "2. Scales brown with a mark semicarinata, new species (p. 31)\n"
                   "- Scales gray; Texas and Coahuila pallida Orvey (p. 32)\n"),
            "1[1] Eyes large -> 2\n"
            "1[-] Eyes small; elytra short -> Ausella nana (n. sp.)\n"
            "2[2] Scales brown with a mark -> Ausella semicarinata (new species (p. 31))\n"
            "2[-] Scales gray; Texas and Coahuila -> Ausella pallida (p. 32)\n");
}

TEST(PrintedNameEnds, MarksOfNewNamesMayBeOneWord) {
  EXPECT_EQ(sketch("Genus Torvoseius Roe\n\n"
                   "1. Idiosoma 540 long ..... reticulatus sp.n.\n"
                   "- Idiosoma 390 long ..... modestus (Barlow)\n"),
            "1[1] Idiosoma 540 long -> Torvoseius reticulatus (sp.n.)\n"
            "1[-] Idiosoma 390 long -> Torvoseius modestus\n");
}

TEST(PrintedNameEnds, AVarietyStandsBeneathTheEpithetReadLast) {
  EXPECT_EQ(sketch("Genus TARNOTHECA Roe\n\n"
                   "1. Brun ..... 9. barbata Sauvage.\n"
                   "- Noir ..... var. nigrita Jeannot.\n"),
            "1[1] Brun -> Tarnotheca barbata\n"
            "1[-] Noir -> Tarnotheca barbata var. nigrita\n");
}

TEST(PrintedNameEnds, TheSpeciesOfAVarietyGoesWithIt) {
  EXPECT_EQ(sketch("Genus BRANTHOLUS Roe\n\n"
                   "1. Length 6 mm.; elytra black between the\n"
                   "tubercles torvus Wellard, p. 163.\n"
                   "- Length 5 mm.; area represented by a few\n"
                   "brown scales torvus var. agrestis Wellard, p. 164.\n"),
            "1[1] Length 6 mm.; elytra black between the tubercles -> Brantholus torvus (p. 163.)\n"
            "1[-] Length 5 mm.; area represented by a few brown scales -> Brantholus torvus var. "
            "agrestis (p. 164.)\n");
}

TEST(PrintedNameEnds, AStopSetOffByABlankIsNoLeader) {
  EXPECT_EQ(sketch("1. Ovary with 2 cells ............ 2\n"
                   "1'. Ovary with 4 cells ............ 3\n"
                   "2. Tree ............ 10. B. paludosa\n"
                   "2'. Shrub, the leaves revolute at the mar-\n"
                   "    gin ............ 11. B. litoralis .\n"
                   "3. Hairs red ............ 12. B. ferruginea\n"
                   "3'. Hairs none ............ 13. B. glabra\n"),
            "1[1] Ovary with 2 cells -> 2\n"
            "1[1'] Ovary with 4 cells -> 3\n"
            "2[2] Tree -> B. paludosa\n"
            "2[2'] Shrub, the leaves revolute at the margin -> B. litoralis\n"
            "3[3] Hairs red -> B. ferruginea\n"
            "3[3'] Hairs none -> B. glabra\n");
}

TEST(PrintedNameEnds, TwoDotsAreLeftOfLeadersOnAFullLine) {
  EXPECT_EQ(sketch("5a. Aperture oval . . . . . . . . . 6\n"
                   "5b. Aperture nearly circular, the whorls\n"
                   "     convex, sutures deep (Fig. 13) . .Hydrella sp. A\n"
                   "6a. Shell flat . . . . . . . . Hydrella plana\n"
                   "6b. Shell high . . . . . . . . Hydrella sp.1\n"),
            "5[5a] Aperture oval -> 6\n"
            "5[5b] Aperture nearly circular, the whorls convex, sutures deep (Fig. 13) -> Hydrella "
            "sp. A\n"
            "6[6a] Shell flat -> Hydrella plana\n"
            "6[6b] Shell high -> Hydrella sp.1\n");
}

TEST(PrintedNameEnds, GermanNounsAndAdjectivesAreNoNames) {
  EXPECT_EQ(sketch("1 (2) Halsschild schwarz, Beine bis auf die dunklen\n"
                   "      Schenkel rotgelb. — Mitteleuropa.\n"
                   "                                   picea (Roe)\n"
                   "2 (1) Zwischenräume mit einer Reihe kurzer, aufstehender\n"
                   "      Borsten. — Alpen.            hirta Roe\n"),
            "1[1] Halsschild schwarz, Beine bis auf die dunklen Schenkel rotgelb. — Mitteleuropa. "
            "-> picea\n"
            "1[2] Zwischenräume mit einer Reihe kurzer, aufstehender Borsten. — Alpen. -> hirta\n");
}

TEST(PrintedNameEnds, TheSameGenusBehindAStroke) {
  EXPECT_EQ(sketch("Key to Vellonella\n"
                   "\n"
                   "1. Cap white at first, caulocystidia only in the top quarter 2\n"
                   "- Cap tawny or fox-red from the start Vellonella lateritia\n"
                   "2. Cap large, becoming salmon in blotches; caulocystidia only in the top\n"
                   "quarter Vellonella rosella / V. whitmarshii\n"
                   "- Cap small Vellonella rosa / V. alba (I can't separate these)\n"),
            "1[1] Cap white at first, caulocystidia only in the top quarter -> 2\n"
            "1[-] Cap tawny or fox-red from the start -> Vellonella lateritia\n"
            "2[2] Cap large, becoming salmon in blotches; caulocystidia only in the top quarter -> "
            "Vellonella rosella + Vellonella whitmarshii\n"
            "2[-] Cap small -> Vellonella rosa + Vellonella alba (I can't separate these)\n");
}

TEST(PrintedNameEnds, FiguresBehindANewSpecies) {
  EXPECT_EQ(
      sketch("Synopsis of the species of Nomiella.\n"
             "\n"
             "1 (4). Propodeum with ridges.\n"
             "2 (3). Hind tibiæ ferruginous; flagellum beneath\n"
             "orange . . . . . . . ferrugineipes, sp. n. (fig. 3).\n"
             "3 (2). Hind tibiæ dark; scutellum with two tubercles.\n"
             "smaragdula, Harbeck (figs. 1, 2).\n"
             "4 (1). Propodeum without ridges . . . . . sulcata, Mellish.\n"),
      "1[1] Propodeum with ridges. -> 2\n"
      "1[4] Propodeum without ridges -> Nomiella sulcata (Mellish)\n"
      "2[2] Hind tibiæ ferruginous; flagellum beneath orange -> Nomiella ferrugineipes (sp. n.)\n"
      "2[3] Hind tibiæ dark; scutellum with two tubercles. -> Nomiella smaragdula (Harbeck)\n");
}

TEST(PrintedNameEnds, SmallWordsOfOtherLanguagesAreNoEpithets) {
  EXPECT_EQ(
      sketch("Clé des espèces de Lusantha\n"
             "\n"
             "1. Folhas inteiras. Serras do norte e centro. Maio-Junho L. tomentosa Sequeira\n"
             "- Folhas dentadas. Serras do norte e centro. Junho-\n"
             "Julho L. incisa Moreira\n"),
      "1[1] Folhas inteiras. Serras do norte e centro. Maio-Junho -> Lusantha tomentosa\n"
      "1[-] Folhas dentadas. Serras do norte e centro. Junho-Julho -> Lusantha incisa\n");
}

TEST(PrintedNameEnds, GeneraInCapitalsBehindWordsThatEndAsEpithets) {
  EXPECT_EQ(sketch("Key to genera\n"
                   "\n"
                   "1 Prosternum bare ........ THOLURA Measham (p. 13)\n"
                   "- Prosternum with a pair of setulae CNEMOLERA Harding (p. 14)\n"),
            "1[1] Prosternum bare -> Tholura (p. 13)\n"
            "1[-] Prosternum with a pair of setulae -> Cnemolera (p. 14)\n");
}

}  // namespace
}  // namespace keydrift
