// Titles of accounts directly behind a key.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTitlesBehind, ANameBehindABlankLineIsTheEndOfALeadWithoutOne) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Legs red ... 2\n"
                   "— Legs black ... Ausella busa Roe\n"
                   "2. Head smooth ... Ausella cusa Roe\n"
                   "— Antennae stout, the joints beyond the middle of the flagellum\n"
                   "\n"
                   "A. dusa (Dorn)\n"),
            "1[1] Legs red -> 2\n"
            "1[—] Legs black -> Ausella busa\n"
            "2[2] Head smooth -> Ausella cusa\n"
            "2[—] Antennae stout, the joints beyond the middle of the flagellum -> Ausella dusa\n");
}

TEST(PrintedTitlesBehind, TheLastLeadHasItsEndAboveTheFirstAccount) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Legs red ___ 2\n"
                   "Legs black __ albicincta Roe\n"
                   "2. Head smooth _ _ busa Roe\n"
                   "Antennae stout, the joints beyond the middle quad-\n"
                   "rate - crassula Dorn\n"
                   "\n"
                   "AUSELLA ALBICINCTA (Roe)\n"
                   "\n"
                   "Phygadella albicincta Roe, Proc. Ent. Soc., vol. 3, 1864, p. 141.\n"),
            "1[1] Legs red -> 2\n"
            "1[] Legs black -> Ausella albicincta\n"
            "2[2] Head smooth -> Ausella busa\n"
            "2[] Antennae stout, the joints beyond the middle quadrate -> Ausella crassula\n");
}

TEST(PrintedTitlesBehind, AnEpithetAloneEndsTheLastLead) {
  EXPECT_EQ(sketch("1 (4) Flügel mit Flecken.\n"
                   "2 (3) Beine ganz gelb. 7 mm.\n"
                   "busipennis Roe.\n"
                   "3 (2) Beine schwarz. 5 mm.\n"
                   ". . . . . . cusatus Dorn\n"
                   "4 (1) Flügel ohne Flecken.\n"
                   "5 (6) Augen dicht behaart. 4 mm.\n"
                   "dusipes Roe.\n"
                   "6 (5) Augen nackt. Schildchen auf der Unterseite kahl. 5 mm.\n"
                   "fusiscutum Roe.\n"
                   "\n"
                   "busipennis Roe, Ent. Bl. 12, 77, 1904.\n"
                   "Augen nackt. Stirn schmal, so breit wie der Ocellus.\n"),
            "1[1] Flügel mit Flecken. -> 2\n"
            "1[4] Flügel ohne Flecken. -> 5\n"
            "2[2] Beine ganz gelb. 7 mm. -> busipennis\n"
            "2[3] Beine schwarz. 5 mm -> cusatus\n"
            "5[5] Augen dicht behaart. 4 mm. -> dusipes\n"
            "5[6] Augen nackt. Schildchen auf der Unterseite kahl. 5 mm. -> fusiscutum\n");
}

}  // namespace
}  // namespace keydrift
