// As many dashes as a couplet stands deep.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedDashLevels, DashesTellHowDeepALeadStands) {
  EXPECT_EQ(sketch("Key to the species of Dorvanthus.\n\n"
                   "— Leaves palmately nerved.\n"
                   "— — Petioles pubescent.\n"
                   "— — — Receptacles sessile..... 1. D. TOMENTOSUS\n"
                   "——— Receptacles peduncled; leaves rufous beneath.. 2. D. RUFUS\n"
                   "— — Petioles glabrous.\n"
                   "— — — Leaves cordate, the basal lobes over-\n"
                   "lapping..... 3. D. CORDIFOLIUS\n"
                   "— — — Leaves peltate..... 4. D. PELTATUS\n"
                   "— — — Leaves truncate..... 5. D. TRUNCATUS\n"
                   "— Leaves pinnately nerved..... 6. D. SERRATUS\n"),
            "1[—] Leaves palmately nerved. -> 2\n"
            "1[—] Leaves pinnately nerved -> Dorvanthus serratus\n"
            "2[—] Petioles pubescent. -> 3\n"
            "2[—] Petioles glabrous. -> 4\n"
            "3[—] Receptacles sessile -> Dorvanthus tomentosus\n"
            "3[—] Receptacles peduncled; leaves rufous beneath -> Dorvanthus rufus\n"
            "4[—] Leaves cordate, the basal lobes overlapping -> Dorvanthus cordifolius\n"
            "4[—] Leaves peltate -> Dorvanthus peltatus\n"
            "4[—] Leaves truncate -> Dorvanthus truncatus\n");
}

TEST(PrintedDashLevels, DashesThatAnswerNumbersTellNothingOfDepth) {
  EXPECT_EQ(sketch("1. Leaves flat ..... 2\n"
                   "— Leaves round ..... Aus bus\n"
                   "— — Leaves hollow ..... Aus cus\n"
                   "2. Petals red ..... Aus dus\n"
                   "— Petals blue ..... Aus eus\n"
                   "— — Petals white ..... Aus fus\n"),
            "1[1] Leaves flat -> 2\n"
            "1[—] Leaves round -> Aus bus\n"
            "1[— —] Leaves hollow -> Aus cus\n"
            "2[2] Petals red -> Aus dus\n"
            "2[—] Petals blue -> Aus eus\n"
            "2[— —] Petals white -> Aus fus\n");
}

TEST(PrintedDashLevels, CountsBeginTheWordsOfLeads) {
  EXPECT_EQ(sketch("– Stamens many\n"
                   "   – 2-flowered heads ..... Ausella lusa\n"
                   "   – 3-flowered heads ..... Ausella musa\n"
                   "– Stamens few\n"
                   "   – Heads with 1 flower ..... Ausella cusa\n"
                   "   – Heads with 2 flowers ..... Ausella nusa\n"),
            "1[–] Stamens many -> 2\n"
            "1[–] Stamens few -> 3\n"
            "2[–] 2-flowered heads -> Ausella lusa\n"
            "2[–] 3-flowered heads -> Ausella musa\n"
            "3[–] Heads with 1 flower -> Ausella cusa\n"
            "3[–] Heads with 2 flowers -> Ausella nusa\n");
}

TEST(PrintedDashLevels, CountsBeginTheWordsBehindSigns) {
  EXPECT_EQ(sketch("* Stamens many\n"
                   "   + 2-flowered heads ..... Ausella lusa\n"
                   "   ++ 3-flowered heads ..... Ausella musa\n"
                   "** Stamens few\n"
                   "   + Heads with 1 flower ..... Ausella cusa\n"
                   "   ++ Heads with 2 flowers ..... Ausella nusa\n"),
            "1[*] Stamens many -> 2\n"
            "1[**] Stamens few -> 3\n"
            "2[+] 2-flowered heads -> Ausella lusa\n"
            "2[++] 3-flowered heads -> Ausella musa\n"
            "3[+] Heads with 1 flower -> Ausella cusa\n"
            "3[++] Heads with 2 flowers -> Ausella nusa\n");
}

TEST(PrintedDashLevels, CountsBehindTwoDashesEndNoRange) {
  EXPECT_EQ(sketch("– Fruit a berry; petals 4\n"
                   "   –– 5 stamens in each flower ..... Ausella pusa\n"
                   "   –– 10 stamens in each flower ..... Ausella rusa\n"
                   "– Fruit a capsule; petals 5 ..... Ausella susa\n"),
            "1[–] Fruit a berry; petals 4 -> 2\n"
            "1[–] Fruit a capsule; petals 5 -> Ausella susa\n"
            "2[––] 5 stamens in each flower -> Ausella pusa\n"
            "2[––] 10 stamens in each flower -> Ausella rusa\n");
}

TEST(PrintedDashLevels, RingsAreLevelsToo) {
  EXPECT_EQ(sketch("* Flowers solitary\n"
                   "  ° Petals red ..... Ausella busa\n"
                   "  °° Petals white ..... Ausella cusa\n"
                   "** Flowers in racemes ..... Ausella husa\n"),
            "1[*] Flowers solitary -> 2\n"
            "1[**] Flowers in racemes -> Ausella husa\n"
            "2[°] Petals red -> Ausella busa\n"
            "2[°°] Petals white -> Ausella cusa\n");
}

}  // namespace
}  // namespace keydrift
