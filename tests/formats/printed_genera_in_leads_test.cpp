// Genera that leads announce for the couplets that they lead to.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedGeneraInLeads, GeneraThatLeadsAnnounceInBrackets) {
  EXPECT_EQ(sketch("TABLEAU DES GENRES ET DES ESPÈCES\n"
                   "\n"
                   "1. — Deux paires de pseudotrachées ..... 2\n"
                   "— Cinq paires de pseudotrachées. (Pentatrachelia n. g.) ..... 4\n"
                   "2. — Flagelle à premier article court. (G. Leptarmadon Roe) ..... 3\n"
                   "— Flagelle à premier article long ..... Onisculon murinus Dorn\n"
                   "3. — Espèce halophile ..... L. littorale Roe\n"
                   "— Espèce de l'intérieur ..... L. simplex Roe\n"
                   "4. — Bord postérieur sinué ..... P. alpina Roe\n"
                   "— Bord postérieur droit ..... P. vallis Roe\n"),
            "1[1] Deux paires de pseudotrachées -> 2\n"
            "1[—] Cinq paires de pseudotrachées. (Pentatrachelia n. g.) -> 4\n"
            "2[2] Flagelle à premier article court. (G. Leptarmadon Roe) -> 3\n"
            "2[—] Flagelle à premier article long -> Onisculon murinus\n"
            "3[3] Espèce halophile -> Leptarmadon littorale\n"
            "3[—] Espèce de l'intérieur -> Leptarmadon simplex\n"
            "4[4] Bord postérieur sinué -> Pentatrachelia alpina\n"
            "4[—] Bord postérieur droit -> Pentatrachelia vallis\n");
}

}  // namespace
}  // namespace keydrift
