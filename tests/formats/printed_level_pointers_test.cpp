// Letters at the ends of an outline's leads that say which rank stands beneath.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLevelPointers, LettersOfRanksAtTheEndsOfLeads) {
  EXPECT_EQ(sketch("Key to Species and Varieties\n"
                   "\n"
                   "a. Leaves all basal; scape with 1 or 2\n"
                   "minute bracts. . . .b.\n"
                   "b. Flowers solitary; pedicels elongating in fruit. ...c.\n"
                   "c. Calyx-lobes ciliate 1. A. busa.\n"
                   "c. Calyx-lobes glabrous 2. A. cusa.\n"
                   "b. Flowers in racemes; pedicels short 3. A. dusa.\n"
                   "a. Leaves chiefly cauline, the basal early withering . . . .b.\n"
                   "b. Leaves opposite. . . .c.\n"
                   "c. Stem glabrous 4. A. fusa.\n"
                   "c. Stem pubescent throughout. . . .d.\n"
                   "d. Hairs spreading 5. A. gusa.\n"
                   "d. Hairs appressed 6. A. lusa.\n"
                   "b. Leaves alternate 7. A. musa.\n"),
            "1[a] Leaves all basal; scape with 1 or 2 minute bracts. -> 2\n"
            "1[a] Leaves chiefly cauline, the basal early withering -> 4\n"
            "2[b] Flowers solitary; pedicels elongating in fruit. -> 3\n"
            "2[b] Flowers in racemes; pedicels short -> A. dusa\n"
            "3[c] Calyx-lobes ciliate -> A. busa\n"
            "3[c] Calyx-lobes glabrous -> A. cusa\n"
            "4[b] Leaves opposite. -> 5\n"
            "4[b] Leaves alternate -> A. musa\n"
            "5[c] Stem glabrous -> A. fusa\n"
            "5[c] Stem pubescent throughout. -> 6\n"
            "6[d] Hairs spreading -> A. gusa\n"
            "6[d] Hairs appressed -> A. lusa\n");
}

TEST(PrintedLevelPointers, LettersOfCoupletsStay) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "a. Leaves cordate, petioled . . . .b.\n"
                   "a. Leaves linear, sessile . . . .d.\n"
                   "b. Rays white . . . .c.\n"
                   "b. Rays blue . . . . A. busa.\n"
                   "c. Glands few . . . . A. cusa.\n"
                   "c. Glands many . . . . A. dusa.\n"
                   "d. Stem smooth . . . .e.\n"
                   "d. Stem hairy . . . . A. fusa.\n"
                   "e. Pappus simple . . . . A. gusa.\n"
                   "e. Pappus double . . . . A. lusa.\n"),
            "a[a] Leaves cordate, petioled -> b\n"
            "a[a] Leaves linear, sessile -> d\n"
            "b[b] Rays white -> c\n"
            "b[b] Rays blue -> Ausella busa\n"
            "c[c] Glands few -> Ausella cusa\n"
            "c[c] Glands many -> Ausella dusa\n"
            "d[d] Stem smooth -> e\n"
            "d[d] Stem hairy -> Ausella fusa\n"
            "e[e] Pappus simple -> Ausella gusa\n"
            "e[e] Pappus double -> Ausella lusa\n");
}

}  // namespace
}  // namespace keydrift
