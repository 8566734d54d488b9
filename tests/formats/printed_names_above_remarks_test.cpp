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

}  // namespace
}  // namespace keydrift
