// Names that stand before the leaders to a page.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNamesBeforePages, BareNumbersArePagesWhereLettersCount) {
  EXPECT_EQ(
      sketch("A. Scars opposite.\n"
             "B. Scars three at a node, round, large\n"
             "Trumpet Oak, Catalparia speciosa  . . . . . . . . . . .  118\n"
             "BB. Scars two at a node, often winged\n"
             "Square Ashling, Fraxinopsis quadrata  . . . . . . . . . . . . . .  114\n"
             "AA. Scars alternate.\n"
             "B. Buds clustered\n"
             "Oaklings, see Key to the Oaklings  . . . . . . . . . . . .  76\n"
             "BB. Buds not clustered\n"
             "Canoe Birchling, Betulopsis papyracea  . . . . . . . . . .  70\n"),
      "1[A] Scars opposite. -> 2\n"
      "1[AA] Scars alternate. -> 3\n"
      "2[B] Scars three at a node, round, large -> Catalparia speciosa (Trumpet Oak; 118)\n"
      "2[BB] Scars two at a node, often winged -> Fraxinopsis quadrata (Square Ashling; 114)\n"
      "3[B] Buds clustered -> key: Key to the Oaklings (Oaklings; 76)\n"
      "3[BB] Buds not clustered -> Betulopsis papyracea (Canoe Birchling; 70)\n");
}

}  // namespace
}  // namespace keydrift
