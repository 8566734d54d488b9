// Layouts other than the bracketed one: rivals far apart, numbers for every lead.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::read_key;
using test::sketch;

TEST(PrintedLayout, SerialNumbersNameTheRivalInBrackets) {
  auto const text =
      "1 (6). Shell smooth.\n"
      "2 (3). Foot pale .......... Aus bus\n"
      "3 (2). Foot dark.\n"
      "4 (5). Eyes large .......... Aus cus\n"
      "5 (4). Eyes small .......... Aus dus\n"
      "6 (1). Shell ribbed .......... Dus eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth. -> 2\n1[6] Shell ribbed -> Dus eus\n"
            "2[2] Foot pale -> Aus bus\n2[3] Foot dark. -> 4\n"
            "4[4] Eyes large -> Aus cus\n4[5] Eyes small -> Aus dus\n");
  EXPECT_EQ(read_key(text).source.layout_note,
            "serial layout, leads marked 1 and 6, destinations after dot leaders; a lead without "
            "destination goes on with the next lead");
}

TEST(PrintedLayout, SerialLeadsMayPrintTheNumberThatFollows) {
  EXPECT_EQ(sketch("1(4) Shell smooth ..... 2\n2(3) Foot pale ..... Aus bus\n"
                   "3(2) Foot dark ..... Aus cus\n4(1) Shell ribbed ..... 5\n"
                   "5(6) Eyes large ..... Dus eus\n6(5) Eyes small ..... 2\n"),
            "1[1] Shell smooth -> 2\n1[4] Shell ribbed -> 5\n"
            "2[2] Foot pale -> Aus bus\n2[3] Foot dark -> Aus cus\n"
            "5[5] Eyes large -> Dus eus\n5[6] Eyes small -> 2\n");
}

TEST(PrintedLayout, IndentedNumbersComeBackForTheRival) {
  auto const text =
      "1. Shell smooth\n"
      "    2. Foot pale .......... Aus bus\n"
      "    2. Foot dark\n"
      "        3. Eyes large .......... Aus cus\n"
      "        3. Eyes small .......... Aus dus\n"
      "1. Shell ribbed\n"
      "    4. Foot broad .......... Dus eus\n"
      "    4. Foot narrow .......... Dus fus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[1] Shell ribbed -> 4\n"
            "2[2] Foot pale -> Aus bus\n2[2] Foot dark -> 3\n"
            "3[3] Eyes large -> Aus cus\n3[3] Eyes small -> Aus dus\n"
            "4[4] Foot broad -> Dus eus\n4[4] Foot narrow -> Dus fus\n");
  EXPECT_EQ(read_key(text).source.layout_note,
            "indented layout, leads marked 1 and 1, destinations after dot leaders; a lead without "
            "destination goes on with the next lead");
}

TEST(PrintedLayout, IndentedPrimesAndLettersComeBackToo) {
  EXPECT_EQ(sketch("1. Shell smooth\n  2. Foot pale ..... Aus bus\n  2'. Foot dark ..... Aus cus\n"
                   "1'. Shell ribbed ..... Dus eus\n"),
            "1[1] Shell smooth -> 2\n1[1'] Shell ribbed -> Dus eus\n"
            "2[2] Foot pale -> Aus bus\n2[2'] Foot dark -> Aus cus\n");
  EXPECT_EQ(
      sketch("1a. Shell smooth\n  2a. Foot pale ..... Aus bus\n  2b. Foot dark ..... Aus cus\n"
             "1b. Shell ribbed\n  3a. Foot pale ..... Dus eus\n  3b. Foot dark ..... Dus fus\n"),
      "1[1a] Shell smooth -> 2\n1[1b] Shell ribbed -> 3\n"
      "2[2a] Foot pale -> Aus bus\n2[2b] Foot dark -> Aus cus\n"
      "3[3a] Foot pale -> Dus eus\n3[3b] Foot dark -> Dus fus\n");
}

// Letters that tell ranks cannot be what leads lead to: the couplets are counted.
TEST(PrintedLayout, LettersUsedAgainInEachBranchAreCoupletsOfTheirOwn) {
  auto const text =
      "A. Shell smooth\n  B. Foot pale ..... Aus bus\n"
      "  BB. Foot dark ..... Aus cus\nAA. Shell ribbed\n"
      "  B. Foot broad ..... Dus eus\n  BB. Foot narrow ..... Dus fus\n";
  EXPECT_EQ(sketch(text),
            "1[A] Shell smooth -> 2\n1[AA] Shell ribbed -> 3\n"
            "2[B] Foot pale -> Aus bus\n2[BB] Foot dark -> Aus cus\n"
            "3[B] Foot broad -> Dus eus\n3[BB] Foot narrow -> Dus fus\n");
  EXPECT_EQ(read_key(text).source.layout_note,
            "indented layout, leads marked A and AA, destinations after dot leaders; the couplets' "
            "numbers are not printed but counted; a lead without destination goes on with the next "
            "lead");
}

TEST(PrintedLayout, LettersUsedOnceStayTheLabelsOfTheirCouplets) {
  EXPECT_EQ(sketch("A. Shell smooth\n  B. Foot pale ..... Aus bus\n"
                   "  BB. Foot dark ..... Aus cus\nAA. Shell ribbed\n"
                   "  C. Foot broad ..... Dus eus\n  CC. Foot narrow ..... Dus fus\n"),
            "A[A] Shell smooth -> B\nA[AA] Shell ribbed -> C\n"
            "B[B] Foot pale -> Aus bus\nB[BB] Foot dark -> Aus cus\n"
            "C[C] Foot broad -> Dus eus\nC[CC] Foot narrow -> Dus fus\n");
}

// Each of two columns further in: "7." stands where words below the dash would be wrapped to.
TEST(PrintedLayout, ACoupletSetDeeperThanMostStandsBelowAThirdLead) {
  EXPECT_EQ(sketch("1. Ovary superior\n"
                   "  2. Sepals bent ..... Ausella busa\n"
                   "  – Sepals erect ..... Ausella cusa\n"
                   "– Ovary inferior\n"
                   "  3. Petals white ..... Ausella dusa\n"
                   "  – Petals yellow\n"
                   "    4. Calyx acute\n"
                   "      5. Leaves grey ..... Ausella fusa\n"
                   "      – Leaves green\n"
                   "        6. Panicle long ..... Ausella gusa\n"
                   "        – Panicle short\n"
                   "          7. Pedicels thin ..... Ausella husa\n"
                   "          – Pedicels thick ..... Ausella lusa\n"
                   "    – Calyx obtuse ..... Ausella musa\n"
                   "– Ovary half-inferior\n"
                   "  8. Trees\n"
                   "    9. Fruit dry ..... Ausella nusa\n"
                   "    – Fruit fleshy ..... Ausella pusa\n"
                   "  – Herbs\n"
                   "    10. Seeds winged\n"
                   "      11. Bracts long ..... Ausella rusa\n"
                   "      – Bracts short ..... Ausella susa\n"
                   "    – Seeds wingless ..... Ausella tusa\n"
                   "  – Climbers ..... Ausella vusa\n"),
            "1[1] Ovary superior -> 2\n"
            "1[–] Ovary inferior -> 3\n"
            "1[–] Ovary half-inferior -> 8\n"
            "2[2] Sepals bent -> Ausella busa\n"
            "2[–] Sepals erect -> Ausella cusa\n"
            "3[3] Petals white -> Ausella dusa\n"
            "3[–] Petals yellow -> 4\n"
            "4[4] Calyx acute -> 5\n"
            "4[–] Calyx obtuse -> Ausella musa\n"
            "5[5] Leaves grey -> Ausella fusa\n"
            "5[–] Leaves green -> 6\n"
            "6[6] Panicle long -> Ausella gusa\n"
            "6[–] Panicle short -> 7\n"
            "7[7] Pedicels thin -> Ausella husa\n"
            "7[–] Pedicels thick -> Ausella lusa\n"
            "8[8] Trees -> 9\n"
            "8[–] Herbs -> 10\n"
            "8[–] Climbers -> Ausella vusa\n"
            "9[9] Fruit dry -> Ausella nusa\n"
            "9[–] Fruit fleshy -> Ausella pusa\n"
            "10[10] Seeds winged -> 11\n"
            "10[–] Seeds wingless -> Ausella tusa\n"
            "11[11] Bracts long -> Ausella rusa\n"
            "11[–] Bracts short -> Ausella susa\n");
}

// "8. Corolla entire" has the form of a species with its number, set in at the right.
TEST(PrintedLayout, ALeadATabFurtherInIsNoNumberedName) {
  EXPECT_EQ(sketch("1. Seeds smooth\n"
                   "\t2. Style long ..... Ausella busa\n"
                   "\t– Style short ..... Ausella cusa\n"
                   "– Seeds rough\n"
                   "\t3. Petals hairy\n"
                   "\t\t4. Leaves five ..... Ausella dusa\n"
                   "\t\t– Leaves ten\n"
                   "\t\t\t5. Horn long ..... Ausella fusa\n"
                   "\t\t\t– Horn short\n"
                   "\t\t\t\t6. Wings clear ..... Ausella gusa\n"
                   "\t\t\t\t– Wings dark ..... Ausella husa\n"
                   "\t– Petals bald\n"
                   "\t\t7. Nectaries long\n"
                   "\t\t\t8. Corolla entire ..... Ausella lusa\n"
                   "\t\t\t– Corolla toothed ..... Ausella musa\n"
                   "\t\t– Nectaries short\n"
                   "\t\t\t9. Anthers blue ..... Ausella nusa\n"
                   "\t\t\t– Anthers black\n"
                   "\t\t\t\t10. Spines red ..... Ausella pusa\n"
                   "\t\t\t\t– Spines white ..... Ausella rusa\n"),
            "1[1] Seeds smooth -> 2\n"
            "1[–] Seeds rough -> 3\n"
            "2[2] Style long -> Ausella busa\n"
            "2[–] Style short -> Ausella cusa\n"
            "3[3] Petals hairy -> 4\n"
            "3[–] Petals bald -> 7\n"
            "4[4] Leaves five -> Ausella dusa\n"
            "4[–] Leaves ten -> 5\n"
            "5[5] Horn long -> Ausella fusa\n"
            "5[–] Horn short -> 6\n"
            "6[6] Wings clear -> Ausella gusa\n"
            "6[–] Wings dark -> Ausella husa\n"
            "7[7] Nectaries long -> 8\n"
            "7[–] Nectaries short -> 9\n"
            "8[8] Corolla entire -> Ausella lusa\n"
            "8[–] Corolla toothed -> Ausella musa\n"
            "9[9] Anthers blue -> Ausella nusa\n"
            "9[–] Anthers black -> 10\n"
            "10[10] Spines red -> Ausella pusa\n"
            "10[–] Spines white -> Ausella rusa\n");
}

// "N. dusa" below "E. Scales of the bud 5": no couplet N.
TEST(PrintedLayout, ShortNamesOnLinesOfTheirOwnBearNoLetters) {
  EXPECT_EQ(sketch("Key to the species of Nusella\n"
                   "\n"
                   "A. Leaves red ..... N. busa\n"
                   "AA. Leaves white\n"
                   "  B. Petals red ..... N. cusa\n"
                   "  BB. Petals white\n"
                   "    C. Sepals red ..... N. gusa\n"
                   "    CC. Sepals white\n"
                   "      D. Seeds red ..... N. husa\n"
                   "      DD. Seeds white\n"
                   "        E. Scales of the bud 5\n"
                   "            N. dusa\n"
                   "        EE. Scales of the bud 10\n"
                   "            N. fusa\n"),
            "A[A] Leaves red -> Nusella busa\n"
            "A[AA] Leaves white -> B\n"
            "B[B] Petals red -> Nusella cusa\n"
            "B[BB] Petals white -> C\n"
            "C[C] Sepals red -> Nusella gusa\n"
            "C[CC] Sepals white -> D\n"
            "D[D] Seeds red -> Nusella husa\n"
            "D[DD] Seeds white -> E\n"
            "E[E] Scales of the bud 5 -> Nusella dusa\n"
            "E[EE] Scales of the bud 10 -> Nusella fusa\n");
}

TEST(PrintedLayout, AThirdLeadThatNothingAnswersOpensNoKey) {
  EXPECT_EQ(sketch("Key to the species of Nusella\n"
                   "\n"
                   "1. Petals yellow ..... N. fusa\n"
                   "1. Petals red\n"
                   "  2. Blades entire ..... N. cusa\n"
                   "  2. Blades pinnatifid ..... N. gusa\n"
                   "1. Petals white\n"
                   "  2. Calyx 5-lobed ..... N. husa\n"
                   "  2. Calyx 4-lobed ..... N. lusa\n"),
            "1[1] Petals yellow -> Nusella fusa\n"
            "1[1] Petals red -> 2\n"
            "1[1] Petals white -> 3\n"
            "2[2] Blades entire -> Nusella cusa\n"
            "2[2] Blades pinnatifid -> Nusella gusa\n"
            "3[2] Calyx 5-lobed -> Nusella husa\n"
            "3[2] Calyx 4-lobed -> Nusella lusa\n");
}

TEST(PrintedLayout, LabelledLeadsThatAllLeadOnAreTheKeyWhateverStandsBetween) {
  EXPECT_EQ(sketch("— 312 —\n\nUebersicht der Arten der Gattung Brachella Roe.\n\n"
                   "1 (4) Halsschild mit Randlinie.\n"
                   "2 (3) Flügeldecken mit Punktstreifen. — Steppen.            1. striata Roe\n"
                   "3 (2) Flügeldecken ohne Punktstreifen. L. 2,8—3,1 mm.\n"
                   "                                                           2. glabra Roe\n"
                   "4 (1) Halsschild an den Seiten ohne Randlinie.\n\n"
                   "Altenroder Blätter, XXVIII, Heft VIII (15. Oktober 1909).\n\n"
                   "Bestimmungs-Uebersicht: Brachella.                    — 313 —\n\n"
                   "5 (8) Fortsatz breit.\n"
                   "6 (7) Klauen gezähnt. — Nordgebirge.                        3. dentata Roe\n"
                   "7 (6) Klauen einfach.                                       4. simplex Roe\n"
                   "8 (5) Fortsatz schmal.                                      5. angusta Roe\n\n"
                   "Die Beschreibungen folgen im nächsten Hefte. Von B. glabra\n"
                   "lag mir nur ein Stück vor, welches ich der Güte des Herrn ver-\ndanke.\n"),
            "1[1] Halsschild mit Randlinie. -> 2\n"
            "1[4] Halsschild an den Seiten ohne Randlinie. -> 5\n"
            "2[2] Flügeldecken mit Punktstreifen. — Steppen. -> Brachella striata\n"
            "2[3] Flügeldecken ohne Punktstreifen. L. 2,8—3,1 mm. -> Brachella glabra\n"
            "5[5] Fortsatz breit. -> 6\n"
            "5[8] Fortsatz schmal. -> Brachella angusta\n"
            "6[6] Klauen gezähnt. — Nordgebirge. -> Brachella dentata\n"
            "6[7] Klauen einfach. -> Brachella simplex\n");
}

}  // namespace
}  // namespace keydrift
