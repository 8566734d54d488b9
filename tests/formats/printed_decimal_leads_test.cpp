// Leads labelled 1.1 and 1.2.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedDecimalLeads, PointersMayNameTheFirstLead) {
  EXPECT_EQ(sketch("1.1 Wings clear .......... 2.1\n"
                   "1.2 Wings dark ........... Ausella busa\n"
                   "2.1 Legs pale ............ Ausella cusa\n"
                   "2.2 Legs dark ............ 3.1\n"
                   "3.1 Fins red ............. Ausella dusa\n"
                   "3.2 Fins blue ............ Ausella fusa\n"),
            "1[1.1] Wings clear -> 2\n"
            "1[1.2] Wings dark -> Ausella busa\n"
            "2[2.1] Legs pale -> Ausella cusa\n"
            "2[2.2] Legs dark -> 3\n"
            "3[3.1] Fins red -> Ausella dusa\n"
            "3[3.2] Fins blue -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift
