// Common names before the Latin ones that leads lead to.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedCommonNames, LatinWordsBeforeBracketsWhereThatIsTheRule) {
  EXPECT_EQ(sketch("1a. Claw present. Cave Bat (Ausella busa)\n"
                   "1b. Claw absent. Go to 2\n"
                   "2a. Nose plain. Banana Bat (Bananella nana)\n"
                   "2b. Nose with a leaf. Go to 3\n"
                   "3a. Tail long. House Bat (Ausella cusa)\n"
                   "3b. Tail short. Go to 4\n"
                   "4a. Belly white. Green Bat (Ausella dusa)\n"
                   "4b. Belly yellow. Yellow Bat (Ausella fusa)\n"),
            "1[1a] Claw present. -> Ausella busa (Cave Bat)\n"
            "1[1b] Claw absent. -> 2\n"
            "2[2a] Nose plain. -> Bananella nana (Banana Bat)\n"
            "2[2b] Nose with a leaf. -> 3\n"
            "3[3a] Tail long. -> Ausella cusa (House Bat)\n"
            "3[3b] Tail short. -> 4\n"
            "4[4a] Belly white. -> Ausella dusa (Green Bat)\n"
            "4[4b] Belly yellow. -> Ausella fusa (Yellow Bat)\n");
}

TEST(PrintedCommonNames, EpithetsInBracketsMayStandOnTheNextLine) {
  EXPECT_EQ(
      sketch(
          "Section B. Fruit bats\n"
          "\n"
          "1a. Ears with white tufts. Greater Epauletted Bat (Humerops major)\n"
          "1b. Ears plain; palate with seven to nine thin ridges. Dwarf Epauletted Bat (Humerops\n"
          "pusillus)\n"
          "\n"
          "\n"
          "                                                                                  9\n"
          "\n"
          "A field key to the bats of the highlands\n"
          "\n"
          "\n"
          "Section C. Horseshoe bats\n"
          "\n"
          "1a. Forearm more than 60. Giant Horseshoe Bat (Rhinocrista gigas)\n"
          "1b. Forearm less than 58. Lobed Horseshoe Bat\n"
          "(Rhinocrista lobata)\n"),
      "1[1a] Ears with white tufts. Greater Epauletted Bat -> Humerops major\n"
      "1[1b] Ears plain; palate with seven to nine thin ridges. Dwarf Epauletted Bat -> Humerops "
      "pusillus\n"
      "1[1a] Forearm more than 60. Giant Horseshoe Bat -> Rhinocrista gigas\n"
      "1[1b] Forearm less than 58. Lobed Horseshoe Bat -> Rhinocrista lobata\n");
}

}  // namespace
}  // namespace keydrift
