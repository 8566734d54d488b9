// What drawings say beside their parts, between the leads.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedFigureLabels, StandBesideTheLeads) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1.   Mentum with a broad tooth . . . . . . . . . . . . . . . . . . . 2\n"
                   "1'.  Mentum with two teeth, surface smooth . . 3\n"
                   "mentum                 mentum                 ventromental plate\n"
                   "A. busa                A. cusa                A. dusa\n"
                   "\n"
                   "2.   Striae coarse . . . . . . . . . . . . . . . . . . . . . . . A. busa\n"
                   "2'.  Striae fine . . . . . . . . . . . . . . . . . . . . . . . . A. cusa\n"
                   "3.   Apotome with a window . . . . . . . . . . . . . . . . . . . A. dusa\n"
                   "3'.  Apotome plain . . . . . . . . . . . . . . . . . . . . . . . A. fusa\n"),
            "1[1] Mentum with a broad tooth -> 2\n"
            "1[1'] Mentum with two teeth, surface smooth -> 3\n"
            "2[2] Striae coarse -> Ausella busa\n"
            "2[2'] Striae fine -> Ausella cusa\n"
            "3[3] Apotome with a window -> Ausella dusa\n"
            "3[3'] Apotome plain -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
