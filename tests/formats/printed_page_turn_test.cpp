// Leads across a page's turn, heads that stand once, and numbers that only look like labels.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

constexpr auto kThree =
    "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Aus bus\n"
    "2[2] Lip thin and white -> Aus cus\n2[–] Lip thick -> Aus dus\n";

constexpr auto kTurnStart = "1. Shell smooth ..... 2\n– Shell ribbed ..... Aus bus\n";
constexpr auto kTurnEnd = "– Lip thick ..... Aus dus\n";

std::string broken(std::string const& before, std::string const& page, std::string const& after) {
  return kTurnStart + before + "\n\n" + page + "\n\n" + after + "\n" + kTurnEnd;
}

TEST(PrintedPageTurn, CarriesALeadsWordsOver) {
  auto const text =
      broken("2. Lip thin", "118            SHELLS OF AUS", "and white ..... Aus cus");
  EXPECT_EQ(sketch(text), kThree);
  EXPECT_EQ(line_kinds(text), "lead, lead, lead, blank, running head, blank, continuation, lead");
}

TEST(PrintedPageTurn, CarriesWordsWithACapitalOver) {
  auto const text = broken("2. Lip thin and", "[118]", "White ..... Aus cus");
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Aus bus\n"
            "2[2] Lip thin and White -> Aus cus\n2[–] Lip thick -> Aus dus\n");
}

TEST(PrintedPageTurn, GoesOnBehindWordsThatLookLikeAName) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Gattung Palmothrus\n\n"
                   "1 Schläfen kurz ………… 2\n– Schläfen lang ………… P. rufipennis ROE, 1874\n"
                   "2 Ausschnitt tief; Paramere die Spitze\n\n"
                   "Vardener Entomologische Blätter 31 (2007)                     219\n\n"
                   "des Mittellappens überragend ………… P. silvestris DORN, 1901\n"
                   "– Ausschnitt flach; Paramere kurz ………… P. opacus ROE, 1874\n"),
            "1[1] Schläfen kurz -> 2\n1[–] Schläfen lang -> Palmothrus rufipennis\n"
            "2[2] Ausschnitt tief; Paramere die Spitze des Mittellappens überragend -> Palmothrus "
            "silvestris\n2[–] Ausschnitt flach; Paramere kurz -> Palmothrus opacus\n");
}

TEST(PrintedPageTurn, LetsLeadersAnswerLeaders) {
  // The head is no more than a line of words: it stays a note, and the lead goes on behind it.
  auto const text =
      broken("2. Lip thin and white ........", "On the shells of Aus", "........ Aus cus");
  EXPECT_EQ(sketch(text), kThree);
}

TEST(PrintedPageTurn, KnowsAHeadThatStandsOnce) {
  for (auto const* head :
       {"44                 Shells", "Roe and Dorn, Shells of the marsh      219",
        "Roe (2018), DOI 10.0000/shells.44              17/29", "AUSIDAE. 113"}) {
    auto const text = broken("2. Lip thin and white ..... Aus cus", head, "");
    EXPECT_EQ(sketch(text), kThree) << head;
    EXPECT_NE(line_kinds(text).find("blank, running head, blank"), std::string::npos) << head;
  }
}

TEST(PrintedPageTurn, TakesNoLeadOfTheKeyForAHead) {
  // Blank lines around leads, and a wide gap before the number that each leads to.
  EXPECT_EQ(sketch("1. Shell smooth          2\n\n1. Shell ribbed          3\n\n"
                   "2. Lip thin          Aus bus\n\n2. Lip thick          Aus cus\n\n"
                   "3. Foot pale          Aus dus\n\n3. Foot dark          Aus eus\n"),
            "1[1] Shell smooth -> 2\n1[1] Shell ribbed -> 3\n2[2] Lip thin -> Aus bus\n"
            "2[2] Lip thick -> Aus cus\n3[3] Foot pale -> Aus dus\n3[3] Foot dark -> Aus eus\n");
}

TEST(PrintedPageTurn, KnowsHeadsWithAYearInFront) {
  EXPECT_EQ(sketch("1. Shell smooth and\n2011  ROE ET AL.: MARSH SHELLS  201\nshining ..... 2\n"
                   "– Shell ribbed ..... Aus bus\n2. Lip thin and\n"
                   "2011  ROE ET AL.: MARSH SHELLS  203\nwhite ..... Aus cus\n"
                   "– Lip thick ..... Aus dus\n"),
            "1[1] Shell smooth and shining -> 2\n1[–] Shell ribbed -> Aus bus\n"
            "2[2] Lip thin and white -> Aus cus\n2[–] Lip thick -> Aus dus\n");
}

TEST(PrintedPageTurn, TakesTheGenusFromAHeadOnlyWhereNoTitleNamesOne) {
  std::string const leads =
      "1. Shell smooth ..... 2\n– Shell ribbed ..... A. bus\n\n"
      "B. ROE: Ausella in the Marshes                 220\n\n"
      "2. Lip thin ..... A. cus\n– Lip thick ..... A. dus\n";
  EXPECT_NE(sketch("KEY TO THE SPECIES\n\n" + leads).find("Ausella cus"), std::string::npos);
  EXPECT_NE(sketch("KEY TO THE SPECIES OF AUDORA\n\n" + leads).find("Audora cus"),
            std::string::npos);
}

TEST(PrintedPageTurn, TakesTheNumberOfTheGenusForNoCouplet) {
  auto const text =
      "2. Ausella Roe\n\nHerbs.\n\n1. Stem round ..... 2\n– Stem square ..... 1. A. nova\n\n"
      "312                 AUSELLACEAE\n            2. Ausella\n\n"
      "2. Leaf green ..... 2. A. alba\n– Leaf red ..... 3. A. rubra\n";
  EXPECT_EQ(sketch(text),
            "1[1] Stem round -> 2\n1[–] Stem square -> Ausella nova\n"
            "2[2] Leaf green -> Ausella alba\n2[–] Leaf red -> Ausella rubra\n");
}

TEST(PrintedPageTurn, TakesANumberedGenusBehindLeadersForNoLead) {
  EXPECT_EQ(
      sketch("1. Stem round ..... 2\n1. Stem square ..... 3\n2. Leaf green ..... Busia\n"
             "2. Leaf red ..... 13. Ausia\n3. Root white ..... 14. Cusia\n"
             "3. Root brown ..... 4\n4. Seed one ..... 24. Dusia\n4. Seeds two ..... Eusia\n"),
      "1[1] Stem round -> 2\n1[1] Stem square -> 3\n2[2] Leaf green -> Busia\n"
      "2[2] Leaf red -> Ausia\n3[3] Root white -> Cusia\n3[3] Root brown -> 4\n"
      "4[4] Seed one -> Dusia\n4[4] Seeds two -> Eusia\n");
}

TEST(PrintedPageTurn, TakesACountAtTheFrontOfALineForNoLead) {
  EXPECT_EQ(sketch("1 Shell smooth; with 2\nribs or so ..... 2\n– Shell ribbed, the first of\n"
                   "1 kind only ..... Aus bus\n2 Lip thin; foot\n2 palm wide ..... Aus cus\n"
                   "– Lip thick ..... Aus dus\n"),
            "1[1] Shell smooth; with 2 ribs or so -> 2\n"
            "1[–] Shell ribbed, the first of 1 kind only -> Aus bus\n"
            "2[2] Lip thin; foot 2 palm wide -> Aus cus\n2[–] Lip thick -> Aus dus\n");
}

TEST(PrintedPageTurn, LeavesACountAtALeadsEndAboveItsCouplet) {
  EXPECT_EQ(
      sketch("1. Stem round.\n  2. Leaf green; stamens 4.\n    3. Root white ..... Aus bus\n"
             "    3. Root brown ..... Aus cus\n  2. Leaf red.\n    4. Seed one ..... Aus dus\n"
             "    4. Seeds two ..... Aus eus\n1. Stem square ..... Aus fus\n"),
      "1[1] Stem round. -> 2\n1[1] Stem square -> Aus fus\n"
      "2[2] Leaf green; stamens 4. -> 3\n2[2] Leaf red. -> 4\n3[3] Root white -> Aus bus\n"
      "3[3] Root brown -> Aus cus\n4[4] Seed one -> Aus dus\n4[4] Seeds two -> Aus eus\n");
}

TEST(PrintedPageTurn, TakesEpithetsOnLinesOfTheirOwn) {
  auto const text = sketch(
      "1. Shell smooth . . . . 2\n— Shell ribbed . . . . nova, Roe.\n2. Lip thin and\nwhite\n"
      " alba, Roe.\n— Lip thick . . . . rubra, n. sp.\n");
  EXPECT_NE(text.find("Lip thin and white -> alba"), std::string::npos) << text;
}

TEST(PrintedPageTurn, ReadsWordsInCapitalsBelowAGenusAsItsSpecies) {
  auto const text = sketch(
      "114. AUSELLA, Roe.\n\na. Fin black.  NOVA, 300.\naa. Fin red.\n b. Tail long.  ALBA, 301.\n"
      " bb. Tail short.\n  c. Eye small.  RUBRA, 302.\n  cc. Eye large.  MAGNA, 303.\n");
  EXPECT_NE(text.find("Ausella rubra"), std::string::npos) << text;
}

TEST(PrintedPageTurn, LeavesAccountsBehindTheKeyAlone) {
  auto const text = std::string{kTurnStart} + "2. Lip thin and white ..... Aus cus\n" + kTurnEnd +
                    "\n1. A. nova Roe, 1801. — Long. 7 mm. Black.\n";
  EXPECT_EQ(sketch(text), kThree);
}

TEST(PrintedPageTurn, TakesAGroupOnALineOfItsOwnForADestination) {
  auto const text = sketch(
      "Key to the groups of Aus\n\n1. Shell smooth or nearly so\nnova group\n"
      "– Shell ribbed ..... Aus bus\n\nKey to the species of the nova group\n\n"
      "1. Lip thin ..... Aus cus\n– Lip thick ..... Aus dus\n");
  EXPECT_NE(text.find("nearly so -> key: Key to the species of the nova group"), std::string::npos)
      << text;
}

TEST(PrintedPageTurn, FindsThePartThatAGroupsNameEnds) {
  auto const text = sketch(
      "Key to the groups of Aus\n\n1. Shell smooth ..... nova group\n– Shell ribbed ..... Aus bus\n"
      "\nKey to the species of the nova group\n\n1. Lip thin ..... Aus cus\n"
      "– Lip thick ..... Aus dus\n");
  EXPECT_NE(text.find("Shell smooth -> key: Key to the species of the nova group"),
            std::string::npos)
      << text;
}

TEST(PrintedPageTurn, KnowsAHeadWhosePageHasTheNumberOfTheNextCouplet) {
  auto const text =
      std::string{kTurnStart} + "2 E. ROE ET AL.\n2. Lip thin and white ..... Aus cus\n" + kTurnEnd;
  EXPECT_EQ(sketch(text), kThree);
  EXPECT_EQ(line_kinds(text), "lead, lead, running head, lead, lead");
}

TEST(PrintedPageTurn, KnowsAHeadWithATabOnTheFirstLine) {
  auto const text = "142\tShells of the Marsh 19 (2) 2007\n\n" + std::string{kTurnStart} +
                    "2. Lip thin and white ..... Aus cus\n" + kTurnEnd;
  EXPECT_EQ(sketch(text), kThree);
  EXPECT_EQ(line_kinds(text).substr(0, 12), "running head");
  // A genus with its author and year is a title.
  EXPECT_EQ(line_kinds("AUSELLA Roe 1805\n\n" + text.substr(text.find("1. "))).substr(0, 7),
            "heading");
}

TEST(PrintedPageTurn, KnowsTheFootAboveAPagesNumber) {
  EXPECT_EQ(sketch("1. Shell smooth. 2\n   Shell ribbed. Aus bus\n2. Lip thin. 3\n\n"
                   "                         Marsh Fauna, part 7.   3\n\n"
                   "                         — 34 —\n\n"
                   "   Lip thick. Aus cus\n3. Foot pale. Aus dus\n   Foot dark. Aus eus\n"),
            "1[1] Shell smooth. -> 2\n1[] Shell ribbed. -> Aus bus\n2[2] Lip thin. -> 3\n"
            "2[] Lip thick. -> Aus cus\n3[3] Foot pale. -> Aus dus\n3[] Foot dark. -> Aus eus\n");
}

TEST(PrintedPageTurn, LeavesAccountsInCapitalsBehindTheKeyAlone) {
  auto const text = std::string{kTurnStart} + "2. Lip thin and white ..... Aus cus\n" + kTurnEnd +
                    "\n1. A. NOVA, Roe. — Roe, Shells, p. 212, 4.\nOval. Head as long as wide...\n";
  EXPECT_EQ(sketch(text), kThree);
}

TEST(PrintedPageTurn, LeavesAccountsBehindAnOutlineAlone) {
  EXPECT_EQ(
      sketch("1. Stem round\n  2. Leaf green ..... 1. A. nova\n  2. Leaf red ..... 2. A. alba\n"
             "1. Stem square\n  3. Root white ..... 3. A. rubra\n  3. Root brown\n"
             "    4. Seed one ..... 4. A. magna\n    4. Seeds two ..... 5. A. x media\n\n"
             "1. A. nova Roe - Yellow Lantern. Stems to 40cm; petals 9-13mm.\n"),
      "1[1] Stem round -> 2\n1[1] Stem square -> 3\n2[2] Leaf green -> A. nova\n"
      "2[2] Leaf red -> A. alba\n3[3] Root white -> A. rubra\n3[3] Root brown -> 4\n"
      "4[4] Seed one -> A. magna\n4[4] Seeds two -> A. x media\n");
}

TEST(PrintedPageTurn, TakesAChaptersSignForNoFootnote) {
  EXPECT_EQ(line_kinds("§ 3. Shells\n\n" + std::string{kTurnStart} +
                       "2. Lip thin and white ..... Aus cus\n" + kTurnEnd),
            "heading, blank, lead, lead, lead, lead");
}

TEST(PrintedPageTurn, TakesTheWayBackForANote) {
  auto const text =
      "1. Shell smooth => 2\n\n- Shell ribbed => Aus bus\n\n2. Lip thin => 3\n\n- Lip thick => Aus "
      "cus\n"
      "back to couplet 1\n\n3. Foot pale => Aus dus\n\n- Foot dark => 4\nback to couplet 2\n\n"
      "4. Eye red => Aus eus\n\n- Eye black => Aus fus\nback to couplet 3\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> Aus bus\n2[2] Lip thin -> 3\n"
            "2[-] Lip thick -> Aus cus\n3[3] Foot pale -> Aus dus\n3[-] Foot dark -> 4\n"
            "4[4] Eye red -> Aus eus\n4[-] Eye black -> Aus fus\n");
}

TEST(PrintedPageTurn, KnowsANumberedGenusAndItsFootnoteWithoutBlankLines) {
  EXPECT_EQ(
      sketch("3. Ausella Roe*\n[from a word for shell]\n\n1. Shell smooth ..... 2\n"
             "– Shell ribbed ..... 1. A. buta\n2. Lip thin ..... 3\n– Lip thick ..... 2. A. cuta\n"
             "3. Foot pale ..... 3. A. duta\n– Foot dark ..... 4. A. euta\n\n"
             "* J. Roe & E. Dorn\n"),
      "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Ausella buta\n2[2] Lip thin -> 3\n"
      "2[–] Lip thick -> Ausella cuta\n3[3] Foot pale -> Ausella duta\n"
      "3[–] Foot dark -> Ausella euta\n");
}

TEST(PrintedPageTurn, KnowsAHeadThatRepeatsTheTitle) {
  auto const text =
      "Guide to Marshes No. 38\n"
      "\n"
      "1    Wings clear ......................... Go to 2\n"
      "     Wings dark ............................ Ausus\n"
      "2    Legs pale ............................. Busus\n"
      "     Legs dark ........................... Go to 3\n"
      "\n"
      "4                               Guide to Marshes No. 38\n"
      "\n"
      "3    Head long ............................. Cusus\n"
      "     Head short .......................... Go to 4\n"
      "4    Tail long ............................. Dusus\n"
      "     Tail short ............................ Eusus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n"
            "1[] Wings dark -> Ausus\n"
            "2[2] Legs pale -> Busus\n"
            "2[] Legs dark -> 3\n"
            "3[3] Head long -> Cusus\n"
            "3[] Head short -> 4\n"
            "4[4] Tail long -> Dusus\n"
            "4[] Tail short -> Eusus\n");
  EXPECT_EQ(
      line_kinds(text),
      "heading, blank, lead, lead, lead, lead, blank, running head, blank, lead, lead, lead, lead");
}

TEST(PrintedPageTurn, KnowsTheSignatureOfASheet) {
  auto const text =
      "1. (2.) Wings clear.\n"
      "2. (1.) Wings dark . . busus, Roe.\n"
      "\n"
      "16*\n"
      "\n"
      "244 Mr. J. Roe on Marsh Flies.\n"
      "\n"
      "3. (4.) Legs black . . cusus, Roe.\n"
      "4. (3.) Legs yellow . . dusus, Roe.\n"
      "\n"
      "246 Mr. J. Roe on Marsh Flies.\n";
  EXPECT_EQ(line_kinds(text),
            "lead, lead, blank, running head, blank, running head, blank, lead, lead, blank, "
            "running head");
}

TEST(PrintedPageTurn, ADashMayStandBehindThePagesNumber) {
  auto const text =
      "1   Lamellae grey . . . . . . . . 2\n"
      "1*  Lamellae white . . . . . . . . Ausa busa\n"
      "2   Spores smooth . . . . . . . . Ausa cusa\n"
      "2*  Spores rough, of\n"
      "\n"
      "222 – Agaricales\n"
      "\n"
      "    large size . . . . . . . . 3\n"
      "3   Cap dry . . . . . . . . Ausa dusa\n"
      "3*  Cap wet . . . . . . . . Ausa eusa\n";
  EXPECT_EQ(sketch(text),
            "1[1] Lamellae grey -> 2\n"
            "1[1*] Lamellae white -> Ausa busa\n"
            "2[2] Spores smooth -> Ausa cusa\n"
            "2[2*] Spores rough, of large size -> 3\n"
            "3[3] Cap dry -> Ausa dusa\n"
            "3[3*] Cap wet -> Ausa eusa\n");
  EXPECT_EQ(line_kinds(text),
            "lead, lead, lead, lead, blank, running head, blank, continuation, lead, lead");
}

TEST(PrintedPageTurn, ADotMayStandBehindThePagesNumber) {
  auto const text =
      "1 Eyes minute\tAusella busa Roe, 1871\n"
      "- Eyes large\t2\n"
      "2 Cirri long\tAusella cusa Roe, 1871\n"
      "- Cirri short\tAusella dusa Roe, 1871\n"
      "\n"
      "52 · Marsh News 512                                    ROE ET AL.\n"
      "\n"
      "Key to species of Busella\n"
      "\n"
      "1 Eyes red\tBusella busa Roe, 1871\n"
      "- Eyes black\tBusella cusa Roe, 1871\n";
  EXPECT_EQ(line_kinds(text),
            "lead, lead, lead, lead, blank, running head, blank, heading, blank, lead, lead");
}

TEST(PrintedPageTurn, DestinationsMayBeCopiedAsAColumnOfTheirOwn) {
  auto const text =
      "1. Ocelos presentes 2\n"
      "- Ocelos ausentes 3\n"
      "2(1). Olhos pilosos; fronte duas vezes mais\n"
      "alta que larga\n"
      "- Olhos nus; fronte quase quadrada\n"
      "3(1). Asas hialinas\n"
      "- Asas com manchas\n"
      "T. ocellatum Barroso\n"
      "T. calvum Lundgaard\n"
      "T. aureum Barroso\n"
      "T. cinereum (Wiedler)\n"
      "\n"
      "Tapirostoma calvum Lundgaard, 1948\n";
  EXPECT_EQ(sketch(text),
            "1[1] Ocelos presentes -> 2\n"
            "1[-] Ocelos ausentes -> 3\n"
            "2[2] Olhos pilosos; fronte duas vezes mais alta que larga -> Tapirostoma ocellatum\n"
            "2[-] Olhos nus; fronte quase quadrada -> Tapirostoma calvum\n"
            "3[3] Asas hialinas -> Tapirostoma aureum\n"
            "3[-] Asas com manchas -> Tapirostoma cinereum\n");
}

TEST(PrintedPageTurn, AVolumeAndItsPagesStandAtTheHeadOfAPage) {
  auto const text =
      "1\tWings clear ......... 2\n"
      "–\tWings dark ......... A. ausa Roe, 1944\n"
      "2\tLegs with 6 joints ......... 3\n"
      "–\tLegs with 7 joints ......... A. busa Roe, 1944\n"
      "62\tAda B. Roe & Cid Dorn / Marsh Monographs 412: 45–98 (2014)\n\n"
      "A\tB\tC\n\n"
      "Figure 4. Left wing. A Ausella ausa B A. busa. Scale bars: 1 mm.\n\n"
      "3\tHead long ......... A. cusa Roe, 1944\n"
      "–\tHead short ......... A. dusa Roe, 1944\n";
  EXPECT_EQ(
      line_kinds(text),
      "lead, lead, lead, lead, running head, blank, heading, blank, figure, blank, lead, lead");
}

TEST(PrintedPageTurn, ANumberBetweenTwoOfTheKeyIsNoPage) {
  EXPECT_EQ(sketch("8.   Notum with plates covering all\n"
                   "     of the segment                                 9\n\n"
                   "-    Notum membranous                               Ausella busa Roe\n\n"
                   "g.  Gills single                                    10\n\n"
                   "-    Gills in groups                                11\n\n"
                   "10.  Case of sand                                   Ausella cusa Roe\n\n"
                   "-    Case of twigs                                  Ausella dusa Roe\n\n"
                   "11.  Head pale                                      Ausella eusa Roe\n\n"
                   "-    Head dark                                      Ausella fusa Roe\n"),
            "8[8] Notum with plates covering all of the segment -> 9\n"
            "8[-] Notum membranous -> Ausella busa\n"
            "9[g] Gills single -> 10\n"
            "9[-] Gills in groups -> 11\n"
            "10[10] Case of sand -> Ausella cusa\n"
            "10[-] Case of twigs -> Ausella dusa\n"
            "11[11] Head pale -> Ausella eusa\n"
            "11[-] Head dark -> Ausella fusa\n");
}

TEST(PrintedPageTurn, ThePageAboveAFamilyOnTheNextPage) {
  EXPECT_EQ(sketch("TRICHOSTOLACEAE\n"
                   "\n"
                   "KEY TO GENERA\n"
                   "\n"
                   "Leaves opposite :\n"
                   "Corolla-lobes valvate ; fruit a drupe . . . . . . 1. Morovia\n"
                   "Corolla-lobes contorted ; fruit dry, splitting into\n"
                   "2 cocci . . . . . . . 2. Cremathole\n"
                   "\n"
                   "2 TRICHOSTOLACEAE\n"
                   "\n"
                   "Leaves alternate :\n"
                   "Stamens exserted ; calyx-lobes equal . . . . . 3. Trichostola\n"
                   "Stamens included ; calyx-lobes unequal . . . . . 4. Haddera\n"),
            "1[] Leaves opposite : -> 2\n"
            "1[] Leaves alternate : -> 3\n"
            "2[] Corolla-lobes valvate ; fruit a drupe -> Morovia\n"
            "2[] Corolla-lobes contorted ; fruit dry, splitting into 2 cocci -> Cremathole\n"
            "3[] Stamens exserted ; calyx-lobes equal -> Trichostola\n"
            "3[] Stamens included ; calyx-lobes unequal -> Haddera\n");
}

TEST(PrintedPageTurn, AHeadWithDotsBeforeThePageThatFollowsAnother) {
  EXPECT_EQ(sketch("Leonor Roe & Pavel Dorn / Marsh Studies 412: 61–104 (2014)    78\n"
                   "\n"
                   "Key to the species of Velocitrechus\n"
                   "\n"
                   "1 Pronotum with posterolateral seta ........ 2\n"
                   "– Pronotum without posterolateral seta ........ V. asetosus sp. n.\n"
                   "A revision of the genus Velocitrechus from the Sarna Mountains... 79\n"
                   "2 Larger species, body length over 7 mm ........ V. magnus (Roe, 1928)\n"
                   "– Smaller species, body length under 6 mm ........ V. minor Dorn, 1930\n"),
            "1[1] Pronotum with posterolateral seta -> 2\n"
            "1[–] Pronotum without posterolateral seta -> Velocitrechus asetosus (sp. n.)\n"
            "2[2] Larger species, body length over 7 mm -> Velocitrechus magnus\n"
            "2[–] Smaller species, body length under 6 mm -> Velocitrechus minor\n");
}

// The number of a page stands at its outer edge.
TEST(PrintedPageTurn, KnowsTheHeadsOfFacingPages) {
  EXPECT_EQ(line_kinds("Ausales 217\n"
                       "\n"
                       "14. Ausella Roe\n"
                       "\n"
                       "1 Blätter behaart ...... 2\n"
                       "1* Blätter kahl ...... 3\n"
                       "2 Stengel rund. – Rundes R. – A. busa Roe\n"
                       "2* Stengel kantig. – Graues R. – A. cusa Roe\n"
                       "\n"
                       "218 Ausales\n"
                       "\n"
                       "3 Blüten rot, doppelt so lang. 6–8.\n"
                       "Kalkäcker; selten. – Doldiges R. – A. dusa Roe\n"
                       "3* Blüten weiß. – Saat-R. – A. fusa Roe\n"),
            "running head, blank, heading, blank, lead, lead, lead, lead, blank, running head, "
            "blank, lead, continuation, lead");
}

TEST(PrintedPageTurn, TakesNumberedGroupsForNoHeads) {
  auto const text =
      "Group 1\n"
      "\n"
      "1. Wings clear ..... Ausella busa\n"
      "- Wings dark ..... Ausella cusa\n"
      "\n"
      "Group 2\n"
      "\n"
      "1. Legs red ..... Ausella dusa\n"
      "- Legs black ..... Ausella fusa\n";
  EXPECT_EQ(line_kinds(text), "heading, blank, lead, lead, blank, heading, blank, lead, lead");
}

// Second leads bear no labels, and the page's number stands without blank lines.
TEST(PrintedPageTurn, TakesABareNumberWithinALeadForAPage) {
  EXPECT_EQ(sketch("1. Wings clear ..... 2\n"
                   "Wings dark ..... 3\n"
                   "2. Legs red and long.\n"
                   "3\n"
                   "Thin in both sexes ..... Ausella busa\n"
                   "Legs black ..... Ausella cusa\n"
                   "3. Eyes red ..... Ausella dusa\n"
                   "Eyes black ..... Ausella fusa\n"),
            "1[1] Wings clear -> 2\n1[] Wings dark -> 3\n"
            "2[2] Legs red and long. Thin in both sexes -> Ausella busa\n"
            "2[] Legs black -> Ausella cusa\n"
            "3[3] Eyes red -> Ausella dusa\n3[] Eyes black -> Ausella fusa\n");
}

TEST(PrintedPageTurn, LettersOfFiguresBelongToNoLead) {
  EXPECT_EQ(sketch("Key to the Species of Ausella\n"
                   "\n"
                   "1. Abdomen with humeral tubercles; eyes procurved 2\n"
                   "Abdomen without humeral tubercles; eyes straight 3\n"
                   "\n"
                   "2. Legs annulated; scape long (fig. 6, a) dentifera Pellew\n"
                   "Legs uniformly brown; fossa of epigynum divided\n"
                   "(fig. 7, b) nyanzae, sp. nov.\n"
                   "\n"
                   "442 ANNALS OF THE TARRAGAL MUSEUM. VOL. XLII\n"
                   "\n"
                   "a\n"
                   "\n"
                   "c  d\n"
                   "\n"
                   "Fig. 6. — Ausella spp., epigyna. a, A. dentifera; b, A. simplex, sp. nov.,\n"
                   "holotype; d, A. kivuensis.\n"
                   "\n"
                   "3. Spinnerets twice as long as broad gracilipes Vandermoor\n"
                   "Spinnerets short; bristles stout setulosa Pellew\n"),
            "1[1] Abdomen with humeral tubercles; eyes procurved -> 2\n"
            "1[] Abdomen without humeral tubercles; eyes straight -> 3\n"
            "2[2] Legs annulated; scape long (fig. 6, a) -> Ausella dentifera\n"
            "2[] Legs uniformly brown; fossa of epigynum divided (fig. 7, b) -> Ausella nyanzae "
            "(sp. nov.)\n"
            "3[3] Spinnerets twice as long as broad -> Ausella gracilipes\n"
            "3[] Spinnerets short; bristles stout -> Ausella setulosa\n");
}

TEST(PrintedPageTurn, APageTurnsBehindTheDestinationOfACell) {
  EXPECT_EQ(
      sketch("Key to Brenilla\n"
             "\n"
             "1.\n"
             "Coxa 1 produced anteriorly . . . . . . . Brenilla procoxa Roe, 1938\n"
             "–\n"
             "Coxa 1 not produced anteriorly . . . . . . . . . . . 2\n"
             "\n"
             "AMPHIPOD GENUS BRENILLA\n"
             "\n"
             "FIGURE 9. Brenilla carensis sp. nov., holotype, male, 6.8 mm; T, telson; U3, uropod\n"
             "3. Scale bars: 0.5 mm for G1, G2; 0.1 mm for others.\n"
             "\n"
             "OVARDE-LINN & PRUST\n"
             "\n"
             "2.\n"
             "Palp article 3 falcate . . . . . . . . . Brenilla falcipalpis Roe, 1974\n"
             "–\n"
             "Palp article 3 linear . . . . . . . . . . . . . . . . 3\n"
             "3.\n"
             "Telson cleft to base . . . . . . . . . . Brenilla serrata Roe, 1906\n"
             "–\n"
             "Telson cleft for half of its length . . . Brenilla carensis sp. nov.\n"),
      "1[1] Coxa 1 produced anteriorly -> Brenilla procoxa\n"
      "1[–] Coxa 1 not produced anteriorly -> 2\n"
      "2[2] Palp article 3 falcate -> Brenilla falcipalpis\n"
      "2[–] Palp article 3 linear -> 3\n"
      "3[3] Telson cleft to base -> Brenilla serrata\n"
      "3[–] Telson cleft for half of its length -> Brenilla carensis (sp. nov.)\n");
}

TEST(PrintedPageTurn, CapitalsBetweenBlankLinesHeadAPage) {
  EXPECT_EQ(sketch("The genus Ausella Roe\n"
                   "\n"
                   "1. Wings clear 2\n"
                   "\n"
                   "Wings clouded, the veins dark 3\n"
                   "\n"
                   "2. Legs yellow flavipes Roe (p. 4)\n"
                   "\n"
                   "Legs black nigripes Roe (p. 5)\n"
                   "\n"
                   "REVISION OF THE GENUS AUSELLA — CALDERWOOD 4\n"
                   "\n"
                   "3. Head red rubiceps Roe (p. 6)\n"
                   "\n"
                   "Head green 4\n"
                   "\n"
                   "4. Halter yellow flava Roe (p. 7)\n"
                   "\n"
                   "Halter black atra Roe (p. 8)\n"),
            "1[1] Wings clear -> 2\n"
            "1[] Wings clouded, the veins dark -> 3\n"
            "2[2] Legs yellow -> Ausella flavipes (p. 4)\n"
            "2[] Legs black -> Ausella nigripes (p. 5)\n"
            "3[3] Head red -> Ausella rubiceps (p. 6)\n"
            "3[] Head green -> 4\n"
            "4[4] Halter yellow -> Ausella flava (p. 7)\n"
            "4[] Halter black -> Ausella atra (p. 8)\n");
}

TEST(PrintedPageTurn, NumbersOfFiguresBelongToNoLead) {
  EXPECT_EQ(
      sketch("Key to Merrhostola\n"
             "\n"
             "1   Hindwing with vein Cu1 fused with M ........... 2\n"
             "–   Hindwing with vein Cu1 free throughout ........ 3\n"
             "\n"
             "                                            23\n"
             "\n"
             "\t31\t\t32\n"
             "\n"
             "\t33\t\t34\n"
             "\n"
             "Figs 31–34. Merrhostola, wings. 31, M. flavida, base of forewing; 32, M. "
             "tripunctata, base of\n"
             "forewing; 33, M. obscurella, hindwing; 34, M. heathii, hindwing.\n"
             "\n"
             "24\n"
             "2   Pronotum at least 1.5 times as wide as long ... M. obscurella (Dowle)\n"
             "–   Pronotum about as long as wide ................ M. tripunctata (Stevenage)\n"
             "3   Crossveins of forewing margined with brown .... M. heathii (Curnow)\n"
             "–   Crossveins pale ............................... M. flavida Pell\n"),
      "1[1] Hindwing with vein Cu1 fused with M -> 2\n"
      "1[–] Hindwing with vein Cu1 free throughout -> 3\n"
      "2[2] Pronotum at least 1.5 times as wide as long -> Merrhostola obscurella\n"
      "2[–] Pronotum about as long as wide -> Merrhostola tripunctata\n"
      "3[3] Crossveins of forewing margined with brown -> Merrhostola heathii\n"
      "3[–] Crossveins pale -> Merrhostola flavida\n");
}

TEST(PrintedPageTurn, AGenusAloneWithASmallerNumberHeadsAPage) {
  EXPECT_EQ(sketch("Clave de las especies de Garzuelia\n"
                   "\n"
                   "1. Hojas opuestas ......................................... 2\n"
                   "– Hojas alternas .......................................... 4\n"
                   "2. Pétalos rosados ................................... 1. G. rosea\n"
                   "– Pétalos blancos ......................................... 3\n"
                   "3. Estilos 5 ......................................... 2. G. alba\n"
                   "– Estilos 3 ......................................... 3. G. umbrosa\n"
                   "212\n"
                   "CLXIV. GARZUELIACEAE\n"
                   "2. Garzuelia\n"
                   "4. Brácteas herbáceas ................................ 4. G. nivalis\n"
                   "– Brácteas escariosas ............................... 5. G. segetum\n"),
            "1[1] Hojas opuestas -> 2\n"
            "1[–] Hojas alternas -> 4\n"
            "2[2] Pétalos rosados -> Garzuelia rosea\n"
            "2[–] Pétalos blancos -> 3\n"
            "3[3] Estilos 5 -> Garzuelia alba\n"
            "3[–] Estilos 3 -> Garzuelia umbrosa\n"
            "4[4] Brácteas herbáceas -> Garzuelia nivalis\n"
            "4[–] Brácteas escariosas -> Garzuelia segetum\n");
}

TEST(PrintedPageTurn, AnAddressBehindABarIsNoLead) {
  EXPECT_EQ(
      sketch("Review of Mellanopa: key to species\n"
             "\n"
             "1. Mesosoma entirely rufous......... Mellanopa rufithorax (Cammer, 1887)\n"
             "- Mesosoma black ............ 2\n"
             "2. Malar space short .................................... Mellanopa angusta Lindh & "
             "Osei sp. nov.\n"
             "- Malar space long........................\n"
             "................................................................................. "
             "Mellanopa fasciatella Drost, 1911\n"
             "Open Biota | https://doi.invalid/10.9999/openbiota.0217734 June 5, 2020 11 / 47\n"
             "OPEN BIOTA Review of Mellanopa\n"),
      "1[1] Mesosoma entirely rufous -> Mellanopa rufithorax\n"
      "1[-] Mesosoma black -> 2\n"
      "2[2] Malar space short -> Mellanopa angusta (sp. nov.)\n"
      "2[-] Malar space long -> Mellanopa fasciatella\n");
}

TEST(PrintedPageTurn, WordsOfAFigureAboveItsCaption) {
  EXPECT_EQ(sketch("Key to Harponella\n"
                   "\n"
                   "1a. Shell dextral . . . . . . . . . . . . . . Harponella incarnata\n"
                   "1b. Shell sinistral . . . . . . . . . . . . . Harponella sinistrorsa\n"
                   "hollow spines low tubercles\n"
                   "aperture\n"
                   "Fig. 1 Harponella incarnata Fig. 2 Harponella sinistrorsa\n"),
            "1[1a] Shell dextral -> Harponella incarnata\n"
            "1[1b] Shell sinistral -> Harponella sinistrorsa\n");
}

TEST(PrintedPageTurn, ATitleCutShortAndAPageNumber) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1 Eyes large, with more than 80 ommatidia ............... 2\n"
                   "– Eyes small ............................. A. busa Roe, 1911\n"
                   "2 Pronotum transverse .................... A. cusa Roe, 1911\n"
                   "– Pronotum at most 1.15 times wider than long; forebody less than\n"
                   "Revision of the genus Ausella...\n"
                   "59\n"
                   "3.9 mm ................................ A. dusa Dorn, 1998\n"),
            "1[1] Eyes large, with more than 80 ommatidia -> 2\n"
            "1[–] Eyes small -> Ausella busa\n"
            "2[2] Pronotum transverse -> Ausella cusa\n"
            "2[–] Pronotum at most 1.15 times wider than long; forebody less than 3.9 mm -> "
            "Ausella dusa\n");
}

TEST(PrintedPageTurn, ANumberBehindThreeDotsIsTheCouplets) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1 Eyes large ............... 2\n"
                   "– Eyes small ............... A. busa Roe, 1911\n"
                   "2 Wings brown at the base...\n"
                   "3.\n"
                   "– Wings clear .............. A. cusa Roe, 1911\n"
                   "3 Head round ............... A. dusa Roe, 1911\n"
                   "– Head long ................ A. gusa Roe, 1911\n"),
            "1[1] Eyes large -> 2\n"
            "1[–] Eyes small -> Ausella busa\n"
            "2[2] Wings brown at the base -> 3\n"
            "2[–] Wings clear -> Ausella cusa\n"
            "3[3] Head round -> Ausella dusa\n"
            "3[–] Head long -> Ausella gusa\n");
}

TEST(PrintedPageTurn, LettersBeneathACaptionBelongToIt) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "Inflorescence terminal:\n"
                   "Corolla white .. .. .. .. 8. pallida\n"
                   "Corolla red .. .. .. .. 9. rubra\n"
                   "Inflorescence axillary:\n"
                   "Flowers sessile:\n"
                   "Bracts conspicuous .. .. .. .. 10. bracteata\n"
                   "Bracts minute .. .. 11. congesta\n"
                   "\n"
                   "150 KOLOBANDACEAE\n"
                   "\n"
                   "Fig. 238. — AUSELLA SPECIOSA Raviel (KOLOBANDACEAE).\n"
                   "A, flower. B, corolla opened. C, section of ovary. D, fruit.\n"
                   "\n"
                   "Flowers pedicellate:\n"
                   "Flowers solitary .. .. .. .. 12. uniflora\n"
                   "Flowers several .. .. .. .. 13. micrantha\n"),
            "1[] Inflorescence terminal: -> 2\n"
            "1[] Inflorescence axillary: -> 3\n"
            "2[] Corolla white -> Ausella pallida\n"
            "2[] Corolla red -> Ausella rubra\n"
            "3[] Flowers sessile: -> 4\n"
            "3[] Flowers pedicellate: -> 5\n"
            "4[] Bracts conspicuous -> Ausella bracteata\n"
            "4[] Bracts minute -> Ausella congesta\n"
            "5[] Flowers solitary -> Ausella uniflora\n"
            "5[] Flowers several -> Ausella micrantha\n");
}

TEST(PrintedPageTurn, APageAChaptersNumeralAndItsGroupHeadAPage) {
  EXPECT_EQ(sketch("Schlüssel der Gattung Ausella\n"
                   "\n"
                   "1 Telson spitz . . . . . . . . 2\n"
                   "— Telson stumpf . . . . . . . . 3\n"
                   "\n"
                   "62 V. Ordnung: Ausopoda\n"
                   "\n"
                   "Abb. 48. Antenne von a Ausella muraria, b A. tecta. — Abb. 49. Hinterende\n"
                   "von A. laevigata, Dorsalansicht. (Original.)\n"
                   "\n"
                   "2 Augen aus 20 Ommen . . . . 1. A. busa Brandau (S. 66)\n"
                   "— Augen aus 6 Ommen . . . . 2. A. microps Stroheck (S. 66)\n"
                   "3 Rücken matt . . . . 3. A. tecta Brandau (S. 68)\n"
                   "— Rücken glänzend . . . . 4. A. nitida Brandau (S. 69)\n"),
            "1[1] Telson spitz -> 2\n"
            "1[—] Telson stumpf -> 3\n"
            "2[2] Augen aus 20 Ommen -> Ausella busa (S. 66)\n"
            "2[—] Augen aus 6 Ommen -> Ausella microps (S. 66)\n"
            "3[3] Rücken matt -> Ausella tecta (S. 68)\n"
            "3[—] Rücken glänzend -> Ausella nitida (S. 69)\n");
}

TEST(PrintedPageTurn, NumbersAtTheFootOfAPageOfLabelsAlone) {
  EXPECT_EQ(sketch("KEY TO THE LARVAE\n"
                   "\n"
                   "1.\n"
                   "\n"
                   "Gills beneath the thoracic terga . . . . . . . . Viehonella (p. 45)\n"
                   "\n"
                   "1'.\n"
                   "\n"
                   "Gills absent . . . . . . . . . . . . . 2\n"
                   "\n"
                   "2(1').\n"
                   "\n"
                   "Paraglossae short . . . . . . . . . 3\n"
                   "\n"
                   "2'.\n"
                   "\n"
                   "Paraglossae long; larvae usually patterned,\n"
                   "predaceous . . . . . . . . . . . . . 4\n"
                   "\n"
                   "27\n"
                   "\n"
                   "28\n"
                   "\n"
                   "PLECOPTERA\n"
                   "\n"
                   "GL\n"
                   "\n"
                   "Fig. 18. Labium of Taeniocoxa. GL, glossa.\n"
                   "\n"
                   "3(2).\n"
                   "\n"
                   "Second segment long . . . . . . . . Taeniocoxa (p. 38)\n"
                   "\n"
                   "3'.\n"
                   "\n"
                   "Second segment short . . . . . . . . Amphinemella (p. 31)\n"
                   "\n"
                   "4(2').\n"
                   "\n"
                   "Cerci long . . . . . . . . Podmostella (p. 33)\n"
                   "\n"
                   "4'.\n"
                   "\n"
                   "Cerci short . . . . . . . . Leuctrina (p. 35)\n"),
            "1[1] Gills beneath the thoracic terga -> Viehonella (p. 45)\n"
            "1[1'] Gills absent -> 2\n"
            "2[2] Paraglossae short -> 3\n"
            "2[2'] Paraglossae long; larvae usually patterned, predaceous -> 4\n"
            "3[3] Second segment long -> Taeniocoxa (p. 38)\n"
            "3[3'] Second segment short -> Amphinemella (p. 31)\n"
            "4[4] Cerci long -> Podmostella (p. 33)\n"
            "4[4'] Cerci short -> Leuctrina (p. 35)\n");
}

TEST(PrintedPageTurn, TheMonthOfTheIssueIsNoAuthor) {
  EXPECT_EQ(sketch("Key to Hydromelina\n"
                   "\n"
                   "1. Eyes hairy....................................2.\n"
                   "—. Eyes bare............................nubila Brann.\n"
                   "2. Legs yellow...................flavipes Sturtee.\n"
                   "—. Legs black; antennal segment not over twice as long as\n"
                   "second............................notata, n. sp.\n"
                   "June, 1917\n"
                   "\n"
                   "188 THE CANTONAL ENTOMOLOGIST\n"),
            "1[1] Eyes hairy -> 2\n"
            "1[—] Eyes bare -> Hydromelina nubila\n"
            "2[2] Legs yellow -> Hydromelina flavipes\n"
            "2[—] Legs black; antennal segment not over twice as long as second -> Hydromelina "
            "notata (n. sp.)\n");
}

TEST(PrintedPageTurn, ColumnHeadsOfATableComeAgain) {
  EXPECT_EQ(sketch("Couplet\n"
                   "\n"
                   "Character\n"
                   "\n"
                   "Go to / Species\n"
                   "\n"
                   "1\n"
                   "\n"
                   "Eye a sclerotised spur\n"
                   "\n"
                   "Mytilonaspis ficorum\n"
                   "\n"
                   "–\n"
                   "\n"
                   "Eye not spur-like\n"
                   "\n"
                   "2\n"
                   "\n"
                   "2\n"
                   "\n"
                   "Pygidial margin with paraphyses\n"
                   "\n"
                   "3\n"
                   "\n"
                   "–\n"
                   "\n"
                   "Pygidial margin without paraphyses\n"
                   "\n"
                   "4\n"
                   "\n"
                   "Diagnostic Manual 14 – Version 2\n"
                   "\n"
                   "23\n"
                   "\n"
                   "Couplet\n"
                   "\n"
                   "Character\n"
                   "\n"
                   "Go to / Species\n"
                   "\n"
                   "3\n"
                   "\n"
                   "Paraphyses long, clubbed at the tip\n"
                   "\n"
                   "Clavidiaspis perniciosa\n"
                   "\n"
                   "–\n"
                   "\n"
                   "Paraphyses short, not clubbed\n"
                   "\n"
                   "Clavidiaspis pruni\n"
                   "\n"
                   "4\n"
                   "\n"
                   "Fourth lobe present\n"
                   "\n"
                   "Quadrilepis nerii\n"
                   "\n"
                   "–\n"
                   "\n"
                   "Fourth lobe absent\n"
                   "\n"
                   "Quadrilepis alba\n"),
            "1[1] Eye a sclerotised spur -> Mytilonaspis ficorum\n"
            "1[–] Eye not spur-like -> 2\n"
            "2[2] Pygidial margin with paraphyses -> 3\n"
            "2[–] Pygidial margin without paraphyses -> 4\n"
            "3[3] Paraphyses long, clubbed at the tip -> Clavidiaspis perniciosa\n"
            "3[–] Paraphyses short, not clubbed -> Clavidiaspis pruni\n"
            "4[4] Fourth lobe present -> Quadrilepis nerii\n"
            "4[–] Fourth lobe absent -> Quadrilepis alba\n");
}

TEST(PrintedPageTurn, ANumberAloneBehindANameAndItsAuthor) {
  EXPECT_EQ(sketch("KEY TO TYPHLACARUS\n"
                   "\n"
                   "1. Fixed digit with 7 or more teeth 2\n"
                   "— Fixed digit with 2—4 teeth 3\n"
                   "2(1). Ventrianal shield vase-shaped, with a pair of crescentic pores "
                   "reticulatus sp. nov.\n"
                   "— Ventrianal shield pentagonal, without pores pentagonus Lindhout\n"
                   "\n"
                   "4\n"
                   "\n"
                   "3(1). Setae s4 and Z4 subequal, as long as distance between their bases "
                   "nodosus Lindhout\n"
                   "— Setae s4 much shorter than Z4 4\n"
                   "4(3). Leg IV with macrosetae longus Lindhout\n"
                   "— Leg IV without macrosetae brevis Lindhout\n"),
            "1[1] Fixed digit with 7 or more teeth -> 2\n"
            "1[—] Fixed digit with 2—4 teeth -> 3\n"
            "2[2] Ventrianal shield vase-shaped, with a pair of crescentic pores -> Typhlacarus "
            "reticulatus (sp. nov.)\n"
            "2[—] Ventrianal shield pentagonal, without pores -> Typhlacarus pentagonus\n"
            "3[3] Setae s4 and Z4 subequal, as long as distance between their bases -> Typhlacarus "
            "nodosus\n"
            "3[—] Setae s4 much shorter than Z4 -> 4\n"
            "4[4] Leg IV with macrosetae -> Typhlacarus longus\n"
            "4[—] Leg IV without macrosetae -> Typhlacarus brevis\n");
}

TEST(PrintedPageTurn, TheGenusInABracketBesideTheFamily) {
  EXPECT_EQ(sketch("Key to the species of Asterosora\n"
                   "\n"
                   "1. Blades leathery, veins obscure . . . . 2\n"
                   "Blades thin, veins plain . . . . 4\n"
                   "2. Leaflets lobed . . . . 3\n"
                   "Leaflets entire . . . . 1. rigida\n"
                   "3. Fronds fleshy, of rocks by the sea . . . . 2. littoralis\n"
                   "Fronds climbing on trunks of trees, not fleshy\n"
                   "\n"
                   "3. scandens\n"
                   "\n"
                   "Asterosora] ASTEROSORACEAE 49\n"
                   "\n"
                   "4. Blades deltoid . . . . 4. tenera\n"
                   "Blades narrow . . . . 5\n"
                   "5. Fronds shining . . . . 5. lucida\n"
                   "Fronds hairy . . . . 6. pilosa\n"),
            "1[1] Blades leathery, veins obscure -> 2\n"
            "1[] Blades thin, veins plain -> 4\n"
            "2[2] Leaflets lobed -> 3\n"
            "2[] Leaflets entire -> Asterosora rigida\n"
            "3[3] Fronds fleshy, of rocks by the sea -> Asterosora littoralis\n"
            "3[] Fronds climbing on trunks of trees, not fleshy -> Asterosora scandens\n"
            "4[4] Blades deltoid -> Asterosora tenera\n"
            "4[] Blades narrow -> 5\n"
            "5[5] Fronds shining -> Asterosora lucida\n"
            "5[] Fronds hairy -> Asterosora pilosa\n");
}

}  // namespace
}  // namespace keydrift
