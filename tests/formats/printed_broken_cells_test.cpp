// Cells one below the other that markup broke within their sentences.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedBrokenCells, FiguresWithinASentenceAreNoLabels) {
  EXPECT_EQ(sketch("Key to males of\nAusella\nRoe, 2011\n\n"
                   "1\nApophysis bifid (\nFigs 3A\n,\n5C\n); embolus short\n2\n"
                   "–\nApophysis simple (\nFig. 3B\n); embolus long\nAusella busa\nRoe, 2011\n"
                   "2\nBranches equal\nAusella cusa\nsp. nov.\n"
                   "–\nBranches unequal\nAusella dusa\nsp. nov.\n"
                   "\nKey to females of\nAusella\n\n"
                   "1\nSeptum broad\nAusella busa\n"
                   "–\nSeptum narrow\nAusella cusa\n"),
            "1[1] Apophysis bifid ( Figs 3A , 5C ); embolus short -> 2\n"
            "1[–] Apophysis simple ( Fig. 3B ); embolus long -> Ausella busa\n"
            "2[2] Branches equal -> Ausella cusa (sp. nov.)\n"
            "2[–] Branches unequal -> Ausella dusa (sp. nov.)\n"
            "1[1] Septum broad -> Ausella busa\n"
            "1[–] Septum narrow -> Ausella cusa\n");
}

}  // namespace
}  // namespace keydrift
