// Words that scanning made others of.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedScanWords, MarksOfNewSpecies) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Palm smooth . .. typica n, sp.\n"
                   "— Palm toothed ... 2\n"
                   "2. Telson truncate; ramus short longistyla, new spccies\n"
                   "— Telson notched; ramus long confusana, new name\n"),
            "1[1] Palm smooth -> Ausella typica (n. sp.)\n"
            "1[—] Palm toothed -> 2\n"
            "2[2] Telson truncate; ramus short -> Ausella longistyla (new species)\n"
            "2[—] Telson notched; ramus long -> Ausella confusana (new name)\n");
}

TEST(PrintedScanWords, BracketsThatAreBowlsOfLetters) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. l)orsum smooth; l)ody (as seen\n"
                   "from above) oval ... 2\n"
                   "— Dorsum pitted ... A. decej)tor\n"
                   "2. Legs red ... A. busa\n"
                   "— Legs black ... A. cusa\n"),
            "1[1] borsum smooth; body (as seen from above) oval -> 2\n"
            "1[—] Dorsum pitted -> Ausella deceptor\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[—] Legs black -> Ausella cusa\n");
}

TEST(PrintedScanWords, HyphensAsTextLayersWriteThem) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Palpi recurved, second joint reaching the an¬\n"
                   "tennae ... 2\n"
                   "— Palpi straight ... A. busa\n"
                   "2. Head yellow ... A. cusa\n"
                   "— Head white ... A. dusa\n"),
            "1[1] Palpi recurved, second joint reaching the antennae -> 2\n"
            "1[—] Palpi straight -> Ausella busa\n"
            "2[2] Head yellow -> Ausella cusa\n"
            "2[—] Head white -> Ausella dusa\n");
}

TEST(PrintedScanWords, InitialsThatCameOutAsTwoSigns) {
  EXPECT_EQ(sketch("Key to the species of Hausella\n"
                   "\n"
                   "1. Leaves petioled ... 1. H. busa\n"
                   "— Leaves sessile ... 2\n"
                   "2. Bracts green ... 2. H. cusa\n"
                   "— Bracts coloured ... 3\n"
                   "3. Coma purple ... 3. JI. purpurascens\n"
                   "— Coma white ... 4\n"
                   "4. Stem hispid ... 4. H. dusa\n"
                   "— Stem smooth ... 5\n"
                   "5. Whorls remote ... 5. H. remota\n"
                   "— Whorls close ... 6\n"
                   "6. Calyx long ... 6. H. fusa\n"
                   "— Calyx short ... 7. H. gusa\n"),
            "1[1] Leaves petioled -> Hausella busa\n"
            "1[—] Leaves sessile -> 2\n"
            "2[2] Bracts green -> Hausella cusa\n"
            "2[—] Bracts coloured -> 3\n"
            "3[3] Coma purple -> Hausella purpurascens\n"
            "3[—] Coma white -> 4\n"
            "4[4] Stem hispid -> Hausella dusa\n"
            "4[—] Stem smooth -> 5\n"
            "5[5] Whorls remote -> Hausella remota\n"
            "5[—] Whorls close -> 6\n"
            "6[6] Calyx long -> Hausella fusa\n"
            "6[—] Calyx short -> Hausella gusa\n");
}

TEST(PrintedScanWords, AnAuthorBeforeTheMarkOfANewSpecies) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n"
             "\n"
             "1. Mid tibia with an anterodorsal seta at basal third basalis Strandell, n. sp.\n"
             "— Mid tibia without setae ... 2\n"
             "2. Legs red ... busa Roe\n"
             "— Legs black ... cusa Roe\n"),
      "1[1] Mid tibia with an anterodorsal seta at basal third -> Ausella basalis (n. sp.)\n"
      "1[—] Mid tibia without setae -> 2\n"
      "2[2] Legs red -> Ausella busa\n"
      "2[—] Legs black -> Ausella cusa\n");
}

TEST(PrintedScanWords, AnEpithetMayBeginWithL) {
  EXPECT_EQ(sketch("Clé des espèces du genre Thalassa\n"
                   "\n"
                   "1. Dos noir ... T. guttata\n"
                   "— Dos gris ... 2\n"
                   "2. Une préoculaire ... T. bilineata\n"
                   "— Deux préoculaires ... T. Iatifasciata\n"),
            "1[1] Dos noir -> Thalassa guttata\n"
            "1[—] Dos gris -> 2\n"
            "2[2] Une préoculaire -> Thalassa bilineata\n"
            "2[—] Deux préoculaires -> Thalassa latifasciata\n");
}

TEST(PrintedScanWords, AWordBehindALabelKeepsItsCapital) {
  EXPECT_EQ(sketch("Clavis specierum generis Ausella\n"
                   "\n"
                   "A. Inflorescentiae axillares ... A. busa\n"
                   "B. Inflorescentiae terminales\n"
                   "a. Ianthina corolla ... A. cusa\n"
                   "b. Alba corolla ... A. dusa\n"),
            "1[A] Inflorescentiae axillares -> Ausella busa\n"
            "1[B] Inflorescentiae terminales -> 2\n"
            "2[a] Ianthina corolla -> Ausella cusa\n"
            "2[b] Alba corolla -> Ausella dusa\n");
}

TEST(PrintedScanWords, ALowLineBeforeAnEndIsOfLeaders) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Tibiae pale; vertex sparsely punctate_tibiella Dorning\n"
                   "— Tibiae piceous; vertex with coarse punctures _ 2\n"
                   "2. Abdomen with\n"
                   "tubercles (Fig. 38) _ quadrituberculata\n"
                   "— Abdomen smooth ... 3\n"
                   "3. Legs red ... levis\n"
                   "— Legs black ... atra\n"),
            "1[1] Tibiae pale; vertex sparsely punctate -> Ausella tibiella\n"
            "1[—] Tibiae piceous; vertex with coarse punctures -> 2\n"
            "2[2] Abdomen with tubercles (Fig. 38) -> Ausella quadrituberculata\n"
            "2[—] Abdomen smooth -> 3\n"
            "3[3] Legs red -> Ausella levis\n"
            "3[—] Legs black -> Ausella atra\n");
}

TEST(PrintedScanWords, AnAuthorThatTouchesTheEpithetsComma) {
  EXPECT_EQ(sketch("Key to the Species of Ausella.\n"
                   "\n"
                   "1. Legs red ..... longicornis, Harte, p. 12.\n"
                   "– Legs black ..... 2\n"
                   "2. Head smooth ..... nilgiriensis,Jerv., p. 13.\n"
                   "– Head rugose ..... 3\n"
                   "3. Wings clear ..... striata, Harte, p. 14.\n"
                   "– Wings dusky ..... punctata, Jerv., p. 15.\n"),
            "1[1] Legs red -> Ausella longicornis (Harte, p. 12.)\n"
            "1[–] Legs black -> 2\n"
            "2[2] Head smooth -> Ausella nilgiriensis (Jerv., p. 13.)\n"
            "2[–] Head rugose -> 3\n"
            "3[3] Wings clear -> Ausella striata (Harte, p. 14.)\n"
            "3[–] Wings dusky -> Ausella punctata (Jerv., p. 15.)\n");
}

TEST(PrintedScanWords, TwoBlanksBetweenAllWords) {
  EXPECT_EQ(
      sketch(
          "Key  to  the  Species  of  Ausella\n"
          "\n"
          "1.  Stem  violaceous  under  the  gluten;  taste  mild  and  sweet.  A.  van-\n"
          "dorensis  Peckston\n"
          "1.  Stem  white  under  the  gluten;  taste  acrid  and  bitter  in  age ..... 2\n"
          "2.  Gills  adnate,  broad,  close,  white  at  first,  then  pale  yellow.  A.  busa  "
          "Roe\n"
          "2.  Gills  free,  narrow,  distant,  grey  at  first,  then  dark  brown ..... 3\n"
          "3.  Spores  smooth,  elliptic,  hyaline  under  the  lens,  not  large.  A.  cusa  Roe\n"
          "3.  Spores  warty,  globose,  tinged  with  pink  in  a  mass,  large.  A.  dusa  "
          "Roe\n"),
      "1[1] Stem violaceous under the gluten; taste mild and sweet. -> Ausella vandorensis\n"
      "1[1] Stem white under the gluten; taste acrid and bitter in age -> 2\n"
      "2[2] Gills adnate, broad, close, white at first, then pale yellow. -> Ausella busa\n"
      "2[2] Gills free, narrow, distant, grey at first, then dark brown -> 3\n"
      "3[3] Spores smooth, elliptic, hyaline under the lens, not large. -> Ausella cusa\n"
      "3[3] Spores warty, globose, tinged with pink in a mass, large. -> Ausella dusa\n");
}

TEST(PrintedScanWords, AFigureBeginsNoEpithet) {
  EXPECT_EQ(sketch("Key to the species of Leptoma\n"
                   "\n"
                   "1 Body with teeth ...... Leptoma armata\n"
                   "- Body without teeth ...... 2\n"
                   "2 Flagellum of three joints ...... Leptoma vicina\n"
                   "- Flagellum of one joint ...... Leptoma 1ongicauda\n"),
            "1[1] Body with teeth -> Leptoma armata\n"
            "1[-] Body without teeth -> 2\n"
            "2[2] Flagellum of three joints -> Leptoma vicina\n"
            "2[-] Flagellum of one joint -> Leptoma longicauda\n");
}

TEST(PrintedScanWords, FiguresBehindGeneraThatAreNone) {
  EXPECT_EQ(sketch("Key to the species of Leptoma\n"
                   "\n"
                   "1 Body with teeth ...... Leptoma armata\n"
                   "- Body without teeth; Fig. 1a ...... 2\n"
                   "2 Flagellum of three joints; Plate 1e ...... Leptoma vicina\n"
                   "- Flagellum of one joint ...... Leptoma longa\n"),
            "1[1] Body with teeth -> Leptoma armata\n"
            "1[-] Body without teeth; Fig. 1a -> 2\n"
            "2[2] Flagellum of three joints; Plate 1e -> Leptoma vicina\n"
            "2[-] Flagellum of one joint -> Leptoma longa\n");
}

TEST(PrintedScanWords, FiguresAmongCapitals) {
  EXPECT_EQ(sketch("Key to the genera\n"
                   "\n"
                   "A. Stem woody . . 1. TALAXIOPSIS\n"
                   "AA. Stem not woody.\n"
                   "B. Seeds winged . . 2. TALAXIA\n"
                   "BB. Seeds without wings . . 3. CH0RRILLIA\n"),
            "A[A] Stem woody -> Talaxiopsis\n"
            "A[AA] Stem not woody. -> B\n"
            "B[B] Seeds winged -> Talaxia\n"
            "B[BB] Seeds without wings -> Chorrillia\n");
}

TEST(PrintedScanWords, AreReadWithTheLThatTheyHaveElsewhere) {
  EXPECT_EQ(sketch("Ausella lineolatus is known from one find.\n"
                   "\n"
                   "Key to Ausella\n"
                   "\n"
                   "1. Elytra with a spine ...... bahiensis Lang., 1861\n"
                   "– Elytra with three lines of pubescence . . .\n"
                   "1ineolatus Therm., 1878\n"),
            "1[1] Elytra with a spine -> Ausella bahiensis\n"
            "1[–] Elytra with three lines of pubescence -> Ausella lineolatus\n");
}

}  // namespace
}  // namespace keydrift
