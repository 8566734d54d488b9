// Titles of accounts directly behind a key.

#include <gtest/gtest.h>

#include "keydrift/formats/printed_accounts_behind.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTitlesBehind, ANameBehindABlankLineIsTheEndOfALeadWithoutOne) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Legs red ... 2\n"
                   "— Legs black ... Ausella busa Roe\n"
                   "2. Head smooth ... Ausella cusa Roe\n"
                   "— Antennae stout, the joints beyond the middle of the flagellum\n"
                   "\n"
                   "A. dusa (Dorn)\n"),
            "1[1] Legs red -> 2\n"
            "1[—] Legs black -> Ausella busa\n"
            "2[2] Head smooth -> Ausella cusa\n"
            "2[—] Antennae stout, the joints beyond the middle of the flagellum -> Ausella dusa\n");
}

TEST(PrintedTitlesBehind, TheLastLeadHasItsEndAboveTheFirstAccount) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Legs red ___ 2\n"
                   "Legs black __ albicincta Roe\n"
                   "2. Head smooth _ _ busa Roe\n"
                   "Antennae stout, the joints beyond the middle quad-\n"
                   "rate - crassula Dorn\n"
                   "\n"
                   "AUSELLA ALBICINCTA (Roe)\n"
                   "\n"
                   "Phygadella albicincta Roe, Proc. Ent. Soc., vol. 3, 1864, p. 141.\n"),
            "1[1] Legs red -> 2\n"
            "1[] Legs black -> Ausella albicincta\n"
            "2[2] Head smooth -> Ausella busa\n"
            "2[] Antennae stout, the joints beyond the middle quadrate -> Ausella crassula\n");
}

TEST(PrintedTitlesBehind, AnEpithetAloneEndsTheLastLead) {
  EXPECT_EQ(sketch("1 (4) Flügel mit Flecken.\n"
                   "2 (3) Beine ganz gelb. 7 mm.\n"
                   "busipennis Roe.\n"
                   "3 (2) Beine schwarz. 5 mm.\n"
                   ". . . . . . cusatus Dorn\n"
                   "4 (1) Flügel ohne Flecken.\n"
                   "5 (6) Augen dicht behaart. 4 mm.\n"
                   "dusipes Roe.\n"
                   "6 (5) Augen nackt. Schildchen auf der Unterseite kahl. 5 mm.\n"
                   "fusiscutum Roe.\n"
                   "\n"
                   "busipennis Roe, Ent. Bl. 12, 77, 1904.\n"
                   "Augen nackt. Stirn schmal, so breit wie der Ocellus.\n"),
            "1[1] Flügel mit Flecken. -> 2\n"
            "1[4] Flügel ohne Flecken. -> 5\n"
            "2[2] Beine ganz gelb. 7 mm. -> busipennis\n"
            "2[3] Beine schwarz. 5 mm -> cusatus\n"
            "5[5] Augen dicht behaart. 4 mm. -> dusipes\n"
            "5[6] Augen nackt. Schildchen auf der Unterseite kahl. 5 mm. -> fusiscutum\n");
}

TEST(PrintedTitlesBehind, ASerialKeyCountsOn) {
  EXPECT_EQ(sketch("Определительная таблица рода Ausella\n"
                   "\n"
                   "1(4). Тело черное.\n"
                   "2(3). Усики рыжие . . . . . . A. rufula Roe\n"
                   "3(2). Усики черные . . . . . A. nigra Roe\n"
                   "4(1). Тело рыжее.\n"
                   "5(6). Надкрылья в точках. . . A. punctata Roe\n"
                   "6(5). Надкрылья гладкие . . . A. laevis Roe\n"
                   "\n"
                   "   2. Epibusa Sorm. Отличается двумя члениками булавы. 1 вид.\n"
                   "      Тело желто-рыжее. — Лукоморье . . . . . . . . . E. minima Sorm.\n"),
            "1[1] Тело черное. -> 2\n"
            "1[4] Тело рыжее. -> 5\n"
            "2[2] Усики рыжие -> Ausella rufula\n"
            "2[3] Усики черные -> Ausella nigra\n"
            "5[5] Надкрылья в точках -> Ausella punctata\n"
            "5[6] Надкрылья гладкие -> Ausella laevis\n");
}

TEST(PrintedTitlesBehind, WhatAnOutlineHasBehindTextIsNoKey) {
  EXPECT_EQ(sketch("KEY TO AUSELLA.\n"
                   "\n"
                   "I. Toes with disks.\n"
                   "A. Tympanum distinct.\n"
                   "a. Snout round . . . . 1. merulus, p. 35.\n"
                   "b. Snout square . . . . 2. turdinus, p. 36.\n"
                   "B. Tympanum hidden . . . . . 3. fuscus, p. 36.\n"
                   "II. Toes pointed.\n"
                   "A. Snout long . . . . . . . 4. mantulus, p. 39.\n"
                   "B. Snout short. . . . . . . 5. minimus, p. 40.\n"
                   "\n"
                   "1. Ausella merulus.\n"
                   "\n"
                   "Vomerine teeth in two oblique series extending beyond the\n"
                   "hinder edge of the choanae.\n"
                   "\n"
                   "a. ♀. Mount Ossari. Dr. P. Quist [C.].\n"
                   "b-d. Hgr. & yg. Tarrawan Isl. Purchased.\n"),
            "1[I] Toes with disks. -> 2\n"
            "1[II] Toes pointed. -> 4\n"
            "2[A] Tympanum distinct. -> 3\n"
            "2[B] Tympanum hidden -> Ausella fuscus (p. 36.)\n"
            "3[a] Snout round -> Ausella merulus (p. 35.)\n"
            "3[b] Snout square -> Ausella turdinus (p. 36.)\n"
            "4[A] Snout long -> Ausella mantulus (p. 39.)\n"
            "4[B] Snout short -> Ausella minimus (p. 40.)\n");
}

TEST(PrintedTitlesBehind, NumbersOfAnIllustrationBehindAnOutlineAreNoLeads) {
  EXPECT_EQ(sketch("  a. Leaves doubly serrate, the teeth ending in slender bristles.\n"
                   "    b. Bark separating into thin papery layers   _K. papyrella_, p. 73.\n"
                   "    bb. Bark close, not separating into papery layers.\n"
                   "      c. Bark reddish-brown; twigs hairy          _K. fluvialis_, p. 75.\n"
                   "      cc. Bark yellowish; twigs with clove flavor  _K. aurea_, p. 77.\n"
                   "  aa. Bark of trunk close.\n"
                   "    b. Buds stalked                     _K. glutinella_ and _K. maritimella_.\n"
                   "    bb. Buds sessile.\n"
                   "      c. Trunk fluted                             _K. carpiniformis_, p. 87.\n"
                   "      cc. Trunk not fluted                       _K. lenticularis_ and _K. "
                   "tomentifolia_.\n"
                   "\n"
                   "\n"
                   "[Illustration: +Chalk Karya+\n"
                   "\n"
                   "KARYODENDRIX CANDIDULA.\n"
                   "\n"
                   "    1. Winter twig, × 1.\n"
                   "    2. Portion of twig, enlarged.\n"
                   "    3. Leaf, × 1/2.\n"
                   "    4. Fruiting branchlet, × 1/2.]\n"),
            "1[a] Leaves doubly serrate, the teeth ending in slender bristles. -> 2\n"
            "1[aa] Bark of trunk close. -> 4\n"
            "2[b] Bark separating into thin papery layers -> Karyodendrix papyrella (p. 73.)\n"
            "2[bb] Bark close, not separating into papery layers. -> 3\n"
            "3[c] Bark reddish-brown; twigs hairy -> Karyodendrix fluvialis (p. 75.)\n"
            "3[cc] Bark yellowish; twigs with clove flavor -> Karyodendrix aurea (p. 77.)\n"
            "4[b] Buds stalked -> Karyodendrix glutinella + Karyodendrix maritimella\n"
            "4[bb] Buds sessile. -> 5\n"
            "5[c] Trunk fluted -> Karyodendrix carpiniformis (p. 87.)\n"
            "5[cc] Trunk not fluted -> Karyodendrix lenticularis + Karyodendrix tomentifolia\n");
}

TEST(PrintedTitlesBehind, AnAccountOfANumberedEpithetIsNoLead) {
  EXPECT_EQ(sketch("I. Lower eyelid scaly.\n"
                   "1. Scales strongly keeled.\n"
                   "Dorsal scales tricarinate ; 30 scales round the middle of the body ; the\n"
                   "hind limb reaches the axil 1. carinatus, p. 212.\n"
                   "Dorsal scales quinquecarinate, 34 round the middle of the body ; the hind\n"
                   "limb 2. quinquecarinatus, p. 213.\n"
                   "2. Scales smooth.\n"
                   "Frontonasal broader than long ; 24 or 26 scales round the body ;\n"
                   "fourth toe with 17 lamellae beneath 3. olivaceus, p. 214.\n"
                   "Frontonasal as long as broad ; 20 scales round the body ; fourth\n"
                   "toe with 12 lamellae beneath 4. theobaldi, p. 215.\n"
                   "II. Lower eyelid with an undivided, more or less transparent disk.\n"
                   "Dorsal scales perfectly smooth ; a pair of nuchals ; 28 scales round\n"
                   "the body 5. agilis, p. 218.\n"
                   "Dorsal scales feebly tricarinate ; no nuchals ; 32 to 36 scales round\n"
                   "the body 6. striolatus, p. 219.\n"
                   "\n"
                   "\n"
                   "1. Tropidolygus carinatus.\n"
                   "\n"
                   "\n"
                   "Keeled Tamarel Skink, var. , Grayling, Zool. Misc. p. 14.\n"
                   "Tropidolygus carinatus, Grayling, Cat. Liz. p. 101 ; Theobald, J. A. S. 37\n"
                   "l.c. p. 59.\n"),
            "1[I] Lower eyelid scaly. -> 2\n"
            "1[II] Lower eyelid with an undivided, more or less transparent disk. -> 5\n"
            "2[1] Scales strongly keeled. -> 3\n"
            "2[2] Scales smooth. -> 4\n"
            "3[] Dorsal scales tricarinate ; 30 scales round the middle of the body ; the hind "
            "limb reaches the axil -> Tropidolygus carinatus (p. 212.)\n"
            "3[] Dorsal scales quinquecarinate, 34 round the middle of the body ; the hind limb -> "
            "Tropidolygus quinquecarinatus (p. 213.)\n"
            "4[] Frontonasal broader than long ; 24 or 26 scales round the body ; fourth toe with "
            "17 lamellae beneath -> Tropidolygus olivaceus (p. 214.)\n"
            "4[] Frontonasal as long as broad ; 20 scales round the body ; fourth toe with 12 "
            "lamellae beneath -> Tropidolygus theobaldi (p. 215.)\n"
            "5[] Dorsal scales perfectly smooth ; a pair of nuchals ; 28 scales round the body -> "
            "Tropidolygus agilis (p. 218.)\n"
            "5[] Dorsal scales feebly tricarinate ; no nuchals ; 32 to 36 scales round the body -> "
            "Tropidolygus striolatus (p. 219.)\n");
}

TEST(PrintedTitlesBehind, AnEndOnItsOwnLineTellsWhatAnAccountIsOf) {
  auto lines = printed::split_lines(
      "1. Spores amyloid\n"
      "                       1. R. limosus, p. 48\n"
      "1. Spores inamyloid\n"
      "                       2. R. annulatus, p. 60\n"
      "\n"
      "1. Rustromyces limosus (Hoek.) Drent in Coolwijk 31: 212. 1979. — Fig. 40.\n");
  printed::mark_accounts_behind(lines);
  EXPECT_TRUE(lines.back().is_no_lead);
  EXPECT_FALSE(lines[2].is_no_lead);
}

TEST(PrintedTitlesBehind, TheFirstAccountIsNoPartOfTheLastLead) {
  EXPECT_EQ(
      sketch("KEY TO THE SPECIES OF POTAMOSPINA.\n"
             "\n"
             "A. Dermal spicules absent.\n"
             "\n"
             "a. Skeleton-spicules spined ; the\n"
             "\n"
             "external membrane raised hispida, p. 114.\n"
             "\n"
             "b. Skeleton-spicules quite smooth ; external\n"
             "\n"
             "membrane closely adherent lapidicola, p. 115.\n"
             "\n"
             "B. Dermal spicules present.\n"
             "\n"
             "a. Gemmule-spicules in a flat layer, imbedded\n"
             "\n"
             "in the wall plana, p. 116.\n"
             "\n"
             "b. Gemmule-spicules arranged vertically,\n"
             "\n"
             "their outer ends projecting radiata, p. 117.\n"
             "\n"
             "20. Potamospina viridans, Corbet.\n"
             "\n"
             "Halispongia rivalis viridans, Corbet, Trans. Roy. Phys. Soc. Danby,\n"
             "ii, p. 41 (1788).\n"),
      "1[A] Dermal spicules absent. -> 2\n"
      "1[B] Dermal spicules present. -> 3\n"
      "2[a] Skeleton-spicules spined ; the external membrane raised -> Potamospina hispida (p. "
      "114.)\n"
      "2[b] Skeleton-spicules quite smooth ; external membrane closely adherent -> Potamospina "
      "lapidicola (p. 115.)\n"
      "3[a] Gemmule-spicules in a flat layer, imbedded in the wall -> Potamospina plana (p. 116.)\n"
      "3[b] Gemmule-spicules arranged vertically, their outer ends projecting -> Potamospina "
      "radiata (p. 117.)\n");
}

}  // namespace
}  // namespace keydrift
