// Words before a name that send the reader elsewhere, and names of parts to which leads send.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::led_to;
using test::sketch;

TEST(PrintedReferences, TheyAreNoPartOfTheName) {
  EXPECT_EQ(led_to("see also Ausella (p. 14)"), "Ausella (see also; p. 14)");
  EXPECT_EQ(led_to("siehe auch Ausella"), "Ausella (siehe auch)");
  EXPECT_EQ(led_to("voir aussi Ausella"), "Ausella (voir aussi)");
  EXPECT_EQ(led_to("vgl. Ausella S. 15"), "Ausella (vgl.; S. 15)");
  EXPECT_EQ(led_to("s. Ausella, S. 15"), "Ausella (s.; S. 15)");
  EXPECT_EQ(led_to("cf. Ausella flava"), "Ausella flava (cf.)");
}

TEST(PrintedReferences, TheNumberOfTheSpeciesMayFollow) {
  EXPECT_EQ(led_to("see 5. A. bus"), "Aus bus (see)");
}

TEST(PrintedReferences, APageAloneNamesNoTaxon) {
  EXPECT_EQ(sketch("1 Blüten weiß. → Ausella, S. 12\n"
                   "1* Blüten gelb. → S. 15\n"),
            "1[1] Blüten weiß. -> Ausella (S. 12)\n1[1*] Blüten gelb. -> key: S. 15\n");
}

TEST(PrintedReferences, ASpeciesThatIsComparedStaysSo) {
  EXPECT_EQ(led_to("Aus cf. bus"), "Aus cf. bus");
  EXPECT_EQ(led_to("A. bus s. l."), "Aus bus (s. l.)");
}

TEST(PrintedReferences, SubgeneraAreKeyedWhereTheirTitleStands) {
  EXPECT_EQ(sketch("1. Flowers white ..... subgen. Albae\n"
                   "1. Flowers yellow ..... Subg. Flavae (spp. 3–4)\n"
                   "\n"
                   "Subgenus Albae\n"
                   "\n"
                   "1. Leaves ovate ..... Ausella alba\n"
                   "1. Leaves linear ..... Ausella busa\n"
                   "\n"
                   "Subgenus Flavae\n"
                   "\n"
                   "1. Fruit winged ..... Ausella flava\n"
                   "1. Fruit wingless ..... Ausella lutea\n"),
            "1[1] Flowers white -> key: Subgenus Albae\n"
            "1[1] Flowers yellow -> key: Subgenus Flavae (spp. 3–4)\n"
            "1[1] Leaves ovate -> Ausella alba\n"
            "1[1] Leaves linear -> Ausella busa\n"
            "1[1] Fruit winged -> Ausella flava\n"
            "1[1] Fruit wingless -> Ausella lutea\n");
}

TEST(PrintedReferences, ARankBelongsToTheGroupBehindABlank) {
  EXPECT_EQ(sketch("1. Flowers white sect. Albae\n1. Flowers yellow sect. Flavae\n"),
            "1[1] Flowers white -> Albae (sect.)\n1[1] Flowers yellow -> Flavae (sect.)\n");
}

TEST(PrintedReferences, TribesAreNamedBehindTheirRank) {
  EXPECT_EQ(led_to("Tribe Ausellini"), "Ausellini (Tribe)");
}

TEST(PrintedReferences, SpeciesOfAGenusAreKeyedInTheKeyThatItsBracketNames) {
  EXPECT_EQ(led_to("Ausella spp. (see Key to the Species of Ausella, FSH-22)"),
            "key: Key to the Species of Ausella, FSH-22 (Ausella spp.)");
  EXPECT_EQ(led_to("Ausella (see Key to the Species of Ausella)"),
            "key: Key to the Species of Ausella (Ausella)");
  // A species is an end, and a figure is no key.
  EXPECT_EQ(led_to("Ausella busa (see Key to Males)"), "Ausella busa (see Key to Males)");
  EXPECT_EQ(led_to("Ausella spp. (see figures)"), "Ausella spp. (see figures)");
}

TEST(PrintedReferences, NumberedPartsOfTheWorkAreKeysElsewhere) {
  EXPECT_EQ(led_to("Go to Lab 7 (beetles)"), "key: Lab 7 (beetles)");
  EXPECT_EQ(led_to("see Exercise 12"), "key: Exercise 12");
  // A genus has its couplet.
  EXPECT_EQ(led_to("see Ausella 2"), "2 (see Ausella)");
}

TEST(PrintedReferences, SomeEndsHaveNoName) {
  for (std::string const words :
       {"refer to specialist", "consult a specialist.", "not a caterpillar", "nicht behandelt"}) {
    EXPECT_EQ(led_to(words), "?" + words) << words;
  }
  EXPECT_EQ(led_to("not Aus bus"), "Aus bus (not)");
  EXPECT_EQ(led_to("fig specialist"), "fig specialist");
}

TEST(PrintedReferences, TablesAndSeriesAreParts) {
  EXPECT_EQ(sketch("1. Leaves opposite ..... Tableau A\n"
                   "– Leaves alternate ..... Tableau B\n"
                   "\n"
                   "TABLEAU A\n"
                   "\n"
                   "1. Flowers white ..... Ausella\n"
                   "– Flowers yellow ..... Busella\n"
                   "\n"
                   "TABLEAU B\n"
                   "\n"
                   "1. Fruit round ..... Cusella\n"
                   "– Fruit long ..... Dusella\n"),
            "1[1] Leaves opposite -> key: TABLEAU A\n"
            "1[–] Leaves alternate -> key: TABLEAU B\n"
            "1[1] Flowers white -> Ausella\n"
            "1[–] Flowers yellow -> Busella\n"
            "1[1] Fruit round -> Cusella\n"
            "1[–] Fruit long -> Dusella\n");
  EXPECT_EQ(led_to("Série A"), "key: Série A");
  EXPECT_EQ(led_to("Hauptgruppe 1"), "key: Hauptgruppe 1");
}

TEST(PrintedReferences, FamiliesMayBeCountedInRomanFigures) {
  EXPECT_EQ(led_to("I. Ausaceae"), "Ausaceae");
  EXPECT_EQ(led_to("II. Ausaceae"), "Ausaceae");
  EXPECT_EQ(sketch("1. Leaves opposite I. Ausaceae\n1. Leaves alternate II. Busaceae\n"),
            "1[1] Leaves opposite -> Ausaceae\n1[1] Leaves alternate -> Busaceae\n");
}

TEST(PrintedReferences, SubgeneraWithTheirAuthorsAreKeyedToo) {
  EXPECT_EQ(
      sketch("KEY TO THE SUBGENERA OF AUSELLA\n"
             "\n"
             "1    Elytra with scales ........................ subgenus Ausella s. str. (p. 33)\n"
             "1'   Elytra bare ............................... subgenus Busella Roe (p. 45)\n"
             "\n"
             "Key to species of subgenus Ausella s. str.\n"
             "\n"
             "1    Femora toothed ............................ A. busa Roe\n"
             "1'   Femora simple ............................. A. cusa Roe\n"
             "\n"
             "Key to species of subgenus Busella\n"
             "\n"
             "1    Elytra red ................................ A. dusa Dorn\n"
             "1'   Elytra black .............................. A. fusa Dorn\n"),
      "1[1] Elytra with scales -> key: Key to species of subgenus Ausella s. str. (s. str. (p. "
      "33))\n"
      "1[1'] Elytra bare -> key: Key to species of subgenus Busella (p. 45)\n"
      "1[1] Femora toothed -> Ausella busa\n"
      "1[1'] Femora simple -> Ausella cusa\n"
      "1[1] Elytra red -> Ausella dusa\n"
      "1[1'] Elytra black -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
