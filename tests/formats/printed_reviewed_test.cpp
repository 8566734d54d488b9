// What a reviewer broke the reader of printed keys with.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedReviewed, ALineMayHoldNothingButAnAccent) {
  EXPECT_EQ(sketch("Key to Ausella\n\n\u0301\n\n1. Wings clear ... A. busa\n"
                   "- Wings dark ... A. cusa\n"),
            "1[1] Wings clear -> Ausella busa\n1[-] Wings dark -> Ausella cusa\n");
}

TEST(PrintedReviewed, ASoftHyphenMayStandBehindAComma) {
  EXPECT_EQ(
      sketch("TABLE OF AUSELLA.—1. Wings clear, with a dark and a very pale band and, \u00AD\n"
             "2. — Wings dark all over but for the tips, which are pale, niger Roe. 2. Legs\n"
             "pale to the very tips, tristis Roe. — Legs dark all over but for the knees,\n"
             "which are pale and rather thick, pictus Roe.\n")
          .substr(0, 16),
      "1[1] Wings clear");
}

TEST(PrintedReviewed, AStepOfAnotherKeyIsFoundByItsLetter) {
  EXPECT_EQ(sketch("KEY A. Newts\n\nStep A1\n• Skin rough → Step A2\n• Skin smooth → Step B1\n"
                   "Step A2\n• Tail long → Aus bus\n• Tail short → Aus cus\n\n"
                   "KEY B. Toads\n\nStep B1\n• Toes webbed → Step B2\n• Toes free → Bus dus\n"
                   "Step B2\n• Eye red → Bus eus\n• Eye black → Bus fus\n"),
            "1[•] Skin rough -> 2\n1[•] Skin smooth -> 1\n2[•] Tail long -> Aus bus\n"
            "2[•] Tail short -> Aus cus\n1[•] Toes webbed -> 2\n1[•] Toes free -> Bus dus\n"
            "2[•] Eye red -> Bus eus\n2[•] Eye black -> Bus fus\n");
}

TEST(PrintedReviewed, ACountWithBisIsNoCouplet) {
  EXPECT_EQ(
      sketch("1. Dornen etwa\n2 bis 3 Längen entfernt ..... 2\n1* Dornen nahe ..... Ausa busa\n"
             "2. Beine hell ..... Ausa cusa\n2* Beine dunkel ..... Ausa dusa\n"),
      "1[1] Dornen etwa 2 bis 3 Längen entfernt -> 2\n1[1*] Dornen nahe -> Ausa busa\n"
      "2[2] Beine hell -> Ausa cusa\n2[2*] Beine dunkel -> Ausa dusa\n");
}

TEST(PrintedReviewed, AnAdjectiveAndANounAreNoName) {
  EXPECT_EQ(sketch("Schlüssel der Gattung Ausella\n\n1. Flügel klar ..... 2\n"
                   "- Flügel dunkel, breites Halsschild\n2. Beine hell ..... A. busa\n"
                   "- Beine dunkel ..... A. cusa\n"),
            "1[1] Flügel klar -> 2\n1[-] Flügel dunkel, breites Halsschild -> ?\n"
            "2[2] Beine hell -> Ausella busa\n2[-] Beine dunkel -> Ausella cusa\n");
}

TEST(PrintedReviewed, AGenusBeforeASpeciesIsNoCommonName) {
  EXPECT_EQ(sketch("1. Wings clear ..... Ausella, Busa cusa\n1. Wings dark ..... Ausella dusi\n"),
            "1[1] Wings clear -> Ausella + Busa cusa\n1[1] Wings dark -> Ausella dusi\n");
}

TEST(PrintedReviewed, CommonNamesKeepTheirAccents) {
  EXPECT_EQ(sketch("1. Alas claras ..... Mosca común\n1. Alas oscuras ..... Ausélla rubrá\n"),
            "1[1] Alas claras -> Mosca común\n1[1] Alas oscuras -> Ausella rubra\n");
}

TEST(PrintedReviewed, ABracketedVarietyEndsAtItsComma) {
  EXPECT_EQ(sketch("1. Wings clear ..... Ausella busa (var. cusa), Ausella dusa\n"
                   "1. Wings dark ..... Ausella eusa\n"),
            "1[1] Wings clear -> Ausella busa var. cusa + Ausella dusa\n"
            "1[1] Wings dark -> Ausella eusa\n");
}

TEST(PrintedReviewed, ADateIsNoName) {
  EXPECT_EQ(sketch("Schlüssel der Gattung Ausella\n\n1. Flügel klar ..... 2\n"
                   "- Flügel dunkel, fliegt ab 12. Juni Alpen\n2. Beine hell ..... A. busa\n"
                   "- Beine dunkel ..... A. cusa\n"),
            "1[1] Flügel klar -> 2\n1[-] Flügel dunkel, fliegt ab 12. Juni Alpen -> ?\n"
            "2[2] Beine hell -> Ausella busa\n2[-] Beine dunkel -> Ausella cusa\n");
}

TEST(PrintedReviewed, SubgeneraBeneathAGenusAreNoEpithets) {
  EXPECT_EQ(sketch("12. AUSELLA Roe.\n\nTabelle der Untergattungen\n\n"
                   "1. Flügel klar ..... Busella\n1. Flügel dunkel ..... 2\n"
                   "2. Beine hell ..... Cusella\n2. Beine dunkel ..... Dusella\n"),
            "1[1] Flügel klar -> Busella\n1[1] Flügel dunkel -> 2\n2[2] Beine hell -> Cusella\n"
            "2[2] Beine dunkel -> Dusella\n");
}

}  // namespace
}  // namespace keydrift
