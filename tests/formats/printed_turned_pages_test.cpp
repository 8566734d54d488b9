// The foot of one page over the head of the next.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTurnedPages, HeadsInCapitalsWithFollowingNumbers) {
  EXPECT_EQ(sketch("1 Body keeled ........ 2\n"
                   "  Body not keeled ........ 3\n"
                   "2 Tail forked ........ A. busa\n"
                   "  Tail rounded ........ A. cusa\n"
                   "MARSH FISHES 23\n"
                   "24 KEY TO AUSELLA\n"
                   "3 Eyes large ........ A. dusa\n"
                   "  Eyes small ........ A. fusa\n"),
            "1[1] Body keeled -> 2\n"
            "1[] Body not keeled -> 3\n"
            "2[2] Tail forked -> Ausella busa\n"
            "2[] Tail rounded -> Ausella cusa\n"
            "3[3] Eyes large -> Ausella dusa\n"
            "3[] Eyes small -> Ausella fusa\n");
}

TEST(PrintedTurnedPages, TitlesOfGroupsThatCountOnAreNoHeads) {
  EXPECT_EQ(test::line_kinds("1 Body keeled ........ 2\n"
                             "– Body not keeled ........ A. dusa\n"
                             "2 Tail forked ........ A. busa\n"
                             "– Tail rounded ........ A. cusa\n"
                             "GROUP 11\n"
                             "GROUP 12\n")
                .find("running"),
            std::string::npos);
}

}  // namespace
}  // namespace keydrift
