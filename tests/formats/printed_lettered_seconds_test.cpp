// The letter alone before the words of second leads.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLetteredSeconds, AnHForTheBThatIsDue) {
  EXPECT_EQ(sketch("1a. Schelp plat ..... 2\n"
                   "b. Schelp bol ..... 3\n"
                   "2a. Navel wijd ..... Aus bus\n"
                   "b. Navel nauw ..... Aus cus\n"
                   "3a. Kiel scherp ..... 4\n"
                   "h. Kiel stomp ..... Aus dus\n"
                   "4a. Schelp dof ..... Aus fus\n"
                   "b. Schelp glanzend ..... Aus gus\n"),
            "1[1a] Schelp plat -> 2\n"
            "1[b] Schelp bol -> 3\n"
            "2[2a] Navel wijd -> Aus bus\n"
            "2[b] Navel nauw -> Aus cus\n"
            "3[3a] Kiel scherp -> 4\n"
            "3[h] Kiel stomp -> Aus dus\n"
            "4[4a] Schelp dof -> Aus fus\n"
            "4[b] Schelp glanzend -> Aus gus\n");
}

}  // namespace
}  // namespace keydrift
