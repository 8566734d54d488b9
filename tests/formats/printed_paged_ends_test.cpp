// Ends of leads that give an epithet and the page of its account.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedPagedEnds, AllEndSoWhereMostDo) {
  EXPECT_EQ(sketch("The genus Ausella Roe\n\nKey to Males\n\n"
                   "1a. Palpus with two spurs 2\n"
                   "1b. Palpus with one spur 3\n"
                   "2a. Spurs long; carapace pale bicalcarata (p. 49)\n"
                   "2b. Spurs short; embolus visible as a loose\n"
                   "coil (fig. 14) dentichelis (p. 51)\n"
                   "3a. Length under 4 mm agreste (p. 47)\n"
                   "3b. Length over 4 mm 4\n"
                   "4a. Abdomen pale or dusky agreste (p. 47), cincta (p. 50)\n"
                   "4b. Abdomen black insolens (p. 58)\n"),
            "1[1a] Palpus with two spurs -> 2\n"
            "1[1b] Palpus with one spur -> 3\n"
            "2[2a] Spurs long; carapace pale -> Ausella bicalcarata (p. 49)\n"
            "2[2b] Spurs short; embolus visible as a loose coil (fig. 14) -> Ausella dentichelis "
            "(p. 51)\n"
            "3[3a] Length under 4 mm -> Ausella agreste (p. 47)\n"
            "3[3b] Length over 4 mm -> 4\n"
            "4[4a] Abdomen pale or dusky -> Ausella agreste + Ausella cincta (p. 47; p. 50)\n"
            "4[4b] Abdomen black -> Ausella insolens (p. 58)\n");
}

TEST(PrintedPagedEnds, NewSpeciesAndAuthorsStandBeforeThePage) {
  EXPECT_EQ(sketch("The genus Ausella\n\n"
                   "1. Beak long; elytra oblong......incompta, new species (p. 113)\n"
                   "   Beak short....................2\n"
                   "2. Club gray; length, 7-9 mm gibbicollis Roe (p. 117).\n"
                   "   Club of one color 3\n"
                   "3. Scales sparse pubescens, new species (p. 120).\n"
                   "   Scales dense.................moesta, new species (p. 121).\n"),
            "1[1] Beak long; elytra oblong -> Ausella incompta (new species (p. 113))\n"
            "1[] Beak short -> 2\n"
            "2[2] Club gray; length, 7-9 mm -> Ausella gibbicollis (p. 117)\n"
            "2[] Club of one color -> 3\n"
            "3[3] Scales sparse -> Ausella pubescens (new species (p. 120))\n"
            "3[] Scales dense -> Ausella moesta (new species (p. 121))\n");
}

TEST(PrintedPagedEnds, AnEpithetThatIsRepeatedIsNoWordOfTheLead) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n\n"
                   "1. Loreal present ------------ 2\n"
                   "Loreal absent ------------ gracilis (p. 77)\n"
                   "2. Three stripes, the median one scale wide\n"
                   "                      lineata lineata (p. 66)\n"
                   "No stripes ------------ 3\n"
                   "3. Dots black; ventrals 172-184\n"
                   "                      lineata punctata (p. 69)\n"
                   "Dots none ------------ collaris (p. 71)\n"),
            "1[1] Loreal present -> 2\n"
            "1[] Loreal absent -> Ausella gracilis (p. 77)\n"
            "2[2] Three stripes, the median one scale wide -> Ausella lineata lineata (p. 66)\n"
            "2[] No stripes -> 3\n"
            "3[3] Dots black; ventrals 172-184 -> Ausella lineata punctata (p. 69)\n"
            "3[] Dots none -> Ausella collaris (p. 71)\n");
}

TEST(PrintedPagedEnds, PagesBehindCommasEndSentences) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n\n"
             "1a. Front produced. Both claws alike meridiana, p. 353.\n"
             "1b. Front even. Right claw the larger\n2\n"
             "2a. Regions deep. Color red, the fingers black sculpta, p. 356.\n"
             "2b. Regions flat. Palp with its angle round 3\n"
             "3a. Legs with a lobe. Color yellow, the fingers brown sulcifera, p. 358 .\n"
             "3b. Legs plain. Fingers meeting in both sexes planulata, p. 362.\n"),
      "1[1a] Front produced. Both claws alike -> Ausella meridiana (p. 353.)\n"
      "1[1b] Front even. Right claw the larger -> 2\n"
      "2[2a] Regions deep. Color red, the fingers black -> Ausella sculpta (p. 356.)\n"
      "2[2b] Regions flat. Palp with its angle round -> 3\n"
      "3[3a] Legs with a lobe. Color yellow, the fingers brown -> Ausella sulcifera (p. 358 .)\n"
      "3[3b] Legs plain. Fingers meeting in both sexes -> Ausella planulata (p. 362.)\n");
}

}  // namespace
}  // namespace keydrift
