// Ends of leads that bear no labels.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedIndentEnds, ANumberedNameBelowItsWordsIsDue) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES.\n"
                   "\n"
                   "Leaves simple.\n"
                   "Leaves opposite 1. A. busa.\n"
                   "Leaves alternate 2. A. cusa.\n"
                   "Leaves compound.\n"
                   "Leaflets 3.\n"
                   "Leaflets sessile 3. A. dusa.\n"
                   "Leaflets petiolulate 4. A. fusa.\n"
                   "Leaflets 5 to 17.\n"
                   "Panicles longer than the leaves 5. A. gusa.\n"
                   "Panicles shorter than the leaves.\n"
                   "Leaflets 5 to 9, glabrous on the upper surface; fruit black.\n"
                   "\n"
                   "6. A. lusa.\n"
                   "Leaflets 11 to 17, pubescent on the upper surface; fruit red.\n"
                   "\n"
                   "7. A. musa.\n"),
            "1[] Leaves simple. -> 2\n"
            "1[] Leaves compound. -> 3\n"
            "2[] Leaves opposite -> A. busa\n"
            "2[] Leaves alternate -> A. cusa\n"
            "3[] Leaflets 3. -> 4\n"
            "3[] Leaflets 5 to 17. -> 5\n"
            "4[] Leaflets sessile -> A. dusa\n"
            "4[] Leaflets petiolulate -> A. fusa\n"
            "5[] Panicles longer than the leaves -> A. gusa\n"
            "5[] Panicles shorter than the leaves. -> 6\n"
            "6[] Leaflets 5 to 9, glabrous on the upper surface; fruit black. -> A. lusa\n"
            "6[] Leaflets 11 to 17, pubescent on the upper surface; fruit red. -> A. musa\n");
}

TEST(PrintedIndentEnds, NumberedEpithetsWhereIndentationWasLost) {
  EXPECT_EQ(
      sketch("23. DORVANIA Hessk. f.\n"
             "\n"
             "Corolla-tube more than 5 cm. long ; calyx-lobes foliaceous, longer than the ovary :\n"
             "Leaves softly pubescent beneath ; flowers solitary or paired\n"
             "on the short lateral shoots . . 1. macrantha\n"
             "Leaves glabrous beneath except for tufts of hairs in the axils of the nerves,\n"
             "up to 10 cm. long :\n"
             "Calyx-lobes oblanceolate ; corolla-lobes rounded at apex 2. calycina\n"
             "Calyx-lobes linear-lanceolate ; corolla-lobes acuminate\n"
             "\n"
             "3. lujensis\n"
             "\n"
             "Corolla-tube up to 3 cm. long ; calyx-lobes linear or obsolete, not longer\n"
             "than the ovary :\n"
             "Inflorescences terminal :\n"
             "Bracts ovate ; leaves rounded or subcordate at base\n"
             "\n"
             "4. hirtiflora\n"
             "Bracts filiform ; leaves cuneate at base . . . . . . 5. barteriana\n"
             "Inflorescences axillary . . . . . . 6. multinervis\n"),
      "1[] Corolla-tube more than 5 cm. long ; calyx-lobes foliaceous, longer than the ovary : -> "
      "2\n"
      "1[] Corolla-tube up to 3 cm. long ; calyx-lobes linear or obsolete, not longer than the "
      "ovary : -> 4\n"
      "2[] Leaves softly pubescent beneath ; flowers solitary or paired on the short lateral "
      "shoots -> Dorvania macrantha\n"
      "2[] Leaves glabrous beneath except for tufts of hairs in the axils of the nerves, up to 10 "
      "cm. long : -> 3\n"
      "3[] Calyx-lobes oblanceolate ; corolla-lobes rounded at apex -> Dorvania calycina\n"
      "3[] Calyx-lobes linear-lanceolate ; corolla-lobes acuminate -> Dorvania lujensis\n"
      "4[] Inflorescences terminal : -> 5\n"
      "4[] Inflorescences axillary -> Dorvania multinervis\n"
      "5[] Bracts ovate ; leaves rounded or subcordate at base -> Dorvania hirtiflora\n"
      "5[] Bracts filiform ; leaves cuneate at base -> Dorvania barteriana\n");
}

}  // namespace
}  // namespace keydrift
