// Destinations that stand behind several leads, as a column of their own.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedDestinationColumn, OfTwoNamesBehindALine) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Legs red ..... 2\n"
                   "– Legs black ..... 3\n"
                   "2. Head red ..... Ausella busa Roe\n"
                   "– Head black ..... Ausella cusa Roe\n"
                   "3. Tail long ..... Ausella dusa Roe\n"
                   "– Tail short ..... 4\n"
                   "4. Wings papery, with one vein\n"
                   "– Wings leathery, with 2-3 veins . .\n"
                   "\n"
                   "13. A. fusa\n"
                   "14. A. gusa\n"),
            "1[1] Legs red -> 2\n"
            "1[–] Legs black -> 3\n"
            "2[2] Head red -> Ausella busa\n"
            "2[–] Head black -> Ausella cusa\n"
            "3[3] Tail long -> Ausella dusa\n"
            "3[–] Tail short -> 4\n"
            "4[4] Wings papery, with one vein -> Ausella fusa\n"
            "4[–] Wings leathery, with 2-3 veins -> Ausella gusa\n");
}

TEST(PrintedDestinationColumn, BehindLeadsThatBearLetters) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "A. Elytra with tubercles.\n"
                   "B. Thorax wide ... ... granosa, Harte.\n"
                   "BB. Thorax narrow.\n"
                   "C. Surface nitid ... ... angulata, Wexc.\n"
                   "CC. Surface opaque ... ... sordida, Harte.\n"
                   "AA. Elytra without tubercles.\n"
                   "B. Elytra of uniform colour ... ... ...\n"
                   "BB. Elytra with a pale vitta ... ...\n"
                   "foveata, Harte.\n"
                   "vittula, sp. nov.\n"),
            "1[A] Elytra with tubercles. -> 2\n"
            "1[AA] Elytra without tubercles. -> 4\n"
            "2[B] Thorax wide -> Ausella granosa\n"
            "2[BB] Thorax narrow. -> 3\n"
            "3[C] Surface nitid -> Ausella angulata\n"
            "3[CC] Surface opaque -> Ausella sordida\n"
            "4[B] Elytra of uniform colour -> Ausella foveata\n"
            "4[BB] Elytra with a pale vitta -> Ausella vittula (sp. nov.)\n");
}

TEST(PrintedDestinationColumn, TwoNumbersBehindBothLeadsAmongBlankLines) {
  EXPECT_EQ(sketch("Tabel voor de soorten van het geslacht Hydrolestes\n"
                   "\n"
                   "1a. Dekschilden zonder stippelrijen, of alleen met een naadrij 2\n"
                   "\n"
                   "b. Dekschilden met duidelijke stippelrijen of groeven 6\n"
                   "\n"
                   "2a. Onderzijde geheel geelrood ovatus Lamb.\n"
                   "\n"
                   "b. Onderzijde geheel of grotendeels zwart of bruin 3\n"
                   "\n"
                   "3a. Halsschild met een scherp ingedrukt streepje aan weerszijden van de\n"
                   "rand (fig. 3)\n"
                   "\n"
                   "b. Halsschild zonder basale streepjes\n"
                   "\n"
                   "4\n"
                   "\n"
                   "5\n"
                   "\n"
                   "4a. Dekschilden geel met donkere lengtelijnen bilineatus Zetz.\n"
                   "\n"
                   "b. Dekschilden eenkleurig bruin lineatus Zetz.\n"
                   "\n"
                   "5a. Zwart, sterk glanzend nigrita Lamb.\n"
                   "\n"
                   "b. Bruinzwart, mat door fijne netstructuur opacus Kerr.\n"
                   "\n"
                   "6a. Zwart, dof fulvus Lamb.\n"
                   "\n"
                   "b. Bruin, dof obliquus Lamb.\n"),
            "1[1a] Dekschilden zonder stippelrijen, of alleen met een naadrij -> 2\n"
            "1[b] Dekschilden met duidelijke stippelrijen of groeven -> 6\n"
            "2[2a] Onderzijde geheel geelrood -> Hydrolestes ovatus\n"
            "2[b] Onderzijde geheel of grotendeels zwart of bruin -> 3\n"
            "3[3a] Halsschild met een scherp ingedrukt streepje aan weerszijden van de rand (fig. "
            "3) -> 4\n"
            "3[b] Halsschild zonder basale streepjes -> 5\n"
            "4[4a] Dekschilden geel met donkere lengtelijnen -> Hydrolestes bilineatus\n"
            "4[b] Dekschilden eenkleurig bruin -> Hydrolestes lineatus\n"
            "5[5a] Zwart, sterk glanzend -> Hydrolestes nigrita\n"
            "5[b] Bruinzwart, mat door fijne netstructuur -> Hydrolestes opacus\n"
            "6[6a] Zwart, dof -> Hydrolestes fulvus\n"
            "6[b] Bruin, dof -> Hydrolestes obliquus\n");
}

TEST(PrintedDestinationColumn, ANumberOfAPageBehindOneIsNone) {
  EXPECT_EQ(sketch("Tabel voor de soorten van het geslacht Hydrolestes\n"
                   "\n"
                   "1a. Dekschilden zonder stippelrijen 2\n"
                   "\n"
                   "b. Dekschilden met stippelrijen 3\n"
                   "\n"
                   "2a. Onderzijde geheel geelrood ovatus Lamb.\n"
                   "\n"
                   "b. Onderzijde zwart of bruin rufus Lamb.\n"
                   "\n"
                   "15\n"
                   "\n"
                   "3a. Halsschild met een streepje\n"
                   "\n"
                   "4\n"
                   "\n"
                   "b. Halsschild zonder streepjes levis Lamb.\n"
                   "\n"
                   "4a. Dekschilden geel bilineatus Zetz.\n"
                   "\n"
                   "b. Dekschilden bruin lineatus Zetz.\n"),
            "1[1a] Dekschilden zonder stippelrijen -> 2\n"
            "1[b] Dekschilden met stippelrijen -> 3\n"
            "2[2a] Onderzijde geheel geelrood -> Hydrolestes ovatus\n"
            "2[b] Onderzijde zwart of bruin -> Hydrolestes rufus\n"
            "3[3a] Halsschild met een streepje -> 4\n"
            "3[b] Halsschild zonder streepjes -> Hydrolestes levis\n"
            "4[4a] Dekschilden geel -> Hydrolestes bilineatus\n"
            "4[b] Dekschilden bruin -> Hydrolestes lineatus\n");
}

}  // namespace
}  // namespace keydrift
