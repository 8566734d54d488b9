// Numbers at leads' ends that scanning damaged, where the key has a couplet that none leads to.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::sketch;

// Couplet 2 leads to 3 by `end`.
std::string key_with_end(std::string_view end) {
  return "1. Legs black ..... 2\n– Legs yellow ..... 4\n"
         "2. Head rugose" +
         std::string{end} +
         "\n– Head smooth ..... Ausella busa\n"
         "3. Wings wide ..... Ausella cusa\n– Wings narrow ..... Ausella dusa\n"
         "4. Labrum entire ..... 5\n– Labrum notched ..... Ausella fusa\n"
         "5. Tibiae curved ..... Ausella gusa\n– Tibiae straight ..... Ausella lusa\n";
}

TEST(PrintedRepairs, ASignThatMayBeTheNumberOfTheOnlyCoupletLeft) {
  for (std::string_view const end : {" ..... B", " ..... ?", " ..... s", "......B", " ..... З"}) {
    EXPECT_EQ(sketch(key_with_end(end)), sketch(key_with_end(" ..... 3"))) << end;
  }
  auto const findings = findings_of(key_with_end(" ..... ?"));
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings.front(),
            "key.txt:3:22: warning: \"?\" was read as 3: there is a couplet 3, and no other lead "
            "leads to it [misread-destination] (print the number in digits if this is right, else "
            "the right destination)");
}

// Letters of couplets at the ends of leads, and the species' numbers before their names.
TEST(PrintedRepairs, LettersOfCouplets) {
  auto const text = [](std::string_view to_b, std::string_view to_f) {
    return "a. Leaves cordate " + std::string{to_b} + "\na. Leaves linear d.\n" +
           "b. Rays white c.\nb. Rays blue 1. A. busa.\n"
           "c. Glands few\n2. A. cusa.\nc. Glands many\n3. A. dusa.\n"
           "d. Stem smooth e.\nd. Stem hairy " +
           std::string{to_f} +
           "\ne. Pappus simple\n4. A. fusa.\ne. Pappus double\n5. A. gusa.\n"
           "f. Bracts green\n6. A. lusa.\nf. Bracts brown\n7. A. musa.\n";
  };
  auto const sound = sketch(text("b.", "f."));
  EXPECT_EQ(sound,
            "a[a] Leaves cordate -> b\na[a] Leaves linear -> d\n"
            "b[b] Rays white -> c\nb[b] Rays blue -> A. busa\n"
            "c[c] Glands few -> A. cusa\nc[c] Glands many -> A. dusa\n"
            "d[d] Stem smooth -> e\nd[d] Stem hairy -> f\n"
            "e[e] Pappus simple -> A. fusa\ne[e] Pappus double -> A. gusa\n"
            "f[f] Bracts green -> A. lusa\nf[f] Bracts brown -> A. musa\n");
  EXPECT_EQ(sketch(text("b.", "/.")), sound);
  EXPECT_EQ(sketch(text("h.", "/.")), sound);
  auto const findings = findings_of(text("b.", "/."));
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](std::string const& one) {
    return one.find(
               "\"/.\" was read as f: there is a couplet f, and no other lead leads to it "
               "[misread-destination] (print the letter if this is right, else the right "
               "destination)") != std::string::npos;
  })) << ::testing::PrintToString(findings);
}

TEST(PrintedRepairs, NumbersThatNothingButABlankSetsApart) {
  auto const plain = [](std::string_view fourth, std::string_view fifth) {
    return "1. Legs black 2\n– Legs yellow " + std::string{fourth} +
           "\n2. Head rugose 3\n– Head smooth Ausella busa\n"
           "3. Wings wide Ausella cusa\n– Wings narrow Ausella dusa\n"
           "4. Labrum entire " +
           std::string{fifth} +
           "\n– Labrum notched Ausella fusa\n"
           "5. Tibiae curved 6\n– Tibiae straight Ausella lusa\n"
           "6. Hairs long Ausella musa\n– Hairs short Ausella nusa\n";
  };
  auto const sound = sketch(plain("4", "5"));
  EXPECT_EQ(sketch(plain("h", "5")), sound);
  EXPECT_EQ(sketch(plain("A", "s")), sound);
  EXPECT_EQ(sketch(plain("i", "S")), sound);
}

// Both may be 5 or 8: the one nearer to the couplet goes first.
TEST(PrintedRepairs, WhatMayBeTwoNumbersIsToldByTheOther) {
  auto const text = [](std::string_view to_3, std::string_view to_8) {
    return "1. Legs black ..... 2\n– Legs yellow ..... 5\n2. Head rugose ..... " +
           std::string{to_3} +
           "\n– Head smooth ..... 4\n"
           "3. Wings wide ..... Ausella busa\n– Wings narrow ..... Ausella cusa\n"
           "4. Labrum entire ..... Ausella dusa\n– Labrum notched ..... Ausella fusa\n"
           "5. Tibiae curved ..... 6\n– Tibiae straight ..... 7\n"
           "6. Hairs long ..... Ausella gusa\n– Hairs short ..... Ausella lusa\n"
           "7. Eyes red ..... " +
           std::string{to_8} +
           "\n– Eyes black ..... Ausella musa\n"
           "8. Tail long ..... Ausella nusa\n– Tail short ..... Ausella pusa\n";
  };
  EXPECT_EQ(sketch(text("B", "S")), sketch(text("3", "8")));
}

// One number for another may be the author's slip; with other damage it is a scan's.
TEST(PrintedRepairs, ANumberForAnotherOnlyBesideOtherDamage) {
  EXPECT_NE(sketch(key_with_end(" ..... 5")), sketch(key_with_end(" ..... 3")));
  auto damaged = key_with_end(" ..... 5");
  for (auto const& [right, seen] : {std::pair{"1. Legs", "l. Legs"}, std::pair{"5. Tib", "S. Tib"},
                                    std::pair{"4. Lab", "A. Lab"}}) {
    damaged.replace(damaged.find(right), std::string_view{right}.size(), seen);
  }
  EXPECT_EQ(sketch(damaged),
            "1[l] Legs black -> 2\n"
            "1[–] Legs yellow -> 4\n"
            "2[2] Head rugose -> 3\n"
            "2[–] Head smooth -> Ausella busa\n"
            "3[3] Wings wide -> Ausella cusa\n"
            "3[–] Wings narrow -> Ausella dusa\n"
            "4[A] Labrum entire -> 5\n"
            "4[–] Labrum notched -> Ausella fusa\n"
            "5[S] Tibiae curved -> Ausella gusa\n"
            "5[–] Tibiae straight -> Ausella lusa\n");
}

// The numeral is of the words, and the couplet beneath is where the lead goes on.
TEST(PrintedRepairs, ANumeralOfTheWordsIsNoNumber) {
  EXPECT_EQ(sketch("1 (10). Peritreme not reaching coxa II.\n"
                   "2 (3). Legs black ..... Ausella busa\n"
                   "3 (2). Legs yellow.\n"
                   "4 (5). Head rugose ..... Ausella cusa\n"
                   "5 (4). Head smooth.\n"
                   "6 (7). Wings wide ..... Ausella dusa\n"
                   "7 (6). Wings narrow.\n"
                   "8 (9). Labrum entire ..... Ausella fusa\n"
                   "9 (8). Labrum notched ..... Ausella gusa\n"
                   "10 (1). Peritreme reaching coxa II.\n"
                   "11 (12). Tibiae curved ..... Ausella lusa\n"
                   "12 (11). Tibiae straight ..... Ausella musa\n"),
            "1[1] Peritreme not reaching coxa II. -> 2\n"
            "1[10] Peritreme reaching coxa II. -> 11\n"
            "2[2] Legs black -> Ausella busa\n"
            "2[3] Legs yellow. -> 4\n"
            "4[4] Head rugose -> Ausella cusa\n"
            "4[5] Head smooth. -> 6\n"
            "6[6] Wings wide -> Ausella dusa\n"
            "6[7] Wings narrow. -> 8\n"
            "8[8] Labrum entire -> Ausella fusa\n"
            "8[9] Labrum notched -> Ausella gusa\n"
            "11[11] Tibiae curved -> Ausella lusa\n"
            "11[12] Tibiae straight -> Ausella musa\n");
}

// Without leaders many a lead of these keys would hang together as an outline that nobody meant.
TEST(PrintedRepairs, DamageIsNoReasonToReadAnotherLayout) {
  std::string const sound =
      "1. Dorsal shield entire\n  2\n- Shield divided\n  5\n"
      "2. Setae long\n  3\n- Setae short\n  4\n"
      "3. Setae plumose\n  L. busus Roe\n- Setae simple\n  L. cusus Dorn\n"
      "4. Sternum smooth\n  L. dusus Roe\n- Sternum rough\n  L. fusus Dorn\n"
      "5. Margin even\n  L. gusus Roe\n- Margin crenate\n  L. lusus Dorn\n";
  auto damaged = sound;
  damaged.replace(damaged.find("\n  4\n"), 5, "\n  i\n");
  EXPECT_EQ(sketch(damaged), sketch(sound));
}

TEST(PrintedRepairs, ADotThatCameOutAsAFigureBeforeANumber) {
  EXPECT_EQ(sketch("1. Legs black . . . . 2\n"
                   "Legs yellow . . . : 5 4\n"
                   "2. Head rugose . . . . 3\n"
                   "Head smooth . . . . Ausella busa\n"
                   "3. Wings wide . . . . Ausella cusa\n"
                   "Wings narrow . . . . Ausella dusa\n"
                   "4. Labrum entire . . . . Ausella fusa\n"
                   "Labrum notched . . . . Ausella gusa\n"),
            "1[1] Legs black -> 2\n"
            "1[] Legs yellow -> 4\n"
            "2[2] Head rugose -> 3\n"
            "2[] Head smooth -> Ausella busa\n"
            "3[3] Wings wide -> Ausella cusa\n"
            "3[] Wings narrow -> Ausella dusa\n"
            "4[4] Labrum entire -> Ausella fusa\n"
            "4[] Labrum notched -> Ausella gusa\n");
}

TEST(PrintedRepairs, TwoFiguresPartedOrMisreadAtAFullStop) {
  EXPECT_EQ(sketch("1. Bein schwarz 2.\n"
                   "1*. Bein gelb 1 1.\n"
                   "2. Kopf rauh 3.\n"
                   "2*. Kopf glatt A. busa.\n"
                   "3. Augen rot 4.\n"
                   "3*. Augen blau A. cusa.\n"
                   "4. Haar lang 5.\n"
                   "4*. Haar kurz A. dusa.\n"
                   "5. Zahn lang 6.\n"
                   "5*. Zahn kurz A. fusa.\n"
                   "6. Horn lang 7.\n"
                   "6*. Horn kurz A. gusa.\n"
                   "7. Nase lang 8.\n"
                   "7*. Nase kurz A. husa.\n"
                   "8. Fuss lang 9.\n"
                   "8*. Fuss kurz A. iusa.\n"
                   "9. Hals lang IG.\n"
                   "9*. Hals kurz A. kusa.\n"
                   "10. Ohr lang A. lusa.\n"
                   "10*. Ohr kurz A. musa.\n"
                   "11. Bart lang 12.\n"
                   "11*. Bart kurz A. nusa.\n"
                   "12. Kinn breit A. ousa.\n"
                   "12*. Kinn schmal A. pusa.\n"),
            "1[1] Bein schwarz -> 2\n"
            "1[1*] Bein gelb -> 11\n"
            "2[2] Kopf rauh -> 3\n"
            "2[2*] Kopf glatt -> A. busa\n"
            "3[3] Augen rot -> 4\n"
            "3[3*] Augen blau -> A. cusa\n"
            "4[4] Haar lang -> 5\n"
            "4[4*] Haar kurz -> A. dusa\n"
            "5[5] Zahn lang -> 6\n"
            "5[5*] Zahn kurz -> A. fusa\n"
            "6[6] Horn lang -> 7\n"
            "6[6*] Horn kurz -> A. gusa\n"
            "7[7] Nase lang -> 8\n"
            "7[7*] Nase kurz -> A. husa\n"
            "8[8] Fuss lang -> 9\n"
            "8[8*] Fuss kurz -> A. iusa\n"
            "9[9] Hals lang -> 10\n"
            "9[9*] Hals kurz -> A. kusa\n"
            "10[10] Ohr lang -> A. lusa\n"
            "10[10*] Ohr kurz -> A. musa\n"
            "11[11] Bart lang -> 12\n"
            "11[11*] Bart kurz -> A. nusa\n"
            "12[12] Kinn breit -> A. ousa\n"
            "12[12*] Kinn schmal -> A. pusa\n");
}

}  // namespace
}  // namespace keydrift
