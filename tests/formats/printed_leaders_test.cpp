// Dots and dashes before what a lead leads to.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLeaders, DotsThatTouchAnEpithetBehindAFullStop) {
  EXPECT_EQ(sketch("Genus AUSELLA.\n"
                   "\n"
                   "1. Legs red............... 2\n"
                   "\n"
                   "Legs black.......... 3\n"
                   "\n"
                   "2. Head wide.........busa\n"
                   "\n"
                   "Head narrow, tarsi forming two fingers, fig. 398. .bifurca\n"
                   "\n"
                   "3. Wings clear.......... cusa\n"
                   "\n"
                   "Wings dusky, fig. 4..dusa\n"),
            "1[1] Legs red -> 2\n"
            "1[] Legs black -> 3\n"
            "2[2] Head wide -> Ausella busa\n"
            "2[] Head narrow, tarsi forming two fingers, fig. 398. -> Ausella bifurca\n"
            "3[3] Wings clear -> Ausella cusa\n"
            "3[] Wings dusky, fig. 4 -> Ausella dusa\n");
}

TEST(PrintedLeaders, DashesWithinARemarkLeadNowhere) {
  EXPECT_EQ(sketch("Key to larvae\n\n"
                   "1. Gills long — go to 2\n1. Gills none — go to 3\n"
                   "2. Jaws large — Corydalopidae (marsh flies – they bite!)\n"
                   "2. Jaws small — Psephenellidae (water pennies)\n"
                   "3. Legs long – on two pairs – and hairy — Baetopidae (swimmers)\n"
                   "3. Legs short — Caenellidae (crawlers)\n"),
            "1[1] Gills long -> 2\n1[1] Gills none -> 3\n"
            "2[2] Jaws large -> Corydalopidae (marsh flies – they bite!)\n"
            "2[2] Jaws small -> Psephenellidae (water pennies)\n"
            "3[3] Legs long – on two pairs – and hairy -> Baetopidae (swimmers)\n"
            "3[3] Legs short -> Caenellidae (crawlers)\n");
}

TEST(PrintedLeaders, ANumberBeforeADashIsOfTheName) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Ausella\n"
                   "\n"
                   "1. Feuilles glauques. 2017. — A. glauca Roe.\n"
                   "— Feuilles vertes 2.\n"
                   "2. Tige simple . . . . 2018. — A. simplex Roe.\n"
                   "— Tige rameuse. 2019. — A. ramosa Roe.\n"),
            "1[1] Feuilles glauques. -> Ausella glauca\n"
            "1[—] Feuilles vertes -> 2\n"
            "2[2] Tige simple -> Ausella simplex\n"
            "2[—] Tige rameuse. -> Ausella ramosa\n");
}

TEST(PrintedLeaders, TwoDotsStandBetweenABracketAndANumber) {
  EXPECT_EQ(sketch("Key to females of Arvadesma\n"
                   "\n"
                   "1. Epigynum with median septum (Figs. 30, 33, 36)..2\n"
                   "Epigynum without median septum, atrium single ..3\n"
                   "2(1). Septum T-shaped ......A. cinctum (Bowenby)\n"
                   "Septum I-shaped ..........A. ochre new species\n"
                   "3(1). Atrium as wide as long .....A. parvum (Bowenby)\n"
                   "Atrium twice as wide .......A. robustum Colvey\n"),
            "1[1] Epigynum with median septum (Figs. 30, 33, 36) -> 2\n"
            "1[] Epigynum without median septum, atrium single -> 3\n"
            "2[2] Septum T-shaped -> Arvadesma cinctum\n"
            "2[] Septum I-shaped -> Arvadesma ochre (new species)\n"
            "3[3] Atrium as wide as long -> Arvadesma parvum\n"
            "3[] Atrium twice as wide -> Arvadesma robustum\n");
}

}  // namespace
}  // namespace keydrift
