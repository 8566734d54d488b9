// Outlines: ranks told by letters, numerals, signs, decimals or by indentation alone.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::read_key;
using test::sketch;

std::string note_of(std::string_view text) { return read_key(text).source.layout_note; }

// --- labels ------------------------------------------------------------------------------------

TEST(PrintedOutline, NumeralsLettersAndNumbersCountTheRivals) {
  auto const text =
      "I. Shell smooth.\n"
      "  A. Foot pale ..... Aus bus\n"
      "  B. Foot dark.\n"
      "    1. Eyes large ..... Aus cus\n"
      "    2. Eyes small.\n"
      "      a. Tail long ..... Aus dus\n"
      "      b. Tail short ..... Aus eus\n"
      "II. Shell ribbed.\n"
      "  A. Foot broad ..... Dus fus\n"
      "  B. Foot narrow ..... Dus gus\n"
      "  C. Foot cleft ..... Dus hus\n";
  EXPECT_EQ(sketch(text),
            "1[I] Shell smooth. -> 2\n1[II] Shell ribbed. -> 5\n"
            "2[A] Foot pale -> Aus bus\n2[B] Foot dark. -> 3\n"
            "3[1] Eyes large -> Aus cus\n3[2] Eyes small. -> 4\n"
            "4[a] Tail long -> Aus dus\n4[b] Tail short -> Aus eus\n"
            "5[A] Foot broad -> Dus fus\n5[B] Foot narrow -> Dus gus\n"
            "5[C] Foot cleft -> Dus hus\n");
  EXPECT_EQ(
      note_of(text),
      "outline, rivals told by their labels, leads marked I and II, destinations after dot "
      "leaders; the couplets' numbers are not printed but counted; a lead without destination "
      "goes on with the next lead");
  EXPECT_EQ(line_kinds(text), "lead, lead, lead, lead, lead, lead, lead, lead, lead, lead, lead");
  EXPECT_TRUE(findings_of(text).empty());
}

TEST(PrintedOutline, RanksNeedNoIndentation) {
  EXPECT_EQ(sketch("I. Shell smooth\nA. Foot pale ..... Aus bus\nB. Foot dark\n"
                   "a. Eyes large ..... Aus cus\nb. Eyes small ..... Aus dus\n"
                   "II. Shell ribbed\nA. Foot broad ..... Dus fus\nB. Foot narrow ..... Dus gus\n"),
            "1[I] Shell smooth -> 2\n1[II] Shell ribbed -> 4\n"
            "2[A] Foot pale -> Aus bus\n2[B] Foot dark -> 3\n"
            "3[a] Eyes large -> Aus cus\n3[b] Eyes small -> Aus dus\n"
            "4[A] Foot broad -> Dus fus\n4[B] Foot narrow -> Dus gus\n");
}

// "(1)" and "(2)" answer each other beneath an open "1.", not that one.
TEST(PrintedOutline, NumbersInBracketsMayBeARankOfTheirOwn) {
  EXPECT_EQ(sketch("1. Shell smooth\n(1) Foot pale ..... Aus bus\n(2) Foot dark ..... Aus cus\n"
                   "2. Shell ribbed\na. Foot broad\n(1) Eyes large ..... Dus fus\n"
                   "(2) Eyes small ..... Dus gus\nb. Foot narrow ..... Dus hus\n"),
            "1[1] Shell smooth -> 2\n1[2] Shell ribbed -> 3\n"
            "2[1] Foot pale -> Aus bus\n2[2] Foot dark -> Aus cus\n"
            "3[a] Foot broad -> 4\n3[b] Foot narrow -> Dus hus\n"
            "4[1] Eyes large -> Dus fus\n4[2] Eyes small -> Dus gus\n");
  // They answer it where no second of their own stands between.
  EXPECT_EQ(sketch("1. Shell smooth\n2. Foot pale ..... Aus bus\n(2) Foot dark ..... Aus cus\n"
                   "(1) Shell ribbed\n3. Eyes large ..... Dus fus\n(3) Eyes small ..... Dus gus\n"),
            "1[1] Shell smooth -> 2\n1[1] Shell ribbed -> 3\n"
            "2[2] Foot pale -> Aus bus\n2[2] Foot dark -> Aus cus\n"
            "3[3] Eyes large -> Dus fus\n3[3] Eyes small -> Dus gus\n");
}

TEST(PrintedOutline, DoubledLettersAnswerWhereRankIsToldByTheLetter) {
  EXPECT_EQ(sketch("a Shell smooth\nb Foot pale ..... Aus bus\nbb Foot dark ..... Aus cus\n"
                   "aa Shell ribbed\nb Foot broad ..... Dus eus\nbb Foot narrow\n"
                   "c Eyes large ..... Dus fus\ncc Eyes small ..... Dus gus\n"),
            "1[a] Shell smooth -> 2\n1[aa] Shell ribbed -> 3\n"
            "2[b] Foot pale -> Aus bus\n2[bb] Foot dark -> Aus cus\n"
            "3[b] Foot broad -> Dus eus\n3[bb] Foot narrow -> 4\n"
            "4[c] Eyes large -> Dus fus\n4[cc] Eyes small -> Dus gus\n");
}

TEST(PrintedOutline, LettersThatTellDepthsNameNoCouplets) {
  EXPECT_EQ(sketch("A. Shell smooth\n"
                   "  B. Foot pale ..... Aus bus\n"
                   "  B'. Foot dark ..... Aus cus\n"
                   "A'. Shell ribbed\n"
                   "  B. Foot broad ..... Dus eus\n"
                   "  B'. Foot narrow\n"
                   "    C. Eyes black ..... Dus fus\n"
                   "    C'. Eyes red\n"
                   "      D. Radula long ..... Dus gus\n"
                   "      D'. Radula short ..... Dus hus\n"),
            "1[A] Shell smooth -> 2\n1[A'] Shell ribbed -> 3\n"
            "2[B] Foot pale -> Aus bus\n2[B'] Foot dark -> Aus cus\n"
            "3[B] Foot broad -> Dus eus\n3[B'] Foot narrow -> 4\n"
            "4[C] Eyes black -> Dus fus\n4[C'] Eyes red -> 5\n"
            "5[D] Radula long -> Dus gus\n5[D'] Radula short -> Dus hus\n");
}

TEST(PrintedOutline, ALetterOfACoupletThatStandsTwiceIsAMisprint) {
  EXPECT_EQ(sketch("A. Shell smooth\n"
                   "  B. Foot pale ..... Aus bus\n"
                   "  B'. Foot dark\n"
                   "    C. Foot wide ..... Aus cus\n"
                   "    C'. Foot thin ..... Aus hus\n"
                   "A'. Shell ribbed\n"
                   "  D. Foot broad ..... Dus eus\n"
                   "  D'. Foot narrow\n"
                   "    C. Eyes black ..... Dus fus\n"
                   "    C'. Eyes red ..... Dus gus\n"),
            "A[A] Shell smooth -> B\nA[A'] Shell ribbed -> D\n"
            "B[B] Foot pale -> Aus bus\nB[B'] Foot dark -> C\n"
            "C[C] Foot wide -> Aus cus\nC[C'] Foot thin -> Aus hus\n"
            "D[D] Foot broad -> Dus eus\nD[D'] Foot narrow -> C\n"
            "C[C] Eyes black -> Dus fus\nC[C'] Eyes red -> Dus gus\n");
}

TEST(PrintedOutline, ARankOfLettersInBracketsMayHaveFullStops) {
  EXPECT_EQ(sketch("A. Shell smooth\n"
                   "   1. Foot pale ..... Aus bus\n"
                   "   2. Foot dark\n"
                   "      a. Eyes black ..... Aus cus\n"
                   "      b. Eyes red\n"
                   "         (a). Radula long ..... Aus dus\n"
                   "         (b). Radula short ..... Aus fus\n"
                   "B. Shell ribbed ..... Dus eus\n"),
            "1[A] Shell smooth -> 2\n1[B] Shell ribbed -> Dus eus\n"
            "2[1] Foot pale -> Aus bus\n2[2] Foot dark -> 3\n"
            "3[a] Eyes black -> Aus cus\n3[b] Eyes red -> 4\n"
            "4[a] Radula long -> Aus dus\n4[b] Radula short -> Aus fus\n");
}

TEST(PrintedOutline, GreekLettersAreARankOfTheirOwn) {
  EXPECT_EQ(
      sketch("A. Shell smooth.\n  α. Foot pale ..... Aus bus\n  β. Foot dark.\n"
             "    † Eyes large ..... Aus cus\n    †† Eyes small ..... Aus dus\n"
             "B. Shell ribbed.\n  α'. Foot broad ..... Dus eus\n  β'. Foot narrow ..... Dus fus\n"),
      "1[A] Shell smooth. -> 2\n1[B] Shell ribbed. -> 4\n"
      "2[α] Foot pale -> Aus bus\n2[β] Foot dark. -> 3\n"
      "3[†] Eyes large -> Aus cus\n3[††] Eyes small -> Aus dus\n"
      "4[α'] Foot broad -> Dus eus\n4[β'] Foot narrow -> Dus fus\n");
}

TEST(PrintedOutline, LettersAroundIAreNoNumerals) {
  std::string text;
  for (char const letter : std::string_view{"ABCDEFGHIJ"}) {
    text += std::string(1, letter) + ". Shell of kind " + letter + " ..... Aus b" + letter + "us\n";
  }
  text.replace(text.find("A. Shell of kind A ..... Aus bAus"), 33,
               "A. Shell smooth\n  a. Foot pale ..... Aus bus\n  b. Foot dark ..... Aus cus");
  auto const edition = read_key(text).edition;
  ASSERT_EQ(edition.couplets.size(), 2U);
  EXPECT_EQ(edition.couplets[0].leads.size(), 10U);
  EXPECT_EQ(edition.couplets[1].leads.size(), 2U);
}

// One old habit counts the rivals by letters and the ranks by indices or primes …
TEST(PrintedOutline, IndicesTellRanksWhereLettersCount) {
  for (std::string const mark : {"1", "'", "\xC2\xB9"}) {
    auto const text = "a. Shell smooth.\na" + mark + ". Foot pale ..... Aus bus\nb" + mark +
                      ". Foot dark ..... Aus cus\nb. Shell ribbed.\na" + mark +
                      ". Foot broad ..... Dus eus\nb" + mark + ". Foot narrow ..... Dus fus\n";
    EXPECT_EQ(sketch(text),
              "1[a] Shell smooth. -> 2\n1[b] Shell ribbed. -> 3\n2[a" + mark +
                  "] Foot pale -> Aus bus\n2[b" + mark + "] Foot dark -> Aus cus\n3[a" + mark +
                  "] Foot broad -> Dus eus\n3[b" + mark + "] Foot narrow -> Dus fus\n");
  }
}

// … and another the other way round.
TEST(PrintedOutline, IndicesCountWhereLettersTellRanks) {
  EXPECT_EQ(sketch("a1. Shell smooth.\n  b1. Foot pale ..... Aus bus\n"
                   "  b2. Foot dark ..... Aus cus\na2. Shell ribbed.\n"
                   "  b1. Foot broad ..... Dus eus\n  b2. Foot narrow ..... Dus fus\n"),
            "1[a1] Shell smooth. -> 2\n1[a2] Shell ribbed. -> 3\n"
            "2[b1] Foot pale -> Aus bus\n2[b2] Foot dark -> Aus cus\n"
            "3[b1] Foot broad -> Dus eus\n3[b2] Foot narrow -> Dus fus\n");
}

// --- signs -------------------------------------------------------------------------------------

class PrintedSigns : public testing::TestWithParam<std::pair<std::string, std::string>> {};

TEST_P(PrintedSigns, TellTheRanks) {
  auto const& [outer, inner] = GetParam();
  auto const two = outer + outer;
  auto const twice = inner + inner;
  EXPECT_EQ(sketch(outer + " Shell smooth.\n" + inner + " Foot pale ..... Aus bus\n" + twice +
                   " Foot dark ..... Aus cus\n" + two + " Shell ribbed.\n" + inner +
                   " Foot broad ..... Dus eus\n" + twice + " Foot narrow ..... Dus fus\n"),
            "1[" + outer + "] Shell smooth. -> 2\n1[" + two + "] Shell ribbed. -> 3\n2[" + inner +
                "] Foot pale -> Aus bus\n2[" + twice + "] Foot dark -> Aus cus\n3[" + inner +
                "] Foot broad -> Dus eus\n3[" + twice + "] Foot narrow -> Dus fus\n");
}

INSTANTIATE_TEST_SUITE_P(All, PrintedSigns,
                         testing::Values(std::pair{"*", "+"}, std::pair{"§", "*"},
                                         std::pair{"+", "="}, std::pair{"†", "‡"},
                                         std::pair{"#", "§"}));

// --- decimals ----------------------------------------------------------------------------------

TEST(PrintedOutline, DecimalsAreSectionsOfSections) {
  auto const text =
      "1 Shell smooth.\n1.1 Foot pale ..... Aus bus\n1.2 Foot dark.\n"
      "1.2.1 Eyes large ..... Aus cus\n1.2.2 Eyes small ..... Aus dus\n"
      "1.2.3 Eyes absent ..... Aus eus\n2 Shell ribbed.\n"
      "2.1 Foot broad ..... Dus fus\n2.2 Foot narrow ..... Dus gus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth. -> 2\n1[2] Shell ribbed. -> 4\n"
            "2[1.1] Foot pale -> Aus bus\n2[1.2] Foot dark. -> 3\n"
            "3[1.2.1] Eyes large -> Aus cus\n3[1.2.2] Eyes small -> Aus dus\n"
            "3[1.2.3] Eyes absent -> Aus eus\n"
            "4[2.1] Foot broad -> Dus fus\n4[2.2] Foot narrow -> Dus gus\n");
}

TEST(PrintedOutline, DecimalsAreLeadsWhereNumbersAreLedTo) {
  EXPECT_EQ(sketch("1.1 Shell smooth ..... 2\n1.2 Shell ribbed ..... 3\n"
                   "2.1 Foot pale ..... Aus bus\n2.2 Foot dark ..... Aus cus\n"
                   "3.1 Foot broad ..... Dus eus\n3.2 Foot narrow ..... Dus fus\n"),
            "1[1.1] Shell smooth -> 2\n1[1.2] Shell ribbed -> 3\n"
            "2[2.1] Foot pale -> Aus bus\n2[2.2] Foot dark -> Aus cus\n"
            "3[3.1] Foot broad -> Dus eus\n3[3.2] Foot narrow -> Dus fus\n");
}

// --- indentation -------------------------------------------------------------------------------

TEST(PrintedOutline, IndentationAloneTellsTheRivals) {
  auto const text =
      "KEY TO THE SPECIES\n\n"
      "Shell smooth\n"
      "    Foot pale ................ Aus bus\n"
      "    Foot dark\n"
      "        Eyes large ........... Aus cus\n"
      "        Eyes small ........... Aus dus\n"
      "Shell ribbed\n"
      "    Foot broad ............... Dus eus\n"
      "    Foot narrow .............. Dus fus\n";
  EXPECT_EQ(sketch(text),
            "1[] Shell smooth -> 2\n1[] Shell ribbed -> 4\n"
            "2[] Foot pale -> Aus bus\n2[] Foot dark -> 3\n"
            "3[] Eyes large -> Aus cus\n3[] Eyes small -> Aus dus\n"
            "4[] Foot broad -> Dus eus\n4[] Foot narrow -> Dus fus\n");
  EXPECT_EQ(note_of(text),
            "outline, rivals told by their indentation, "
            "destinations after dot leaders; the couplets' numbers are not printed but counted; a "
            "lead without destination goes on with the next lead");
  EXPECT_EQ(line_kinds(text), "heading, blank, lead, lead, lead, lead, lead, lead, lead, lead");
}

TEST(PrintedOutline, LinesThatHangAreNoDeeperLeads) {
  auto const text =
      "Shells smooth, with a row of spines along the outer whorls; umbilicus\n"
      "        Nearly always closed and smooth.\n"
      "    Foot pale, or pale only at its edge and dark along the middle, its\n"
      "            length that of the shell ................... Aus bus\n"
      "    Foot dark throughout ............................... Aus cus\n"
      "Shells ribbed.\n"
      "    Foot broad ......................................... Dus eus\n"
      "    Foot narrow ........................................ Dus fus\n";
  EXPECT_EQ(sketch(text),
            "1[] Shells smooth, with a row of spines along the outer whorls; umbilicus Nearly "
            "always closed and smooth. -> 2\n1[] Shells ribbed. -> 3\n"
            "2[] Foot pale, or pale only at its edge and dark along the middle, its length that of "
            "the shell -> Aus bus\n2[] Foot dark throughout -> Aus cus\n"
            "3[] Foot broad -> Dus eus\n3[] Foot narrow -> Dus fus\n");
  EXPECT_EQ(line_kinds(text), "lead, continuation, lead, continuation, lead, lead, lead, lead");
}

TEST(PrintedOutline, SeveralKeysByIndentationStandApart) {
  auto const edition = read_key(
                           "Key to adults\n\n"
                           "Shell smooth\n  Foot pale ..... Aus bus\n  Foot dark ..... Aus cus\n"
                           "Shell ribbed ..... Dus eus\n\n"
                           "Key to larvae\n\n"
                           "Tail long\n  Eyes large ..... Aus bus\n  Eyes small ..... Aus cus\n"
                           "Tail short ..... Dus eus\n")
                           .edition;
  ASSERT_EQ(edition.parts.size(), 2U);
  EXPECT_EQ(edition.parts[1].title, "Key to larvae");
  EXPECT_EQ(sketch(edition),
            "1[] Shell smooth -> 2\n1[] Shell ribbed -> Dus eus\n"
            "2[] Foot pale -> Aus bus\n2[] Foot dark -> Aus cus\n"
            "1[] Tail long -> 2\n1[] Tail short -> Dus eus\n"
            "2[] Eyes large -> Aus bus\n2[] Eyes small -> Aus cus\n");
}

// --- lines of a table --------------------------------------------------------------------------

TEST(PrintedOutline, CellsOnLinesOfTheirOwnAreLabelWordsAndDestination) {
  auto const text =
      "Key to the species\n1\nShell smooth, foot pale or dark\n2\n–\nShell ribbed\n3\n"
      "2\nFoot pale\nAus bus Roe, 1900\n–\nFoot dark\nin life\nAus cus\n"
      "3\nEyes large\nDus\n–\nEyes small\nDus eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth, foot pale or dark -> 2\n1[–] Shell ribbed -> 3\n"
            "2[2] Foot pale -> Aus bus\n2[–] Foot dark in life -> Aus cus\n"
            "3[3] Eyes large -> Dus\n3[–] Eyes small -> Dus eus\n");
  EXPECT_EQ(line_kinds(text),
            "heading, lead, continuation, destination, lead, continuation, destination, "
            "lead, continuation, destination, lead, continuation, continuation, destination, "
            "lead, continuation, destination, lead, continuation, destination");
}

TEST(PrintedOutline, CellsMayStandApartByBlankLines) {
  EXPECT_EQ(sketch("1\n\nShell smooth\n\n2\n\n–\n\nShell ribbed\n\nAus bus\n\n"
                   "2\n\nFoot pale\n\nAus cus\n\n–\n\nFoot dark\n\nAus dus\n"),
            "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Aus bus\n"
            "2[2] Foot pale -> Aus cus\n2[–] Foot dark -> Aus dus\n");
}

// --- rivals without a label --------------------------------------------------------------------

TEST(PrintedOutline, WordsBeneathTheFirstLeadsWordsAreItsRivals) {
  auto const text =
      "1. Shell with a dense cover of hairs; foot\n   not visible\n"
      "                                              2\n"
      "   Shell bare\n"
      "                                              3\n"
      "2. Foot pale\n"
      "                                         Aus bus\n"
      "   Foot dark\n"
      "                                         Aus cus\n"
      "3. Eyes large\n"
      "                                         Dus eus\n"
      "   Eyes small\n"
      "                                         Dus fus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell with a dense cover of hairs; foot not visible -> 2\n1[] Shell bare -> 3\n"
            "2[2] Foot pale -> Aus bus\n2[] Foot dark -> Aus cus\n"
            "3[3] Eyes large -> Dus eus\n3[] Eyes small -> Dus fus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, continuation, destination, lead, destination, lead, destination, lead, "
            "destination, lead, destination, lead, destination");
}

// --- no key ------------------------------------------------------------------------------------

TEST(PrintedOutline, SynopsesWithoutPairsAreRefusedWherePairingFails) {
  auto const findings = findings_of(
      "CONSPECTUS OF THE GENUS\n\nI. Shell smooth\n  A. Foot pale ..... Aus bus\n"
      "  Forms of the coast, with broad shells\n  C. Eyes\nII. Arms long\n  Found in fens\n"
      "III. Nothing else ..... Dus eus\n");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0],
            "key.txt:3:1: error: no couplet was found: too few leads have a rival and lead "
            "somewhere [no-couplets] (write couplets as in \"1. Leaves opposite ..... 2\" and, on "
            "the next line, \"– Leaves alternate ..... Aus bus\")");
}

// --- one paragraph -----------------------------------------------------------------------------

TEST(PrintedOutline, ParagraphsOfNestedCoupletsArePartedAtTheirLabels) {
  EXPECT_EQ(sketch("1. Shell smooth, with a low spire. 2. Foot pale ..... Aus bus. 2. Foot dark. "
                   "3. Eyes large ..... Aus cus. 3. Eyes small ..... Aus dus. 1. Shell ribbed. "
                   "4. Foot broad ..... Dus eus. 4. Foot narrow ..... Dus fus.\n"),
            "1[1] Shell smooth, with a low spire. -> 2\n1[1] Shell ribbed. -> 4\n"
            "2[2] Foot pale -> Aus bus\n2[2] Foot dark. -> 3\n"
            "3[3] Eyes large -> Aus cus\n3[3] Eyes small -> Aus dus\n"
            "4[4] Foot broad -> Dus eus\n4[4] Foot narrow -> Dus fus\n");
}

TEST(PrintedOutline, ParagraphsOfAnOutlineArePartedAtTheirLabels) {
  EXPECT_EQ(sketch("A. Shell smooth, with a low spire. a. Foot pale ..... Aus bus. b. Foot dark "
                   "..... Aus cus. B. Shell ribbed. a. Foot broad ..... Dus eus. b. Foot narrow "
                   "..... Dus fus.\n"),
            "1[A] Shell smooth, with a low spire. -> 2\n1[B] Shell ribbed. -> 3\n"
            "2[a] Foot pale -> Aus bus\n2[b] Foot dark -> Aus cus\n"
            "3[a] Foot broad -> Dus eus\n3[b] Foot narrow -> Dus fus\n");
}

TEST(PrintedOutline, ParagraphsMayLeadToNumbersInBrackets) {
  EXPECT_EQ(sketch("1. Shell smooth, with a low spire and a wide mouth (2). — Shell ribbed (3). "
                   "2. Foot pale ; 5 mm. Aus bus Roe. — Foot dark. Aus cus Roe. 3. Eyes large. "
                   "Dus eus Roe. — Eyes small. Dus fus Roe.\n"),
            "1[1] Shell smooth, with a low spire and a wide mouth -> 2\n1[—] Shell ribbed -> 3\n"
            "2[2] Foot pale ; 5 mm. -> Aus bus\n2[—] Foot dark. -> Aus cus\n"
            "3[3] Eyes large. -> Dus eus\n3[—] Eyes small. -> Dus fus\n");
}

// --- indented numbers --------------------------------------------------------------------------

TEST(PrintedOutline, DashesAnswerTheCoupletOfTheirIndentation) {
  EXPECT_EQ(
      sketch("1. Shell smooth\n    2. Foot pale ..... Aus bus\n    – Foot dark ..... Aus cus\n"
             "– Shell ribbed\n    3. Foot broad\n        4. Eyes large ..... Dus eus\n"
             "        – Eyes small ..... Dus fus\n    – Foot narrow ..... Dus gus\n"),
      "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> 3\n"
      "2[2] Foot pale -> Aus bus\n2[–] Foot dark -> Aus cus\n"
      "3[3] Foot broad -> 4\n3[–] Foot narrow -> Dus gus\n"
      "4[4] Eyes large -> Dus eus\n4[–] Eyes small -> Dus fus\n");
}

TEST(PrintedOutline, DashesAnswerTheInnermostOpenCoupletWithoutIndentation) {
  EXPECT_EQ(sketch("1. Shell smooth\n2. Foot pale ..... Aus bus\n– Foot dark ..... Aus cus\n"
                   "– Shell ribbed\n3. Foot broad ..... Dus eus\n– Foot narrow ..... Dus fus\n"),
            "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> 3\n"
            "2[2] Foot pale -> Aus bus\n2[–] Foot dark -> Aus cus\n"
            "3[3] Foot broad -> Dus eus\n3[–] Foot narrow -> Dus fus\n");
}

TEST(PrintedOutline, NumbersWinOverIndentationWithoutMeaning) {
  EXPECT_EQ(sketch("1. Shell smooth ..... 2\n– Shell ribbed ..... 3\n"
                   "      2. Foot pale ..... Aus bus\n      – Foot dark ..... Aus cus\n"
                   "3. Foot broad ..... 4\n– Foot narrow ..... Dus eus\n"
                   "      4. Eyes large ..... Dus fus\n      – Eyes small ..... Dus gus\n"),
            "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> 3\n"
            "2[2] Foot pale -> Aus bus\n2[–] Foot dark -> Aus cus\n"
            "3[3] Foot broad -> 4\n3[–] Foot narrow -> Dus eus\n"
            "4[4] Eyes large -> Dus fus\n4[–] Eyes small -> Dus gus\n");
}

TEST(PrintedOutline, CombsOfManyStepsAreReadToTheirEnd) {
  std::string text;
  std::string wanted;
  int const depth = 40;
  for (int i = 1; i <= depth; ++i) {
    auto const n = std::to_string(i);
    text +=
        std::string(static_cast<std::size_t>(i - 1) * 2, ' ') + n + ". Shell with rib " + n + "\n";
  }
  text.insert(text.size() - 1, " ..... Aus zus");
  for (int i = depth; i >= 1; --i) {
    text += std::string(static_cast<std::size_t>(i - 1) * 2, ' ') + std::to_string(i) +
            ". Shell without ..... Aus b" + std::string(static_cast<std::size_t>(i), 'u') + "s\n";
  }
  auto const edition = read_key(text).edition;
  ASSERT_EQ(edition.couplets.size(), 40U);
  for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
    ASSERT_EQ(edition.couplets[c].leads.size(), 2U) << c;
    EXPECT_EQ(edition.couplets[c].label, std::to_string(c + 1));
  }
}

TEST(PrintedOutline, ASpeciesAboveACoupletOfItsVarietiesLeadsThere) {
  EXPECT_EQ(
      sketch("1. Leaf cut\n   2. Petals notched ..... A. buta\n   2' Petals entire ..... A. cuta\n"
             "      3. Sepals purple ..... var. montana\n      3' Sepals green ..... var. cuta\n"
             "1' Leaf whole\n   4. Annual ..... Ausella duta\n   4' Perennial ..... A. euta\n"),
      "1[1] Leaf cut -> 2\n1[1'] Leaf whole -> 4\n2[2] Petals notched -> Ausella buta\n"
      "2[2'] Petals entire -> 3 (A. cuta)\n3[3] Sepals purple -> Ausella cuta var. montana\n"
      "3[3'] Sepals green -> Ausella cuta var. cuta\n4[4] Annual -> Ausella duta\n"
      "4[4'] Perennial -> Ausella euta\n");
}

// However many accounts follow, they say nothing against the reading of the key.
TEST(PrintedOutline, AccountsBehindAnOutlineChangeNothing) {
  std::string const key =
      "a. Elytra with 9 striae.\n  a'. Head with two pits ..... insularis, Roe, p. 100.\n"
      "  b'. Head convex ..... gracilis, Dorn, p. 103.\nb. Elytra with 8 striae.\n"
      "  a'. Claws with a tooth ..... fasciata, Roe, p. 106.\n"
      "  b'. Claws simple ..... grandis, Dorn, p. 109.\n";
  std::string accounts;
  for (int i = 1; i <= 12; ++i) {
    accounts += "\n" + std::to_string(i) + ". Bruvia insularis Roe, 1911\n" +
                "Length 3-5 mm. Head black, legs yellow. Common in fens.\n";
  }
  auto const plain = sketch("Genus BRUVIA.\n\n" + key);
  EXPECT_NE(plain.find("Bruvia grandis"), std::string::npos);
  EXPECT_EQ(sketch("Genus BRUVIA.\n\n" + key + accounts), plain);
}

// As the floras of the 19th century set them, with spaced leaders.
TEST(PrintedOutline, LeadsMayEndInAColonAndADash) {
  EXPECT_EQ(sketch("Leaves alternate :—\n   Racemes terminal :—\n"
                   "      Bracts coloured   .   .   .    1. A. cuta.\n"
                   "      Bracts green   .   .   .   .    2. A. duta.\n"
                   "   Racemes axillary   .   .   .    3. A. euta.\n"
                   "Leaves opposite : —\n   Stem twining   .   .   .   .    4. A. futa.\n"
                   "   Stem erect   .   .   .   .    5. Ausella guta.\n"),
            "1[] Leaves alternate : -> 2\n1[] Leaves opposite : -> 4\n"
            "2[] Racemes terminal : -> 3\n2[] Racemes axillary -> Ausella euta\n"
            "3[] Bracts coloured -> Ausella cuta\n3[] Bracts green -> Ausella duta\n"
            "4[] Stem twining -> Ausella futa\n4[] Stem erect -> Ausella guta\n");
}

TEST(PrintedOutline, OrderTellsRivalsWhereTheIndentationWasLost) {
  auto const text =
      "9. AUSANDRELLA, Hodm. Gen. Pl. ii. 418.\n"
      "\n"
      "Flowers in terminal panicles :—\n"
      "Calyx-lobes longer than the tube :—\n"
      "Corolla white . . . . . 1. A. alba.\n"
      "Corolla blue . . . . . 2. A. coerulea.\n"
      "Calyx-lobes obsolete :—\n"
      "Corolla-tube 4 in. long . . . . . 3. A. longa.\n"
      "Corolla-tube 1 in. long, bearded at the\n"
      "throat . . . . . 4. A. barbata.\n"
      "Corolla-tube ½ in. long . . . . . 5. A. curta.\n"
      "Flowers axillary :—\n"
      "Branches armed . . . . . 6. A. armata.\n"
      "Branches unarmed . . . . . 7. A. inermis.\n";
  EXPECT_EQ(sketch(text),
            "1[] Flowers in terminal panicles : -> 2\n"
            "1[] Flowers axillary : -> 5\n"
            "2[] Calyx-lobes longer than the tube : -> 3\n"
            "2[] Calyx-lobes obsolete : -> 4\n"
            "3[] Corolla white -> Ausandrella alba\n"
            "3[] Corolla blue -> Ausandrella coerulea\n"
            "4[] Corolla-tube 4 in. long -> Ausandrella longa\n"
            "4[] Corolla-tube 1 in. long, bearded at the throat -> Ausandrella barbata\n"
            "4[] Corolla-tube ½ in. long -> Ausandrella curta\n"
            "5[] Branches armed -> Ausandrella armata\n"
            "5[] Branches unarmed -> Ausandrella inermis\n");
  EXPECT_EQ(note_of(text),
            "outline without labels or indentation, rivals told by their order and first words, "
            "destinations after dot leaders; the couplets' numbers are not printed but counted; a "
            "lead without destination goes on with the next lead");
  EXPECT_EQ(test::findings_of(text).front(),
            "key.txt:3:1: warning: no labels and no indentation tell which leads are rivals; "
            "behind a lead with its destination the innermost lead without rival was taken to be "
            "answered, or one that begins with the same word [indentation-lost] (compare each "
            "couplet with the print, or indent the leads as it does)");
}

TEST(PrintedOutline, AListOfNamesIsNoKeyWhoseIndentationWasLost) {
  // Hardly two lines begin with the same word.
  auto const findings = test::findings_of(
      "Meadows of the marsh:\n"
      "Alba common . . . . . 1. A. alba.\n"
      "Rare in fens . . . . . 2. A. coerulea.\n"
      "Hills:\n"
      "Everywhere . . . . . 3. A. longa.\n"
      "Seldom seen . . . . . 4. A. barbata.\n"
      "Woods:\n"
      "On bark . . . . . 5. A. curta.\n"
      "Once only . . . . . 6. A. armata.\n");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_NE(findings[0].find("[no-couplets]"), std::string::npos) << findings[0];
}

TEST(PrintedOutline, AGroupNamedAtTheEndOfALeadGoesOnBeneath) {
  EXPECT_EQ(sketch("A. Hatten klibbig. — Viscidae.\n"
                   "* Skifvor nedlöpande.\n"
                   "§ Foten gul ....... 1. Ausella busa.\n"
                   "§§ Foten hvit ....... 2. A. cusa.\n"
                   "** Skifvor vidvuxna.\n"
                   "§ Hatten grön ....... 3. A. fusa.\n"
                   "§§ Hatten röd ....... 4. A. gusa.\n"
                   "B. Hatten torr. — Siccae.\n"
                   "* Hatten slät ....... 5. A. dusa.\n"
                   "** Hatten fjällig ....... 6. A. eusa.\n"),
            "1[A] Hatten klibbig. -> 2 (Viscidae.)\n"
            "1[B] Hatten torr. -> 5 (Siccae.)\n"
            "2[*] Skifvor nedlöpande. -> 3\n"
            "2[**] Skifvor vidvuxna. -> 4\n"
            "3[§] Foten gul -> Ausella busa\n"
            "3[§§] Foten hvit -> Ausella cusa\n"
            "4[§] Hatten grön -> Ausella fusa\n"
            "4[§§] Hatten röd -> Ausella gusa\n"
            "5[*] Hatten slät -> Ausella dusa\n"
            "5[**] Hatten fjällig -> Ausella eusa\n");
}

TEST(PrintedOutline, BulletsBeforeEveryLead) {
  EXPECT_EQ(sketch("• Flowers white\n"
                   "  • Leaves ovate ..... Ausella busa\n"
                   "  • Leaves linear ..... Ausella cusa\n"
                   "• Flowers yellow ..... Ausella fusa\n"),
            "1[•] Flowers white -> 2\n"
            "1[•] Flowers yellow -> Ausella fusa\n"
            "2[•] Leaves ovate -> Ausella busa\n"
            "2[•] Leaves linear -> Ausella cusa\n");
}

TEST(PrintedOutline, EachLevelMayHaveAnUncommonSign) {
  EXPECT_EQ(sketch("✽ Stem woody.\n"
                   "   † Leaves entire ..... O. fruticosa\n"
                   "   † Leaves lobed ..... O. incana\n"
                   "✽ Stem herbaceous.\n"
                   "   ✠ Plants annual ..... O. arvensis\n"
                   "   ✠ Plants perennial.\n"
                   "      ÷ Rhizome creeping ..... O. palustris\n"
                   "      ÷ Rhizome short.\n"
                   "         — Leaves in a rosette ..... O. alpina\n"
                   "         — Leaves withered ..... O. montana\n"),
            "1[✽] Stem woody. -> 2\n"
            "1[✽] Stem herbaceous. -> 3\n"
            "2[†] Leaves entire -> O. fruticosa\n"
            "2[†] Leaves lobed -> O. incana\n"
            "3[✠] Plants annual -> O. arvensis\n"
            "3[✠] Plants perennial. -> 4\n"
            "4[÷] Rhizome creeping -> O. palustris\n"
            "4[÷] Rhizome short. -> 5\n"
            "5[—] Leaves in a rosette -> O. alpina\n"
            "5[—] Leaves withered -> O. montana\n");
}

TEST(PrintedOutline, ALeadInAColonStandsOverTheOnlyOnesSetInSoFar) {
  EXPECT_EQ(
      sketch(
          "Leaves sessile or with a petiole up to 2 mm. long:\n"
          "    Leaf-base cuneate; calyx-segments pubescent  .      .     1. M. sessilis\n"
          "    Leaf-base cordate, ± amplexicaul; calyx-segments with white\n"
          "        hairs  .      .      .      .      .      .      .    2. M. amplexans\n"
          "Leaves with a petiole 5–40 mm. long:\n"
          "    Inflorescence pedunculate, the peduncle 4–11 cm. long; bracts\n"
          "        distant     .      .      .      .      .      .      .    3. M. longipes\n"
          "    Inflorescence subsessile or peduncle not more than 1 cm. long; bracts dense:\n"
          "            Bracts 3-nerved; capsule 7–8 mm. long, puberulous all over  4. M. rupicola\n"
          "            Bracts 1-nerved at the base only; capsule 10–12 mm. long\n"
          "                .      .      .      .      .      .      .      .    5. M. dewii\n"),
      "1[] Leaves sessile or with a petiole up to 2 mm. long: -> 2\n"
      "1[] Leaves with a petiole 5–40 mm. long: -> 3\n"
      "2[] Leaf-base cuneate; calyx-segments pubescent -> M. sessilis\n"
      "2[] Leaf-base cordate, ± amplexicaul; calyx-segments with white hairs -> M. amplexans\n"
      "3[] Inflorescence pedunculate, the peduncle 4–11 cm. long; bracts distant -> M. longipes\n"
      "3[] Inflorescence subsessile or peduncle not more than 1 cm. long; bracts dense: -> 4\n"
      "4[] Bracts 3-nerved; capsule 7–8 mm. long, puberulous all over -> M. rupicola\n"
      "4[] Bracts 1-nerved at the base only; capsule 10–12 mm. long -> M. dewii\n");
}

TEST(PrintedOutline, ACommaForTheStopAboveTwoThatBeginAlike) {
  EXPECT_EQ(sketch("Annuals; roots fibrous.                              1. O. pumila.\n"
                   "Perennials; roots thickened.\n"
                   "    Inflorescence a simple, elongated raceme,\n"
                   "        Raceme terminal; bracts minute.               2. O. secunda.\n"
                   "        Raceme lateral; bracts leaf-like.             3. O. foliosa.\n"
                   "    Inflorescence a cyme.                             4. O. cymosa.\n\n"
                   "1. Ostrelia pumila Roe.  Dwarf Shellwort.                Fig. 2714.\n\n"
                   "   Annual, branched from the base; corolla pale blue.\n"
                   "   In sandy soil, common near the coast.  April-June.\n"),
            "1[] Annuals; roots fibrous. -> Ostrelia pumila\n"
            "1[] Perennials; roots thickened. -> 2\n"
            "2[] Inflorescence a simple, elongated raceme, -> 3\n"
            "2[] Inflorescence a cyme. -> Ostrelia cymosa\n"
            "3[] Raceme terminal; bracts minute. -> Ostrelia secunda\n"
            "3[] Raceme lateral; bracts leaf-like. -> Ostrelia foliosa\n");
}

TEST(PrintedOutline, LeadsWithoutLabelsMayHaveBlankLinesBetweenThem) {
  EXPECT_EQ(sketch("The spiders of this group live in nests.\n\n"
                   "Shield entire, without lateral incisions\n\n"
                   "    Setae twice as long as the distance between\n"
                   "          their bases\n\n"
                   "        Setae plumose, the longest curved\n"
                   "              behind (fig.\n"
                   "              4) .......... L. longiseta\n\n"
                   "        Setae simple .......... L. punctata\n\n"
                   "    Setae shorter .......... L. magna\n\n"
                   "Shield divided .......... L. parva\n"),
            "1[] Shield entire, without lateral incisions -> 2\n"
            "1[] Shield divided -> L. parva\n"
            "2[] Setae twice as long as the distance between their bases -> 3\n"
            "2[] Setae shorter -> L. magna\n"
            "3[] Setae plumose, the longest curved behind (fig. 4) -> L. longiseta\n"
            "3[] Setae simple -> L. punctata\n");
}

TEST(PrintedOutline, LeadsWithoutLabelsMayEndInEpithetsOnTheirOwnLines) {
  EXPECT_EQ(sketch("Key to the species of Leldicarus\n\n"
                   "Shield entire, without lateral incisions\n"
                   "    Setae twice as long as their distance\n"
                   "        Setae plumose, the longest curved\n"
                   "                              LONGISETUS\n"
                   "        Setae simple, only the last serrate\n"
                   "                              PUNCTULATUS\n"
                   "    Setae shorter, at most as long\n"
                   "                              MAGNUS\n"
                   "Shield divided, with a pair of incisions\n"
                   "                              PARVUS\n"),
            "1[] Shield entire, without lateral incisions -> 2\n"
            "1[] Shield divided, with a pair of incisions -> Leldicarus parvus\n"
            "2[] Setae twice as long as their distance -> 3\n"
            "2[] Setae shorter, at most as long -> Leldicarus magnus\n"
            "3[] Setae plumose, the longest curved -> Leldicarus longisetus\n"
            "3[] Setae simple, only the last serrate -> Leldicarus punctulatus\n");
}

TEST(PrintedOutlineByOrder, AccountsBehindNumberedNamesBelongToNoLead) {
  EXPECT_EQ(
      sketch(
          "14. AUSELLA Roe\n\n"
          "Herbs with branched hairs. Sepals ascending. Petals white. [Greek, honey and broom.]\n\n"
          "Stem leafy.\n"
          "Stem-leaves entire, or the lower sparingly denticulate.\n"
          "Leaves green. 1. A. busa.\n"
          "Leaves red. 2. A. cusa.\n"
          "Stem-leaves toothed.\n"
          "Petals red. 3. A. dusa.\n"
          "Petals white. 4. A. fusa.\n"
          "Petals blue, large. 5. A. tusa.\n"
          "Stem naked.\n"
          "Fruit long. 6. A. gusa.\n"
          "Fruit short. 7. A. husa.\n\n"
          "1. A. busa (Doe) Roe. Stem slender, simple or few-\nbranched; petals white,\n"
          "2 mm. long. Thla busa Doe. Sandy soil: Orran—Talbec\n—Dune Co.—N. Marl. Ap–Je.\n\n"
          "2. A. cusa Roe. Stem diffuse; racemes lax. Dry\nhillsides: Talbec—Orran. My–Jl.\n"),
      "1[] Stem leafy. -> 2\n"
      "1[] Stem naked. -> 5\n"
      "2[] Stem-leaves entire, or the lower sparingly denticulate. -> 3\n"
      "2[] Stem-leaves toothed. -> 4\n"
      "3[] Leaves green. -> Ausella busa\n"
      "3[] Leaves red. -> Ausella cusa\n"
      "4[] Petals red. -> Ausella dusa\n"
      "4[] Petals white. -> Ausella fusa\n"
      "4[] Petals blue, large. -> Ausella tusa\n"
      "5[] Fruit long. -> Ausella gusa\n"
      "5[] Fruit short. -> Ausella husa\n");
}

TEST(PrintedOutline, NumbersOfSpeciesTellEndsWithoutLeadersWhereTheyCount) {
  EXPECT_EQ(
      sketch("Synopsis of the Species of Ausella.\n\n"
             "Stem erect.\n"
             "    Prickles small; fruit red . . . 1. A. suberecta.\n"
             "    Prickles stout; fruit black . . . . 2. A. plicata.\n"
             "Stem prostrate.\n"
             "    Leaves white beneath; petals pink . . . 3. A. discolor.\n"
             "    Leaves green beneath.\n"
             "        Panicle long, its prickles slender and straight 4. A. stachya.\n"
             "        Panicle short, nearly glabrous, its prickles hooked\n"
             "          and broad 5. A. hamata.\n"
             "Stem climbing; fruit of few drupels, blue 6. A. caesia.\n"),
      "1[] Stem erect. -> 2\n"
      "1[] Stem prostrate. -> 3\n"
      "1[] Stem climbing; fruit of few drupels, blue -> Ausella caesia\n"
      "2[] Prickles small; fruit red -> Ausella suberecta\n"
      "2[] Prickles stout; fruit black -> Ausella plicata\n"
      "3[] Leaves white beneath; petals pink -> Ausella discolor\n"
      "3[] Leaves green beneath. -> 4\n"
      "4[] Panicle long, its prickles slender and straight -> Ausella stachya\n"
      "4[] Panicle short, nearly glabrous, its prickles hooked and broad -> Ausella hamata\n");
}

TEST(PrintedOutline, NumberedGeneraOnLinesOfTheirOwnAreNoLeads) {
  EXPECT_EQ(
      sketch("Einteilung der Familie.\n"
             "\n"
             "A. Bl. mit Kelch und Blkr.\n"
             "\n"
             "a. Stb. so viele als Blb.\n"
             "\n"
             "I. Discus fehlend; Stf. in der Knospenlage gerade. Afrika\n"
             "und Madagaskar 1. Lophandra.\n"
             "\n"
             "II. Discus vorhanden.\n"
             "\n"
             "1. Discus kammartig zerschlitzt. Sträucher mit gefiederten B.\n"
             "\n"
             "2. Ctenocarya.\n"
             "\n"
             "2. Discus schuppenförmig. Sträucher mit ganzrandigen B.\n"
             "\n"
             "3. Hemisolena.\n"
             "\n"
             "b. Stb. doppelt so viele als Blb.\n"
             "\n"
             "I. Kelchb. bleibend, an der Fr. vergrößert 4. Epilochia.\n"
             "\n"
             "II. Kelchb. abfallend. B. abwechselnd.\n"
             "\n"
             "5. Anisothyrsa.\n"
             "\n"
             "B. Bl. ohne Krone 6. Polylochia.\n"),
      "1[A] Bl. mit Kelch und Blkr. -> 2\n"
      "1[B] Bl. ohne Krone -> Polylochia\n"
      "2[a] Stb. so viele als Blb. -> 3\n"
      "2[b] Stb. doppelt so viele als Blb. -> 5\n"
      "3[I] Discus fehlend; Stf. in der Knospenlage gerade. Afrika und Madagaskar -> Lophandra\n"
      "3[II] Discus vorhanden. -> 4\n"
      "4[1] Discus kammartig zerschlitzt. Sträucher mit gefiederten B. -> Ctenocarya\n"
      "4[2] Discus schuppenförmig. Sträucher mit ganzrandigen B. -> Hemisolena\n"
      "5[I] Kelchb. bleibend, an der Fr. vergrößert -> Epilochia\n"
      "5[II] Kelchb. abfallend. B. abwechselnd. -> Anisothyrsa\n");
}

TEST(PrintedOutline, AnAccountWithItsNameInCapitalsIsNoLead) {
  EXPECT_EQ(sketch("Conspectus specierum generis Palmeringia\n"
                   "\n"
                   "A. Frutices.\n"
                   "a. Flores albi ... 1. P. grandiflora Roe.\n"
                   "b. Flores rubri ... 2. P. rubra Roe.\n"
                   "B. Herbæ.\n"
                   "α. Folia linearia ... 3. P. palustris Roe.\n"
                   "β. Folia oblonga; planta glanduloso-hirta. 4. P. serrulata Roe.\n"
                   "\n"
                   "1. PALMERINGIA GRANDIFLORA Roe. foliis obovatis\n"
                   "coriaceis, racemis paucifloris.\n"
                   "Habitat in silvis.\n"),
            "1[A] Frutices. -> 2\n"
            "1[B] Herbæ. -> 3\n"
            "2[a] Flores albi -> Palmeringia grandiflora\n"
            "2[b] Flores rubri -> Palmeringia rubra\n"
            "3[α] Folia linearia -> Palmeringia palustris\n"
            "3[β] Folia oblonga; planta glanduloso-hirta. -> Palmeringia serrulata\n");
}

TEST(PrintedOutline, AccountsOfGeneraBehindTheKeyAreNoLeads) {
  EXPECT_EQ(sketch("ARDELIACEAE\n"
                   "\n"
                   "von\n"
                   "\n"
                   "H. Roe.\n"
                   "\n"
                   "Einteilung der Familie.\n"
                   "\n"
                   "A. Frkn. oberständig.\n"
                   "a. Blh. doppelt.\n"
                   "I. Fr. eine Kapsel . . . . . 1. Ardelia.\n"
                   "II. Fr. eine Beere . . . . . 2. Besmerina.\n"
                   "b. Blh. einfach . . . . . 3. Coptandra.\n"
                   "B. Frkn. unterständig.\n"
                   "a. B. gegenständig . . . . . 4. Hexandrium.\n"
                   "b. B. abwechselnd . . . . . 5. Ardeliella.\n"
                   "\n"
                   "1. Ardelia Wolt. (Bastia Kon. z. T.) Kelch 5teilig, bleibend, Blb.\n"
                   "5, am Rande gewimpert.\n"),
            "1[A] Frkn. oberständig. -> 2\n"
            "1[B] Frkn. unterständig. -> 4\n"
            "2[a] Blh. doppelt. -> 3\n"
            "2[b] Blh. einfach -> Coptandra\n"
            "3[I] Fr. eine Kapsel -> Ardelia\n"
            "3[II] Fr. eine Beere -> Besmerina\n"
            "4[a] B. gegenständig -> Hexandrium\n"
            "4[b] B. abwechselnd -> Ardeliella\n");
}

TEST(PrintedOutline, NumbersWithoutStopsStandBeforeNamesFarIn) {
  EXPECT_EQ(
      sketch("=3. BRENTHOLIA.= The Brenthols.\n"
             "\n"
             "  Leaflets 3-7, rarely 9; bud scales 4-6, valvate.\n"
             "    Terminal buds sulphur-yellow, scurfy; husk winged to the base;\n"
             "        leaflets usually 7, long-pointed            1 B. sulphurea.\n"
             "    Terminal buds brown or reddish, not scurfy.\n"
             "      Leaflets serrate                              2 B. ovalis.\n"
             "      Leaflets deeply cut into narrow lobes\n"
             "                                                    2a B. ovalis variety laciniata.\n"
             "  Leaflets 9-17; bud scales 8-12, imbricated.\n"
             "    Pith of twigs chambered                         3 B. atra.\n"
             "    Pith of twigs solid                             4 B. Tannerii.\n"),
      "1[] Leaflets 3-7, rarely 9; bud scales 4-6, valvate. -> 2\n"
      "1[] Leaflets 9-17; bud scales 8-12, imbricated. -> 4\n"
      "2[] Terminal buds sulphur-yellow, scurfy; husk winged to the base; leaflets usually 7, "
      "long-pointed -> B. sulphurea\n"
      "2[] Terminal buds brown or reddish, not scurfy. -> 3\n"
      "3[] Leaflets serrate -> B. ovalis\n"
      "3[] Leaflets deeply cut into narrow lobes -> B. ovalis variety laciniata\n"
      "4[] Pith of twigs chambered -> B. atra\n"
      "4[] Pith of twigs solid -> B. tannerii\n");
}

TEST(PrintedOutline, NumbersOfSpecimensAreNoLabels) {
  EXPECT_EQ(sketch("Conspectus specierum generis Ausella.\n"
                   "\n"
                   "A. Folia cordata.\n"
                   "a. Spatha alba .......... 1. A. longipes.\n"
                   "b. Spatha viridis ....... 2. A. brevipes.\n"
                   "B. Folia hastata ........ 3. A. hastata.\n"
                   "\n"
                   "1. A. longipes Brandw. in Jahrb. II. (1878) 144. Pedunculus\n"
                   "petiolo aequilongus.\n"
                   "Oberes Tal, an schattigen Bächen (HARBECK\n"
                   "n. 341. — Blühend im Mai).\n"),
            "1[A] Folia cordata. -> 2\n"
            "1[B] Folia hastata -> Ausella hastata\n"
            "2[a] Spatha alba -> Ausella longipes\n"
            "2[b] Spatha viridis -> Ausella brevipes\n");
}

}  // namespace
}  // namespace keydrift
