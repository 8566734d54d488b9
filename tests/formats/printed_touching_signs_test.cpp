// Signs that a scan set too close to a word or too far from it.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTouchingSigns, InitialsTouchEpithets) {
  EXPECT_EQ(sketch("Key to the species of Pelodomys\n"
                   "\n"
                   "1. Feet white ... 2\n"
                   "1'. Feet brown 13. P.fuscipes, Roe.\n"
                   "2. Incisors white 14. P. leucodon, Roe.\n"
                   "2'. Incisors red ... 3\n"
                   "3. Tail long 15. P. albipes, Roe.\n"
                   "3'. Tail short ... 4\n"
                   "4. Ears long 16. P'. auritus, Roe.\n"
                   "4'. Ears short 17. P. nudus, Roe.\n"),
            "1[1] Feet white -> 2\n"
            "1[1'] Feet brown -> Pelodomys fuscipes\n"
            "2[2] Incisors white -> Pelodomys leucodon\n"
            "2[2'] Incisors red -> 3\n"
            "3[3] Tail long -> Pelodomys albipes\n"
            "3[3'] Tail short -> 4\n"
            "4[4] Ears long -> Pelodomys auritus\n"
            "4[4'] Ears short -> Pelodomys nudus\n");
}

TEST(PrintedTouchingSigns, CommasAndStopsStandApart) {
  EXPECT_EQ(sketch("Key to the species of Ausella.\n"
                   "\n"
                   "a. Club longer than the\n"
                   "footstalk, black mortlakei , sp. n., p. 212.\n"
                   "b. Club not longer . . . c.\n"
                   "c. Pedicels bent, black busa, Roe, p. 213.\n"
                   "c. Pedicels straight . . . d.\n"
                   "d . Silicles hairy, red cusa, Roe, p. 214.\n"
                   "d. Silicles bald, red dusa, Roe, p. 215.\n"),
            "a[a] Club longer than the footstalk, black -> Ausella mortlakei (sp. n., p. 212.)\n"
            "b[b] Club not longer -> c\n"
            "c[c] Pedicels bent, black -> Ausella busa (Roe, p. 213.)\n"
            "c[c] Pedicels straight -> d\n"
            "d[d] Silicles hairy, red -> Ausella cusa (Roe, p. 214.)\n"
            "d[d] Silicles bald, red -> Ausella dusa (Roe, p. 215.)\n");
}

TEST(PrintedTouchingSigns, NumbersTouchWhatIsLeftOfLeaders) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Stipe smooth ... 2\n"
                   "1. Stipe rough ... 3\n"
                   "2. Stipe pruinose at apex only .6\n"
                   "2. Stipe pruinose throughout ... 4\n"
                   "3. Tegmina hyaline, some veins darkened -5\n"
                   "3. Tegmina infuscate ... A. cusa\n"
                   "4. Cap red ... A. dusa\n"
                   "4. Cap blue ... A. fusa\n"
                   "5. Cap green ... A. gusa\n"
                   "5. Cap white ... A. husa\n"
                   "6. Gills free ... A. jusa\n"
                   "6. Gills fixed ... A. kusa\n"),
            "1[1] Stipe smooth -> 2\n"
            "1[1] Stipe rough -> 3\n"
            "2[2] Stipe pruinose at apex only -> 6\n"
            "2[2] Stipe pruinose throughout -> 4\n"
            "3[3] Tegmina hyaline, some veins darkened -> 5\n"
            "3[3] Tegmina infuscate -> Ausella cusa\n"
            "4[4] Cap red -> Ausella dusa\n"
            "4[4] Cap blue -> Ausella fusa\n"
            "5[5] Cap green -> Ausella gusa\n"
            "5[5] Cap white -> Ausella husa\n"
            "6[6] Gills free -> Ausella jusa\n"
            "6[6] Gills fixed -> Ausella kusa\n");
}

}  // namespace
}  // namespace keydrift
