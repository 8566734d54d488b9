// What a text layer leaves of pages: statements without indentation, numbers and heads apart.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTextLayer, StatementsAboveTheFirstLeadThatEndsBelongToTheKey) {
  EXPECT_EQ(sketch("3. AUSELLA Roe, Bot. Exp. 118. 1842.\n"
                   "\n"
                   "Annual herbs with leafy stems, the flowers solitary or in terminal cymes. "
                   "Capsule 2-celled.\n"
                   "\n"
                   "Leaves opposite, at least the lower ones.\n"
                   "Corolla yellow.\n"
                   "\n"
                   "Calyx-lobes lanceolate, acute.\n"
                   "\n"
                   "Leaves glabrous; capsule longer than the calyx. 1. A. lutea.\n"
                   "\n"
                   "Leaves pubescent; capsule not exceeding the calyx. 2. A. pilosa.\n"
                   "\n"
                   "Calyx-lobes ovate, obtuse. 3. A. obtusa.\n"
                   "\n"
                   "Corolla white.\n"
                   "\n"
                   "Capsule globose. 4. A. globosa.\n"
                   "\n"
                   "Capsule oblong. 5. A. oblonga.\n"
                   "\n"
                   "Leaves alternate.\n"
                   "\n"
                   "Herbage glabrous. 6. A. glabra.\n"
                   "\n"
                   "Herbage hairy. 7. A. hirta.\n"),
            "1[] Leaves opposite, at least the lower ones. -> 2\n"
            "1[] Leaves alternate. -> 6\n"
            "2[] Corolla yellow. -> 3\n"
            "2[] Corolla white. -> 5\n"
            "3[] Calyx-lobes lanceolate, acute. -> 4\n"
            "3[] Calyx-lobes ovate, obtuse. -> Ausella obtusa\n"
            "4[] Leaves glabrous; capsule longer than the calyx. -> Ausella lutea\n"
            "4[] Leaves pubescent; capsule not exceeding the calyx. -> Ausella pilosa\n"
            "5[] Capsule globose. -> Ausella globosa\n"
            "5[] Capsule oblong. -> Ausella oblonga\n"
            "6[] Herbage glabrous. -> Ausella glabra\n"
            "6[] Herbage hairy. -> Ausella hirta\n");
}

TEST(PrintedTextLayer, APagesNumberGoesOnWithNoLead) {
  EXPECT_EQ(sketch("87\n"
                   "\n"
                   "Bestimmungstabelle der Arten von Ausella\n"
                   "\n"
                   "1 (4) Stirn breit; Fühler kurz.\n"
                   "\n"
                   "2 (3) Beine rot. — 7 mm. — Alpen, über der Baumgrenze montana Strgl.\n"
                   "\n"
                   "88\n"
                   "\n"
                   "Ausella\n"
                   "\n"
                   "3 (2) Beine schwarz .. busa Strgl.\n"
                   "\n"
                   "4 (1) Stirn schmal.\n"
                   "\n"
                   "5 (6) Flügel mit Randdorn .. cusa Hollr.\n"
                   "\n"
                   "6 (5) Flügel ohne Randdorn .. dusa Hollr.\n"),
            "1[1] Stirn breit; Fühler kurz. -> 2\n"
            "1[4] Stirn schmal. -> 5\n"
            "2[2] Beine rot. — 7 mm. — Alpen, über der Baumgrenze -> Ausella montana\n"
            "2[3] Beine schwarz -> Ausella busa\n"
            "5[5] Flügel mit Randdorn -> Ausella cusa\n"
            "5[6] Flügel ohne Randdorn -> Ausella dusa\n");
}

}  // namespace
}  // namespace keydrift
