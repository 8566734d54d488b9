// Where two words may be the genus of a key: which one the reader takes.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

TEST(PrintedGenusDecision, ANumberedHeadGivesItToEpithetsInCapitals) {
  auto const text =
      "612. VELIX Harb.\n"
      "Herbs of the marsh, with leafy stems. Corolla tubular in most, often hairy within.\n"
      "Stamens four. Fruit a small nut.\n"
      "\n"
      "1. Corolla red . . . . VELIFER, 193.\n"
      "1. Corolla white . . . . 2\n"
      "2. Calyx hairy . . . . HIRTUS, 194.\n"
      "2. Calyx smooth . . . . GLABER, 195.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Corolla red -> Velix velifer (193.)\n1[1] Corolla white -> 2\n"
            "2[2] Calyx hairy -> Velix hirtus (194.)\n"
            "2[2] Calyx smooth -> Velix glaber (195.)\n");
  EXPECT_EQ(line_kinds(text), "heading, note, note, blank, lead, lead, lead, lead");
}

TEST(PrintedGenusDecision, AHeadWithACommonNameGivesItToEpithetsWithFullStops) {
  EXPECT_EQ(sketch("Genre Velix, MARAIGUE; Harb.\n"
                   "\n"
                   "Herbes des marais, à tiges feuillées. Corolle tubuleuse.\n"
                   "\n"
                   "1. Corolle rouge . . . . ALBUS.\n"
                   "1. Corolle blanche . . . . 2\n"
                   "2. Calice velu . . . . HIRTUS.\n"
                   "2. Calice glabre . . . . GLABER.\n"),
            "1[1] Corolle rouge -> Velix albus\n1[1] Corolle blanche -> 2\n"
            "2[2] Calice velu -> Velix hirtus\n2[2] Calice glabre -> Velix glaber\n");
}

TEST(PrintedGenusDecision, AListOfGeneraTellsWhatLeadsShorten) {
  std::string const key =
      "1. Ribs entire ..... 2\n1'. Ribs in tubercles ..... 3\n\n"
      "2. Flowers red ..... P. alta\n2'. Flowers white ..... A. noctua\n\n"
      "3. Sap milky ..... M. lactea\n3'. Sap watery ..... S. lutea\n";
  std::string const ends = "1[1] Ribs entire -> 2\n1[1'] Ribs in tubercles -> 3\n";
  EXPECT_EQ(sketch("At almost every meeting somebody brings in a plant that came without a label. "
                   "All of them belong to four genera that are native to the valley and its hills: "
                   "Phyllareola, Areolopsis, Mammiferina and "
                   "Sulcabria. I have tried to write a key that works without flowers as far as "
                   "possible, but for some of them you will have to be patient, as I was.\n\n"
                   "KEY TO THE CACTI\n\n" +
                   key),
            ends +
                "2[2] Flowers red -> Phyllareola alta\n2[2'] Flowers white -> Areolopsis noctua\n"
                "3[3] Sap milky -> Mammiferina lactea\n3[3'] Sap watery -> Sulcabria lutea\n");
  // Countries end as genera do.
  EXPECT_EQ(sketch("They grow in Melita and Sardinia on rocks by the sea.\n\nKEY TO THE CACTI\n\n"
                   "1. Sap milky ..... M. lactea\n1'. Sap watery ..... S. lutea\n"),
            "1[1] Sap milky -> M. lactea\n1[1'] Sap watery -> S. lutea\n");
}

TEST(PrintedGenusDecision, ANounThatOpensLeadsIsNoneThoughEpithetsStandBehindIt) {
  EXPECT_EQ(sketch("Velix Harb. est planta palustris.\n"
                   "\n"
                   "1. Drupa laevis . . . . 2\n"
                   "1. Drupa rugosa . . . . alba Roe\n"
                   "2. Drupa parva . . . . laevis Roe\n"
                   "2. Drupa magna . . . . rugosa Roe\n"),
            "1[1] Drupa laevis -> 2\n1[1] Drupa rugosa -> Velix alba\n"
            "2[2] Drupa parva -> Velix laevis\n2[2] Drupa magna -> Velix rugosa\n");
}

TEST(PrintedGenusDecision, LoneEpithetsKeepTheTitlesBehindASpeciesOfAnother) {
  EXPECT_EQ(sketch("Key to the species of Velix\n"
                   "\n"
                   "1. Corolla red . . . . alba Roe\n"
                   "1. Corolla white . . . . 2\n"
                   "2. Calyx hairy . . . . Busella hirta\n"
                   "2. Calyx smooth . . . . 3\n"
                   "3. Stem low . . . . nana Roe\n"
                   "3. Stem tall . . . . alta Roe\n"),
            "1[1] Corolla red -> Velix alba\n1[1] Corolla white -> 2\n"
            "2[2] Calyx hairy -> Busella hirta\n2[2] Calyx smooth -> 3\n"
            "3[3] Stem low -> Velix nana\n3[3] Stem tall -> Velix alta\n");
}

TEST(PrintedGenusDecision, AHeadBetweenKeysGivesItToTheNextOne) {
  auto const text =
      "KEY TO THE GENERA\n"
      "\n"
      "1. Leaves flat . . . . Hydra\n"
      "1. Leaves hollow . . . . Hylora\n"
      "\n"
      "1. HYDRA Rusk.   Water-plume\n"
      "\n"
      "1. Corolla red . . . . H. rubra\n"
      "1. Corolla white . . . . H. alba\n"
      "\n"
      "2. HYLORA Rusk.   Hollow-plume\n"
      "\n"
      "1. Corolla red . . . . H. nana\n"
      "1. Corolla white . . . . H. alta\n";
  EXPECT_EQ(sketch(text),
            "1[1] Leaves flat -> Hydra\n1[1] Leaves hollow -> Hylora\n"
            "1[1] Corolla red -> Hydra rubra\n1[1] Corolla white -> Hydra alba\n"
            "1[1] Corolla red -> Hylora nana\n1[1] Corolla white -> Hylora alta\n");
  EXPECT_EQ(line_kinds(text),
            "heading, blank, lead, lead, blank, heading, blank, lead, lead, blank, heading, blank, "
            "lead, lead");
}

TEST(PrintedGenusDecision, AccentsAndLinesOfStressAreNoPartOfNames) {
  EXPECT_EQ(sketch("1. Corolla red . . . . Plumbellária verticilláta Roe\n"
                   "1. Corolla white . . . . 2\n"
                   "2. Calyx hairy . . . . P. hirsúta Roe\n"
                   "2. Calyx smooth . . . . Droste\u0331lia nána\n"),
            "1[1] Corolla red -> Plumbellaria verticillata\n1[1] Corolla white -> 2\n"
            "2[2] Calyx hairy -> Plumbellaria hirsuta\n"
            "2[2] Calyx smooth -> Drostelia nana\n");
}

TEST(PrintedGenusDecision, TheInitialInAnAccountDecidesForTheOneOfTheRunningHeads) {
  EXPECT_EQ(sketch("GUAYANA\n"
                   "\n"
                   "14        SOMBRERA\n"
                   "\n"
                   "1. Corolla red . . . . alba Roe\n"
                   "1. Corolla white . . . . 2\n"
                   "2. Calyx hairy . . . . hirta Roe\n"
                   "2. Calyx smooth . . . . nana Roe\n"
                   "\n"
                   "15        SOMBRERA\n"
                   "\n"
                   "1. S. alba Roe. Herb of walls.\n"
                   "\n"
                   "GUAYANA\n"
                   "\n"
                   "2. S. hirta Roe. Herb of rocks.\n"),
            "1[1] Corolla red -> Sombrera alba\n1[1] Corolla white -> 2\n"
            "2[2] Calyx hairy -> Sombrera hirta\n2[2] Calyx smooth -> Sombrera nana\n");
}

TEST(PrintedGenusDecision, ARussianHeadNamesIt) {
  auto const text =
      "37. Род AUS Tell.\n"
      "Травы болот. Листья узкие.\n"
      "\n"
      "1. Листья узкие . . . . alba Roe\n"
      "1. Листья широкие . . . . 2\n"
      "2. Чашечка голая . . . . nuda Roe\n"
      "2. Чашечка волосистая . . . . hirta Roe\n";
  EXPECT_EQ(sketch(text),
            "1[1] Листья узкие -> Aus alba\n1[1] Листья широкие -> 2\n"
            "2[2] Чашечка голая -> Aus nuda\n2[2] Чашечка волосистая -> Aus hirta\n");
  EXPECT_EQ(line_kinds(text), "heading, note, blank, lead, lead, lead, lead");
}

TEST(PrintedGenusDecision, AFrenchHeadGivesItToCapitalisedEpithetsThoughOneNameIsNone) {
  EXPECT_EQ(sketch("Genre Aus, Roe.\n"
                   "\n"
                   "1. Élytres noires ..... Quadripustulata.\n"
                   "1. Élytres rousses ..... 2\n"
                   "2. Ventre rouge ..... Renipustulata.\n"
                   "2. Ventre noir ..... 3\n"
                   "3. Tête pâle ..... Bipustulata.\n"
                   "3. Tête noire ..... 4\n"
                   "4. Pieds pâles ..... Auriculata.\n"
                   "4. Pieds noirs ..... 5\n"
                   "5. Front large ..... Lunulata.\n"
                   "5. Front étroit ..... 6\n"
                   "6. Palpes pâles ..... Maculata.\n"
                   "6. Palpes noirs ..... 7\n"
                   "7. Écusson pâle ..... Pallidula.\n"
                   "7. Écusson noir ..... 8\n"
                   "8. Antennes pâles ..... Nigrina.\n"
                   "8. Antennes noires ..... Bus rufa\n"),
            "1[1] Élytres noires -> Aus quadripustulata\n1[1] Élytres rousses -> 2\n"
            "2[2] Ventre rouge -> Aus renipustulata\n2[2] Ventre noir -> 3\n"
            "3[3] Tête pâle -> Aus bipustulata\n3[3] Tête noire -> 4\n"
            "4[4] Pieds pâles -> Aus auriculata\n4[4] Pieds noirs -> 5\n"
            "5[5] Front large -> Aus lunulata\n5[5] Front étroit -> 6\n"
            "6[6] Palpes pâles -> Aus maculata\n6[6] Palpes noirs -> 7\n"
            "7[7] Écusson pâle -> Aus pallidula\n7[7] Écusson noir -> 8\n"
            "8[8] Antennes pâles -> Aus nigrina\n8[8] Antennes noires -> Bus rufa\n");
}

TEST(PrintedGenusDecision, ANumberedSwedishHeadNamesItAndIsNoLead) {
  auto const text =
      "4. Släkt. Idiosterna Flohr.\n"
      "\n"
      "1. Vingarna klara ..... alba Roe\n"
      "1. Vingarna mörka ..... 2\n"
      "2. Benen bleka ..... pallida Roe\n"
      "2. Benen mörka ..... nigra Roe\n";
  EXPECT_EQ(sketch(text),
            "1[1] Vingarna klara -> Idiosterna alba\n1[1] Vingarna mörka -> 2\n"
            "2[2] Benen bleka -> Idiosterna pallida\n2[2] Benen mörka -> Idiosterna nigra\n");
  EXPECT_EQ(line_kinds(text), "heading, blank, lead, lead, lead, lead");
}

TEST(PrintedGenusDecision, ASynonymsLineWithASubgenusNamesIt) {
  EXPECT_EQ(sketch("Busella Roe, Bot. Beitr. (1897) 214. — Ausella subgen. Euausella Berg.\n"
                   "\n"
                   "1. Leaves hairy ..... 2\n"
                   "1. Leaves bare ..... A. diptera\n"
                   "2. Stem low ..... A. alba\n"
                   "2. Stem tall ..... A. nana\n"),
            "1[1] Leaves hairy -> 2\n1[1] Leaves bare -> Ausella diptera\n"
            "2[2] Stem low -> Ausella alba\n2[2] Stem tall -> Ausella nana\n");
}

TEST(PrintedGenusDecision, ANumberedHeadBetweenKeysOpensAPart) {
  auto const text =
      "1. Leaves flat ..... Aus bus\n"
      "1. Leaves hollow ..... Aus cus\n"
      "\n"
      "37. Genus BOSELLA Tell.\n"
      "\n"
      "1. Corolla red ..... B. rubra\n"
      "1. Corolla white ..... B. alba\n";
  EXPECT_EQ(sketch(text),
            "1[1] Leaves flat -> Aus bus\n1[1] Leaves hollow -> Aus cus\n"
            "1[1] Corolla red -> Bosella rubra\n1[1] Corolla white -> Bosella alba\n");
  EXPECT_EQ(line_kinds(text), "lead, lead, blank, heading, blank, lead, lead");
}

TEST(PrintedGenusDecision, AGenusMayStandBehindItsCommonNameAboveTheKey) {
  EXPECT_EQ(sketch("3. Sumpstjerne, Ausaster Rosk.\n\n"
                   "Urter med spredte Blade.\n\n"
                   "1. Alle Blomster gule.\n"
                   "   2. Bladene smalle ..... Guld-S., A. linus Bernth.\n"
                   "   2. Bladene brede ..... Skive-S., A. discus Rosk.\n"
                   "1. Randkroner hvide.\n"
                   "   3. Bladene glatte ..... Strand-S., A. maritimus Rosk.\n"
                   "   3. Bladene haarede ..... Vade-S., A. vadensis Rosk.\n"),
            "1[1] Alle Blomster gule. -> 2\n"
            "1[1] Randkroner hvide. -> 3\n"
            "2[2] Bladene smalle -> Ausaster linus (Guld-S.)\n"
            "2[2] Bladene brede -> Ausaster discus (Skive-S.)\n"
            "3[3] Bladene glatte -> Ausaster maritimus (Strand-S.)\n"
            "3[3] Bladene haarede -> Ausaster vadensis (Vade-S.)\n");
}

TEST(PrintedGenusDecision, ARankMayBeCutShortBeforeAGenusBelowAPagesHead) {
  EXPECT_EQ(sketch("50                 Ausacarina.\n\n"
                   "          Gatt. Busovanda Thies 1879.\n\n"
                   "1. Haut mit Papillen ..... 2\n"
                   "- Haut glatt ..... B. glabra (Thies) (S. 51).\n"
                   "2. Zapfen lang ..... B. longa Kolb (S. 51).\n"
                   "- Zapfen kurz ..... B. curta Kolb (S. 52).\n"),
            "1[1] Haut mit Papillen -> 2\n"
            "1[-] Haut glatt -> Busovanda glabra (S. 51)\n"
            "2[2] Zapfen lang -> Busovanda longa (S. 51)\n"
            "2[-] Zapfen kurz -> Busovanda curta (S. 52)\n");
}

TEST(PrintedGenusDecision, CapitalsOfAKeyToGeneraBeforeAnAccount) {
  EXPECT_EQ(sketch("                       Subfamily AUSELLINÆ.\n\n"
                   "                      Key to the Genera.\n\n"
                   " 1 (2).  Claws connate .......... AUSELLA, Roe, p. 3.\n"
                   " 2 (1).  Claws free.\n"
                   " 3 (4).  Lobes distinct .......... BUSELLA, Roe, p. 5.\n"
                   " 4 (3).  Lobes wanting .......... CUSELLA, gen. nov., p. 9.\n\n"
                   "                    Genus AUSELLA, Roe.\n\n"
                   "  Ausella, Roe, Trans. Soc. 1871, p. 264.\n"
                   "  Head convex.\n"),
            "1[1] Claws connate -> Ausella (Roe, p. 3.)\n"
            "1[2] Claws free. -> 3\n"
            "3[3] Lobes distinct -> Busella (Roe, p. 5.)\n"
            "3[4] Lobes wanting -> Cusella (gen. nov., p. 9.)\n");
}

TEST(PrintedGenusDecision, TheTypeSpeciesIsOfTheGenusItWasDescribedIn) {
  EXPECT_EQ(sketch("UROMYCELLA 233\n"
                   "\n"
                   "Type species, Uredina graminicola Fontane.\n"
                   "\n"
                   "A. Aecia present.\n"
                   "B. Pedicel short. 1. U. trifolii.\n"
                   "BB. Pedicel long. 2. U. striolata.\n"
                   "AA. Aecia unknown. 3. U. graminicola.\n"
                   "\n"
                   "1. Uromycella trifolii (Hedwall) Fontane, Jour. Crypt. 2: 40. 1872.\n"
                   "\n"
                   "Uredina trifolii Hedwall, Fung. Ined. 11. 1805.\n"),
            "A[A] Aecia present. -> B\n"
            "A[AA] Aecia unknown. -> Uromycella graminicola\n"
            "B[B] Pedicel short. -> Uromycella trifolii\n"
            "B[BB] Pedicel long. -> Uromycella striolata\n");
}

TEST(PrintedGenusDecision, ASynonymInBracketsIsNotTheGenus) {
  EXPECT_EQ(sketch("G. 6. — PSAMMOTYLA RONDARD, 1856\n"
                   "\n"
                   "(Psammotella MEYRAN, 1830, non LAMIER).\n"
                   "\n"
                   "Orbites nues. Larves mineuses.\n"
                   "\n"
                   "TABLEAU DES ESPÈCES\n"
                   "\n"
                   "1. — Scutellum jaune. . . . . . . . . . 2\n"
                   "— Scutellum noir . . . . . . . . . . . 3\n"
                   "2. — Front large. . . . . . . . . . . 1. halterata BECQ. (p. 72).\n"
                   "— Front étroit . . . . . . . . . . . . 4. flaviceps (FALLONNE) (p. 74).\n"
                   "3. — Ailes laiteuses. . . . . . . . . 5. lactipennis BECQ. (p. 77).\n"
                   "— Ailes hyalines . . . . . . . . . . . 6. graminis (FALLONNE) (p. 79).\n"),
            "1[1] Scutellum jaune -> 2\n"
            "1[—] Scutellum noir -> 3\n"
            "2[2] Front large -> Psammotyla halterata (p. 72)\n"
            "2[—] Front étroit -> Psammotyla flaviceps (p. 74)\n"
            "3[3] Ailes laiteuses -> Psammotyla lactipennis (p. 77)\n"
            "3[—] Ailes hyalines -> Psammotyla graminis (p. 79)\n");
}

TEST(PrintedGenusDecision, FrenchFamilyInAPagesHead) {
  EXPECT_EQ(sketch("126 DIPTÈRES LOPHOMYIDÉS\n"
                   "\n"
                   "Les Lophonella adultes se rencontrent d'avril à octobre sur les\n"
                   "fleurs ; on en connaît trois espèces.\n"
                   "\n"
                   "TABLEAU DES ESPÈCES\n"
                   "\n"
                   "1. Yeux nus . . . . . . . . . . . . . . . . . 2.\n"
                   "— Yeux pubescents . . . . . . . busa Brasquet, p. 128.\n"
                   "2. Tibias arqués . . . . . . . . cusa Verdol., p. 129.\n"
                   "— Tibias droits . . . . . . . . dusa Verdol., p. 130.\n"
                   "\n"
                   "1. L. busa Brasquet, 1842. — Tête noire.\n"),
            "1[1] Yeux nus -> 2\n"
            "1[—] Yeux pubescents -> Lophonella busa (p. 128.)\n"
            "2[2] Tibias arqués -> Lophonella cusa (p. 129.)\n"
            "2[—] Tibias droits -> Lophonella dusa (p. 130.)\n");
}

TEST(PrintedGenusDecision, TheFrenchNameBeforeTheLatinOne) {
  EXPECT_EQ(sketch("FAMILLE DES COMPOSÉES. 287\n"
                   "\n"
                   "14e Genre. PILOSARIE. — PILOSARIUM Borv.\n"
                   "\n"
                   "Involucre à folioles inégales, imbriquées sur plusieurs rangs.\n"
                   "\n"
                   "1. Hampe nue ou munie d'une seule bractée .......... 2\n"
                   "— Tige feuillée .................................. P. communale Borv.\n"
                   "2. Souche émettant des stolons .................... P. repens Borv.\n"
                   "— Souche sans stolons ............................ P. rigens Borv.\n"),
            "1[1] Hampe nue ou munie d'une seule bractée -> 2\n"
            "1[—] Tige feuillée -> Pilosarium communale\n"
            "2[2] Souche émettant des stolons -> Pilosarium repens\n"
            "2[—] Souche sans stolons -> Pilosarium rigens\n");
}

TEST(PrintedGenusDecision, AWorkInBracketsBehindTheGenusIsNone) {
  EXPECT_EQ(sketch("ORTHELANDRA.\n"
                   "Since I furnished a table of this genus (Trans. Phil. Soc. Merr.,\n"
                   "A. Elytra distinctly striate.\n"
                   "B. Prothorax at its widest at the base.\n"
                   "C. Interstices of elytra strongly costate ... costipennis, Wend.\n"
                   "CC. Interstices of elytra flat ... ... aenescens, Harl.\n"
                   "BB. Prothorax at its widest in front ... ... tibialis, sp. nov.\n"
                   "AA. Elytra confusedly punctate ... granulata, Harl.\n"
                   "O. tibialis, sp. nov. (mas.) Sat elongata; minus nitida; nigra,\n"),
            "A[A] Elytra distinctly striate. -> B\n"
            "A[AA] Elytra confusedly punctate -> Orthelandra granulata (Harl.)\n"
            "B[B] Prothorax at its widest at the base. -> C\n"
            "B[BB] Prothorax at its widest in front -> Orthelandra tibialis (sp. nov.)\n"
            "C[C] Interstices of elytra strongly costate -> Orthelandra costipennis (Wend.)\n"
            "C[CC] Interstices of elytra flat -> Orthelandra aenescens (Harl.)\n");
}

TEST(PrintedGenusDecision, AnAuthorWithAnInitialIsNone) {
  EXPECT_EQ(sketch("P. ALCORZA VIDAURRE, Las especies australes de Algarobella 97\n"
                   "\n"
                   "CLAVE PARA DETERMINAR LAS ESPECIES\n"
                   "\n"
                   "A. Flores dispuestas en racimos.\n"
                   "B. Plantas armadas ............................ 1. A. ferox\n"
                   "BB. Plantas inermes .......................... 2. A. pallida\n"
                   "AA. Flores dispuestas en cabezuelas.\n"
                   "C. Legumbre recta ................................ 3. A. densifolia\n"
                   "CC. Legumbre falcada ........................... 4. A. humilis\n"
                   "\n"
                   "1. Algarobella ferox (Loriz) Alcorza, nov. comb.\n"),
            "A[A] Flores dispuestas en racimos. -> B\n"
            "A[AA] Flores dispuestas en cabezuelas. -> C\n"
            "B[B] Plantas armadas -> Algarobella ferox\n"
            "B[BB] Plantas inermes -> Algarobella pallida\n"
            "C[C] Legumbre recta -> Algarobella densifolia\n"
            "C[CC] Legumbre falcada -> Algarobella humilis\n");
}

TEST(PrintedGenusDecision, LigaturesOfCapitalsAreWrittenOut) {
  EXPECT_EQ(sketch("540. PŒCILOSTETHUS, Roe.\n"
                   "\n"
                   "a. Snout very short, shorter than the eye; back with 6 dark cross\n"
                   "blotches; scales 7-58-9. MACROPS, 1688.\n"
                   "aa. Snout longer than the eye.\n"
                   "b. Opercle closely scaled; scales 9-70-11. GRANDIS, 1689.\n"
                   "bb. Opercle naked except a few scales above; soft dorsal with 11 rays ;\n"
                   "scales 6-52-8. OCANENSIS, 1690.\n"),
            "a[a] Snout very short, shorter than the eye; back with 6 dark cross blotches; scales "
            "7-58-9. -> Poecilostethus macrops\n"
            "a[aa] Snout longer than the eye. -> b\n"
            "b[b] Opercle closely scaled; scales 9-70-11. -> Poecilostethus grandis\n"
            "b[bb] Opercle naked except a few scales above; soft dorsal with 11 rays ; scales "
            "6-52-8. -> Poecilostethus ocanensis\n");
}

TEST(PrintedGenusDecision, HeadingsThatAreEpithetsOfTheKey) {
  EXPECT_EQ(sketch("132          PROCEEDINGS OF THE MUSEUM          VOL. 61\n"
                   "\n"
                   "Type of the genus. — Eurytomina tibialis Ashmore (by original designation).\n"
                   "\n"
                   "ART. 7     THE FLIES OF THE GENUS MICROTHERIS — GARREN     133\n"
                   "\n"
                   "KEY TO THE SPECIES (FEMALES)\n"
                   "\n"
                   "1. Vein longer____________________________ 2\n"
                   "   Vein shorter____________________________ salicinae Roe\n"
                   "2. Tibiae yellow____________________________ tibialis (Ashmore)\n"
                   "   Tibiae banded____________________________ bruchidellae, new species\n"
                   "\n"
                   "TIBIALIS (Ashmore)\n"
                   "\n"
                   "Eurytomina tibialis Ashmore, Proc. Mus., vol. 17, 1894, p. 411.\n"),
            "1[1] Vein longer -> 2\n"
            "1[] Vein shorter -> Microtheris salicinae\n"
            "2[2] Tibiae yellow -> Microtheris tibialis\n"
            "2[] Tibiae banded -> Microtheris bruchidellae (new species)\n");
}

TEST(PrintedGenusDecision, TheNearerOfTwoHeadings) {
  EXPECT_EQ(
      sketch(
          "Genus OXYTRETA Forsgate, 1868\n"
          "\n"
          "One species, O. parva (Daleby), on sandy heaths.\n"
          "\n"
          "Genus PLATYGLENE Westcott, 1840\n"
          "\n"
          "Robust species with dense pubescence.\n"
          "\n"
          "1 Ocelli forming an obtuse triangle . . . . . . . . . . . . . cribraria (Linnell)\n"
          "– Ocelli forming an equilateral triangle . . . . . . . . . . . . . . . . . . . . . 2\n"
          "2 Gaster black . . . . . . . . . . . . . . . . . . . . . . . . . peltata (Fabrin)\n"
          "– Gaster with yellow bands . . . . . . . . . . . . . . . . . . . vagabunda Westcott\n"),
      "1[1] Ocelli forming an obtuse triangle -> Platyglene cribraria\n"
      "1[–] Ocelli forming an equilateral triangle -> 2\n"
      "2[2] Gaster black -> Platyglene peltata\n"
      "2[–] Gaster with yellow bands -> Platyglene vagabunda\n");
}

TEST(PrintedGenusDecision, GeneraThatAreLeftOut) {
  EXPECT_EQ(sketch("Key to the species of the Sorella Shelf\n"
                   "\n"
                   "Counts include all spines.\n"
                   "Species of Cirrhoblennius, with a continuous lateral line, are not included.\n"
                   "\n"
                   "1a. Cirrus present . . . . . . . . . . . . . . . C. maculatus (Rowe, 1911)\n"
                   "1b. Cirrus absent . . . . . . . . . . . . . . . . . . . . . . . . . . . 2\n"
                   "2a. Canines present . . . . . . . . . . . . . . . C. nuchalis Daws, 1970\n"
                   "2b. Canines absent . . . . . . . . . . . . . . . C. dentex Daws, 1970\n"
                   "\n"
                   "FIGURE 3. Species of Ctenoblennops from the Sorella Shelf.\n"
                   "\n"
                   "Ctenoblennops maculatus (Rowe, 1911)\n"
                   "\n"
                   "Cirrhoblennius ocellatus Jordain, 1925: 31.\n"),
            "1[1a] Cirrus present -> Ctenoblennops maculatus\n"
            "1[1b] Cirrus absent -> 2\n"
            "2[2a] Canines present -> Ctenoblennops nuchalis\n"
            "2[2b] Canines absent -> Ctenoblennops dentex\n");
}

TEST(PrintedGenusDecision, AMuseumInThePageHeadIsNoGenus) {
  EXPECT_EQ(sketch("188 BULLETIN OF THE MUSEUM OF NATURAL HISTORY VOL. 84\n"
                   "\n"
                   "HARMOCLES CHALMERS\n"
                   "\n"
                   "Harmocles CHALMERS, 1904, Proc. Acad., p. 261. Type by original designation: "
                   "Harmocles pallens Chalmers.\n"
                   "\n"
                   "KEY TO MALES\n"
                   "\n"
                   "1. Tibial apophysis of palpus bifid at tip........ 2\n"
                   "Tibial apophysis of palpus simple........ 3\n"
                   "2. Carapace pale yellow........ pallens Chalmers\n"
                   "Carapace dusky........ fuscatus Roe\n"
                   "3. Cymbium with a conspicuous spur........ oakesi Chalmers\n"
                   "Cymbium without spur........ dentiger Roe\n"
                   "\n"
                   "Harmocles pallens Chalmers\n"
                   "\n"
                   "Figures 12-14\n"),
            "1[1] Tibial apophysis of palpus bifid at tip -> 2\n"
            "1[] Tibial apophysis of palpus simple -> 3\n"
            "2[2] Carapace pale yellow -> Harmocles pallens\n"
            "2[] Carapace dusky -> Harmocles fuscatus\n"
            "3[3] Cymbium with a conspicuous spur -> Harmocles oakesi\n"
            "3[] Cymbium without spur -> Harmocles dentiger\n");
}

TEST(PrintedGenusDecision, ArticlesAreNoGenus) {
  EXPECT_EQ(sketch("Die Arten des Grauwaldes\n"
                   "\n"
                   "1  Blatt rot ..... 2\n"
                   "–  Blatt grün .... D. viridis Amsel\n"
                   "2  Blüte groß ... D. grandis Amsel\n"
                   "–  Blüte klein ..... D. parva Amsel\n"),
            "1[1] Blatt rot -> 2\n"
            "1[–] Blatt grün -> D. viridis\n"
            "2[2] Blüte groß -> D. grandis\n"
            "2[–] Blüte klein -> D. parva\n");
}

}  // namespace
}  // namespace keydrift
