// Destinations on lines of their own, and what stands around them.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNamesAlone, LeadersOnALineOfTheirOwnAreNoHead) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n"
             "\n"
             "1. Legs thin . . . . . . . . . . . . . . . . . . . . . 2\n"
             "1'. Legs thick . . . . . . . . . . . . . . . . . Ausella busa Roe, 1958\n"
             "2. Palm smooth, longer than high . . . . . . . . . . . Ausella cusa (Dorn, 1911)\n"
             "2'. Palm with tubercles, no longer than high . . . . . .\n"
             ". . . . . . . . . . . . . . . . . . . . . Ausella dusa Roe, 1964\n"
             "\n"
             "Ausella fusa sp. nov.\n"
             "(Figs. 2B, 3A-D)\n"
             "\n"
             "Material examined. Holotype: male.\n"),
      "1[1] Legs thin -> 2\n"
      "1[1'] Legs thick -> Ausella busa\n"
      "2[2] Palm smooth, longer than high -> Ausella cusa\n"
      "2[2'] Palm with tubercles, no longer than high -> Ausella dusa\n");
}

TEST(PrintedNamesAlone, EpithetsStandAloneBeneathSentences) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1 (2)\tFinger with a lamella; galea conical. Caves of Mt Orga.\n"
                   "\tbusella Roe\n"
                   "2 (1)\tFinger without lamella; galea reduced.\n"
                   "3 (4)\tTeeth alternating. Littoral.\n"
                   "\tcaecus Dorn\n"
                   "4 (3)\tTeeth all alike. Mt Sell.\n"
                   "\tsellanus Roe\n"
                   "\n"
                   "Oss. - A. dubiosus Dorn, known from a nymph, is not in the key.\n"
                   "\n"
                   "1. Ausella busella Roe, 1929\n"
                   "Loc. class.: Mt Orga.\n"),
            "1[1] Finger with a lamella; galea conical. Caves of Mt Orga. -> Ausella busella\n"
            "1[2] Finger without lamella; galea reduced. -> 3\n"
            "3[3] Teeth alternating. Littoral. -> Ausella caecus\n"
            "3[4] Teeth all alike. Mt Sell. -> Ausella sellanus\n");
}

TEST(PrintedNamesAlone, ATabAtTheEndLeadsOverTheLine) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1\tSoredia orange\t2\n"
                   "\tSoredia dull\t3\n"
                   "\n"
                   "2(1)\tSoralia discrete, with a rim; thallus red\t\n"
                   "\tA. busa\n"
                   "\tSoralia soon confluent, without a rim; thallus grey\tA. cusa\n"
                   "\n"
                   "3(1)\tSoralia rose\tA. rosea\n"
                   "\tSoralia white\tA. alba\n"),
            "1[1] Soredia orange -> 2\n"
            "1[] Soredia dull -> 3\n"
            "2[2] Soralia discrete, with a rim; thallus red -> Ausella busa\n"
            "2[] Soralia soon confluent, without a rim; thallus grey -> Ausella cusa\n"
            "3[3] Soralia rose -> Ausella rosea\n"
            "3[] Soralia white -> Ausella alba\n");
}

TEST(PrintedNamesAlone, AnEpithetAloneIsTheDestinationAndNotTheRemarkBehindADash) {
  EXPECT_EQ(sketch("Table of the species of Ausella\n"
                   "\n"
                   "1. Femora toothed..................... 2\n"
                   "— Femora simple....................... 3\n"
                   "2. Rostrum furrowed; form short,\n"
                   "convex. — Regions elevatae, beneath stones, near snow.\n"
                   "alpestris Roeb.\n"
                   "— Rostrum keeled...................... nebulosus Roeb.\n"
                   "3. Spots of the elytra round, five on each; scape long.\n"
                   "guttulatus Dorn. (1)\n"
                   "— Spots confluent, denser behind...... 4\n"
                   "4. Eyes convex........................ hispanulus Roeb.\n"
                   "— Eyes flat........................... ruficornis Dorn.\n"
                   "\n"
                   "(1) The A. sexguttatus Roeb. is nothing but a fresh guttulatus.\n"),
            "1[1] Femora toothed -> 2\n"
            "1[—] Femora simple -> 3\n"
            "2[2] Rostrum furrowed; form short, convex. — Regions elevatae, beneath stones, near "
            "snow. -> Ausella alpestris\n"
            "2[—] Rostrum keeled -> Ausella nebulosus\n"
            "3[3] Spots of the elytra round, five on each; scape long. -> Ausella guttulatus (1)\n"
            "3[—] Spots confluent, denser behind -> 4\n"
            "4[4] Eyes convex -> Ausella hispanulus\n"
            "4[—] Eyes flat -> Ausella ruficornis\n");
}

TEST(PrintedNamesAlone, AnUnnamedSpeciesMayHaveARemarkOfParts) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1\tLimbs overlapping when adpressed\tA. fossor Roe, 1974\n"
                   "–\tLimbs widely separated when adpressed\t2\n"
                   "2\tSnout wedge-shaped, rostral overhanging lower jaw\tA. busa Roe, 1974\n"
                   "–\tSnout rounded; 22 scale rows at midbody\tA. sp. 2 (Cape Tarn; one juvenile, "
                   "see Discussion)\n"),
            "1[1] Limbs overlapping when adpressed -> Ausella fossor\n"
            "1[–] Limbs widely separated when adpressed -> 2\n"
            "2[2] Snout wedge-shaped, rostral overhanging lower jaw -> Ausella busa\n"
            "2[–] Snout rounded; 22 scale rows at midbody -> Ausella sp. 2 (Cape Tarn; one "
            "juvenile, see Discussion)\n");
}

TEST(PrintedNamesAlone, TheEndThatLeadersLeadToIsNoneOfTheAccountBeneath) {
  EXPECT_EQ(sketch("The following tabulation may serve to distinguish the species of Ausella:\n"
                   "\n"
                   "I. Crown produced in front; ocelli on the margin.\n"
                   "\n"
                   "A. Elytra with pale nerves.\n"
                   "\n"
                   "a. Face black with two clear spots;\n"
                   "scutellum black ...... 1. busa, Roe.\n"
                   "\n"
                   "b. Face yellow, with brown lines.\n"
                   "2. croceus, Dorn.\n"
                   "\n"
                   "B. Elytra with dark nerves.\n"
                   "3. reticulatus, Dorn.\n"
                   "\n"
                   "II. Crown rounded; ocelli nearer to the eyes.\n"
                   "\n"
                   "A. Elytra much abbreviated ......\n"
                   "4. brachypterus, Dorn.\n"
                   "\n"
                   "B. Elytra as long as the abdomen; on\n"
                   "furze ...... 5. ulicis, Roe.\n"
                   "\n"
                   "A. quarnensis, n. sp. Yellowish-brown. Crown subangular, with a\n"
                   "fuscous line on each side before the ocelli.\n"),
            "1[I] Crown produced in front; ocelli on the margin. -> 2\n"
            "1[II] Crown rounded; ocelli nearer to the eyes. -> 4\n"
            "2[A] Elytra with pale nerves. -> 3\n"
            "2[B] Elytra with dark nerves. -> Ausella reticulatus\n"
            "3[a] Face black with two clear spots; scutellum black -> Ausella busa\n"
            "3[b] Face yellow, with brown lines. -> Ausella croceus\n"
            "4[A] Elytra much abbreviated -> Ausella brachypterus\n"
            "4[B] Elytra as long as the abdomen; on furze -> Ausella ulicis\n");
}

TEST(PrintedNamesAlone, AGenusBehindADashGoesOnWithItsEpithet) {
  EXPECT_EQ(sketch("1. Legs red; claws with a tooth at base — A.\n"
                   "busa (Roe, 1901)\n"
                   "– Legs black; claws simple, long and strongly curved — Ausella\n"
                   "cusa (Dorn, 1905)\n"),
            "1[1] Legs red; claws with a tooth at base -> Ausella busa\n"
            "1[–] Legs black; claws simple, long and strongly curved -> Ausella cusa\n");
}

TEST(PrintedNamesAlone, ANumberedNewSpeciesIsTheDestinationOfThePlaceAbove) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Arten von Ausella\n"
                   "\n"
                   "1 (4) Postpetiolus fein längsrissig.\n"
                   "2 (3) 2. Tergit grob punktiert; Bohrer lang. 10 mm. – Alpen, Karpaten\n"
                   "\t1. A. busa Lachner\n"
                   "3 (2) 2. Tergit fein gekörnelt; Bohrer kurz. 8 mm. – Kleinasien\n"
                   "\t2. A. striolata n. sp.\n"
                   "4 (1) Postpetiolus glatt.\n"
                   "5 (6) Propodeum mit Dornen. 7 mm. – Ganz Europa\n"
                   "\t3. A. nitida (Gravenhöft)\n"
                   "6 (5) Propodeum ohne Dornen. 6 mm. – Spanien\n"
                   "\t4. A. cincta n. sp.\n"),
            "1[1] Postpetiolus fein längsrissig. -> 2\n"
            "1[4] Postpetiolus glatt. -> 5\n"
            "2[2] 2. Tergit grob punktiert; Bohrer lang. 10 mm. – Alpen, Karpaten -> Ausella busa\n"
            "2[3] 2. Tergit fein gekörnelt; Bohrer kurz. 8 mm. – Kleinasien -> Ausella striolata "
            "(n. sp.)\n"
            "5[5] Propodeum mit Dornen. 7 mm. – Ganz Europa -> Ausella nitida\n"
            "5[6] Propodeum ohne Dornen. 6 mm. – Spanien -> Ausella cincta (n. sp.)\n");
}

TEST(PrintedNamesAlone, ANumberedSpeciesInFullHasItsLineForItself) {
  auto const text =
      "Key to the species of Peldicarus\n\n"
      "1. Shield entire; coxa smooth\n   2\n"
      "1. Shield divided\n   3\n"
      "2. Setae plumose, the longest curved\n   1. Peldicarus longisetus Roe\n"
      "2. Setae simple\n   2. Peldicarus punctulatus n. sp.\n"
      "3. Anal shield wide\n   3. Peldicarus magnus\n"
      "3. Anal shield long; northern parts\n   4. Peldicarus tripartitus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shield entire; coxa smooth -> 2\n"
            "1[1] Shield divided -> 3\n"
            "2[2] Setae plumose, the longest curved -> Peldicarus longisetus\n"
            "2[2] Setae simple -> Peldicarus punctulatus (n. sp.)\n"
            "3[3] Anal shield wide -> Peldicarus magnus\n"
            "3[3] Anal shield long; northern parts -> Peldicarus tripartitus\n");
}

TEST(PrintedNamesAlone, ANumberedSpeciesBelowABlankLineTitlesAnAccount) {
  EXPECT_EQ(
      sketch("Key to the species of Ochrella\n\n"
             "1. Stria deep ..... 2\n- Stria faint ..... O. nigra Roe\n"
             "2. Episterna short ..... O. alba Roe\n- Episterna long, the margins\ndiluted\n\n"
             "1. Ochrella sericea, sp. n.\n\nBlack, shining. Length 4 mm.\n"),
      "1[1] Stria deep -> 2\n"
      "1[-] Stria faint -> Ochrella nigra\n"
      "2[2] Episterna short -> Ochrella alba\n"
      "2[-] Episterna long, the margins diluted -> ?\n");
}

TEST(PrintedNamesAlone, SeveralTaxaMayHaveALineEach) {
  EXPECT_EQ(sketch("a. Wing white below; crown gray.\n"
                   "                     Phyllella ater ater (p. 421)\n"
                   "                     Phyllella ater brevicauda (p. 423)\n"
                   "aa. Wing brown below.\n"
                   "                     Phyllella lutea (p. 425)\n"),
            "a[a] Wing white below; crown gray. -> Phyllella ater ater + Phyllella ater brevicauda "
            "(p. 421; p. 423)\n"
            "a[aa] Wing brown below. -> Phyllella lutea (p. 425)\n");
  EXPECT_EQ(sketch("A. Leaves spatulate.                7. Q. rosulata\n"
                   "AA. Leaves linear.                  8. Q. fruticosa var. fruticosa\n"
                   "                                    8b. Q. fruticosa var. canescens\n"),
            "A[A] Leaves spatulate. -> Q. rosulata\n"
            "A[AA] Leaves linear. -> Q. fruticosa var. fruticosa + Q. fruticosa var. canescens\n");
}

TEST(PrintedNamesAlone, APlaceBehindADashIsNoEndAboveOne) {
  EXPECT_EQ(sketch("AUSELLA.\n\n1. Eyes large. Lg. 1 mm. — Galizien.\n\nopacus Roe.\n\n"
                   "— Eyes small. Lg. 2 mm. ..... 2\n\n"
                   "2. Legs red. Lg. 3 mm. — Toscana.\n\napenninus Roe.\n\n"
                   "— Legs black. Lg. 2 mm. — Banat.\n\nsetiger Dorn.\n"),
            "1[1] Eyes large. Lg. 1 mm. — Galizien. -> Ausella opacus\n"
            "1[—] Eyes small. Lg. 2 mm. -> 2\n"
            "2[2] Legs red. Lg. 3 mm. — Toscana. -> Ausella apenninus\n"
            "2[—] Legs black. Lg. 2 mm. — Banat. -> Ausella setiger\n");
}

TEST(PrintedNamesAlone, ASignMayStandBeforeOne) {
  EXPECT_EQ(sketch("AUSELLA.\n\n1. Milk scarce; smell of busa\n\n*A. cusa (p. 101)\n\n"
                   "— Milk plenty; brown ..... 2\n\n2. Cap white\n\nA. dusa (p. 102)\n\n"
                   "— Cap red\n\n*A. eusa (p. 103)\n"),
            "1[1] Milk scarce; smell of busa -> Ausella cusa (*; p. 101)\n"
            "1[—] Milk plenty; brown -> 2\n"
            "2[2] Cap white -> Ausella dusa (p. 102)\n"
            "2[—] Cap red -> Ausella eusa (*; p. 103)\n");
}

TEST(PrintedNamesAlone, ANameThatABracketSpeaksOfIsNoEnd) {
  EXPECT_EQ(
      sketch("1 (2). Elytra brown. Elsewhere another race (ssp. insularis Roe).\n"
             "A. montana montana Dorn.\n2 (1). Elytra black ..... A. nigra Dorn.\n"),
      "1[1] Elytra brown. Elsewhere another race (ssp. insularis Roe). -> A. montana montana\n"
      "1[2] Elytra black -> A. nigra\n");
}

TEST(PrintedNamesAlone, TheLastCellOfARowMayStandOnTheNextLine) {
  EXPECT_EQ(sketch("1\tTusks long; body to 18 mm\tAusella\n"
                   "1'\tTusks short; body to 12 mm\n\tBusella (one species, B. pusilla)\n"),
            "1[1] Tusks long; body to 18 mm -> Ausella\n"
            "1[1'] Tusks short; body to 12 mm -> Busella (one species, B. pusilla)\n");
}

TEST(PrintedNamesAlone, SpeciesWithTheirPagesStandBetweenBlankLines) {
  EXPECT_EQ(
      sketch("Key to the mice of the genus Ausella\n"
             "\n"
             "1. Pelage soft; no spines on rump.\n"
             "\n"
             "2. Tail shorter than head and body; lateral line conspicuous\n"
             "\n"
             "Ausella pumila, p. 461\n"
             "\n"
             "2'. Tail longer than head and body; mastoids projecting behind occiput\n"
             "\n"
             ".Ausella arenicola, p. 466\n"
             "\n"
             "1'. Rump with stout spines.\n"
             "\n"
             "3. Ear less than 9 mm.; skull slender\n"
             "\n"
             "Ausella artifex, p. 496\n"
             "\n"
             "3'. Ear more than 9 mm.; skull broad\n"
             "\n"
             "Ausella spinosior, p. 499\n"),
      "1[1] Pelage soft; no spines on rump. -> 2\n"
      "1[1'] Rump with stout spines. -> 3\n"
      "2[2] Tail shorter than head and body; lateral line conspicuous -> Ausella pumila (p. 461)\n"
      "2[2'] Tail longer than head and body; mastoids projecting behind occiput -> Ausella "
      "arenicola (p. 466)\n"
      "3[3] Ear less than 9 mm.; skull slender -> Ausella artifex (p. 496)\n"
      "3[3'] Ear more than 9 mm.; skull broad -> Ausella spinosior (p. 499)\n");
}

TEST(PrintedNamesAlone, ANewSpeciesWithItsPageBetweenBlankLines) {
  EXPECT_EQ(sketch("Key to the species of Notaphrix\n"
                   "\n"
                   "a^. Propodeum with a median carina.\n"
                   "\n"
                   "b^. Coxae red; all femora reddish testaceous, their\n"
                   "tips paler ..... rufipes Roe (p. 13).\n"
                   "\n"
                   "b^. Coxae and at least the hind femora black or metallic.\n"
                   "\n"
                   "nigricoxa, new species (p. 14).\n"
                   "\n"
                   "LINDEN MUSEUM. vol. 68.\n"
                   "\n"
                   "a^. Propodeum without a median carina.\n"
                   "\n"
                   "c^. Body green ..... viridescens Dorn (p. 19).\n"
                   "\n"
                   "c^. Body black ..... montana, new species (p. 20).\n"),
            "a[a^] Propodeum with a median carina. -> b\n"
            "a[a^] Propodeum without a median carina. -> c\n"
            "b[b^] Coxae red; all femora reddish testaceous, their tips paler -> Notaphrix rufipes "
            "(p. 13)\n"
            "b[b^] Coxae and at least the hind femora black or metallic. -> Notaphrix nigricoxa "
            "(new species (p. 14))\n"
            "c[c^] Body green -> Notaphrix viridescens (p. 19)\n"
            "c[c^] Body black -> Notaphrix montana (new species (p. 20))\n");
}

TEST(PrintedNamesAlone, ANumberedNameStandsBetweenBlankLines) {
  EXPECT_EQ(sketch("CLAVIS SPECIERUM\n"
                   "\n"
                   "A. Folia opposita.\n"
                   "\n"
                   "I. Ovarium glabrum . . . . . . . . . . . . 1. O. glabrum.\n"
                   "\n"
                   "II. Ovarium pilosum . . . . . . . . . . . 2. O. pilosum.\n"
                   "\n"
                   "B. Folia alterna.\n"
                   "\n"
                   "I. Folia coriacea, supra nitidula, nervis utrinque 5 — 6 . . 3. O. nitidum.\n"
                   "\n"
                   "II. Folia membranacea, opaca, nervis utrinque 9 — 12\n"
                   "\n"
                   "4. O. membranaceum.\n"),
            "1[A] Folia opposita. -> 2\n"
            "1[B] Folia alterna. -> 3\n"
            "2[I] Ovarium glabrum -> Ovarium glabrum\n"
            "2[II] Ovarium pilosum -> Ovarium pilosum\n"
            "3[I] Folia coriacea, supra nitidula, nervis utrinque 5 — 6 -> Ovarium nitidum\n"
            "3[II] Folia membranacea, opaca, nervis utrinque 9 — 12 -> Ovarium membranaceum\n");
}

TEST(PrintedNamesAlone, PlacesAndTheNameStandBehindBlankLines) {
  EXPECT_EQ(sketch("TABLEAU DES ESPÈCES\n"
                   "\n"
                   "Genre CELTIBRINA\n"
                   "\n"
                   "1. — Mésonotum noir . . . . . . . . . . . . 2\n"
                   "— Mésonotum jaune . . . . . . . . . . . . . 3\n"
                   "\n"
                   "2. — Triangle atteignant le bord du front. — Long. : 2-2,5 mm.\n"
                   "\n"
                   "Toute la France ; commun sur les herbes, de mai à septembre\n"
                   "\n"
                   "frontella Fallin\n"
                   "\n"
                   "— Triangle n'atteignant pas le bord du front. — Long. : 1,5 mm.\n"
                   "\n"
                   "Alpes, Pyrénées nigritibia Beckl.\n"
                   "\n"
                   "3. — Soies notopleurales 1 + 1 . . . . . . . minutissima Strohl\n"
                   "— Soies notopleurales 1 + 2 . . . . . . . . pruinosa Beckl.\n"),
            "1[1] Mésonotum noir -> 2\n"
            "1[—] Mésonotum jaune -> 3\n"
            "2[2] Triangle atteignant le bord du front. — Long. : 2-2,5 mm. Toute la France ; "
            "commun sur les herbes, de mai à septembre -> Celtibrina frontella\n"
            "2[—] Triangle n'atteignant pas le bord du front. — Long. : 1,5 mm. Alpes, Pyrénées -> "
            "Celtibrina nigritibia\n"
            "3[3] Soies notopleurales 1 + 1 -> Celtibrina minutissima\n"
            "3[—] Soies notopleurales 1 + 2 -> Celtibrina pruinosa\n");
}

TEST(PrintedNamesAlone, AboveTheSizeOfTheSpecies) {
  EXPECT_EQ(
      sketch("Bestimmungstabelle der Arten von Harpagonia\n"
             "\n"
             "1 (4) Ocellen vorhanden.\n"
             "2 (3) Endhaken lang (Abb. 133). Schwarz mit\n"
             "gelblicher Rückenbinde. . . . . . . . . H. ocellata Kolbst.\n"
             "cf 17—21 mm lg.; Q 20—26 mm lg. 43—47 Ringe.\n"
             "3 (2) Endhaken kaum halb so lang (Abb. 134). Braun.\n"
             "H. curvipes (Mehlb.)\n"
             "cf 15—18 mm. 40—44 Ringe. Bisher nur vom Oberlauf der Talk.\n"
             "4 (1) Ocellen fehlend. . . . . . . H. cornigera Brandst.\n"
             "cf 9—11 mm. Unter Steinen.\n"),
      "1[1] Ocellen vorhanden. -> 2\n"
      "1[4] Ocellen fehlend -> Harpagonia cornigera\n"
      "2[2] Endhaken lang (Abb. 133). Schwarz mit gelblicher Rückenbinde -> Harpagonia ocellata\n"
      "2[3] Endhaken kaum halb so lang (Abb. 134). Braun. -> Harpagonia curvipes\n");
}

TEST(PrintedNamesAlone, AStarStandsBeforeAnEpithetOnItsOwnLine) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1—Body pale throughout. Length 2.3 mm. Kantoma\n"
                   "(Brell Co.). ..................................fulvescens Lorne\n"
                   "Body piceous-black, the legs pale ................2\n"
                   "2—Head little narrower than the prothorax .......3\n"
                   "Head much narrower than the prothorax; elytra densely punctate. Length\n"
                   "2.6 mm.; width 0.62 mm. Marlock (Fort Tansy),—Mr. Weems.\n"
                   "*angusticeps n. sp.\n"
                   "3—Prothorax with a deep impression. Two specimens. ...*weemsi n. sp.\n"
                   "Prothorax without an impression. One specimen. ...*simplex n. sp.\n"),
            "1[1] Body pale throughout. Length 2.3 mm. Kantoma (Brell Co.). -> Ausella fulvescens\n"
            "1[] Body piceous-black, the legs pale -> 2\n"
            "2[2] Head little narrower than the prothorax -> 3\n"
            "2[] Head much narrower than the prothorax; elytra densely punctate. Length 2.6 mm.; "
            "width 0.62 mm. Marlock (Fort Tansy),—Mr. Weems. -> Ausella angusticeps (*; n. sp.)\n"
            "3[3] Prothorax with a deep impression. Two specimens. -> Ausella weemsi (*; n. sp.)\n"
            "3[] Prothorax without an impression. One specimen. -> Ausella simplex (*; n. sp.)\n");
}

}  // namespace
}  // namespace keydrift
