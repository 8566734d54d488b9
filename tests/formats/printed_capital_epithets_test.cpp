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

TEST(PrintedCapitalEpithets, SmallCapitalsAmongFewSmallLetters) {
  EXPECT_EQ(sketch("470. SARGOMA, Renwick.\n"
                   "\n"
                   "a. Cheeks naked.\n"
                   "b. Teeth conical. alta, 1588.\n"
                   "bb. Teeth in front like chisels.\n"
                   "c. Sides with yellow streaks. LINEATA, 1590.\n"
                   "cc. Sides without streaks. FURCIFERA, 1591.\n"
                   "aa. Cheeks scaled.\n"
                   "d. Lateral line complete. CRENULATA, 1593.\n"
                   "dd. Lateral line interrupted. AURORA, 1595.\n"
                   "\n"
                   "1588. SARGOMA ALTA, Renwick.\n"
                   "\n"
                   "Head 3; depth 2; eye 3. Body deep, much compressed.\n"),
            "a[a] Cheeks naked. -> b\n"
            "a[aa] Cheeks scaled. -> d\n"
            "b[b] Teeth conical. -> Sargoma alta\n"
            "b[bb] Teeth in front like chisels. -> c\n"
            "c[c] Sides with yellow streaks. -> Sargoma lineata\n"
            "c[cc] Sides without streaks. -> Sargoma furcifera\n"
            "d[d] Lateral line complete. -> Sargoma crenulata\n"
            "d[dd] Lateral line interrupted. -> Sargoma aurora\n");
}

}  // namespace
}  // namespace keydrift
