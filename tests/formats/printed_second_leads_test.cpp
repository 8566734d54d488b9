// Second leads without a label.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedSecondLeads, WordsOfTheLeadAboveAreMeantAgain) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Forewings with markings yellow or whitish on dark ground 2.\n"
                   "\n"
                   ",, ,, ,, dark on pale ground, or absent 3.\n"
                   "\n"
                   "2. Head yellow .. .. .. A. busa.\n"
                   "\n"
                   ",, dark fuscous .. .. .. A. cusa.\n"
                   "\n"
                   "3. Hindwings orange .. .. A. dusa.\n"
                   "\n"
                   "„ grey .. .. .. A. fusa.\n"),
            "1[1] Forewings with markings yellow or whitish on dark ground -> 2\n"
            "1[] ,, ,, ,, dark on pale ground, or absent -> 3\n"
            "2[2] Head yellow -> Ausella busa\n"
            "2[] ,, dark fuscous -> Ausella cusa\n"
            "3[3] Hindwings orange -> Ausella dusa\n"
            "3[] „ grey -> Ausella fusa\n");
}

TEST(PrintedSecondLeads, RivalsWithTheSameFirstWords) {
  EXPECT_EQ(
      sketch("KEY TO SPECIES OF AUSELLA (FEMALES)\n"
             "\n"
             "1. Wing without pale spots................ 2\n"
             "Wing with two or more pale spots............................ busa\n"
             "2(1). Macrotrichia abundant...............................................cusa\n"
             "Macrotrichia sparse............. 3\n"
             "3(2). Scutellum with four bristles; apex pale (fig. 16, d) ferrandi\n"
             "Scutellum with two bristles; apex dark................dusa, n. sp.\n"),
      "1[1] Wing without pale spots -> 2\n"
      "1[] Wing with two or more pale spots -> Ausella busa\n"
      "2[2] Macrotrichia abundant -> Ausella cusa\n"
      "2[] Macrotrichia sparse -> 3\n"
      "3[3] Scutellum with four bristles; apex pale (fig. 16, d) ferrandi -> ?\n"
      "3[] Scutellum with two bristles; apex dark -> Ausella dusa (n. sp.)\n");
}

}  // namespace
}  // namespace keydrift
