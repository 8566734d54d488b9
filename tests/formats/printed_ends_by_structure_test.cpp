// Leads whose place among the couplets tells whether they end in a name.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::sketch;

TEST(PrintedEndsByStructure, LeadsOfSerialKeysWithACoupletBeneathThemEndInNoName) {
  EXPECT_EQ(sketch("Bestimmungstabelle der Gattung Chorta\n\n"
                   "1 (4) Arista so lang wie das dritte Glied breit ist, Borsten hinter\n"
                   "      der Naht vorhanden, vier Zentralborsten hinter der Quernaht.\n"
                   "2 (3) Queradern gerade. 5 mm.              recta Roe.\n"
                   "3 (2) Queradern schief. 6 mm.              sinuosa Dorn.\n"
                   "4 (1) Drei Zentralborsten hinter der Quernaht.\n"
                   "5 (6) Hinterleib gelb. 4 mm.               flava Roe.\n"
                   "6 (5) Hinterleib durchaus schwarz.\n"
                   "                              flava var. obscura nov.\n"),
            "1[1] Arista so lang wie das dritte Glied breit ist, Borsten hinter der Naht "
            "vorhanden, vier Zentralborsten hinter der Quernaht. -> 2\n"
            "1[4] Drei Zentralborsten hinter der Quernaht. -> 5\n"
            "2[2] Queradern gerade. 5 mm. -> Chorta recta\n"
            "2[3] Queradern schief. 6 mm. -> Chorta sinuosa\n"
            "5[5] Hinterleib gelb. 4 mm. -> Chorta flava\n"
            "5[6] Hinterleib durchaus schwarz. -> Chorta flava var. obscura (nov.)\n");
}

constexpr std::string_view kSynopsis =
    "Synopsis of Aus\n\n"
    "a. Back grey.\n"
    "  a'. Tail spotted   .   .   .   .   .   .   .   bus, p. 224.\n"
    "  b'. Tail plain   .   .   .   .   .   .   .   .   cus, p. 225.\n"
    "b. Back brown.\n"
    "  c'. Crown black; a broad white streak   dus, p. 226.\n"
    "  d'. Crown brown like the back.\n"
    "    a\". Smaller; wing pale   .   .   .   .   .   .   eus, p. 228.\n"
    "    b\". Larger; wing dark   .   .   .   .   .   .   fus, p. 229.\n";

TEST(PrintedEndsByStructure, ALeadWithoutCoupletBeneathItEndsInTheNameThatBlanksSetApart) {
  auto const read = sketch(kSynopsis);
  EXPECT_NE(read.find("Crown black; a broad white streak -> Aus dus (p. 226.)\n"),
            std::string::npos)
      << read;
  EXPECT_NE(read.find("Crown brown like the back. -> 4\n"), std::string::npos) << read;
}

TEST(PrintedEndsByStructure, TheNameTakenIsReported) {
  auto const findings = findings_of(kSynopsis);
  auto const said = std::count_if(findings.begin(), findings.end(), [](std::string const& one) {
    return one.find(
               "no leaders stand before \"dus, p. 226.\"; it was taken for the lead's "
               "destination [assumed-destination]") != std::string::npos;
  });
  EXPECT_EQ(said, 1) << testing::PrintToString(findings);
}

TEST(PrintedEndsByStructure, WhereLeadsLeadToNumbersTheirPlaceTellsNothing) {
  EXPECT_EQ(sketch("HALVERIA Roe\n\n"
                   "1  Pedicels erect                      2\n"
                   "1  Pedicels spreading, 5-10 mm long\n"
                   "                                       4. carinata\n"
                   "2  Seeds in 1 row                      3\n"
                   "2  Seeds in 2 rows                     3. alba\n"
                   "3  Leaves entire                       1. nigra\n"
                   "3  Leaves lobed                        2. lobata\n"),
            "1[1] Pedicels erect -> 2\n1[1] Pedicels spreading, 5-10 mm long -> Halveria carinata\n"
            "2[2] Seeds in 1 row -> 3\n2[2] Seeds in 2 rows -> Halveria alba\n"
            "3[3] Leaves entire -> Halveria nigra\n3[3] Leaves lobed -> Halveria lobata\n");
}

// Each couplet's leads stand together; the couplets of the first come before those of the second.
TEST(PrintedEndsByStructure, CoupletsMayFollowInOrderWithoutAnyNumber) {
  EXPECT_EQ(
      sketch("2. AUSUS Roe\n\n"
             "1. Styles 2-cleft; achenes flat.\n1. Styles 3-cleft; achenes round.\n"
             "  2. Plants annual.\n  2. Plants perennial.\n"
             "     3. Tubercle wide.      1. A. bus\n     3. Tubercle narrow.      2. A. cus\n"
             "     4. Scale one.      3. A. dus\n     4. Scales two.      4. A. eus\n"
             "  5. Culms flat.\n  5. Culms round.      7. A. hus\n"
             "     6. Bristles long.      5. A. fus\n     6. Bristles none.      6. A. gus\n"),
      "1[1] Styles 2-cleft; achenes flat. -> 2\n1[1] Styles 3-cleft; achenes round. -> 5\n"
      "2[2] Plants annual. -> 3\n2[2] Plants perennial. -> 4\n"
      "3[3] Tubercle wide. -> Ausus bus\n3[3] Tubercle narrow. -> Ausus cus\n"
      "4[4] Scale one. -> Ausus dus\n4[4] Scales two. -> Ausus eus\n"
      "5[5] Culms flat. -> 6\n5[5] Culms round. -> Ausus hus\n"
      "6[6] Bristles long. -> Ausus fus\n6[6] Bristles none. -> Ausus gus\n");
}

// One destination too few, and no order is a habit.
TEST(PrintedEndsByStructure, AForgottenNumberIsNoOrder) {
  auto const read = sketch(
      "1. Styles 2-cleft ..... 2\n1. Styles 3-cleft.\n2. Plants annual ..... Aus bus\n"
      "2. Plants perennial ..... Aus cus\n3. Culms flat ..... Aus dus\n3. Culms round ..... Aus "
      "eus\n");
  EXPECT_NE(read.find("Styles 3-cleft. -> ?\n"), std::string::npos) << read;
}

TEST(PrintedEndsByStructure, GeneraBehindWords) {
  EXPECT_EQ(sketch("Key to mayfly genera\n"
                   "\n"
                   "1. Head with a frontal process; tusks upcurved (Fig. 14B) Hexomera\n"
                   "1' Head without frontal process 2\n"
                   "\n"
                   "2(1') Tusks with tubercles; fore tibiae broad (Fig. 15A) Potamurus\n"
                   "2' Tusks nearly smooth 3\n"
                   "\n"
                   "3(2') Opercular gills triangular (Fig. 16A) .... Tricoramis\n"
                   "3' Opercular gills quadrate 4\n"
                   "\n"
                   "4(3') Femora with toothed margin Serratomera\n"
                   "4' Abdomen without tubercles 5\n"
                   "\n"
                   "5(4') Gills on segment 2 quadrate (Fig. 16B) .... Brachycella\n"
                   "5' Gills absent; middle filament reduced to a stub Baetiscyon\n"),
            "1[1] Head with a frontal process; tusks upcurved (Fig. 14B) -> Hexomera\n"
            "1[1'] Head without frontal process -> 2\n"
            "2[2] Tusks with tubercles; fore tibiae broad (Fig. 15A) -> Potamurus\n"
            "2[2'] Tusks nearly smooth -> 3\n"
            "3[3] Opercular gills triangular (Fig. 16A) -> Tricoramis\n"
            "3[3'] Opercular gills quadrate -> 4\n"
            "4[4] Femora with toothed margin -> Serratomera\n"
            "4[4'] Abdomen without tubercles -> 5\n"
            "5[5] Gills on segment 2 quadrate (Fig. 16B) -> Brachycella\n"
            "5[5'] Gills absent; middle filament reduced to a stub -> Baetiscyon\n");
}

}  // namespace
}  // namespace keydrift
