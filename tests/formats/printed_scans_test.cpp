// What scanned keys print, and what scanning makes of it.

#include <gtest/gtest.h>

#include "keydrift/formats/printed_label.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::sketch;

TEST(PrintedScans, SpacedWordsAreWords) {
  auto const text =
      "1. Augen vorhanden 2\n"
      "- Augen fehlend N. c a e c u s Roe.\n"
      "2. Zähne spitz, a b c d e in Fig. 3 N. t r i d e n t a t u s Roe.\n"
      "- Zähne stumpf N. o b t u s i d e n s Dorn.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Augen vorhanden -> 2\n"
            "1[-] Augen fehlend -> N. caecus\n"
            "2[2] Zähne spitz, a b c d e in Fig. 3 -> N. tridentatus\n"
            "2[-] Zähne stumpf -> N. obtusidens\n");
  EXPECT_EQ(
      findings_of(text).front(),
      "key.txt:1:1: information: 3 words set with blanks between their letters were read as words "
      "[spaced-letters] (see with --explain whether the lines are taken for what they are)");
}

TEST(PrintedScans, ALetterTMayBeADagger) {
  auto const text =
      "A. Leaves opposite.\n"
      "t Corolla long.\n"
      "Shrub. Leaves linear 1. V. longa.\n"
      "Herb, prostrate 2. V. prona.\n"
      "tt Corolla short.\n"
      "Densely hirsute 3. V. hirsuta.\n"
      "Glabrous 4. V. glabra.\n"
      "B. Leaves alternate.\n"
      "Leaves sessile. . 5. V. racemosa.\n"
      "Leaves stem-clasping 6. V. amplexa.\n";
  EXPECT_EQ(sketch(text),
            "1[A] Leaves opposite. -> 2\n"
            "1[B] Leaves alternate. -> 5\n"
            "2[†] Corolla long. -> 3\n"
            "2[††] Corolla short. -> 4\n"
            "3[] Shrub. Leaves linear -> V. longa\n"
            "3[] Herb, prostrate -> V. prona\n"
            "4[] Densely hirsute -> V. hirsuta\n"
            "4[] Glabrous -> V. glabra\n"
            "5[] Leaves sessile. -> V. racemosa\n"
            "5[] Leaves stem-clasping -> V. amplexa\n");
  EXPECT_EQ(
      findings_of(text).front(),
      "key.txt:1:1: information: 2 lines that begin with \"t\", \"tt\" and the like were read as "
      "if with "
      "daggers [misread-signs] (see with --explain whether the lines are taken for what they are)");
}

TEST(PrintedScans, AnAAboveASharpSIsAnAlpha) {
  EXPECT_EQ(sketch("A. Stengel mehrköpfig.\n"
                   "a) Wurzelstock kriechend.\n"
                   "a) Ausläufer oberirdisch .. 3. S. stolonia.\n"
                   "ß) Ausläufer unterirdisch .. 4. S. repens.\n"
                   "b) Wurzelstock kurz .. 5. S. elata.\n"
                   "B. Stengel einköpfig .. 6. S. villosa.\n"),
            "1[A] Stengel mehrköpfig. -> 2\n"
            "1[B] Stengel einköpfig -> S. villosa\n"
            "2[a] Wurzelstock kriechend. -> 3\n"
            "2[b] Wurzelstock kurz -> S. elata\n"
            "3[α] Ausläufer oberirdisch -> S. stolonia\n"
            "3[β] Ausläufer unterirdisch -> S. repens\n");
}

TEST(PrintedScans, CaretsAreRaisedNumbers) {
  EXPECT_EQ(sketch("a^ Plates trigeminate.\n"
                   "b^ Tubercles crenulate ..... Ausella (p. 65)\n"
                   "b^ Tubercles smooth, plate distinguishable Busella (p. 73)\n"
                   "a^ Plates polyporous.\n"
                   "b^ Pores in arcs ..... Cusella (p. 88)\n"
                   "b^ Pores in series ..... Dusella (p. 91)\n"
                   "\n"
                   "^ For specimens I am indebted to the Marsh Museum.\n"),
            "1[a^] Plates trigeminate. -> 2\n"
            "1[a^] Plates polyporous. -> 3\n"
            "2[b^] Tubercles crenulate -> Ausella (p. 65)\n"
            "2[b^] Tubercles smooth, plate distinguishable -> Busella (p. 73)\n"
            "3[b^] Pores in arcs -> Cusella (p. 88)\n"
            "3[b^] Pores in series -> Dusella (p. 91)\n");
}

TEST(PrintedScans, TheNumberOfItsSpeciesMayStandBehindAnEpithet) {
  EXPECT_EQ(
      sketch("ANALYSIS OF THE SPECIES OF AUSELLA.\n\n"
             "a. Lateral line complete.\n"
             "b. Cheeks scaly; cross-bars broader than the interspaces.\n"
             "cinerascens, 1.\n"
             "bb. Cheeks naked; snout very blunt. nudigena, 2.\n"
             "aa. Lateral line incomplete.\n"
             "6. Anal spines two; length 3 inches. tennensis, 3.\n"
             "bb. Anal spine single; snout acute. gracilior, 4.\n"),
      "1[a] Lateral line complete. -> 2\n"
      "1[aa] Lateral line incomplete. -> 3\n"
      "2[b] Cheeks scaly; cross-bars broader than the interspaces. -> Ausella cinerascens (1.)\n"
      "2[bb] Cheeks naked; snout very blunt. -> Ausella nudigena (2.)\n"
      "3[6] Anal spines two; length 3 inches. -> Ausella tennensis (3.)\n"
      "3[bb] Anal spine single; snout acute. -> Ausella gracilior (4.)\n");
}

TEST(PrintedScans, AWordBehindASentenceIsAnEpithet) {
  EXPECT_EQ(sketch("Genus Ausella Roe\n\n"
                   "a. Cheeks scaly.\n"
                   "b. Bars as large as eye. maculifer.\n"
                   "bb. Bars none. virens.\n"
                   "aa. Cheeks naked; snout blunt. nudigena.\n"),
            "a[a] Cheeks scaly. -> b\n"
            "a[aa] Cheeks naked; snout blunt. -> Ausella nudigena\n"
            "b[b] Bars as large as eye. -> Ausella maculifer\n"
            "b[bb] Bars none. -> Ausella virens\n");
}

TEST(PrintedScans, EpithetsMayEndLeadsWithNothingBeforeThem) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA.\n\n"
                   "a' Spines unicolor.\n"
                   "b' Spines deep violet purpuratus\n"
                   "b\" Spines ivory-white eburneus\n"
                   "a\" Spines banded.\n"
                   "b' Bands green zonatus\n"
                   "b\" Bands red, the valves meeting throughout\n"
                   "their length dornelli\n"),
            "1[a'] Spines unicolor. -> 2\n"
            "1[a\"] Spines banded. -> 3\n"
            "2[b'] Spines deep violet -> Ausella purpuratus\n"
            "2[b\"] Spines ivory-white -> Ausella eburneus\n"
            "3[b'] Bands green -> Ausella zonatus\n"
            "3[b\"] Bands red, the valves meeting throughout their length -> Ausella dornelli\n");
}

TEST(PrintedScans, SecondLeadsWithoutLabelStandBehindLooseNames) {
  EXPECT_EQ(
      sketch("KEY TO THE SPECIES OF AUSELLA\n\n"
             "I. Dorsum with white markings 2\n"
             "Dorsum unicolorous brown 4\n"
             "2. Markings in the form of a broad H; spine erect\n"
             "spinifer Dorn\n"
             "Markings consisting of round spots 3\n"
             "3. Spots bordered with black; with 2 apophyses\n"
             "notatus Hale\n"
             "Spots not bordered; with one apophysis alpestris, n. sp.\n"
             "4. Body 5.0 mm. or more; color nearly black ater Hale\n"
             "Body 3.5 mm. or less; color some shade of brown 5\n"
             "5. Femur with four tubercles; Utah and Idaho minor Hale\n"
             "\n"
             "12 PAPERS OF THE MARSH MUSEUM\n"
             "\n"
             "Femur with eight tubercles; cave\n"
             "dwelling cavicola, new species (p. 8)\n"
             "6. Legs pale dorni Hale\n"
             "Legs dark nigripes Hale\n"),
      "1[I] Dorsum with white markings -> 2\n"
      "1[] Dorsum unicolorous brown -> 4\n"
      "2[2] Markings in the form of a broad H; spine erect -> Ausella spinifer\n"
      "2[] Markings consisting of round spots -> 3\n"
      "3[3] Spots bordered with black; with 2 apophyses -> Ausella notatus\n"
      "3[] Spots not bordered; with one apophysis -> Ausella alpestris (n. sp.)\n"
      "4[4] Body 5.0 mm. or more; color nearly black -> Ausella ater\n"
      "4[] Body 3.5 mm. or less; color some shade of brown -> 5\n"
      "5[5] Femur with four tubercles; Utah and Idaho -> Ausella minor\n"
      "5[] Femur with eight tubercles; cave dwelling -> Ausella cavicola (new species (p. 8))\n"
      "6[6] Legs pale -> Ausella dorni\n"
      "6[] Legs dark -> Ausella nigripes\n");
}

TEST(PrintedScans, AnOneMisreadMayAnswerFarBelow) {
  auto const text =
      "About 40 species of Ausella, in the tropics.\n\n"
      "1. Leaves ternate:\n"
      "2. Corolla long 1. longa\n"
      "2. Corolla short:\n"
      "3. Domatia hairy 2. rufa subsp. rufa\n"
      "3. Domatia absent 2. rufa subsp. glabra\n"
      "I. Leaves opposite:\n"
      "4. Drupe with 1 pyrene 3. congesta\n"
      "4. Drupe with 2 pyrenes 4. littoralis*\n"
      "\n"
      "* Known to me from the description only.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Leaves ternate: -> 2\n"
            "1[I] Leaves opposite: -> 4\n"
            "2[2] Corolla long -> Ausella longa\n"
            "2[2] Corolla short: -> 3\n"
            "3[3] Domatia hairy -> Ausella rufa subsp. rufa\n"
            "3[3] Domatia absent -> Ausella rufa subsp. glabra\n"
            "4[4] Drupe with 1 pyrene -> Ausella congesta\n"
            "4[4] Drupe with 2 pyrenes -> Ausella littoralis\n");
}

TEST(PrintedScans, WhatAPageEndsAndBeginsWithMayPartALead) {
  auto const text =
      "1. Augen vorhanden 2.\n"
      "- Augen fehlend N. caecus Roe.\n"
      "2. Uropod mit langem Ast; Brackwasser, bis in\n"
      "\n"
      "Roe & Dorn, Tierwelt der Marschen XI. e 4\n"
      "\n"
      "XI. e 44 Dorn\n"
      "\n"
      "den Busen von Ausen N. balticus Dorn.\n"
      "- Uropod mit kurzem Ast N. pictus Roe.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Augen vorhanden -> 2\n"
            "1[-] Augen fehlend -> N. caecus\n"
            "2[2] Uropod mit langem Ast; Brackwasser, bis in den Busen von Ausen -> N. balticus\n"
            "2[-] Uropod mit kurzem Ast -> N. pictus\n");
  EXPECT_EQ(
      line_kinds(text),
      "lead, lead, lead, blank, running head, blank, running head, blank, continuation, lead");
}

TEST(PrintedScans, ConsecutivePagesTellHeadsThatStandOnce) {
  auto const text =
      "Bestimmungs-Tabelle der Ausoxelus-Arten. 97\n"
      "\n"
      "1\" Halsschild gerandet. Krain: in den Grotten bei St. Marschburg. gracilis n. sp.\n"
      "1' Halsschild ungerandet.\n"
      "2\" Oberseite behaart. sericeus Roe.*)\n"
      "2' Oberseite kahl.\n"
      "3\" Stirne mit zwei tiefen Gruben.\n"
      "nitidulus Wend.\n"
      "\n"
      "*) Nach der Beschreibung eingereiht.\n"
      "\n"
      "98 K. Steinroe:\n"
      "\n"
      "3' Stirne eben. planus Wend.\n";
  EXPECT_EQ(sketch(text),
            "1[1\"] Halsschild gerandet. Krain: in den Grotten bei St. Marschburg. -> Ausoxelus "
            "gracilis (n. sp.)\n"
            "1[1'] Halsschild ungerandet. -> 2\n"
            "2[2\"] Oberseite behaart. -> Ausoxelus sericeus (*)\n"
            "2[2'] Oberseite kahl. -> 3\n"
            "3[3\"] Stirne mit zwei tiefen Gruben. -> Ausoxelus nitidulus\n"
            "3[3'] Stirne eben. -> Ausoxelus planus\n");
  EXPECT_EQ(line_kinds(text),
            "running head, blank, lead, lead, lead, lead, lead, destination, blank, note, blank, "
            "running head, blank, lead");
}

TEST(PrintedScans, SectionsMayCountInRomanNumerals) {
  EXPECT_EQ(sketch("§ I. Folia aristata.\n"
                   "A. Folia integra 1. P. aristata.\n"
                   "B. Folia serrata 2. P. limbata.\n"
                   "§ II. Folia mutica.\n"
                   "A. Capsula cernua 3. P. nutans.\n"
                   "B. Capsula erecta 4. P. alba.\n"
                   "§ III. Folia enervia 5. P. enervis.\n"),
            "1[§ I] Folia aristata. -> 2\n"
            "1[§ II] Folia mutica. -> 3\n"
            "1[§ III] Folia enervia -> P. enervis\n"
            "2[A] Folia integra -> P. aristata\n"
            "2[B] Folia serrata -> P. limbata\n"
            "3[A] Capsula cernua -> P. nutans\n"
            "3[B] Capsula erecta -> P. alba\n");
}

TEST(PrintedScans, LettersThatStandOnceFarBehindTheCountAreNone) {
  EXPECT_EQ(sketch("A. Leaves opposite.\n"
                   "* Flowers solitary 1. V. longa.\n"
                   "** Flowers several 2. V. prona.\n"
                   "B. Leaves alternate.\n"
                   "* Flowers white 3. V. alba.\n"
                   "** Flowers red 4. V. rubra.\n"
                   "\n"
                   "1. V. longa, Roe. An erect shrub.\n"
                   "N. Ausland. Sandy places, Upper Marsh Creek, Roe.\n"),
            "1[A] Leaves opposite. -> 2\n"
            "1[B] Leaves alternate. -> 3\n"
            "2[*] Flowers solitary -> V. longa\n"
            "2[**] Flowers several -> V. prona\n"
            "3[*] Flowers white -> V. alba\n"
            "3[**] Flowers red -> V. rubra\n");
}

TEST(PrintedScans, NamesOnLinesOfTheirOwnEndLeadsInBraces) {
  EXPECT_EQ(sketch("1 ( Fleurs jaunes 2\n"
                   "  ( Fleurs roses 3\n"
                   "j Tige couchée B. nummularis. Dub.\n"
                   "2 {\n"
                   "( Tige dressée B. humifusa. Dub.\n"
                   "3 ( Feuilles de la paire supérieure soudées par la base.\n"
                   "B. perfoliata. Dub.\n"
                   "( Feuilles toutes libres 4\n"
                   "4 ( Bractées longues. . . B. spicata. Dub.\n"
                   "  ( Bractées courtes. . . B. curta. Dub.\n"),
            "1[1] Fleurs jaunes -> 2\n"
            "1[] Fleurs roses -> 3\n"
            "2[2] Tige couchée -> B. nummularis (Dub.)\n"
            "2[] Tige dressée -> B. humifusa (Dub.)\n"
            "3[3] Feuilles de la paire supérieure soudées par la base. -> B. perfoliata (Dub.)\n"
            "3[] Feuilles toutes libres -> 4\n"
            "4[4] Bractées longues -> B. spicata (Dub.)\n"
            "4[] Bractées courtes -> B. curta (Dub.)\n");
}

TEST(PrintedScans, OneSignReadRightlyTellsTheOthers) {
  EXPECT_EQ(sketch("* Fronds pinnate.\n"
                   "† Pinnae articulated.\n"
                   "‡ Pinnae crenate - - - 1. N. decidua, Hask.\n"
                   "++ Pinnae entire - - - 2. N. falcata, Hask.\n"
                   "tt Pinnae not articulated - - - 3. N. laurina, Brk.\n"
                   "** Fronds twice pinnate.\n"
                   "f Stipes scaly - - - 4. N. cristata, Hask.\n"
                   "ff Stipes naked - - - 5. N. blanda, Wr.\n"),
            "1[*] Fronds pinnate. -> 2\n"
            "1[**] Fronds twice pinnate. -> 4\n"
            "2[†] Pinnae articulated. -> 3\n"
            "2[††] Pinnae not articulated -> N. laurina (Brk.)\n"
            "3[‡] Pinnae crenate -> N. decidua (Hask.)\n"
            "3[‡‡] Pinnae entire -> N. falcata (Hask.)\n"
            "4[†] Stipes scaly -> N. cristata (Hask.)\n"
            "4[††] Stipes naked -> N. blanda (Wr.)\n");
}

TEST(PrintedScans, GreekLettersComeInManyForms) {
  EXPECT_EQ(sketch("a. Zweige drüsig.\n"
                   "«. Blätter lederartig . . . . 8. O. viscosa.\n"
                   "/S. Blätter krautig . . . . 9. O. serrata.\n"
                   "b. Zweige kahl.\n"
                   "a. Fruchtknoten drüsig . . . . 10. O. hispida.\n"
                   "/3. Fruchtknoten kahl . . . . 11. O. crenata.\n"),
            "1[a] Zweige drüsig. -> 2\n"
            "1[b] Zweige kahl. -> 3\n"
            "2[α] Blätter lederartig -> O. viscosa\n"
            "2[β] Blätter krautig -> O. serrata\n"
            "3[α] Fruchtknoten drüsig -> O. hispida\n"
            "3[β] Fruchtknoten kahl -> O. crenata\n");
}

TEST(PrintedScans, LettersOfOutlinesMayBeDamaged) {
  EXPECT_EQ(sketch("A. Tallos leñosos.\n"
                   "B. Hojas lineares . . . . . 1. O. linearis Arrg.\n"
                   "B B. Hojas ovales.\n"
                   "C. Cáliz largo . . . . . 2. O. longa Arrg.\n"
                   "CC, Cáliz corto . . . . . 3. O. curta Arrg.\n"
                   "AA. Tallos herbáceos . . . . . 4. O. herbacea Arrg.\n"),
            "A[A] Tallos leñosos. -> B\n"
            "A[AA] Tallos herbáceos -> O. herbacea\n"
            "B[B] Hojas lineares -> O. linearis\n"
            "B[B B] Hojas ovales. -> C\n"
            "C[C] Cáliz largo -> O. longa\n"
            "C[CC] Cáliz corto -> O. curta\n");
  EXPECT_EQ(sketch("a) Conchiglia umbilicata.\n"
                   "b) Umbilico largo — L. lata Csr.\n"
                   "b'} Umbilico stretto — L. stricta Csr. (1)\n"
                   "\n"
                   "(1) La var. minor non è che il giovane.\n"
                   "\n"
                   "a') Conchiglia imperforata — L. clausa Csr.\n"
                   "\n"
                   "1. — Lavernula lata Csr.\n"
                   "\n"
                   "1879. — Lavernula lata CSR. Moll. Valli, p. 33.\n"),
            "a[a] Conchiglia umbilicata. -> b\n"
            "a[a'] Conchiglia imperforata -> Lavernula clausa\n"
            "b[b] Umbilico largo -> Lavernula lata\n"
            "b[b'] Umbilico stretto -> Lavernula stricta (1)\n");
}

TEST(PrintedScans, TheNumberOfARivalMayBeMisreadCloseBehindALabel) {
  EXPECT_EQ(sketch("la. Elytra bicolored ..... 2\n"
                   "lb. Elytra unicolorous ..... 3\n"
                   "2a(la). Black confined to the apex ..... Aus bus\n"
                   "2b. Black covering the half ..... Aus cus\n"
                   "3a(lb). Hind wing developed ..... Aus dus\n"
                   "3b. Hind wing reduced ..... Aus eus\n"),
            "1[la] Elytra bicolored -> 2\n"
            "1[lb] Elytra unicolorous -> 3\n"
            "2[2a] Black confined to the apex -> Aus bus\n"
            "2[2b] Black covering the half -> Aus cus\n"
            "3[3a] Hind wing developed -> Aus dus\n"
            "3[3b] Hind wing reduced -> Aus eus\n");
}

TEST(PrintedScans, AFormaMayStandBehindItsSpeciesAuthor) {
  EXPECT_EQ(sketch("1. Lamina dentata. . P. radicans Zech. f. radicans\n"
                   "- Lamina integra. . P. radicans f. minor Zech.\n"),
            "1[1] Lamina dentata. -> P. radicans f. radicans\n"
            "1[-] Lamina integra. -> P. radicans f. minor\n");
}

TEST(PrintedScans, OtherHalvesOfBracesAreNoWords) {
  EXPECT_EQ(sketch("( Feuilles décurrentes. . . . . 2\n"
                   "1 ]\n"
                   "( Feuilles libres. . . . . 3\n"
                   "/ Tige ailée ; fleurs blan-\n"
                   "2 ) ches . . . . . B. alata Gr.\n"
                   "\\ Tige nue . . . . . B. nuda Gr.\n"
                   "{ Lobes linéaires . . . . . B. tenuis Lav.\n"
                   "3 <\n"
                   "( Lobes ovales . . . . . B. lyrata Gr.\n"),
            "1[1] Feuilles décurrentes -> 2\n"
            "1[] Feuilles libres -> 3\n"
            "2[2] Tige ailée ; fleurs blanches -> B. alata\n"
            "2[] Tige nue -> B. nuda\n"
            "3[3] Lobes linéaires -> B. tenuis\n"
            "3[] Lobes ovales -> B. lyrata\n");
}

TEST(PrintedScans, HeadsBetweenLinesArePagesAndGroups) {
  auto const text =
      "216 SCINCORIDÆ.\n"
      "9. MABOLEPIS.\n"
      "Mabolepis, Fitch, Syst. Rept. p. 23 (1843).\n"
      "Eyelids movable. Limbs short.\n"
      "Synopsis of the Species.\n"
      "I. Limbs pentadactyle.\n"
      "A. Lower eyelid scaly . . . . . 1. fitchii, p. 217.\n"
      "B. Lower eyelid clear . . . . . 2. taeniatus, p. 217.\n"
      "9. MABOLEPIS. 217\n"
      "II. Limbs with fewer digits . . . . . 3. cyanurus, p. 218.\n"
      "1. Mabolepis fitchii.\n"
      "Euprellus fitchii, Gunn, Proc. Marsh Soc. 1864, p. 481.\n";
  EXPECT_EQ(sketch(text),
            "1[I] Limbs pentadactyle. -> 2\n"
            "1[II] Limbs with fewer digits -> Mabolepis cyanurus (p. 218.)\n"
            "2[A] Lower eyelid scaly -> Mabolepis fitchii (p. 217.)\n"
            "2[B] Lower eyelid clear -> Mabolepis taeniatus (p. 217.)\n");
}

TEST(PrintedScans, SheetsOfAJournalNameNoGenus) {
  EXPECT_EQ(sketch("of the Species of Zorbatha. 417\n"
                   "TABLE OF THE SPECIES OF ZORBATHA.\n"
                   "1 (4). Tibiae ringed.\n"
                   "2 (3). Wings clear . . . annulipes, Walder.\n"
                   "3 (2). Wings smoky; hypopygium dull, grey-dusted\n"
                   "fumipennis, sp. n.\n"
                   "TRANS. MARSH ENT. SOC. 1912.-PART III. (DEC.) E E\n"
                   "4 (1). Tibiae plain . . . diaphana, Mell.\n"),
            "1[1] Tibiae ringed. -> 2\n"
            "1[4] Tibiae plain -> Zorbatha diaphana (Mell.)\n"
            "2[2] Wings clear -> Zorbatha annulipes (Walder)\n"
            "2[3] Wings smoky; hypopygium dull, grey-dusted -> Zorbatha fumipennis (sp. n.)\n");
}

TEST(PrintedScans, PagesBetweenLinesHaveNumbersFarBeyondTheKeys) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF ERYTHROLLA\n"
                   "1. Vertex spotted ........ 2\n"
                   "- Vertex plain ........ 3\n"
                   "2. Venter black ........ bipunctata Dorn, p. 219\n"
                   "214 MARSH STATE BIOLOGICAL SURVEY\n"
                   "- Venter yellow ........ pallida Dorn, p. 220\n"
                   "3. Ground color red ........ ador Roe, p. 227\n"
                   "3. Ordnung: Polydesmoidea 43\n"
                   "- Ground color white ........ nigra Roe, p. 227\n"),
            "1[1] Vertex spotted -> 2\n"
            "1[-] Vertex plain -> 3\n"
            "2[2] Venter black -> Erythrolla bipunctata (p. 219)\n"
            "2[-] Venter yellow -> Erythrolla pallida (p. 220)\n"
            "3[3] Ground color red -> Erythrolla ador (p. 227)\n"
            "3[-] Ground color white -> Erythrolla nigra (p. 227)\n");
}

TEST(PrintedScans, AccountsTellThatWordsInCapitalsAreEpithets) {
  EXPECT_EQ(sketch("a. Teeth one-rowed.\n"
                   "b. Lateral line incomplete; length 2 inches. BREVILINEA, 331.\n"
                   "bb. Lateral line complete. NOCTURNUS, 332.\n"
                   "aa. Teeth two-rowed.\n"
                   "c. Caudal spot large. STIGMATICUS, 333.\n"
                   "cc. Caudal spot small. MACULIFER, 334.\n"
                   "Subgenus ORRELLA, Kessing.\n"
                   "331. VARDALBURNUS BREVILINEA, Thorley.\n"),
            "a[a] Teeth one-rowed. -> b\n"
            "a[aa] Teeth two-rowed. -> c\n"
            "b[b] Lateral line incomplete; length 2 inches. -> Vardalburnus brevilinea (331.)\n"
            "b[bb] Lateral line complete. -> Vardalburnus nocturnus (332.)\n"
            "c[c] Caudal spot large. -> Vardalburnus stigmaticus (333.)\n"
            "c[cc] Caudal spot small. -> Vardalburnus maculifer (334.)\n");
}

TEST(PrintedScans, NotesDirectlyBehindANameAreNotes) {
  auto const text =
      "1. - Yeux blancs ; cuillerons blancs. 2. pruinosa Macquard.\n"
      "Long. 7-8 mm. - Littoral ; dunes. Rare.\n"
      "- Yeux bruns. . . . . 2.\n"
      "2. - Pattes claires. . . . . 3. hirsuta Perrigaud.\n"
      "- Pattes noires. Taille petite : 5-6 mm.\n"
      "parvicornis n. sp.\n"
      "(1) Les petits exemplaires se distinguent.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Yeux blancs ; cuillerons blancs. -> pruinosa\n"
            "1[-] Yeux bruns -> 2\n"
            "2[2] Pattes claires -> hirsuta\n"
            "2[-] Pattes noires. Taille petite : 5-6 mm. -> parvicornis (n. sp.)\n");
  EXPECT_EQ(line_kinds(text), "lead, note, lead, lead, lead, destination, note");
}

TEST(PrintedScans, AnAccountBeforeAKeyWithoutLabelsIsNoLead) {
  EXPECT_EQ(sketch("7. MABWENIA, Hallowby in Journ. Soc. Bot. xxxi. 118.\n"
                   "Calyx 5-lobed; lobes equal. Corolla funnel-shaped. Stamens 5.\n"
                   "Species about 24, two in the islands.\n"
                   "Leaves opposite :-\n"
                   "Corolla-tube 2 lin. long, not longer than\n"
                   "the calyx :\n"
                   "Leaves linear . . . . . 1. M. micrantha.\n"
                   "Leaves ovate . . . . . 2. M. ovata.\n"
                   "Corolla-tube 2 in. long . . . . . 3. M. grandis.\n"
                   "Leaves alternate :-\n"
                   "Flowers solitary . . . . . 4. M. pusilla.\n"
                   "Flowers in cymes . . . . . 5. M. cymosa.\n"),
            "1[] Leaves opposite : -> 2\n"
            "1[] Leaves alternate : -> 4\n"
            "2[] Corolla-tube 2 lin. long, not longer than the calyx : -> 3\n"
            "2[] Corolla-tube 2 in. long -> Mabwenia grandis\n"
            "3[] Leaves linear -> Mabwenia micrantha\n"
            "3[] Leaves ovate -> Mabwenia ovata\n"
            "4[] Flowers solitary -> Mabwenia pusilla\n"
            "4[] Flowers in cymes -> Mabwenia cymosa\n");
}

TEST(PrintedScans, LettersThatLookLikeElevenAreNumbersWhereTheGraphConfirmsThem) {
  EXPECT_EQ(sketch("10. Flesh reddening ..... Aus bus\n"
                   "- Flesh unchangeable ..... n\n"
                   "11. Pileus brown ..... Aus cus\n"
                   "- Pileus white ..... б\n"
                   "6. Stem hollow ..... Aus dus\n"
                   "- Stem solid ..... Aus eus\n"),
            "10[10] Flesh reddening -> Aus bus\n"
            "10[-] Flesh unchangeable -> 11\n"
            "11[11] Pileus brown -> Aus cus\n"
            "11[-] Pileus white -> 6\n"
            "6[6] Stem hollow -> Aus dus\n"
            "6[-] Stem solid -> Aus eus\n");
}

TEST(PrintedScans, MisreadNumbersMayEndLeadsWithNothingBeforeThem) {
  EXPECT_EQ(sketch("9. Leaves crisped when dry lO.\n"
                   "9. Leaves straight when dry 11.\n"
                   "10. Stem red, tall Aus bus Roe\n"
                   "10. Stem green, low Aus cus Roe\n"
                   "11. Seta long, red Aus dus Roe\n"
                   "11. Seta short, red Aus eus Roe\n"),
            "9[9] Leaves crisped when dry -> 10\n"
            "9[9] Leaves straight when dry -> 11\n"
            "10[10] Stem red, tall -> Aus bus\n"
            "10[10] Stem green, low -> Aus cus\n"
            "11[11] Seta long, red -> Aus dus\n"
            "11[11] Seta short, red -> Aus eus\n");
}

TEST(PrintedScans, ANextNumberMayBeMisreadBeforeTheLettersOfLeads) {
  EXPECT_EQ(sketch("1 a Bunky ploche 2\n"
                   "b Bunky vypukle 4\n"
                   "Z a Vrchol rovny 3\n"
                   "b Vrchol oblouk 13. S. arcuatum Vack.\n"
                   "3 a Ramena dlouha 15. S. furcigerum Berk.\n"
                   "b Ramena kratka 16. S. sexcostatum Vack.\n"
                   "4 a Zrna velka 17. S. gracile Hrd.\n"
                   "b Zrna mala 18. S. planum Hrd.\n"),
            "1[1 a] Bunky ploche -> 2\n"
            "1[b] Bunky vypukle -> 4\n"
            "2[Z a] Vrchol rovny -> 3\n"
            "2[b] Vrchol oblouk -> S. arcuatum\n"
            "3[3 a] Ramena dlouha -> S. furcigerum\n"
            "3[b] Ramena kratka -> S. sexcostatum\n"
            "4[4 a] Zrna velka -> S. gracile\n"
            "4[b] Zrna mala -> S. planum\n");
}

TEST(PrintedScans, AnAuthorAloneOnALineBeginsNoLead) {
  EXPECT_EQ(sketch("4 - Labelo maior que as sepalas 5\n"
                   "Labelo menor que as sepalas .... 6\n"
                   "5 - Calo com pelos curtos . 3. O. pulvinatum\n"
                   "Hoch.\n"
                   "Calo com cristas longitudinais\n"
                   "4. O. tricristatum B. Leite\n"
                   "6 - Bracteas maiores 9. O. roseum\n"
                   "(Hoch.) Pinto\n"
                   "Bracteas menores 10. O. pubes Pinto\n"),
            "4[4] Labelo maior que as sepalas -> 5\n"
            "4[] Labelo menor que as sepalas -> 6\n"
            "5[5] Calo com pelos curtos -> O. pulvinatum\n"
            "5[] Calo com cristas longitudinais -> O. tricristatum\n"
            "6[6] Bracteas maiores -> O. roseum\n"
            "6[] Bracteas menores -> O. pubes\n");
}

TEST(PrintedScans, ANameMayBeBrokenInABrace) {
  EXPECT_EQ(sketch("1 f Poren auf dem 13. Segm. - 2\n"
                   "l Poren auf dem 15. Segm. .... 1. L. festinans\n"
                   "2 { Hinterkoerper vierkantig .... 4. L. tetra-\n"
                   "gonus\n"
                   "( Hinterkoerper cylindrisch .... 5. L. macrurus\n"),
            "1[1] Poren auf dem 13. Segm. -> 2\n"
            "1[] Poren auf dem 15. Segm. -> L. festinans\n"
            "2[2] Hinterkoerper vierkantig -> L. tetragonus\n"
            "2[] Hinterkoerper cylindrisch -> L. macrurus\n");
}

TEST(PrintedScans, AGenusInBracketsStandsAboveItsSpecies) {
  EXPECT_EQ(sketch("Key to the mice\n\n"
                   "Upper incisors grooved.\n"
                   "  Groove near inner edge of tooth.........Genotherium minutus, p. 237.\n"
                   "  Groove near outer edge of tooth.........(Genus Pelvomys).\n"
                   "    Back with a median stripe.........P. lateralis, p. 239.\n"
                   "    Back without stripe.........P. concolor, p. 241.\n"
                   "Upper incisors smooth.\n"
                   "  Tail bicolor.........Valdimys bicolor, p. 246.\n"
                   "  Tail unicolor.........Valdimys unicolor, p. 252.\n"),
            "1[] Upper incisors grooved. -> 2\n"
            "1[] Upper incisors smooth. -> 4\n"
            "2[] Groove near inner edge of tooth -> Genotherium minutus (p. 237.)\n"
            "2[] Groove near outer edge of tooth -> 3 ((Genus Pelvomys).)\n"
            "3[] Back with a median stripe -> Pelvomys lateralis (p. 239.)\n"
            "3[] Back without stripe -> Pelvomys concolor (p. 241.)\n"
            "4[] Tail bicolor -> Valdimys bicolor (p. 246.)\n"
            "4[] Tail unicolor -> Valdimys unicolor (p. 252.)\n");
}

TEST(PrintedScans, ARivalsBracketMayHoldAMisreadOneAlone) {
  auto const label = printed::read_damaged_back_reference("14 (l) Hind margin sharp", 14);
  ASSERT_TRUE(label);
  EXPECT_EQ(label->number, 14U);
}

TEST(PrintedScans, CrossesThatFellApart) {
  EXPECT_EQ(sketch("* Fleurs jaunes.\n"
                   "-|- Tige velue . . . . . 1. Ausella busa Roe.\n"
                   "-\\-\\- Tige glabre . . . . . 2. A. cusa Roe.\n"
                   "** Fleurs blanches.\n"
                   "+ Sous-arbrisseau . . . . . 3. A. dusa Roe.\n"
                   "-f + Herbes couchées.\n"
                   "X Feuilles rondes . . . . . 4. A. eusa Roe.\n"
                   "XX Feuilles longues . . . . . 5. A. fusa Roe.\n"),
            "1[*] Fleurs jaunes. -> 2\n"
            "1[**] Fleurs blanches. -> 3\n"
            "2[+] Tige velue -> Ausella busa\n"
            "2[++] Tige glabre -> Ausella cusa\n"
            "3[+] Sous-arbrisseau -> Ausella dusa\n"
            "3[++] Herbes couchées. -> 4\n"
            "4[×] Feuilles rondes -> Ausella eusa\n"
            "4[××] Feuilles longues -> Ausella fusa\n");
  // Nothing shows that crosses are meant.
  EXPECT_EQ(sketch("1. Legs long .......... 2\n"
                   "-f Legs short .......... Ausella busa\n"
                   "2. Eyes red .......... Ausella cusa\n"
                   "- Eyes black .......... Ausella dusa\n"),
            "1[1] Legs long -> 2\n"
            "1[] -f Legs short -> Ausella busa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[-] Eyes black -> Ausella dusa\n");
}

TEST(PrintedScans, BackslashesForPrimes) {
  EXPECT_EQ(sketch("1. Setae plumose ..... Ausella busa\n"
                   "1\\ Setae simple ..... 2\n"
                   "2. Digit with three teeth ..... Ausella cusa\n"
                   "2\\ Digit with one tooth ..... Ausella dusa\n"),
            "1[1] Setae plumose -> Ausella busa\n"
            "1[1\\] Setae simple -> 2\n"
            "2[2] Digit with three teeth -> Ausella cusa\n"
            "2[2\\] Digit with one tooth -> Ausella dusa\n");
}

TEST(PrintedScans, AnExclamationMarkBeforeAPrime) {
  EXPECT_EQ(sketch("a. Scales in 15 rows.\n"
                   "  a'. Labials 9.\n"
                   "    a!'. A subocular . . . . . Ausella busa.\n"
                   "    b\". No subocular . . . . . Ausella cusa.\n"
                   "  b'. Labials 8 . . . . . Ausella dusa.\n"
                   "b. Scales in 13 rows . . . . . Ausella eusa.\n"),
            "1[a] Scales in 15 rows. -> 2\n"
            "1[b] Scales in 13 rows -> Ausella eusa\n"
            "2[a'] Labials 9. -> 3\n"
            "2[b'] Labials 8 -> Ausella dusa\n"
            "3[a!'] A subocular -> Ausella busa\n"
            "3[b\"] No subocular -> Ausella cusa\n");
}

TEST(PrintedScans, ALetterForTheNumberOfASpecies) {
  EXPECT_EQ(sketch("1. Wings dark .......... 5. A. busa.\n"
                   "1. Wings pale .......... 2\n"
                   "2. Legs long .......... G. A. cusa.\n"
                   "2. Legs short .......... 7. Ausella dusa.\n"),
            "1[1] Wings dark -> Ausella busa\n"
            "1[1] Wings pale -> 2\n"
            "2[2] Legs long -> Ausella cusa\n"
            "2[2] Legs short -> Ausella dusa\n");
}

TEST(PrintedScans, ALetterForTheNumberThatIsFree) {
  EXPECT_EQ(sketch("4.— Dorsal larga .......... 5\n"
                   "— Dorsal corta .......... Ausella busa\n"
                   "5.— Seis radios .......... 6\n"
                   "— Siete radios .......... S\n"
                   "6.— Manchas negras .......... 7\n"
                   "— Sin manchas .......... Ausella dusa\n"
                   "7.— Aletas largas .......... Ausella cusa\n"
                   "— Aletas cortas .......... Ausella gusa\n"
                   "8.— Color amarillo .......... Ausella eusa\n"
                   "— Color verde .......... Ausella fusa\n"),
            "4[4] Dorsal larga -> 5\n"
            "4[—] Dorsal corta -> Ausella busa\n"
            "5[5] Seis radios -> 6\n"
            "5[—] Siete radios -> 8\n"
            "6[6] Manchas negras -> 7\n"
            "6[—] Sin manchas -> Ausella dusa\n"
            "7[7] Aletas largas -> Ausella cusa\n"
            "7[—] Aletas cortas -> Ausella gusa\n"
            "8[8] Color amarillo -> Ausella eusa\n"
            "8[—] Color verde -> Ausella fusa\n");
}

TEST(PrintedScans, ABlankWithinANumberBeforeItsRival) {
  EXPECT_EQ(sketch("7 (8) Kopf breit.     1. Ausella fusa Roe.\n"
                   "8 (7) Kopf schmal.\n"
                   "9 (14) Halsschild eben.\n"
                   "10 (11) Oberseite kahl.     2. Ausella busa Roe.\n"
                   "1 1 (10) Oberseite behaart, die Haare anlie-\n"
                   "gend.\n"
                   "12 (13) Schienen gerade.     3. A. cusa Roe.\n"
                   "13 (12) Schienen krumm.     4. A. eusa Roe.\n"
                   "14 (9) Halsschild gefurcht.     5. A. dusa Roe.\n"),
            "7[7] Kopf breit. -> Ausella fusa\n"
            "7[8] Kopf schmal. -> 9\n"
            "9[9] Halsschild eben. -> 10\n"
            "9[14] Halsschild gefurcht. -> Ausella dusa\n"
            "10[10] Oberseite kahl. -> Ausella busa\n"
            "10[1 1] Oberseite behaart, die Haare anliegend. -> 12\n"
            "12[12] Schienen gerade. -> Ausella cusa\n"
            "12[13] Schienen krumm. -> Ausella eusa\n");
}

TEST(PrintedScans, ACyrillicInitialOfAGenusIsALatinOne) {
  EXPECT_EQ(sketch("Род Tessella Roe\n\n"
                   "1 (2). Волоски тупые . . . . 1. T. busa Roe.\n"
                   "2 (1). Волоски острые.\n"
                   "3 (4). Хвостик желтый . . . . 2. \u0422. cusa Roe.\n"
                   "4 (3). Хвостик бурый . . . . 3. T. dusa Roe.\n"),
            "1[1] Волоски тупые -> Tessella busa\n"
            "1[2] Волоски острые. -> 3\n"
            "3[3] Хвостик желтый -> Tessella cusa\n"
            "3[4] Хвостик бурый -> Tessella dusa\n");
}

TEST(PrintedScans, FiguresWithinWordsAreLetters) {
  auto const text =
      "1. Legs red ..... 2\n"
      "- Legs black ..... Ausella pal1ens\n"
      "2. Head wide, as in fig. 10b ..... Ausella r0tunda\n"
      "- Head narrow, H10rs ..... A. parvu1a\n";
  EXPECT_EQ(sketch(text),
            "1[1] Legs red -> 2\n"
            "1[-] Legs black -> Ausella pallens\n"
            "2[2] Head wide, as in fig. 10b -> Ausella rotunda\n"
            "2[-] Head narrow, H10rs -> Ausella parvula\n");
  EXPECT_EQ(
      findings_of(text).front(),
      "key.txt:1:1: information: 3 figures within words were read as letters, \"1\" as l and \"0\" "
      "as o [misread-signs] (see with --explain whether the lines are taken for what they are)");
}

TEST(PrintedScans, SpecksAroundNamesBehindLeaders) {
  EXPECT_EQ(sketch("1. Legs red ..... 2\n"
                   "- Legs black ..... Ausella busa .\n"
                   "2. Head wide ..... 'Ausella cusa\n"
                   "- Head narrow ..... Ausella dusa\n"),
            "1[1] Legs red -> 2\n"
            "1[-] Legs black -> Ausella busa\n"
            "2[2] Head wide -> Ausella cusa\n"
            "2[-] Head narrow -> Ausella dusa\n");
}

TEST(PrintedScans, NamesBetweenBlankLines) {
  EXPECT_EQ(sketch("1 (2). Stirn flach. Scheitel stumpf; letztes Segment tief ausgeschnitten.\n\n"
                   "A. busa Roe.\n\n"
                   "2 (1). Stirn gewölbt.\n\n"
                   "3 (4). Deckflügel mit zwei Binden. L. 4 mm.\n\n"
                   "A. cusa Roe.\n\n"
                   "4 (3). Deckflügel ohne Binden . A. dusa n. sp.\n"),
            "1[1] Stirn flach. Scheitel stumpf; letztes Segment tief ausgeschnitten. -> A. busa\n"
            "1[2] Stirn gewölbt. -> 3\n"
            "3[3] Deckflügel mit zwei Binden. L. 4 mm. -> A. cusa\n"
            "3[4] Deckflügel ohne Binden -> A. dusa (n. sp.)\n");
}

TEST(PrintedScans, LettersForTheNumbersThatLeadsEndIn) {
  EXPECT_EQ(sketch("1. Eyes equal, the cheeks smooth 2\n"
                   "– Eyes unequal 3\n"
                   "2. Legs red 4\n"
                   "– Legs black A. busa Roe\n"
                   "3. Wings clear, of the pars thoracica G\n"
                   "– Wings dark A. cusa Roe\n"
                   "4. Head wide 5\n"
                   "– Head narrow A. dusa Roe\n"
                   "5. Tail long A. fusa Roe\n"
                   "– Tail short A. gusa Roe\n"
                   "6. Horn long A. husa Roe\n"
                   "– Horn short A. jusa Roe\n"),
            "1[1] Eyes equal, the cheeks smooth -> 2\n"
            "1[–] Eyes unequal -> 3\n"
            "2[2] Legs red -> 4\n"
            "2[–] Legs black -> A. busa\n"
            "3[3] Wings clear, of the pars thoracica -> 6\n"
            "3[–] Wings dark -> A. cusa\n"
            "4[4] Head wide -> 5\n"
            "4[–] Head narrow -> A. dusa\n"
            "5[5] Tail long -> A. fusa\n"
            "5[–] Tail short -> A. gusa\n"
            "6[6] Horn long -> A. husa\n"
            "6[–] Horn short -> A. jusa\n");
}

TEST(PrintedScans, AuthorsAndPagesOnALineOfTheirOwn) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n\n"
                   "1. Eyes equal 2\n"
                   "Eyes unequal 3\n"
                   "2. Legs red A. busa\n"
                   "Wardle (p. 27).\n"
                   "Legs black A. cusa Wardle (p. 28).\n"
                   "3. Wings clear A. dusa Wardle (p. 30).\n"
                   "Wings dark, more than four times as long as wide A. fusa Wardle\n"
                   "(p. 35).\n\n"
                   "Ausella busa Wardle.\n"
                   "1894. Ausella busa Wardle, Proc. Acad., p. 62, 9.\n"),
            "1[1] Eyes equal -> 2\n"
            "1[] Eyes unequal -> 3\n"
            "2[2] Legs red -> Ausella busa (p. 27)\n"
            "2[] Legs black -> Ausella cusa (p. 28)\n"
            "3[3] Wings clear -> Ausella dusa (p. 30)\n"
            "3[] Wings dark, more than four times as long as wide -> Ausella fusa\n");
}

TEST(PrintedScans, LettersOfCoupletsMayEndLeads) {
  EXPECT_EQ(sketch("A. Border with two lobes B\n"
                   "A'. Border straight D\n"
                   "B. Sides with teeth C\n"
                   "B'. Sides smooth A. busa\n"
                   "C. Spines three A. cusa\n"
                   "C'. Spines none A. dusa\n"
                   "D. Eyes small A. fusa\n"
                   "D'. Eyes large A. gusa\n"),
            "A[A] Border with two lobes -> B\n"
            "A[A'] Border straight -> D\n"
            "B[B] Sides with teeth -> C\n"
            "B[B'] Sides smooth -> A. busa\n"
            "C[C] Spines three -> A. cusa\n"
            "C[C'] Spines none -> A. dusa\n"
            "D[D] Eyes small -> A. fusa\n"
            "D[D'] Eyes large -> A. gusa\n");
}

TEST(PrintedScans, ALetterAtTheEndOfALeadWithoutLabelMayBeItsNumber) {
  EXPECT_EQ(sketch("1. Striae bare; intervals flat 2\n"
                   "Striae hairy; intervals more or less\n"
                   "convex S\n"
                   "2. Thorax red 3\n"
                   "Thorax black busa Roe\n"
                   "3. Legs red 4\n"
                   "Legs black cusa Roe\n"
                   "4. Palps red dusa Roe\n"
                   "Palps black fusa Roe\n"
                   "5. Eyes red gusa Roe\n"
                   "Eyes black lusa Roe\n"),
            "1[1] Striae bare; intervals flat -> 2\n"
            "1[] Striae hairy; intervals more or less convex -> 5\n"
            "2[2] Thorax red -> 3\n"
            "2[] Thorax black -> busa\n"
            "3[3] Legs red -> 4\n"
            "3[] Legs black -> cusa\n"
            "4[4] Palps red -> dusa\n"
            "4[] Palps black -> fusa\n"
            "5[5] Eyes red -> gusa\n"
            "5[] Eyes black -> lusa\n");
}

TEST(PrintedScans, EpithetsWithCapitalsStandBehindTheirNumbers) {
  EXPECT_EQ(sketch("1. Corps vert 2.\n"
                   "— Corps brun 3.\n"
                   "2. Plaque courte 1. busa (Brun.).\n"
                   "— Plaque longue 2. Dornari Finet.\n"
                   "3. Tympan nul 3. cusa Royer.\n"
                   "— Tympan ouvert 4. dusa Finet, var. nigra nov.\n"),
            "1[1] Corps vert -> 2\n"
            "1[—] Corps brun -> 3\n"
            "2[2] Plaque courte -> busa\n"
            "2[—] Plaque longue -> dornari\n"
            "3[3] Tympan nul -> cusa\n"
            "3[—] Tympan ouvert -> dusa var. nigra (nov.)\n");
}

TEST(PrintedScans, EpithetsBehindWhichACommaSetsAuthors) {
  EXPECT_EQ(sketch("1 (4). Elytra striate.\n"
                   "2 (3). Thorax with strigae busa, Marl.\n"
                   "3 (2). Thorax without strigae cusa, Pell.\n"
                   "4 (1). Elytra smooth.\n"
                   "5 (6). Club of three joints fungivora, Crewd.\n"
                   "6 (5). Club of five joints grandis, Garth.\n"),
            "1[1] Elytra striate. -> 2\n"
            "1[4] Elytra smooth. -> 5\n"
            "2[2] Thorax with strigae -> busa\n"
            "2[3] Thorax without strigae -> cusa\n"
            "5[5] Club of three joints -> fungivora\n"
            "5[6] Club of five joints -> grandis\n");
}

TEST(PrintedScans, SpecksAmongLeadersAndBesideNamesAreNone) {
  EXPECT_EQ(sketch("1. Leaves opposite ' . . , 2\n"
                   "   Leaves alternate ....r... 'M. busa Roe\n"
                   "2. Petals red . . ■ . 3\n"
                   "   Petals white .... M. cusa Roe■\n"
                   "3. Stem erect ....^ M. dusa Roe\n"
                   "   Stem prostrate ........ M. fusa Roe\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> M. busa\n"
            "2[2] Petals red -> 3\n"
            "2[] Petals white -> M. cusa\n"
            "3[3] Stem erect -> M. dusa\n"
            "3[] Stem prostrate -> M. fusa\n");
}

TEST(PrintedScans, TheFullStopOfAGenusMayBeAnotherSign) {
  EXPECT_EQ(sketch("1. Leaves opposite .... 2\n"
                   "   Leaves alternate .... M . busa Roe\n"
                   "2. Petals red .... iM. cusa Roe\n"
                   "   Petals white .... 3\n"
                   "3. Stem erect .... M, dusa Roe\n"
                   "   Stem prostrate .... 4\n"
                   "4. Seeds red .... M. fusa Roe\n"
                   "   Seeds black .... M. gusa Roe\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> M. busa\n"
            "2[2] Petals red -> M. cusa\n"
            "2[] Petals white -> 3\n"
            "3[3] Stem erect -> M. dusa\n"
            "3[] Stem prostrate -> 4\n"
            "4[4] Seeds red -> M. fusa\n"
            "4[] Seeds black -> M. gusa\n");
  // Behind the species' numbers, and with no blank behind it.
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1. Leaves opposite .... 2\n"
                   "1. Leaves alternate .... 1. A. busa\n"
                   "2. Petals red .... 2. A.cusa\n"
                   "2. Petals white .... 3\n"
                   "3. Seeds red .... 3. A, dusa\n"
                   "3. Seeds black .... 4. A. fusa\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1] Leaves alternate -> Ausella busa\n"
            "2[2] Petals red -> Ausella cusa\n"
            "2[2] Petals white -> 3\n"
            "3[3] Seeds red -> Ausella dusa\n"
            "3[3] Seeds black -> Ausella fusa\n");
  // Of two genera.
  EXPECT_EQ(sketch("1. Leaves opposite .... 2\n"
                   "   Leaves alternate .... M. busa Roe\n"
                   "2. Petals red .... A. cusa Roe\n"
                   "   Petals white .... M, dusa Roe\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> M. busa\n"
            "2[2] Petals red -> A. cusa\n"
            "2[] Petals white -> M (dusa Roe)\n");
}

TEST(PrintedScans, PagesMayStandBehindLeadersOfTheirOwn) {
  EXPECT_EQ(sketch("1. Leaves opposite .... 2\n"
                   "   Leaves alternate .... M. busa Roe ... p. 145\n"
                   "2. Petals red .... M. cusa Roe ..... 146\n"
                   "   Petals white .... M. dusa Roe ..... 147\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> M. busa (p. 145)\n"
            "2[2] Petals red -> M. cusa (p. 146)\n"
            "2[] Petals white -> M. dusa (p. 147)\n");
}

TEST(PrintedScans, LettersBehindLeadersMayBeNumbersWhereSecondLeadsBearNone) {
  EXPECT_EQ(sketch("1. Leaves opposite ..... z\n"
                   "   Leaves alternate ..... s\n"
                   "2. Petals red ..... M. busa Roe\n"
                   "   Petals white ..... 3•\n"
                   "3. Stem erect ..... 4 .\n"
                   "   Stem prostrate ..... M. cusa Roe\n"
                   "4. Seeds red ..... M. dusa Roe\n"
                   "   Seeds white ..... M. fusa Roe\n"
                   "5. Style long ..... M. gusa Roe\n"
                   "   Style short ..... M. lusa Roe\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> 5\n"
            "2[2] Petals red -> M. busa\n"
            "2[] Petals white -> 3\n"
            "3[3] Stem erect -> 4\n"
            "3[] Stem prostrate -> M. cusa\n"
            "4[4] Seeds red -> M. dusa\n"
            "4[] Seeds white -> M. fusa\n"
            "5[5] Style long -> M. gusa\n"
            "5[] Style short -> M. lusa\n");
}

TEST(PrintedScans, AuthorsWithoutNamesAreNoEpithets) {
  EXPECT_EQ(sketch("1. Leaves opposite .... 2\n"
                   "   Leaves alternate .... M. busa auctt.\n"
                   "2. Petals red .... M. cusa mihi\n"
                   "   Petals white .... M. dusa nob.\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> M. busa (auctt)\n"
            "2[2] Petals red -> M. cusa\n"
            "2[] Petals white -> M. dusa (nob)\n");
}

TEST(PrintedScans, NumbersThatNobodyElseLeadsToCloseLeads) {
  EXPECT_EQ(sketch("1. Wings long 2\n"
                   "– Wings short 3\n"
                   "2. Head red 4\n"
                   "– Head black busa Roe\n"
                   "3. Body white .5\n"
                   "—• Body yellow cusa Roe\n"
                   "4. Scales many; canopy species 6\n"
                   "– Scales few fusa Roe\n"
                   "5. Tail long 7\n"
                   "– Tail short gusa Roe\n"
                   "6. Eyes red lusa Roe\n"
                   "– Eyes black in caudal view (fig. 46) fulgur (Roe)\n"
                   "7. Legs long G\n"
                   "– Legs short dusa Roe\n"),
            "1[1] Wings long -> 2\n"
            "1[–] Wings short -> 3\n"
            "2[2] Head red -> 4\n"
            "2[–] Head black -> busa\n"
            "3[3] Body white -> 5\n"
            "3[—] Body yellow -> cusa\n"
            "4[4] Scales many; canopy species -> 6\n"
            "4[–] Scales few -> fusa\n"
            "5[5] Tail long -> 7\n"
            "5[–] Tail short -> gusa\n"
            "6[6] Eyes red -> lusa\n"
            "6[–] Eyes black in caudal view (fig. 46) -> fulgur\n"
            "7[7] Legs long G -> ?\n"
            "7[–] Legs short -> dusa\n");
}

TEST(PrintedScans, ALetterThatIsTheSecondLeadsIsNoNumber) {
  EXPECT_EQ(sketch("7. A. Scales keeled, rows abruptly larger than laterals 8\n"
                   "B. Scales granular, grading evenly into laterals 9\n"
                   "8. A. A yellow stripe; grassland Anolura busa (Roe)\n"
                   "B. No stripe; forest Anolura cusa Roe\n"
                   "9. A. Lower eyelid with a disk Anolura dusa Roe\n"
                   "B. Lower eyelid without a disk 10\n"
                   "10. A. Tail long Anolura fusa Roe\n"
                   "B. Tail short Anolura gusa Roe\n"),
            "7[7] A. Scales keeled, rows abruptly larger than laterals -> 8\n"
            "7[] B. Scales granular, grading evenly into laterals -> 9\n"
            "8[8] A. A yellow stripe; grassland -> Anolura busa\n"
            "8[] B. No stripe; forest -> Anolura cusa\n"
            "9[9] A. Lower eyelid with a disk -> Anolura dusa\n"
            "9[] B. Lower eyelid without a disk -> 10\n"
            "10[10] A. Tail long -> Anolura fusa\n"
            "10[] B. Tail short -> Anolura gusa\n");
}

TEST(PrintedScans, NumbersOfSpeciesBehindLeadersMayBeDamaged) {
  EXPECT_EQ(sketch("1. Leaves opposite .... 2\n"
                   "   Leaves alternate .... l. M. busa Roe\n"
                   "2. Petals red .... 2, M. cusa Roe\n"
                   "   Petals white .... 3\n"
                   "3. Stem erect .... 3. M. dusa Roe\n"
                   "   Stem prostrate .... 4. M. fusa Roe\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> M. busa\n"
            "2[2] Petals red -> M. cusa\n"
            "2[] Petals white -> 3\n"
            "3[3] Stem erect -> M. dusa\n"
            "3[] Stem prostrate -> M. fusa\n");
  EXPECT_EQ(sketch("1. Leaves opposite .... 2\n"
                   "   Leaves alternate .... No. 1. M. busa\n"
                   "2. Petals red .... No. 2. M. cusa\n"
                   "   Petals white .... § Minores\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> M. busa\n"
            "2[2] Petals red -> M. cusa\n"
            "2[] Petals white -> Minores (§)\n");
}

}  // namespace
}  // namespace keydrift
