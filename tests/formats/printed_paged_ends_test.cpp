// Ends of leads that give an epithet and the page of its account.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedPagedEnds, AllEndSoWhereMostDo) {
  EXPECT_EQ(sketch("The genus Ausella Roe\n\nKey to Males\n\n"
                   "1a. Palpus with two spurs 2\n"
                   "1b. Palpus with one spur 3\n"
                   "2a. Spurs long; carapace pale bicalcarata (p. 49)\n"
                   "2b. Spurs short; embolus visible as a loose\n"
                   "coil (fig. 14) dentichelis (p. 51)\n"
                   "3a. Length under 4 mm agreste (p. 47)\n"
                   "3b. Length over 4 mm 4\n"
                   "4a. Abdomen pale or dusky agreste (p. 47), cincta (p. 50)\n"
                   "4b. Abdomen black insolens (p. 58)\n"),
            "1[1a] Palpus with two spurs -> 2\n"
            "1[1b] Palpus with one spur -> 3\n"
            "2[2a] Spurs long; carapace pale -> Ausella bicalcarata (p. 49)\n"
            "2[2b] Spurs short; embolus visible as a loose coil (fig. 14) -> Ausella dentichelis "
            "(p. 51)\n"
            "3[3a] Length under 4 mm -> Ausella agreste (p. 47)\n"
            "3[3b] Length over 4 mm -> 4\n"
            "4[4a] Abdomen pale or dusky -> Ausella agreste + Ausella cincta (p. 47; p. 50)\n"
            "4[4b] Abdomen black -> Ausella insolens (p. 58)\n");
}

TEST(PrintedPagedEnds, NewSpeciesAndAuthorsStandBeforeThePage) {
  EXPECT_EQ(sketch("The genus Ausella\n\n"
                   "1. Beak long; elytra oblong......incompta, new species (p. 113)\n"
                   "   Beak short....................2\n"
                   "2. Club gray; length, 7-9 mm gibbicollis Roe (p. 117).\n"
                   "   Club of one color 3\n"
                   "3. Scales sparse pubescens, new species (p. 120).\n"
                   "   Scales dense.................moesta, new species (p. 121).\n"),
            "1[1] Beak long; elytra oblong -> Ausella incompta (new species (p. 113))\n"
            "1[] Beak short -> 2\n"
            "2[2] Club gray; length, 7-9 mm -> Ausella gibbicollis (p. 117)\n"
            "2[] Club of one color -> 3\n"
            "3[3] Scales sparse -> Ausella pubescens (new species (p. 120))\n"
            "3[] Scales dense -> Ausella moesta (new species (p. 121))\n");
}

TEST(PrintedPagedEnds, AnEpithetThatIsRepeatedIsNoWordOfTheLead) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n\n"
                   "1. Loreal present ------------ 2\n"
                   "Loreal absent ------------ gracilis (p. 77)\n"
                   "2. Three stripes, the median one scale wide\n"
                   "                      lineata lineata (p. 66)\n"
                   "No stripes ------------ 3\n"
                   "3. Dots black; ventrals 172-184\n"
                   "                      lineata punctata (p. 69)\n"
                   "Dots none ------------ collaris (p. 71)\n"),
            "1[1] Loreal present -> 2\n"
            "1[] Loreal absent -> Ausella gracilis (p. 77)\n"
            "2[2] Three stripes, the median one scale wide -> Ausella lineata lineata (p. 66)\n"
            "2[] No stripes -> 3\n"
            "3[3] Dots black; ventrals 172-184 -> Ausella lineata punctata (p. 69)\n"
            "3[] Dots none -> Ausella collaris (p. 71)\n");
}

TEST(PrintedPagedEnds, PagesBehindCommasEndSentences) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n\n"
             "1a. Front produced. Both claws alike meridiana, p. 353.\n"
             "1b. Front even. Right claw the larger\n2\n"
             "2a. Regions deep. Color red, the fingers black sculpta, p. 356.\n"
             "2b. Regions flat. Palp with its angle round 3\n"
             "3a. Legs with a lobe. Color yellow, the fingers brown sulcifera, p. 358 .\n"
             "3b. Legs plain. Fingers meeting in both sexes planulata, p. 362.\n"),
      "1[1a] Front produced. Both claws alike -> Ausella meridiana (p. 353.)\n"
      "1[1b] Front even. Right claw the larger -> 2\n"
      "2[2a] Regions deep. Color red, the fingers black -> Ausella sculpta (p. 356.)\n"
      "2[2b] Regions flat. Palp with its angle round -> 3\n"
      "3[3a] Legs with a lobe. Color yellow, the fingers brown -> Ausella sulcifera (p. 358)\n"
      "3[3b] Legs plain. Fingers meeting in both sexes -> Ausella planulata (p. 362.)\n");
}

TEST(PrintedPagedEnds, AuthorsBehindAnEpithetAreNoGenera) {
  EXPECT_EQ(sketch("GENUS AUSELLA Roe\n"
                   "\n"
                   "1. Empodium clawlike (fig. 31, b) 2\n"
                   "\n"
                   "Empodium minute or absent 3\n"
                   "\n"
                   "2. Setae forming a diamond-shaped pattern\n"
                   "schonneri Bolland (p. 27)\n"
                   "\n"
                   "Knob convex; female carmine evanthoni Bakersley and Prill (p. 38)\n"
                   "\n"
                   "3. Shaft sinuate, the tip pointing down sinuatus Roe (p. 31)\n"
                   "\n"
                   "Shaft straight, tapering to a point tumidellus Bolland (p. 32)\n"),
            "1[1] Empodium clawlike (fig. 31, b) -> 2\n"
            "1[] Empodium minute or absent -> 3\n"
            "2[2] Setae forming a diamond-shaped pattern -> Ausella schonneri (p. 27)\n"
            "2[] Knob convex; female carmine -> Ausella evanthoni (p. 38)\n"
            "3[3] Shaft sinuate, the tip pointing down -> Ausella sinuatus (p. 31)\n"
            "3[] Shaft straight, tapering to a point -> Ausella tumidellus (p. 32)\n");
}

TEST(PrintedPagedEnds, AWordBrokenOverLinesIsNoPartOfTheName) {
  EXPECT_EQ(sketch("The genus Psarrhomyia Roe\n"
                   "\n"
                   "1. Wings clear; legs brown varians Tolliver (p. 18)\n"
                   "\n"
                   "Wings clouded 2\n"
                   "\n"
                   "2. Parafacial, viewed in profile, as wide as third segment.\n"
                   "\n"
                   "setinerva (Harbold) (p. 27)\n"
                   "\n"
                   "Parafacial linear 3\n"
                   "\n"
                   "3. Abdomen metallic blue; knob of halter black.\n"
                   "\n"
                   "cyanella Tolliver (p. 38)\n"
                   "\n"
                   "Abdomen not metallic ; knob of halter yellow 4\n"
                   "\n"
                   "4. Tergites yellow at sides; male fifth sternite deeply cleft,\n"
                   "the lobes meeting apically basalis Meeks (p. 40)\n"
                   "\n"
                   "Tergites wholly black; male fifth sternite with shallow V-shaped emar-\n"
                   "gination atra (Quarrell) (p. 41)\n"),
            "1[1] Wings clear; legs brown -> Psarrhomyia varians (p. 18)\n"
            "1[] Wings clouded -> 2\n"
            "2[2] Parafacial, viewed in profile, as wide as third segment. -> Psarrhomyia "
            "setinerva (p. 27)\n"
            "2[] Parafacial linear -> 3\n"
            "3[3] Abdomen metallic blue; knob of halter black. -> Psarrhomyia cyanella (p. 38)\n"
            "3[] Abdomen not metallic ; knob of halter yellow -> 4\n"
            "4[4] Tergites yellow at sides; male fifth sternite deeply cleft, the lobes meeting "
            "apically -> Psarrhomyia basalis (p. 40)\n"
            "4[] Tergites wholly black; male fifth sternite with shallow V-shaped emargination -> "
            "Psarrhomyia atra (p. 41)\n");
}

TEST(PrintedPagedEnds, TheSubspeciesOfTheTypeRepeatsTheEpithet) {
  EXPECT_EQ(
      sketch("The genus Psarrhomyia Roe\n"
             "\n"
             "1. Wings clear 2\n"
             "\n"
             "Wings clouded 3\n"
             "\n"
             "2. All coxae yellow; hind tibia with two anterodorsal bristles.\n"
             "\n"
             "fulvicoxa fulvicoxa Meeks (p. 24)\n"
             "\n"
             "Third vein setulose only on basal node setosa Meeks (p. 26)\n"
             "\n"
             "3. Parafacial, viewed in profile, as wide as third antennal segment.\n"
             "\n"
             "setinerva (Harbold) (p. 27)\n"
             "\n"
             "Parafacial linear. (Known only from the male.)^\n"
             "\n"
             "tenuifacies Tolliver (p. 28)\n"),
      "1[1] Wings clear -> 2\n"
      "1[] Wings clouded -> 3\n"
      "2[2] All coxae yellow; hind tibia with two anterodorsal bristles. -> Psarrhomyia fulvicoxa "
      "fulvicoxa (p. 24)\n"
      "2[] Third vein setulose only on basal node -> Psarrhomyia setosa (p. 26)\n"
      "3[3] Parafacial, viewed in profile, as wide as third antennal segment. -> Psarrhomyia "
      "setinerva (p. 27)\n"
      "3[] Parafacial linear. (Known only from the male.)^ -> Psarrhomyia tenuifacies (p. 28)\n");
}

TEST(PrintedPagedEnds, ACommaStandsBeforeACapitalThatHonours) {
  EXPECT_EQ(sketch("Key to species of Ausella.\n"
                   "\n"
                   "a. Parietal wall with a single entering lamella.\n"
                   "b. Shell carinated at periphery.\n"
                   "c. Carina projecting ; diam. 21 mill., calcarata, p. 118.\n"
                   "c 1 . Carina acute ; diam. 14-15 mill., acies, p. 119.\n"
                   "b 1 . Periphery rounded.\n"
                   "c. One tooth near the columella ; surface smooth, glossy,\n"
                   "corneous-brown, monodon, p. 119.\n"
                   "c 1 . Two teeth, the outer one bifid ; surface with delicate\n"
                   "rib-striae, Hestermani, p. 120.\n"
                   "a 1 . Parietal wall with two entering lamellae.\n"
                   "b. Lamellae parallel ; diam. 20 mill., labyrinthica, p. 124.\n"
                   "b 1 . Lamellae unlike ; lip with 2 teeth, polyptyx, p. 125.\n"),
            "1[a] Parietal wall with a single entering lamella. -> 2\n"
            "1[a1] Parietal wall with two entering lamellae. -> 5\n"
            "2[b] Shell carinated at periphery. -> 3\n"
            "2[b1] Periphery rounded. -> 4\n"
            "3[c] Carina projecting ; diam. 21 mill., -> Ausella calcarata (p. 118.)\n"
            "3[c1] Carina acute ; diam. 14-15 mill., -> Ausella acies (p. 119.)\n"
            "4[c] One tooth near the columella ; surface smooth, glossy, corneous-brown, -> "
            "Ausella monodon (p. 119.)\n"
            "4[c1] Two teeth, the outer one bifid ; surface with delicate rib-striae, -> Ausella "
            "hestermani (p. 120.)\n"
            "5[b] Lamellae parallel ; diam. 20 mill., -> Ausella labyrinthica (p. 124.)\n"
            "5[b1] Lamellae unlike ; lip with 2 teeth, -> Ausella polyptyx (p. 125.)\n");
}

TEST(PrintedPagedEnds, ASubspeciesMayStandOnALineOfItsOwn) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA.\n"
                   "\n"
                   "a 1. Rays five.\n"
                   "\n"
                   "b 1. Marginal plates with one spine.\n"
                   "\n"
                   "c 1. Dorsal spines long, acute.\n"
                   "\n"
                   "acutiradia, p. 262.\n"
                   "\n"
                   "c 2. Dorsal spines short monacantha, p. 264.\n"
                   "\n"
                   "b 2. Marginal plates with two to five spines.\n"
                   "\n"
                   "c 1. Dorsal skeleton open, the papular areas larger than the plates.\n"
                   "\n"
                   "polaris, p. 266.\n"
                   "\n"
                   "c-. Dorsal skeleton compact, papular areas small.\n"
                   "\n"
                   "d 1. Groups rounded; color in life brick red.\n"
                   "\n"
                   "conglomerata, p. 268.\n"
                   "\n"
                   "d 2. Groups transverse; color in life dull purple.\n"
                   "\n"
                   "conglomerata borealis, p. 271.\n"
                   "\n"
                   "a 2 . Rays six or more multiradia, p. 275.\n"),
            "1[a1] Rays five. -> 2\n"
            "1[a2] Rays six or more -> Ausella multiradia (p. 275.)\n"
            "2[b1] Marginal plates with one spine. -> 3\n"
            "2[b2] Marginal plates with two to five spines. -> 4\n"
            "3[c1] Dorsal spines long, acute. -> Ausella acutiradia (p. 262.)\n"
            "3[c2] Dorsal spines short -> Ausella monacantha (p. 264.)\n"
            "4[c1] Dorsal skeleton open, the papular areas larger than the plates. -> Ausella "
            "polaris (p. 266.)\n"
            "4[c2] Dorsal skeleton compact, papular areas small. -> 5\n"
            "5[d1] Groups rounded; color in life brick red. -> Ausella conglomerata (p. 268.)\n"
            "5[d2] Groups transverse; color in life dull purple. -> Ausella conglomerata borealis "
            "(p. 271.)\n");
}

TEST(PrintedPagedEnds, BarePagesBehindACommaAreAHabitToo) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "a. Gill-rakers short, about 8 on the lower limb ............ gillami, 171.\n"
                   "aa. Gill-rakers longer.\n"
                   "b. Eye large, 3.2 in head; soft dorsal fin densely scaled to near the\n"
                   "margin. vivens, 177.\n"
                   "bb. Eye moderate.\n"
                   "c. Scales above the lateral line in oblique series.. parvulus, 178.\n"
                   "cc. Scales above the lateral line in rows.\n"
                   "d. Canines strong .................................... chalceus, 174.\n"
                   "dd. Canines weak ................................ pinnimaculatus, 175.\n"),
            "a[a] Gill-rakers short, about 8 on the lower limb -> Ausella gillami (171.)\n"
            "a[aa] Gill-rakers longer. -> b\n"
            "b[b] Eye large, 3.2 in head; soft dorsal fin densely scaled to near the margin. -> "
            "Ausella vivens (177.)\n"
            "b[bb] Eye moderate. -> c\n"
            "c[c] Scales above the lateral line in oblique series -> Ausella parvulus (178.)\n"
            "c[cc] Scales above the lateral line in rows. -> d\n"
            "d[d] Canines strong -> Ausella chalceus (174.)\n"
            "d[dd] Canines weak -> Ausella pinnimaculatus (175.)\n");
}

TEST(PrintedPagedEnds, NamesStandBeforeLeadersToTheirPages) {
  EXPECT_EQ(
      sketch("Key to river mussels\n"
             "\n"
             "1. Hinge teeth absent ............................ go to 2\n"
             "1'. Hinge teeth present .......................... go to 3\n"
             "\n"
             "2. Shell very thin, twice as long as high; outside straw-colored\n"
             "Paper Boat (Fennodrenta imbellis) ................ p. 14\n"
             "2'. Shell nearly round in outline; outside dark brown, dull\n"
             "Pond Saucer (Fennodrenta orbis) * ................ p. 16\n"
             "\n"
             "3. Shell long and cylindrical, yellow, shiny\n"
             "Yellow Banana (Lampsenio teres)................... p. 40\n"
             "3'. Shell oval, black or dark brown\n"
             "Little Black-shell (Villotia lienosa) or Southern Black-shell (Villotia nigra) ..... "
             "pp. 42, 44\n"),
      "1[1] Hinge teeth absent -> 2\n"
      "1[1'] Hinge teeth present -> 3\n"
      "2[2] Shell very thin, twice as long as high; outside straw-colored -> Fennodrenta imbellis "
      "(Paper Boat; p. 14)\n"
      "2[2'] Shell nearly round in outline; outside dark brown, dull -> Fennodrenta orbis (Pond "
      "Saucer; *; p. 16)\n"
      "3[3] Shell long and cylindrical, yellow, shiny -> Lampsenio teres (Yellow Banana; p. 40)\n"
      "3[3'] Shell oval, black or dark brown -> Villotia lienosa + Villotia nigra (Little "
      "Black-shell or Southern Black-shell; pp. 42, 44)\n");
}

}  // namespace
}  // namespace keydrift
