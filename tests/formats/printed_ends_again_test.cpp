// The ends of leads in print: in the order and with the marks in which they were printed.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

// The key in print, in wide lines.
std::string printed_anew(std::string_view text, PrintLayout layout = PrintLayout::parallel) {
  auto const edition = test::read_key(text).edition;
  auto const printed = print_key(edition, {.layout = layout, .width = 120});
  EXPECT_TRUE(printed) << text;
  return printed ? *printed.value : std::string{};
}

// How the end of a lead is printed that was printed so.
std::string end_of(std::string_view printed) {
  auto const text = printed_anew("Key to Ausella\n\n1. Body keeled ..... " + std::string{printed} +
                                 "\n– Body not keeled ..... 2\n2. Fins red ..... Ausella cusa\n"
                                 "– Fins blue ..... Ausella dusa\n");
  auto const line = text.find("Body keeled");
  auto const end = text.find('\n', line);
  auto const dots = text.rfind(".. ", end);
  return text.substr(dots + 3, end - dots - 3);
}

TEST(PrintedEndsAgain, KeepRemarksAsTheyWerePrinted) {
  for (auto const* printed :
       {"Ausella busa (in part)", "Ausella busa, in part", "Ausella busa (part)",
        "Ausella busa p.p.", "Ausella busa (males)", "Ausella busa (Plate 3, fig. 7)",
        "Ausella busa (fig. 4, p. 12)", "Ausella busa, fig. 7", "*Ausella busa", "†Ausella busa",
        "Ausella busa Roe [= A. testa Dorn]", "genus Ausella", "Subgenus Ausella",
        "see under Ausella", "Ausella busa. Upper Halver"}) {
    EXPECT_EQ(end_of(printed), printed);
  }
}

TEST(PrintedEndsAgain, KeepHowTaxaAreJoinedAndPutTheirNamesInFull) {
  EXPECT_EQ(end_of("Ausella busa, testa and minima"),
            "Ausella busa, Ausella testa and Ausella minima");
  EXPECT_EQ(end_of("A. busa Roe / testa"), "Ausella busa Roe / Ausella testa");
}

TEST(PrintedEndsAgain, KeepTheAuthorOfTheSpeciesBeforeALowerRank) {
  for (auto const* printed :
       {"Ausella busa Roe var. minor Dorn", "Ausella busa Roe subsp. testa (Dorn) Roe",
        "Ausella busa L. f. minima Roe", "Ausella busa Roe var. minor"}) {
    EXPECT_EQ(end_of(printed), printed);
  }
  EXPECT_EQ(end_of("A. busa Roe var. minor Dorn"), "Ausella busa Roe var. minor Dorn");
}

TEST(PrintedEndsAgain, LoseTheFullStopOfTheLeadOnly) {
  EXPECT_EQ(end_of("Ausella busa."), "Ausella busa");
  EXPECT_EQ(end_of("Ausella busa DC."), "Ausella busa DC.");
}

TEST(PrintedEndsAgain, KeepTheNumbersOfSpecies) {
  EXPECT_EQ(end_of("1. Ausella busa Roe"), "1. Ausella busa Roe");
  EXPECT_EQ(end_of("(2) Ausella busa"), "(2) Ausella busa");
}

TEST(PrintedEndsAgain, KeepTheGroupThatACoupletIsOf) {
  EXPECT_EQ(end_of("2 (Ausella group)"), "2 (Ausella group)");
  EXPECT_EQ(end_of("Ausella group, 2"), "Ausella group, 2");
}

TEST(PrintedEndsAgain, LeadToKeysInTheWordsOfTheEdition) {
  auto const text = printed_anew(
      "Key to the genera\n\n1. Body keeled ..... Ausella (Key B)\n"
      "– Body not keeled ..... Testella\n\nKey B. Species of Ausella\n\n"
      "1. Fins red ..... A. busa\n– Fins blue ..... A. cusa\n");
  EXPECT_NE(text.find(". Ausella (Key B)\n"), std::string::npos) << text;
}

TEST(PrintedEndsAgain, LeaveAShortGenusAsItStandsWhereNothingTellsIt) {
  for (auto const layout : {PrintLayout::parallel, PrintLayout::indented, PrintLayout::serial}) {
    auto const text = printed_anew(
        "1. Keeled ..... A. busa\n– Not keeled ..... 2\n2. Red ..... A. cusa\n– Blue ..... A. "
        "dusa\n",
        layout);
    EXPECT_NE(text.find(". A. busa\n"), std::string::npos) << text;
    EXPECT_EQ(text.find('"'), std::string::npos) << text;
  }
}

TEST(PrintedEndsAgain, PutNoWordBeforeNotesThatAnnounceThemselves) {
  auto const text = printed_anew(
      "1. Keeled ..... Ausella busa\n   Distribution: Upper Halver; Mill Brook.\n"
      "– Not keeled ..... 2\n   [Plate 12]\n2. Red ..... Ausella cusa\n"
      "– Blue ..... Ausella dusa\n   Note: rare.\n");
  EXPECT_NE(text.find("\n    Distribution: Upper Halver; Mill Brook.\n"), std::string::npos)
      << text;
  EXPECT_NE(text.find("\n    [Plate 12]\n"), std::string::npos) << text;
  EXPECT_NE(text.find("\n    Note: rare.\n"), std::string::npos) << text;
}

TEST(PrintedEndsAgain, PutNoWordBeforeTitlesThatReadBackWithout) {
  auto const text = printed_anew(
      "Key to the genera\n\n1. Keeled ..... Ausella (Key B)\n– Not keeled ..... 2\n"
      "2. Forked ..... Testella\n– Rounded ..... Nanella\n\nKey B. Species of Ausella\n\n"
      "1. Red ..... A. busa\n– Blue ..... A. cusa\n\nTestella: males\n"
      "1. Long ..... T. longa\n– Short ..... T. brevis\n"
      "Testella: females\n1. White ..... T. longa\n– Black ..... T. brevis\n");
  EXPECT_NE(text.find("\nTestella: females\n"), std::string::npos) << text;
  EXPECT_NE(text.find("\nKey B. Species of Ausella\n"), std::string::npos) << text;
  EXPECT_EQ(text.find("Key: "), std::string::npos) << text;
}

// Not beneath the last lead of the key above.
TEST(PrintedEndsAgain, LeaveWhatIsSaidOfAGenusBehindItsTitle) {
  auto const text = printed_anew(
      "KEY TO THE GENERA\n1. Wings present ..... 2\n   Wings absent ..... 3\n"
      "2. Eyes red ..... 1. Ausella Roe (p. 14)\n   Eyes blue ..... 2. Testella Roe (p. 22)\n"
      "3. Legs 6 ..... 3. Nanella Dorn (p. 30)\n   Legs 8 ..... 4. Longella Dorn (p. 41)\n\n"
      "1. AUSELLA Roe\nSmall fishes of rivers. Type: A. busa.\n"
      "1. Tail forked ..... 1. busa Roe\n   Tail rounded ..... 2. cusa Dorn\n");
  auto const title = text.find("\n1. AUSELLA Roe\n");
  auto const words = text.find("\nSmall fishes of rivers. Type: A. busa.\n");
  EXPECT_LT(title, words) << text;
  EXPECT_LT(words, text.find("Tail forked")) << text;
  EXPECT_NE(text.find(". 1. Ausella busa Roe\n"), std::string::npos) << text;
}

// Without what was printed, as other programs write it.
TEST(PrintedEndsAgain, LeaveAShortGenusOfTheInterchangeFormAsItStands) {
  auto const read =
      read_key_json({.name = "made",
                     .bytes = R"({"keydrift":1,"couplets":[{"label":"1","leads":[)"
                              R"({"text":"Keeled","destination":{"taxa":["A. busa"]}},)"
                              R"({"text":"Not keeled","destination":{"taxa":["A. cusa"]}}]}]})"});
  ASSERT_TRUE(read);
  auto const printed = print_key(*read.value, {});
  ASSERT_TRUE(printed);
  EXPECT_NE(printed.value->find(". A. busa\n"), std::string::npos) << *printed.value;
}

// "A. busa" would be taken for Ausella busa there.
TEST(PrintedEndsAgain, QuoteAShortGenusWhereAReaderWouldCompleteIt) {
  auto const text = printed_anew(
      "1. Keeled ..... \"A. busa\"\n– Not keeled ..... 2\n2. Red ..... Ausella cusa\n"
      "– Blue ..... Ausella dusa\n");
  EXPECT_NE(text.find("\"A. busa\""), std::string::npos) << text;
}

TEST(PrintedEndsAgain, FollowTheLastLeadersWhereLabelsAreExact) {
  EXPECT_EQ(test::sketch("Layout: parallel, exact\n\n"
                         "1. Style one . . . . . . I. Auseae ..... 2\n"
                         "– Styles free ..... Ausella busa\n\n"
                         "2. Fruit dry . . . . green weed, ..... Ausella cusa Roe\n"
                         "– Fruit moist ..... Ausella dusa\n"),
            "1[1] Style one . . . . . . I. Auseae -> 2\n"
            "1[–] Styles free -> Ausella busa\n"
            "2[2] Fruit dry . . . . green weed, -> Ausella cusa\n"
            "2[–] Fruit moist -> Ausella dusa\n");
}

}  // namespace
}  // namespace keydrift
