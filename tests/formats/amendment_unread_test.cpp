// Sentences that ask for a change: done, or told as not understood; never passed over.
#include <gtest/gtest.h>

#include <string>

#include "amendment_support.hpp"

namespace keydrift::test {
namespace {

std::string const kNine = "remove 9\n";

TEST(AmendmentUnread, SentencesThatBeginWithACoupletAreToldWhereTheyAreNotUnderstood) {
  for (std::string const words :
       {"Couplet 10: transpose the two leads.", "Couplet 10: the two leads should be interchanged.",
        "Couplet 12a: the pterostigma is brown, not pale.",
        "In couplet 10 the species names have been transposed.",
        "In couplet 12, \"pale\" and \"brown\" are to be interchanged.",
        "Swap the leads of couplet 10.", "Lead 12a is wrong.", "Lead 3b keys out elsewhere now.",
        "Im Punkt 10 sind die beiden Alternativen zu vertauschen.",
        "Au couplet 10, intervertir les deux propositions.",
        "Transponer las dos alternativas del dilema 10.", "Trocar as duas entradas do passo 10.",
        "Couplets 8–13 are renumbered."}) {
    EXPECT_EQ(amendment_in_short("Delete couplet 9.\n\n" + words + "\n"),
              kNine + "unread-instruction\n")
        << words;
    EXPECT_EQ(amendment_in_short("Delete couplet 9. " + words + "\n"),
              kNine + "unread-instruction\n")
        << words;
  }
}

TEST(AmendmentUnread, WhatTellsOfTheKeyAsksForNothing) {
  for (std::string const words :
       {"Aus gus will run to couplet 3 in the key of Smith (1998).",
        "Modifications to the key. Aus gus runs to couplet 3, where it is told apart as follows:",
        "Aus gus keys out at couplet 3, where it is told apart by its tail.",
        "The new species is similar to those of couplet 3.", "Errata to the key of Smith (1998)",
        "The remainder of the key is unchanged.", "Corrections to the key, 3 pages."}) {
    EXPECT_EQ(amendment_in_short(words + "\n\nDelete couplet 9.\n"), kNine) << words;
  }
}

TEST(AmendmentUnread, LeadsMayKeyOrRunToAPlace) {
  EXPECT_EQ(amendment_in_short("Delete couplet 4. Lead 3b now keys to Aus bus."),
            "remove 4\nredirect 3b: Aus bus\n");
  for (auto const* words :
       {"Lead 3b now keys to Aus bus.", "Couplet 3b runs to Aus bus.", "Lead 3b keys to Aus bus.",
        "Lead 3b should lead to Aus bus instead of 4.", "Lead 3b now runs to Aus bus."}) {
    EXPECT_EQ(amendment_in_short(words), "redirect 3b: Aus bus\n") << words;
  }
}

TEST(AmendmentUnread, TheCoupletThatALeadLeadsToIsItsNumber) {
  for (auto const* words :
       {"Lead 8b should lead to couplet 12 instead of 11.", "Couplet 8b should lead to couplet 12.",
        "Couplet 8b should lead to couplet 12 (not 11).", "Lead 8b should lead to 12, not to 11.",
        "Lead 8b should lead to 12 and not to 11.", "Lead 8b leads to a new couplet 12."}) {
    auto const told = amendment_in_short(words);
    EXPECT_TRUE(told == "redirect 8b: 12\n" || told == "unread-instruction\n") << words << told;
  }
  EXPECT_EQ(amendment_in_short("Lead 8b should lead to couplet 12 instead of 11."),
            "redirect 8b: 12\n");
  for (auto const* words : {"Couplet 8b should lead to couplet 12 (not 11).",
                            "Lead 8b should lead to couplet 12 rather than to couplet 11."}) {
    EXPECT_EQ(amendment_in_short(words), "redirect 8b: 12\n") << words;
  }
  EXPECT_EQ(amendment_in_short("The second lead of couplet 7 should lead to a new couplet 14:\n"
                               "14(7) Vertex smooth ..... Aus bus\n"
                               "–   Vertex striate ..... Aus cus\n"),
            "redirect 7 lead 2: 14\nnew by number: 14\n");
}

TEST(AmendmentUnread, PairsThatShareAVerb) {
  EXPECT_EQ(
      amendment_in_short("In couplet 3 replace \"pale\" by \"dark\" and \"red\" by \"blue\"."),
      "change 3: {pale} {dark}\nchange 3: {red} {blue}\n");
  EXPECT_EQ(
      amendment_in_short("In Punkt 3 ersetze „spitz“ durch „stumpf“ und „rund“ durch „eckig“."),
      "change 3: {spitz} {stumpf}\nchange 3: {rund} {eckig}\n");
}

}  // namespace
}  // namespace keydrift::test
