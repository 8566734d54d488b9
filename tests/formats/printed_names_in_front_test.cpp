// Taxa that stand on their lead's first line, above the words.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNamesInFront, LeadToThemselvesWithTheWordsBelow) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1    Pleon narrower than pereon; uropods extending well\n"
                   "     beyond telson                                       2\n"
                   "—    Pleon continuing the outline of pereon              4\n"
                   "\n"
                   "2    Ausella punctata (Thorn, 1884)\n"
                   "     Dorsum with sparse punctures; antennal flagellum of\n"
                   "     2 articles. Up to 9 mm.\n"
                   "—    Dorsum smooth; flagellum of 3 articles              3\n"
                   "\n"
                   "3    Ausella costata (Hutch & Kirrow, 1879)\n"
                   "     Each pereonite with a pair of strong ridges.\n"
                   "—    * Ausella rotunda (Thorn, 1884)\n"
                   "     Pereonite 1 grooved in the posterior half only.\n"
                   "\n"
                   "4    Ausella hurunui n. sp.\n"
                   "     Pereonite 1 grooved along the whole margin.\n"
                   "—    Ausella nova Roe, 1902\n"
                   "     Pereonite 1 not grooved.\n"),
            "1[1] Pleon narrower than pereon; uropods extending well beyond telson -> 2\n"
            "1[—] Pleon continuing the outline of pereon -> 4\n"
            "2[2] Dorsum with sparse punctures; antennal flagellum of 2 articles. Up to 9 mm. -> "
            "Ausella punctata\n"
            "2[—] Dorsum smooth; flagellum of 3 articles -> 3\n"
            "3[3] Each pereonite with a pair of strong ridges. -> Ausella costata\n"
            "3[—] Pereonite 1 grooved in the posterior half only. -> Ausella rotunda (*)\n"
            "4[4] Pereonite 1 grooved along the whole margin. -> Ausella hurunui (n. sp.)\n"
            "4[—] Pereonite 1 not grooved. -> Ausella nova\n");
}

TEST(PrintedNamesInFront, NumberedAccountsBehindAKeyAreNoneOfThem) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Pleon narrow ...... 2\n"
                   "—  Pleon broad ...... Ausella costata\n"
                   "2. Dorsum rough ...... Ausella punctata\n"
                   "—  Dorsum smooth ...... Ausella rotunda\n"
                   "\n"
                   "1. Ausella punctata (Thorn, 1884)\n"
                   "   Dorsum with sparse punctures. Up to 9 mm.\n"
                   "\n"
                   "2. Ausella costata (Hutch & Kirrow, 1879)\n"
                   "   Each pereonite with a pair of strong ridges.\n"
                   "\n"
                   "3. Ausella rotunda (Thorn, 1884)\n"
                   "   Pereonite 1 grooved in the posterior half only.\n"),
            "1[1] Pleon narrow -> 2\n"
            "1[—] Pleon broad -> Ausella costata\n"
            "2[2] Dorsum rough -> Ausella punctata\n"
            "2[—] Dorsum smooth -> Ausella rotunda\n");
}

}  // namespace
}  // namespace keydrift
