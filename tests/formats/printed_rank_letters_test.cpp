// Outlines whose letters tell the depth and whose raised signs were misread.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedRankLetters, DamagedSignsBehindLettersThatTellTheDepth) {
  EXPECT_EQ(sketch("A'. Carapace broad.\n"
                   "B'. Front with four lobes.\n"
                   "C. Carapace covered with tubercles.\n"
                   "D'. Tubercles pearly ..... ornata\n"
                   "D-. Tubercles dull ..... obscura\n"
                   "C^. Carapace smooth.\n"
                   "D'. Fingers black ..... nigra\n"
                   "D^. Fingers white ..... alba\n"
                   "B\"- Front with two lobes.\n"
                   "C Notch deep, narrow ..... bifida\n"
                   "C\". Notch a shallow bay ..... hirta\n"
                   "A^. Carapace long.\n"
                   "B'. Orbit with two fissures ..... quadrata\n"
                   "B^. Orbit without fissures ..... integra\n"),
            "1[A'.] Carapace broad. -> 2\n"
            "1[A^.] Carapace long. -> 7\n"
            "2[B'.] Front with four lobes. -> 3\n"
            "2[B\"-] Front with two lobes. -> 6\n"
            "3[C.] Carapace covered with tubercles. -> 4\n"
            "3[C^.] Carapace smooth. -> 5\n"
            "4[D'.] Tubercles pearly -> ornata\n"
            "4[D-.] Tubercles dull -> obscura\n"
            "5[D'.] Fingers black -> nigra\n"
            "5[D^.] Fingers white -> alba\n"
            "6[C] Notch deep, narrow -> bifida\n"
            "6[C\".] Notch a shallow bay -> hirta\n"
            "7[B'.] Orbit with two fissures -> quadrata\n"
            "7[B^.] Orbit without fissures -> integra\n");
}

}  // namespace
}  // namespace keydrift
