// Lines of pages within leads: captions of figures.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedPageFurniture, CaptionsWithinLeadsMayEndInTheirScale) {
  EXPECT_EQ(sketch("1. Elytra with nine striae; pronotum with two foveae at base and with\n"
                   "Figures 12–15. Ausella busa, male genitalia. 12. Aedeagus, lateral view.\n"
                   "13. Same, dorsal view. 14. Paramere. 15. Spermatheca. Scale bars: 12 = 1 mm;\n"
                   "13–15 = 0.1 mm.\n"
                   "the hind angles acute ..... 2\n"
                   "– Elytra with ten striae ..... Ausella busa\n"
                   "2. Legs red ..... Ausella cusa\n"
                   "– Legs black ..... Ausella dusa\n"),
            "1[1] Elytra with nine striae; pronotum with two foveae at base and with the hind "
            "angles acute -> 2\n"
            "1[–] Elytra with ten striae -> Ausella busa\n"
            "2[2] Legs red -> Ausella cusa\n"
            "2[–] Legs black -> Ausella dusa\n");
}

TEST(PrintedPageFurniture, CaptionsPartLeadsOfIndentedKeysToo) {
  EXPECT_EQ(sketch("1. Elytra with nine striae\n"
                   "   2. Antennae longer than half of the body, their third joint as\n"
                   "Figures 16–17. Habitus of Ausella busa. Scale line = 1 mm.\n"
                   "      long as the fourth ..... Ausella busa\n"
                   "   2. Antennae shorter ..... Ausella cusa\n"
                   "1. Elytra with ten striae\n"
                   "   3. Legs red ..... Ausella dusa\n"
                   "   3. Legs black ..... Ausella fusa\n"),
            "1[1] Elytra with nine striae -> 2\n"
            "1[1] Elytra with ten striae -> 3\n"
            "2[2] Antennae longer than half of the body, their third joint as long as the fourth "
            "-> Ausella busa\n"
            "2[2] Antennae shorter -> Ausella cusa\n"
            "3[3] Legs red -> Ausella dusa\n"
            "3[3] Legs black -> Ausella fusa\n");
}

TEST(PrintedPageFurniture, ALineOfLeadersGoesOnWithTheLeadersAbove) {
  EXPECT_EQ(sketch("1   Fore wing clear; antenna with four joints (Fig.\n"
                   "3A) .................. 2\n"
                   "–   Fore wing dark .......... 3\n"
                   "2(1) Scutellum with median pit; body length\n"
                   "4.5–6.0 mm ....................\n"
                   "........................................\n"
                   "Ausella busa (Roe, 1911)\n"
                   "–   Scutellum without median pit ........... A. cusa\n"
                   "3(1) Legs red ........... A. dusa\n"
                   "–   Legs black ........... A. fusa\n"),
            "1[1] Fore wing clear; antenna with four joints (Fig. 3A) -> 2\n"
            "1[–] Fore wing dark -> 3\n"
            "2[2] Scutellum with median pit; body length 4.5–6.0 mm -> Ausella busa\n"
            "2[–] Scutellum without median pit -> Ausella cusa\n"
            "3[3] Legs red -> Ausella dusa\n"
            "3[–] Legs black -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
