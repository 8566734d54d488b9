// Labels that scanning parted or whose signs it made others of.

#include <gtest/gtest.h>

#include <string>

#include "keydrift/formats/printed_label_signs.hpp"
#include "keydrift/formats/printed_numbers_led_to.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLabelSigns, IndicesCloseUpWithTheirLetters) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "a 1 . Carapace with a spine on each side.\n"
                   "b 1 . Spine long, directed outward, more\n"
                   "than one-sixth of the width.\n"
                   "c 1 . Rostrum bifid. armata, p. 343.\n"
                   "c- . Rostrum simple. hastata, p. 344.\n"
                   "b 2. Spine short. gracilipes, p. 345.\n"
                   "a 2 . Carapace without a spine.\n"
                   "6 1 . Regions areolated. sculpta, p. 346.\n"
                   "6 2 . Regions smooth.\n"
                   "c l . Eyes visible from above. Both fingers alike laevis, p. 347.\n"
                   "c 2 . Eyes concealed. planulata, p. 348.\n"),
            "1[a1] Carapace with a spine on each side. -> 2\n"
            "1[a2] Carapace without a spine. -> 4\n"
            "2[b1] Spine long, directed outward, more than one-sixth of the width. -> 3\n"
            "2[b2] Spine short. -> Ausella gracilipes (p. 345.)\n"
            "3[c1] Rostrum bifid. -> Ausella armata (p. 343.)\n"
            "3[c2] Rostrum simple. -> Ausella hastata (p. 344.)\n"
            "4[b1] Regions areolated. -> Ausella sculpta (p. 346.)\n"
            "4[b2] Regions smooth. -> 5\n"
            "5[c1] Eyes visible from above. Both fingers alike -> Ausella laevis (p. 347.)\n"
            "5[c2] Eyes concealed. -> Ausella planulata (p. 348.)\n");
}

TEST(PrintedLabelSigns, FewerThanThreePairsStay) {
  std::string text = "a 1 . Wings\na 2 . Legs\nb 1 . Head\nb 2 . Tail\nc 1 . Eyes\n";
  auto const before = text;
  EXPECT_EQ(printed::close_indexed_labels(text), 0U);
  EXPECT_EQ(text, before);
  text += "c 2 . Palps\n";
  EXPECT_EQ(printed::close_indexed_labels(text), 6U);
  EXPECT_EQ(text, "a1. Wings  \na2. Legs  \nb1. Head  \nb2. Tail  \nc1. Eyes  \nc2. Palps  \n");
}

TEST(PrintedLabelSigns, SemicolonsStandForColonsOfOthers) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1 Petals 5\n"
                   "2 Sepals free; leaves entire 1. A. aurea\n"
                   "2: Sepals joined 2. A. busa\n"
                   "1: Petals 4\n"
                   "3 Stamens 10\n"
                   "4 Leaves rough 3. A. scabra\n"
                   "4; Leaves smooth 4. A. inclusa\n"
                   "3: Stamens 5 5. A. nana\n"),
            "1[1] Petals 5 -> 2\n"
            "1[1] Petals 4 -> 3\n"
            "2[2] Sepals free; leaves entire -> Ausella aurea\n"
            "2[2] Sepals joined -> Ausella busa\n"
            "3[3] Stamens 10 -> 4\n"
            "3[3] Stamens 5 -> Ausella nana\n"
            "4[4] Leaves rough -> Ausella scabra\n"
            "4[4] Leaves smooth -> Ausella inclusa\n");
}

TEST(PrintedLabelSigns, AsManySemicolonsAsColonsStay) {
  std::string text = "1 Wings\n1: Legs\n2 Head\n2; Tail\n3 Eyes\n3: Ears\n";
  EXPECT_EQ(printed::restore_colons_of_labels(text), 0U);
  text += "4 Tarsi\n4: Tibiae\n";
  EXPECT_EQ(printed::restore_colons_of_labels(text), 1U);
  EXPECT_EQ(text, "1 Wings\n1: Legs\n2 Head\n2: Tail\n3 Eyes\n3: Ears\n4 Tarsi\n4: Tibiae\n");
}

TEST(PrintedLabelSigns, ALetterForAFigureIsToldByTheColonOfItsRival) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1 Petals 5\n"
                   "2 Sepals free; leaves entire 1. A. aurea\n"
                   "2: Sepals joined 2. A. busa\n"
                   "1: Petals 4\n"
                   "3 Stamens ten\n"
                   "I0 Leaves rough 3. A. scabra\n"
                   "10: Leaves smooth 4. A. inclusa\n"
                   "3: Stamens 5 5. A. nana\n"),
            "1[1] Petals 5 -> 2\n"
            "1[1] Petals 4 -> 3\n"
            "2[2] Sepals free; leaves entire -> Ausella aurea\n"
            "2[2] Sepals joined -> Ausella busa\n"
            "3[3] Stamens ten -> 10\n"
            "3[3] Stamens 5 -> Ausella nana\n"
            "10[10] Leaves rough -> Ausella scabra\n"
            "10[10] Leaves smooth -> Ausella inclusa\n");
}

TEST(PrintedLabelSigns, SquaresBeforeDashesAreDirt) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1. Comb of five spines; shield with two\nlines angulifera Roe\n"
                   "■ — Comb of two spines 2\n"
                   "2. Eyes bare 3\n— Eyes hairy pilosa Roe\n"
                   "3. Feet pale pallida Roe\n— Feet dark 4\n"
                   "4. Legs red rufa Roe\n— Legs black nigra Roe\n"),
            "1[1] Comb of five spines; shield with two lines -> Ausella angulifera\n"
            "1[—] Comb of two spines -> 2\n"
            "2[2] Eyes bare -> 3\n"
            "2[—] Eyes hairy -> Ausella pilosa\n"
            "3[3] Feet pale -> Ausella pallida\n"
            "3[—] Feet dark -> 4\n"
            "4[4] Legs red -> Ausella rufa\n"
            "4[—] Legs black -> Ausella nigra\n");
  std::string text = "■ — Wings\n— Legs\n— Head\n";
  EXPECT_EQ(printed::clear_squares_before_dashes(text), 0U);
  text += "— Tail\n";
  EXPECT_EQ(printed::clear_squares_before_dashes(text), 1U);
  EXPECT_EQ(text, "  — Wings\n— Legs\n— Head\n— Tail\n");
}

TEST(PrintedLabelSigns, DamagedDoubledLettersAreToldByTheSingleOnesAbove) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "A. Plants perennial.\n"
                   "B. Lemma awned. 1. A. geniculata.\n"
                   "BB. Lemma without awn.\n"
                   "C. Rhizomes long.\n"
                   "D. Callus with hairs. 2. A. arenaria.\n"
                   "DI). Callus bald. 3. A. repens.\n"
                   "CC Rhizomes none.\n"
                   "E. Spikelets green. 4. A. viridis.\n"
                   "EE. Spikelets violet. 5. A. violacea.\n"
                   "AA. Plants annual. 6. A. pusilla.\n"),
            "A[A] Plants perennial. -> B\n"
            "A[AA] Plants annual. -> Ausella pusilla\n"
            "B[B] Lemma awned. -> Ausella geniculata\n"
            "B[BB] Lemma without awn. -> C\n"
            "C[C] Rhizomes long. -> D\n"
            "C[CC] Rhizomes none. -> E\n"
            "D[D] Callus with hairs. -> Ausella arenaria\n"
            "D[DD] Callus bald. -> Ausella repens\n"
            "E[E] Spikelets green. -> Ausella viridis\n"
            "E[EE] Spikelets violet. -> Ausella violacea\n");
}

TEST(PrintedLabelSigns, AnInitialOIsNoZero) {
  EXPECT_EQ(sketch("Key to the species of Ombrosphaera\n\n"
                   "1. Spores brown 2\nSpores black 3\n"
                   "2. Stroma white 1. O. alba\nStroma black 2. 0. nigra\n"
                   "3. Neck long 3. O. fimetaria\nNeck short 4. O. brevis\n"),
            "1[1] Spores brown -> 2\n"
            "1[] Spores black -> 3\n"
            "2[2] Stroma white -> Ombrosphaera alba\n"
            "2[] Stroma black -> Ombrosphaera nigra\n"
            "3[3] Neck long -> Ombrosphaera fimetaria\n"
            "3[] Neck short -> Ombrosphaera brevis\n");
}

TEST(PrintedLabelSigns, NumberedEpithetsStandOnTheirOwnLines) {
  EXPECT_EQ(sketch("Table des Ausella\n\n"
                   "1. Yeux grands 2.\n— Yeux nuls 3.\n"
                   "2. Corps velu. Long. 5 mm 1. pubescens.\n"
                   "— Corps glabre et brillant. Long. 4,5 mm.\n2. glabrata.\n"
                   "3. Pattes longues 3. longipes.\n"
                   "— Pattes courtes. Long. 3,5 mm 4.\n"
                   "4. Labre droit 4. recta.\n"
                   "— Labre courbé et brillant. Long. 2 mm.\n5. curvata.\n"),
            "1[1] Yeux grands -> 2\n"
            "1[—] Yeux nuls -> 3\n"
            "2[2] Corps velu. Long. 5 mm -> Ausella pubescens\n"
            "2[—] Corps glabre et brillant. Long. 4,5 mm. -> Ausella glabrata\n"
            "3[3] Pattes longues -> Ausella longipes\n"
            "3[—] Pattes courtes. Long. 3,5 mm -> 4\n"
            "4[4] Labre droit -> Ausella recta\n"
            "4[—] Labre courbé et brillant. Long. 2 mm. -> Ausella curvata\n");
}

TEST(PrintedLabelSigns, RaisedIndicesAreToldByThoseOfOthers) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "a^. Tail bicolor.\n"
                   "b^. Back striped.\n"
                   "c'. Foot long.\n"
                   "d\\ Sides buff. A. buffa, p. 13.\n"
                   "d-. Sides gray. A. grisea, p. 14.\n"
                   "c^. Foot short.\n"
                   "d^. Ears long. A. aurita, p. 15.\n"
                   "cl^. Ears short. A. brevis, p. 16.\n"
                   "6^. Back plain. A. plana, p. 17.\n"
                   "a^. Tail of one color.\n"
                   "b'. Size large. A. magna, p. 18.\n"
                   "b^. Size small. A. parva, p. 19.\n"),
            "1[a^] Tail bicolor. -> 2\n"
            "1[a^] Tail of one color. -> 6\n"
            "2[b^] Back striped. -> 3\n"
            "2[b^] Back plain. -> Ausella plana (p. 17.)\n"
            "3[c'] Foot long. -> 4\n"
            "3[c^] Foot short. -> 5\n"
            "4[d^] Sides buff. -> Ausella buffa (p. 13.)\n"
            "4[d^] Sides gray. -> Ausella grisea (p. 14.)\n"
            "5[d^] Ears long. -> Ausella aurita (p. 15.)\n"
            "5[d^] Ears short. -> Ausella brevis (p. 16.)\n"
            "6[b'] Size large. -> Ausella magna (p. 18.)\n"
            "6[b^] Size small. -> Ausella parva (p. 19.)\n");
}

TEST(PrintedLabelSigns, MarkedNumbersAnswerThoseAbove) {
  EXPECT_EQ(
      sketch("Chave das espécies de Ausella\n\n"
             "9 — Lábio longo . . . . A. longa Roe\n9' — Lábio curto . . . . 10\n"
             "10 — Palpo bífido . . . . A. bifida Roe\n10' — Palpo simples . . . . 11\n"
             "11 — Dorso com manchas . . . . A. maculata Roe\nll' — Dorso sem manchas . . . . 12\n"
             "12 — Fêmures com espinhos . . . . A. spinosa Roe\n"
             "12' — Fêmures sem espinhos . . . . A. inermis Roe\n"),
      "9[9] Lábio longo -> Ausella longa\n"
      "9[9'] Lábio curto -> 10\n"
      "10[10] Palpo bífido -> Ausella bifida\n"
      "10[10'] Palpo simples -> 11\n"
      "11[11] Dorso com manchas -> Ausella maculata\n"
      "11[11'] Dorso sem manchas -> 12\n"
      "12[12] Fêmures com espinhos -> Ausella spinosa\n"
      "12[12'] Fêmures sem espinhos -> Ausella inermis\n");
}

TEST(PrintedLabelSigns, ACapitalIBehindTwoLettersIsAnL) {
  EXPECT_EQ(sketch("Table des Ausella\n\n"
                   "1. Calice glabre ..... A. vuInerata Roe\n— Calice velu ..... 2\n"
                   "2. Feuilles lisses ..... A. lutea Roe\n— Feuilles rudes ..... A. rudis Roe\n"),
            "1[1] Calice glabre -> Ausella vulnerata\n"
            "1[—] Calice velu -> 2\n"
            "2[2] Feuilles lisses -> Ausella lutea\n"
            "2[—] Feuilles rudes -> Ausella rudis\n");
}

// Two couplets of which the leads begin with `one` and `two`, beneath stars.
std::string beneath_stars(std::string_view one, std::string_view two) {
  std::string text = "Table of Ausella\n\n* Shell dextral.\n";
  text.append(one).append(" Whorls ribbed. ..... Ausella busa\n");
  text.append(two).append(" Whorls smooth. ..... Ausella cusa\n** Shell sinistral.\n");
  text.append(one).append(" Mouth toothed. ..... Ausella dusa\n");
  return text.append(two).append(" Mouth smooth. ..... Ausella fusa\n");
}

// Beneath stars daggers are the next signs, though all of them came out as "f" or "tf".
TEST(PrintedLabelSigns, DaggersBeneathStars) {
  EXPECT_EQ(sketch(beneath_stars("f", "ff")), sketch(beneath_stars("†", "††")));
  EXPECT_EQ(sketch(beneath_stars("f", "tf")), sketch(beneath_stars("†", "††")));
}

TEST(PrintedLabelSigns, OneOfTwoDaggersOrCrosses) {
  EXPECT_EQ(sketch(beneath_stars("†", "f†")), sketch(beneath_stars("†", "††")));
  EXPECT_EQ(sketch(beneath_stars("†", "†t")), sketch(beneath_stars("†", "††")));
  EXPECT_EQ(sketch(beneath_stars("+", "+f")), sketch(beneath_stars("+", "++")));
}

TEST(PrintedLabelSigns, AFigureAndItsPrimeMayBecomeV) {
  EXPECT_EQ(sketch("1\" Eyes large.\n\n2\" Legs red.\n\n3\" Head long. busa Roe.\n\n"
                   "3' Head short. cusa Roe.\n\n2' Legs black. dusa Roe.\n\n"
                   "V Eyes small.\n\n4\" Tail long. eusa Roe.\n\n4' Tail short. fusa Roe.\n"),
            "1[1\"] Eyes large. -> 2\n"
            "1[1'] Eyes small. -> 4\n"
            "2[2\"] Legs red. -> 3\n"
            "2[2'] Legs black. -> dusa\n"
            "3[3\"] Head long. -> busa\n"
            "3[3'] Head short. -> cusa\n"
            "4[4\"] Tail long. -> eusa\n"
            "4[4'] Tail short. -> fusa\n");
}

TEST(PrintedLabelSigns, LettersStandForFiguresOfCoupletsThatNoOtherLeadLeadsTo) {
  std::string text;
  for (int n = 1; n <= 9; ++n) {
    text += std::to_string(n) + ". Wings clear .... " + std::to_string(n + 1) +
            "\nWings dark .... A. bus\n";
  }
  text +=
      "10. Temples wide; jaws of three teeth. . ll.\n"
      "Temples narrow; jaws of two teeth angusta Roe (p. 389).\n"
      "11. Segments with bands, which are broken in\nthe middle l2.\n"
      "Segments without bands occidua Roe (p. 391).\n"
      "12. Legs red . . interrupta Roe (p. 392).\nLegs black . . nigra van Dorn (p. 393).\n";
  EXPECT_EQ(printed::restore_numbers_led_to(text), 2U);
  EXPECT_NE(text.find("teeth. . 11.\n"), std::string::npos);
  EXPECT_NE(text.find("the middle 12.\n"), std::string::npos);
  EXPECT_EQ(printed::restore_numbers_led_to(text), 0U);
}

TEST(PrintedLabelSigns, PartedIndicesOfRanks) {
  EXPECT_EQ(sketch("Key to the Species of Salyndra.\n"
                   "\n"
                   "A. Wings yellow.\n"
                   "a. Abdomen without lustre.\n"
                   "a 1 . Antennae yellow S. flavicornis, p. 422.\n"
                   "b 1 . Antennae black at the apex.\n"
                   "a 2 . Pubescence fulvous S. latreillana, p. 423.\n"
                   "b 2 . Pubescence cinereous S. canescens, p. 423.\n"
                   "b. Abdomen with blue lustre.\n"
                   "a 1 . Legs black S. chlora, p. 424.\n"
                   "b l . Legs ferruginous S. princeps, p. 425.\n"
                   "B. Wings fuscous.\n"
                   "a. Head pubescent S. niveata, p. 425.\n"
                   "b. Head bare S. laevis, p. 432.\n"),
            "1[A] Wings yellow. -> 2\n"
            "1[B] Wings fuscous. -> 6\n"
            "2[a] Abdomen without lustre. -> 3\n"
            "2[b] Abdomen with blue lustre. -> 5\n"
            "3[a1] Antennae yellow -> Salyndra flavicornis (p. 422.)\n"
            "3[b1] Antennae black at the apex. -> 4\n"
            "4[a2] Pubescence fulvous -> Salyndra latreillana (p. 423.)\n"
            "4[b2] Pubescence cinereous -> Salyndra canescens (p. 423.)\n"
            "5[a1] Legs black -> Salyndra chlora (p. 424.)\n"
            "5[b1] Legs ferruginous -> Salyndra princeps (p. 425.)\n"
            "6[a] Head pubescent -> Salyndra niveata (p. 425.)\n"
            "6[b] Head bare -> Salyndra laevis (p. 432.)\n");
}

TEST(PrintedLabelSigns, ASecondLetterReadAsTwoSigns) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "A. Legs red.\n"
                   "B. Wings clear. A. rufa.\n"
                   "BB. Wings dark. A. levis.\n"
                   "AA. Legs black.\n"
                   "C. Head smooth. A. nigra.\n"
                   "CG. Head rugose.\n"
                   "D. Tail long. A. longa.\n"
                   "DD. Tail short.\n"
                   "H. Eyes large. A. magna.\n"
                   "HII. Eyes small. A. minor.\n"),
            "A[A] Legs red. -> B\n"
            "A[AA] Legs black. -> C\n"
            "B[B] Wings clear. -> Ausella rufa\n"
            "B[BB] Wings dark. -> Ausella levis\n"
            "C[C] Head smooth. -> Ausella nigra\n"
            "C[CC] Head rugose. -> D\n"
            "D[D] Tail long. -> Ausella longa\n"
            "D[DD] Tail short. -> H\n"
            "H[H] Eyes large. -> Ausella magna\n"
            "H[HH] Eyes small. -> Ausella minor\n");
}

TEST(PrintedLabelSigns, PForABetaBeneathATrueAlpha) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Ausella\n"
                   "\n"
                   "I. — Quatre membres.\n"
                   "A. — Ouverture distincte.\n"
                   "α. — 4 susoculaires . . . 1. A. rufa Roe.\n"
                   "p. — 6 susoculaires . . . 2. A. levis Roe.\n"
                   "B. — Ouverture cachée.\n"
                   "α. — Tête lisse . . . 3. A. nigra Roe.\n"
                   "β. — Tête rugueuse . . . 4. A. opaca Roe.\n"
                   "y. — Tête granuleuse . . . 5. A. grana Roe.\n"
                   "II. — Deux membres.\n"
                   "A. — Queue longue . . . 6. A. longa Roe.\n"
                   "B. — Queue courte . . . 7. A. parva Roe.\n"),
            "1[I] Quatre membres. -> 2\n"
            "1[II] Deux membres. -> 5\n"
            "2[A] Ouverture distincte. -> 3\n"
            "2[B] Ouverture cachée. -> 4\n"
            "3[α] 4 susoculaires -> Ausella rufa\n"
            "3[β] 6 susoculaires -> Ausella levis\n"
            "4[α] Tête lisse -> Ausella nigra\n"
            "4[β] Tête rugueuse -> Ausella opaca\n"
            "4[γ] Tête granuleuse -> Ausella grana\n"
            "5[A] Queue longue -> Ausella longa\n"
            "5[B] Queue courte -> Ausella parva\n");
}

TEST(PrintedLabelSigns, PForABetaBeneathTwoLettersA) {
  EXPECT_EQ(sketch("Clavis specierum generis Ausella\n"
                   "\n"
                   "A. Petals present.\n"
                   "a. Stamens free.\n"
                   "a. Anthers blue . . . A. coerulea.\n"
                   "p. Anthers red . . . A. rubra.\n"
                   "b. Stamens united . . . A. unita.\n"
                   "B. Petals absent.\n"
                   "a. Leaves entire . . . A. integra.\n"
                   "b. Leaves lobed . . . A. lobata.\n"),
            "1[A] Petals present. -> 2\n"
            "1[B] Petals absent. -> 4\n"
            "2[a] Stamens free. -> 3\n"
            "2[b] Stamens united -> Ausella unita\n"
            "3[α] Anthers blue -> Ausella coerulea\n"
            "3[β] Anthers red -> Ausella rubra\n"
            "4[a] Leaves entire -> Ausella integra\n"
            "4[b] Leaves lobed -> Ausella lobata\n");
}

TEST(PrintedLabelSigns, ASixteenthLetterStaysOne) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "n. Legs red . . . A. rufa.\n"
                   "n. Legs black . . . o\n"
                   "o. Head smooth . . . A. nigra.\n"
                   "o. Head rugose . . . p\n"
                   "p. Tail long . . . A. longa.\n"
                   "p. Tail short . . . A. minor.\n"),
            "n[n] Legs red -> Ausella rufa\n"
            "n[n] Legs black -> o\n"
            "o[o] Head smooth -> Ausella nigra\n"
            "o[o] Head rugose -> p\n"
            "p[p] Tail long -> Ausella longa\n"
            "p[p] Tail short -> Ausella minor\n");
}

TEST(PrintedLabelSigns, AnXForASaltire) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Ausella\n"
                   "\n"
                   "+ Plantes annuelles.\n"
                   "= Feuilles entières.\n"
                   "× Divisions aiguës . . . 1. — A. acuta Roe.\n"
                   "x Divisions obtuses . . . 2. — A. obtusa Roe.\n"
                   "= Feuilles dentées.\n"
                   "× Akènes velus . . . 3. — A. villosa Roe.\n"
                   "X Akènes glabres . . . 4. — A. glabra Roe.\n"
                   "+ Plantes vivaces.\n"
                   "= Tige simple . . . 5. — A. simplex Roe.\n"
                   "= Tige rameuse . . . 6. — A. ramosa Roe.\n"),
            "1[+] Plantes annuelles. -> 2\n"
            "1[+] Plantes vivaces. -> 5\n"
            "2[=] Feuilles entières. -> 3\n"
            "2[=] Feuilles dentées. -> 4\n"
            "3[×] Divisions aiguës -> Ausella acuta\n"
            "3[×] Divisions obtuses -> Ausella obtusa\n"
            "4[×] Akènes velus -> Ausella villosa\n"
            "4[×] Akènes glabres -> Ausella glabra\n"
            "5[=] Tige simple -> Ausella simplex\n"
            "5[=] Tige rameuse -> Ausella ramosa\n");
}

TEST(PrintedLabelSigns, ALetterThatCameOutAsTwo) {
  EXPECT_EQ(sketch("Key to the Species of Caryphornis\n"
                   "\n"
                   "a. Throat black.\n"
                   "a'. Bill black . . . . niger, p. 53.\n"
                   "b'. Bill yellow.\n"
                   "c\". Back olive . . . . olivaceus, p. 57.\n"
                   "cl\". Back slaty grey.\n"
                   "c'\". Larger . . . . grandis, p. 58.\n"
                   "d!\". Smaller . . . . minusculus, p. 61.\n"
                   "b. Throat not black . . . . albus, p. 62.\n"),
            "1[a] Throat black. -> 2\n"
            "1[b] Throat not black -> Caryphornis albus (p. 62.)\n"
            "2[a'] Bill black -> Caryphornis niger (p. 53.)\n"
            "2[b'] Bill yellow. -> 3\n"
            "3[c\"] Back olive -> Caryphornis olivaceus (p. 57.)\n"
            "3[d\"] Back slaty grey. -> 4\n"
            "4[c'\"] Larger -> Caryphornis grandis (p. 58.)\n"
            "4[d'\"] Smaller -> Caryphornis minusculus (p. 61.)\n");
}

TEST(PrintedLabelSigns, RingsBesideTrueOnes) {
  EXPECT_EQ(sketch("Genre LYSANDRIUM Delm.\n"
                   "\n"
                   "* Plantes annuelles.\n"
                   "© Fleurs solitaires.\n"
                   "-4- Pédoncules longs . . . 1. L. longum Delm.\n"
                   "+ Pédoncules courts . . . 2. L. breve Delm.\n"
                   "O Fleurs en grappes . . . 3. L. foliosum Delm.\n"
                   "* Plantes vivaces.\n"
                   "O Grappes axillaires . . . 4. L. axillare Delm.\n"
                   "0 Grappe unique, terminale . . . 5. L. terminale Delm.\n"),
            "1[*] Plantes annuelles. -> 2\n"
            "1[*] Plantes vivaces. -> 4\n"
            "2[O] Fleurs solitaires. -> 3\n"
            "2[O] Fleurs en grappes -> Lysandrium foliosum\n"
            "3[+] Pédoncules longs -> Lysandrium longum\n"
            "3[+] Pédoncules courts -> Lysandrium breve\n"
            "4[O] Grappes axillaires -> Lysandrium axillare\n"
            "4[O] Grappe unique, terminale -> Lysandrium terminale\n");
}

TEST(PrintedLabelSigns, AnIndexAnswersThePlainLetter) {
  EXPECT_EQ(sketch("Key to species of Ausella.\n"
                   "\n"
                   "a. Wall with a single lamella.\n"
                   "b. Basal lip toothed.\n"
                   "c. One tooth near the columella .... A. busa\n"
                   "c 1 . Two teeth near the columella .. A. cusa\n"
                   "b 1 . Basal lip without teeth.\n"
                   "c. Spire flat ...................... A. dusa\n"
                   "c^. Spire high .................... A. eusa\n"
                   "c 2 . Spire conic .................. A. fusa\n"
                   "a 1 . Wall with two lamellae.\n"
                   "b. Lamellae parallel ............... A. gusa\n"
                   "b 1 . Lamellae unlike .............. A. husa\n"),
            "1[a] Wall with a single lamella. -> 2\n"
            "1[a1] Wall with two lamellae. -> 5\n"
            "2[b] Basal lip toothed. -> 3\n"
            "2[b1] Basal lip without teeth. -> 4\n"
            "3[c] One tooth near the columella -> Ausella busa\n"
            "3[c1] Two teeth near the columella -> Ausella cusa\n"
            "4[c] Spire flat -> Ausella dusa\n"
            "4[c1] Spire high -> Ausella eusa\n"
            "4[c2] Spire conic -> Ausella fusa\n"
            "5[b] Lamellae parallel -> Ausella gusa\n"
            "5[b1] Lamellae unlike -> Ausella husa\n");
}

TEST(PrintedLabelSigns, PrimesThatCameOutAsStrokes) {
  EXPECT_EQ(sketch("Clé des espèces d'Ausella.\n"
                   "\n"
                   "a. — Lait violaçant.\n"
                   "  b. — Spores rondes .... A. busa Roe.\n"
                   "  b'. — Spores longues .... A. cusa Roe.\n"
                   "a'. — Lait blanc.\n"
                   "  c. — Lames serrées .... A. dusa Roe.\n"
                   "  c\\ — Lames espacées.\n"
                   "    d. — Stipe noir .... A. fusa Roe.\n"
                   "    d'. — Stipe pâle .... A. gusa Roe.\n"),
            "a[a] Lait violaçant. -> b\n"
            "a[a'] Lait blanc. -> c\n"
            "b[b] Spores rondes -> Ausella busa\n"
            "b[b'] Spores longues -> Ausella cusa\n"
            "c[c] Lames serrées -> Ausella dusa\n"
            "c[c'] Lames espacées. -> d\n"
            "d[d] Stipe noir -> Ausella fusa\n"
            "d[d'] Stipe pâle -> Ausella gusa\n");
}

TEST(PrintedLabelSigns, RaisedIndicesOfWhichMostAreDamaged) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF THE GENUS AUSELLA\n"
                   "\n"
                   "a\\ Margin with nine teeth.\n"
                   "6\\ Hand armed with a spine.\n"
                   "c^. Front with four teeth armata, p. 403.\n"
                   "c*. Front with six teeth.\n"
                   "d\\ Hand slender gracilimana, p. 405.\n"
                   "(P. Hand stout spinicarpa, p. 407.\n"
                   "b^. Hand without a spine.\n"
                   "c'. Last tooth longer longispina, p. 408.\n"
                   "o^. Last tooth no longer aequidens, p. 411.\n"
                   "a^. Margin with five teeth.\n"
                   "h\\ Merus with a spine boreana, p. 415.\n"
                   "6^. Merus unarmed meridiana, p. 416.\n"),
            "1[a^] Margin with nine teeth. -> 2\n"
            "1[a^] Margin with five teeth. -> 6\n"
            "2[b^] Hand armed with a spine. -> 3\n"
            "2[b^] Hand without a spine. -> 5\n"
            "3[c^] Front with four teeth -> Ausella armata (p. 403.)\n"
            "3[c^] Front with six teeth. -> 4\n"
            "4[d^] Hand slender -> Ausella gracilimana (p. 405.)\n"
            "4[d^] Hand stout -> Ausella spinicarpa (p. 407.)\n"
            "5[c'] Last tooth longer -> Ausella longispina (p. 408.)\n"
            "5[c^] Last tooth no longer -> Ausella aequidens (p. 411.)\n"
            "6[b^] Merus with a spine -> Ausella boreana (p. 415.)\n"
            "6[b^] Merus unarmed -> Ausella meridiana (p. 416.)\n");
}

TEST(PrintedLabelSigns, LettersOfPairsThatCameOutAsTwo) {
  EXPECT_EQ(sketch("Key to the species of Ostrilla\n"
                   "\n"
                   "a. Leaves opposite b.\n"
                   "b. Petals red 1. O. rubra.\n"
                   "b. Petals white c.\n"
                   "c. Achenes beaked 2. O. rostrata.\n"
                   "c. Achenes blunt 3. O. mutica.\n"
                   "a. Leaves alternate f.\n"
                   "f. Petals yellow h.\n"
                   "h. Beak straight 6. O. recta.\n"
                   "li. Beak hooked 7. O. brevis.\n"
                   "f. Petals blue 8. O. caerulea.\n"),
            "a[a] Leaves opposite -> b\n"
            "a[a] Leaves alternate -> f\n"
            "b[b] Petals red -> Ostrilla rubra\n"
            "b[b] Petals white -> c\n"
            "c[c] Achenes beaked -> Ostrilla rostrata\n"
            "c[c] Achenes blunt -> Ostrilla mutica\n"
            "f[f] Petals yellow -> h\n"
            "f[f] Petals blue -> Ostrilla caerulea\n"
            "h[h] Beak straight -> Ostrilla recta\n"
            "h[h] Beak hooked -> Ostrilla brevis\n");
}

}  // namespace
}  // namespace keydrift
