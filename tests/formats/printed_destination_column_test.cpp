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

}  // namespace
}  // namespace keydrift
