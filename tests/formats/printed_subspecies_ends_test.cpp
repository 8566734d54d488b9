// Subspecies at the ends of leads without leaders.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedSubspeciesEnds, GoWithTheirSpecies) {
  EXPECT_EQ(
      sketch("KEY TO THE SPECIES OF AUSELLA\n"
             "\n"
             "1. Pronotum with a pale median line\n"
             "kaluana Oster.\n"
             "Pronotum black 2\n"
             "2(1). Body bright green in life; on ferns. . . .pteridis Oster.\n"
             "Body brown 3\n"
             "3(2). Abdomen black with yellow connexivum, above\n"
             "3,000 feet molana Oster.\n"
             "Abdomen, including connexivum, dull brown 4\n"
             "4(3). Antennae pale yellow brevipennis brevipennis (Dorn).\n"
             "Antennae black, or piceous with extreme base pale\n"
             "brevipennis nigricornis Oster.\n"),
      "1[1] Pronotum with a pale median line -> Ausella kaluana\n"
      "1[] Pronotum black -> 2\n"
      "2[2] Body bright green in life; on ferns -> Ausella pteridis\n"
      "2[] Body brown -> 3\n"
      "3[3] Abdomen black with yellow connexivum, above 3,000 feet -> Ausella molana\n"
      "3[] Abdomen, including connexivum, dull brown -> 4\n"
      "4[4] Antennae pale yellow -> Ausella brevipennis brevipennis\n"
      "4[] Antennae black, or piceous with extreme base pale -> Ausella brevipennis nigricornis\n");
}

TEST(PrintedSubspeciesEnds, LeaveLatinWordsWhereNoLeadEndsInTheSpecies) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Hemelytra meeting along the midline 2\n"
                   "Hemelytra scale-like squamula Roe.\n"
                   "2(1). Antennae pale yellow brevipennis (Dorn).\n"
                   "Antennae nigris nigricornis Oster.\n"),
            "1[1] Hemelytra meeting along the midline -> 2\n"
            "1[] Hemelytra scale-like -> Ausella squamula\n"
            "2[2] Antennae pale yellow -> Ausella brevipennis\n"
            "2[] Antennae -> Ausella nigris nigricornis\n");
}

TEST(PrintedSubspeciesEnds, StandOnBothSidesOfAnd) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Body keeled ..... bus bus Roe and bus cus Dorn\n"
                   "– Body not keeled ..... 2\n"
                   "2. Fins red ..... roseus Roe\n"
                   "– Fins blue ..... albus Dorn\n"),
            "1[1] Body keeled -> Ausella bus bus + Ausella bus cus\n"
            "1[–] Body not keeled -> 2\n"
            "2[2] Fins red -> Ausella roseus\n"
            "2[–] Fins blue -> Ausella albus\n");
}

}  // namespace
}  // namespace keydrift
