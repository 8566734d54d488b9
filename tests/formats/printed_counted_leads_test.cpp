// Leads that are counted behind the number of their couplet.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedCountedLeads, AStrokePartsTheCoupletFromTheLead) {
  EXPECT_EQ(sketch("1/1 Wings clear ..... 2\n"
                   "1/2 Wings dark ..... 3\n"
                   "2/1 Legs pale ..... Aus bus\n"
                   "2/2 Legs dark ..... Aus cus\n"
                   "2/3 Legs red ..... Aus fus\n"
                   "3/1 Head long ..... Aus dus\n"
                   "3/2 Head short ..... Aus eus\n"),
            "1[1/1] Wings clear -> 2\n1[1/2] Wings dark -> 3\n"
            "2[2/1] Legs pale -> Aus bus\n2[2/2] Legs dark -> Aus cus\n2[2/3] Legs red -> Aus fus\n"
            "3[3/1] Head long -> Aus dus\n3[3/2] Head short -> Aus eus\n");
}

// A slip in one label, and a fraction that begins a line, take no label from the others.
TEST(PrintedCountedLeads, OneThatDoesNotCountOnIsNoReasonToForgetTheOthers) {
  EXPECT_EQ(sketch("1/1. Wings clear ..... 2\n"
                   "1/2. Wings dark ..... 3\n"
                   "1/3. Wings absent ..... Aus bus\n"
                   "2/1. Legs red ..... Aus cus\n"
                   "2/2. Legs black ..... Aus dus\n"
                   "3/1. Head as long as the\n"
                   "1/2 Pronotum ..... Aus eus\n"
                   "3/2. Head longer ..... 4\n"
                   "4/1. Eyes bare ..... Aus fus\n"
                   "4/2. Eyes hairy ..... Aus gus\n"),
            "1[1/1] Wings clear -> 2\n1[1/2] Wings dark -> 3\n1[1/3] Wings absent -> Aus bus\n"
            "2[2/1] Legs red -> Aus cus\n2[2/2] Legs black -> Aus dus\n"
            "3[3/1] Head as long as the 1/2 Pronotum -> Aus eus\n3[3/2] Head longer -> 4\n"
            "4[4/1] Eyes bare -> Aus fus\n4[4/2] Eyes hairy -> Aus gus\n");
}

TEST(PrintedCountedLeads, FractionsAtTheBeginningOfLinesAreNoLabels) {
  EXPECT_EQ(sketch("1. Wings clear, their length\n"
                   "1/2 Of the body ..... 2\n"
                   "1. Wings dark, their length\n"
                   "1/3 Of the body ..... Aus dus\n"
                   "2. Legs pale ..... Aus bus\n"
                   "2. Legs dark ..... Aus cus\n"),
            "1[1] Wings clear, their length 1/2 Of the body -> 2\n"
            "1[1] Wings dark, their length 1/3 Of the body -> Aus dus\n"
            "2[2] Legs pale -> Aus bus\n2[2] Legs dark -> Aus cus\n");
}

}  // namespace
}  // namespace keydrift
