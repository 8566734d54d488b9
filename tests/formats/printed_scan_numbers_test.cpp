// Numbers, letters and signs that scanning made others of, told by those around them.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::sketch;

TEST(PrintedScanNumbers, NumbersOfSpeciesAtEndsAreCalledForByTheirNeighbours) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1 Annual; root slender. 2\n"
                   "Perennial; rootstock woody. 3\n"
                   "\n"
                   "2 Petals white, shorter than sepals or 0. I. busa\n"
                   "Petals pink, longer than sepals. 2. cusa\n"
                   "\n"
                   "3 Inflorescence hairy. 3. dusa\n"
                   "Inflorescence glabrous. 4. fusa\n"),
            "1[1] Annual; root slender. -> 2\n"
            "1[] Perennial; rootstock woody. -> 3\n"
            "2[2] Petals white, shorter than sepals or 0. -> Ausella busa\n"
            "2[] Petals pink, longer than sepals. -> Ausella cusa\n"
            "3[3] Inflorescence hairy. -> Ausella dusa\n"
            "3[] Inflorescence glabrous. -> Ausella fusa\n");
  EXPECT_EQ(sketch("Analysis of Species of Ausella.\n"
                   "\n"
                   "a. Dorsal spines 10 or 11, the fourth longest.\n"
                   "\n"
                   "b. Scales moderate. GRACILIS, 5.\n"
                   "\n"
                   "bb. Scales small. ROBUSTUS, 6.\n"
                   "\n"
                   "aa. Dorsal spines 12, the third longest.\n"
                   "\n"
                   "c. Body with a blotch on the lateral line below\n"
                   "front of soft dorsal.\n"
                   "SIGNATUS, Y.\n"
                   "\n"
                   "cc. Body plain. TENUIDENS, 8.\n"),
            "a[a] Dorsal spines 10 or 11, the fourth longest. -> b\n"
            "a[aa] Dorsal spines 12, the third longest. -> c\n"
            "b[b] Scales moderate. -> Ausella gracilis (5.)\n"
            "b[bb] Scales small. -> Ausella robustus (6.)\n"
            "c[c] Body with a blotch on the lateral line below front of soft dorsal. -> Ausella "
            "signatus (7.)\n"
            "c[cc] Body plain. -> Ausella tenuidens (8.)\n");
}

TEST(PrintedScanNumbers, ADamagedNumberAtTheEndLetsTheSecondLeadBegin) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1 Leaves apparently whorled; stipules silvery. I0\n"
                   "Leaves without fascicles; stipules dull. 2\n"
                   "\n"
                   "2 Petals pink. Ausella busa Roe\n"
                   "Petals white. 3\n"
                   "\n"
                   "3 Seeds black. Ausella cusa Roe\n"
                   "Seeds brown. 10\n"
                   "\n"
                   "10 Stems hairy. Ausella dusa Roe\n"
                   "Stems smooth. Ausella fusa Roe\n"),
            "1[1] Leaves apparently whorled; stipules silvery. -> I0\n"
            "1[] Leaves without fascicles; stipules dull. -> 2\n"
            "2[2] Petals pink. -> Ausella busa\n"
            "2[] Petals white. -> 3\n"
            "3[3] Seeds black. -> Ausella cusa\n"
            "3[] Seeds brown. -> 10\n"
            "10[10] Stems hairy. -> Ausella dusa\n"
            "10[] Stems smooth. -> Ausella fusa\n");
}

TEST(PrintedScanNumbers, StarsMayComeOutAsOtherSigns) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "a. Face black ...... 1. busa, Roe.\n"
                   "\n"
                   "b. Face yellow.\n"
                   "\n"
                   "* Crown with two black spots ...... 2. cusa, Roe.\n"
                   "\n"
                   "*♦ Crown immaculate ...... 3. dusa, Roe.\n"),
            "1[a] Face black -> Ausella busa\n"
            "1[b] Face yellow. -> 2\n"
            "2[*] Crown with two black spots -> Ausella cusa\n"
            "2[**] Crown immaculate -> Ausella dusa\n");
}

TEST(PrintedScanNumbers, WhatIsMendedOnceIsSaidOfOne) {
  EXPECT_EQ(
      findings_of("Key to the species of Ausella\n"
                  "\n"
                  "a. Face black ...... 1. busa, Roe.\n"
                  "\n"
                  "b. Face yellow.\n"
                  "\n"
                  "* Crown with two black spots ...... 2. cusa, Roe.\n"
                  "\n"
                  "*♦ Crown immaculate ...... 3. dusa, Roe.\n")
          .front(),
      "key.txt:1:1: information: 1 line that begins with \"*♦\" or the like was read as if with "
      "stars [misread-signs] (see with --explain whether the lines are taken for what they are)");
}

TEST(PrintedScanNumbers, ACommaMayFollowTheFirstOfTwoLetters) {
  EXPECT_EQ(sketch("CLAVE PARA LAS ESPECIES DE AUSELLA\n"
                   "\n"
                   "A. Plantas anuales.\n"
                   "\n"
                   "B. Corola corta. 1. A. busa\n"
                   "\n"
                   "BB. Corola larga. 2. A. cusa\n"
                   "\n"
                   "AA. Plantas perennes.\n"
                   "\n"
                   "D, Hojas opuestas. 3. A. dusa\n"
                   "\n"
                   "DD. Hojas alternas. 4. A. fusa\n"),
            "A[A] Plantas anuales. -> B\n"
            "A[AA] Plantas perennes. -> D\n"
            "B[B] Corola corta. -> Ausella busa\n"
            "B[BB] Corola larga. -> Ausella cusa\n"
            "D[D] Hojas opuestas. -> Ausella dusa\n"
            "D[DD] Hojas alternas. -> Ausella fusa\n");
}

TEST(PrintedScanNumbers, ACommaMayFollowTheLetterBehindANumber) {
  EXPECT_EQ(
      sketch("Key to larvae\n"
             "\n"
             "1a. Prolegs on segments 5 and 6 only.............................. 2\n"
             "1b. Prolegs on segments 3 to 6.................................... 3\n"
             "2a. Minute vestigial prolegs; legs black............ Ausella busa (Dorn)\n"
             "2b. No vestigial prolegs; legs pale............... Ausella lunula Roe\n"
             "3a, Four wide dark bands, those on the sides edged below with orange;\n"
             "proleg with a black band outside; often in armies.\n"
             "Lorvania unispina (Moor), marching cutworm\n"
             "3b. Without such bands, or the bands broken............ Lorvania graminis Roe\n"),
      "1[1a] Prolegs on segments 5 and 6 only -> 2\n"
      "1[1b] Prolegs on segments 3 to 6 -> 3\n"
      "2[2a] Minute vestigial prolegs; legs black -> Ausella busa\n"
      "2[2b] No vestigial prolegs; legs pale -> Ausella lunula\n"
      "3[3a,] Four wide dark bands, those on the sides edged below with orange; proleg with a "
      "black band outside; often in armies. -> Lorvania unispina (marching cutworm)\n"
      "3[3b] Without such bands, or the bands broken -> Lorvania graminis\n");
}

TEST(PrintedScanNumbers, ANumberThatIsAnotherCoupletsMayBeItsNeighbours) {
  EXPECT_EQ(sketch("Key to larvae\n"
                   "\n"
                   "1a. Prolegs on segments 5 and 6 only.............................. 2\n"
                   "1b. Prolegs on segments 3 to 6.................................... 3\n"
                   "2a. Minute vestigial prolegs; legs black............ Ausella busa (Dorn)\n"
                   "2b. No vestigial prolegs; legs pale............... Ausella lunula Roe\n"
                   "8a. Spinneret longer than labial palpus............................ 4\n"
                   "3b. Spinneret shorter than labial palpus........................... 5\n"
                   "4a. Four wide dark bands........ Lorvania unispina (Moor)\n"
                   "4b. Without such bands, or the bands broken............ Lorvania graminis Roe\n"
                   "5a. Stripe pale pink; northern.................................... 8\n"
                   "5b. Stripe white.................... Ceptuxa hortensis (Dorn)\n"
                   "8a. Spiracle of segment 8 high........ Ceptuxa borealis Roe\n"
                   "8b. Spiracle of segment 8 low......... Ceptuxa sarta Roe\n"),
            "1[1a] Prolegs on segments 5 and 6 only -> 2\n"
            "1[1b] Prolegs on segments 3 to 6 -> 3\n"
            "2[2a] Minute vestigial prolegs; legs black -> Ausella busa\n"
            "2[2b] No vestigial prolegs; legs pale -> Ausella lunula\n"
            "3[8a] Spinneret longer than labial palpus -> 4\n"
            "3[3b] Spinneret shorter than labial palpus -> 5\n"
            "4[4a] Four wide dark bands -> Lorvania unispina\n"
            "4[4b] Without such bands, or the bands broken -> Lorvania graminis\n"
            "5[5a] Stripe pale pink; northern -> 8\n"
            "5[5b] Stripe white -> Ceptuxa hortensis\n"
            "8[8a] Spiracle of segment 8 high -> Ceptuxa borealis\n"
            "8[8b] Spiracle of segment 8 low -> Ceptuxa sarta\n");
}

TEST(PrintedScanNumbers, ACapitalIWithinAWordIsL) {
  EXPECT_EQ(sketch("1. Elytra hairy ........ Ausella villosuIa Roe\n"
                   "– Elytra smooth ........ Ausella mcIntoshi McIntosh\n"),
            "1[1] Elytra hairy -> Ausella villosula\n"
            "1[–] Elytra smooth -> Ausella mcIntoshi\n");
}

TEST(PrintedScanNumbers, ALineOfManyLeadsIsNoCouplet) {
  EXPECT_EQ(sketch("15. AUSELLA, Roe.\n"
                   "\n"
                   "Flowers in dense spikes or heads:\n"
                   "    Bracts ovate, broader than the calyx:\n"
                   "        Bracts entire, white-margined; corolla purple, over\n"
                   "          1 in. long    .       .       .       .       .   1. busa.\n"
                   "        Bracts spinous-toothed; corolla white or yellow:\n"
                   "            Leaves spinous on the margin .       .       .   2. cusa.\n"
                   "            Leaves quite entire; corolla yellow, 1/2 in. long   3. dusa.\n"
                   "    Bracts linear, narrower than the calyx:\n"
                   "        Stems and spikes villous with long yellow hairs   .   4. fusa.\n"
                   "        Stems glabrous:\n"
                   "            Spikes 3-6 in. long, interrupted; leaves petioled    5. gusa.\n"
                   "            Spikes 1/2-1 1/2 in. long, dense; leaves sessile .   6. lusa.\n"
                   "Flowers in lax branched panicles:\n"
                   "    Panicle glandular:\n"
                   "        Leaves ovate, 3-5 in. long, acuminate    .       .   7. viscosa.\n"
                   "        Leaves linear-oblong, not over 1 in. long     .       .   8. nusa.\n"
                   "    Panicle not glandular    .   .     .   .   9. rusa.\n"),
            "1[] Flowers in dense spikes or heads: -> 2\n"
            "1[] Flowers in lax branched panicles: -> 7\n"
            "2[] Bracts ovate, broader than the calyx: -> 3\n"
            "2[] Bracts linear, narrower than the calyx: -> 5\n"
            "3[] Bracts entire, white-margined; corolla purple, over 1 in. long -> Ausella busa\n"
            "3[] Bracts spinous-toothed; corolla white or yellow: -> 4\n"
            "4[] Leaves spinous on the margin -> Ausella cusa\n"
            "4[] Leaves quite entire; corolla yellow, 1/2 in. long -> Ausella dusa\n"
            "5[] Stems and spikes villous with long yellow hairs -> Ausella fusa\n"
            "5[] Stems glabrous: -> 6\n"
            "6[] Spikes 3-6 in. long, interrupted; leaves petioled -> Ausella gusa\n"
            "6[] Spikes 1/2-1 1/2 in. long, dense; leaves sessile -> Ausella lusa\n"
            "7[] Panicle glandular: -> 8\n"
            "7[] Panicle not glandular -> Ausella rusa\n"
            "8[] Leaves ovate, 3-5 in. long, acuminate -> Ausella viscosa\n"
            "8[] Leaves linear-oblong, not over 1 in. long -> Ausella nusa\n");
}

TEST(PrintedScanNumbers, LettersForNumbersBeforeInitials) {
  EXPECT_EQ(sketch("Key to the species of Kyllocarex\n"
                   "\n"
                   "1. Rootstock creeping . . . i. K. stolonifera.\n"
                   "- Rootstock none . . . 2\n"
                   "2. Scales pale . . . 2. K. pallida.\n"
                   "- Scales brown . . . 3\n"
                   "3. Bristles 6 . . . 3. K. capillaris.\n"
                   "- Bristles none . . . 4\n"
                   "4. Culms terete . . . 4. K. teres.\n"
                   "- Culms angled . . . S. K. lacustrina.\n"),
            "1[1] Rootstock creeping -> Kyllocarex stolonifera\n"
            "1[-] Rootstock none -> 2\n"
            "2[2] Scales pale -> Kyllocarex pallida\n"
            "2[-] Scales brown -> 3\n"
            "3[3] Bristles 6 -> Kyllocarex capillaris\n"
            "3[-] Bristles none -> 4\n"
            "4[4] Culms terete -> Kyllocarex teres\n"
            "4[-] Culms angled -> Kyllocarex lacustrina\n");
}

TEST(PrintedScanNumbers, LettersForNumbersBeforeGenera) {
  EXPECT_EQ(sketch("Clave de los géneros\n"
                   "\n"
                   "A. Hojas opuestas.\n"
                   "F. Flores rojas ............ 7. Ausella\n"
                   "FF. Flores azules ............ 8. Busella\n"
                   "AA. Hojas alternas.\n"
                   "B. Estambres 4.\n"
                   "G. Fruto seco ............ 9. Cusella\n"
                   "GG. Fruto carnoso ............ 10. Spergonia\n"
                   "BB. Estambres 5.\n"
                   "C. Hojas basales ............ ll. Rosulea\n"
                   "CC. Hojas caulinas ............ 12. Caulella\n"),
            "A[A] Hojas opuestas. -> F\n"
            "A[AA] Hojas alternas. -> B\n"
            "F[F] Flores rojas -> Ausella\n"
            "F[FF] Flores azules -> Busella\n"
            "B[B] Estambres 4. -> G\n"
            "B[BB] Estambres 5. -> C\n"
            "G[G] Fruto seco -> Cusella\n"
            "G[GG] Fruto carnoso -> Spergonia\n"
            "C[C] Hojas basales -> ?1\n"
            "C[CC] Hojas caulinas -> Caulella\n");
}

}  // namespace
}  // namespace keydrift
