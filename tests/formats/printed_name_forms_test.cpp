// Forms of names at the ends of leads.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedNameForms, ANewSubspeciesOnALineOfItsOwn) {
  EXPECT_EQ(sketch("Genus CHALEPONYX\n"
                   "\n"
                   "1. Legs red 2\n"
                   "Legs black 3\n"
                   "\n"
                   "2. Head wide, tegula piceous. (Eastern States.)\n"
                   "fulvipes fulvipa (Ormand)\n"
                   "Head narrow, tegula yellow. (Rocky Mountain region.)\n"
                   "\n"
                   "fulvipes montivaga, new subspecies\n"
                   "\n"
                   "3. Wings clear cusa, new species\n"
                   "Wings dusky dusa Roe\n"),
            "1[1] Legs red -> 2\n"
            "1[] Legs black -> 3\n"
            "2[2] Head wide, tegula piceous. (Eastern States.) -> Chaleponyx fulvipes fulvipa\n"
            "2[] Head narrow, tegula yellow. (Rocky Mountain region.) -> Chaleponyx fulvipes "
            "montivaga (new subspecies)\n"
            "3[3] Wings clear -> Chaleponyx cusa (new species)\n"
            "3[] Wings dusky -> Chaleponyx dusa\n");
}

TEST(PrintedNameForms, QuotedNamesOfNewSpecies) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Eyes large .......... Ausella sp. n. “Jusante”\n"
                   "1. Eyes small .......... 2\n"
                   "2. Legs short .......... Ausella n. sp. “Areia”\n"
                   "2. Legs long ........... Ausella sp. nov. 'Long Creek'\n"),
            "1[1] Eyes large -> Ausella sp. n. “Jusante”\n"
            "1[1] Eyes small -> 2\n"
            "2[2] Legs short -> Ausella n. sp. “Areia”\n"
            "2[2] Legs long -> Ausella sp. nov. 'Long Creek'\n");
}

}  // namespace
}  // namespace keydrift
