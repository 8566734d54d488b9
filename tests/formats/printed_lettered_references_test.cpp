// Back-references with letters of which scanning made others.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLetteredReferences, AnLForTheOneOfAReference) {
  EXPECT_EQ(sketch("1a. Pores present ..... 2\n"
                   "1b. Pores absent ..... 4\n"
                   "2a (1a). Disk white ..... Aus bus\n"
                   "2b (1a). Disk black ..... 3\n"
                   "3a (2b). Spines two ..... Aus cus\n"
                   "3b (2b). Spines three ..... Aus dus\n"
                   "4a (1b). Canals absent; chin with barbels ..... Aus fus\n"
                   "4b (lb). Canals present; chin without barbels ..... Aus gus\n"),
            "1[1a] Pores present -> 2\n"
            "1[1b] Pores absent -> 4\n"
            "2[2a] Disk white -> Aus bus\n"
            "2[2b] Disk black -> 3\n"
            "3[3a] Spines two -> Aus cus\n"
            "3[3b] Spines three -> Aus dus\n"
            "4[4a] Canals absent; chin with barbels -> Aus fus\n"
            "4[4b] Canals present; chin without barbels -> Aus gus\n");
}

}  // namespace
}  // namespace keydrift
