// Leads that name the title of another key of the file.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedKeyTitles, LeadsThatNameThemWordForWord) {
  EXPECT_EQ(sketch("Key to Ausidae\n"
                   "\n"
                   "1. Plants with flowers ..... 2\n"
                   "1. Plants without flowers ..... Vegetative key\n"
                   "2. Petals 5 ..... Aus bus\n"
                   "2. Petals 4 ..... Cus\n"
                   "\n"
                   "Vegetative key\n"
                   "\n"
                   "1. Leaves hairy ..... Aus bus\n"
                   "1. Leaves bald ..... Aus dus\n"
                   "\n"
                   "Cus\n"
                   "\n"
                   "1. Stem hairy ..... Cus bus\n"
                   "1. Stem bald ..... Cus dus\n"),
            "1[1] Plants with flowers -> 2\n"
            "1[1] Plants without flowers -> key: Vegetative key\n"
            "2[2] Petals 5 -> Aus bus\n"
            "2[2] Petals 4 -> Cus\n"
            "1[1] Leaves hairy -> Aus bus\n"
            "1[1] Leaves bald -> Aus dus\n"
            "1[1] Stem hairy -> Cus bus\n"
            "1[1] Stem bald -> Cus dus\n");
}

TEST(PrintedKeyTitles, FamiliesAndGeneraStayTaxa) {
  EXPECT_EQ(sketch("Key to Ausales\n"
                   "\n"
                   "1a. Body long ..... Ausidae\n"
                   "1b. Body short ..... 2\n"
                   "2a. Legs hairy ..... Brentella\n"
                   "2b. Legs bare ..... Larvae\n"
                   "\n"
                   "Ausidae\n"
                   "\n"
                   "1a. Red ..... Ausella rubra\n"
                   "1b. Black ..... Ausella nigra\n"
                   "\n"
                   "Brentella\n"
                   "\n"
                   "1a. Red ..... Brentella rubra\n"
                   "1b. Black ..... Brentella nigra\n"
                   "\n"
                   "Larvae\n"
                   "\n"
                   "1a. White ..... Brentella rubra\n"
                   "1b. Grey ..... Brentella nigra\n"),
            "1[1a] Body long -> Ausidae\n"
            "1[1b] Body short -> 2\n"
            "2[2a] Legs hairy -> Brentella\n"
            "2[2b] Legs bare -> key: Larvae\n"
            "1[1a] Red -> Ausella rubra\n"
            "1[1b] Black -> Ausella nigra\n"
            "1[1a] Red -> Brentella rubra\n"
            "1[1b] Black -> Brentella nigra\n"
            "1[1a] White -> Brentella rubra\n"
            "1[1b] Grey -> Brentella nigra\n");
}

}  // namespace
}  // namespace keydrift
