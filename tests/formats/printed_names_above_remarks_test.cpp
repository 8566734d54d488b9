// Names on lines of their own with remarks beneath them.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNamesAboveRemarks, LinesBeneathNamesAreNoAuthors) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Body keeled\n"
                   "        Ausella busa Roe, 1931\n"
                   "        Distribution: Upper Marl, Mill Brook.\n"
                   "1'. Body not keeled ................ 2\n"
                   "2. Eyes large\n"
                   "        Ausella cusa (Dorn, 1954)\n"
                   "        Lower Marl; rare.\n"
                   "2'. Eyes small\n"
                   "        Ausella dusa Roe, 1960\n"
                   "        Mill Brook.\n"),
            "1[1] Body keeled -> Ausella busa\n"
            "1[1'] Body not keeled -> 2\n"
            "2[2] Eyes large -> Ausella cusa\n"
            "2[2'] Eyes small -> Ausella dusa\n");
}

TEST(PrintedNamesAboveRemarks, SecondLeadsWithoutLabels) {
  EXPECT_EQ(sketch("1. Body covered with hairs ... 2\n"
                   "   Body glabrous ... 3\n"
                   "2. Hairs white\n"
                   "      Ausella alba Roe\n"
                   "      Upper Marl, Mill Brook.\n"
                   "   Hairs black\n"
                   "      Ausella nigra Roe\n"
                   "      Upper Marl.\n"
                   "3. Legs red\n"
                   "      Ausella rubripes Roe\n"
                   "      Lower Marl.\n"
                   "   Legs yellow\n"
                   "      Ausella flavipes Roe\n"
                   "      Mill Brook.\n"),
            "1[1] Body covered with hairs -> 2\n"
            "1[] Body glabrous -> 3\n"
            "2[2] Hairs white -> Ausella alba\n"
            "2[] Hairs black -> Ausella nigra\n"
            "3[3] Legs red -> Ausella rubripes\n"
            "3[] Legs yellow -> Ausella flavipes\n");
}

}  // namespace
}  // namespace keydrift
