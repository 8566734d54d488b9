// Words with a capital before epithets that stand without their genus.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedWordsBeforeEpithets, PlacesAreNoGenera) {
  EXPECT_EQ(sketch("Key to Female Ausella\n"
                   "\n"
                   "1a. Epigynum with scape longer than wide 2\n"
                   "1b. Epigynum with scape wider than long 4\n"
                   "2a. Abdomen with humps .. busa\n"
                   "2b. Abdomen oval .. 3\n"
                   "3a. Scape annulate; northern Argentina, Paraguay cusa\n"
                   "3b. Scape smooth; Peru .. dusa\n"
                   "4a. Median plate oval; Colombia fusa\n"
                   "4b. Median plate narrow, triangular;\n"
                   "southern Brazil flavicoxa\n"
                   "\n"
                   "Ausella busa (Roe)\n"
                   "Epeira busa Roe, 1863, Verhandl. Ges., 13: 511.\n"),
            "1[1a] Epigynum with scape longer than wide -> 2\n"
            "1[1b] Epigynum with scape wider than long -> 4\n"
            "2[2a] Abdomen with humps -> Ausella busa\n"
            "2[2b] Abdomen oval -> 3\n"
            "3[3a] Scape annulate; northern Argentina, Paraguay -> Ausella cusa\n"
            "3[3b] Scape smooth; Peru -> Ausella dusa\n"
            "4[4a] Median plate oval; Colombia -> Ausella fusa\n"
            "4[4b] Median plate narrow, triangular; southern Brazil -> Ausella flavicoxa\n");
}

TEST(PrintedWordsBeforeEpithets, GeneraStayWhereLeadersLeadToThem) {
  EXPECT_EQ(sketch("Key to the species of the northern genera\n"
                   "\n"
                   "1. Legs red .. Ausella busa\n"
                   "— Legs black .. 2\n"
                   "2. Head smooth; known from Peru, Busella cusa Roe\n"
                   "— Head pitted .. 3\n"
                   "3. Wings clear .. Cusella dusa\n"
                   "— Wings smoky; abdomen short Dusella fusa Roe\n"),
            "1[1] Legs red -> Ausella busa\n"
            "1[—] Legs black -> 2\n"
            "2[2] Head smooth; known from Peru, -> Busella cusa\n"
            "2[—] Head pitted -> 3\n"
            "3[3] Wings clear -> Cusella dusa\n"
            "3[—] Wings smoky; abdomen short -> Dusella fusa\n");
}

TEST(PrintedWordsBeforeEpithets, AnAuthorBehindAnEpithetIsNoGenus) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n"
             "\n"
             "1. Clypeus straight; elytra brown at the sides only, pauper, Arkell, p. 30.\n"
             "— Clypeus rounded ... 2\n"
             "2. Elytra smooth .... splendida, Roe, p. 31.\n"
             "— Elytra pitted ... 3\n"
             "3. Head red .... auricollis, Roe, p. 33.\n"
             "— Head black .... doverina, Arkell, p. 34.\n"),
      "1[1] Clypeus straight; elytra brown at the sides only -> Ausella pauper (Arkell, p. 30.)\n"
      "1[—] Clypeus rounded -> 2\n"
      "2[2] Elytra smooth -> Ausella splendida (Roe, p. 31.)\n"
      "2[—] Elytra pitted -> 3\n"
      "3[3] Head red -> Ausella auricollis (Roe, p. 33.)\n"
      "3[—] Head black -> Ausella doverina (Arkell, p. 34.)\n");
}

TEST(PrintedWordsBeforeEpithets, ANounBeforeAnEpithetIsNone) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Openings of the folium on the posterior face .. 2\n"
                   "— Openings on each side .. 3\n"
                   "2. Abdomen with a white folium lata\n"
                   "— Abdomen with a narrow septum (Fig. 40) septata\n"
                   "3. Legs banded .. busa\n"
                   "— Legs plain .. 4\n"
                   "4. Sternum dark .. cusa\n"
                   "— Sternum pale .. 5\n"
                   "5. Plate triangular .. dusa\n"
                   "— Plate round .. fusa\n"),
            "1[1] Openings of the folium on the posterior face -> 2\n"
            "1[—] Openings on each side -> 3\n"
            "2[2] Abdomen with a white folium -> Ausella lata\n"
            "2[—] Abdomen with a narrow septum (Fig. 40) -> Ausella septata\n"
            "3[3] Legs banded -> Ausella busa\n"
            "3[—] Legs plain -> 4\n"
            "4[4] Sternum dark -> Ausella cusa\n"
            "4[—] Sternum pale -> 5\n"
            "5[5] Plate triangular -> Ausella dusa\n"
            "5[—] Plate round -> Ausella fusa\n");
}

TEST(PrintedWordsBeforeEpithets, AShortenedPlaceIsNoGenus) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Arten der Gattung Ausella\n"
                   "\n"
                   "1. Stirn breit. Flügeldecken gestreift. — Krim. oculata Roe.\n"
                   "— Stirn schmal .. 2\n"
                   "2. Fühler kurz .. busa Roe.\n"
                   "— Fühler lang .. 3\n"
                   "3. Beine rot .. cusa Dorn.\n"
                   "— Beine schwarz .. dusa Dorn.\n"),
            "1[1] Stirn breit. Flügeldecken gestreift. — Krim. -> Ausella oculata\n"
            "1[—] Stirn schmal -> 2\n"
            "2[2] Fühler kurz -> Ausella busa\n"
            "2[—] Fühler lang -> 3\n"
            "3[3] Beine rot -> Ausella cusa\n"
            "3[—] Beine schwarz -> Ausella dusa\n");
}

TEST(PrintedWordsBeforeEpithets, ASubspeciesStays) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Legs red .. busa\n"
                   "— Legs black .. 2\n"
                   "2. Head smooth .. cusa\n"
                   "— Head pitted .. 3\n"
                   "3. Wings clear .. dusa\n"
                   "— Wings smoky .. 4\n"
                   "4. Elytra with a red spot at the base picta cockburni\n"
                   "— Elytra black .. fusa\n"),
            "1[1] Legs red -> Ausella busa\n"
            "1[—] Legs black -> 2\n"
            "2[2] Head smooth -> Ausella cusa\n"
            "2[—] Head pitted -> 3\n"
            "3[3] Wings clear -> Ausella dusa\n"
            "3[—] Wings smoky -> 4\n"
            "4[4] Elytra with a red spot at the base picta cockburni -> ?\n"
            "4[—] Elytra black -> Ausella fusa\n");
}

TEST(PrintedWordsBeforeEpithets, AnEpithetAndItsAuthorBehindAPlace) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Arten von Ausella\n"
                   "\n"
                   "1 (2) Stirn breit; Fühler kurz .. busa Strgl.\n"
                   "2 (1) Stirn schmal.\n"
                   "3 (4) Flügel mit Randdorn .. cusa Hollr.\n"
                   "4 (3) Flügel ohne Randdorn. — 2,5 mm. — Schweden, Finnland minuta Beckm.\n"),
            "1[1] Stirn breit; Fühler kurz -> Ausella busa\n"
            "1[2] Stirn schmal. -> 3\n"
            "3[3] Flügel mit Randdorn -> Ausella cusa\n"
            "3[4] Flügel ohne Randdorn. — 2,5 mm. — Schweden, Finnland -> Ausella minuta\n");
}

TEST(PrintedWordsBeforeEpithets, AdjectivesBeforeNounsAreNoEpithets) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Arten von Ausella\n"
                   "\n"
                   "1 (4) Flügeldecken mit einer Reihe keulenförmiger Börstchen.\n"
                   "2 (3) Stirn breit .. busa Strgl.\n"
                   "3 (2) Stirn schmal .. cusa Hollr.\n"
                   "4 (1) Flügeldecken kahl .. dusa Beckm.\n"),
            "1[1] Flügeldecken mit einer Reihe keulenförmiger Börstchen. -> 2\n"
            "1[4] Flügeldecken kahl -> Ausella dusa\n"
            "2[2] Stirn breit -> Ausella busa\n"
            "2[3] Stirn schmal -> Ausella cusa\n");
}

TEST(PrintedWordsBeforeEpithets, AnEpithetBehindAFigure) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n"
             "\n"
             "1. Conductor longer than embolus .... lutescens\n"
             "- Conductor shorter than embolus .... 2\n"
             "2. Median apophysis a rounded lobe . . . acicula\n"
             "- Median apophysis with one spine; tibia not modified (Fig. 15) procera\n"),
      "1[1] Conductor longer than embolus -> Ausella lutescens\n"
      "1[-] Conductor shorter than embolus -> 2\n"
      "2[2] Median apophysis a rounded lobe -> Ausella acicula\n"
      "2[-] Median apophysis with one spine; tibia not modified (Fig. 15) -> Ausella procera\n");
}

TEST(PrintedWordsBeforeEpithets, AWordThatEndsASentenceIsNoGenus) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Arten von Ausella\n"
                   "\n"
                   "1 (2) Thorax gestriemt; Backen so hoch wie ein halbes Auge. vittigera Schrand\n"
                   "2 (1) Thorax ungestriemt.\n"
                   "3 (4) Flügel mit Randdorn .. cusa Hollr.\n"
                   "4 (3) Flügel ohne Randdorn .. busa Hollr.\n"),
            "1[1] Thorax gestriemt; Backen so hoch wie ein halbes Auge. -> Ausella vittigera\n"
            "1[2] Thorax ungestriemt. -> 3\n"
            "3[3] Flügel mit Randdorn -> Ausella cusa\n"
            "3[4] Flügel ohne Randdorn -> Ausella busa\n");
}

TEST(PrintedWordsBeforeEpithets, APlaceBehindADashIsNoGenus) {
  EXPECT_EQ(
      sketch(
          "Pselavus Lindt.\n"
          "1\" Halsschild vor der Basis ohne Querfurche, höchstens mit drei getrennten Grübchen.\n"
          "2\" Augen gut entwickelt, beim ♂ aus mehr als 10 Facetten bestehend; Körper\n"
          "3\" Halsschild mit drei gleich grossen Basalgrübchen, glänzend, kaum punktirt.\n"
          "3' Das mittlere Grübchen klein und punktförmig oder fehlend.\n"
          "4\" Kopf stark und dicht punktirt, die Flügeldecken fein und weitläufig. Zweites\n"
          "Rudenien puncticeps m.\n"
          "4' Kopf fast glatt; Flügeldecken an der Basis mit groben Punkten. Hinterschienen\n"
          "des ♂ vor der Spitze gekrümmt. Long. 1·7 mm. — Süd-Walden.\n"
          "laevigatus Chaum.\n"
          "2' Augen klein, aus höchstens 4 Facetten gebildet; Körper rothgelb.\n"
          "5\" Halsschild länger als breit; Fühler schlank, alle Glieder der Geissel gestreckt.\n"
          "5' Halsschild nicht länger als breit; Fühler kürzer, das 5. bis 8. Glied kugelig.\n"
          "Long. 1·2 mm. — Dolnien brevicornis m.\n"
          "1' Halsschild vor der Basis mit deutlicher, die Seitengrübchen verbindender Quer-\n"
          "6\" Flügeldecken lang, anliegend oder halb aufstehend behaart.\n"
          "7\" Die Behaarung der Oberseite doppelt, aus kurzen anliegenden und langen ab-\n"
          "7' Die Behaarung einfach, halb aufstehend.\n"
          "6' Flügeldecken sehr kurz, staubartig behaart oder fast kahl.\n"
          "9\" Schultern vortretend; Flügel vorhanden.\n"
          "9' Schultern vollkommen verrundet, ungeflügelt.\n"
          "11\" Stirn des ♂ mit vier Höckerchen. Long. 2 mm. — Transmontanien.\n"
          "quadricornis Chaum.\n"
          "11' Stirn in beiden Geschlechtern einfach.\n"),
      "1[1\"] Halsschild vor der Basis ohne Querfurche, höchstens mit drei getrennten Grübchen. -> "
      "2\n"
      "1[1'] Halsschild vor der Basis mit deutlicher, die Seitengrübchen verbindender Quer- -> 6\n"
      "2[2\"] Augen gut entwickelt, beim ♂ aus mehr als 10 Facetten bestehend; Körper -> 3\n"
      "2[2'] Augen klein, aus höchstens 4 Facetten gebildet; Körper rothgelb. -> 5\n"
      "3[3\"] Halsschild mit drei gleich grossen Basalgrübchen, glänzend, kaum punktirt. -> ?\n"
      "3[3'] Das mittlere Grübchen klein und punktförmig oder fehlend. -> 4\n"
      "4[4\"] Kopf stark und dicht punktirt, die Flügeldecken fein und weitläufig. Zweites "
      "Rudenien -> Pselavus puncticeps\n"
      "4[4'] Kopf fast glatt; Flügeldecken an der Basis mit groben Punkten. Hinterschienen des ♂ "
      "vor der Spitze gekrümmt. Long. 1·7 mm. — Süd-Walden. -> Pselavus laevigatus\n"
      "5[5\"] Halsschild länger als breit; Fühler schlank, alle Glieder der Geissel gestreckt. -> "
      "?\n"
      "5[5'] Halsschild nicht länger als breit; Fühler kürzer, das 5. bis 8. Glied kugelig. Long. "
      "1·2 mm. — Dolnien -> Pselavus brevicornis\n"
      "6[6\"] Flügeldecken lang, anliegend oder halb aufstehend behaart. -> 7\n"
      "6[6'] Flügeldecken sehr kurz, staubartig behaart oder fast kahl. -> 9\n"
      "7[7\"] Die Behaarung der Oberseite doppelt, aus kurzen anliegenden und langen ab- -> ?\n"
      "7[7'] Die Behaarung einfach, halb aufstehend. -> ?\n"
      "9[9\"] Schultern vortretend; Flügel vorhanden. -> ?\n"
      "9[9'] Schultern vollkommen verrundet, ungeflügelt. -> 11\n"
      "11[11\"] Stirn des ♂ mit vier Höckerchen. Long. 2 mm. — Transmontanien. -> Pselavus "
      "quadricornis\n"
      "11[11'] Stirn in beiden Geschlechtern einfach. -> ?\n");
}

TEST(PrintedWordsBeforeEpithets, WordsWithAccentsAndOfTheAccountsAreNoEpithets) {
  EXPECT_EQ(sketch("1 — Área III com espinhos altos 2\n"
                   "1' — Área III com tubérculos baixos 3\n"
                   "2 — Fêmur IV reto bicornuta\n"
                   "2' — Apófise apical da anca IV bífida sigmoides\n"
                   "3 — Cômoro ocular com espinhos longos 4\n"
                   "3' — Perna IV longa; todos os tergitos inermes longipes\n"
                   "4 — Opérculo anal com grânulos serrana\n"
                   "4' — Opérculo anal sem grânulos 5\n"
                   "5 — Tergitos com tubérculos granulosa\n"
                   "5' — Tergitos sem tubérculos 6\n"
                   "6 — Escudo dorsal pardo fusca\n"
                   "6' — Área IV lisa paulensis\n"
                   "\n"
                   "Habitat: Serra. Borda anterior do cefalotorax lisa. Colorido castanho.\n"),
            "1[1] Área III com espinhos altos -> 2\n"
            "1[1'] Área III com tubérculos baixos -> 3\n"
            "2[2] Fêmur IV reto -> bicornuta\n"
            "2[2'] Apófise apical da anca IV -> bífida sigmoides\n"
            "3[3] Cômoro ocular com espinhos longos -> 4\n"
            "3[3'] Perna IV longa; todos os tergitos inermes -> longipes\n"
            "4[4] Opérculo anal com grânulos -> serrana\n"
            "4[4'] Opérculo anal sem grânulos -> 5\n"
            "5[5] Tergitos com tubérculos -> granulosa\n"
            "5[5'] Tergitos sem tubérculos -> 6\n"
            "6[6] Escudo dorsal pardo -> fusca\n"
            "6[6'] Área IV lisa -> paulensis\n");
}

TEST(PrintedWordsBeforeEpithets, AdjectivesInEousAreNoEpithets) {
  EXPECT_EQ(sketch("1. Eyes flat ..... 2\n"
                   "1'. Eyes prominent; thorax furrowed oculatus, n. sp.\n"
                   "2. Club black ..... niger, n. sp.\n"
                   "2'. Club pale ..... 3\n"
                   "3. Thorax granulate ..... asper, n. sp.\n"
                   "3'. Thorax without furrow; antennal club testaceous minius, n. sp.\n"),
            "1[1] Eyes flat -> 2\n"
            "1[1'] Eyes prominent; thorax furrowed -> oculatus (n. sp.)\n"
            "2[2] Club black -> niger (n. sp.)\n"
            "2[2'] Club pale -> 3\n"
            "3[3] Thorax granulate -> asper (n. sp.)\n"
            "3[3'] Thorax without furrow; antennal club testaceous -> minius (n. sp.)\n");
}

}  // namespace
}  // namespace keydrift
