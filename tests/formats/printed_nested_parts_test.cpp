// Files of several keys of which one is nested.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNestedParts, OneKeyIsNestedAndTheOthersAreNot) {
  EXPECT_EQ(sketch("Key A\n"
                   "\n"
                   "1. Shell with a lid ..... 2\n"
                   "1'. Shell without a lid ..... 4\n"
                   "2. Lid hard ..... Ausella\n"
                   "2'. Lid soft ..... 3\n"
                   "3. Shell flat ..... Busella\n"
                   "3'. Shell high ..... Gusella\n"
                   "4. Shell a cap ..... Husella\n"
                   "4'. Shell coiled ..... 5\n"
                   "5. Shell left-handed ..... Lusella\n"
                   "5'. Shell flat ..... Key B\n"
                   "\n"
                   "Key B\n"
                   "\n"
                   "1a. Whorls with lamellae ..... Cusella lamellata\n"
                   "1b. Whorls without lamellae\n"
                   "2a. Whorl keeled\n"
                   "3a. Keel in the middle ..... Dusella media\n"
                   "3b. Keel below ..... Dusella basis\n"
                   "2b. Whorl not keeled\n"
                   "4a. Surface hairy ..... Fusella hirta\n"
                   "4b. Surface smooth ..... Fusella glabra\n"),
            "1[1] Shell with a lid -> 2\n"
            "1[1'] Shell without a lid -> 4\n"
            "2[2] Lid hard -> Ausella\n"
            "2[2'] Lid soft -> 3\n"
            "3[3] Shell flat -> Busella\n"
            "3[3'] Shell high -> Gusella\n"
            "4[4] Shell a cap -> Husella\n"
            "4[4'] Shell coiled -> 5\n"
            "5[5] Shell left-handed -> Lusella\n"
            "5[5'] Shell flat -> key: Key B\n"
            "1[1a] Whorls with lamellae -> Cusella lamellata\n"
            "1[1b] Whorls without lamellae -> 2\n"
            "2[2a] Whorl keeled -> 3\n"
            "2[2b] Whorl not keeled -> 4\n"
            "3[3a] Keel in the middle -> Dusella media\n"
            "3[3b] Keel below -> Dusella basis\n"
            "4[4a] Surface hairy -> Fusella hirta\n"
            "4[4b] Surface smooth -> Fusella glabra\n");
}

}  // namespace
}  // namespace keydrift
