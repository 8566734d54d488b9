// Couplets in braces at the left margin, as print and scans have them.

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

char const* const kFourBraced =
    "1[1] Wings clear -> 2\n1[] Wings dark -> 3\n"
    "2[2] Legs pale -> Aus bus\n2[] Legs dark, with a ring before the tip -> Aus cus\n"
    "3[3] Head red -> Aus dus\n3[] Head black -> Aus eus\n3[] Head green -> Aus fus\n";

TEST(PrintedBraces, NumbersStandBesideTheMiddleOfTheBrace) {
  EXPECT_EQ(sketch("    f Wings clear — 2.\n"
                   "  1 \\ Wings dark — 3.\n"
                   "\n"
                   "    f Legs pale . . . . . Aus bus\n"
                   "  2 I Legs dark, with a ring\n"
                   "    (    before the tip . . . . . Aus cus\n"
                   "\n"
                   "    f Head red . . . . . Aus dus\n"
                   "  3 < Head black . . . . . Aus eus\n"
                   "    l Head green . . . . . Aus fus\n"),
            kFourBraced);
}

TEST(PrintedBraces, NumbersStandOnLinesOfTheirOwn) {
  EXPECT_EQ(sketch("   ⎧ Wings clear ..... 2\n"
                   "1. ⎨\n"
                   "   ⎩ Wings dark ..... 3\n"
                   "   ⎧ Legs pale ..... Aus bus\n"
                   "2. ⎨\n"
                   "   ⎪ Legs dark, with a ring before\n"
                   "   ⎩ the tip ..... Aus cus\n"
                   "   ⎧ Head red ..... Aus dus\n"
                   "3. ⎨ Head black ..... Aus eus\n"
                   "   ⎩ Head green ..... Aus fus\n"),
            kFourBraced);
}

TEST(PrintedBraces, NumbersMayStandBeforeTheFirstLine) {
  EXPECT_EQ(sketch("1 { Wings clear ..... 2\n"
                   "  { Wings dark ..... 3\n"
                   "2 { Legs pale ..... Aus bus\n"
                   "  { Legs dark, with a ring before\n"
                   "  {   the tip ..... Aus cus\n"
                   "3 { Head red ..... Aus dus\n"
                   "  { Head black ..... Aus eus\n"
                   "  { Head green ..... Aus fus\n"),
            kFourBraced);
}

TEST(PrintedBraces, AScanMayHaveLostThem) {
  EXPECT_EQ(sketch("      Wings clear ..... 2\n"
                   "  1\n"
                   "      Wings dark ..... 3\n"
                   "\n"
                   "      Legs pale ..... Aus bus\n"
                   "  2   Legs dark, with a ring before\n"
                   "      the tip ..... Aus cus\n"
                   "\n"
                   "      Head red ..... Aus dus\n"
                   "  3   Head black ..... Aus eus\n"
                   "      Head green ..... Aus fus\n"),
            kFourBraced);
}

TEST(PrintedBraces, LeadsMayGoOnWithTheNextOne) {
  EXPECT_EQ(sketch("Die Arten der Gattung Ausella.\n"
                   "\n"
                   "   f Kopf rot ..... A. rubra\n"
                   " 1 {\n"
                   "   l Kopf schwarz.\n"
                   "\n"
                   "   f Beine gelb ..... A. flava\n"
                   " 2 {\n"
                   "   l Beine braun.\n"
                   "\n"
                   "   f Lippe klar ..... A. clara\n"
                   " 3 {\n"
                   "   l Lippe trüb ..... A. nigra\n"),
            "1[1] Kopf rot -> Ausella rubra\n1[] Kopf schwarz. -> 2\n"
            "2[2] Beine gelb -> Ausella flava\n2[] Beine braun. -> 3\n"
            "3[3] Lippe klar -> Ausella clara\n3[] Lippe trüb -> Ausella nigra\n");
}

TEST(PrintedBraces, LeadsMayBearLettersInThem) {
  EXPECT_EQ(sketch("   ( a. Wings clear ..... 2\n"
                   "1 <\n"
                   "   ( b. Wings dark ..... Aus dus\n"
                   "\n"
                   "   ( a. Legs pale ..... Aus bus\n"
                   "2 < b. Legs dark, with a ring\n"
                   "   |   before the tip ..... Aus cus\n"
                   "   ( c. Legs red ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[b] Wings dark -> Aus dus\n"
            "2[2] Legs pale -> Aus bus\n2[b] Legs dark, with a ring before the tip -> Aus cus\n"
            "2[c] Legs red -> Aus eus\n");
}

TEST(PrintedBraces, LeadersMayBeFewAndNamesGoOnFarIn) {
  EXPECT_EQ(sketch("1 f Wings clear. . 2.\n"
                   "  \\ Wings dark. . 3.\n"
                   "\n"
                   "  f Legs pale . . . . . 1. A. bus Roe.\n"
                   "2 \\ Legs dark. 4.\n"
                   "\n"
                   "  f Head red . . . . . . 2. Aus dus\n"
                   "  |                        Dorn.\n"
                   "3 \\ Head black . . . . . 3. A. eus Roe.\n"
                   "\n"
                   "  f Eyes large . . . . . 4. A. fus Roe.\n"
                   "4 \\ Eyes small . . . . . 5. A. gus Roe.\n"),
            "1[1] Wings clear. -> 2\n1[] Wings dark. -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[] Legs dark. -> 4\n"
            "3[3] Head red -> Aus dus\n3[] Head black -> Aus eus\n"
            "4[4] Eyes large -> Aus fus\n4[] Eyes small -> Aus gus\n");
}

TEST(PrintedBraces, APageMayTurnWithinThem) {
  EXPECT_EQ(sketch("Die Arten der Gattung Ausella.\n"
                   "\n"
                   "   f Flügel klar ..... 2\n"
                   "\n"
                   "212                 FAUNA VON OST\n"
                   "\n"
                   " 1 \\ Flügel trüb ..... A. dorni\n"
                   "   f Beine gelb ..... A. flava\n"
                   "\n"
                   " 2 {\n"
                   "\n"
                   "   \\ Beine rot ..... A. rubra\n"
                   "\n"
                   "FAUNA VON OST                 213\n"),
            "1[1] Flügel klar -> 2\n1[] Flügel trüb -> Ausella dorni\n"
            "2[2] Beine gelb -> Ausella flava\n2[] Beine rot -> Ausella rubra\n");
}

TEST(PrintedBraces, NothingElseNeedBeOnThePage) {
  EXPECT_EQ(sketch("f Wings clear ..... 2.\n"
                   "1 |\n"
                   "l Wings dark ..... Aus dus.\n"
                   "f Legs pale ..... Aus bus.\n"
                   "2 |\n"
                   "l Legs dark, or with a ring before\n"
                   "the tip ..... Aus cus.\n"),
            "1[1] Wings clear -> 2\n1[] Wings dark -> Aus dus\n"
            "2[2] Legs pale -> Aus bus\n"
            "2[] Legs dark, or with a ring before the tip -> Aus cus\n");
}

TEST(PrintedBraces, NumbersMayBeMisreadOrNameWhereTheyWereLedTo) {
  auto const text =
      "      / Wings clear . . . . . 2\n"
      "l     |\n"
      "      \\ Wings dark . . . . . Aus dus\n"
      "\n"
      "      / Legs pale . . . . . Aus bus\n"
      "2 (1) |\n"
      "      \\ Legs dark . . . . . Aus cus\n";
  EXPECT_EQ(sketch(text),
            "1[l] Wings clear -> 2\n1[] Wings dark -> Aus dus\n"
            "2[2] Legs pale -> Aus bus\n2[] Legs dark -> Aus cus\n");
  auto const findings = findings_of(text);
  EXPECT_EQ(std::count_if(findings.begin(), findings.end(),
                          [](std::string const& finding) {
                            return finding.find("misprinted-label") != std::string::npos;
                          }),
            1);
}

TEST(PrintedBraces, EachLineIsAccountedFor) {
  auto const text =
      "   ( Wings clear ..... 2\n"
      "   I\n"
      " 1 {\n"
      "   I\n"
      "   ( Wings dark ..... Aus dus\n"
      "\n"
      "12                 THE FAUNA OF THE COAST\n"
      "\n"
      "   ( Legs pale ..... Aus bus\n"
      " 2 {\n"
      "   ( Legs dark, with a ring before\n"
      "   (   the tip ..... Aus cus\n";
  EXPECT_EQ(line_kinds(text),
            "lead, continuation, heading, continuation, lead, blank, running head, blank, lead, "
            "heading, lead, continuation");
  auto const lines = read_key(text).source.lines;
  ASSERT_EQ(lines.size(), 12U);
  EXPECT_EQ(lines[0].reason, "the first lead in its brace");
  EXPECT_EQ(lines[1].reason, "a piece of a brace");
  EXPECT_EQ(lines[2].reason, "the number of the couplet in the brace");
  EXPECT_EQ(lines[4].reason, "a further lead in the brace");
  EXPECT_EQ(lines[11].reason, "goes on with the lead in the brace");
}

TEST(PrintedBraces, AreSaid) {
  auto const findings = findings_of(
      "1 { Wings clear ..... 2\n"
      "  { Wings dark ..... Aus dus\n"
      "2 { Legs pale ..... Aus bus\n"
      "  { Legs dark ..... Aus cus\n");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings.front(),
            "key.txt:1:1: information: 2 couplets were read from braces at the margin; what stands "
            "for the braces was left out [braces] (see with --explain whether each lead begins "
            "where it should)");
}

TEST(PrintedBraces, BracketsOfTheWordsAreNone) {
  EXPECT_EQ(sketch("1 { Wings clear (without\n"
                   "  { spots) ..... 2\n"
                   "  { Wings dark\n"
                   "    (never spotted\n"
                   "  { or ringed) ..... Aus dus\n"
                   "2 { Legs pale\n"
                   "    (rarely red) ..... Aus bus\n"
                   "  { Legs dark ..... Aus cus\n"),
            "1[1] Wings clear (without spots) -> 2\n"
            "1[] Wings dark (never spotted or ringed) -> Aus dus\n"
            "2[2] Legs pale (rarely red) -> Aus bus\n2[] Legs dark -> Aus cus\n");
}

TEST(PrintedBraces, NumbersThatCountNothingAreWords) {
  EXPECT_EQ(
      sketch(
          "    f Wings clear — 2.\n  1 \\ Wings dark — 3.\n\n"
          "    f Legs pale; body at most\n    I 12 mm long . . . . . . 1. Aus bus\n"
          "  2 \\ Legs dark; body more than\n12 mm long . . . . . . 2. Aus cus\n\n"
          "    f Tail forked . . . . . . 3. Aus dus\n  3 \\ Tail plain . . . . . . 4. Aus eus\n"),
      "1[1] Wings clear -> 2\n1[] Wings dark -> 3\n"
      "2[2] Legs pale; body at most 12 mm long -> Aus bus\n"
      "2[] Legs dark; body more than 12 mm long -> Aus cus\n"
      "3[3] Tail forked -> Aus dus\n3[] Tail plain -> Aus eus\n");
}

TEST(PrintedBraces, LetteredLeadsAreToldApartInTheirBrace) {
  auto const lines = test::read_key(
                         "  { a. Wings clear ..... 2\n1 {\n  { b. Wings dark ..... Aus bus\n\n"
                         "  { a. Legs pale ..... Aus cus\n2 {\n  { b. Legs dark ..... Aus dus\n\n")
                         .source.lines;
  ASSERT_GE(lines.size(), 3U);
  EXPECT_EQ(lines[0].reason, "the first lead in its brace");
  EXPECT_EQ(lines[2].reason, "a further lead in the brace");
}

TEST(PrintedBraces, ANameMayGoOnBehindItsGenus) {
  EXPECT_EQ(sketch("1 { Hinterleib schwarz — 2.\n"
                   "\\ Hinterleib rot — 3.\n"
                   "f Segmente mit weissen Binden, die Beine schwarz — 1. A.\n"
                   "2 { busa.\n"
                   "\\ Segmente ohne Binden — 2. A. cusa.\n"
                   "3 { Beine rot — 3. A. dusa.\n"
                   "\\ Beine schwarz, nur die Tarsen gelb, die Fühler rot — 4. A. semi-\n"
                   "fusa.\n"
                   "\n"
                   "1. A. busa Roe 1861 A. b., Roe in: Z. Ent., v. 9 p. 215 | 1879\n"
                   "Busella nigra, Dorn, p. 35 n. 2.\n"),
            "1[1] Hinterleib schwarz -> 2\n"
            "1[] Hinterleib rot -> 3\n"
            "2[2] Segmente mit weissen Binden, die Beine schwarz -> A. busa\n"
            "2[] Segmente ohne Binden -> A. cusa\n"
            "3[3] Beine rot -> A. dusa\n"
            "3[] Beine schwarz, nur die Tarsen gelb, die Fühler rot -> A. semifusa\n");
}

TEST(PrintedBraces, NoLeadLeadsToItsOwnCouplet) {
  EXPECT_EQ(sketch("Tableau des genres\n"
                   "\n"
                   "1 { Pétales inégaux. . . . . . 2\n"
                   "( Pétales égaux. . . . . . . . 1. Thlaspidium.\n"
                   "2 { Étamines sans appendice. . . . 2. Iberina.\n"
                   "( Étamines avec appendice. . . . . . . . . . . . . 3\n"
                   "3 { Fruit formé de 2 articles, le supérieur globuleux.\n"
                   ". . . . . . . . . . . . . . . . 3. Raphanistella.\n"
                   "( Fruit formé d'un seul article. . . . . . . . . . . . . . . . 4\n"
                   "4 { Fruit pendant, aplati en forme d'aile ; fleurs jaunes. 4. Isatina.\n"
                   "( Fruit non pendant, ridé. . . . .\n"
                   ". . . . . . . . . . . . . . . . 5. Coronopella.\n"),
            "1[1] { Pétales inégaux -> 2\n"
            "1[] ( Pétales égaux -> Thlaspidium\n"
            "2[2] { Étamines sans appendice -> Iberina\n"
            "2[] ( Étamines avec appendice -> 3\n"
            "3[3] { Fruit formé de 2 articles, le supérieur globuleux -> Raphanistella\n"
            "3[] ( Fruit formé d'un seul article -> 4\n"
            "4[4] { Fruit pendant, aplati en forme d'aile ; fleurs jaunes. -> Isatina\n"
            "4[] ( Fruit non pendant, ridé -> Coronopella\n");
}

TEST(PrintedBraces, NumbersThatWereLostAreCountedByParagraphs) {
  EXPECT_EQ(sketch("III. HÉLOSPERME — HELOSPERMUM Delm.\n"
                   "\n"
                   "( Feuilles toutes opposées; tige rameuse\n"
                   "1 J dès la base 2\n"
                   "( Feuilles alternes 4\n"
                   "\n"
                   "^ { Fleurs jaunes 3\n"
                   "\" ( Fleurs blanches H. album Delm.\n"
                   "\n"
                   "( Feuilles ovales, obtuses; pétales en-\n"
                   "\\ tiers H. lutescens Barv.\n"
                   "i Feuilles lancéolées; pétales échan-\n"
                   "f crés H. montanum Delm.\n"
                   "\n"
                   "4 { Fleurs en grappes H. racemosum Barv.\n"
                   "( Fleurs solitaires H. uniflorum Barv.\n"),
            "1[1] Feuilles toutes opposées; tige rameuse dès la base -> 2\n"
            "1[] Feuilles alternes -> 4\n"
            "2[^] Fleurs jaunes -> 3\n"
            "2[] Fleurs blanches -> Helospermum album\n"
            "3[] Feuilles ovales, obtuses; pétales entiers -> Helospermum lutescens\n"
            "3[] Feuilles lancéolées; pétales échancrés -> Helospermum montanum\n"
            "4[4] Fleurs en grappes -> Helospermum racemosum\n"
            "4[] Fleurs solitaires -> Helospermum uniflorum\n");
}

TEST(PrintedBraces, PiecesThatAreNoBracesAnyMore) {
  EXPECT_EQ(sketch("34 Fam. Trichelodidae: 6. Trichelodes\n"
                   "\n"
                   "I Abdomen rot — 2.\n"
                   "1 ^\n"
                   "I Abdomen schwarz — 3.\n"
                   "\n"
                   "j Tergit 1 blau . . . 1. T. rufiventris\n"
                   "\\ Alle Tergite rot . . . 2. T. ruber\n"
                   "\n"
                   "3 { Körper schwarz . . . 3. T. ater\n"
                   "\\ Körper metallisch — 4.\n"
                   "\n"
                   "1 Flügel gebräunt . . . 4. T. fumipennis\n"
                   "^^ ' Flügel klar . . . 5. T. hyalinus\n"),
            "1[1] Abdomen rot -> 2\n"
            "1[] Abdomen schwarz -> 3\n"
            "2[] Tergit 1 blau -> Trichelodes rufiventris\n"
            "2[] Alle Tergite rot -> Trichelodes ruber\n"
            "3[3] Körper schwarz -> Trichelodes ater\n"
            "3[] Körper metallisch -> 4\n"
            "4[^^] Flügel gebräunt -> Trichelodes fumipennis\n"
            "4[] Flügel klar -> Trichelodes hyalinus\n");
}

TEST(PrintedBraces, LeadsThatBeginWithAnOrdinal) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Gattungen\n"
                   "\n"
                   "1 { Vorderflügel mit 3 geschlossenen Cubitalzellen — 2.\n"
                   "\\ Vorderflügel mit 2 geschlossenen Cubitalzellen — 4.\n"
                   "2 { 2. Cubitalzelle gestielt — 3.\n"
                   "l 2. Cubitalzelle nicht gestielt — 1. Tritozelus Karn.\n"
                   "3 { Augen ausgerandet — 2. Ampharga Dornk.\n"
                   "\\ Augen nicht ausgerandet — 3. Stenarga Dornk.\n"
                   "4 { Abdomen gestielt — 4. Melanopsena Karn.\n"
                   "\\ Abdomen sitzend — 5. Acanthozela Karn.\n"),
            "1[1] Vorderflügel mit 3 geschlossenen Cubitalzellen -> 2\n"
            "1[] Vorderflügel mit 2 geschlossenen Cubitalzellen -> 4\n"
            "2[2] 2. Cubitalzelle gestielt -> 3\n"
            "2[] 2. Cubitalzelle nicht gestielt -> Tritozelus\n"
            "3[3] Augen ausgerandet -> Ampharga\n"
            "3[] Augen nicht ausgerandet -> Stenarga\n"
            "4[4] Abdomen gestielt -> Melanopsena\n"
            "4[] Abdomen sitzend -> Acanthozela\n");
}

TEST(PrintedBraces, SignsStandForAsManyNumbersAsAreMissing) {
  EXPECT_EQ(
      sketch("Übersicht der Arten der Gattung Ausella:\n"
             "\n"
             "^ f Rücken mit beweglichen Klappen — 2\n"
             "\\ Rücken ohne Klappen — 5\n"
             "\n"
             "J Lamellen mit der Innenkante verwachsen oder durch eine\n"
             "2 \\ breite Brücke verbunden — 3\n"
             "\n"
             "[ Lamellen frei — 4\n"
             "\n"
             "Q f Rostrum mit 3 Zähnen . . . . 1. A. dentata\n"
             "\\ Rostrum ganzrandig . . . . . . 2. A. integra\n"
             "\n"
             "4 f Haare glatt . . . . . . . . . 3. A. glabra\n"
             "\\ Haare gefiedert . . . . . . . . 4. A. plumosa\n"
             "\n"
             "5 f Beine mit 3 Krallen . . . . . 5. A. trifida\n"
             "\\ Beine mit einer Kralle . . . . . 6. A. simplex\n"),
      "1[^] Rücken mit beweglichen Klappen -> 2\n"
      "1[] Rücken ohne Klappen -> 5\n"
      "2[2] Lamellen mit der Innenkante verwachsen oder durch eine breite Brücke verbunden -> 3\n"
      "2[] Lamellen frei -> 4\n"
      "3[Q] Rostrum mit 3 Zähnen -> Ausella dentata\n"
      "3[] Rostrum ganzrandig -> Ausella integra\n"
      "4[4] Haare glatt -> Ausella glabra\n"
      "4[] Haare gefiedert -> Ausella plumosa\n"
      "5[5] Beine mit 3 Krallen -> Ausella trifida\n"
      "5[] Beine mit einer Kralle -> Ausella simplex\n");
}

TEST(PrintedBraces, ABareNumberEndsTheFirstOfTwoLeadsInABrace) {
  EXPECT_EQ(sketch("36. AUSELLA Harl.\n"
                   "\n"
                   "1 { Leaves ending in a hair-point . . . . . . 2\n"
                   "{ Leaves muticous or mucronate . . . . . . 4\n"
                   "\n"
                   "2 { Hair-point rough . . . . . . 3\n"
                   "( Hair-point smooth . . . . . 1. A. levis\n"
                   "\n"
                   "f Nerve strongly papillose at back ; leaves squarrose when\n"
                   "3 \\ moist . . . . . . . . . 2. A. asperinervis\n"
                   "( Nerve smooth at back ; leaves erecto-patent 3. A. recta\n"
                   "\n"
                   "4 { Leaves with a border of thickened or elongate cells 5\n"
                   "{ Leaves not bordered . . . . . . . . . . . 4. A. nuda\n"
                   "\n"
                   "f Border yellow, of 3-4 rows of thick-walled cells, reaching\n"
                   "5 \\ the apex . . . . . . . . . . 5. A. marginella\n"
                   "( Border faint, vanishing above 6. A. flavolimbata\n"),
            "1[1] Leaves ending in a hair-point -> 2\n"
            "1[] Leaves muticous or mucronate -> 4\n"
            "2[2] Hair-point rough -> 3\n"
            "2[] Hair-point smooth -> Ausella levis\n"
            "3[3] Nerve strongly papillose at back ; leaves squarrose when moist -> Ausella "
            "asperinervis\n"
            "3[] Nerve smooth at back ; leaves erecto-patent -> Ausella recta\n"
            "4[4] Leaves with a border of thickened or elongate cells -> 5\n"
            "4[] Leaves not bordered -> Ausella nuda\n"
            "5[5] Border yellow, of 3-4 rows of thick-walled cells, reaching the apex -> Ausella "
            "marginella\n"
            "5[] Border faint, vanishing above -> Ausella flavolimbata\n");
}

TEST(PrintedBraces, HoldNoNamesForLeads) {
  EXPECT_EQ(
      sketch("BRELLIA\n"
             "\n"
             "1 ( Fleurs en épis ...... 2\n"
             "  ( Fleurs en verticilles ....... 3\n"
             "\n"
             "2 j Feuilles ovales, ridées en réseau, tomenteuses en dessous.\n"
             "     B. rotundifolia Vaugel.\n"
             "  ( Feuilles lancéolées, à peine ridées, glabres ou presque gla-\n"
             "     bres........................ B. viridula Lesp.\n"
             "\n"
             "3 ( Style dépassant la corolle ; dents du calice ciliées.\n"
             "     B. macrostyla Lor.\n"
             "  ( Style inclus ; dents du calice non ciliées.\n"
             "     B. inclusa Lesp.\n"
             "\n"
             "1. B. rotundifolia Vaugel. Sp. 805 ; Lor. Fl. centr. p. 377. —\n"
             "Plante vivace, velue, à odeur forte. — Tiges dressées.\n"),
      "1[1] Fleurs en épis -> 2\n"
      "1[] Fleurs en verticilles -> 3\n"
      "2[2] Feuilles ovales, ridées en réseau, tomenteuses en dessous. -> Brellia rotundifolia\n"
      "2[] Feuilles lancéolées, à peine ridées, glabres ou presque glabres -> Brellia viridula\n"
      "3[3] Style dépassant la corolle ; dents du calice ciliées. -> Brellia macrostyla\n"
      "3[] Style inclus ; dents du calice non ciliées. -> Brellia inclusa\n");
}

}  // namespace
}  // namespace keydrift
