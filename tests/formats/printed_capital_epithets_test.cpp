// Epithets that are printed with a capital, or in capitals.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedCapitalEpithets, NumbersInFrontCountSpecies) {
  EXPECT_EQ(sketch("KEY TO TAMARACK SPECIES OF LAMPRODES.\n"
                   "\n"
                   "a. Elytra with punctures.\n"
                   "b. Legs pale. 1088. aerarius.\n"
                   "bb. Legs black. 1089. cupripennis.\n"
                   "aa. Elytra smooth.\n"
                   "c. Thorax wide. 1090. POLITUS.\n"
                   "cc. Thorax narrow.\n"
                   "d. Antennae long, joints slender, twice or more as long as wide and\n"
                   "hairy. 1091. LONGICORNIS.\n"
                   "dd. Antennae short. 1092. subaeneus.\n"),
            "a[a] Elytra with punctures. -> b\n"
            "a[aa] Elytra smooth. -> c\n"
            "b[b] Legs pale. -> Lamprodes aerarius\n"
            "b[bb] Legs black. -> Lamprodes cupripennis\n"
            "c[c] Thorax wide. -> Lamprodes politus\n"
            "c[cc] Thorax narrow. -> d\n"
            "d[d] Antennae long, joints slender, twice or more as long as wide and hairy. -> "
            "Lamprodes longicornis\n"
            "d[dd] Antennae short. -> Lamprodes subaeneus\n");
}

}  // namespace
}  // namespace keydrift
