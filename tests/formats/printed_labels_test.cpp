// Labels at the fronts of leads.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLabels, ABlankBeforeTheStopOfLetters) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "a. Wings black.\n"
                   "b . Head rufous ..... A. busa\n"
                   "bb. Head clear ..... A. cusa\n"
                   "aa . Wings hairy.\n"
                   "b. Crown bare ..... A. dusa\n"
                   "bb . Crown broad ..... A. fusa\n"),
            "1[a] Wings black. -> 2\n"
            "1[aa] Wings hairy. -> 3\n"
            "2[b] Head rufous -> Ausella busa\n"
            "2[bb] Head clear -> Ausella cusa\n"
            "3[b] Crown bare -> Ausella dusa\n"
            "3[bb] Crown broad -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
