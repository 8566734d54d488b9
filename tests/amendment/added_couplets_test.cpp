// Couplets that are added behind others, and their leads' names.
#include <gtest/gtest.h>

#include <string>

#include "support.hpp"

namespace keydrift::test {
namespace {

// New couplets are no further leads of the couplet behind which they stand.
TEST(AmendAdded, CoupletsWithNumbersOfTheirOwnAreCouplets) {
  struct Case {
    std::string words;
    std::string label;
  };
  for (auto const& [words, label] :
       {Case{"Following couplet 2, add:\n9(2)", "9"}, Case{"Following couplet 2 add:\n9", "9"},
        Case{"Add the following to couplet 2:\n9(2)", "9"}, Case{"Add to couplet 2:\n2a", "2a"},
        Case{"At the end of the key add:\n9(2)", "9"},
        Case{"Add couplet 9 at the end of the key:\n9(2)", "9"},
        Case{"Im Anschluss an Punkt 2 ist anzufügen:\n9", "9"},
        Case{"An Punkt 2 ist anzuschließen:\n9", "9"},
        Case{"À la suite du couplet 2, ajouter :\n2bis.", "2bis"},
        Case{"A continuación del dilema 2, añadir:\n9", "9"},
        Case{"Em seguida ao passo 2, acrescentar:\n9", "9"}}) {
    auto const result =
        amended(small_key(), words + "  Feet pale ..... Aus cus\n–  Feet dark ..... Aus hus\n");
    EXPECT_EQ(couplet_in_short(result.edition, "2"),
              "2 (1): Legs pale > Aus bus | Legs dark > " + label + "\n")
        << words;
    EXPECT_EQ(couplet_in_short(result.edition, label),
              label + " (2): Feet pale > Aus cus | Feet dark > Aus hus\n")
        << words;
    EXPECT_EQ(told(result.unplaced), "") << words;
  }
}

// "… can be added to the key by changing couplet 2": the couplet is printed anew, with those that
// it leads to.
TEST(AmendAdded, ACoupletPrintedAnewIsReplaced) {
  for (std::string const words :
       {"Aus hus can be added to the key by changing couplet 2 as follows:\n",
        "Aus hus is added to couplet 2:\n"}) {
    auto const result = amended(small_key(), words +
                                                 "2(1) Legs white ..... Aus bus\n"
                                                 "–  Legs black ..... 2a\n"
                                                 "2a(2) Feet pale ..... Aus cus\n"
                                                 "–  Feet dark ..... Aus hus\n");
    EXPECT_EQ(couplet_in_short(result.edition, "2"),
              "2 (1): Legs white > Aus bus | Legs black > 2a\n")
        << words;
    EXPECT_EQ(couplet_in_short(result.edition, "2a"),
              "2a (2): Feet pale > Aus cus | Feet dark > Aus hus\n")
        << words;
    EXPECT_EQ(told(result.unplaced), "") << words;
  }
}

TEST(AmendAdded, LeadsOfTheCoupletAreLeads) {
  for (auto const* words : {"Add to couplet 2:\n–  Legs red ..... Aus ius\n",
                            "Add to couplet 2:\n2c. Legs red ..... Aus ius\n",
                            "Add to couplet 2:\n2  Legs red ..... Aus ius\n"}) {
    auto const result = amended(small_key(), words);
    EXPECT_EQ(couplet_in_short(result.edition, "2"),
              "2 (1): Legs pale > Aus bus | Legs dark > Aus cus | Legs red > Aus ius\n")
        << words;
  }
}

TEST(AmendAdded, TheGenusIsThatOfTheEdition) {
  auto const result = amended(
      "1  Wings clear ..... 2\n"
      "–  Wings dark ..... Dausia bus\n"
      "2  Legs pale ..... D. cus\n"
      "–  Legs dark ..... D. dus\n",
      "Die neuen Verhältnisse sind:\n"
      "2. Legs pale  D. rubra Hartung\n"
      "2*. Legs dark; Dausina-like  D. dus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"),
            "2: Legs pale > Dausia rubra | Legs dark; Dausina-like > Dausia dus\n");
  auto const inserted = amended(
      "1  Wings clear ..... Torvenia aus\n"
      "–  Wings dark ..... T. bus\n",
      "Insert after couplet 1:\n"
      "1a Tegula alba ..... T. alba Marsh\n"
      "–  Tegula flava ..... T. bus\n");
  EXPECT_EQ(couplet_in_short(inserted.edition, "1a"),
            "1a: Tegula alba > Torvenia alba | Tegula flava > Torvenia bus\n");
  EXPECT_EQ(told(inserted.remarks), "");
  auto const unknown = amended(small_key(),
                               "Tegula is new to the islands.\n\n"
                               "Insert after couplet 2:\n"
                               "2a Feet pale ..... Aus cus\n"
                               "–  Feet dark ..... T. alba Marsh\n");
  EXPECT_EQ(couplet_in_short(unknown.edition, "2a"),
            "2a (2): Feet pale > Aus cus | Feet dark > T. alba\n");
}

TEST(AmendAdded, LeadsMayBearLettersBehindTheNumberOfAnInsertedCouplet) {
  for (auto const& [before, after] :
       {std::pair{"2bis", "2bis"}, std::pair{"2’", "2’"}, std::pair{"2'", "2'"}}) {
    std::string const label = before;
    std::string const apart = label == "2bis" ? " " : "";
    auto const result = amended(small_key(), "Insert after couplet 2:\n" + label + apart +
                                                 "a. Feet pale ..... Aus cus\n" + label + apart +
                                                 "b. Feet dark ..... Aus hus\n");
    EXPECT_EQ(couplet_in_short(result.edition, "2"),
              std::string{"2 (1): Legs pale > Aus bus | Legs dark > "} + after + "\n");
    EXPECT_EQ(couplet_in_short(result.edition, after),
              after + std::string{" (2): Feet pale > Aus cus | Feet dark > Aus hus\n"});
    EXPECT_EQ(told(result.unplaced) + told(result.faults_made), "") << label;
  }
}

TEST(AmendAdded, WhatLeadsToSuchALeadLeadsToItsCouplet) {
  auto const result = amended(small_key(),
                              "Replace couplet 2 by the following two:\n"
                              "2a. Legs pale\t2’a\n"
                              "2b. Legs dark\tAus cus\n"
                              "2’a. Feet pale\tAus bus\n"
                              "2’b. Feet dark\tAus hus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"), "2 (1): Legs pale > 2’ | Legs dark > Aus cus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2’"),
            "2’ (2): Feet pale > Aus bus | Feet dark > Aus hus\n");
  EXPECT_EQ(told(result.unplaced), "");
}

TEST(AmendAdded, LeadsElsewhereOnlyToWhatIsAPlaceOrAName) {
  auto const result = amended(small_key(), "Lead 1b should lead to couplet 2 instead of 3.");
  EXPECT_EQ(couplet_in_short(result.edition, "1"), "1: Wings clear > 2 | Wings dark > 2\n");
  auto const refused = amended(small_key(), "Lead 1b leads to the couplets below.");
  EXPECT_EQ(couplet_in_short(refused.edition, "1"), "1: Wings clear > 2 | Wings dark > 3\n");
  EXPECT_EQ(refused.unplaced.size(), 1U);
}

}  // namespace
}  // namespace keydrift::test
