// Which of two wordings is the right one, whatever their order.
#include <gtest/gtest.h>

#include <string>

#include "amendment_support.hpp"

namespace keydrift::test {
namespace {

std::string const kPaleToDark = "change 4: {pale} {dark}\n";

TEST(AmendmentDirection, TheRightWordsMayStandFirst) {
  for (auto const* words : {"In couplet 4 read \"dark\" and not \"pale\".",
                            "In couplet 4, read \"dark\", not \"pale\".",
                            "In couplet 4 it should be \"dark\" rather than \"pale\".",
                            "In couplet 4 the correct word is \"dark\" and not \"pale\".",
                            "Couplet 4: \"dark\", not \"pale\".",
                            "Couplet 4: \"dark\" instead of \"pale\".",
                            "In couplet 4, \"dark\" should have been printed instead of \"pale\".",
                            "In couplet 4 substitute \"dark\" for \"pale\".",
                            "In couplet 4 read \"dark\" for \"pale\".",
                            "In couplet 4 \"dark\" replaces \"pale\".",
                            "In Punkt 4 muss es „dark“ statt „pale“ heißen.",
                            "In Punkt 4 soll es „dark“ anstatt „pale“ heißen.",
                            "In Punkt 4 soll es „dark“ anstelle von „pale“ heißen.",
                            "Punkt 4: Es muß „dark“ heißen, nicht „pale“.",
                            "In Punkt 4 lies „dark“ und nicht „pale“.",
                            "In Punkt 4 heißt es richtig „dark“ statt „pale“.",
                            "In Punkt 4 ist „dark“ statt „pale“ zu lesen.",
                            "Punkt 4: „dark“, nicht „pale“.",
                            "In Punkt 4 ist durch „dark“ das Wort „pale“ zu ersetzen.",
                            "Couplet 4 : lire « dark » et non « pale ».",
                            "Couplet 4 : lire « dark » et non pas « pale ».",
                            "Lire au couplet 4 « dark » et non « pale ».",
                            "Couplet 4 : il faut lire « dark » à la place de « pale ».",
                            "En el dilema 4, léase «dark» y no «pale».",
                            "En el dilema 4, léase «dark», no «pale».",
                            "En el dilema 4 debe decir «dark» en vez de «pale».",
                            "No passo 4, leia-se «dark» e não «pale».",
                            "No passo 4 leia-se «dark» em vez de «pale».",
                            "In numero 4 lege «dark», non «pale».",
                            "In numero 4 lege «dark» pro «pale».",
                            "Nel punto 4 si legga «dark» e non «pale».",
                            "Nel punto 4 leggere «dark» invece di «pale»."}) {
    EXPECT_EQ(amendment_in_short(words), kPaleToDark) << words;
  }
}

TEST(AmendmentDirection, TheWrongWordsMayStandFirst) {
  for (auto const* words : {"In couplet 4 \"pale\" should read \"dark\".",
                            "In couplet 4 for \"pale\" read \"dark\".",
                            "In couplet 4 \"pale\" is a misprint for \"dark\".",
                            "In couplet 4 \"pale\" was printed in error for \"dark\".",
                            "In couplet 4 \"pale\" was printed instead of \"dark\".",
                            "In couplet 4 exchange \"pale\" for \"dark\".",
                            "In couplet 4 for \"pale\" substitute \"dark\".",
                            "In couplet 4 delete \"pale\" and insert \"dark\".",
                            "In couplet 4 the word \"pale\" should be replaced by \"dark\".",
                            "Couplet 4: \"pale\" → \"dark\".",
                            "In couplet 4, \"pale\" is not right, read \"dark\".",
                            "In Punkt 4 muss es statt „pale“ richtig „dark“ heißen.",
                            "In Punkt 4 ist statt „pale“ „dark“ zu lesen.",
                            "In Punkt 4 muss „pale“ „dark“ heißen.",
                            "Punkt 4: anstelle von „pale“ setze „dark“.",
                            "Punkt 4: nicht „pale“, sondern „dark“.",
                            "In Punkt 4 steht irrtümlich „pale“ statt „dark“.",
                            "Au couplet 4 on lit « pale » au lieu de « dark ».",
                            "Au couplet 4, « pale » doit être remplacé par « dark ».",
                            "En el dilema 4, donde dice «pale» debe decir «dark».",
                            "No passo 4, onde se lê «pale», leia-se «dark».",
                            "In numero 4 pro «pale» lege «dark»."}) {
    EXPECT_EQ(amendment_in_short(words), kPaleToDark) << words;
  }
}

// Guessing would put the misprint into the key.
TEST(AmendmentDirection, IsNotGuessed) {
  for (auto const* words :
       {"In couplet 4 replace \"pale\" for \"dark\".",
        "Couplet 4 reads \"pale\" instead of \"dark\".", "In couplet 4 read \"pale\" \"dark\".",
        "In couplet 4, \"pale\" and \"dark\" have to be changed."}) {
    EXPECT_EQ(amendment_in_short(words), "unread-instruction\n") << words;
  }
}

TEST(AmendmentDirection, AQuotationMayOnlySayWhere) {
  for (auto const* words : {"Couplet 4: in \"wings pale\", for pale read \"dark\".",
                            "Couplet 4: in \"wings pale\", replace \"pale\" by dark."}) {
    EXPECT_EQ(amendment_in_short(words), kPaleToDark) << words;
  }
}

}  // namespace
}  // namespace keydrift::test
