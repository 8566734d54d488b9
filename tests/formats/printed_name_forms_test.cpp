// Forms of names at the ends of leads.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNameForms, ANewSubspeciesOnALineOfItsOwn) {
  EXPECT_EQ(sketch("Genus CHALEPONYX\n"
                   "\n"
                   "1. Legs red 2\n"
                   "Legs black 3\n"
                   "\n"
                   "2. Head wide, tegula piceous. (Eastern States.)\n"
                   "fulvipes fulvipa (Ormand)\n"
                   "Head narrow, tegula yellow. (Rocky Mountain region.)\n"
                   "\n"
                   "fulvipes montivaga, new subspecies\n"
                   "\n"
                   "3. Wings clear cusa, new species\n"
                   "Wings dusky dusa Roe\n"),
            "1[1] Legs red -> 2\n"
            "1[] Legs black -> 3\n"
            "2[2] Head wide, tegula piceous. (Eastern States.) -> Chaleponyx fulvipes fulvipa\n"
            "2[] Head narrow, tegula yellow. (Rocky Mountain region.) -> Chaleponyx fulvipes "
            "montivaga (new subspecies)\n"
            "3[3] Wings clear -> Chaleponyx cusa (new species)\n"
            "3[] Wings dusky -> Chaleponyx dusa\n");
}

TEST(PrintedNameForms, QuotedNamesOfNewSpecies) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Eyes large .......... Ausella sp. n. “Jusante”\n"
                   "1. Eyes small .......... 2\n"
                   "2. Legs short .......... Ausella n. sp. “Areia”\n"
                   "2. Legs long ........... Ausella sp. nov. 'Long Creek'\n"),
            "1[1] Eyes large -> Ausella sp. n. “Jusante”\n"
            "1[1] Eyes small -> 2\n"
            "2[2] Legs short -> Ausella n. sp. “Areia”\n"
            "2[2] Legs long -> Ausella sp. nov. 'Long Creek'\n");
}

TEST(PrintedNameForms, RanksThatAreNew) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear ..... lautus lautus Roe (p. 326)\n"
                   "— Wings dark ..... lautus fuscipes subsp. n. (p. 328)\n"),
            "1[1] Wings clear -> Ausella lautus lautus (p. 326)\n"
            "1[—] Wings dark -> Ausella lautus fuscipes (subsp. n. (p. 328))\n");
}

TEST(PrintedNameForms, TheMarkOfNewLeavesNoDoubt) {
  EXPECT_EQ(sketch("Key to the species of Ausella.\n"
                   "\n"
                   "1 (4). Upper carina of hind femur with large teeth.\n"
                   "2 (3). Male cerci conical, straight ; subgenital plate short, obtuse\n"
                   "dentifemur, sp. n.\n"
                   "3 (2). Male cerci compressed, incurved ; subgenital plate elongate,\n"
                   "acute . . . . . . . . . . . busa, Roe.\n"
                   "4 (1). Upper carina of hind femur smooth . . . . cusa, Roe.\n"),
            "1[1] Upper carina of hind femur with large teeth. -> 2\n"
            "1[4] Upper carina of hind femur smooth -> Ausella cusa (Roe.)\n"
            "2[2] Male cerci conical, straight ; subgenital plate short, obtuse -> Ausella "
            "dentifemur (sp. n.)\n"
            "2[3] Male cerci compressed, incurved ; subgenital plate elongate, acute -> Ausella "
            "busa (Roe.)\n");
}

TEST(PrintedNameForms, EpithetsThatCompare) {
  EXPECT_EQ(sketch("Synopsis of the species of Ausella.\n"
                   "\n"
                   "a. Ventrals 180-194 ; rostral just visible from above ;\n"
                   "five dark stripes along the body 1. vittata, Harv., p. 204.\n"
                   "b. Ventrals 201-216 ; rostral not visible from above ;\n"
                   "back uniform olive 2. gracilior, Wrench, p. 205.\n"),
            "1[a] Ventrals 180-194 ; rostral just visible from above ; five dark stripes along the "
            "body -> Ausella vittata (Harv., p. 204.)\n"
            "1[b] Ventrals 201-216 ; rostral not visible from above ; back uniform olive -> "
            "Ausella gracilior (Wrench, p. 205.)\n");
}

TEST(PrintedNameForms, GermanParticiplesAreNoEpithets) {
  EXPECT_EQ(sketch("Gattung Ausella Gerstm.\n"
                   "\n"
                   "1\" Oberseite doppelt behaart. mutica Strl.\n"
                   "1' Oberseite einfach, anliegend behaart.\n"
                   "2\" Grübchen durch eine vertiefte Querlinie verbunden; Fld. an den\n"
                   "Seiten gerundet. L. 2,5 mm. — Unter Laub, überall. bifoveata Gerstm.\n"
                   "2' Grübchen isoliert; Fld. langgestreckt, parallel. dispar Rtm.\n"),
            "1[1\"] Oberseite doppelt behaart. -> Ausella mutica\n"
            "1[1'] Oberseite einfach, anliegend behaart. -> 2\n"
            "2[2\"] Grübchen durch eine vertiefte Querlinie verbunden; Fld. an den Seiten "
            "gerundet. L. 2,5 mm. — Unter Laub, überall. -> Ausella bifoveata\n"
            "2[2'] Grübchen isoliert; Fld. langgestreckt, parallel. -> Ausella dispar\n");
}

TEST(PrintedNameForms, NewSpeciesAtTheEndOfASentence) {
  EXPECT_EQ(
      sketch("Key to the species of Polycrytus\n"
             "\n"
             "1. Areolet closed 2.\n"
             "Areolet open flavifrons (Norwell).\n"
             "2. Head entirely black; clypeus truncate at apex nigriceps, new species.\n"
             "Head marked with yellow; clypeus rounded at apex 3.\n"
             "3. Ovipositor short occidus Dacey.\n"
             "Ovipositor nearly twice as long as the body longiterebra, new species.\n"),
      "1[1] Areolet closed -> 2\n"
      "1[] Areolet open -> Polycrytus flavifrons\n"
      "2[2] Head entirely black; clypeus truncate at apex -> Polycrytus nigriceps (new species)\n"
      "2[] Head marked with yellow; clypeus rounded at apex -> 3\n"
      "3[3] Ovipositor short -> Polycrytus occidus\n"
      "3[] Ovipositor nearly twice as long as the body -> Polycrytus longiterebra (new species)\n");
}

}  // namespace
}  // namespace keydrift
