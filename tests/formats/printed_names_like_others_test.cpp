// Names without leaders that end as those of other leads do.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNamesLikeOthers, PatronymsWhereHardlyALeadIsLeft) {
  EXPECT_EQ(
      sketch("KEY TO SPECIES OF AUSELLA (FEMALES)\n"
             "\n"
             "1. Wing without pale spots................ 2\n"
             "Wing with two or more pale spots............................ 4\n"
             "2(1). Macrotrichia abundant...............................................cusa\n"
             "Macrotrichia sparse............. 3\n"
             "3(2). Scutellum with four bristles; apex pale (fig. 16, d) ferrandi\n"
             "Scutellum with two bristles; apex dark................dusa, n. sp.\n"
             "4(1). Eyes bare............... 5\n"
             "Eyes hairy............... 6\n"
             "5(4). Halter dark...............fusa\n"
             "Halter pale...............gusa\n"
             "6(4). Legs dark...............husa\n"
             "Legs pale...............7\n"
             "7(6). Palpi long...............jusa\n"
             "Palpi short...............kusa\n"),
      "1[1] Wing without pale spots -> 2\n"
      "1[] Wing with two or more pale spots -> 4\n"
      "2[2] Macrotrichia abundant -> Ausella cusa\n"
      "2[] Macrotrichia sparse -> 3\n"
      "3[3] Scutellum with four bristles; apex pale (fig. 16, d) -> Ausella ferrandi\n"
      "3[] Scutellum with two bristles; apex dark -> Ausella dusa (n. sp.)\n"
      "4[4] Eyes bare -> 5\n"
      "4[] Eyes hairy -> 6\n"
      "5[5] Halter dark -> Ausella fusa\n"
      "5[] Halter pale -> Ausella gusa\n"
      "6[6] Legs dark -> Ausella husa\n"
      "6[] Legs pale -> 7\n"
      "7[7] Palpi long -> Ausella jusa\n"
      "7[] Palpi short -> Ausella kusa\n");
}

}  // namespace
}  // namespace keydrift
