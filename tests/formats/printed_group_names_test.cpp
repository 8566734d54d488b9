// Names of groups of genera at the ends of leads beneath which the key goes on.

#include <gtest/gtest.h>

#include "keydrift/formats/printed_group_names.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

TEST(PrintedGroupNames, ANumeralAndATribe) {
  EXPECT_TRUE(printed::is_numbered_group("I. Auseae."));
  EXPECT_TRUE(printed::is_numbered_group("XIV. Busellinae"));
  EXPECT_FALSE(printed::is_numbered_group("I. Ausella."));
  EXPECT_FALSE(printed::is_numbered_group("1. Auseae."));
  EXPECT_FALSE(printed::is_numbered_group("I. auseae"));
  EXPECT_FALSE(printed::is_numbered_group("Auseae"));
}

TEST(PrintedGroupNames, TheKeyGoesOnBeneathThem) {
  auto const text =
      "A. Frkn. oberständig.\n"
      "a. Griffel 1. Fr. eine Kapsel . . . . . . . I. Auseae.\n"
      "α. Samen zahlreich . . . . . . . 1. Ausella.\n"
      "β. Samen 2 . . . . . . . 2. Ausopsis.\n"
      "b. Griffel 3. Fr. eine Beere, vom Kelch umgeben\n"
      "II. Buseae.\n"
      "α. Blb. bleibend . . . . . . . 3. Busella.\n"
      "β. Blb. abfallend . . . . . . . 4. Busopsis.\n"
      "B. Frkn. unterständig . . . . . . . III. Cuseae.\n"
      "a. Bl. 4zählig . . . . . . . 5. Cusella.\n"
      "b. Bl. 6zählig . . . . . . . 6. Cusopsis.\n"
      "\n"
      "I. Auseae.\n"
      "\n"
      "Frkn. 3fächerig, mit 1 Griffel.\n"
      "\n"
      "1. Ausella Roe. Kelchb. 5, dachig. Kräuter mit ganzen Blättern.\n"
      "Etwa 12 Arten im Osten.\n";
  EXPECT_EQ(sketch(text),
            "1[A] Frkn. oberständig. -> 2\n"
            "1[B] Frkn. unterständig . . . . . . . III. Cuseae. -> 5\n"
            "2[a] Griffel 1. Fr. eine Kapsel . . . . . . . I. Auseae. -> 3\n"
            "2[b] Griffel 3. Fr. eine Beere, vom Kelch umgeben II. Buseae. -> 4\n"
            "3[α] Samen zahlreich -> Ausella\n"
            "3[β] Samen 2 -> Ausopsis\n"
            "4[α] Blb. bleibend -> Busella\n"
            "4[β] Blb. abfallend -> Busopsis\n"
            "5[a] Bl. 4zählig -> Cusella\n"
            "5[b] Bl. 6zählig -> Cusopsis\n");
  EXPECT_EQ(
      line_kinds(text),
      "lead, lead, lead, lead, lead, continuation, lead, lead, lead, lead, lead, blank, heading, "
      "blank, note, blank, heading, note");
}

// A key to the tribes alone leads to them.
TEST(PrintedGroupNames, TribesThatNothingStandsBeneathAreEnds) {
  EXPECT_EQ(sketch("A. Frkn. oberständig.\n"
                   "a. Griffel 1. Fr. eine Kapsel . . . . . . . I. Auseae.\n"
                   "b. Griffel 3. Fr. eine Beere . . . . . . . II. Buseae.\n"
                   "B. Frkn. unterständig.\n"
                   "a. Bl. 4zählig . . . . . . . III. Cuseae.\n"
                   "b. Bl. 6zählig . . . . . . . IV. Duseae.\n"
                   "\n"
                   "I. Auseae.\n"
                   "\n"
                   "Frkn. 3fächerig, mit 1 Griffel.\n"),
            "1[A] Frkn. oberständig. -> 2\n"
            "1[B] Frkn. unterständig. -> 3\n"
            "2[a] Griffel 1. Fr. eine Kapsel -> I. auseae\n"
            "2[b] Griffel 3. Fr. eine Beere -> II. Buseae\n"
            "3[a] Bl. 4zählig -> III. Cuseae\n"
            "3[b] Bl. 6zählig -> IV. Duseae\n");
}

}  // namespace
}  // namespace keydrift
