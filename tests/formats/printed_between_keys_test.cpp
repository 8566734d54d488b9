// What stands between keys and behind them, numbered as leads are: heads of families and genera,
// titles of keys, accounts of species.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

// The titles of the parts, one a line, and the sketch.
std::string sketch_by_part(std::string_view text) {
  auto const edition = test::read_key(text).edition;
  std::string titles;
  for (auto const& part : edition.parts) titles += "= " + part.title + "\n";
  return titles + sketch(edition);
}

TEST(PrintedBetweenKeys, GenusHeadsNumberedAsLeads) {
  EXPECT_EQ(sketch_by_part("Key to genera\n\n"
                           "1. Needles long ..... 1. Ausella\n"
                           "1. Needles short ..... 2. Busella\n\n"
                           "1. Ausella Roe\n\n"
                           "1. Cones long ..... A. fusa\n"
                           "1. Cones short ..... A. gusa\n\n"
                           "2. Busella Dorn\n\n"
                           "1. Bark grey ..... B. husa\n"
                           "1. Bark red ..... B. lusa\n"),
            "= Key to genera\n"
            "= 1. Ausella Roe\n"
            "= 2. Busella Dorn\n"
            "1[1] Needles long -> Ausella\n"
            "1[1] Needles short -> Busella\n"
            "1[1] Cones long -> Ausella fusa\n"
            "1[1] Cones short -> Ausella gusa\n"
            "1[1] Bark grey -> Busella husa\n"
            "1[1] Bark red -> Busella lusa\n");
}

TEST(PrintedBetweenKeys, GenusHeadsWhoseKeysHaveDashes) {
  EXPECT_EQ(sketch_by_part("1. Ausella Roe\n\n"
                           "1. Flowers white ..... 2\n"
                           "– Flowers yellow ..... A. fusa\n"
                           "2. Leaves ovate ..... A. gusa\n"
                           "– Leaves linear ..... A. husa\n\n"
                           "2. Busella Dorn\n\n"
                           "1. Sepals long ..... B. lusa\n"
                           "– Sepals short ..... B. musa\n"),
            "= 1. Ausella Roe\n"
            "= 2. Busella Dorn\n"
            "1[1] Flowers white -> 2\n"
            "1[–] Flowers yellow -> Ausella fusa\n"
            "2[2] Leaves ovate -> Ausella gusa\n"
            "2[–] Leaves linear -> Ausella husa\n"
            "1[1] Sepals long -> Busella lusa\n"
            "1[–] Sepals short -> Busella musa\n");
}

TEST(PrintedBetweenKeys, AFamilyHeadAboveAGenusHead) {
  EXPECT_EQ(sketch_by_part("Key to families\n\n"
                           "1. Needles long ..... 1. AUSACEAE\n"
                           "1. Needles short ..... 2. BUSACEAE\n\n"
                           "1. AUSACEAE\n\n"
                           "1. Needles in pairs ..... 1. Ausella\n"
                           "1. Needles single ..... 2. Cusella\n\n"
                           "1. Ausella Roe – Marsh Pine\n\n"
                           "1. Cones long ..... A. fusa\n"
                           "1. Cones short ..... A. gusa\n"),
            "= Key to families\n"
            "= 1. AUSACEAE\n"
            "= 1. Ausella Roe – Marsh Pine\n"
            "1[1] Needles long -> Ausaceae\n"
            "1[1] Needles short -> Busaceae\n"
            "1[1] Needles in pairs -> Ausella\n"
            "1[1] Needles single -> Cusella\n"
            "1[1] Cones long -> Ausella fusa\n"
            "1[1] Cones short -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, AGenusDescribedAboveItsKey) {
  EXPECT_EQ(sketch_by_part("1. AUSACEAE\n\n"
                           "1. Ausella Roe (Dwarf Weed)\n\n"
                           "Herbs. Leaves opposite,\n"
                           "flowers small.\n\n"
                           "1. Flowers white ..... A. fusa\n"
                           "1. Flowers yellow ..... A. gusa\n"),
            "= 1. Ausella Roe (Dwarf Weed)\n"
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1] Flowers yellow -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, AGenusOfOneSpeciesHasNoKey) {
  EXPECT_EQ(sketch_by_part("6. Ausella Roe\n\n"
                           "1 Flowers white ..... A. fusa\n"
                           "1* Flowers yellow ..... A. gusa\n\n"
                           "7. Busella Dorn\n\n"
                           "Herbs. One species of the marshes, B. husa.\n\n"
                           "8. Cusella Roe\n\n"
                           "1 Sepals long ..... C. lusa\n"
                           "1* Sepals short ..... C. musa\n\n"
                           "9. Dusella Dorn\n\n"
                           "Herbs.\n"),
            "= 6. Ausella Roe\n"
            "= 8. Cusella Roe\n"
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1*] Flowers yellow -> Ausella gusa\n"
            "1[1] Sepals long -> Cusella lusa\n"
            "1[1*] Sepals short -> Cusella musa\n");
}

TEST(PrintedBetweenKeys, NumberedTitlesOfKeys) {
  EXPECT_EQ(sketch_by_part("1. Key to flowering plants\n\n"
                           "1. Flowers white ..... Ausella fusa\n"
                           "1. Flowers yellow ..... Ausella gusa\n\n"
                           "2. Key to fruiting plants\n\n"
                           "1. Fruit round ..... Ausella fusa\n"
                           "1. Fruit long ..... Ausella gusa\n"),
            "= 1. Key to flowering plants\n"
            "= 2. Key to fruiting plants\n"
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1] Flowers yellow -> Ausella gusa\n"
            "1[1] Fruit round -> Ausella fusa\n"
            "1[1] Fruit long -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, LeadsThatAreNamesAlone) {
  // No count begins behind "2. Ausella Roe": a lead, however bare.
  EXPECT_EQ(sketch("1. Trees\n\n"
                   "2. Leaves opposite ..... Busella fusa\n\n"
                   "2. Leaves alternate ..... Busella gusa\n\n"
                   "1. Shrubs\n\n"
                   "3. Petals red ..... Cusella husa\n\n"
                   "3. Petals white ..... Cusella lusa\n"),
            "1[1] Trees -> 2\n"
            "1[1] Shrubs -> 3\n"
            "2[2] Leaves opposite -> Busella fusa\n"
            "2[2] Leaves alternate -> Busella gusa\n"
            "3[3] Petals red -> Cusella husa\n"
            "3[3] Petals white -> Cusella lusa\n");
}

TEST(PrintedBetweenKeys, AccountsBehindADash) {
  EXPECT_EQ(sketch("1. Flowers white ..... A. fusa\n"
                   "1. Flowers yellow ..... A. gusa\n\n"
                   "1. Ausella fusa Roe – Perennial herb. Woods.\n"
                   "2. Ausella gusa Dorn – Annual herb. Meadows.\n"),
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1] Flowers yellow -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, AccountsOfAKeyWithoutLeaders) {
  EXPECT_EQ(sketch("Ausella Roe\n\n"
                   "1. Flowers white 2\n"
                   "1. Flowers yellow 3\n"
                   "2. Stem hairy A. fusa Roe\n"
                   "2. Stem glabrous A. gusa Dorn\n"
                   "3. Fruit winged A. husa Roe\n"
                   "3. Fruit wingless A. lusa Dorn\n\n"
                   "1. A. fusa Roe; woods; V–VII\n"
                   "2. A. gusa Dorn; meadows; VI\n"
                   "3. A. husa Roe; meadows; VI\n"
                   "4. A. lusa Dorn; walls; VI\n"),
            "1[1] Flowers white -> 2\n"
            "1[1] Flowers yellow -> 3\n"
            "2[2] Stem hairy -> Ausella fusa\n"
            "2[2] Stem glabrous -> Ausella gusa\n"
            "3[3] Fruit winged -> Ausella husa\n"
            "3[3] Fruit wingless -> Ausella lusa\n");
}

}  // namespace
}  // namespace keydrift
