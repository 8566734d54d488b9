// Keys that number their couplets, or set their leads' ends, in ways of their own.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::read_key;
using test::sketch;

// --- numbers -------------------------------------------------------------------------------------

struct Numbers {
  char const* name;
  char const* text;  // leads to couplets 2 and 3, then four species
};

void PrintTo(Numbers const& numbers, std::ostream* out) { *out << numbers.name; }

class PrintedNumbers : public testing::TestWithParam<Numbers> {};

TEST_P(PrintedNumbers, GiveTheSameThreeCouplets) {
  auto const edition = read_key(GetParam().text).edition;
  ASSERT_EQ(edition.couplets.size(), 3U);
  std::string words;
  for (auto const& couplet : edition.couplets) {
    ASSERT_EQ(couplet.leads.size(), 2U) << couplet.label;
    for (auto const& lead : couplet.leads) words += lead.text + ";";
  }
  EXPECT_EQ(words, "Shell smooth;Shell ribbed;Foot pale;Foot dark;Lip thin;Lip thick;");
  EXPECT_EQ(std::get<ToCouplet>(edition.couplets[0].leads[0].destination).couplet, CoupletId{1});
  EXPECT_EQ(std::get<ToCouplet>(edition.couplets[0].leads[1].destination).couplet, CoupletId{2});
  ASSERT_EQ(edition.taxa.size(), 4U);
  EXPECT_EQ(edition.taxa[0].name, "Aus bus");
  EXPECT_EQ(edition.taxa[3].name, "Dus fus");
}

INSTANTIATE_TEST_SUITE_P(
    All, PrintedNumbers,
    testing::Values(
        Numbers{"InHeadingsWithAWord",
                "Couplet 1\nA. Shell smooth ..... Go to Couplet 2\nB. Shell ribbed ..... Go to "
                "Couplet 3\nCouplet 2\nA. Foot pale ..... Aus bus\nB. Foot dark ..... Aus cus\n"
                "Couplet 3\nA. Lip thin ..... Dus eus\nB. Lip thick ..... Dus fus\n"},
        Numbers{
            "AloneAboveLetters",
            "1.\na. Shell smooth ..... 2\nb. Shell ribbed ..... 3\n\n2.\na. Foot pale ..... Aus "
            "bus\nb. Foot dark ..... Aus cus\n\n3.\na. Lip thin ..... Dus eus\nb. Lip thick "
            "..... Dus fus\n"},
        Numbers{"AloneAboveBullets",
                "1.\n\xE2\x80\xA2 Shell smooth ..... 2\n\xE2\x80\xA2 Shell ribbed ..... 3\n2.\n"
                "\xE2\x80\xA2 Foot pale ..... Aus bus\n\xE2\x80\xA2 Foot dark ..... Aus cus\n3.\n"
                "\xE2\x80\xA2 Lip thin ..... Dus eus\n\xE2\x80\xA2 Lip thick ..... Dus fus\n"},
        Numbers{"AloneAboveLeadsWithoutSigns",
                "1\nShell smooth ..... 2\nShell ribbed ..... 3\n\n2\nFoot pale ..... Aus bus\nFoot "
                "dark ..... Aus cus\n\n3\nLip thin ..... Dus eus\nLip thick ..... Dus fus\n"},
        Numbers{"OnceForLetters",
                "1. a) Shell smooth ..... 2\n   b) Shell ribbed ..... 3\n2. a) Foot pale ..... Aus "
                "bus\n   b) Foot dark ..... Aus cus\n3. a) Lip thin ..... Dus eus\n   b) Lip thick "
                "..... Dus fus\n"},
        Numbers{"BehindAWord",
                "No. 1. Shell smooth ..... 2\n- Shell ribbed ..... 3\nNo. 2. Foot pale ..... Aus "
                "bus\n- Foot dark ..... Aus cus\nNo. 3. Lip thin ..... Dus eus\n- Lip thick ..... "
                "Dus fus\n"},
        Numbers{"WithARing",
                "1\xC2\xB0 Shell smooth ..... 2\n- Shell ribbed ..... 3\n2\xC2\xB0 Foot pale ..... "
                "Aus bus\n- Foot dark ..... Aus cus\n3\xC2\xB0 Lip thin ..... Dus eus\n- Lip thick "
                "..... Dus fus\n"},
        Numbers{"WithAComma",
                "1, Shell smooth ..... 2\n- Shell ribbed ..... 3\n2, Foot pale ..... Aus bus\n"
                "- Foot dark ..... Aus cus\n3, Lip thin ..... Dus eus\n- Lip thick ..... Dus "
                "fus\n"},
        Numbers{
            "Roman",
            "I. Shell smooth ..... II\nI. Shell ribbed ..... III\nII. Foot pale ..... Aus bus\n"
            "II. Foot dark ..... Aus cus\nIII. Lip thin ..... Dus eus\nIII. Lip thick ..... Dus "
            "fus\n"},
        Numbers{"RomanWithDashes",
                "I. Shell smooth II\n\xE2\x80\x93 Shell ribbed III\nII. Foot pale Aus bus\n"
                "\xE2\x80\x93 Foot dark Aus cus\nIII. Lip thin Dus eus\n\xE2\x80\x93 Lip "
                "thick Dus fus\n"},
        Numbers{"CapitalsWithLetters",
                "Aa. Shell smooth ..... B\nAb. Shell ribbed ..... C\nBa. Foot pale ..... Aus bus\n"
                "Bb. Foot dark ..... Aus cus\nCa. Lip thin ..... Dus eus\nCb. Lip thick ..... Dus "
                "fus\n"}),
    [](auto const& one) { return std::string{one.param.name}; });

TEST(PrintedNumbers, OfALineAboveItsLeadsAreHeadings) {
  EXPECT_EQ(line_kinds("Couplet 1\nA. Shell smooth ..... Couplet 2\nB. Shell ribbed ..... Aus bus\n"
                       "Couplet 2\nA. Foot pale ..... Aus cus\nB. Foot dark ..... Aus dus\n"),
            "heading, lead, lead, heading, lead, lead");
}

TEST(PrintedNumbers, StayDestinationsWhereNoLeadFollowsThem) {
  EXPECT_EQ(sketch("1. Shell smooth\n     2\n- Shell ribbed\n     Aus bus\n2. Foot pale\n     Aus "
                   "cus\n- Foot dark\n     Aus dus\n"),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> Aus bus\n2[2] Foot pale -> Aus cus\n"
            "2[-] Foot dark -> Aus dus\n");
}

// --- ends ----------------------------------------------------------------------------------------

TEST(PrintedEnds, StandInBracketsThroughoutAFile) {
  EXPECT_EQ(sketch("1. Shell smooth [2]\n- Shell ribbed [Aus bus]\n2. Foot pale [Aus cus]\n"
                   "- Foot dark [3]\n3. Lip thin [Aus dus]\n- Lip thick [Aus eus]\n"),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> Aus bus\n2[2] Foot pale -> Aus cus\n"
            "2[-] Foot dark -> 3\n3[3] Lip thin -> Aus dus\n3[-] Lip thick -> Aus eus\n");
}

TEST(PrintedEnds, AreNoAuthorsInBrackets) {
  EXPECT_EQ(sketch("1. Shell smooth  2\n- Shell ribbed  A. bus (Roe, 1900)\n2. Foot pale  A. cus "
                   "(Dorn, 1901)\n- Foot dark  A. dus (Roe)\n"),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> A. bus\n2[2] Foot pale -> A. cus\n"
            "2[-] Foot dark -> A. dus\n");
}

TEST(PrintedEnds, AreEpithetsBehindColons) {
  EXPECT_EQ(sketch("Key to the species of Aus\n\n1. Shell smooth: 2\n- Shell ribbed: bus\n2. Foot "
                   "pale: cus\n- Foot dark: lacustris\n"),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> Aus bus\n2[2] Foot pale -> Aus cus\n"
            "2[-] Foot dark -> Aus lacustris\n");
}

TEST(PrintedEnds, AreEpithetsThatNothingSetsApart) {
  std::string const text =
      "Key to the species of Aus\n\n1 Shell smooth 2\n- Shell ribbed 3\n2 Foot pale lacustris\n"
      "- Foot dark montanus\n3 Lip thin robusta\n- Lip thick gracilis\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> 3\n2[2] Foot pale -> Aus lacustris\n"
            "2[-] Foot dark -> Aus montanus\n3[3] Lip thin -> Aus robusta\n3[-] Lip thick -> Aus "
            "gracilis\n");
  std::size_t told = 0;
  for (auto const& finding : findings_of(text)) {
    if (finding.find("assumed-destination") != std::string::npos) ++told;
  }
  EXPECT_EQ(told, 4U);
}

TEST(PrintedEnds, AreNoWordsOfLeadsWithCoupletsBeneath) {
  EXPECT_EQ(
      sketch("1. Foot with a carina\n   2. Shell smooth ..... Aus bus\n   2. Shell ribbed "
             "..... Aus cus\n1. Foot without a carina ..... Aus dus\n"),
      "1[1] Foot with a carina -> 2\n1[1] Foot without a carina -> Aus dus\n2[2] Shell smooth "
      "-> Aus bus\n2[2] Shell ribbed -> Aus cus\n");
}

TEST(PrintedEnds, GoOnBehindTheAuthorOfASpecies) {
  EXPECT_EQ(
      sketch("1. Shell smooth ..... Aus bus (Roe) Dorn var. cus Lund\n- Shell ribbed ..... 2\n"
             "2. Foot pale ..... Aus dus Roe agg.\n- Foot dark ..... Aus species A\n"),
      "1[1] Shell smooth -> Aus bus var. cus\n1[-] Shell ribbed -> 2\n2[2] Foot pale -> Aus "
      "dus agg.\n2[-] Foot dark -> Aus species A\n");
}

TEST(PrintedEnds, FollowRowsOfHyphens) {
  EXPECT_EQ(
      sketch("1. Shell smooth, with a lip----------\n                         Aus bus\n"
             "- Shell ribbed-------------------- 2\n2. Foot pale---- Aus cus[1]\n- Foot dark-- "
             "Aus dus\n"),
      "1[1] Shell smooth, with a lip -> Aus bus\n1[-] Shell ribbed -> 2\n2[2] Foot pale -> Aus "
      "cus (1)\n2[-] Foot dark -> Aus dus\n");
}

// --- pages ---------------------------------------------------------------------------------------

TEST(PrintedColumns, AreReadOneAfterTheOther) {
  std::string const text =
      "KEY TO THE SPECIES OF AUS            the older collections were made in\n"
      "                                     the fens of Orm, where the water was\n"
      "1. Shell smooth, its lip thin        low in most of the years before 1900,\n"
      "   and pale .............. 2         and where nobody has looked since.\n"
      "-- Shell ribbed throughout           Later visits brought few shells and\n"
      "   .................. Aus bus        none of them alive. The drawings are\n"
      "2. Foot pale; eyes black, on         by the author and were made from dry\n"
      "   long stalks ...... Aus cus        specimens, which are kept in Halvern.\n"
      "-- Foot dark; eyes lacking or        Measurements are given in tenths of\n"
      "   very small ....... Aus dus        a millimetre throughout this paper.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth, its lip thin and pale -> 2\n1[--] Shell ribbed throughout -> Aus "
            "bus\n2[2] Foot pale; eyes black, on long stalks -> Aus cus\n2[--] Foot dark; eyes "
            "lacking or very small -> Aus dus\n");
  auto const reading = read_key(text);
  ASSERT_EQ(reading.source.lines.size(), 10U);
  for (std::size_t i = 0; i < 10; ++i) EXPECT_EQ(reading.source.lines[i].line, i + 1);
}

TEST(PrintedColumns, OfDestinationsAreNone) {
  EXPECT_EQ(
      sketch("1. Shell smooth                    2\n- Shell ribbed                    Aus bus\n"
             "2. Foot pale                      Aus cus\n- Foot dark                       "
             "Aus dus\n"),
      "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> Aus bus\n2[2] Foot pale -> Aus cus\n"
      "2[-] Foot dark -> Aus dus\n");
}

TEST(PrintedLabels, AreNoNamesOfPartsWithAHyphen) {
  EXPECT_EQ(sketch("1-   Siphon with a seta only; seta\n2-C absent ..... 2\n1-   Siphon bare ..... "
                   "Aus bus\n2-   Foot pale ..... Aus cus\n2-   Foot dark ..... Aus dus\n"),
            "1[1] Siphon with a seta only; seta 2-C absent -> 2\n1[1] Siphon bare -> Aus bus\n2[2] "
            "Foot pale -> Aus cus\n2[2] Foot dark -> Aus dus\n");
}

TEST(PrintedLabels, AreNoNumbersOfAccountsBehindTheKey) {
  EXPECT_EQ(
      line_kinds("1. Shell smooth ..... 1. Ausella bus\n- Shell ribbed ..... 2. Ausella cus\n\n"
                 "1. Ausella bus (Roe) Dorn, Fauna 2: 19\n\n2. Ausella cus Roe, Fauna 3: 4\n"),
      "lead, lead, blank, heading, blank, heading");
}

TEST(PrintedPages, LoseTheNumbersOfTheirLines) {
  std::string text;
  std::uint32_t number = 412;
  for (auto const* line :
       {"Key to the species of Aus", "", "1 Shell smooth, with a lip that is turned out",
        "  widely .... 2", "- Shell ribbed .... Aus bus", "2 Foot pale, the eyes on stalks and the",
        "  lip thin .... Aus cus", "- Foot dark; eyes lacking or", "  very small .... 3",
        "3 Lip thin .... Aus dus", "- Lip thick .... Aus eus"}) {
    text += " " + std::to_string(number++) + "  " + line + "\n";
    if (number == 418) text += "                            18\n\n";  // the page's
  }
  EXPECT_EQ(
      sketch(text),
      "1[1] Shell smooth, with a lip that is turned out widely -> 2\n1[-] Shell ribbed -> Aus "
      "bus\n2[2] Foot pale, the eyes on stalks and the lip thin -> Aus cus\n2[-] Foot dark; "
      "eyes lacking or very small -> 3\n3[3] Lip thin -> Aus dus\n3[-] Lip thick -> Aus eus\n");
}

TEST(PrintedPages, KeepTheNumbersOfASerialKey) {
  EXPECT_EQ(
      sketch("1 (4) Shell smooth.\n2 (3) Foot pale .... Aus bus\n3 (2) Foot dark .... Aus cus\n"
             "4 (1) Shell ribbed.\n5 (6) Lip thin .... Aus dus\n6 (5) Lip thick.\n7 (8) Eyes "
             "black .... Aus eus\n8 (7) Eyes red .... Aus fus\n"),
      "1[1] Shell smooth. -> 2\n1[4] Shell ribbed. -> 5\n2[2] Foot pale -> Aus bus\n2[3] Foot "
      "dark -> Aus cus\n5[5] Lip thin -> Aus dus\n5[6] Lip thick. -> 7\n7[7] Eyes black -> Aus "
      "eus\n7[8] Eyes red -> Aus fus\n");
}

TEST(PrintedParagraphs, ArePartedWhereTheCountGoesOn) {
  EXPECT_EQ(
      sketch(
          "Key to the species of the Aus bus complex. 1 Shell with two bands (Fig. 4A); lip "
          "thin in adults 2 \xE2\x80\x93 Shell without bands; lip thick in adults 3 2 Foot pale, "
          "with 6-8 spines along its margin Aus bus Dorn, 1965 \xE2\x80\x93 Foot dark Aus cus sp. "
          "n. "
          "3 Eyes black Aus dus Roe \xE2\x80\x93 Eyes red Aus eus Roe"),
      "1[1] Shell with two bands (Fig. 4A); lip thin in adults -> 2\n1[\xE2\x80\x93] Shell without "
      "bands; lip thick in adults -> 3\n2[2] Foot pale, with 6-8 spines along its margin -> Aus "
      "bus\n2[\xE2\x80\x93] Foot dark -> Aus cus (sp. n.)\n3[3] Eyes black -> Aus "
      "dus\n3[\xE2\x80\x93] Eyes red -> Aus eus\n");
}

TEST(PrintedGenus, IsTheOneThatMostSpeaksFor) {
  EXPECT_EQ(sketch("Ausalia Roe & Dorn (1994)\n\nKey to the Orm Isles taxa (for others see also "
                   "Busaria)\n\n1\tShell smooth\tlacustris\n-\tShell ribbed\tmontana\n"),
            "1[1] Shell smooth -> Ausalia lacustris\n1[-] Shell ribbed -> Ausalia montana\n");
  EXPECT_EQ(
      sketch("Gen. HALVELLA Roe.\n\nTABEL DER SOORTEN\n\n1. Shell smooth .... lacustris Dorn\n-  "
             "Shell ribbed .... montana Dorn\n"),
      "1[1] Shell smooth -> Halvella lacustris\n1[-] Shell ribbed -> Halvella montana\n");
}

TEST(PrintedGenus, OfAnAbbreviationIsNamedSomewhere) {
  EXPECT_EQ(
      sketch("Table 7. Keys to the Ausalia spp. of the study area.\n\nA. Adults\n\n1\tShell "
             "smooth\tA. bus\n1'\tShell ribbed\tA. cus\n\nB. Larvae\n\n1\tFoot pale\tA. "
             "bus\n1'\tFoot dark\tA. cus\n"),
      "1[1] Shell smooth -> Ausalia bus\n1[1'] Shell ribbed -> Ausalia cus\n1[1] Foot pale -> "
      "Ausalia bus\n1[1'] Foot dark -> Ausalia cus\n");
}

TEST(PrintedParts, AreLedToByTheNameOfAGroup) {
  auto const edition = read_key(
                           "Key to groups of Aus\n\n1. Shell smooth .... bus group\n-. Shell "
                           "ribbed .... cus group\n\n"
                           "bus group\n\n1. Foot pale .... Aus bus\n-. Foot dark .... Aus "
                           "dus\n\ncus group\n\n1. Lip "
                           "thin .... Aus cus\n-. Lip thick .... Aus eus\n")
                           .edition;
  ASSERT_EQ(edition.parts.size(), 3U);
  EXPECT_EQ(std::get<ToKey>(edition.couplets[0].leads[0].destination).key, "bus group");
  EXPECT_EQ(std::get<ToKey>(edition.couplets[0].leads[1].destination).key, "cus group");
}

TEST(PrintedParts, DoNotLeadIntoEachOtherByNumbers) {
  EXPECT_EQ(
      sketch("Key to adults\n\n1 Shell smooth .... 2\n- Shell ribbed .... Aus bus\n2 Foot pale "
             ".... Aus cus\n- Foot dark .... Aus dus\n\nKey to larvae\n\n1 Lip thin .... Aus bus\n"
             "- Lip thick .... 2\n"),
      "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> Aus bus\n2[2] Foot pale -> Aus cus\n2[-] "
      "Foot dark -> Aus dus\n1[1] Lip thin -> Aus bus\n1[-] Lip thick -> ?2\n");
}

TEST(PrintedEmphasis, IsTakenOffAndTold) {
  std::string const text =
      "Key to the species of *Ausella*\n\n1. Shell smooth ... **2**\n1'. Shell ribbed ... *A. "
      "montana* "
      "(Dorn)\n2. Foot pale, unlike _A. montana_ ... _A. robusta_, p. 4\n2'. Foot dark ... *A. "
      "gracilis*\n";
  EXPECT_EQ(
      sketch(text),
      "1[1] Shell smooth -> 2\n1[1'] Shell ribbed -> Ausella montana\n2[2] Foot pale, unlike A. "
      "montana -> Ausella robusta (p. 4)\n2[2'] Foot dark -> Ausella gracilis\n");
  auto const findings = findings_of(text);
  auto const told = std::find_if(findings.begin(), findings.end(), [](std::string const& finding) {
    return finding.find("[emphasis-marks]") != std::string::npos;
  });
  ASSERT_NE(told, findings.end());
  EXPECT_NE(
      told->find(
          "6 passages between \"*\", \"_\" or \"=\" were taken for emphasised words; the signs "
          "were left out"),
      std::string::npos)
      << *told;
}

TEST(PrintedEmphasis, OfLabels) {
  EXPECT_EQ(sketch("**1** Shell smooth … 2\n**–** Shell ribbed … *Aus bus*\n"
                   "**2** Foot pale … *Aus cus*\n**–** Foot dark … *Aus dus*\n"),
            "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Aus bus\n"
            "2[2] Foot pale -> Aus cus\n2[–] Foot dark -> Aus dus\n");
  EXPECT_EQ(sketch("**1** Shell smooth … 2\n**1’** Shell ribbed … *Aus bus*\n"
                   "**2** Foot pale … *Aus cus*\n**2’** Foot dark … *Aus dus*\n"),
            "1[1] Shell smooth -> 2\n1[1’] Shell ribbed -> Aus bus\n"
            "2[2] Foot pale -> Aus cus\n2[2’] Foot dark -> Aus dus\n");
}

TEST(PrintedListSigns, StandBeforeTheLabelsOfLeads) {
  constexpr std::string_view kLettered =
      "1[1a] Shell smooth -> 2\n1[1b] Shell ribbed -> 3\n2[2a] Foot pale, 5 mm -> Aus bus\n"
      "2[2b] Foot dark, 7 mm -> Aus cus\n3[3a] Lip thin -> Aus dus\n3[3b] Lip thick -> 4\n"
      "4[4a] Spire high -> Aus eus\n4[4b] Spire low -> Aus fus\n";
  for (auto const* bullet : {"* ", "• ", "- "}) {
    std::string text;
    for (auto const* lead :
         {"1a. Shell smooth … 2", "1b. Shell ribbed … 3", "2a. Foot pale, 5 mm … Aus bus",
          "2b. Foot dark, 7 mm … Aus cus", "3a. Lip thin … Aus dus", "3b. Lip thick … 4",
          "4a. Spire high … Aus eus", "4b. Spire low … Aus fus"}) {
      text += bullet + std::string{lead} + "\n";
    }
    EXPECT_EQ(sketch(text), kLettered) << bullet;
  }
  constexpr std::string_view kDashes =
      "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> 3\n2[2] Foot pale, 5 mm -> Aus bus\n"
      "2[–] Foot dark, 7 mm -> Aus cus\n3[3] Lip thin -> Aus dus\n3[–] Lip thick -> Aus eus\n";
  EXPECT_EQ(sketch("• 1 Shell smooth … 2\n• – Shell ribbed … 3\n• 2 Foot pale, 5 mm … Aus bus\n"
                   "• – Foot dark, 7 mm … Aus cus\n• 3 Lip thin … Aus dus\n"
                   "• – Lip thick … Aus eus\n"),
            kDashes);
  EXPECT_EQ(sketch("    1. 1 Shell smooth … 2\n    2. – Shell ribbed … 3\n"
                   "    3. 2 Foot pale, 5 mm … Aus bus\n    4. – Foot dark, 7 mm … Aus cus\n"
                   "    5. 3 Lip thin … Aus dus\n    6. – Lip thick … Aus eus\n"),
            kDashes);
}

TEST(PrintedListSigns, CountTheCoupletsOnceMore) {
  EXPECT_EQ(sketch("1. 1a. Shell smooth … Aus bus\n1b. Shell ribbed … 2\n"
                   "2. 2a. Foot pale … Aus cus\n2b. Foot dark … Aus dus\n"),
            "1[1a] Shell smooth -> Aus bus\n1[1b] Shell ribbed -> 2\n"
            "2[2a] Foot pale -> Aus cus\n2[2b] Foot dark -> Aus dus\n");
  EXPECT_EQ(sketch("1.\t1.\tShell smooth … Aus bus\n–\tShell ribbed … 2\n"
                   "2.\t2.\tFoot pale … Aus cus\n–\tFoot dark … Aus dus\n"),
            "1[1] Shell smooth -> Aus bus\n1[–] Shell ribbed -> 2\n"
            "2[2] Foot pale -> Aus cus\n2[–] Foot dark -> Aus dus\n");
}

TEST(PrintedLinks, KeepTheirWords) {
  std::string const text =
      "1. Shell smooth (![Fig. 3](fig-3.png)) … [2](#c2)\n"
      "–  Shell ribbed [as drawn](see plate) … [Aus bus](/species/bus)\n"
      "2. Foot pale … [Aus cus](https://key.example/cus)\n"
      "–  Foot dark … [Aus dus](dus.html#key)\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth (Fig. 3) -> 2\n"
            "1[–] Shell ribbed [as drawn](see plate) -> Aus bus\n"
            "2[2] Foot pale -> Aus cus\n2[–] Foot dark -> Aus dus\n");
  auto const findings = findings_of(text);
  ASSERT_FALSE(findings.empty());
  EXPECT_NE(findings.front().find("5 addresses behind words in brackets, \"[words](address)\", "
                                  "were taken for links and left out [link-addresses]"),
            std::string::npos)
      << findings.front();
}

TEST(PrintedEmphasis, IsNoLabelAndNoLeaders) {
  EXPECT_EQ(
      sketch(
          "1 Shell smooth ____ 2\n1* Shell ribbed ____ Aus bus\n2 Foot pale ____ Aus cus\n2* Foot "
          "dark ____ Aus dus\n"),
      "1[1] Shell smooth -> 2\n1[1*] Shell ribbed -> Aus bus\n2[2] Foot pale -> Aus cus\n2[2*] "
      "Foot dark -> Aus dus\n");
}

TEST(PrintedEnds, AreNoFiguresInAColumnBehindThem) {
  EXPECT_EQ(
      sketch(
          "1a\tShell smooth\tgo to 2\n1b\tShell ribbed\tAus bus (Roe, 1901)\tFigs 1, 2\n2a\tFoot "
          "pale\tAus cus Dorn\tFig. 3\n2b\tFoot dark\tAus dus Dorn\n"),
      "1[1a] Shell smooth -> 2\n1[1b] Shell ribbed -> Aus bus\n2[2a] Foot pale -> Aus "
      "cus\n2[2b] Foot dark -> Aus dus\n");
}

TEST(PrintedEnds, AreEpithetsWithTheStopOfTheLead) {
  EXPECT_EQ(
      sketch("Synopsis of the species of Ausella\n\nA. Shell smooth.\nB. Foot pale.          "
             "lacustris.\nBB. Foot dark.          montana.\nAA. Shell ribbed.          robusta.\n"),
      "A[A] Shell smooth. -> B\nA[AA] Shell ribbed. -> Ausella robusta\nB[B] Foot pale. -> Ausella "
      "lacustris\nB[BB] Foot dark. -> Ausella montana\n");
}

// A page of an electronic flora lists what else it has behind the key.
TEST(PrintedOwnWays, BulletsBehindAKeyOfOtherSignsBeginNoLeads) {
  EXPECT_EQ(sketch("1\t \tShell smooth, without ribs.\t \t(2)\n"
                   "+\t \tShell ribbed.\t \t3 Aus dus\n"
                   "\n"
                   "2 (1)\t \tFoot pale, 1-3 mm wide; spire low.\t \t1 Aus bus\n"
                   "\xE2\x80\xA2 Illustration (2)\n"
                   "Lower Taxa (9)\n"),
            "1[1] Shell smooth, without ribs. -> 2\n1[+] Shell ribbed. -> Aus dus\n"
            "2[2] Foot pale, 1-3 mm wide; spire low. -> Aus bus\n");
}

TEST(PrintedOwnWays, AccountsOfSpeciesMayHoldLetteredKeys) {
  auto const text =
      "1. Shell smooth ..... 2\n"
      "- Shell ribbed ..... 1. Aus bus\n"
      "2. Foot pale ..... 2. A. cus\n"
      "- Foot dark ..... 3. A. dus\n"
      "\n"
      "1. A. bus Roe.\n"
      "Ponds, common.\n\n"
      "a. Lip thin, white ..... subsp. bus\n"
      "b. Lip thick or\n"
      "double ..... b. subsp. fus Dorn\n"
      "\n"
      "2. A. cus Roe. Lakes:\n"
      "a. Lake Halver\n"
      "b. Lake Ost\n"
      "\n"
      "3. A. dus Roe. Streams.\n"
      "a. Eyes large ..... var. dus\n"
      "\n"
      "b. Eyes small ..... var. gus\n"
      "c. Eyes none ..... var. hus\n";
  auto const edition = read_key(text).edition;
  EXPECT_EQ(sketch(edition),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed -> Aus bus\n"
            "2[2] Foot pale -> Aus cus\n2[-] Foot dark -> Aus dus\n"
            "1[a] Lip thin, white -> Aus bus subsp. bus\n"
            "1[b] Lip thick or double -> Aus bus subsp. fus\n"
            "1[a] Eyes large -> Aus dus var. dus\n1[b] Eyes small -> Aus dus var. gus\n"
            "1[c] Eyes none -> Aus dus var. hus\n");
  ASSERT_EQ(edition.parts.size(), 3U);
  EXPECT_EQ(edition.parts[1].title, "1. A. bus Roe.");
  EXPECT_TRUE(edition.couplets.at(1).leads.at(1).notes.empty());
  ASSERT_FALSE(edition.notes.empty());
  EXPECT_EQ(edition.notes[0].text, "Ponds, common.");
}

TEST(PrintedEnds, OnLinesOfTheirOwnLeaveCountsToTheWords) {
  EXPECT_EQ(sketch("1. Ovary inferior; styles 2\n"
                   "    2\n"
                   "– Ovary superior; styles 3\n"
                   "    3\n"
                   "\n"
                   "2. Petals red\n"
                   "    Ausella busa\n"
                   "– Petals white\n"
                   "    Ausella cusa\n"
                   "\n"
                   "3. Seeds winged\n"
                   "    Ausella fusa\n"
                   "– Seeds wingless\n"
                   "    Ausella gusa\n"),
            "1[1] Ovary inferior; styles 2 -> 2\n"
            "1[–] Ovary superior; styles 3 -> 3\n"
            "2[2] Petals red -> Ausella busa\n"
            "2[–] Petals white -> Ausella cusa\n"
            "3[3] Seeds winged -> Ausella fusa\n"
            "3[–] Seeds wingless -> Ausella gusa\n");
}

TEST(PrintedEnds, OnLinesOfTheirOwnLeadBeforeCountsDo) {
  EXPECT_EQ(sketch("1. Stamens 5\n"
                   "    Ausella dusa\n"
                   "– Stamens 3\n"
                   "    2\n"
                   "\n"
                   "2. Petals red\n"
                   "    3\n"
                   "– Petals white\n"
                   "    Ausella cusa\n"
                   "\n"
                   "3. Seeds winged\n"
                   "    Ausella fusa\n"
                   "– Seeds wingless\n"
                   "    Ausella gusa\n"),
            "1[1] Stamens 5 -> Ausella dusa\n"
            "1[–] Stamens 3 -> 2\n"
            "2[2] Petals red -> 3\n"
            "2[–] Petals white -> Ausella cusa\n"
            "3[3] Seeds winged -> Ausella fusa\n"
            "3[–] Seeds wingless -> Ausella gusa\n");
}

TEST(PrintedEnds, AreNoCountsAboveTheCoupletOfThatNumber) {
  EXPECT_EQ(sketch("1. Styles 2\n"
                   "   2. Stamens 3\n"
                   "      Ausella busa\n"
                   "   2. Stamens 5\n"
                   "      Ausella cusa\n"
                   "1. Styles 3\n"
                   "   Ausella gusa\n"),
            "1[1] Styles 2 -> 2\n"
            "1[1] Styles 3 -> Ausella gusa\n"
            "2[2] Stamens 3 -> Ausella busa\n"
            "2[2] Stamens 5 -> Ausella cusa\n");
}

TEST(PrintedEnds, AreNoCountsThatNameOtherCouplets) {
  EXPECT_EQ(sketch("1. Stamens 3\n"
                   "  2. Leaves hairy\n"
                   "    3. Petals red Ausella busa\n"
                   "    3. Petals white Ausella cusa\n"
                   "  2. Leaves bald\n"
                   "    4. Stem round Ausella dusa\n"
                   "    4. Stem square Ausella fusa\n"
                   "1. Stamens 4\n"
                   "  5. Seeds smooth Ausella gusa\n"
                   "  5. Seeds rough Ausella husa\n"),
            "1[1] Stamens 3 -> 2\n"
            "1[1] Stamens 4 -> 5\n"
            "2[2] Leaves hairy -> 3\n"
            "2[2] Leaves bald -> 4\n"
            "3[3] Petals red -> Ausella busa\n"
            "3[3] Petals white -> Ausella cusa\n"
            "4[4] Stem round -> Ausella dusa\n"
            "4[4] Stem square -> Ausella fusa\n"
            "5[5] Seeds smooth -> Ausella gusa\n"
            "5[5] Seeds rough -> Ausella husa\n");
}

TEST(PrintedOwnWays, NumbersStandAloneAboveCoupletsOfTwoParagraphs) {
  EXPECT_EQ(sketch("Manual of Mites\nChapter 7\n1\nStigmata at the sides; legs\nlong (Fig. 7.3)\n"
                   "Go to 2\n\nStigmata none; legs various\nGo to 3\n2\nShield single\n"
                   "Aus busi (poultry mite)\n\nShield in two\nAus cusi, Aus dusi\n167\n168 Manual\n"
                   "3\nBody oval\nBus bus (dog mite; for those of the ear see p. 174)\n\n"
                   "Body long; feet short. Cattle\nBus cus\n"),
            "1[1] Stigmata at the sides; legs long (Fig. 7.3) -> 2\n"
            "1[] Stigmata none; legs various -> 3\n"
            "2[2] Shield single -> Aus busi (poultry mite)\n"
            "2[] Shield in two -> Aus cusi + Aus dusi\n"
            "3[3] Body oval -> Bus bus (dog mite; for those of the ear see p. 174)\n"
            "3[] Body long; feet short. Cattle -> Bus cus\n");
}

TEST(PrintedOwnWays, SpreadsheetsSetMarksAroundCells) {
  EXPECT_EQ(sketch("1\ta\t\"Spines 5(-6), parallel; cells cup-shaped\"\t\tAusella busa Roe\t\n"
                   "1\tb\tSpines divergent\t2\t\t\n"
                   "2\ta\tProcesses long\t\t\"Ausella cusa (Roe) Dorn, common in fens\"\n"
                   "2\tb\t\"Processes short, \"\"stumpy\"\"\"\t\tAusella dusa Roe\t\n"),
            "1[1 a] Spines 5(-6), parallel; cells cup-shaped -> Ausella busa\n"
            "1[1 b] Spines divergent -> 2\n"
            "2[2 a] Processes long -> Ausella cusa (common in fens)\n"
            "2[2 b] Processes short, \" stumpy\" -> Ausella dusa\n");
}

TEST(PrintedOwnWays, WhatAPictureShowsGoesOnWithNoNumber) {
  EXPECT_EQ(sketch("1a. Spines long ............ 2\nlong spines     Fig. 1\n"
                   "1b. Spines none ............ 3\nno spines     Fig. 2\n"
                   "2a. Body red ............ Aus bus\n2b. Body pale ............ Aus cus\n"
                   "3a. Tail forked ............ Aus dus\n3b. Tail round ............ Aus eus\n"),
            "1[1a] Spines long -> 2\n"
            "1[1b] Spines none -> 3\n"
            "2[2a] Body red -> Aus bus\n"
            "2[2b] Body pale -> Aus cus\n"
            "3[3a] Tail forked -> Aus dus\n"
            "3[3b] Tail round -> Aus eus\n");
}

TEST(PrintedEmphasis, EqualSignsAroundBoldNames) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF THAMNOLANIUS.\n"
                   "\n"
                   "_a._ Pileum without any rufous.\n"
                   "\n"
                   "  _b._ Throat white. =Thamnolanius flaviventris= (p. 214)\n"
                   "\n"
                   "  _bb._ Throat yellow. =Thamnolanius isthmicus= (p. 216)\n"
                   "\n"
                   "_aa._ Pileum partly rufous.\n"
                   "\n"
                   "  _c._ Rump olive. =Thamnolanius castaneiceps= (p. 229)\n"
                   "\n"
                   "  _cc._ Rump rufous. =Thamnolanius pyrrhopygius= (p. 230)\n"),
            "a[a] Pileum without any rufous. -> b\n"
            "a[aa] Pileum partly rufous. -> c\n"
            "b[b] Throat white. -> Thamnolanius flaviventris (p. 214)\n"
            "b[bb] Throat yellow. -> Thamnolanius isthmicus (p. 216)\n"
            "c[c] Rump olive. -> Thamnolanius castaneiceps (p. 229)\n"
            "c[cc] Rump rufous. -> Thamnolanius pyrrhopygius (p. 230)\n");
}

TEST(PrintedEmphasis, OfAPageSavedAsText) {
  EXPECT_EQ(sketch("Key to adult females\n"
                   "\n"
                   "Males: see separate key <http://www.ticks.example/key_m.html>.\n"
                   "\n"
                   "*1a*\tAnal groove in front (Fig. 1\n"
                   "<fig/01.gif>); festoons absent (/Ixorella/)\t2 <#c2>\n"
                   "*1b*\tAnal groove behind; festoons\n"
                   "present\t/Haemella perdicis/ <sp/perdicis.html>\n"
                   "\n"
                   "*2a*\tAuriculae present\t/Ixorella caprina/ <sp/caprina.html>\n"
                   "*2b*\tAuriculae absent\t/Ixorella murina/ <sp/murina.html>\n"),
            "1[1a] Anal groove in front (Fig. 1 ); festoons absent (Ixorella) -> 2\n"
            "1[1b] Anal groove behind; festoons present -> Haemella perdicis\n"
            "2[2a] Auriculae present -> Ixorella caprina\n"
            "2[2b] Auriculae absent -> Ixorella murina\n");
}

TEST(PrintedEmphasis, AddressesInAddressesAndElementsEnds) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Wings clear, as in <i>Ausella busa</i> ..... 2\n"
                   "1. Wings dark ..... [Ausella busa](<https://a.example/busa>)\n"
                   "2. Legs short ..... [Ausella cusa](<https://a.example/cusa>)\n"
                   "2. Legs and/or eyes red ..... [Ausella dusa](/species/dusa)\n"),
            "1[1] Wings clear, as in <i>Ausella busa</i> -> 2\n"
            "1[1] Wings dark -> Ausella busa\n"
            "2[2] Legs short -> Ausella cusa\n"
            "2[2] Legs and/or eyes red -> Ausella dusa\n");
}

TEST(PrintedOwnWays, LetATableOfCellsEndInANameBetweenBlankLines) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1\n"
                   "\n"
                   "Elytra with scales\n"
                   "\n"
                   "2\n"
                   "\n"
                   "–\n"
                   "\n"
                   "Elytra bare\n"
                   "\n"
                   "3\n"
                   "\n"
                   "2\n"
                   "\n"
                   "Legs red\n"
                   "\n"
                   "Ausella busa\n"
                   "\n"
                   "–\n"
                   "\n"
                   "Legs black\n"
                   "\n"
                   "Ausella cusa\n"
                   "\n"
                   "3\n"
                   "\n"
                   "Head keeled\n"
                   "\n"
                   "Ausella dusa\n"
                   "\n"
                   "–\n"
                   "\n"
                   "Head flat; living on Betula\n"
                   "\n"
                   "Ausella plana\n"),
            "1[1] Elytra with scales -> 2\n"
            "1[–] Elytra bare -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[–] Legs black -> Ausella cusa\n"
            "3[3] Head keeled -> Ausella dusa\n"
            "3[–] Head flat; living on Betula -> Ausella plana\n");
}

}  // namespace
}  // namespace keydrift
