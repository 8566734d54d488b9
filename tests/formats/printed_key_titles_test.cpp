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

}  // namespace
}  // namespace keydrift
