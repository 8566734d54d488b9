// Ordinary keys that look, at some place, like what the mends for damaged ones look for.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedUnharmed, GroupsReachedFromSeveralLeads) {
  EXPECT_EQ(sketch("1 Body hairless ........ 2\n"
                   "– Body hairy ........ 4\n"
                   "2 Tail forked ........ Ausella (5)\n"
                   "– Tail entire ........ 3\n"
                   "3 Eyes red ........ Busella (6)\n"
                   "– Eyes black ........ Ausella (5)\n"
                   "4 Horn long ........ Busella (6)\n"
                   "– Horn short ........ Dusella fusa\n"
                   "5 Wings clear ........ Ausella busa\n"
                   "– Wings dark ........ Ausella cusa\n"
                   "6 Legs red ........ Busella gusa\n"
                   "– Legs black ........ Busella husa\n"),
            "1[1] Body hairless -> 2\n"
            "1[–] Body hairy -> 4\n"
            "2[2] Tail forked -> 5 (Ausella)\n"
            "2[–] Tail entire -> 3\n"
            "3[3] Eyes red -> 6 (Busella)\n"
            "3[–] Eyes black -> 5 (Ausella)\n"
            "4[4] Horn long -> 6 (Busella)\n"
            "4[–] Horn short -> Dusella fusa\n"
            "5[5] Wings clear -> Ausella busa\n"
            "5[–] Wings dark -> Ausella cusa\n"
            "6[6] Legs red -> Busella gusa\n"
            "6[–] Legs black -> Busella husa\n");
}

TEST(PrintedUnharmed, FootnotesThatTouchNames) {
  EXPECT_EQ(sketch("1 Leaves hairy ........ 2\n"
                   "– Leaves bald ........ 3\n"
                   "2 Stem round ........ Ausella busa1\n"
                   "– Stem square ........ Ausella cusa2\n"
                   "3 Petals red ........ Ausella dusa3\n"
                   "– Petals white ........ Ausella fusa2\n"),
            "1[1] Leaves hairy -> 2\n"
            "1[–] Leaves bald -> 3\n"
            "2[2] Stem round -> Ausella busa (1)\n"
            "2[–] Stem square -> Ausella cusa (2)\n"
            "3[3] Petals red -> Ausella dusa (3)\n"
            "3[–] Petals white -> Ausella fusa (2)\n");
}

TEST(PrintedUnharmed, AuthorsWithoutABlank) {
  EXPECT_EQ(sketch("1. Leaves hairy ........ 2\n"
                   "– Leaves bald ........ 3\n"
                   "2. Stem round ........ Ausella busa (L.)Roe subsp. busa\n"
                   "– Stem square ........ Ausella busa (L.)Roe subsp. cusa\n"
                   "3. Petals red ........ Ausella dusa (L.)Roe var. dusa\n"
                   "– Petals white ........ Ausella dusa (L.)Roe var. fusa\n"),
            "1[1] Leaves hairy -> 2\n"
            "1[–] Leaves bald -> 3\n"
            "2[2] Stem round -> Ausella busa subsp. busa\n"
            "2[–] Stem square -> Ausella busa subsp. cusa\n"
            "3[3] Petals red -> Ausella dusa var. dusa\n"
            "3[–] Petals white -> Ausella dusa var. fusa\n");
}

TEST(PrintedUnharmed, AFirstLeadOfOneWordInCapitals) {
  EXPECT_EQ(sketch("1. TREES.\n"
                   "   2. Leaves opposite ........ Ausella busa\n"
                   "   2. Leaves alternate ........ Ausella cusa\n"
                   "1. SHRUBS.\n"
                   "   3. Petals red ........ Ausella dusa\n"
                   "   3. Petals white ........ Ausella fusa\n"
                   "1. HERBS.\n"
                   "   4. Fruit dry ........ Ausella gusa\n"
                   "   4. Fruit fleshy ........ Ausella husa\n"),
            "1[1] TREES. -> 2\n"
            "1[1] SHRUBS. -> 3\n"
            "1[1] HERBS. -> 4\n"
            "2[2] Leaves opposite -> Ausella busa\n"
            "2[2] Leaves alternate -> Ausella cusa\n"
            "3[3] Petals red -> Ausella dusa\n"
            "3[3] Petals white -> Ausella fusa\n"
            "4[4] Fruit dry -> Ausella gusa\n"
            "4[4] Fruit fleshy -> Ausella husa\n");
}

TEST(PrintedUnharmed, ALengthAtTheEndOfALineInCapitals) {
  EXPECT_EQ(sketch("1. LEAVES HAIRY; PLANTS OF THE COAST, NEVER SEEN ABOVE\n"
                   "MARSH LEVEL AT AN ALTITUDE OF 900\n"
                   "M ........ 2\n"
                   "– LEAVES BALD; PLANTS OF THE HILLS ........ AUSELLA BUSA\n"
                   "2. STEM ROUND ........ AUSELLA CUSA\n"
                   "– STEM SQUARE ........ AUSELLA DUSA\n"),
            "1[1] LEAVES HAIRY; PLANTS OF THE COAST, NEVER SEEN ABOVE MARSH LEVEL AT AN ALTITUDE "
            "OF 900 M -> 2\n"
            "1[–] LEAVES BALD; PLANTS OF THE HILLS -> Ausella busa\n"
            "2[2] STEM ROUND -> Ausella cusa\n"
            "2[–] STEM SQUARE -> Ausella dusa\n");
}

TEST(PrintedUnharmed, AShortLineInADoubleSpacedKey) {
  EXPECT_EQ(
      sketch("1 Wings clear; known only from the valleys of the\n\n"
             "Upper Ausel\n\n"
             "and hills near it ........ 2\n\n"
             "– Wings dark ........ Ausella busa\n\n"
             "2 Legs red ........ Ausella cusa\n\n"
             "– Legs black ........ Ausella dusa\n"),
      "1[1] Wings clear; known only from the valleys of the Upper Ausel and hills near it -> 2\n"
      "1[–] Wings dark -> Ausella busa\n"
      "2[2] Legs red -> Ausella cusa\n"
      "2[–] Legs black -> Ausella dusa\n");
}

TEST(PrintedUnharmed, LettersOfAFigure) {
  EXPECT_EQ(sketch("1 Wings clear (Fig. 2 a c e g i) ........ 2\n"
                   "– Wings dark (Fig. 2 b d f h k) ........ Ausella busa\n"
                   "2 Fore tibia with setae p q r t v present ........ Ausella cusa\n"
                   "– Fore tibia with setae p q r t v absent ........ Ausella dusa\n"),
            "1[1] Wings clear (Fig. 2 a c e g i) -> 2\n"
            "1[–] Wings dark (Fig. 2 b d f h k) -> Ausella busa\n"
            "2[2] Fore tibia with setae p q r t v present -> Ausella cusa\n"
            "2[–] Fore tibia with setae p q r t v absent -> Ausella dusa\n");
}

TEST(PrintedUnharmed, AnArticleBetweenGreekLabels) {
  EXPECT_EQ(sketch("A Stem hairy\n"
                   " α Leaves round ........ Ausella busa\n"
                   "   a rare plant of dunes\n"
                   " β Leaves long ........ Ausella cusa\n"
                   "B Stem bald\n"
                   " α Petals red ........ Ausella dusa\n"
                   "   a weed of fields\n"
                   " β Petals white ........ Ausella fusa\n"),
            "1[A] Stem hairy -> 2\n"
            "1[B] Stem bald -> 3\n"
            "2[α] Leaves round -> Ausella busa (a rare plant of dunes)\n"
            "2[β] Leaves long -> Ausella cusa\n"
            "3[α] Petals red -> Ausella dusa (a weed of fields)\n"
            "3[β] Petals white -> Ausella fusa\n");
}

TEST(PrintedUnharmed, AQuotationBetweenGreekLabels) {
  EXPECT_EQ(sketch("A. Tige velue\n"
                   "   α Feuilles entières ........ Ausella busa\n"
                   "   « Petite buse » des jardiniers.\n"
                   "   β Feuilles lobées ........ Ausella cusa\n"
                   "B. Tige glabre\n"
                   "   α Pétales rouges ........ Ausella dusa\n"
                   "   β Pétales blancs ........ Ausella fusa\n"),
            "1[A] Tige velue -> 2\n"
            "1[B] Tige glabre -> 3\n"
            "2[α] Feuilles entières -> Ausella busa\n"
            "2[β] Feuilles lobées -> Ausella cusa\n"
            "3[α] Pétales rouges -> Ausella dusa\n"
            "3[β] Pétales blancs -> Ausella fusa\n");
}

TEST(PrintedUnharmed, OneSpeciesBeforeAClause) {
  EXPECT_EQ(sketch("1 Body hairy ........ 2\n"
                   "– Body bald ........ Ausella busa\n"
                   "2 Legs red ........ Busella dusa\n"
                   "– Legs black ........ Cusella, one species, C. gusa, with 3 forms\n"),
            "1[1] Body hairy -> 2\n"
            "1[–] Body bald -> Ausella busa\n"
            "2[2] Legs red -> Busella dusa\n"
            "2[–] Legs black -> Cusella gusa (Cusella, one species; with 3 forms)\n");
}

}  // namespace
}  // namespace keydrift
