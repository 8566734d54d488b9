// Every numbering that bracketed keys print: the same small key, labelled in each way.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::read_key;
using test::sketch;

struct Style {
  char const* name;
  char const* first;  // label of couplet 1's leads …
  char const* second;
  char const* third;  // … and of couplet 2's
  char const* fourth;
  char const* printed;  // Lead::label of these four, joined by blanks
};

void PrintTo(Style const& style, std::ostream* out) { *out << style.name; }

class PrintedNumbering : public testing::TestWithParam<Style> {};

TEST_P(PrintedNumbering, GivesTheSameTwoCouplets) {
  auto const& style = GetParam();
  auto const text = std::string{style.first} + " Shell smooth .......... 2\n" + style.second +
                    " Shell ribbed .......... Aus bus\n" + style.third +
                    " Foot pale .......... Aus cus\n" + style.fourth +
                    " Foot dark .......... Dus eus\n";
  auto const reading = read_key(text);
  auto const& edition = reading.edition;
  ASSERT_EQ(edition.couplets.size(), 2U);
  std::string labels;
  std::string words;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      labels += (labels.empty() ? "" : " ") + lead.label;
      words += lead.text + ";";
    }
  }
  EXPECT_EQ(labels, style.printed);
  EXPECT_EQ(words, "Shell smooth;Shell ribbed;Foot pale;Foot dark;");
  EXPECT_EQ(edition.couplets[0].label, "1");
  EXPECT_EQ(edition.couplets[1].label, "2");
  EXPECT_EQ(std::get<ToCouplet>(edition.couplets[0].leads[0].destination).couplet, CoupletId{1});
  EXPECT_EQ(edition.taxa.size(), 3U);
  EXPECT_TRUE(findings_of(text).empty()) << findings_of(text)[0];
}

INSTANTIATE_TEST_SUITE_P(
    All, PrintedNumbering,
    testing::Values(Style{"Bare", "1", "-", "2", "-", "1 - 2 -"},
                    Style{"Dot", "1.", "–", "2.", "–", "1 – 2 –"},
                    Style{"Parenthesis", "1)", "—", "2)", "—", "1 — 2 —"},
                    Style{"Enclosed", "(1)", "(-)", "(2)", "(-)", "1 - 2 -"},
                    Style{"Colon", "1:", "--", "2:", "--", "1 -- 2 --"},
                    Style{"Letters", "1a", "1b", "2a", "2b", "1a 1b 2a 2b"},
                    Style{"LettersDot", "1a.", "1b.", "2a.", "2b.", "1a 1b 2a 2b"},
                    Style{"LettersAfterDot", "1.a", "1.b", "2.a", "2.b", "1.a 1.b 2.a 2.b"},
                    Style{"CapitalLetters", "1A.", "1B.", "2A.", "2B.", "1A 1B 2A 2B"},
                    Style{"LettersParenthesis", "1a)", "1b)", "2a)", "2b)", "1a 1b 2a 2b"},
                    Style{"Primes", "1", "1'", "2", "2'", "1 1' 2 2'"},
                    Style{"TypographicPrimes", "1.", "1′.", "2.", "2′.", "1 1′ 2 2′"},
                    Style{"AcuteAccents", "1", "1´", "2", "2´", "1 1´ 2 2´"},
                    Style{"QuotationMarks", "1.", "1’.", "2.", "2’.", "1 1’ 2 2’"},
                    Style{"Stars", "1", "1*", "2", "2*", "1 1* 2 2*"},
                    Style{"StarsAfterDot", "1.", "1.*", "2.", "2.*", "1 1.* 2 2.*"},
                    Style{"LoneStars", "1.", "*", "2.", "*", "1 * 2 *"},
                    Style{"SameNumber", "1.", "1.", "2.", "2.", "1 1 2 2"},
                    Style{"Minus", "1", "−", "2", "−", "1 − 2 −"},
                    Style{"DashAfterDot", "1.–", "–", "2.–", "–", "1 – 2 –"},
                    Style{"BackReferences", "1 (0)", "–", "2 (1)", "–", "1 – 2 –"},
                    Style{"BackReferencesJoined", "1(0)", "-", "2(1)", "-", "1 - 2 -"},
                    Style{"BackReferencesDot", "1.", "–", "2 (1).", "–", "1 – 2 –"},
                    Style{"BackReferencesBrackets", "1", "–", "2 [1]", "–", "1 – 2 –"},
                    Style{"BackReferencesTwice", "1", "1´", "2(1)", "2´(1)", "1 1´ 2 2´"}),
    [](auto const& style) { return std::string{style.param.name}; });

TEST(PrintedLabels, ReadsCouplesOfCapitals) {
  EXPECT_EQ(sketch("A. Shell smooth ..... B\n"
                   "AA. Shell ribbed ..... Aus bus\n"
                   "B. Foot pale ..... Aus cus\n"
                   "BB. Foot dark ..... Dus eus\n"),
            "A[A] Shell smooth -> B\n"
            "A[AA] Shell ribbed -> Aus bus\n"
            "B[B] Foot pale -> Aus cus\n"
            "B[BB] Foot dark -> Dus eus\n");
}

TEST(PrintedLabels, ReadsCouplesOfSmallLettersAndOfPrimedCapitals) {
  EXPECT_EQ(sketch("a Shell smooth ..... b\n"
                   "aa Shell ribbed ..... Aus bus\n"
                   "b Foot pale ..... Aus cus\n"
                   "bb Foot dark ..... Dus eus\n"),
            "a[a] Shell smooth -> b\n"
            "a[aa] Shell ribbed -> Aus bus\n"
            "b[b] Foot pale -> Aus cus\n"
            "b[bb] Foot dark -> Dus eus\n");
  EXPECT_EQ(sketch("A Shell smooth ..... B\n"
                   "A´ Shell ribbed ..... Aus bus\n"
                   "B Foot pale ..... Aus cus\n"
                   "B´ Foot dark ..... Dus eus\n"),
            "A[A] Shell smooth -> B\n"
            "A[A´] Shell ribbed -> Aus bus\n"
            "B[B] Foot pale -> Aus cus\n"
            "B[B´] Foot dark -> Dus eus\n");
}

TEST(PrintedLabels, KeepsBackReferencesAsPrintedWithTheirPlaces) {
  auto const edition = read_key(
                           "1 Shell smooth ..... 2\n"
                           "– Shell ribbed ..... 3\n"
                           "2 (1) Foot pale ..... 3\n"
                           "– Foot dark ..... Aus bus\n"
                           "3 (1, 2) Eyes large ..... Aus cus\n"
                           "– Eyes small ..... Dus eus\n")
                           .edition;
  auto const& references = edition.couplets[2].back_references;
  ASSERT_EQ(references.size(), 2U);
  EXPECT_EQ(references[0].label, "1");
  EXPECT_EQ(references[1].label, "2");
  EXPECT_EQ(references[1].place.line, 5U);
  EXPECT_EQ(references[1].place.column, 7U);
  EXPECT_TRUE(edition.couplets[0].back_references.empty());
}

TEST(PrintedLabels, KeepsBackReferencesToSecondLeads) {
  auto const edition = read_key(
                           "1 Shell smooth ..... Aus bus\n"
                           "1´ Shell ribbed ..... 2\n"
                           "2(1´) Foot pale ..... Aus cus\n"
                           "2´(1´) Foot dark ..... Dus eus\n")
                           .edition;
  ASSERT_EQ(edition.couplets.size(), 2U);
  ASSERT_EQ(edition.couplets[1].back_references.size(), 1U);
  EXPECT_EQ(edition.couplets[1].back_references[0].label, "1´");
}

TEST(PrintedLabels, ReadsTripletsAndPolytomies) {
  EXPECT_EQ(sketch("1a Red ..... 2\n1b Green ..... Aus bus\n1c Blue ..... Aus cus\n"
                   "2. Small ..... Dus eus\n– Large ..... Dus fus\n– Huge ..... Dus gus\n"),
            "1[1a] Red -> 2\n1[1b] Green -> Aus bus\n1[1c] Blue -> Aus cus\n"
            "2[2] Small -> Dus eus\n2[–] Large -> Dus fus\n2[–] Huge -> Dus gus\n");
  EXPECT_EQ(sketch("1 Red ..... Aus aus\n1' Green ..... Aus bus\n1'' Blue ..... Aus cus\n"),
            "1[1] Red -> Aus aus\n1[1'] Green -> Aus bus\n1[1''] Blue -> Aus cus\n");
  EXPECT_EQ(sketch("1. Red ..... Aus aus\n1. Green ..... Aus bus\n1. Blue ..... Aus cus\n"),
            "1[1] Red -> Aus aus\n1[1] Green -> Aus bus\n1[1] Blue -> Aus cus\n");
}

TEST(PrintedLabels, ReadsFurtherLeadsWithoutAnyLabel) {
  EXPECT_EQ(sketch("4. Small ..... 5\n– Large ..... Aus dus\n"
                   "5. Red … Aus aus\nGreen … Aus bus\nBlue … 4\n"),
            "4[4] Small -> 5\n4[–] Large -> Aus dus\n"
            "5[5] Red -> Aus aus\n5[] Green -> Aus bus\n5[] Blue -> 4\n");
}

TEST(PrintedLabels, TakesASqueezedInCoupletForOneWhereItsPartnerIsPrimed) {
  EXPECT_EQ(sketch("6. Small ..... 7\n– Large ..... 7a\n"
                   "7. Red ..... Aus aus\n– Green ..... Aus bus\n"
                   "7a. Round ..... Aus cus\n7a'. Square ..... Aus dus\n"),
            "6[6] Small -> 7\n6[–] Large -> 7a\n"
            "7[7] Red -> Aus aus\n7[–] Green -> Aus bus\n"
            "7a[7a] Round -> Aus cus\n7a[7a'] Square -> Aus dus\n");
}

TEST(PrintedLabels, TakesASqueezedInCoupletForOneWhereItsPartnerIsADash) {
  EXPECT_EQ(sketch("6. Small ..... 7\n– Large ..... Aus fus\n"
                   "7. Red ..... Aus aus\n– Green ..... 7a\n"
                   "7a (7). Round ..... Aus cus\n– Square ..... Aus dus\n"),
            "6[6] Small -> 7\n6[–] Large -> Aus fus\n"
            "7[7] Red -> Aus aus\n7[–] Green -> 7a\n"
            "7a[7a] Round -> Aus cus\n7a[–] Square -> Aus dus\n");
}

TEST(PrintedLabels, TakesLettersForLeadsWhereTheNumberIsTheCouplet) {
  EXPECT_EQ(sketch("6a. Small ..... 7\n6b. Large ..... Aus fus\n"
                   "7a. Red ..... Aus aus\n7b. Green ..... Aus bus\n"),
            "6[6a] Small -> 7\n6[6b] Large -> Aus fus\n"
            "7[7a] Red -> Aus aus\n7[7b] Green -> Aus bus\n");
}

TEST(PrintedLabels, KeepsTwoSqueezedInCoupletsApart) {
  EXPECT_EQ(sketch("1. Small ..... 1a\n– Large ..... 1b\n"
                   "1a. Red ..... Aus aus\n1a'. Green ..... Aus bus\n"
                   "1b. Round ..... Aus cus\n1b'. Square ..... Aus dus\n"),
            "1[1] Small -> 1a\n1[–] Large -> 1b\n"
            "1a[1a] Red -> Aus aus\n1a[1a'] Green -> Aus bus\n"
            "1b[1b] Round -> Aus cus\n1b[1b'] Square -> Aus dus\n");
}

TEST(PrintedLabels, ReadsAPrimedCoupletThatALaterAuthorInserted) {
  EXPECT_EQ(sketch("14. Small ..... 15\n– Large ..... Aus fus\n"
                   "15. Red ..... Aus aus\n– Green ..... 15’\n"
                   "15’(15). Round ..... Aus cus\n– Square ..... Aus dus\n"),
            "14[14] Small -> 15\n14[–] Large -> Aus fus\n"
            "15[15] Red -> Aus aus\n15[–] Green -> 15’\n"
            "15’[15’] Round -> Aus cus\n15’[–] Square -> Aus dus\n");
}

TEST(PrintedLabels, JoinsYokedHalvesThatStandFarApart) {
  EXPECT_EQ(sketch("1. Small ..... 2\n1*. Large ..... 6\n"
                   "2. Red ..... Aus aus\n2*. Green ..... 6\n"
                   "6. Pale ..... 7\n"
                   "7. Round ..... Aus cus\n7*. Square ..... Aus dus\n"
                   "6*. Dark ..... Aus eus\n"),
            "1[1] Small -> 2\n1[1*] Large -> 6\n"
            "2[2] Red -> Aus aus\n2[2*] Green -> 6\n"
            "6[6] Pale -> 7\n6[6*] Dark -> Aus eus\n"
            "7[7] Round -> Aus cus\n7[7*] Square -> Aus dus\n");
}

TEST(PrintedLabels, KeepsBothCoupletsOfADuplicateNumber) {
  auto const text =
      "1. Small ..... 2\n– Large ..... 3\n"
      "2. Red ..... Aus aus\n– Green ..... Aus bus\n"
      "2. Round ..... Aus cus\n– Square ..... Aus dus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Small -> 2\n1[–] Large -> ?3\n"
            "2[2] Red -> Aus aus\n2[–] Green -> Aus bus\n"
            "2[2] Round -> Aus cus\n2[–] Square -> Aus dus\n");
  EXPECT_TRUE(findings_of(text).empty());  // proof reports both faults
}

TEST(PrintedLabels, ReadsAMisprintedLabelAndSaysSo) {
  auto const text =
      "1a Small ..... 2\nlb Large ..... Aus aus\n"
      "2a Red ..... Aus bus\n2b Green ..... Aus cus\n";
  EXPECT_EQ(sketch(text),
            "1[1a] Small -> 2\n1[lb] Large -> Aus aus\n"
            "2[2a] Red -> Aus bus\n2[2b] Green -> Aus cus\n");
  EXPECT_EQ(findings_of(text),
            std::vector<std::string>{
                "key.txt:2:1: warning: \"lb\" was read as a lead of couplet 1 [misprinted-label] "
                "(print the number in digits)"});
}

TEST(PrintedLabels, ReadsALabelThatStandsAloneOnItsLine) {
  auto const text =
      "1.\nSmall ..... 2\n–\nLarge ..... Aus aus\n"
      "2.\nRed ..... Aus bus\n–\nGreen ..... Aus cus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Small -> 2\n1[–] Large -> Aus aus\n"
            "2[2] Red -> Aus bus\n2[–] Green -> Aus cus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, continuation, lead, continuation, lead, continuation, lead, continuation");
}

TEST(PrintedLabels, TakesNumbersThatOpenWrappedLinesForWords) {
  EXPECT_EQ(sketch("1. Carapace on each side with\n5 spines and\n2 teeth ..... 2\n"
                   "– Carapace smooth ..... Aus aus\n"
                   "2. Legs with rings\n3 mm apart ..... Aus bus\n– Legs plain ..... Aus cus\n"),
            "1[1] Carapace on each side with 5 spines and 2 teeth -> 2\n"
            "1[–] Carapace smooth -> Aus aus\n"
            "2[2] Legs with rings 3 mm apart -> Aus bus\n2[–] Legs plain -> Aus cus\n");
}

TEST(PrintedNumbering, SerialNumbersMayBearStopsAndDashes) {
  auto const wanted =
      "1[1] Wings clear. -> 2\n1[4] Wings dark. -> Aus dus\n"
      "2[2] Legs pale. -> Aus bus\n2[3] Legs dark. -> Aus cus\n";
  EXPECT_EQ(sketch("1. (4.) Wings clear.\n2. (3.) Legs pale. ..... Aus bus\n"
                   "3. (2.) Legs dark. ..... Aus cus\n4. (1.) Wings dark. ..... Aus dus\n"),
            wanted);
  EXPECT_EQ(sketch("1. — (4). Wings clear.\n2. — (3). Legs pale. ..... Aus bus\n"
                   "3. — (2). Legs dark. ..... Aus cus\n4. — (1). Wings dark. ..... Aus dus\n"),
            wanted);
}

TEST(PrintedSpacedLabels, LettersInBracketsBehindTheStopOfTheNumber) {
  EXPECT_EQ(sketch("1. a) Flowers solitary ..... Ausella husa\n"
                   "1. b) Flowers in racemes ..... 2\n"
                   "1. c) Flowers in heads ..... Ausella fusa\n"
                   "2. a) Petals red ..... Ausella busa\n"
                   "2. b) Petals white ..... Ausella cusa\n"),
            "1[1. a] Flowers solitary -> Ausella husa\n"
            "1[1. b] Flowers in racemes -> 2\n"
            "1[1. c] Flowers in heads -> Ausella fusa\n"
            "2[2. a] Petals red -> Ausella busa\n"
            "2[2. b] Petals white -> Ausella cusa\n");
}

TEST(PrintedMarks, TwoPlusesMarkTheThirdLead) {
  EXPECT_EQ(sketch("1 Flowers solitary ..... Ausella husa\n"
                   "1+ Flowers in racemes ..... 2\n"
                   "1++ Flowers in heads ..... Ausella fusa\n"
                   "2 Petals red ..... Ausella busa\n"
                   "2+ Petals white ..... Ausella cusa\n"),
            "1[1] Flowers solitary -> Ausella husa\n"
            "1[1+] Flowers in racemes -> 2\n"
            "1[1++] Flowers in heads -> Ausella fusa\n"
            "2[2] Petals red -> Ausella busa\n"
            "2[2+] Petals white -> Ausella cusa\n");
}

TEST(PrintedLabels, StrokesCloseDashesAsTheyCloseNumbers) {
  EXPECT_EQ(sketch("1/ Wings clear : 2\n-/ Wings dark : Aus bus\n"
                   "2/ Legs long : Aus cus\n-/ Legs short : 3\n"
                   "3/ Head red : Aus dus\n-/ Head black : Aus eus\n"),
            "1[1] Wings clear -> 2\n1[-] Wings dark -> Aus bus\n"
            "2[2] Legs long -> Aus cus\n2[-] Legs short -> 3\n"
            "3[3] Head red -> Aus dus\n3[-] Head black -> Aus eus\n");
}

TEST(PrintedLabels, MayCloseWithAStroke) {
  EXPECT_EQ(sketch("1/ Flowers solitary\tAusella husa\n"
                   "– Flowers in racemes\t2\n"
                   "\n"
                   "2/ Petals red\t3\n"
                   "– Petals white\tAusella cusa\n"
                   "\n"
                   "3/ Seeds winged\tAusella fusa\n"
                   "– Seeds wingless\tAusella gusa\n"),
            "1[1] Flowers solitary -> Ausella husa\n"
            "1[–] Flowers in racemes -> 2\n"
            "2[2] Petals red -> 3\n"
            "2[–] Petals white -> Ausella cusa\n"
            "3[3] Seeds winged -> Ausella fusa\n"
            "3[–] Seeds wingless -> Ausella gusa\n");
}

TEST(PrintedNumbering, BackReferencesMayStandOnlyWhereTheLeadIsFar) {
  auto const text =
      "1     Gills bald ............ 2\n1*    Gills hairy ............ Aus bus\n"
      "2 (1) Flesh turning pink ............ 3\n2*    Flesh unchanged ............ 4\n"
      "3     Spores small; under firs ............ Aus cus\n3*    Spores large ............ Aus "
      "dus\n"
      "4 (2) Cap broad ............ 5\n4*    Cap narrow ............ 6\n"
      "5     Taste bitter ............ Aus eus\n5*    Taste mild ............ Aus fus\n"
      "6 (4) Smell none ............ Aus gus\n6*    Smell of fruit ............ Aus hus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Gills bald -> 2\n"
            "1[1*] Gills hairy -> Aus bus\n"
            "2[2] Flesh turning pink -> 3\n"
            "2[2*] Flesh unchanged -> 4\n"
            "3[3] Spores small; under firs -> Aus cus\n"
            "3[3*] Spores large -> Aus dus\n"
            "4[4] Cap broad -> 5\n"
            "4[4*] Cap narrow -> 6\n"
            "5[5] Taste bitter -> Aus eus\n"
            "5[5*] Taste mild -> Aus fus\n"
            "6[6] Smell none -> Aus gus\n"
            "6[6*] Smell of fruit -> Aus hus\n");
  EXPECT_TRUE(findings_of(text).empty());
}

TEST(PrintedNumbering, ALetterLeadsToTheCoupletPutIn) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "6    Tergites shining ..... lucidula (Stannock, 1836)\n"
                   "–    Tergites punctured ................. 7\n"
                   "\n"
                   "7    Propodeal triangle wrinkled ........ 7a\n"
                   "–    Propodeal triangle granulate ....... nigripes Sax, 1866\n"
                   "\n"
                   "7a   Hind margins depressed over more than half of the length 7b\n"
                   "–    Hind margins depressed over a third .... rugosula Sax, 1866\n"
                   "\n"
                   "7b   Pubescence with black hairs ....... scotica Mottram, 1988\n"
                   "–    Pubescence pale .......... rugosula, scotica, depressa and nigripes\n"),
            "6[6] Tergites shining -> Ausella lucidula\n"
            "6[–] Tergites punctured -> 7\n"
            "7[7] Propodeal triangle wrinkled -> 7a\n"
            "7[–] Propodeal triangle granulate -> Ausella nigripes\n"
            "7a[7a] Hind margins depressed over more than half of the length -> 7b\n"
            "7a[–] Hind margins depressed over a third -> Ausella rugosula\n"
            "7b[7b] Pubescence with black hairs -> Ausella scotica\n"
            "7b[–] Pubescence pale -> Ausella rugosula + Ausella scotica + Ausella depressa + "
            "Ausella nigripes\n");
}

TEST(PrintedNumbering, ADashWithinTheLeadPartsNoRivals) {
  EXPECT_EQ(sketch("5. Ausella HEUCK – Glocke\n"
                   "\n"
                   "1 Krone gelb oder gelblichweiß . . . . . . . . 2\n"
                   "1* Krone blau oder violett . . . . . . . . . . 3\n"
                   "2 Pflanze einjährig. Stängel am Grund einfach. Sandige Äcker.\n"
                   "– A. annua (HEUCK) ZETSCH\n"
                   "2* Pflanze ausdauernd . . . . . . . . . . . . . A. busa ROE\n"
                   "3 (1) Griffel keulig. Blattrand ganz . . . . . . 4\n"
                   "3* Griffel fädig. Blattrand gekerbt . . . . . . 5\n"
                   "4 (3) Blätter unterseits filzig . . . . . . . . A. dusa ROE\n"
                   "4* Blätter kahl . . . . . . . . . . . . . . . . A. fusa ROE\n"
                   "5 (3) Stängel rund (Bäche\n"
                   "– Ufer; L7 T5). . . . . . . . . . . . . . . . . A. cusa ROE\n"
                   "5* Stängel kantig . . . . . . . . . . . . . . . A. gusa ROE\n"),
            "1[1] Krone gelb oder gelblichweiß -> 2\n"
            "1[1*] Krone blau oder violett -> 3\n"
            "2[2] Pflanze einjährig. Stängel am Grund einfach. Sandige Äcker. -> Ausella annua\n"
            "2[2*] Pflanze ausdauernd -> Ausella busa\n"
            "3[3] Griffel keulig. Blattrand ganz -> 4\n"
            "3[3*] Griffel fädig. Blattrand gekerbt -> 5\n"
            "4[4] Blätter unterseits filzig -> Ausella dusa\n"
            "4[4*] Blätter kahl -> Ausella fusa\n"
            "5[5] Stängel rund (Bäche – Ufer; L7 T5) -> Ausella cusa\n"
            "5[5*] Stängel kantig -> Ausella gusa\n");
}

TEST(PrintedNumbering, LargeFiguresMayStandAboveTheFirstCouplets) {
  EXPECT_EQ(sketch("KEY TO SPECIES\n"
                   "\n"
                   "1\n"
                   "Pronotum with two black spots behind the calli\n"
                   "(fig. 27, A, B)\n"
                   "2\n"
                   "— Pronotum without black markings behind the calli\n"
                   "5\n"
                   "\n"
                   "2\n"
                   "Scutellum entirely yellow; on yarrow, local, vii-ix\n"
                   "bipunctella (Feldner)\n"
                   "— Scutellum with a black mark at base\n"
                   "3\n"
                   "\n"
                   "3 Pronotal spots fused to form a complete band\n"
                   "fasciata Hornby\n"
                   "— Pronotal spots separate; corium without red\n"
                   "4\n"
                   "\n"
                   "4 Black mark on scutellum heart-shaped\n"
                   "cordigera (Westerly)\n"
                   "— Scutellum black, the extreme apex whitish\n"
                   "apicalba Feldner\n"
                   "\n"
                   "5 Hind femora with rows of dark spots\n"
                   "artemisiella Hornby\n"
                   "— Hind femora unspotted\n"
                   "nigrisetis (Westerly)\n"),
            "1[1] Pronotum with two black spots behind the calli (fig. 27, A, B) -> 2\n"
            "1[—] Pronotum without black markings behind the calli -> 5\n"
            "2[2] Scutellum entirely yellow; on yarrow, local, vii-ix -> bipunctella\n"
            "2[—] Scutellum with a black mark at base -> 3\n"
            "3[3] Pronotal spots fused to form a complete band -> fasciata\n"
            "3[—] Pronotal spots separate; corium without red -> 4\n"
            "4[4] Black mark on scutellum heart-shaped -> cordigera\n"
            "4[—] Scutellum black, the extreme apex whitish -> apicalba\n"
            "5[5] Hind femora with rows of dark spots -> artemisiella\n"
            "5[—] Hind femora unspotted -> nigrisetis\n");
}

TEST(PrintedNumbering, TheNumberOfTheRivalMayStandBeforeTheOwn) {
  EXPECT_EQ(
      sketch("THE SPECIES OF LEIOPHRACTES Hald.\n"
             "\n"
             "(4) 1. Scutellum margined throughout.\n"
             "\n"
             "(3) 2. Flagellum white-banded 1. cinctum, Lindn.\n"
             "(2) 3. Flagellum immaculate 2. fuscicorne, Hald.\n"
             "\n"
             "(1) 4. Scutellum margined only at base.\n"
             "\n"
             "(6) 5. Areolet wanting ; head not narrowed 3. nigrinum, Vollm.\n"
             "\n"
             "(5) 6. Areolet present ; head strongly narrowed behind eyes\n"
             "\n"
             "4. areolatum, Bridgw.\n"),
      "1[1] Scutellum margined throughout. -> 2\n"
      "1[4] Scutellum margined only at base. -> 5\n"
      "2[2] Flagellum white-banded -> Leiophractes cinctum\n"
      "2[3] Flagellum immaculate -> Leiophractes fuscicorne\n"
      "5[5] Areolet wanting ; head not narrowed -> Leiophractes nigrinum\n"
      "5[6] Areolet present ; head strongly narrowed behind eyes -> Leiophractes areolatum\n");
}

TEST(PrintedLabels, CapitalsWhoseIndicesAreDamaged) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF THE GENUS AUSELLA.\n"
                   "\n"
                   "A1. Carapace broader than long.\n"
                   "\n"
                   "B1. Margin divided into teeth ............ busa, p. 88.\n"
                   "\n"
                   "B2. Margin entire.\n"
                   "\n"
                   "C1. Margin thin ............ cusa, p. 89.\n"
                   "\n"
                   "C2. Margin thick, rounded.\n"
                   "\n"
                   "D'. Abdomen with all the segments free ...... dusa, p. 90.\n"
                   "\n"
                   "D?. Abdomen with segments 3 to 5 coalesced ...... gusa, p. 91.\n"
                   "\n"
                   "A2. Carapace as long as broad ............ nusa, p. 92.\n"),
            "1[A1] Carapace broader than long. -> 2\n"
            "1[A2] Carapace as long as broad -> Ausella nusa (p. 92.)\n"
            "2[B1] Margin divided into teeth -> Ausella busa (p. 88.)\n"
            "2[B2] Margin entire. -> 3\n"
            "3[C1] Margin thin -> Ausella cusa (p. 89.)\n"
            "3[C2] Margin thick, rounded. -> 4\n"
            "4[D1] Abdomen with all the segments free -> Ausella dusa (p. 90.)\n"
            "4[D2] Abdomen with segments 3 to 5 coalesced -> Ausella gusa (p. 91.)\n");
}

TEST(PrintedLabels, ANumberAloneBelowAnEndedLeadOpensACouplet) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1\n"
                   "Wings clear, with 12 veins ... 2\n"
                   "Wings dark throughout, without a vein ... Ausella busa\n"
                   "2\n"
                   "Legs short, dark brown ... 3\n"
                   "Legs long, pale ... Ausella cusa\n"
                   "3\n"
                   "Antennae with 9 segments ... Ausella dusa\n"
                   "Antennae with 8 segments ... Ausella gusa\n"),
            "1[] Wings clear, with 12 veins -> 2\n"
            "1[] Wings dark throughout, without a vein -> Ausella busa\n"
            "2[] Legs short, dark brown -> 3\n"
            "2[] Legs long, pale -> Ausella cusa\n"
            "3[] Antennae with 9 segments -> Ausella dusa\n"
            "3[] Antennae with 8 segments -> Ausella gusa\n");
}

TEST(PrintedLabels, OpenWithABareNumberAboveLabelsWithBackReferencesAndEndsOnTheirOwnLines) {
  EXPECT_EQ(sketch("1 Elytra scaly, about\n"
                   "   as long as wide\n"
                   "2\n"
                   "– Elytra bare\n"
                   "5\n"
                   "2 (1) Legs red\n"
                   "Ausella busa\n"
                   "– Legs black\n"
                   "3\n"
                   "3 (2) Head keeled\n"
                   "Ausella dusa\n"
                   "– Head flat\n"
                   "4\n"
                   "4 (3) Claws simple\n"
                   "Ausella eusa\n"
                   "– Claws toothed\n"
                   "Ausella fusa\n"
                   "5 (1) Wings long\n"
                   "Ausella gusa\n"
                   "– Wings short\n"
                   "6\n"
                   "6 (5) Palps red\n"
                   "Ausella husa\n"
                   "– Palps black\n"
                   "7\n"
                   "7 (6) Tibiae bare\n"
                   "Ausella iusa\n"
                   "– Tibiae hairy\n"
                   "8\n"
                   "8 (7) Horns long\n"
                   "Ausella kusa\n"
                   "– Horns short\n"
                   "Ausella lusa\n"),
            "1[1] Elytra scaly, about as long as wide -> 2\n"
            "1[–] Elytra bare -> 5\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[–] Legs black -> 3\n"
            "3[3] Head keeled -> Ausella dusa\n"
            "3[–] Head flat -> 4\n"
            "4[4] Claws simple -> Ausella eusa\n"
            "4[–] Claws toothed -> Ausella fusa\n"
            "5[5] Wings long -> Ausella gusa\n"
            "5[–] Wings short -> 6\n"
            "6[6] Palps red -> Ausella husa\n"
            "6[–] Palps black -> 7\n"
            "7[7] Tibiae bare -> Ausella iusa\n"
            "7[–] Tibiae hairy -> 8\n"
            "8[8] Horns long -> Ausella kusa\n"
            "8[–] Horns short -> Ausella lusa\n");
}

TEST(PrintedLabels, AreBulletsThatAnswerLeadsWhoseEndsStandOnTheirOwnLines) {
  EXPECT_EQ(sketch("1. Elytra with scales\n"
                   "2\n"
                   "• Elytra bare\n"
                   "3\n"
                   "2. Legs red\n"
                   "Ausella busa\n"
                   "• Legs black\n"
                   "Ausella cusa\n"
                   "3. Head keeled\n"
                   "Ausella dusa\n"
                   "• Head flat\n"
                   "4\n"
                   "4. Claws simple\n"
                   "Ausella eusa\n"
                   "• Claws toothed\n"
                   "Ausella fusa\n"),
            "1[1] Elytra with scales -> 2\n"
            "1[•] Elytra bare -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[•] Legs black -> Ausella cusa\n"
            "3[3] Head keeled -> Ausella dusa\n"
            "3[•] Head flat -> 4\n"
            "4[4] Claws simple -> Ausella eusa\n"
            "4[•] Claws toothed -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
