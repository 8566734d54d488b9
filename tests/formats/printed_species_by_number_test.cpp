// Ends of leads that give the number of a species in a list.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::led_to;
using test::sketch;

std::string const kKeyByNumber =
    "KEY TO THE SPECIES\n\n"
    "1. Leaves simple                       2\n"
    "1. Leaves compound                     3\n"
    "2. Tall tree                       No. 1\n"
    "2. Shrub                           No. 5\n"
    "3. Flowers white                   No. 2\n"
    "3. Flowers red                         4\n"
    "4. Style bare                      No. 3\n"
    "4. Style hairy                     No. 4\n";

TEST(PrintedSpeciesByNumber, AListInTwoColumnsTellsTheNames) {
  EXPECT_EQ(sketch("REVISION OF BANDELLA\n\nThe following species are recognized:\n\n"
                   " 1. B. excelsa Roe                     4. B. ramosa Dorn\n"
                   " 2. B. lanata Dorn                     5. B. hispida Roe\n"
                   " 3. B. pauca Roe\n\n" +
                   kKeyByNumber),
            "1[1] Leaves simple -> 2\n"
            "1[1] Leaves compound -> 3\n"
            "2[2] Tall tree -> Bandella excelsa\n"
            "2[2] Shrub -> Bandella hispida\n"
            "3[3] Flowers white -> Bandella lanata\n"
            "3[3] Flowers red -> 4\n"
            "4[4] Style bare -> Bandella pauca\n"
            "4[4] Style hairy -> Bandella ramosa\n");
}

TEST(PrintedSpeciesByNumber, AccountsBehindTheKeyTellThem) {
  EXPECT_EQ(sketch(kKeyByNumber + "\n1. BANDELLA EXCELSA Roe, Trans. Marsh 2: 61.\n\nA tree.\n\n"
                                  "2. BANDELLA LANATA Dorn\n\nA shrub.\n\n"
                                  "3. BANDELLA PAUCA Roe\n\n4. BANDELLA RAMOSA Dorn\n"),
            "1[1] Leaves simple -> 2\n"
            "1[1] Leaves compound -> 3\n"
            "2[2] Tall tree -> Bandella excelsa\n"
            "2[2] Shrub -> ?\n"
            "3[3] Flowers white -> Bandella lanata\n"
            "3[3] Flowers red -> 4\n"
            "4[4] Style bare -> Bandella pauca\n"
            "4[4] Style hairy -> Bandella ramosa\n");
}

TEST(PrintedSpeciesByNumber, WithoutAListTheyAreNumbersOfCouplets) {
  EXPECT_EQ(led_to("No. 2"), "2");
  EXPECT_NE(sketch(kKeyByNumber).find("2[2] Tall tree -> 1\n"), std::string::npos)
      << sketch(kKeyByNumber);
}

TEST(PrintedSpeciesByNumber, TheNumberOfASpeciesMayStandAboveItsName) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "a. Shield entire.\n"
                   "   b. Setae plumose, the longest curved (fig. 4). 1.\n"
                   "      A. longiseta\n"
                   "   bb. Setae simple. 2. A. punctata\n"
                   "aa. Shield divided.\n"
                   "   c. Legs long; in nests of rats. 3.\n"
                   "      A. magna\n"
                   "   cc. Legs short. 4. A. parva\n"),
            "a[a] Shield entire. -> b\n"
            "a[aa] Shield divided. -> c\n"
            "b[b] Setae plumose, the longest curved (fig. 4). -> Ausella longiseta\n"
            "b[bb] Setae simple. -> Ausella punctata\n"
            "c[c] Legs long; in nests of rats. -> Ausella magna\n"
            "c[cc] Legs short. -> Ausella parva\n");
}

}  // namespace
}  // namespace keydrift
