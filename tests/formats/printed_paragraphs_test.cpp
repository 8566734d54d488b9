// Keys run together in paragraphs: leads begin within lines.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedWrappedParagraphs, LeadsBeginWithinTheWrappedLinesOfOne) {
  EXPECT_EQ(sketch("TABLE OF AUSELLA.—1. Wings clear, 2. — Wings dark, niger Roe.\n"
                   "2. Legs pale to the very tips, 3. — Legs dark all over but for the knees,\n"
                   "which are pale, tristis Roe. 3. Head long as the thorax, pictus Roe. — Head\n"
                   "short, rounded behind, aurifrons, n. sp.\n"),
            "1[1] Wings clear, -> 2\n1[—] Wings dark, -> Ausella niger\n"
            "2[2] Legs pale to the very tips, -> 3\n"
            "2[—] Legs dark all over but for the knees, which are pale, -> Ausella tristis\n"
            "3[3] Head long as the thorax, -> Ausella pictus\n"
            "3[—] Head short, rounded behind, -> Ausella aurifrons (n. sp.)\n");
}

TEST(PrintedWrappedParagraphs, ASecondOneGoesOnCounting) {
  EXPECT_EQ(
      sketch(
          "1 Wings clear, with many veins, 2 – Wings dark all over, also at the tips Aus bus 2 "
          "Legs pale to the very tips 3 – Legs dark at the tips Aus cus 3 Head long as the thorax "
          "4 – Head short, rounded behind, 5 4 Tail long and slender Aus dus – Tail short Aus eus\n"
          "\n"
          "5 Dorsum with a keel, smooth at the sides Aus fus – Dorsum flat, without a keel 6 6 "
          "Ribs many, set close together, pale Aus gus – Ribs few, set far apart from each other, "
          "dark 7 7 Feet broad, flat, with long nails Aus hus – Feet narrow Aus ius\n"),
      "1[1] Wings clear, with many veins, -> 2\n"
      "1[–] Wings dark all over, also at the tips -> Aus bus\n"
      "2[2] Legs pale to the very tips -> 3\n"
      "2[–] Legs dark at the tips -> Aus cus\n3[3] Head long as the thorax -> 4\n"
      "3[–] Head short, rounded behind, -> 5\n"
      "4[4] Tail long and slender -> Aus dus\n4[–] Tail short -> Aus eus\n"
      "5[5] Dorsum with a keel, smooth at the sides -> Aus fus\n"
      "5[–] Dorsum flat, without a keel -> 6\n"
      "6[6] Ribs many, set close together, pale -> Aus gus\n"
      "6[–] Ribs few, set far apart from each other, dark -> 7\n"
      "7[7] Feet broad, flat, with long nails -> Aus hus\n"
      "7[–] Feet narrow -> Aus ius\n");
}

TEST(PrintedWrappedParagraphs, NoneOfItsLinesNeedsToBeginWithALabel) {
  EXPECT_EQ(
      sketch(
          "The flies of the marsh: 1. Wings clear, with many veins, 2. – Wings\n"
          "dark all over, also at the tips, Aus niger. 2. Legs pale to the very tips, 3. – Legs\n"
          "dark at the tips, Aus tristis. 3. Head long as the thorax, Aus pictus. – Head\n"
          "short, rounded behind, Aus latus.\n"),
      "1[1] Wings clear, with many veins, -> 2\n"
      "1[–] Wings dark all over, also at the tips, -> Aus niger\n"
      "2[2] Legs pale to the very tips, -> 3\n2[–] Legs dark at the tips, -> Aus tristis\n"
      "3[3] Head long as the thorax, -> Aus pictus\n"
      "3[–] Head short, rounded behind, -> Aus latus\n");
}

TEST(PrintedWrappedParagraphs, LabelsAtTheBeginningOfLinesBelongToItsLeads) {
  EXPECT_EQ(sketch("TABLE OF AUSELLA.—1. Wings clear, with many veins, and dark at the tips,\n"
                   "2. — Wings dark, niger Roe. 2. Legs pale to the very tips,\n"
                   "3. — Legs dark all over but for the knees, tristis Roe. 3. Head long,\n"
                   "4. — Head short, rounded behind, pictus Roe.\n"
                   "4. Tail long and slender, caudatus Roe. — Tail short, brevis Roe.\n"),
            "1[1] Wings clear, with many veins, and dark at the tips, -> 2\n"
            "1[—] Wings dark, -> Ausella niger\n2[2] Legs pale to the very tips, -> 3\n"
            "2[—] Legs dark all over but for the knees, -> Ausella tristis\n"
            "3[3] Head long, -> 4\n3[—] Head short, rounded behind, -> Ausella pictus\n"
            "4[4] Tail long and slender, -> Ausella caudatus\n"
            "4[—] Tail short, -> Ausella brevis\n");
}

TEST(PrintedLeadParagraphs, DamagedNumbersAndEndsKeepTheCount) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1. Pygidium of male exposed; antennae inserted\nat the middle 2\n\n"
                   "Pygidium covered; antennae inserted\nin apical third 3\n\n"
                   "2, Upper surface glabrous, or with\nfine hairs nuda Roe\n\n"
                   "Upper surface with long setae, those\nof the elytra rough hirta Roe\n\n"
                   "3. Legs pale, strongly contrasting with\nthe black body 4\n\n"
                   "Legs black; pronotum with a little\nmedian space S\n\n"
                   "4. Frons with a deep fovea between\nthe eyes; tip bluntly rounded tusa Roe\n\n"
                   "Frons without fovea; tip produced\ninto a short beak rostrata Roe\n\n"
                   "5, Elytra elongate, their sides\nsubparallel longula Roe\n\n"
                   "Elytra oval, their sides evenly\nrounded ovata Roe\n"),
            "1[1] Pygidium of male exposed; antennae inserted at the middle -> 2\n"
            "1[] Pygidium covered; antennae inserted in apical third -> 3\n"
            "2[2] Upper surface glabrous, or with fine hairs -> Ausella nuda\n"
            "2[] Upper surface with long setae, those of the elytra rough -> Ausella hirta\n"
            "3[3] Legs pale, strongly contrasting with the black body -> 4\n"
            "3[] Legs black; pronotum with a little median space -> 5\n"
            "4[4] Frons with a deep fovea between the eyes; tip bluntly rounded -> Ausella tusa\n"
            "4[] Frons without fovea; tip produced into a short beak -> Ausella rostrata\n"
            "5[5] Elytra elongate, their sides subparallel -> Ausella longula\n"
            "5[] Elytra oval, their sides evenly rounded -> Ausella ovata\n");
}

TEST(PrintedWrappedParagraphs, SerialLeadsBeginWithinTheLinesOfOne) {
  EXPECT_EQ(sketch("TABLE FOR THE SEPARATION OF AUSELLA.\n"
                   "\n"
                   "   1 (6) Second joint of antennae as long as the breadth of the pronotum.\n"
                   "2 (5) Rostrum reaching the hind coxae. 3 (4) Head as long as broad; first\n"
                   "joint black. A. pinastri, Roe. 4 (3) Head plainly transverse. A. lugens,\n"
                   "Dorn. 5 (2) Rostrum not passing the middle coxae. A. saliceti, Roe.\n"
                   "6 (1) Second joint of antennae shorter. 7 (8) Membrane with a dark spot\n"
                   "(as in 3 (4) of the males). A. virens, Lunn. 8 (7) Membrane unspotted.\n"
                   "A. ochropus, Reit.\n"),
            "1[1] Second joint of antennae as long as the breadth of the pronotum. -> 2\n"
            "1[6] Second joint of antennae shorter. -> 7\n"
            "2[2] Rostrum reaching the hind coxae. -> 3\n"
            "2[5] Rostrum not passing the middle coxae. -> Ausella saliceti (Roe.)\n"
            "3[3] Head as long as broad; first joint black. -> Ausella pinastri (Roe.)\n"
            "3[4] Head plainly transverse. -> Ausella lugens (Dorn.)\n"
            "7[7] Membrane with a dark spot (as in 3 (4) of the males). -> Ausella virens (Lunn.)\n"
            "7[8] Membrane unspotted. -> Ausella ochropus (Reit.)\n");
}

}  // namespace
}  // namespace keydrift
