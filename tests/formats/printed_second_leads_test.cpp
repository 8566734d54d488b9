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

TEST(PrintedSecondLeads, TheNextParagraphThatBeginsAsTheFirstLead) {
  EXPECT_EQ(
      sketch("KEY TO MALES OF AUSELLA\n"
             "\n"
             "1. Carapace yellow, the legs pale........ pallens Chalmers\n"
             "Carapace black, the legs dark........ 2\n"
             "2. Total length less than 3 mm.; abdomen with a scutum\n"
             "minimus Chalmers\n"
             "\n"
             "Total length 5 mm. or more; abdomen without scutum\n"
             "tibialis, new species\n"
             "\n"
             "KEY TO FEMALES OF AUSELLA\n"
             "\n"
             "1. Epigynum longer than wide........ pallens Chalmers\n"
             "Epigynum wider than long........ minimus Chalmers\n"),
      "1[1] Carapace yellow, the legs pale -> Ausella pallens\n"
      "1[] Carapace black, the legs dark -> 2\n"
      "2[2] Total length less than 3 mm.; abdomen with a scutum -> Ausella minimus\n"
      "2[] Total length 5 mm. or more; abdomen without scutum -> Ausella tibialis (new species)\n"
      "1[1] Epigynum longer than wide -> Ausella pallens\n"
      "1[] Epigynum wider than long -> Ausella minimus\n");
}

}  // namespace
}  // namespace keydrift
