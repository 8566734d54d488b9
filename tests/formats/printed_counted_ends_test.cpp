// Epithets at the ends of leads with the numbers of their species behind them.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

constexpr auto kCountedKey =
    "AUSELLA Roe.\n\n"
    "a. Dorsal fins two, well separated; preopercle with three spines.\n\n"
    "b. Lateral line complete; pores 38 to 46.\n\n"
    "maculosus. 1.\n\n"
    "bb. Head and nape with small embedded scales; spots confluent into a\n"
    "lateral band. . . . . . lepidopsis. 2.\n\n"
    "aa. Dorsal fin continuous, the spinous portion separated from the soft.\n\n"
    "c. Anal rays 18.                                     signifer. 3.\n\n"
    "cc. Anal rays 13 to 15; no dorsal spine produced. robustus. 4,\n\n"
    "ccc. Anal rays 9 or 10; no spine; interorbital space wide. latus. S.\n";

TEST(PrintedCountedEnds, CountUpThroughTheKey) {
  EXPECT_EQ(sketch(kCountedKey),
            "a[a] Dorsal fins two, well separated; preopercle with three spines. -> b\n"
            "a[aa] Dorsal fin continuous, the spinous portion separated from the soft. -> c\n"
            "b[b] Lateral line complete; pores 38 to 46. -> Ausella maculosus (1.)\n"
            "b[bb] Head and nape with small embedded scales; spots confluent into a lateral band "
            "-> Ausella lepidopsis (2.)\n"
            "c[c] Anal rays 18. -> Ausella signifer (3.)\n"
            "c[cc] Anal rays 13 to 15; no dorsal spine produced. -> Ausella robustus (4,)\n"
            "c[ccc] Anal rays 9 or 10; no spine; interorbital space wide. -> Ausella latus (S.)\n");
}

TEST(PrintedCountedEnds, NumbersThatDoNotCountUpAreNone) {
  EXPECT_EQ(sketch("1. Wings clear, legs slender. 2.\n– Wings dark, legs stout. 3.\n"
                   "2. Eyes round, antennae longae. 4.\n– Eyes narrow, antennae latae. 5.\n"
                   "3. Head red ... Aus bus\n– Head black ... Aus cus\n"
                   "4. Tail long ... Aus dus\n– Tail short ... Aus eus\n"
                   "5. Feet pale ... Aus fus\n– Feet dark ... Aus gus\n"),
            "1[1] Wings clear, legs slender. -> 2\n"
            "1[–] Wings dark, legs stout. -> 3\n"
            "2[2] Eyes round, antennae longae. -> 4\n"
            "2[–] Eyes narrow, antennae latae. -> 5\n"
            "3[3] Head red -> Aus bus\n"
            "3[–] Head black -> Aus cus\n"
            "4[4] Tail long -> Aus dus\n"
            "4[–] Tail short -> Aus eus\n"
            "5[5] Feet pale -> Aus fus\n"
            "5[–] Feet dark -> Aus gus\n");
}

}  // namespace
}  // namespace keydrift
