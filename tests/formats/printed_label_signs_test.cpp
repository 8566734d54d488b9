// Labels that scanning parted or whose signs it made others of.

#include <gtest/gtest.h>

#include <string>

#include "keydrift/formats/printed_label_signs.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLabelSigns, IndicesCloseUpWithTheirLetters) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "a 1 . Carapace with a spine on each side.\n"
                   "b 1 . Spine long, directed outward, more\n"
                   "than one-sixth of the width.\n"
                   "c 1 . Rostrum bifid. armata, p. 343.\n"
                   "c- . Rostrum simple. hastata, p. 344.\n"
                   "b 2. Spine short. gracilipes, p. 345.\n"
                   "a 2 . Carapace without a spine.\n"
                   "6 1 . Regions areolated. sculpta, p. 346.\n"
                   "6 2 . Regions smooth.\n"
                   "c l . Eyes visible from above. Both fingers alike laevis, p. 347.\n"
                   "c 2 . Eyes concealed. planulata, p. 348.\n"),
            "1[a1] Carapace with a spine on each side. -> 2\n"
            "1[a2] Carapace without a spine. -> 4\n"
            "2[b1] Spine long, directed outward, more than one-sixth of the width. -> 3\n"
            "2[b2] Spine short. -> Ausella gracilipes (p. 345.)\n"
            "3[c1] Rostrum bifid. -> Ausella armata (p. 343.)\n"
            "3[c2] Rostrum simple. -> Ausella hastata (p. 344.)\n"
            "4[b1] Regions areolated. -> Ausella sculpta (p. 346.)\n"
            "4[b2] Regions smooth. -> 5\n"
            "5[c1] Eyes visible from above. Both fingers alike -> Ausella laevis (p. 347.)\n"
            "5[c2] Eyes concealed. -> Ausella planulata (p. 348.)\n");
}

TEST(PrintedLabelSigns, FewerThanThreePairsStay) {
  std::string text = "a 1 . Wings\na 2 . Legs\nb 1 . Head\nb 2 . Tail\nc 1 . Eyes\n";
  auto const before = text;
  EXPECT_EQ(printed::close_indexed_labels(text), 0U);
  EXPECT_EQ(text, before);
  text += "c 2 . Palps\n";
  EXPECT_EQ(printed::close_indexed_labels(text), 6U);
  EXPECT_EQ(text, "a1. Wings  \na2. Legs  \nb1. Head  \nb2. Tail  \nc1. Eyes  \nc2. Palps  \n");
}

TEST(PrintedLabelSigns, SemicolonsStandForColonsOfOthers) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1 Petals 5\n"
                   "2 Sepals free; leaves entire 1. A. aurea\n"
                   "2: Sepals joined 2. A. busa\n"
                   "1: Petals 4\n"
                   "3 Stamens 10\n"
                   "4 Leaves rough 3. A. scabra\n"
                   "4; Leaves smooth 4. A. inclusa\n"
                   "3: Stamens 5 5. A. nana\n"),
            "1[1] Petals 5 -> 2\n"
            "1[1] Petals 4 -> 3\n"
            "2[2] Sepals free; leaves entire -> Ausella aurea\n"
            "2[2] Sepals joined -> Ausella busa\n"
            "3[3] Stamens 10 -> 4\n"
            "3[3] Stamens 5 -> Ausella nana\n"
            "4[4] Leaves rough -> Ausella scabra\n"
            "4[4] Leaves smooth -> Ausella inclusa\n");
}

TEST(PrintedLabelSigns, AsManySemicolonsAsColonsStay) {
  std::string text = "1 Wings\n1: Legs\n2 Head\n2; Tail\n3 Eyes\n3: Ears\n";
  EXPECT_EQ(printed::restore_colons_of_labels(text), 0U);
  text += "4 Tarsi\n4: Tibiae\n";
  EXPECT_EQ(printed::restore_colons_of_labels(text), 1U);
  EXPECT_EQ(text, "1 Wings\n1: Legs\n2 Head\n2: Tail\n3 Eyes\n3: Ears\n4 Tarsi\n4: Tibiae\n");
}

}  // namespace
}  // namespace keydrift
