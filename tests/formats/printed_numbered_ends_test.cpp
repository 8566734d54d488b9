// Ends with the numbers of their species, which count up.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNumberedEnds, ANumberedEpithetAloneIsNoCoupletWhereTheNumbersCountOn) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Ausella\n"
                   "\n"
                   "1. Pronotum lisse. . . 2.\n"
                   "— Pronotum ponctué. . . 4.\n"
                   "2. Tête lisse. Long. 2 mm . . 1. busa Roe\n"
                   "— Tête ponctuée. . . 3.\n"
                   "3. Élytres à taches rouges. Long. 2 mm . . 2. cusa Roe\n"
                   "— Élytres unicolores. Long. 1,5 mm.\n"
                   "3. Gerardini Dorn\n"
                   "4. Pattes rousses. Long. 1,8 mm . . 4. dusa Dorn\n"
                   "— Pattes noires, les tarses seuls roux. Long. 1,5 mm.\n"
                   "5. opaca Roe\n"),
            "1[1] Pronotum lisse -> 2\n"
            "1[—] Pronotum ponctué -> 4\n"
            "2[2] Tête lisse. Long. 2 mm -> Ausella busa\n"
            "2[—] Tête ponctuée -> 3\n"
            "3[3] Élytres à taches rouges. Long. 2 mm -> Ausella cusa\n"
            "3[—] Élytres unicolores. Long. 1,5 mm. -> Ausella gerardini\n"
            "4[4] Pattes rousses. Long. 1,8 mm -> Ausella dusa\n"
            "4[—] Pattes noires, les tarses seuls roux. Long. 1,5 mm. -> Ausella opaca\n");
}

TEST(PrintedNumberedEnds, GeneraBehindABlankCountOn) {
  EXPECT_EQ(sketch("Übersicht der Gattungen der Ausaceen\n"
                   "\n"
                   "A. Frucht eine Kapsel.\n"
                   "a. Samen geflügelt.\n"
                   "I. Staubblätter vor den Blättern 1. Ausella.\n"
                   "II. Staubblätter zwischen ihnen . . . . 2. Busella.\n"
                   "b. Samen ohne Flügel.\n"
                   "I. Staubblätter 10, in 2 Kreisen 3. Cusella.\n"
                   "II. Staubblätter 5 . . . . 4. Dusella.\n"
                   "B. Frucht eine Beere.\n"
                   "a. Beere mit vielen Samen 5. Fusella.\n"
                   "b. Beere mit einem Samen . . . . 6. Gusella.\n"),
            "1[A] Frucht eine Kapsel. -> 2\n"
            "1[B] Frucht eine Beere. -> 5\n"
            "2[a] Samen geflügelt. -> 3\n"
            "2[b] Samen ohne Flügel. -> 4\n"
            "3[I] Staubblätter vor den Blättern -> Ausella\n"
            "3[II] Staubblätter zwischen ihnen -> Busella\n"
            "4[I] Staubblätter 10, in 2 Kreisen -> Cusella\n"
            "4[II] Staubblätter 5 -> Dusella\n"
            "5[a] Beere mit vielen Samen -> Fusella\n"
            "5[b] Beere mit einem Samen -> Gusella\n");
}

TEST(PrintedNumberedEnds, AListOfSpeciesBehindTheKeyIsNone) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear ... 2\n"
                   "— Wings smoky ... 3\n"
                   "2. Legs red ... A. busa\n"
                   "— Legs black ... A. cusa\n"
                   "3. Head smooth ... A. dusa\n"
                   "— Head pitted ... A. fusa\n"
                   "\n"
                   "1. busa Roe. In fens.\n"
                   "2. cusa Roe. In bogs.\n"
                   "3. dusa Dorn. On heaths.\n"),
            "1[1] Wings clear -> 2\n"
            "1[—] Wings smoky -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[—] Legs black -> Ausella cusa\n"
            "3[3] Head smooth -> Ausella dusa\n"
            "3[—] Head pitted -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
