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

}  // namespace
}  // namespace keydrift
