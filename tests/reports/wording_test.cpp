#include "keydrift/reports/wording.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "sample.hpp"

namespace keydrift::reports {
namespace {

using test::make_sample;

TEST(Words, NumbersAreGroupedByThousands) {
  EXPECT_EQ(grouped(0), "0");
  EXPECT_EQ(grouped(999), "999");
  EXPECT_EQ(grouped(1000), "1,000");
  EXPECT_EQ(grouped(1234567), "1,234,567");
}

TEST(Words, CountsAgreeWithTheirNouns) {
  EXPECT_EQ(counted(1, "lead"), "1 lead");
  EXPECT_EQ(counted(0, "lead"), "0 leads");
  EXPECT_EQ(counted(2, "taxon", "taxa"), "2 taxa");
}

TEST(Words, SharesNeverRoundSomeToNoneOrMostToAll) {
  EXPECT_EQ(share(1, 3), "33.3 %");
  EXPECT_EQ(share(0, 3), "0.0 %");
  EXPECT_EQ(share(3, 3), "100.0 %");
  EXPECT_EQ(share(1, 100000), "< 0.1 %");
  EXPECT_EQ(share(99999, 100000), "> 99.9 %");
  EXPECT_EQ(share(0, 0), "–");
}

TEST(Words, ManyNamesAreCutToThree) {
  EXPECT_EQ(few_names(""), "");
  EXPECT_EQ(few_names("Aus bus"), "Aus bus");
  EXPECT_EQ(few_names("A a | A b | A c | A d"), "A a | A b | A c | A d");
  EXPECT_EQ(few_names("A a | A b | A c | A d | A e"), "A a | A b | A c and 2 more");
}

TEST(Words, ListsAreEnumeratedAsInASentence) {
  std::vector<std::string> const items{"a", "b", "c"};
  EXPECT_EQ(enumerated({items.data(), 0}), "");
  EXPECT_EQ(enumerated({items.data(), 1}), "a");
  EXPECT_EQ(enumerated({items.data(), 2}), "a and b");
  EXPECT_EQ(enumerated(items, "or"), "a, b or c");
}

TEST(Words, SentencesEndInOneStop) {
  EXPECT_EQ(sentence("so it is"), "so it is.");
  EXPECT_EQ(sentence("did you mean \"3\"?"), "did you mean \"3\"?");
  EXPECT_EQ(capitalised("écaille"), "Écaille");
}

TEST(EditionNames, FallBackToOldAndNewWhereTheLabelsAreTheSame) {
  auto sample = make_sample();
  EXPECT_EQ(edition_names(sample.old_edition, sample.new_edition).new_name, "2003");
  sample.new_edition.front.edition = "1968";
  auto const names = edition_names(sample.old_edition, sample.new_edition);
  EXPECT_EQ(names.old_name, "old edition");
  EXPECT_EQ(names.new_name, "new edition");
}

TEST(Destinations, AreNamedAsPrintedOrAsResolved) {
  auto sample = make_sample();
  auto& lead = sample.old_edition.couplets[0].leads[0];
  EXPECT_EQ(destination_words(sample.old_edition, lead), "2");
  lead.destination_printed = "2, p. 7";
  EXPECT_EQ(printed_destination(sample.old_edition, lead), "2, p. 7");
  lead.destination = ToTaxa{{TaxonId{0}, TaxonId{1}}};
  EXPECT_EQ(destination_words(sample.old_edition, lead), "Orla major, Orla minor");
  lead.destination = ToKey{"Key B"};
  EXPECT_EQ(destination_words(sample.old_edition, lead), "Key B");
  lead.destination = Unresolved{"27"};
  EXPECT_EQ(destination_words(sample.old_edition, lead), "27");
}

TEST(CharacterLabels, NameOpaqueCharactersByTheirWords) {
  std::vector<CharacterUse> const uses{{"beak", "tip of the beak", false, {}, {}},
                                       {"~legs hairy", "legs hairy", true, {}, {}}};
  CharacterLabels const label{uses};
  EXPECT_EQ(label("beak"), "tip of the beak");
  EXPECT_EQ(label("~legs hairy"), "“legs hairy”");
  EXPECT_EQ(label("~unknown words"), "“unknown words”");
  EXPECT_EQ(label("other"), "other");
}

TEST(Marks, AreTypographicAndTellTheWeightiestFirst) {
  CoupletChange change;
  change.events = {CoupletEvent::renumbered, CoupletEvent::restated, CoupletEvent::moved,
                   CoupletEvent::lead_added, CoupletEvent::lead_dropped};
  EXPECT_EQ(marks_of(change), "*†§");
  change.events = {CoupletEvent::renumbered, CoupletEvent::reworded};
  EXPECT_EQ(marks_of(change), "·");
  change.events = {CoupletEvent::kept};
  EXPECT_EQ(marks_of(change), "");
  change.events = {CoupletEvent::split};
  EXPECT_EQ(marks_of(change), "¶");
}

TEST(Marks, StandInTheLegend) {
  for (auto event = static_cast<int>(CoupletEvent::renumbered);
       event <= static_cast<int>(CoupletEvent::removed); ++event) {
    auto const mark = mark_of(static_cast<CoupletEvent>(event));
    auto const legend = mark_legend();
    EXPECT_TRUE(std::any_of(legend.begin(), legend.end(), [&](MarkMeaning const& entry) {
      return entry.mark == mark;
    })) << to_word(static_cast<CoupletEvent>(event));
  }
}

TEST(Couplets, AreNamedByTheirEditions) {
  auto const sample = make_sample();
  auto const words = [&](std::size_t i) {
    return couplets_in_words(sample.collation.couplets[i], sample.old_edition, sample.new_edition);
  };
  EXPECT_EQ(words(0), "couplet 1 of both editions");
  EXPECT_EQ(words(2), "couplet 3 of 2003");
  EXPECT_EQ(words(3), "couplet 3 of 1968, couplet 4 of 2003");
  EXPECT_EQ(words(5), "couplet 5 of 1968");
  CoupletChange split;
  split.old_couplets = {CoupletId{1}};
  split.new_couplets = {CoupletId{1}, CoupletId{2}};
  EXPECT_EQ(couplets_in_words(split, sample.old_edition, sample.new_edition),
            "couplet 2 of 1968, couplets 2 and 3 of 2003");
}

TEST(Taxa, AreNamedByWhatBecameOfThem) {
  auto const sample = make_sample();
  auto const words = [&](std::size_t i) {
    return taxa_in_words(sample.collation.taxa[i], sample.old_edition, sample.new_edition);
  };
  EXPECT_EQ(words(0), "Orla rubra");
  EXPECT_EQ(words(1), "Orla major, divided into Orla rubra and Orla major");
  EXPECT_EQ(words(4), "Pellucina nigra, now Nigrella nigra");
  TaxonChange lump;
  lump.old_taxa = {TaxonId{0}, TaxonId{1}};
  lump.new_taxa = {TaxonId{1}};
  EXPECT_EQ(taxa_in_words(lump, sample.old_edition, sample.new_edition),
            "Orla major and Orla minor, united as Orla major");
}

TEST(Taxa, AreNamedByTheRelationOfTheirConcepts) {
  auto const sample = make_sample();
  TaxonChange change;
  change.old_taxa = {test::taxon(sample.old_edition, "Orla major")};
  change.new_taxa = {test::taxon(sample.new_edition, "Orla rubra")};
  auto const words = [&](Relation relation) {
    change.relation = relation;
    return taxa_in_words(change, sample.old_edition, sample.new_edition);
  };
  EXPECT_EQ(words(Relation::congruent), "Orla major, now Orla rubra");
  EXPECT_EQ(words(Relation::includes), "part of Orla major, now Orla rubra");
  EXPECT_EQ(words(Relation::included_in), "Orla major, now within Orla rubra");
  EXPECT_EQ(words(Relation::overlaps), "Orla major, now overlapping Orla rubra");
  change.new_taxa = {test::taxon(sample.new_edition, "Orla major")};
  EXPECT_EQ(words(Relation::congruent), "Orla major");
  EXPECT_EQ(words(Relation::includes), "Orla major, now narrower");
  EXPECT_EQ(words(Relation::included_in), "Orla major, now wider");
  EXPECT_EQ(words(Relation::overlaps), "Orla major, now within other limits");
}

TEST(Roles, NameOpaqueCharactersByTheirPrintedWords) {
  auto const sample = make_sample();
  auto role = sample.collation.roles[1];
  CharacterLabels const label{sample.collation.characters};
  EXPECT_EQ(character_of(role, label, sample.old_edition, sample.new_edition),
            "hook of the third leg");
  role.character = "~with hook on third leg";
  EXPECT_EQ(character_of(role, label, sample.old_edition, sample.new_edition),
            "“♂ with a hook on the third leg”");
  role.old_statement.reset();
  EXPECT_EQ(character_of(role, label, sample.old_edition, sample.new_edition),
            "“♂ usually with a hook on the third leg”");
}

TEST(Roles, AreToldWithNumbersAndGroups) {
  auto const sample = make_sample();
  EXPECT_EQ(role_in_words(sample.collation.roles[0]), "became an exception note for Orla clausa");
  EXPECT_EQ(role_in_words(sample.collation.roles[3]), "limits changed, 40–60 mm → 35–60 mm");
}

class Verdicts : public ::testing::Test {
 protected:
  test::Sample sample_ = make_sample();
  std::vector<Verdict> verdicts_ = sample_.redetermination.verdicts.to_vector();

  [[nodiscard]] Verdict& verdict(std::size_t i) { return verdicts_[i]; }
  [[nodiscard]] std::string why(std::size_t i) {
    return reason(verdict(i), sample_.old_edition, sample_.new_edition);
  }
  [[nodiscard]] std::string look(std::size_t i) { return look_at(verdict(i), sample_.new_edition); }
};

TEST_F(Verdicts, StandsNamesTheOnlyEnd) {
  EXPECT_EQ(why(0), "every way that the evidence leaves ends in Orla minor");
}

TEST_F(Verdicts, StandsOnlyThroughAnExceptionSaysSo) {
  verdict(0).terminals[0].arrival = Arrival::through_exception;
  EXPECT_EQ(why(0),
            "every way that the evidence leaves ends in Orla minor, only through an exception");
}

TEST_F(Verdicts, RenamedGivesBothNamesWithTheirEditions) {
  EXPECT_EQ(why(1), "Pellucina nigra of 1968 is Nigrella nigra in 2003");
}

TEST_F(Verdicts, ChangesTellsWhereTheWaysPartAndWhatIsRecorded) {
  EXPECT_EQ(why(6),
            "keys to Orla rubra in 2003; 1968 takes lead 2b, 2003 takes lead 2a; what decides is "
            "“carapace 35–60 mm long” (2a; recorded: 37 mm)");
}

TEST_F(Verdicts, NarrowedNamesTheParts) {
  EXPECT_EQ(why(2),
            "Orla major of 1968 is divided in 2003: Orla rubra or Orla major; the ways part at "
            "couplet 3 of 2003, lead 2a of 1968; what decides is “Underside of the claws red” (3a; "
            "not recorded)");
}

TEST_F(Verdicts, OpenTellsWhatIsImpliedAndWhatFitsInPart) {
  EXPECT_EQ(why(3),
            "may key to Orla clausa or Orla major in 2003; 1968 takes lead 2b, 2003 takes lead 2a; "
            "what decides is “carapace 35–60 mm long” (2a; not recorded) and “Rostrum shorter than "
            "the antennal scale” (2b of 1968; implied by the old route: shorter than the scale); "
            "partly fits lead 2a of 2003 (“carapace 35–60 mm long” holds, “Rostrum longer than the "
            "antennal scale” does not)");
}

TEST_F(Verdicts, StrandedNamesTheCouplet) {
  EXPECT_EQ(why(4),
            "no lead of couplet 5 of 2003 fits; what decides is “tail fan without spines” (5b; "
            "recorded: one spine)");
}

TEST_F(Verdicts, NotKeyedGivesTheClauseOfTheAnalysis) {
  EXPECT_EQ(why(5), "“Aus incertus” is a terminal of neither edition");
}

TEST_F(Verdicts, ACutSearchIsNeverSilent) {
  verdict(0).complete = false;
  EXPECT_EQ(
      why(0),
      "every way that the evidence leaves ends in Orla minor; not all ways were followed: the "
      "limit on routes is met");
}

TEST_F(Verdicts, LookAtGivesTheDecisionAsAPersonWould) {
  EXPECT_EQ(look(2),
            "look at underside of the claws (naked eye): red → Orla rubra; white → stands");
  EXPECT_EQ(look(3),
            "look at carapace length (hand lens): less than 35 mm → stands; 35 to 40 mm → then "
            "length of the rostrum. Then length of the rostrum (naked eye): shorter than the scale "
            "→ stands; longer → Orla major");
  EXPECT_EQ(look(0), "");
}

TEST_F(Verdicts, PossibleOutcomesAreThoseBehindTheAnswers) {
  EXPECT_EQ(possible_outcomes(verdict(2)), "stands | changes");
  EXPECT_EQ(possible_outcomes(verdict(3)), "stands | changes");
  EXPECT_EQ(possible_outcomes(verdict(4)), "stranded");
}

TEST_F(Verdicts, CoupletsAreThoseWhereTheWaysPart) {
  EXPECT_EQ(old_couplet_of(verdict(2), sample_.old_edition), "2");
  EXPECT_EQ(new_couplet_of(verdict(2), sample_.new_edition), "3");
  EXPECT_EQ(new_couplet_of(verdict(4), sample_.new_edition), "5");
  EXPECT_EQ(old_couplet_of(verdict(0), sample_.old_edition), "");
}

TEST_F(Verdicts, AnAnswerThatSettlesNothingMoreSaysWhatRemains) {
  auto& answer = verdict(2).questions[0].answers[0];
  answer.outcome = Outcome::narrowed;
  answer.new_taxa = {TaxonId{0}, TaxonId{1}};
  EXPECT_EQ(follows(verdict(2), answer, sample_.new_edition), "narrowed: Orla rubra | Orla major");
}

}  // namespace
}  // namespace keydrift::reports
