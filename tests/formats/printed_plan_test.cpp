// Which lines begin leads, where labels or places tell their depth.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedPlan, TwoWordsLikeThoseOfTheRivalAreNoName) {
  EXPECT_EQ(sketch("1. Thallus foliose; lower surface with rhizines\n"
                   "   2. Rhizines simple ........................... Ostrella\n"
                   "   2. Rhizines branched ......................... Pellaria\n"
                   "1. Thallus fruticose or crustose; rhizines absent\n"
                   "   7. Thallus fruticose, erect to pendent\n"
                   "      8. Cord present, elastic ........................ Chordella\n"
                   "      8. Cord absent .................................. Planoramus\n"
                   "   7. Thallus crustose\n"
                   "      10. Ascospores brown ......................... Fuscospora\n"
                   "      10. Ascospores hyaline .......................... Virida\n"),
            "1[1] Thallus foliose; lower surface with rhizines -> 2\n"
            "1[1] Thallus fruticose or crustose; rhizines absent -> 7\n"
            "2[2] Rhizines simple -> Ostrella\n"
            "2[2] Rhizines branched -> Pellaria\n"
            "7[7] Thallus fruticose, erect to pendent -> 8\n"
            "7[7] Thallus crustose -> 10\n"
            "8[8] Cord present, elastic -> Chordella\n"
            "8[8] Cord absent -> Planoramus\n"
            "10[10] Ascospores brown -> Fuscospora\n"
            "10[10] Ascospores hyaline -> Virida\n");
}

}  // namespace
}  // namespace keydrift
