// Where in the key an instruction acts, when it says so between other words.
#include <gtest/gtest.h>

#include <string>

#include "amendment_support.hpp"
#include "keydrift/formats/amendment_reader.hpp"

namespace keydrift::test {
namespace {

TEST(AmendmentWhere, StandsBetweenTheVerbAndTheQuotation) {
  std::string const changed = "change 3: {pale} {dark}\n";
  for (auto const* words :
       {"Read in couplet 3: \"dark\" for \"pale\".",
        "Lisez au couplet 3 : « dark » au lieu de « pale ».",
        "Lisez, couplet 3, « dark » au lieu de « pale ».",
        "Lies in Schritt 3: „dark“ statt „pale“.", "Lege in 3: \"dark\" pro \"pale\".",
        "Leia-se no passo 3 \"dark\" em vez de \"pale\".",
        "Lea en 3: \"dark\" en lugar de \"pale\".", "Read in couplet 3: dark for pale."}) {
    EXPECT_EQ(amendment_in_short(words), changed) << words;
  }
}

TEST(AmendmentWhere, IsNotGuessedWhereQuotationsAreLeftOver) {
  for (auto const* words : {"Read in couplet 3: \"dark\" for \"pale\" and \"red\" for \"blue\".",
                            "Read in couplet 3: \"dark\", \"red\" for \"pale\".",
                            "In couplet 3, for \"pale\" or \"blue\" read \"dark\"."}) {
    EXPECT_EQ(amendment_in_short(words), "unread-instruction\n") << words;
  }
}

TEST(AmendmentWhere, ASentenceOfTwoChangesWithOneVerbIsSaid) {
  EXPECT_EQ(amendment_in_short("Couplet 3: \"Tail long\" should be \"Tail very long\", and "
                               "\"Tail short\" \"Tail very short\"."),
            "unread-instruction\n");
}

TEST(AmendmentWhere, QuotationMarksAreNoPartOfALead) {
  EXPECT_EQ(amendment_in_short("Lead 2 of couplet 4 should read \"Eyes whitish\".").find('"'),
            std::string::npos);
}

TEST(AmendmentWhere, StandsBeforeALeadOnTheSameLine) {
  std::string const replaced = "replace 3b: 3(1)\n";
  for (auto const* words :
       {"3b should read: Eyes small ........ Aus bus", "3b should read Eyes small ........ Aus bus",
        "3b muss lauten: Eyes small ........ Aus bus",
        "3b doit se lire : Eyes small ........ Aus bus",
        "3b is replaced by: Eyes small ........ Aus bus", "3b reads: Eyes small",
        "3b. should read: Eyes small ........ Aus bus",
        "3b: should read Eyes small ........ Aus bus",
        "3b (second lead) should read: Eyes small ........ Aus bus",
        "Lead 3b now reads as follows: Eyes small ........ Aus bus",
        "Lead 3b: Eyes small ........ Aus bus",
        "Couplet 3, second lead: Eyes small ........ Aus bus",
        "3b should read: Eyes small, as in\nall others ........ Aus bus"}) {
    EXPECT_EQ(amendment_in_short(words), replaced) << words;
  }
  auto const loaded =
      read_amendment({.name = "piece.txt", .bytes = "3b should read: Eyes small ... Aus bus\n"});
  ASSERT_TRUE(loaded);
  ASSERT_EQ(loaded.value->piece.couplets.size(), 1U);
  auto const& lead = loaded.value->piece.couplets[0].leads[0];
  EXPECT_EQ(lead.text, "Eyes small");
  EXPECT_EQ(place_in_text(lead, 0, 4).column, 17U);
}

TEST(AmendmentWhere, MayLeaveTheLeadOpenAndIsNotGuessedThen) {
  EXPECT_EQ(amendment_in_short("3 should read: Eyes small ........ Aus bus"),
            "unread-instruction\n");
  EXPECT_EQ(amendment_in_short("Couplet 3 should read: Eyes large ........ Aus bus\n"
                               "– Eyes small ........ Aus cus\n"),
            "replace 3: 3\n");
}

TEST(AmendmentWhere, NamesHalvesOfACouplet) {
  std::string const pieces =
      "\n– Eyes small ..... 4\n4. Legs red ..... Aus bus\n– Legs blue ..... Aus cus\n";
  for (auto const* words :
       {"Change the second half of couplet 3 to read:", "The second half of couplet 3 is modified:",
        "Die zweite Hälfte von Schritt 3 muss lauten:", "Der zweite Teil von Punkt 3 lautet:",
        "La seconde moitié du couplet 3 doit se lire :", "La segunda mitad del paso 3 debe decir:",
        "A segunda metade do passo 3 deve ler-se:"}) {
    EXPECT_EQ(amendment_in_short(words + pieces), "replace 3b: ?(1) 4\n") << words;
  }
  EXPECT_EQ(amendment_in_short("Change the first half of couplet 3 to read:" + pieces),
            "replace 3a: ?(1) 4\n");
}

TEST(AmendmentWhere, NamesALeadByItsNumberInTheCouplet) {
  for (auto const* words : {"Couplet 3, lead 2: for \"pale\" read \"dark\".",
                            "Couplet 3 lead 2: for \"pale\" read \"dark\".",
                            "Couplet 3, lead b: for \"pale\" read \"dark\".",
                            "In lead 2 of couplet 3, for \"pale\" read \"dark\"."}) {
    EXPECT_EQ(amendment_in_short(words), "change 3 lead 2: {pale} {dark}\n") << words;
  }
  EXPECT_EQ(amendment_in_short("In leads 3 and 4, for \"pale\" read \"dark\"."),
            "change 3: {pale} {dark}\nchange 4: {pale} {dark}\n");
}

TEST(AmendmentWhere, IsToldOfLeadsThatCouldNotBePlaced) {
  auto const loaded = read_amendment(
      {.name = "piece.txt",
       .bytes = "The tail of Aus bus: rounded or pointed ..... 4\n"
                "New couplet 4:\n4. Legs red ..... Aus bus\n– Legs blue ..... Aus cus\n"});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(in_short(*loaded.value), "new by number: 4\n");
  ASSERT_EQ(loaded.value->not_understood.size(), 1U);
  EXPECT_EQ(to_text(loaded.value->not_understood[0]),
            "piece.txt:1:1: error: this looks like a lead, and it is not known where it belongs "
            "[unplaced-lead]\n"
            "  The tail of Aus bus: rounded or pointed ..... 4\n"
            "  print the lead with its number: \"8b. Wings dark ..... 9\"\n");
}

TEST(AmendmentWhere, IsToldForEachInstructionOfASentence) {
  EXPECT_EQ(amendment_in_short("Errata. Couplet 2b: for \"pale\" read \"dark\"; couplet 3a: for "
                               "\"red\" read \"blue\"."),
            "change 2b: {pale} {dark}\nchange 3a: {red} {blue}\n");
  EXPECT_EQ(amendment_in_short("Errata. Couplet 2, second lead: for \"pale\" read \"dark\". Delete "
                               "couplet 9. Couplet 3: Aus bus should read Aus cus."),
            "change 2 lead 2: {pale} {dark}\nremove 9\nchange 3: {Aus bus} {Aus cus}\n");
  EXPECT_EQ(amendment_in_short("Delete couplet 3 and let lead 1b lead to Aus bus."),
            "remove 3\nredirect 1b: Aus bus\n");
  EXPECT_EQ(amendment_in_short("Let lead 1b lead to Aus bus and delete couplet 3."),
            "redirect 1b: Aus bus\nremove 3\n");
  EXPECT_EQ(amendment_in_short("Aus cus is a synonym of Aus bus; delete couplet 3."), "remove 3\n");
  EXPECT_EQ(amendment_in_short("Delete couplet 9. In couplet 3 replace \"a\" or \"b\" by \"c\"."),
            "remove 9\nunread-instruction\n");
  EXPECT_EQ(amendment_in_short("Modify 3b to lead to couplet 4, and add:\n4. Legs red ..... Aus "
                               "bus\n– Legs blue ..... Aus cus\n"),
            "redirect 3b: 4\nby number: 4\n");
}

}  // namespace
}  // namespace keydrift::test
