// Ends with the numbers of their species, which count up.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNumberedEnds, ANumberedEpithetAloneIsNoCoupletWhereTheNumbersCountOn) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Ausella\n"
                   "\n"
                   "1. Pronotum lisse. . . 2.\n"
                   "— Pronotum ponctué. . . 4.\n"
                   "2. Tête lisse. Long. 2 mm . . 1. busa Roe\n"
                   "— Tête ponctuée. . . 3.\n"
                   "3. Élytres à taches rouges. Long. 2 mm . . 2. cusa Roe\n"
                   "— Élytres unicolores. Long. 1,5 mm.\n"
                   "3. Gerardini Dorn\n"
                   "4. Pattes rousses. Long. 1,8 mm . . 4. dusa Dorn\n"
                   "— Pattes noires, les tarses seuls roux. Long. 1,5 mm.\n"
                   "5. opaca Roe\n"),
            "1[1] Pronotum lisse -> 2\n"
            "1[—] Pronotum ponctué -> 4\n"
            "2[2] Tête lisse. Long. 2 mm -> Ausella busa\n"
            "2[—] Tête ponctuée -> 3\n"
            "3[3] Élytres à taches rouges. Long. 2 mm -> Ausella cusa\n"
            "3[—] Élytres unicolores. Long. 1,5 mm. -> Ausella gerardini\n"
            "4[4] Pattes rousses. Long. 1,8 mm -> Ausella dusa\n"
            "4[—] Pattes noires, les tarses seuls roux. Long. 1,5 mm. -> Ausella opaca\n");
}

TEST(PrintedNumberedEnds, GeneraBehindABlankCountOn) {
  EXPECT_EQ(sketch("Übersicht der Gattungen der Ausaceen\n"
                   "\n"
                   "A. Frucht eine Kapsel.\n"
                   "a. Samen geflügelt.\n"
                   "I. Staubblätter vor den Blättern 1. Ausella.\n"
                   "II. Staubblätter zwischen ihnen . . . . 2. Busella.\n"
                   "b. Samen ohne Flügel.\n"
                   "I. Staubblätter 10, in 2 Kreisen 3. Cusella.\n"
                   "II. Staubblätter 5 . . . . 4. Dusella.\n"
                   "B. Frucht eine Beere.\n"
                   "a. Beere mit vielen Samen 5. Fusella.\n"
                   "b. Beere mit einem Samen . . . . 6. Gusella.\n"),
            "1[A] Frucht eine Kapsel. -> 2\n"
            "1[B] Frucht eine Beere. -> 5\n"
            "2[a] Samen geflügelt. -> 3\n"
            "2[b] Samen ohne Flügel. -> 4\n"
            "3[I] Staubblätter vor den Blättern -> Ausella\n"
            "3[II] Staubblätter zwischen ihnen -> Busella\n"
            "4[I] Staubblätter 10, in 2 Kreisen -> Cusella\n"
            "4[II] Staubblätter 5 -> Dusella\n"
            "5[a] Beere mit vielen Samen -> Fusella\n"
            "5[b] Beere mit einem Samen -> Gusella\n");
}

TEST(PrintedNumberedEnds, AListOfSpeciesBehindTheKeyIsNone) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear ... 2\n"
                   "— Wings smoky ... 3\n"
                   "2. Legs red ... A. busa\n"
                   "— Legs black ... A. cusa\n"
                   "3. Head smooth ... A. dusa\n"
                   "— Head pitted ... A. fusa\n"
                   "\n"
                   "1. busa Roe. In fens.\n"
                   "2. cusa Roe. In bogs.\n"
                   "3. dusa Dorn. On heaths.\n"),
            "1[1] Wings clear -> 2\n"
            "1[—] Wings smoky -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[—] Legs black -> Ausella cusa\n"
            "3[3] Head smooth -> Ausella dusa\n"
            "3[—] Head pitted -> Ausella fusa\n");
}

TEST(PrintedNumberedEnds, NumbersInBracketsCountUp) {
  EXPECT_EQ(
      sketch("The species of Ausella are told by these characters :\n"
             "\n"
             "Leaves opposite :\n"
             "Calyx glabrous outside :\n"
             "Corolla-tube twice as long as the calyx ; limb\n"
             "8-10 lin. in diam (1) grandiflora.\n"
             "\n"
             "Corolla-tube scarcely longer than the calyx ;\n"
             "limb 3-4 lin. in diam (2) nitida.\n"
             "\n"
             "Calyx pubescent outside :\n"
             "Bracts ovate, exceeding the calyx (3) bracteata.\n"
             "Bracts linear, shorter than the calyx ... (4) linearis.\n"
             "Leaves alternate :\n"
             "Stems woody, erect ... ... (5) lutea.\n"
             "Stems herbaceous, prostrate ... ... (6) repens.\n"),
      "1[] Leaves opposite : -> 2\n"
      "1[] Leaves alternate : -> 5\n"
      "2[] Calyx glabrous outside : -> 3\n"
      "2[] Calyx pubescent outside : -> 4\n"
      "3[] Corolla-tube twice as long as the calyx ; limb 8-10 lin. in diam -> Ausella "
      "grandiflora\n"
      "3[] Corolla-tube scarcely longer than the calyx ; limb 3-4 lin. in diam -> Ausella nitida\n"
      "4[] Bracts ovate, exceeding the calyx -> Ausella bracteata\n"
      "4[] Bracts linear, shorter than the calyx -> Ausella linearis\n"
      "5[] Stems woody, erect -> Ausella lutea\n"
      "5[] Stems herbaceous, prostrate -> Ausella repens\n");
}

TEST(PrintedNumberedEnds, NumbersInBracketsThatDoNotCountAreOfWords) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Spines on segment (3) longa ... 2\n"
                   "— Spines on segment (7) bruna ... A. busa\n"
                   "2. Setae on tergite (2) alba ... A. cusa\n"
                   "— Setae on tergite (4) rubra ... A. dusa\n"),
            "1[1] Spines on segment (3) longa -> 2\n"
            "1[—] Spines on segment (7) bruna -> Ausella busa\n"
            "2[2] Setae on tergite (2) alba -> Ausella cusa\n"
            "2[—] Setae on tergite (4) rubra -> Ausella dusa\n");
}

TEST(PrintedNumberedEnds, PlacesBehindDashesAreWords) {
  EXPECT_EQ(sketch("TABLEAU DES ESPÈCES DU GENRE RHYSOCERUS\n"
                   "\n"
                   "1. Mésonotum à ponctuation espacée, les intervalles lisses 2.\n"
                   "\n"
                   "— Mésonotum à ponctuation serrée, mat ou peu brillant 4.\n"
                   "\n"
                   "2. Clypéus échancré au milieu, avec deux dents obtuses. — Toute la France 1. "
                   "nitidulus (p. 149).\n"
                   "\n"
                   "— Clypéus arrondi ou tronqué, sans dents, Tibias jaunes 3.\n"
                   "\n"
                   "3. Collare jaune. — Midi 2. tibialis (p. 150).\n"
                   "\n"
                   "— Collare noir. — Région parisienne, Centre 3. gallicus (p. 150).\n"
                   "\n"
                   "4. Ailes enfumées 5.\n"
                   "\n"
                   "— Ailes hyalines. — Corse\n"
                   "\n"
                   "4. corsicus (p. 151).\n"
                   "\n"
                   "5. Thorax noir. — Bretagne 5. carinatus (p. 152).\n"
                   "\n"
                   "— Thorax rouge 6. minutus (p. 153).\n"),
            "1[1] Mésonotum à ponctuation espacée, les intervalles lisses -> 2\n"
            "1[—] Mésonotum à ponctuation serrée, mat ou peu brillant -> 4\n"
            "2[2] Clypéus échancré au milieu, avec deux dents obtuses. — Toute la France -> "
            "Rhysocerus nitidulus (p. 149)\n"
            "2[—] Clypéus arrondi ou tronqué, sans dents, Tibias jaunes -> 3\n"
            "3[3] Collare jaune. — Midi -> Rhysocerus tibialis (p. 150)\n"
            "3[—] Collare noir. — Région parisienne, Centre -> Rhysocerus gallicus (p. 150)\n"
            "4[4] Ailes enfumées -> 5\n"
            "4[—] Ailes hyalines. — Corse -> Rhysocerus corsicus (p. 151)\n"
            "5[5] Thorax noir. — Bretagne -> Rhysocerus carinatus (p. 152)\n"
            "5[—] Thorax rouge -> Rhysocerus minutus (p. 153)\n");
}

TEST(PrintedNumberedEnds, TwoSpeciesAtAnEnd) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Rhysocerus\n"
                   "\n"
                   "1. Mésonotum lisse 2.\n"
                   "— Mésonotum mat 3.\n"
                   "2. Clypéus échancré. — Toute la France 1. nitidulus (p. 149).\n"
                   "— Clypéus arrondi. — Midi, Corse 2. tibialis (p. 150).\n"
                   "3. Ailes enfumées; deux espèces qui ne se distinguent que par l'édéage\n"
                   "3. carinatus (p. 151) et 4. opacus (p. 152).\n"
                   "— Ailes hyalines 4.\n"
                   "4. Thorax noir. — Alpes 5. minutus (p. 153).\n"
                   "— Thorax rouge. — Alpes 6. levis (p. 153).\n"),
            "1[1] Mésonotum lisse -> 2\n"
            "1[—] Mésonotum mat -> 3\n"
            "2[2] Clypéus échancré. — Toute la France -> Rhysocerus nitidulus (p. 149)\n"
            "2[—] Clypéus arrondi. — Midi, Corse -> Rhysocerus tibialis (p. 150)\n"
            "3[3] Ailes enfumées; deux espèces qui ne se distinguent que par l'édéage -> "
            "Rhysocerus carinatus + Rhysocerus opacus (p. 151; p. 152)\n"
            "3[—] Ailes hyalines -> 4\n"
            "4[4] Thorax noir. — Alpes -> Rhysocerus minutus (p. 153)\n"
            "4[—] Thorax rouge. — Alpes -> Rhysocerus levis (p. 153)\n");
}

TEST(PrintedNumberedEnds, GeneraBehindASentence) {
  EXPECT_EQ(sketch("Chiave dei generi\n"
                   "\n"
                   "1 Elitre lisce; capo breve. 1. Ausella\n"
                   "- Elitre punteggiate 2\n"
                   "2 Zampe rosse; tarsi brevi.. 2. Busella\n"
                   "- Zampe nere 3\n"
                   "3 Antenne lunghe. 3. Cusella\n"
                   "- Antenne brevi 4\n"
                   "4 Occhi grandi. 4. Dusella\n"
                   "- Occhi piccoli. 5. Fusella\n"),
            "1[1] Elitre lisce; capo breve. -> Ausella\n"
            "1[-] Elitre punteggiate -> 2\n"
            "2[2] Zampe rosse; tarsi brevi.. -> Busella\n"
            "2[-] Zampe nere -> 3\n"
            "3[3] Antenne lunghe. -> Cusella\n"
            "3[-] Antenne brevi -> 4\n"
            "4[4] Occhi grandi. -> Dusella\n"
            "4[-] Occhi piccoli. -> Fusella\n");
}

TEST(PrintedNumberedEnds, GeneraWithPagesBeneathTheirLeads) {
  EXPECT_EQ(sketch("Key to the genera\n"
                   "\n"
                   "1. Clypeus with a pair of median apical teeth, the lower tooth longer\n"
                   "than the upper. Palearctic.----------------------\n"
                   "1. Ausella Roe (p. 188)\n"
                   "Clypeus evenly convex.--------------------------------------2\n"
                   "2. Areolet present.-------------------------------\n"
                   "2. Busella, new genus (p. 190)\n"
                   "Areolet absent.-----------------------------------------3\n"
                   "3. Sheath short. ------- 3. Cusella Dorn (p. 194)\n"
                   "Sheath long.-------------------------------------4\n"
                   "4. Tail red.------------------- 4. Dusella Dorn (p. 196)\n"
                   "Tail black.-----------------------\n"
                   "5. Fusella Roe (p. 199)\n"),
            "1[1] Clypeus with a pair of median apical teeth, the lower tooth longer than the "
            "upper. Palearctic. -> Ausella (p. 188)\n"
            "1[] Clypeus evenly convex. -> 2\n"
            "2[2] Areolet present. -> Busella (new genus (p. 190))\n"
            "2[] Areolet absent. -> 3\n"
            "3[3] Sheath short. -> Cusella (p. 194)\n"
            "3[] Sheath long. -> 4\n"
            "4[4] Tail red. -> Dusella (p. 196)\n"
            "4[] Tail black. -> Fusella (p. 199)\n");
}

TEST(PrintedNumberedEnds, AnEpithetOfWhichALetterWasMisread) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Ausella\n"
                   "\n"
                   "1. Pattes rouges 1. rufa Roe.\n"
                   "— Pattes noires 2.\n"
                   "2. Tête lisse 2. levis Roe.\n"
                   "— Tête rugueuse, à extrémité rouge 3. maculipcs Dorn.\n"
                   "3. Ailes claires 4. alba Roe.\n"
                   "— Ailes sombres 5. obscura Roe.\n"
                   "4. Queue longue 6. longa Dorn.\n"
                   "— Queue courte 7. parva Dorn.\n"),
            "1[1] Pattes rouges -> Ausella rufa\n"
            "1[—] Pattes noires -> 2\n"
            "2[2] Tête lisse -> Ausella levis\n"
            "2[—] Tête rugueuse, à extrémité rouge -> Ausella maculipcs\n"
            "3[3] Ailes claires -> Ausella alba\n"
            "3[—] Ailes sombres -> Ausella obscura\n"
            "4[4] Queue longue -> Ausella longa\n"
            "4[—] Queue courte -> Ausella parva\n");
}

TEST(PrintedNumberedEnds, GeneraBehindRowsOfHyphens) {
  EXPECT_EQ(
      sketch(
          "Key to the genera\n"
          "\n"
          "1. Clypeus with a pair of median apical teeth, the lower tooth longer\n"
          "than the upper. Palearctic.----------------------\n"
          "1. Ausella Roe (p. 188)\n"
          "Clypeus evenly convex.--------------------------------------2\n"
          "2. Areolet present.-------------------------------2. Busella Dorn (in part) (p. 190)\n"
          "Areolet absent.-----------------------------------------3\n"
          "3. Sheath short.-------3. Cusella Dorn (p. 194)\n"
          "Sheath long.-------------------------------------4\n"
          "4. Tail red.-------------------4. Dusella Dorn (p. 196)\n"
          "Tail black.-----------------------\n"
          "5. Fusella Roe (p. 199)\n"),
      "1[1] Clypeus with a pair of median apical teeth, the lower tooth longer than the upper. "
      "Palearctic. -> Ausella (p. 188)\n"
      "1[] Clypeus evenly convex. -> 2\n"
      "2[2] Areolet present. -> Busella ((in part) (p. 190))\n"
      "2[] Areolet absent. -> 3\n"
      "3[3] Sheath short. -> Cusella (p. 194)\n"
      "3[] Sheath long. -> 4\n"
      "4[4] Tail red. -> Dusella (p. 196)\n"
      "4[] Tail black. -> Fusella (p. 199)\n");
}

TEST(PrintedNumberedEnds, ANumberOfTheCoupletItselfBeneathLeaders) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Schizoporina\n"
                   "\n"
                   "1. Un umbo. . . . 1. S. umbonata, p. 75.\n"
                   "— Pas d'umbo 2.\n"
                   "2. Orifice large; vit surtout sur les coquilles dans la zone littorale. . .\n"
                   "2. S. mutica, p. 75.\n"
                   "— Orifice étroit 3.\n"
                   "3. Branches cylindriques. . . .\n"
                   "3. S. ramulosa, p. 76.\n"
                   "— Branches lamelleuses . . . 4. S. lamellosa, p. 77.\n"),
            "1[1] Un umbo -> Schizoporina umbonata (p. 75.)\n"
            "1[—] Pas d'umbo -> 2\n"
            "2[2] Orifice large; vit surtout sur les coquilles dans la zone littorale -> "
            "Schizoporina mutica (p. 75.)\n"
            "2[—] Orifice étroit -> 3\n"
            "3[3] Branches cylindriques -> Schizoporina ramulosa (p. 76.)\n"
            "3[—] Branches lamelleuses -> Schizoporina lamellosa (p. 77.)\n");
}

TEST(PrintedNumberedEnds, EpithetsWithCapitalsBehindInitialsCountOn) {
  EXPECT_EQ(sketch("Key to the species of Quellina\n"
                   "\n"
                   "Hairs of the stem with glands.\n"
                   "Capsule round. 1. Q. viscida.\n"
                   "Capsule oblong. 2. Q. Hallorani.\n"
                   "Hairs of the stem without glands.\n"
                   "Corolla white. 3. Q. Candida.\n"
                   "Corolla blue.\n"
                   "Seeds with a wing. 4. Q. alata.\n"
                   "Seeds without wings.\n"
                   "Style hairy. 5. Q. pilosa.\n"
                   "Style glabrous. 6. Q. montana.\n"),
            "1[] Hairs of the stem with glands. -> 2\n"
            "1[] Hairs of the stem without glands. -> 3\n"
            "2[] Capsule round. -> Quellina viscida\n"
            "2[] Capsule oblong. -> Quellina hallorani\n"
            "3[] Corolla white. -> Quellina candida\n"
            "3[] Corolla blue. -> 4\n"
            "4[] Seeds with a wing. -> Quellina alata\n"
            "4[] Seeds without wings. -> 5\n"
            "5[] Style hairy. -> Quellina pilosa\n"
            "5[] Style glabrous. -> Quellina montana\n");
}

}  // namespace
}  // namespace keydrift
