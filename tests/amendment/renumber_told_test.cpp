// New couplets in the middle of a key, and what becomes of the numbers that they take.
#include <gtest/gtest.h>

#include <string>

#include "support.hpp"

namespace keydrift::test {
namespace {

std::string const kNewThree =
    "3(1) Antennae long ..... Aus ius\n"
    "–   Antennae short ..... 4\n";
std::string const kWithNewThree =
    "1: Wings clear > 2 | Wings dark > 3\n"
    "2 (1): Legs pale > Aus bus | Legs dark > Aus cus\n"
    "3 (1): Antennae long > Aus ius | Antennae short > 4\n"
    "4 (3): Head red > 5 | Head blue > Bus dus\n"
    "5 (4): Tail long; 4 setae > Bus eus | Tail short > Bus fus\n";

TEST(AmendNumbers, ANewCoupletTakesItsNumberAndTheOldOnesMoveUp) {
  for (std::string const words :
       {"Insert the following new couplet 3 and renumber the old couplets 3–4 as 4–5:\n",
        "The following couplet is inserted as new couplet 3; former couplets 3–4 become 4–5.\n\n",
        "Renumber couplets 3 to 4 as 4 to 5 and insert:\n",
        "Renumber couplets 3 and 4 as 4 and 5, and insert the following couplet:\n",
        "Couplets 3–4 become 4–5. Insert before the former couplet 3:\n",
        "Insert after couplet 2 (couplets 3–4 to be renumbered 4–5):\n",
        "After couplet 2 insert the following; subsequent couplets are renumbered accordingly:\n",
        "After couplet 2 insert the following and renumber the remaining couplets accordingly:\n",
        "Die bisherigen Punkte 3–4 werden 4–5; neuer Punkt 3:\n",
        "Nach Punkt 2 wird ein neuer Punkt 3 eingefügt, die Punkte 3–4 werden dadurch zu 4–5:\n",
        "Die Punkte 3–4 werden zu 4–5. Nach Punkt 2 ist einzufügen:\n",
        "Nach Punkt 2 ist einzufügen; die folgenden Punkte sind entsprechend umzunummerieren:\n",
        "Insérer le nouveau couplet 3 ; les anciens couplets 3–4 deviennent 4–5 :\n",
        "Insertar el nuevo dilema 3; los dilemas 3–4 pasan a ser 4–5:\n",
        "Inserir o novo passo 3; os passos 3–4 passam a ser 4–5:\n",
        "Inseratur numerus 3; numeri 3–4 fiunt 4–5:\n"}) {
    auto const result = amended(small_key(), words + kNewThree);
    EXPECT_EQ(key_in_short(result.edition), kWithNewThree) << words;
    EXPECT_EQ(told(result.unplaced) + told(result.faults_made), "") << words;
  }
  auto const after = amended(
      small_key(), "Insert as couplet 3:\n" + kNewThree + "\nRenumber couplets 3–4 as 4–5.\n");
  EXPECT_EQ(key_in_short(after.edition), kWithNewThree);
  EXPECT_EQ(told(after.unplaced) + told(after.faults_made), "");
}

TEST(AmendNumbers, NumbersThatMoveAreTold) {
  auto const result =
      amended(small_key(), "Insert new couplet 3 and renumber couplets 3–4 as 4–5:\n" + kNewThree);
  EXPECT_EQ(deeds_in_short(result),
            "redirected 1: because couplet 3 was inserted\n"
            "inserted 3: behind couplet 2\n"
            "renumbered 4: was couplet 3\n"
            "back-references 4: now reached from 3\n"
            "renumbered 5: was couplet 4\n");
  EXPECT_EQ(result.edition.couplets[3].leads[0].destination_printed, "5");
}

TEST(AmendNumbers, AnInsertionReplacesNothing) {
  for (std::string const words :
       {"Insert as couplet 3:\n", "Insert the following new couplet 3:\n", "New couplet 3:\n",
        "Add new couplet 3:\n", "Add couplet 3:\n", "Add the following new couplet 3:\n",
        "The following couplet is inserted as couplet 3:\n", "Neuer Punkt 3:\n",
        "Insérer le couplet 3 :\n"}) {
    auto const result = amended(small_key(), words + kNewThree);
    EXPECT_EQ(key_in_short(result.edition), key_in_short(read_key(small_key()))) << words;
    EXPECT_EQ(told(result.unplaced).substr(0, told(result.unplaced).find('\n')),
              "piece.txt:2:1: error: this is to be inserted as couplet 3, and the edition has a "
              "couplet 3, which an insertion does not replace [number-not-free]")
        << words;
  }
}

// Does 4 in the new couplet mean the couplet that is 4, or the one that is to be?
TEST(AmendNumbers, AreNotGuessedWhereNothingIsSaidOfThem) {
  for (std::string const words :
       {"Insert after couplet 2:\n", "A new couplet is inserted between couplets 2 and 3:\n",
        "Before couplet 3 insert:\n"}) {
    auto const result = amended(small_key(), words + kNewThree);
    EXPECT_EQ(key_in_short(result.edition), key_in_short(read_key(small_key()))) << words;
    EXPECT_EQ(told(result.unplaced),
              "piece.txt:2:1: error: the edition has a couplet 3 already, and this does not say "
              "whether 4 is the number that a couplet has or is to have [number-not-free]\n"
              "  Antennae long\n"
              "  say what becomes of the old numbers, as in \"Couplets 8–13 become 9–14\", or give "
              "the couplet a number that is free\n")
        << words;
  }
}

// "Insert couplet 2a:" with the couplet before it, whose words stay and which now leads there.
TEST(AmendNumbers, ACoupletPrintedWithTheInsertedOneIsThatOfTheEdition) {
  auto const result = amended(small_key(),
                              "Insert couplet 2a as follows:\n"
                              "2  Legs pale ..... Aus bus\n"
                              "–  Legs dark ..... 2a\n"
                              "2a Feet pale ..... Aus cus\n"
                              "–  Feet dark ..... Aus hus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"), "2 (1): Legs pale > Aus bus | Legs dark > 2a\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2a"),
            "2a (2): Feet pale > Aus cus | Feet dark > Aus hus\n");
  EXPECT_EQ(told(result.unplaced), "");
}

TEST(AmendNumbers, MayMoveAlone) {
  auto const result = amended(small_key(), "Renumber couplets 3–4 as 8–9.\n");
  EXPECT_EQ(key_in_short(result.edition),
            "1: Wings clear > 2 | Wings dark > 8\n"
            "2 (1): Legs pale > Aus bus | Legs dark > Aus cus\n"
            "8 (1): Head red > 9 | Head blue > Bus dus\n"
            "9 (8): Tail long; 4 setae > Bus eus | Tail short > Bus fus\n");
  EXPECT_EQ(told(result.unplaced), "");
}

TEST(AmendNumbers, WhatStandsBesideANumberMovesWithIt) {
  auto const result = amended(
      "1   Wings clear ..... 2\n"
      "–   Wings dark ..... Aus bus\n"
      "2   Legs pale ..... 2a\n"
      "–   Legs dark ..... Aus cus\n"
      "2a  Feet pale ..... Aus dus\n"
      "–   Feet dark ..... Aus eus\n",
      "Couplet 2 becomes 3.\n");
  EXPECT_EQ(key_in_short(result.edition),
            "1: Wings clear > 3 | Wings dark > Aus bus\n"
            "3: Legs pale > 3a | Legs dark > Aus cus\n"
            "3a: Feet pale > Aus dus | Feet dark > Aus eus\n");
}

// 4 before, or 4 now?
TEST(AmendNumbers, OtherInstructionsMayNotNameNumbersThatMove) {
  auto const result = amended(small_key(),
                              "Couplets 3–4 become 4–5.\n"
                              "Delete couplet 4.\n"
                              "Couplet 2: for \"pale\" read \"white\".\n");
  EXPECT_EQ(couplet_in_short(result.edition, "5"),
            "5 (4): Tail long; 4 setae > Bus eus | Tail short > Bus fus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"),
            "2 (1): Legs white > Aus bus | Legs dark > Aus cus\n");
  EXPECT_EQ(
      told(result.unplaced),
      "piece.txt:2:1: error: the piece gives couplets 3 to 5 other numbers, and this does not "
      "say whether it speaks of those before or after [number-before-or-after]\n"
      "  Delete couplet 4.\n"
      "  put this into a piece of its own, and give that one before or behind this piece\n");
}

TEST(AmendNumbers, AreNotGivenTwiceNorToTooFew) {
  auto const unchanged = key_in_short(read_key(small_key()));
  for (auto const* words : {"Couplets 3–4 become 4–6.", "Couplets 2–3 become 3–4.",
                            "Couplets 4–5 become 5–6.", "Couplet 7 becomes 8."}) {
    auto const result = amended(small_key(), words);
    EXPECT_EQ(key_in_short(result.edition), unchanged) << words;
    EXPECT_EQ(result.unplaced.size(), 1U) << words;
  }
}

}  // namespace
}  // namespace keydrift::test
