// Leads parted into their words and what they lead to.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLeads, BracketsOfSecondLeadsNameWhereTheyComeFrom) {
  EXPECT_EQ(sketch("1. Areola wide 2\n"
                   "1'. Areola narrow 4\n"
                   "2(1). Rostrum with spines 3\n"
                   "2'(1). Rostrum without spines P. busa (Roe)\n"
                   "3(2). Palm with two rows of tubercles in narrowest\n"
                   "part 5\n"
                   "3'(2). Palm with one row P. cusa Roe\n"
                   "4(V). Ischium with hook P. dusa Roe\n"
                   "4'(1'). Ischia without hooks P. fusa Roe\n"
                   "5(3). Hooks simple P. gusa Roe\n"
                   "5'(3). Hooks bituberculate P. lusa Roe\n"),
            "1[1] Areola wide -> 2\n"
            "1[1'] Areola narrow -> 4\n"
            "2[2] Rostrum with spines -> 3\n"
            "2[2'] Rostrum without spines -> P. busa\n"
            "3[3] Palm with two rows of tubercles in narrowest part -> 5\n"
            "3[3'] Palm with one row -> P. cusa\n"
            "4[4] Ischium with hook -> P. dusa\n"
            "4[4'] Ischia without hooks -> P. fusa\n"
            "5[5] Hooks simple -> P. gusa\n"
            "5[5'] Hooks bituberculate -> P. lusa\n");
}

TEST(PrintedLeads, TheGenusMayEndTheLineOfItsLeaders) {
  EXPECT_EQ(sketch("1   Hind coxa black, hind femur reddish ..... A.\n"
                   "    rufifemur Roe & Dorn, sp. nov.\n"
                   "–   Hind coxa and femur both yellow ..... 2\n"
                   "2   Frons with two tubercles ..... A.\n"
                   "    skarnensis Dorn, 2003\n"
                   "–   Frons evenly convex; widespread ..... A.\n"
                   "    communis (Roe, 1911)\n"),
            "1[1] Hind coxa black, hind femur reddish -> A. rufifemur (sp. nov.)\n"
            "1[–] Hind coxa and femur both yellow -> 2\n"
            "2[2] Frons with two tubercles -> A. skarnensis\n"
            "2[–] Frons evenly convex; widespread -> A. communis\n");
}

}  // namespace
}  // namespace keydrift
