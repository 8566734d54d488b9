// Keys that rules for odd ends of leads must leave as they are: each is what a rule of its kind
// would have harmed.

#include <gtest/gtest.h>

#include <string>

#include "keydrift/formats/edition_reader.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedUnharmedEnds, LegendsTellLettersOfDrawings) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "Abbreviations used: A. = Antenna; F. = Femur; T. = Tibia.\n"
                   "\n"
                   "1. Wings clear ........ 2\n"
                   "1'. Wings dark ........ 3\n"
                   "2. Legs red ........ A. busa\n"
                   "2'. Legs black ........ A. cusa\n"
                   "3. Head smooth ........ A. dusa\n"
                   "3'. Head rough ........ A. fusa\n"),
            "1[1] Wings clear -> 2\n"
            "1[1'] Wings dark -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[2'] Legs black -> Ausella cusa\n"
            "3[3] Head smooth -> Ausella dusa\n"
            "3[3'] Head rough -> Ausella fusa\n");
}

TEST(PrintedUnharmedEnds, AGenusThatEndsAsANeuterKeepsItsName) {
  EXPECT_EQ(sketch("Key to species\n"
                   "\n"
                   "1. Wings present ........ 2\n"
                   "1. Wings absent ........ 3\n"
                   "2. Legs red ........ Orphale busa (Ausella busa)\n"
                   "2. Legs black ........ Orphale cusa (Busella cusa auct.)\n"
                   "3. Head smooth ........ Orphale dusa\n"
                   "3. Head rough ........ Orphale fusa\n"),
            "1[1] Wings present -> 2\n"
            "1[1] Wings absent -> 3\n"
            "2[2] Legs red -> Orphale busa (Ausella busa)\n"
            "2[2] Legs black -> Orphale cusa (Busella cusa auct.)\n"
            "3[3] Head smooth -> Orphale dusa\n"
            "3[3] Head rough -> Orphale fusa\n");
}

TEST(PrintedUnharmedEnds, ACoupletThatAPieceLeavesOutIsNoPage) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1\n"
                   "Wings clear\n"
                   "2\n"
                   "1\n"
                   "Wings dark\n"
                   "3\n"
                   "2\n"
                   "Legs red\n"
                   "25\n"
                   "2\n"
                   "Legs black\n"
                   "Ausella cusa\n"
                   "3\n"
                   "Head smooth\n"
                   "4\n"
                   "3\n"
                   "Head rough\n"
                   "Ausella fusa\n"
                   "4\n"
                   "Tail long\n"
                   "Ausella gusa\n"
                   "4\n"
                   "Tail short\n"
                   "Ausella husa\n"),
            "1[1] Wings clear -> 2\n"
            "1[1] Wings dark -> 3\n"
            "2[2] Legs red -> ?25\n"
            "2[2] Legs black -> Ausella cusa\n"
            "3[3] Head smooth -> 4\n"
            "3[3] Head rough -> Ausella fusa\n"
            "4[4] Tail long -> Ausella gusa\n"
            "4[4] Tail short -> Ausella husa\n");
}

TEST(PrintedUnharmedEnds, TwoDotsBehindAFigureLeadNowhere) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Wings clear ........ 2\n"
                   "1. Wings dark ........ 3\n"
                   "2. Legs red, body pale, shaped as in\n"
                   "fig. 3 ........ A. busa\n"
                   "2. Legs black ........ A. cusa\n"
                   "3. Head smooth, see fig..5\n"
                   "and pale ........ A. dusa\n"
                   "3. Head rough, cf. fig..6\n"
                   "and dark ........ A. fusa\n"),
            "1[1] Wings clear -> 2\n"
            "1[1] Wings dark -> 3\n"
            "2[2] Legs red, body pale, shaped as in fig. 3 -> Ausella busa\n"
            "2[2] Legs black -> Ausella cusa\n"
            "3[3] Head smooth, see fig..5 and pale -> Ausella dusa\n"
            "3[3] Head rough, cf. fig..6 and dark -> Ausella fusa\n");
}

TEST(PrintedUnharmedEnds, RemarksBeneathAResultAreNoWords) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1a  Wings clear, without spots at base            2\n"
                   "1b  Wings dark, with spots at base                3\n"
                   "2a  Legs red, with long black hairs               Ausella busa\n"
                   "    Habitat: fens\n"
                   "2b  Legs black, with short red hairs              Ausella cusa\n"
                   "    Habitat: bogs\n"
                   "3a  Head smooth, eyes large                       Ausella dusa\n"
                   "    Habitat: woods\n"
                   "3b  Head rough, eyes small                        Ausella fusa\n"
                   "    Habitat: dunes\n"),
            "1[1a] Wings clear, without spots at base -> 2\n"
            "1[1b] Wings dark, with spots at base -> 3\n"
            "2[2a] Legs red, with long black hairs -> Ausella busa\n"
            "2[2b] Legs black, with short red hairs -> Ausella cusa\n"
            "3[3a] Head smooth, eyes large -> Ausella dusa\n"
            "3[3b] Head rough, eyes small -> Ausella fusa\n");
}

TEST(PrintedUnharmedEnds, AnAuthorMayBeNamedAsAMonth) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Wings clear ........ 2\n"
                   "1. Wings dark ........ 3\n"
                   "2. Legs red ........ Ausella busa\n"
                   "         May, 1917\n"
                   "2. Legs black ........ Ausella cusa\n"
                   "         Dorn, 1918\n"
                   "3. Head smooth ........ Ausella dusa\n"
                   "         May, 1917\n"
                   "3. Head rough ........ Ausella fusa\n"
                   "         Roe, 1900\n"),
            "1[1] Wings clear -> 2\n"
            "1[1] Wings dark -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[2] Legs black -> Ausella cusa\n"
            "3[3] Head smooth -> Ausella dusa\n"
            "3[3] Head rough -> Ausella fusa\n");
}

TEST(PrintedUnharmedEnds, LettersWithACommaMayBeLabels) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "Fig. 1. Ausella busa, wing.\n"
                   "A, Wings clear ........ B\n"
                   "A, Wings dark ........ C\n"
                   "B, Legs red ........ A. busa\n"
                   "B, Legs black ........ A. cusa\n"
                   "C, Head smooth ........ A. dusa\n"
                   "C, Head rough ........ A. fusa\n"),
            "A[A,] Wings clear -> B\n"
            "A[A,] Wings dark -> C\n"
            "B[B,] Legs red -> Ausella busa\n"
            "B[B,] Legs black -> Ausella cusa\n"
            "C[C,] Head smooth -> Ausella dusa\n"
            "C[C,] Head rough -> Ausella fusa\n");
}

TEST(PrintedUnharmedEnds, AScaleIsNoWordOfTheName) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Wings clear ........ 2\n"
                   "1. Wings dark ........ 3\n"
                   "2. Legs red ........ Ausella busa\n"
                   "5 mm\n"
                   "2. Legs black ........ Ausella cusa\n"
                   "3. Head smooth ........ Ausella dusa\n"
                   "0.5 mm A\n"
                   "3. Head rough ........ Ausella fusa\n"),
            "1[1] Wings clear -> 2\n"
            "1[1] Wings dark -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[2] Legs black -> Ausella cusa\n"
            "3[3] Head smooth -> Ausella dusa\n"
            "3[3] Head rough -> Ausella fusa\n");
}

// What the second lead of couplet 2 leads to, with markup.
std::string end_of(std::string const& marked) {
  auto const loaded = read_edition(
      {.name = "key.html",
       .bytes = "<table><tr><td>1</td><td>Wings clear</td><td>2</td></tr><tr><td>-</td><td>Wings "
                "dark</td><td><i>Aus busa</i></td></tr><tr><td>2</td><td>Legs pale</td><td><i>Aus "
                "eusa</i></td></tr><tr><td>-</td><td>Legs dark</td><td>" +
                marked + "</td></tr></table>"});
  if (!loaded) return "none";
  auto const text = sketch(loaded.value->edition);
  return text.substr(text.rfind("-> ") + 3);
}

TEST(PrintedUnharmedEnds, RanksBelowASpeciesInItsCellBelongToIt) {
  EXPECT_EQ(end_of("<i>Aus cusa</i><br>var. rusa"), "Aus cusa var. rusa\n");
  EXPECT_EQ(end_of("<i>Aus</i><br>sp. 2"), "Aus sp. 2\n");
}

TEST(PrintedUnharmedEnds, CharactersBeforeANameInBracketsAreNoCommonName) {
  auto const loaded =
      read_edition({.name = "key.html",
                    .bytes = "<p>1. Wings clear. Go to 2</p><p>1. Wings dark. <i>Aus busa</i></p>"
                             "<p>2. Head smooth. Legs red (<i>Aus cusa</i>)</p>"
                             "<p>2. Head rough. Legs black (<i>Aus dusa</i>)</p>"});
  ASSERT_TRUE(loaded);
  auto const& lead = loaded.value->edition.couplets.at(1).leads.at(0);
  EXPECT_NE(lead.text.find("Legs red"), std::string::npos);
}

TEST(PrintedUnharmedEnds, SpeciesWhoseNamesDifferInOneLetterEach) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Elytra red .......... 2\n"
                   "- Elytra black .......... lutipes\n"
                   "2. Legs pale .......... 3\n"
                   "- Legs dark .......... rufescens\n"
                   "3. Head red .......... alba\n"
                   "- Head blue .......... nigra\n"
                   "\n"
                   "Ausella rufipes Roe\n"
                   "Head red, long. Found in woods.\n"
                   "\n"
                   "Ausella lutescens Roe\n"
                   "Head blue, long. Found in woods.\n"
                   "\n"
                   "Ausella alba Roe\n"
                   "Head white.\n"
                   "\n"
                   "Ausella nigra Roe\n"
                   "Head black.\n"),
            "1[1] Elytra red -> 2\n"
            "1[-] Elytra black -> Ausella lutipes\n"
            "2[2] Legs pale -> 3\n"
            "2[-] Legs dark -> Ausella rufescens\n"
            "3[3] Head red -> Ausella alba\n"
            "3[-] Head blue -> Ausella nigra\n");
}

TEST(PrintedUnharmedEnds, AKeysTitleBeneathAPagesNumber) {
  EXPECT_EQ(sketch("220\n"
                   "\n"
                   "KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Elytra red .......... 2\n"
                   "- Elytra black .......... nigra\n"
                   "2. Legs pale .......... pallipes\n"
                   "- Legs dark .......... fuscipes\n"),
            "1[1] Elytra red -> 2\n"
            "1[-] Elytra black -> Ausella nigra\n"
            "2[2] Legs pale -> Ausella pallipes\n"
            "2[-] Legs dark -> Ausella fuscipes\n");
}

TEST(PrintedUnharmedEnds, LabelsAloneAboveArticles) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "a.\n"
                   "A red elytron .......... A. rubra\n"
                   "aa.\n"
                   "A black elytron\n"
                   "b.\n"
                   "A pale leg .......... A. pallipes\n"
                   "bb.\n"
                   "A dark leg .......... A. fuscipes\n"),
            "a[a] A red elytron -> Ausella rubra\n"
            "a[aa] A black elytron -> b\n"
            "b[b] A pale leg -> Ausella pallipes\n"
            "b[bb] A dark leg -> Ausella fuscipes\n");
}

TEST(PrintedUnharmedEnds, JustifiedLeadsWithLabelsOfCapitals) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "A. Head red, smooth . . . . . . . . . . B\n"
                   "AA. Head black        legs long        tail white\n"
                   "    Wings grey        belly pale       Ausella nigra\n"
                   "B. Legs white . . . . . . . . . . . . Ausella alba\n"
                   "BB. Legs green . . . . . . . . . . . . Ausella viridis\n"),
            "A[A] Head red, smooth -> B\n"
            "A[AA] Head black legs long tail white Wings grey belly pale -> Ausella nigra\n"
            "B[B] Legs white -> Ausella alba\n"
            "B[BB] Legs green -> Ausella viridis\n");
}

TEST(PrintedUnharmedEnds, LatinPluralsOfParts) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Head red, large .......... 2\n"
                   "- Head black, large .......... 3\n"
                   "2. Legs pale .......... pallipes\n"
                   "- Legs dark .......... fuscipes\n"
                   "3. Wings long .......... 4\n"
                   "- Wings short .......... 5\n"
                   "4. Tail long .......... longicauda\n"
                   "- Tail short .......... brevicauda\n"
                   "5. Eye red .......... rubripes\n"
                   "- Eye black .......... 6\n"
                   "6. Front leg with long dactyli\n"
                   "- Front leg with short ones .......... brevimana\n"
                   "7. Spines two .......... bispinosa\n"
                   "- Spines three .......... trispinosa\n"),
            "1[1] Head red, large -> 2\n"
            "1[-] Head black, large -> 3\n"
            "2[2] Legs pale -> Ausella pallipes\n"
            "2[-] Legs dark -> Ausella fuscipes\n"
            "3[3] Wings long -> 4\n"
            "3[-] Wings short -> 5\n"
            "4[4] Tail long -> Ausella longicauda\n"
            "4[-] Tail short -> Ausella brevicauda\n"
            "5[5] Eye red -> Ausella rubripes\n"
            "5[-] Eye black -> 6\n"
            "6[6] Front leg with long dactyli -> ?\n"
            "6[-] Front leg with short ones -> Ausella brevimana\n"
            "7[7] Spines two -> Ausella bispinosa\n"
            "7[-] Spines three -> Ausella trispinosa\n");
}

TEST(PrintedUnharmedEnds, VarietiesThatAreCalledNova) {
  EXPECT_EQ(sketch("1. Wings long .......... 2\n"
                   "- Wings short .......... Ausella nigra Roe var. nova Dorn\n"
                   "2. Legs pale .......... Ausella nigra f. nova Dorn\n"
                   "- Legs dark .......... 3\n"
                   "3. Tail red .......... nigra var. nova\n"
                   "- Tail dark .......... nigra subsp. nova Dorn, 1901\n"),
            "1[1] Wings long -> 2\n"
            "1[-] Wings short -> Ausella nigra var. nova\n"
            "2[2] Legs pale -> Ausella nigra f. nova\n"
            "2[-] Legs dark -> 3\n"
            "3[3] Tail red -> Ausella nigra var. nova\n"
            "3[-] Tail dark -> Ausella nigra subsp. nova\n");
}

TEST(PrintedUnharmedEnds, NumbersBelowZero) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Elytra red .......... 2\n"
                   "- Elytra black .......... 3\n"
                   "2. Legs pale .......... A. pallipes\n"
                   "- Legs dark .......... A. fuscipes\n"
                   "3. Found in winter at temperatures below -4\n"
                   "   degrees .......... A. hiemalis\n"
                   "- Found in summer .......... 5\n"
                   "4. Head long .......... A. longa\n"
                   "- Head short .......... A. brevis\n"
                   "5. Head red .......... A. rubra\n"
                   "- Head pale .......... A. pallida\n"),
            "1[1] Elytra red -> 2\n"
            "1[-] Elytra black -> 3\n"
            "2[2] Legs pale -> Ausella pallipes\n"
            "2[-] Legs dark -> Ausella fuscipes\n"
            "3[3] Found in winter at temperatures below -4 degrees -> Ausella hiemalis\n"
            "3[-] Found in summer -> 5\n"
            "4[4] Head long -> Ausella longa\n"
            "4[-] Head short -> Ausella brevis\n"
            "5[5] Head red -> Ausella rubra\n"
            "5[-] Head pale -> Ausella pallida\n");
}

TEST(PrintedUnharmedEnds, LeadsOfOneWordBesideNumberedSpecies) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Leaves opposite\n"
                   "2. Petals red . . . 1. A. busa\n"
                   "2. Petals white . . . 2. A. alba\n"
                   "1. Leaves alternate\n"
                   "3. Trees\n"
                   "4. Fruit dry . . . 3. A. corta\n"
                   "4. Fruit fleshy . . . 4. A. densa\n"
                   "3. Shrubs\n"
                   "5. Bark grey . . . 5. A. grisea\n"
                   "5. Bark brown . . . 6. A. fusca\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1] Leaves alternate -> 3\n"
            "2[2] Petals red -> Ausella busa\n"
            "2[2] Petals white -> Ausella alba\n"
            "3[3] Trees -> 4\n"
            "3[3] Shrubs -> 5\n"
            "4[4] Fruit dry -> Ausella corta\n"
            "4[4] Fruit fleshy -> Ausella densa\n"
            "5[5] Bark grey -> Ausella grisea\n"
            "5[5] Bark brown -> Ausella fusca\n");
}

TEST(PrintedUnharmedEnds, GeneraThatDifferByTwoLetters) {
  EXPECT_EQ(sketch("KEY TO SPECIES\n"
                   "\n"
                   "1. Leaves opposite ........ 2\n"
                   "1. Leaves alternate ........ 3\n"
                   "2. Petals red ........ Corellina alba\n"
                   "2. Petals white ........ Corollina albata\n"
                   "3. Petals blue ........ Corollina densa\n"
                   "3. Petals yellow ........ Auselia busa (= Corollina busa)\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1] Leaves alternate -> 3\n"
            "2[2] Petals red -> Corellina alba\n"
            "2[2] Petals white -> Corollina albata\n"
            "3[3] Petals blue -> Corollina densa\n"
            "3[3] Petals yellow -> Auselia busa (= Corollina busa)\n");
}

TEST(PrintedUnharmedEnds, DashesThatAnswerFirstLeadsAmongPrimes) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1 Leaves opposite 2\n"
                   "1' Leaves alternate 3\n"
                   "2 Petals red A. busa\n"
                   "2' Petals white A. alba\n"
                   "3 Petals blue 4\n"
                   "3' Petals yellow 5\n"
                   "4 Fruit dry, plants of the hills\n"
                   "- Fruit fleshy A. setosa\n"
                   "5 Seeds one A. corta\n"
                   "5' Seeds many A. densa\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1'] Leaves alternate -> 3\n"
            "2[2] Petals red -> Ausella busa\n"
            "2[2'] Petals white -> Ausella alba\n"
            "3[3] Petals blue -> 4\n"
            "3[3'] Petals yellow -> 5\n"
            "4[4] Fruit dry, plants of the hills -> ?\n"
            "4[-] Fruit fleshy -> Ausella setosa\n"
            "5[5] Seeds one -> Ausella corta\n"
            "5[5'] Seeds many -> Ausella densa\n");
}

TEST(PrintedUnharmedEnds, GeneraInCapitalsBesideAsManyEpithets) {
  EXPECT_EQ(sketch("KEY TO AUSELLA\n"
                   "\n"
                   "1. Leaves opposite .... 2\n"
                   "1. Leaves alternate .... 3\n"
                   "2. Petals red, sepals green .... BUSARIA\n"
                   "2. Petals white, sepals green .... CORTINIA\n"
                   "3. Petals blue, sepals long .... DENSELLA\n"
                   "3. Petals yellow .... 4\n"
                   "4. Fruit dry .... minuta\n"
                   "4. Fruit fleshy .... 5\n"
                   "5. Bark grey .... grisea\n"
                   "5. Bark brown .... fusca\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1] Leaves alternate -> 3\n"
            "2[2] Petals red, sepals green -> Busaria\n"
            "2[2] Petals white, sepals green -> Cortinia\n"
            "3[3] Petals blue, sepals long -> Densella\n"
            "3[3] Petals yellow -> 4\n"
            "4[4] Fruit dry -> Ausella minuta\n"
            "4[4] Fruit fleshy -> 5\n"
            "5[5] Bark grey -> Ausella grisea\n"
            "5[5] Bark brown -> Ausella fusca\n");
}

TEST(PrintedUnharmedEnds, RegionsBehindNumbers) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Leaves opposite 2\n"
                   "1. Leaves alternate 3\n"
                   "2. Petals red. A. busa Roe. 1. S. Africa\n"
                   "2. Petals white. A. alba Roe. 2. N. America\n"
                   "3. Petals blue. A. corta Roe. 3. S. Africa\n"
                   "3. Petals yellow 4\n"
                   "4. Fruit dry. A. minuta Roe. 4. N. America\n"
                   "4. Fruit fleshy. A. setosa Roe. 5. S. Africa\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1] Leaves alternate -> 3\n"
            "2[2] Petals red. -> Ausella busa (1. S. Africa)\n"
            "2[2] Petals white. -> Ausella alba (2. N. America)\n"
            "3[3] Petals blue. -> Ausella corta (3. S. Africa)\n"
            "3[3] Petals yellow -> 4\n"
            "4[4] Fruit dry. -> Ausella minuta (4. N. America)\n"
            "4[4] Fruit fleshy. -> Ausella setosa (5. S. Africa)\n");
}

TEST(PrintedUnharmedEnds, EpithetsThatHonourWithACapitalWithin) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Leaves opposite .... 2\n"
                   "1. Leaves alternate .... 3\n"
                   "2. Petals red .... A. vanRoei\n"
                   "2. Petals white .... A. alba\n"
                   "3. Petals blue .... A. densa\n"
                   "3. Petals yellow .... A. minuta\n"
                   "\n"
                   "B. vannoei Dorn has long leaves.\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1] Leaves alternate -> 3\n"
            "2[2] Petals red -> Ausella vanRoei\n"
            "2[2] Petals white -> Ausella alba\n"
            "3[3] Petals blue -> Ausella densa\n"
            "3[3] Petals yellow -> Ausella minuta\n");
}

TEST(PrintedUnharmedEnds, RomanPages) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Leaves opposite, A. rubra Roe, p. 12\n"
                   "1. Leaves alternate 2\n"
                   "2. Petals red, A. busa Roe, p. 14\n"
                   "2. Petals white, A. alba Roe, p. II\n"
                   "2. Petals blue, A. caerulea Roe, p. 15\n"),
            "1[1] Leaves opposite, -> Ausella rubra (p. 12)\n"
            "1[1] Leaves alternate -> 2\n"
            "2[2] Petals red, -> Ausella busa (p. 14)\n"
            "2[2] Petals white, -> Ausella alba (p. II)\n"
            "2[2] Petals blue, -> Ausella caerulea (p. 15)\n");
}

TEST(PrintedUnharmedEnds, ArticlesAtTheFrontOfLines) {
  EXPECT_EQ(sketch("CHAVE PARA AS ESPECIES DE AUSELLA\n"
                   "\n"
                   "1. Antenas longas . . . 2\n"
                   "1. Antenas curtas . . . 3\n"
                   "2. Asas claras.\n"
                   "A tibia (posterior) longa . . . A. busa\n"
                   "2. Asas escuras.\n"
                   "A tibia (posterior) curta . . . A. alba\n"
                   "3. Corpo azul . . . A. corta\n"
                   "3. Corpo pardo . . . 4\n"
                   "4. Olhos grandes . . . A. minuta\n"
                   "4. Olhos pequenos . . . 5\n"
                   "5. Patas negras . . . A. nigra\n"
                   "5. Patas pardas . . . A. fusca\n"),
            "1[1] Antenas longas -> 2\n"
            "1[1] Antenas curtas -> 3\n"
            "2[2] Asas claras. A tibia (posterior) longa -> Ausella busa\n"
            "2[2] Asas escuras. A tibia (posterior) curta -> Ausella alba\n"
            "3[3] Corpo azul -> Ausella corta\n"
            "3[3] Corpo pardo -> 4\n"
            "4[4] Olhos grandes -> Ausella minuta\n"
            "4[4] Olhos pequenos -> 5\n"
            "5[5] Patas negras -> Ausella nigra\n"
            "5[5] Patas pardas -> Ausella fusca\n");
}

TEST(PrintedUnharmedEnds, TwoSpeciesWithTheirPages) {
  EXPECT_EQ(
      sketch("Key to the species of Hiemicapna\n"
             "\n"
             "1. Plate with a bar.....nodosa, p. 378\n"
             "   Plate without such a bar.....minuta, p. 381; rosseri, p. 382\n"
             "2. Plate with a bar.....lata, p. 378\n"
             "   Plate without such a bar.....tenuis, p. 381, and brevis, p. 382\n"),
      "1[1] Plate with a bar -> Hiemicapna nodosa (p. 378)\n"
      "1[] Plate without such a bar -> Hiemicapna minuta + Hiemicapna rosseri (p. 381; p. 382)\n"
      "2[2] Plate with a bar -> Hiemicapna lata (p. 378)\n"
      "2[] Plate without such a bar -> Hiemicapna tenuis + Hiemicapna brevis (p. 381; p. 382)\n");
}

TEST(PrintedUnharmedEnds, TheTitleOfARevisionTellsItsGenus) {
  EXPECT_EQ(sketch("A REVISION OF THE WEEVILS OF THE GENUS DRUSELLA\n"
                   "\n"
                   "1. Wings clear ... 2\n"
                   "- Wings dark ... 3\n"
                   "2. Legs red ... rubra\n"
                   "- Legs black ... nigra\n"
                   "3. Head round ... rotunda\n"
                   "- Head long ... 4\n"
                   "4. Beak hooked ... falcata\n"
                   "- Beak straight ... recta\n"
                   "\n"
                   "rubra (Roe)\n"
                   "Busella rubra Roe 1850: 12.\n"
                   "Common near water.\n"
                   "\n"
                   "nigra (Roe)\n"
                   "Busella nigra Roe 1850: 13.\n"
                   "On dry hills.\n"
                   "\n"
                   "rotunda (Dorn)\n"
                   "Busella rotunda Dorn 1861: 40.\n"
                   "On sand dunes.\n"
                   "\n"
                   "falcata (Dorn)\n"
                   "Busella falcata Dorn 1861: 41.\n"
                   "In bogs.\n"
                   "\n"
                   "recta (Dorn)\n"
                   "Busella recta Dorn 1861: 44.\n"
                   "In woods.\n"),
            "1[1] Wings clear -> 2\n"
            "1[-] Wings dark -> 3\n"
            "2[2] Legs red -> Drusella rubra\n"
            "2[-] Legs black -> Drusella nigra\n"
            "3[3] Head round -> Drusella rotunda\n"
            "3[-] Head long -> 4\n"
            "4[4] Beak hooked -> Drusella falcata\n"
            "4[-] Beak straight -> Drusella recta\n");
}

TEST(PrintedUnharmedEnds, TheTitleOfASecondKeyTellsItsGenus) {
  EXPECT_EQ(sketch("THE FISHES OF LAKE VARN\n"
                   "\n"
                   "Key to the species of Busella\n"
                   "\n"
                   "1. Eyes large ... 2\n"
                   "- Eyes small ... 3\n"
                   "2. Tail forked ... furcata\n"
                   "- Tail round ... cauda\n"
                   "3. Mouth below ... infera\n"
                   "- Mouth above ... supera\n"
                   "\n"
                   "612. BUSELLA Roe.\n"
                   "\n"
                   "Busella furcata Roe\n"
                   "Common in the lake. Busella furcata eats snails.\n"
                   "\n"
                   "Busella infera Dorn\n"
                   "Rare. Busella infera is small.\n"
                   "\n"
                   "Busella supera Dorn\n"
                   "Rare. Busella supera is large.\n"
                   "\n"
                   "The species of the genus OSTRAPOS\n"
                   "\n"
                   "1. Fins long ... 2\n"
                   "- Fins short ... 3\n"
                   "2. Scales red ... rubra\n"
                   "- Scales black ... nigra\n"
                   "3. Head round ... rotunda\n"
                   "- Head long ... falcata\n"),
            "1[1] Eyes large -> 2\n"
            "1[-] Eyes small -> 3\n"
            "2[2] Tail forked -> Busella furcata\n"
            "2[-] Tail round -> Busella cauda\n"
            "3[3] Mouth below -> Busella infera\n"
            "3[-] Mouth above -> Busella supera\n"
            "1[1] Fins long -> 2\n"
            "1[-] Fins short -> 3\n"
            "2[2] Scales red -> Ostrapos rubra\n"
            "2[-] Scales black -> Ostrapos nigra\n"
            "3[3] Head round -> Ostrapos rotunda\n"
            "3[-] Head long -> Ostrapos falcata\n");
}

TEST(PrintedUnharmedEnds, PagesBehindSpacedNames) {
  EXPECT_EQ(sketch("Key to the genera\n"
                   "\n"
                   "1. Wings clear, A u s e l l a 12.\n"
                   "- Wings dark .... 2\n"
                   "2. Legs long, B u s o g l e n a 10.\n"
                   "- Legs short .... 3\n"
                   "3. Head round, C u s a l i a 14.\n"
                   "- Head long .... 4\n"
                   "4. Beak hooked, D u s e r i a 17.\n"
                   "- Beak straight, E u s i n a 21.\n"),
            "1[1] Wings clear, -> Ausella (12.)\n"
            "1[-] Wings dark -> 2\n"
            "2[2] Legs long, -> Busoglena (10.)\n"
            "2[-] Legs short -> 3\n"
            "3[3] Head round, -> Cusalia (14.)\n"
            "3[-] Head long -> 4\n"
            "4[4] Beak hooked, -> Duseria (17.)\n"
            "4[-] Beak straight, -> Eusina (21.)\n");
}

TEST(PrintedUnharmedEnds, FootnotesOfOneWord) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear .... 2\n"
                   "- Wings dark .... 3\n"
                   "2. Legs long .... A. nigra\n"
                   "- Legs short .... A. rubra (1)\n"
                   "\n"
                   "1. Addenda.\n"
                   "\n"
                   "3. Head round .... A. rotunda\n"
                   "- Head long .... 4\n"
                   "4. Beak hooked .... A. falcata\n"
                   "- Beak straight .... A. recta\n"),
            "1[1] Wings clear -> 2\n"
            "1[-] Wings dark -> 3\n"
            "2[2] Legs long -> Ausella nigra\n"
            "2[-] Legs short -> Ausella rubra (1)\n"
            "3[3] Head round -> Ausella rotunda\n"
            "3[-] Head long -> 4\n"
            "4[4] Beak hooked -> Ausella falcata\n"
            "4[-] Beak straight -> Ausella recta\n");
}

TEST(PrintedUnharmedEnds, CodesAmongCapitals) {
  EXPECT_EQ(sketch("Key to the genera\n"
                   "\n"
                   "1. Wings clear, head round ..... 2\n"
                   "- Wings dark ..... 3\n"
                   "2. Legs long, bcde ..... AUSELLA sp. DEB0ACFE\n"
                   "- Legs short ..... BUSELLA sp. CAFE0BAB\n"
                   "3. Head round ..... Ausella sp. GENBA0K\n"
                   "- Head long ..... Cusalia\n"),
            "1[1] Wings clear, head round -> 2\n"
            "1[-] Wings dark -> 3\n"
            "2[2] Legs long, bcde -> Ausella sp.\n"
            "2[-] Legs short -> Busella sp.\n"
            "3[3] Head round -> Ausella sp.\n"
            "3[-] Head long -> Cusalia\n");
}

TEST(PrintedUnharmedEnds, CodesBehindCommas) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear, length 12 mm, body stout, fig. 10, 115B.\n"
                   "   Ausella rubra Roe, 1651.\n"
                   "- Wings dark .... 2\n"
                   "2. Legs long .... A. nigra, 165S.\n"
                   "- Legs short .... 3\n"
                   "3. Head round .... A. rotunda, 1652.\n"
                   "- Head long .... 4\n"
                   "4. Beak hooked .... A. falcata, 1653.\n"
                   "- Beak straight .... A. recta, 1654.\n"),
            "1[1] Wings clear, length 12 mm, body stout, fig. 10, 115B. -> Ausella rubra\n"
            "1[-] Wings dark -> 2\n"
            "2[2] Legs long -> Ausella nigra\n"
            "2[-] Legs short -> 3\n"
            "3[3] Head round -> Ausella rotunda\n"
            "3[-] Head long -> 4\n"
            "4[4] Beak hooked -> Ausella falcata\n"
            "4[-] Beak straight -> Ausella recta\n");
}

}  // namespace
}  // namespace keydrift
