// Lines around a key that were taken for leads.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTail, ThirdLeadsWithNewTaxaStay) {
  EXPECT_EQ(sketch("1. Fronds entire ..... A. pumila\n"
                   "Fronds pinnate ..... 2\n"
                   "2. Indusium present ..... A. lucida\n"
                   "Indusium none ..... A. pilosa\n"
                   "Indusium torn ..... A. lacera\n"),
            "1[1] Fronds entire -> A. pumila\n"
            "1[] Fronds pinnate -> 2\n"
            "2[2] Indusium present -> A. lucida\n"
            "2[] Indusium none -> A. pilosa\n"
            "2[] Indusium torn -> A. lacera\n");
}

TEST(PrintedTail, CountsAboveTwoKeysAreNoLeads) {
  EXPECT_EQ(sketch("3 Citations to date\n"
                   "0 Attention score\n"
                   "\n"
                   "Genera of Rhombareolini (Hymenoptera: Ichneumonoidea) of the Sulwe "
                   "Archipelago, with a review of Rhombareola\n"
                   "\n"
                   "Citations\n"
                   "Reprints & Permissions\n"
                   "\n"
                   "The genera of Rhombareolini of the Sulwe Archipelago are keyed and the six "
                   "species of Rhombareola are reviewed, two of them new.\n"
                   "identification\n"
                   "\n"
                   "Results\n"
                   "\n"
                   "Key to genera of Rhombareolini\n"
                   "\n"
                   "1 Forewing with vein absent 2\n"
                   "— Forewing with vein present 4\n"
                   "2 Occipital carina complete Braconastes\n"
                   "— Occipital carina absent 3\n"
                   "3 Clypeus with depression Cyclognatha\n"
                   "— Clypeus not depressed Neocyclastes\n"
                   "4 Areolet closed Rhombareola\n"
                   "— Areolet open 5\n"
                   "5 Ovipositor short Notocampa\n"
                   "— Ovipositor long Longicampa\n"
                   "\n"
                   "Key to species of Rhombareola\n"
                   "\n"
                   "1 Scutellum yellow 2\n"
                   "— Scutellum black 3\n"
                   "2 Antenna with white band Rhombareola albitarsis\n"
                   "— Antenna black Rhombareola scutellata\n"
                   "3 Propodeum with area 4\n"
                   "— Propodeum without 5\n"
                   "4 Area hexagonal Rhombareola hexagona\n"
                   "— Area quadrate Rhombareola quadrata\n"
                   "5 Tergite striate Rhombareola striatella\n"
                   "— Tergite smooth Rhombareola polita\n"),
            "1[1] Forewing with vein absent -> 2\n"
            "1[—] Forewing with vein present -> 4\n"
            "2[2] Occipital carina complete Braconastes -> ?\n"
            "2[—] Occipital carina absent -> 3\n"
            "3[3] Clypeus with depression -> Cyclognatha\n"
            "3[—] Clypeus not depressed Neocyclastes -> ?\n"
            "4[4] Areolet closed -> Rhombareola\n"
            "4[—] Areolet open -> 5\n"
            "5[5] Ovipositor short -> Notocampa\n"
            "5[—] Ovipositor long -> Longicampa\n"
            "1[1] Scutellum yellow -> 2\n"
            "1[—] Scutellum black -> 3\n"
            "2[2] Antenna with white band -> Rhombareola albitarsis\n"
            "2[—] Antenna black -> Rhombareola scutellata\n"
            "3[3] Propodeum with area -> 4\n"
            "3[—] Propodeum without -> 5\n"
            "4[4] Area hexagonal -> Rhombareola hexagona\n"
            "4[—] Area quadrate -> Rhombareola quadrata\n"
            "5[5] Tergite striate -> Rhombareola striatella\n"
            "5[—] Tergite smooth -> Rhombareola polita\n");
}

TEST(PrintedTail, ARowBeneathATitleIsNoThirdLead) {
  EXPECT_EQ(sketch("1. Leaves in pairs ..... 2\n"
                   "Leaves single ..... 3\n"
                   "2. Hairs in lines ..... Aus bus\n"
                   "Hairs none ..... Aus cus\n"
                   "3. Petals red ..... Aus dus\n"
                   "Petals white ..... Aus fus\n"
                   "\n"
                   "Table 3. Emergence periods of the species keyed out above.\n"
                   "Species	Main peak	Second peak\n"
                   "Aus bus	Oct–Nov	Mar\n"
                   "Aus cus	all year	–\n"),
            "1[1] Leaves in pairs -> 2\n"
            "1[] Leaves single -> 3\n"
            "2[2] Hairs in lines -> Aus bus\n"
            "2[] Hairs none -> Aus cus\n"
            "3[3] Petals red -> Aus dus\n"
            "3[] Petals white -> Aus fus\n");
}

TEST(PrintedTail, ThirdLeadsWithATaxonLedToBeforeStay) {
  EXPECT_EQ(sketch("1	Leaves opposite	2\n"
                   "	Leaves alternate	Aus albus\n"
                   "2	Petals white	Aus niveus\n"
                   "	Petals pink	Aus ruber\n"
                   "	Petals yellow	Aus albus (in part)\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> Aus albus\n"
            "2[2] Petals white -> Aus niveus\n"
            "2[] Petals pink -> Aus ruber\n"
            "2[] Petals yellow -> Aus albus (in part)\n");
}

}  // namespace
}  // namespace keydrift
