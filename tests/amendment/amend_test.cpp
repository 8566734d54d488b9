// Couplets replaced, inserted, removed and added.
#include <gtest/gtest.h>

#include <algorithm>

#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "support.hpp"

namespace keydrift::test {
namespace {

TEST(Amend, InsertsACoupletAndLeadsToItWhatLedWhereItLeads) {
  auto const result = amended(small_key(),
                              "3a (3)  Antennae long ..... 4\n"
                              "–       Antennae short ..... Bus gus\n");
  EXPECT_EQ(key_in_short(result.edition),
            "1: Wings clear > 2 | Wings dark > 3\n"
            "2 (1): Legs pale > Aus bus | Legs dark > Aus cus\n"
            "3 (1): Head red > 3a | Head blue > Bus dus\n"
            "3a (3): Antennae long > 4 | Antennae short > Bus gus\n"
            "4 (3a): Tail long; 4 setae > Bus eus | Tail short > Bus fus\n");
  EXPECT_EQ(deeds_in_short(result),
            "redirected 3: because couplet 3a was inserted\n"
            "inserted 3a: behind couplet 3\n"
            "back-references 4: now reached from 3a\n");
  EXPECT_EQ(told(result.unplaced), "");
  EXPECT_EQ(told(result.faults_made), "");
  EXPECT_EQ(result.deeds[0].before, (std::vector<LeadAsPrinted>{{"3a", "Head red", "4"}}));
  EXPECT_EQ(result.deeds[0].after, (std::vector<LeadAsPrinted>{{"3a", "Head red", "3a"}}));
}

TEST(Amend, InsertsACoupletBeforeATaxonThatItDivides) {
  auto const result = amended(small_key(),
                              "Insert after couplet 2:\n"
                              "2'  Feet pale ..... A. cus\n"
                              "–   Feet dark ..... A. hus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"), "2 (1): Legs pale > Aus bus | Legs dark > 2'\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2'"),
            "2' (2): Feet pale > Aus cus | Feet dark > Aus hus\n");
  EXPECT_EQ(told(result.unplaced) + told(result.remarks) + told(result.faults_made), "");
}

TEST(Amend, LeadsWhatLedToACoupletToTheOneInsertedBeforeIt) {
  auto const result = amended(small_key(),
                              "Before couplet 1 insert:\n"
                              "0  Wings present ..... 1\n"
                              "–  Wings absent ..... Aus ius\n");
  EXPECT_EQ(result.edition.couplets.front().label, "0");
  EXPECT_EQ(result.edition.parts.front().start, CoupletId{0});
  EXPECT_EQ(couplet_in_short(result.edition, "1"), "1 (0): Wings clear > 2 | Wings dark > 3\n");
  EXPECT_EQ(told(result.unplaced) + told(result.faults_made), "");
}

TEST(Amend, ReplacesACoupletAndKeepsWhatThePieceDoesNotPrint) {
  auto const result = amended(small_key(),
                              "Couplet 3 of the key should read\n"
                              "3.  Head entirely red ..... 4\n"
                              "–   Head blue or green\n");
  EXPECT_EQ(couplet_in_short(result.edition, "3"),
            "3 (1): Head entirely red > 4 | Head blue or green > Bus dus\n");
  EXPECT_EQ(told(result.remarks),
            "piece.txt:3:1: information: the piece prints no destination for lead 3b; it leads to "
            "Bus dus as before [destination-looked-up]\n"
            "  Head blue or green\n");
  EXPECT_EQ(deeds_in_short(result), "replaced 3\n");
  EXPECT_EQ(result.deeds[0].before[1].destination, "Bus dus");
  EXPECT_EQ(result.deeds[0].printed, "Couplet 3 of the key should read");
  EXPECT_EQ(result.deeds[0].place.line, 1U);
}

TEST(Amend, ReplacesARangeByMoreOrFewerCouplets) {
  auto const more = amended(small_key(),
                            "Couplets 3–4 are replaced by the following:\n"
                            "3   Head red ..... 3a\n"
                            "–   Head blue ..... Bus dus\n"
                            "3a  Tail long ..... Bus eus\n"
                            "–   Tail short ..... 4\n"
                            "4   Feet red ..... Bus fus\n"
                            "–   Feet blue ..... Bus gus\n");
  EXPECT_EQ(key_in_short(more.edition),
            "1: Wings clear > 2 | Wings dark > 3\n"
            "2 (1): Legs pale > Aus bus | Legs dark > Aus cus\n"
            "3 (1): Head red > 3a | Head blue > Bus dus\n"
            "3a (3): Tail long > Bus eus | Tail short > 4\n"
            "4 (3a): Feet red > Bus fus | Feet blue > Bus gus\n");
  auto const fewer = amended(small_key(),
                             "Replace couplets 3–4 by:\n"
                             "3  Tail long ..... Bus eus\n"
                             "–  Tail short ..... Bus dus\n");
  EXPECT_EQ(key_in_short(fewer.edition),
            "1: Wings clear > 2 | Wings dark > 3\n"
            "2 (1): Legs pale > Aus bus | Legs dark > Aus cus\n"
            "3 (1): Tail long > Bus eus | Tail short > Bus dus\n");
  EXPECT_EQ(fewer.edition.taxa.size(), 4U);
  EXPECT_EQ(told(more.unplaced) + told(fewer.unplaced), "");
  EXPECT_EQ(told(more.faults_made) + told(fewer.faults_made), "");
}

TEST(Amend, LeadsToTheFirstNewCoupletWhatLedToTheFirstOld) {
  auto const result = amended(small_key(),
                              "Replace couplets 2 by:\n"
                              "2a  Feet red ..... 2b\n"
                              "2a' Feet blue ..... Aus bus\n"
                              "2b  Feet long ..... Aus cus\n"
                              "2b' Feet short ..... Aus gus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "1"), "1: Wings clear > 2a | Wings dark > 3\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"), "none");
  EXPECT_EQ(couplet_in_short(result.edition, "2a"),
            "2a (1): Feet red > 2b | Feet blue > Aus bus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2b"),
            "2b (2a): Feet long > Aus cus | Feet short > Aus gus\n");
  EXPECT_EQ(told(result.unplaced), "");
}

TEST(Amend, ReplacesOneLeadOnly) {
  auto const by_label = amended(small_key(), "3b. Head blue or green ..... Bus gus\n");
  EXPECT_EQ(couplet_in_short(by_label.edition, "3"),
            "3 (1): Head red > 4 | Head blue or green > Bus gus\n");
  auto const by_words = amended(small_key(), "Lead 3a should read:\n3. Head red, hairy ..... 4\n");
  EXPECT_EQ(couplet_in_short(by_words.edition, "3"),
            "3 (1): Head red, hairy > 4 | Head blue > Bus dus\n");
  EXPECT_EQ(by_words.deeds[0].before, (std::vector<LeadAsPrinted>{{"3a", "Head red", "4"}}));
}

TEST(Amend, AddsALeadAndANote) {
  auto const result = amended(small_key(),
                              "Add to couplet 2:\n"
                              "–  Legs red ..... Aus gus\n"
                              "\n"
                              "Add to couplet 3: ‘the head fades in alcohol’\n"
                              "Add to lead 4b: ‘except in Bus hus’\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"),
            "2 (1): Legs pale > Aus bus | Legs dark > Aus cus | Legs red > Aus gus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "3"),
            "3 (1): Head red > 4 | Head blue > Bus dus {{the head fades in alcohol}}\n");
  EXPECT_EQ(couplet_in_short(result.edition, "4"),
            "4 (3): Tail long; 4 setae > Bus eus | Tail short except in Bus hus > Bus fus\n");
  EXPECT_EQ(told(result.unplaced), "");
}

TEST(Amend, SaysWhatARemovedCoupletLeavesBehind) {
  auto const result = amended(small_key(), "Delete couplet 4.\n");
  EXPECT_EQ(couplet_in_short(result.edition, "4"), "none");
  EXPECT_EQ(couplet_in_short(result.edition, "3"), "3 (1): Head red > ?4 | Head blue > Bus dus\n");
  EXPECT_EQ(told(result.unplaced), "");
  ASSERT_EQ(result.faults_made.size(), 1U);
  EXPECT_EQ(result.faults_made[0].code, "dangling-couplet");
  EXPECT_EQ(result.faults_made[0].file, "key.txt");
  EXPECT_EQ(result.faults_made[0].place.line, 8U);

  auto const mended = amended(small_key(), "Delete couplet 4; lead 3a leads to Bus eus.\n");
  EXPECT_EQ(couplet_in_short(mended.edition, "3"),
            "3 (1): Head red > Bus eus | Head blue > Bus dus\n");
  EXPECT_EQ(told(mended.faults_made), "");
}

TEST(Amend, RemovesALead) {
  auto const key =
      "1  Wings red ..... Aus bus\n1  Wings blue ..... Aus cus\n1  Wings green ..... Aus dus\n";
  auto const result = amended(key, "Delete the second lead of couplet 1.\n");
  EXPECT_EQ(key_in_short(result.edition), "1: Wings red > Aus bus | Wings green > Aus dus\n");
  EXPECT_EQ(result.deeds[0].before[0].text, "Wings blue");
}

TEST(Amend, SaysWhatItCannotPlaceAndWhatIsNear) {
  auto const result = amended(small_key(),
                              "17a  Wings red ..... Aus gus\n"
                              "–    Wings blue ..... Aus hus\n"
                              "\n"
                              "Delete couplet 9.\n"
                              "Couplet 3: for 'Thorax' read 'Body'\n"
                              "Couplet 3: for 'Tail' read 'Body'\n"
                              "Couplet 4: for 'Tail' read 'Body'\n");
  EXPECT_EQ(key_in_short(result.edition), key_in_short(read_key(small_key())));
  EXPECT_EQ(told(result.unplaced),
            "piece.txt:1:1: error: this could not be placed: the edition has no couplet 17 "
            "[no-such-couplet]\n"
            "  Wings red\n"
            "  the last couplet is 4\n"
            "piece.txt:4:1: error: this could not be placed: the edition has no couplet 9 "
            "[no-such-couplet]\n"
            "  Delete couplet 9.\n"
            "  the last couplet is 4\n"
            "piece.txt:5:1: error: \"Thorax\" does not stand in 3 [words-not-found]\n"
            "  Couplet 3: for 'Thorax' read 'Body'\n"
            "  look at the words as the edition prints them\n"
            "piece.txt:6:1: error: \"Tail\" does not stand in 3 [words-not-found]\n"
            "  Couplet 3: for 'Tail' read 'Body'\n"
            "  they stand in 4a and 4b\n"
            "piece.txt:7:1: error: \"Tail\" stands 2 times where this may mean it: 4a and 4b "
            "[words-found-several-times]\n"
            "  Couplet 4: for 'Tail' read 'Body'\n"
            "  name the lead, quote more of its words, or say \"throughout\"\n");
}

TEST(Amend, SaysWhichLeadsCouldLeadToAnInsertedCouplet) {
  auto const result = amended(small_key(),
                              "Insert after couplet 2:\n"
                              "2a  Feet pale ..... Bus eus\n"
                              "–   Feet dark ..... Bus dus\n");
  ASSERT_EQ(result.unplaced.size(), 1U);
  EXPECT_EQ(to_text(result.unplaced[0]),
            "piece.txt:2:1: error: couplet 2a was inserted, but several leads could lead to it, "
            "and none does [unlinked-couplet]\n"
            "  Feet pale\n"
            "  say which of the leads 3b and 4a leads to it\n");
  auto const unreachable =
      std::find_if(result.faults_made.begin(), result.faults_made.end(),
                   [](Finding const& one) { return one.code == "unreachable-couplet"; });
  ASSERT_NE(unreachable, result.faults_made.end());
  EXPECT_EQ(unreachable->file, "piece.txt");
  EXPECT_EQ(unreachable->place.line, 2U);
}

TEST(Amend, FollowsTheFirstOfConflictingInstructions) {
  auto const result = amended(small_key(),
                              "Couplet 2 should read:\n"
                              "2  Legs red ..... Aus bus\n"
                              "–  Legs blue ..... Aus cus\n"
                              "Replace couplet 2 by:\n"
                              "2  Legs green ..... Aus bus\n"
                              "–  Legs grey ..... Aus cus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"),
            "2 (1): Legs red > Aus bus | Legs blue > Aus cus\n");
  EXPECT_EQ(told(result.unplaced),
            "piece.txt:4:1: error: couplet 2 has been dealt with before; the first instruction was "
            "followed, this one was not [conflicting-instructions]\n"
            "  Replace couplet 2 by:\n"
            "  piece.txt:1:1: Couplet 2 should read:\n"
            "  keep the one that is meant\n");
}

TEST(Amend, GivesAnotherNumberToAnInsertedCoupletWhoseNumberIsTaken) {
  auto const result = amended(small_key(),
                              "Insert after couplet 3:\n"
                              "4  Antennae long ..... 3\n"
                              "–  Antennae short ..... Bus dus\n");
  EXPECT_EQ(told(result.remarks),
            "piece.txt:2:1: warning: the edition has a couplet 4 already; the one inserted was "
            "numbered 3a [number-taken]\n"
            "  4\n"
            "  give the couplet a number that is free, or say which one it replaces\n");
  EXPECT_EQ(result.edition.couplets[3].label, "3a");
  EXPECT_EQ(result.edition.couplets[4].label, "4");
}

TEST(Amend, AppliesPiecesOneAfterTheOther) {
  std::vector<Amendment> const pieces{
      read_piece("3a (3)  Antennae long ..... 4\n–  Antennae short ..... Bus gus\n", "first.txt"),
      read_piece("Couplet 3a: for 'long' read 'thick'\nDelete couplet 12.\n", "second.txt")};
  auto const result = amend(read_key(small_key()), pieces);
  EXPECT_EQ(couplet_in_short(result.edition, "3a"),
            "3a (3): Antennae thick > 4 | Antennae short > Bus gus\n");
  ASSERT_EQ(result.unplaced.size(), 1U);
  EXPECT_EQ(result.unplaced[0].file, "second.txt");
}

TEST(Amend, TakesTheLabelOfThePieceOrSaysInANoteThatItAmended) {
  auto const labelled = amended(small_key(),
                                "Title: Corrections\nEdition: 2003\nYear: 2003\nAmends: 1998\n\n"
                                "Couplet 2: for 'Legs pale' read 'Legs red'\n");
  EXPECT_EQ(labelled.edition.front.edition, "2003");
  EXPECT_EQ(labelled.edition.front.title, "Key to Aus and Bus");
  EXPECT_TRUE(labelled.edition.notes.empty());
  EXPECT_EQ(told(labelled.remarks), "");

  auto const unlabelled =
      amended(small_key(), "Amends: 1974\nTitle: x\n\nCouplet 2: for 'pale' read 'red'\n");
  EXPECT_EQ(unlabelled.edition.front.edition, "1998");
  ASSERT_EQ(unlabelled.edition.notes.size(), 1U);
  EXPECT_EQ(unlabelled.edition.notes[0].text, "Amended in couplet 2.");
  auto const printed = print_key(unlabelled.edition).value.value_or("");
  EXPECT_TRUE(printed.ends_with("\n\nAmended in couplet 2.\n")) << printed;
  EXPECT_TRUE(same_content(read_key(printed), unlabelled.edition));
  EXPECT_EQ(told(unlabelled.remarks),
            "piece.txt:1:1: warning: the piece says that it amends \"1974\", and the edition given "
            "is \"1998\" [amends-another-edition]\n"
            "  1974\n"
            "  give the edition that the piece was written for\n");
}

TEST(Amend, KeepsFaultsApartByWhoMadeThem) {
  auto const key =
      "1      Wings clear ..... 2\n"
      "–      Wings dark ..... 9\n"
      "2 (7)  Legs pale ..... Aus bus\n"
      "–      Legs dark ..... Aus cus\n";
  auto const result = amended(key,
                              "Lead 1b leads to Aus dus.\n"
                              "Couplet 2 should read:\n"
                              "2  Legs pale ..... Aus bus\n"
                              "–  Legs pale ..... 11\n");
  std::vector<std::string> made;
  for (auto const& one : result.faults_made) made.push_back(one.code);
  EXPECT_EQ(made, (std::vector<std::string>{"same-text", "dangling-couplet"}));
  ASSERT_EQ(result.faults_mended.size(), 1U);
  EXPECT_EQ(result.faults_mended[0].code, "dangling-couplet");
  ASSERT_EQ(result.faults_lasting.size(), 1U);
  EXPECT_EQ(result.faults_lasting[0].code, "dangling-back-reference");
}

TEST(Amend, DoesNotBlameThePieceForFaultsWhoseWordsItChanged) {
  auto const key =
      "1  Wings clear ..... Aus bus\n–  Wings dark ..... Aus cus\n–  Wings red ..... 9\n";
  auto const result = amended(key, "Couplet 1, third lead: for 9 read 11.\n");
  ASSERT_EQ(result.unplaced.size(), 1U);
  auto const other = amended(key, "Couplet 1: for 'Wings red' read 'Wings green'.\n");
  EXPECT_EQ(told(other.faults_made), "");
  EXPECT_EQ(told(other.faults_mended), "");
}

constexpr std::string_view kTwoKeys =
    "Key A: adults\n\n"
    "1  Wings clear ..... 2\n–  Wings dark ..... Key B\n"
    "2  Legs pale ..... Aus bus\n–  Legs dark ..... Aus cus\n\n"
    "Key B: larvae\n\n"
    "1  Hairs long ..... Aus dus\n–  Hairs short ..... Aus eus\n";

TEST(Amend, SaysThatSeveralKeysHaveTheNumber) {
  auto const result = amended(kTwoKeys, "Couplet 1: for 'Wings dark' read 'Wings black'.\n");
  EXPECT_EQ(told(result.unplaced),
            "piece.txt:1:1: error: several keys of the edition have a couplet 1 "
            "[ambiguous-couplet]\n"
            "  Couplet 1: for 'Wings dark' read 'Wings black'.\n"
            "  amend a file that holds the one key only\n");
}

TEST(Amend, KeepsTheKeysOfAFileApart) {
  auto const result = amended(kTwoKeys,
                              "2a (2)  Feet red ..... Aus cus\n"
                              "–       Feet blue ..... Aus fus\n");
  ASSERT_EQ(result.edition.parts.size(), 2U);
  EXPECT_EQ(result.edition.parts[1].start, CoupletId{3});
  EXPECT_EQ(couplet_in_short(result.edition, "2"), "2: Legs pale > Aus bus | Legs dark > 2a\n");
  EXPECT_EQ(told(result.unplaced) + told(result.faults_made), "");
}

TEST(Renumber, CountsTheCoupletsOfEachKeyAndKeepsWhatTheyLeadTo) {
  auto result = amended(small_key(),
                        "1a (1)  Antennae long ..... 2\n"
                        "–       Antennae short ..... Aus gus\n");
  auto const changed = renumber(result.edition);
  EXPECT_EQ(key_in_short(result.edition),
            "1: Wings clear > 2 | Wings dark > 4\n"
            "2 (1): Antennae long > 3 | Antennae short > Aus gus\n"
            "3 (2): Legs pale > Aus bus | Legs dark > Aus cus\n"
            "4 (1): Head red > 5 | Head blue > Bus dus\n"
            "5 (4): Tail long; 4 setae > Bus eus | Tail short > Bus fus\n");
  EXPECT_EQ(changed, (std::vector<std::pair<std::string, std::string>>{
                         {"1a", "2"}, {"2", "3"}, {"3", "4"}, {"4", "5"}}));
  EXPECT_TRUE(renumber(result.edition).empty());
}

TEST(Amend, SaysWhenAPieceSharesNothingWithTheEdition) {
  std::string const wrong =
      "1  Blätter kahl ..... 2\n"
      "–  Blätter behaart ..... Gus hus\n"
      "2  Krone blau ..... Gus ius\n"
      "–  Krone gelb ..... Gus kus\n";
  auto const result = amended(small_key(), wrong);
  EXPECT_EQ(told(result.remarks),
            "piece.txt:1:1: warning: no word and no name of these couplets stands in the edition "
            "[shares-nothing]\n"
            "  see whether the piece was written for this edition\n");
  auto const by_name =
      amended(small_key(), wrong + "3  Krone rot ..... Aus gus\n–  Krone blass ..... Bus dus\n");
  EXPECT_EQ(told(by_name.remarks), "");
  auto const by_word =
      amended(small_key(), wrong + "3  Wings red ..... Gus lus\n–  Krone blass ..... Gus mus\n");
  EXPECT_EQ(told(by_word.remarks), "");
}

}  // namespace
}  // namespace keydrift::test
