// Pages at the ends of leads that a scan damaged, and epithets that touch what stands before them.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedMisreadPages, LettersInPagesAndEpithetsThatTouchStops) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF MESOMA.\n"
                   "\n"
                   "1. Spot covering the wing.maculosa, new species, p. 13.\n"
                   "Spot small 2.\n"
                   "2. Scutellum with four bristles quadriseta Waldrop, p. 14.\n"
                   "Scutellum with six bristles sexseta, new species, p. l5.\n"
                   "3. Head red rubra, new species, p. 16.\n"
                   "Head black M. nigra,p. 17.\n"),
            "1[1] Spot covering the wing. -> Mesoma maculosa (new species, p. 13.)\n"
            "1[] Spot small -> 2\n"
            "2[2] Scutellum with four bristles -> Mesoma quadriseta (p. 14.)\n"
            "2[] Scutellum with six bristles -> Mesoma sexseta (new species, p. 15.)\n"
            "3[3] Head red -> Mesoma rubra (new species, p. 16.)\n"
            "3[] Head black -> Mesoma nigra (p. 17.)\n");
}

TEST(PrintedMisreadPages, NumbersOfSpecies) {
  EXPECT_EQ(sketch("470. SARGOMA, Renwick.\n"
                   "\n"
                   "a. Cheeks naked.\n"
                   "b. Teeth conical. alta, 1650.\n"
                   "bb. Teeth flat. rhomboides, 165l.\n"
                   "aa. Cheeks scaled.\n"
                   "c. Lateral line complete. crenulata, 1652.\n"
                   "cc. Lateral line broken. aurora, 1653.\n"),
            "a[a] Cheeks naked. -> b\n"
            "a[aa] Cheeks scaled. -> c\n"
            "b[b] Teeth conical. -> Sargoma alta\n"
            "b[bb] Teeth flat. -> Sargoma rhomboides\n"
            "c[c] Lateral line complete. -> Sargoma crenulata\n"
            "c[cc] Lateral line broken. -> Sargoma aurora\n");
}

}  // namespace
}  // namespace keydrift
