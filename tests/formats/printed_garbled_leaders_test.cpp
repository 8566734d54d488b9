// Leaders that scanning made letters of.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedGarbledLeaders, RowsOfDotsComeOutAsLetters) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Cystidia capitate ........ 0. cece eee eee teens 2\n"
                   "1. Cystidia filamentose, not capitate ..................005. 3\n"
                   "2. Pileus umber; taste bitter .................. A. busa\n"
                   "2. Pileus yellowish; taste mild .............. ccc eee A. cusa\n"
                   "3. Stipe fragile, 1-4 mm. thick ............ ccc ee ee eee 4\n"
                   "3. Stipe fleshy, more than 5 mm. thick ..................20000- 5\n"
                   "4. Spores smooth ................ A. dusa\n"
                   "4. Spores punctate ............... A. fusa\n"
                   "5. Odor of radish ................ A. gusa\n"
                   "5. Odor none .... 1... ce eee ee eee A. lusa\n"),
            "1[1] Cystidia capitate -> 2\n"
            "1[1] Cystidia filamentose, not capitate -> 3\n"
            "2[2] Pileus umber; taste bitter -> Ausella busa\n"
            "2[2] Pileus yellowish; taste mild -> Ausella cusa\n"
            "3[3] Stipe fragile, 1-4 mm. thick -> 4\n"
            "3[3] Stipe fleshy, more than 5 mm. thick -> 5\n"
            "4[4] Spores smooth -> Ausella dusa\n"
            "4[4] Spores punctate -> Ausella fusa\n"
            "5[5] Odor of radish -> Ausella gusa\n"
            "5[5] Odor none -> Ausella lusa\n");
}

TEST(PrintedGarbledLeaders, WordsBeforeANumberAreNone) {
  EXPECT_EQ(sketch("1. Legs red ..... see 2\n"
                   "1. Legs black ..... to couplet 3\n"
                   "2. Head red ..... A. busa\n"
                   "2. Head black ..... A. cusa\n"
                   "3. Tail red ..... A. dusa\n"
                   "3. Tail black ..... A. fusa\n"),
            "1[1] Legs red -> 2\n"
            "1[1] Legs black -> 3\n"
            "2[2] Head red -> A. busa\n"
            "2[2] Head black -> A. cusa\n"
            "3[3] Tail red -> A. dusa\n"
            "3[3] Tail black -> A. fusa\n");
}

TEST(PrintedGarbledLeaders, ThreeDotsBeforeThem) {
  EXPECT_EQ(
      sketch(
          "Key to Ausella\n"
          "\n"
          "1. Rays of two sizes, the others barely visible with a\n"
          "lens... 2 eee ee cee cece eee c eect eee eeee 2\n"
          "1. Rays of one size, or grading imperceptibly.........cc cece cece eee ee eeeeeees 3\n"
          "2. Wood brown ..... A. busa\n"
          "2. Wood grey ..... A. cusa\n"
          "3. Wood soft ..... A. dusa\n"
          "3. Wood hard ..... A. fusa\n"),
      "1[1] Rays of two sizes, the others barely visible with a lens -> 2\n"
      "1[1] Rays of one size, or grading imperceptibly -> 3\n"
      "2[2] Wood brown -> Ausella busa\n"
      "2[2] Wood grey -> Ausella cusa\n"
      "3[3] Wood soft -> Ausella dusa\n"
      "3[3] Wood hard -> Ausella fusa\n");
}

TEST(PrintedGarbledLeaders, OneDotBehindAComma) {
  EXPECT_EQ(sketch("Key to the species of Notaphrix\n"
                   "\n"
                   "1. Femora reddish testaceous, .rufipes Roe (p. 13).\n"
                   "- Femora black ..... 2\n"
                   "2. Body green .... viridescens Dorn (p. 19).\n"
                   "- Body black with bronze reflections, .montana, new species (p. 20).\n"),
            "1[1] Femora reddish testaceous -> Notaphrix rufipes (p. 13)\n"
            "1[-] Femora black -> 2\n"
            "2[2] Body green -> Notaphrix viridescens (p. 19)\n"
            "2[-] Body black with bronze reflections -> Notaphrix montana (new species (p. 20))\n");
}

TEST(PrintedGarbledLeaders, BeforeANumberedEpithet) {
  EXPECT_EQ(
      sketch("TABLE OF SPECIES OF AUSELLA.\n"
             "\n"
             "1 (2) Scutellum white ; clypeus discreted by a\n"
             "deep furrow..... Dees ee eee ee 1. scutellaris, Roe.\n"
             "\n"
             "2 (1) Scutellum entirely yellow.\n"
             "\n"
             "3 (4) Wings hyaline ............ 2. flavonotata, Dorn.\n"
             "\n"
             "4 (3) Wings infumate ............ 3. fumipennis, Roe.\n"),
      "1[1] Scutellum white ; clypeus discreted by a deep furrow -> Ausella scutellaris (Roe.)\n"
      "1[2] Scutellum entirely yellow. -> 3\n"
      "3[3] Wings hyaline -> Ausella flavonotata (Dorn.)\n"
      "3[4] Wings infumate -> Ausella fumipennis (Roe.)\n");
}

}  // namespace
}  // namespace keydrift
