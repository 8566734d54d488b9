#include <gtest/gtest.h>

#include "awn_and_leaf.hpp"

namespace keydrift::test {
namespace {

TEST(TwoEditionsExample, FourOfEighteenCellsChange) {
  auto const two = awn_and_leaf();
  std::map<std::string, int> cells;
  int changed = 0;
  for (auto const* awn : {"present", "absent"}) {
    for (int leaf = 1; leaf <= 9; ++leaf) {
      auto const verdict = two.verdict("", {{"awn", awn}, {"leaf", std::to_string(leaf)}});
      ++cells[two.pairs(verdict)];
      if (verdict.outcome == Outcome::changes) ++changed;
    }
  }
  std::map<std::string, int> const expected{{"Aus alba>Aus alba", 6},
                                            {"Aus bella>Aus bella", 3},
                                            {"Aus clara>Aus clara", 5},
                                            {"Aus alba>Aus bella", 3},
                                            {"Aus bella>Aus clara", 1}};
  EXPECT_EQ(cells, expected);
  EXPECT_EQ(changed, 4);
}

TEST(TwoEditionsExample, PartialSpecimensComeOutAsPairs) {
  auto const two = awn_and_leaf();
  auto const pairs = [&](TwoEditions::Record const& record) {
    return two.pairs(two.verdict("", record));
  };
  auto const outcome = [&](TwoEditions::Record const& record) {
    return two.verdict("", record).outcome;
  };
  EXPECT_EQ(pairs({{"leaf", "2"}}), "Aus alba>Aus bella, Aus bella>Aus bella");
  EXPECT_EQ(pairs({{"leaf", "4"}}), "Aus alba>Aus alba, Aus bella>Aus clara");
  // Both editions allow the same two names, and yet the specimen may change.
  EXPECT_EQ(pairs({{"awn", "absent"}}),
            "Aus bella>Aus bella, Aus bella>Aus clara, Aus clara>Aus clara");
  EXPECT_EQ(outcome({{"awn", "absent"}}), Outcome::open);
  EXPECT_EQ(pairs({{"awn", "present"}}), "Aus alba>Aus alba, Aus alba>Aus bella");
  EXPECT_EQ(pairs({{"leaf", "7"}, {"awn", "present"}}), "Aus alba>Aus alba");
  EXPECT_EQ(outcome({{"leaf", "7"}, {"awn", "present"}}), Outcome::stands);
  EXPECT_EQ(pairs({{"leaf", "2"}, {"awn", "present"}}), "Aus alba>Aus bella");
  EXPECT_EQ(outcome({{"leaf", "2"}, {"awn", "present"}}), Outcome::changes);
}

TEST(TwoEditionsExample, OneLookAtTheLeafSettlesAnAwnlessSpecimen) {
  auto const two = awn_and_leaf();
  auto const verdict = two.verdict("", {{"awn", "absent"}});
  ASSERT_EQ(verdict.questions.size(), 1U);
  auto const& question = verdict.questions.front();
  EXPECT_EQ(question.character, "leaf");
  std::vector<std::string> answers;
  for (auto const& answer : question.answers) {
    answers.push_back(answer.words + ": " + to_word(answer.outcome));
  }
  EXPECT_EQ(answers,
            (std::vector<std::string>{"less than 4 mm: stands", "4 to less than 5 mm: changes",
                                      "at least 5 mm: stands"}));
}

TEST(Judge, ANameAloneIsJudgedByWhatItsOldRouteImplies) {
  auto const two = awn_and_leaf();
  // Aus bella of the old edition is awnless with a leaf below 5.
  auto const verdict = two.verdict("Aus bella", {});
  EXPECT_EQ(two.pairs(verdict), "Aus bella>Aus bella, Aus bella>Aus clara");
  EXPECT_EQ(verdict.outcome, Outcome::open);
  ASSERT_TRUE(verdict.parting && verdict.parting->new_couplet && verdict.parting->new_lead);
  EXPECT_EQ(two.new_edition[*verdict.parting->new_couplet].label, "1");
  EXPECT_EQ(lead_name(two.new_edition, *verdict.parting->new_lead), "1b");
  EXPECT_EQ(two.verdict("Aus clara", {}).outcome, Outcome::stands);
}

TEST(Judge, RecordedCharactersThatNeverFittedTheNameMakeItDoubtful) {
  auto const two = awn_and_leaf();
  auto const verdict = two.verdict("Aus alba", {{"awn", "absent"}, {"leaf", "2"}});
  EXPECT_EQ(verdict.outcome, Outcome::doubtful);
  EXPECT_EQ(verdict.why, "the recorded characters contradict every route to the recorded name");
  EXPECT_EQ(two.new_names_of(verdict), "Aus bella");
}

TEST(Judge, ANameInNeitherEditionIsNotKeyed) {
  auto const two = awn_and_leaf();
  auto const verdict = two.verdict("Zus ignotus", {});
  EXPECT_EQ(verdict.outcome, Outcome::not_keyed);
  EXPECT_EQ(verdict.why, "the recorded name is in neither edition");
  auto const nothing = two.verdict("", {});
  EXPECT_EQ(nothing.outcome, Outcome::not_keyed);
  EXPECT_EQ(nothing.why, "neither a name nor a usable character is recorded");
}

// One couplet: firm beak and colour against their opposites.
Edition beak_and_colour(char const* name, Strength colour, std::vector<std::string> except = {}) {
  auto edition =
      make_edition(name, {{"1", {{"beak bifid; dark", "2"}, {"beak entire; pale", "Cus pallens"}}},
                          {"2", {{"long", "Aus longus"}, {"short", "Bus brevis"}}}});
  say(edition, 0, 0,
      {states("beak", {"bifid"}), states("colour", {"dark"}, colour, std::move(except))});
  say(edition, 0, 1, {states("beak", {"entire"}), states("colour", {"pale"})});
  say(edition, 1, 0, {states("spike", {"long"})});
  say(edition, 1, 1, {states("spike", {"short"})});
  return edition;
}

TEST(Judge, OneOfTwoRequiredCharactersIsNoPassAndIsReportedAsPartlyFitting) {
  TwoEditions const two{beak_and_colour("old", Strength::firm),
                        beak_and_colour("new", Strength::firm)};
  auto const verdict = two.verdict("", {{"beak", "bifid"}, {"colour", "pale"}, {"spike", "long"}});
  EXPECT_EQ(verdict.outcome, Outcome::stranded);
  ASSERT_TRUE(verdict.strands_at);
  EXPECT_EQ(two.new_edition[*verdict.strands_at].label, "1");
  ASSERT_EQ(verdict.partly.size(), 4U);  // both leads of couplet 1, in both editions
  auto const& first = verdict.partly.front();
  EXPECT_FALSE(first.in_new);
  EXPECT_EQ(lead_name(two.old_edition, first.lead), "1a");
  EXPECT_EQ(first.holds, std::vector<std::uint32_t>{0});
  EXPECT_EQ(first.fails, std::vector<std::uint32_t>{1});
}

TEST(Judge, AMissingPartLeavesALeadOpenNotRefuted) {
  TwoEditions const two{beak_and_colour("old", Strength::firm),
                        beak_and_colour("new", Strength::firm)};
  auto const verdict = two.verdict("", {{"beak", "bifid"}, {"spike", "long"}});
  EXPECT_EQ(two.new_names_of(verdict), "Aus longus");
  EXPECT_EQ(verdict.terminals.front().arrival, Arrival::open);
  EXPECT_EQ(verdict.terminals.front().rests_on, std::vector<std::string>{"colour"});
  EXPECT_EQ(verdict.outcome, Outcome::stands);
}

TEST(Judge, ASpecimenFailingOnlyAnExceptedStatementCanOnlyBeOfTheExceptedGroup) {
  TwoEditions const two{beak_and_colour("old", Strength::excepted, {"Aus"}),
                        beak_and_colour("new", Strength::excepted, {"Aus"})};
  auto const pale = [&](char const* spike) {
    return two.verdict("", {{"beak", "bifid"}, {"colour", "pale"}, {"spike", spike}});
  };
  EXPECT_EQ(two.new_names_of(pale("long")), "Aus longus");
  EXPECT_EQ(pale("long").terminals.front().arrival, Arrival::through_exception);
  // The other way below the lead ends in a group that the exception does not name.
  EXPECT_EQ(pale("short").outcome, Outcome::stranded);
  auto const open = two.verdict("", {{"beak", "bifid"}, {"colour", "pale"}});
  EXPECT_EQ(two.new_names_of(open), "Aus longus");
}

TEST(Judge, AHedgedStatementNeitherRefutesNorImplies) {
  TwoEditions const two{beak_and_colour("old", Strength::hedged),
                        beak_and_colour("new", Strength::firm)};
  // Nothing follows from the old name about the colour, so the new firm statement is open.
  auto const named = two.verdict("Aus longus", {});
  EXPECT_EQ(named.outcome, Outcome::stands);
  EXPECT_TRUE(named.may_strand);
  EXPECT_EQ(named.terminals.front().rests_on, std::vector<std::string>{"colour"});
  // A pale one fitted the old lead and fits neither new one.
  EXPECT_EQ(two.verdict("Aus longus", {{"colour", "pale"}}).outcome, Outcome::stranded);
}

TEST(Judge, ReadingsDifferWhereStatementsOfALeadConflict) {
  TwoEditions const two{beak_and_colour("old", Strength::firm),
                        beak_and_colour("new", Strength::firm)};
  TwoEditions::Record const mixed{{"beak", "bifid"}, {"colour", "pale"}, {"spike", "long"}};
  auto const strict = two.verdict("", mixed, Reading::strict);
  EXPECT_EQ(strict.outcome, Outcome::stranded);
  EXPECT_EQ(strict.by_reading[static_cast<std::size_t>(Reading::primary_first)], Outcome::stands);
  // Each lead fits one of its two statements: both stay open.
  EXPECT_EQ(two.pairs(two.verdict("", mixed, Reading::best_overall)),
            "Aus longus>Aus longus, Aus longus>Cus pallens, Cus pallens>Aus longus, "
            "Cus pallens>Cus pallens");
  auto const first = two.verdict("", mixed, Reading::primary_first);
  EXPECT_EQ(two.new_names_of(first), "Aus longus");
}

// Old: one species; new: parted by beak into two.
Edition unsplit() {
  auto edition =
      make_edition("old", {{"1", {{"awn present", "Aus bus"}, {"awn absent", "Cus cus"}}}});
  say(edition, 0, 0, {states("awn", {"present"})});
  say(edition, 0, 1, {states("awn", {"absent"})});
  return edition;
}
Edition split_in_two() {
  auto edition =
      make_edition("new", {{"1", {{"awn present", "2"}, {"awn absent", "Cus cus"}}},
                           {"2", {{"beak bifid", "Aus bus"}, {"beak entire", "Aus novus"}}}});
  say(edition, 0, 0, {states("awn", {"present"})});
  say(edition, 0, 1, {states("awn", {"absent"})});
  say(edition, 1, 0, {states("beak", {"bifid"})});
  say(edition, 1, 1, {states("beak", {"entire"})});
  return edition;
}
ConceptMap split_map() {
  return {.name = "map.csv",
          .rows = {{"Aus bus", Relation::includes, "Aus bus", "", {}},
                   {"Aus bus", Relation::includes, "Aus novus", "", {}}}};
}

TEST(Judge, ASplitNarrowsWhatTheEvidenceDoesNotDecide) {
  TwoEditions const two{unsplit(), split_in_two(), {}, split_map()};
  auto const verdict = two.verdict("Aus bus", {});
  EXPECT_EQ(verdict.outcome, Outcome::narrowed);
  ASSERT_EQ(verdict.questions.size(), 1U);
  EXPECT_EQ(verdict.questions.front().character, "beak");
  EXPECT_EQ(two.verdict("Aus bus", {{"beak", "bifid"}}).outcome, Outcome::stands);
  EXPECT_EQ(two.verdict("Aus bus", {{"beak", "entire"}}).outcome, Outcome::changes);
}

TEST(Judge, ALumpIsRelabelledWithoutLooking) {
  TwoEditions const two{split_in_two(),
                        unsplit(),
                        {},
                        {.name = "map.csv",
                         .rows = {{"Aus bus", Relation::included_in, "Aus bus", "", {}},
                                  {"Aus novus", Relation::included_in, "Aus bus", "", {}}}}};
  EXPECT_EQ(two.verdict("Aus novus", {}).outcome, Outcome::renamed);
  EXPECT_EQ(two.verdict("Aus bus", {}).outcome, Outcome::stands);
}

TEST(Judge, ANewCombinationIsRenamed) {
  auto renamed = unsplit();
  renamed.taxa[0].name = "Dus bus";
  TwoEditions const two{
      unsplit(),
      std::move(renamed),
      {},
      {.name = "map.csv", .rows = {{"Aus bus", Relation::congruent, "Dus bus", "", {}}}}};
  auto const verdict = two.verdict("Aus bus", {});
  EXPECT_EQ(verdict.outcome, Outcome::renamed);
  EXPECT_EQ(two.new_names_of(verdict), "Dus bus");
}

TEST(Judge, AGenusNameStandsWhereItsSpeciesStayInIt) {
  TwoEditions const two{unsplit(), split_in_two(), {}, split_map()};
  EXPECT_EQ(two.verdict("Aus", {}).outcome, Outcome::stands);
  EXPECT_EQ(two.verdict("Cus", {}).outcome, Outcome::stands);
}

TEST(Judge, AnInapplicableCharacterFitsNeitherContrastingState) {
  Lexicon lexicon;
  lexicon.characters.push_back({.id = "beak", .states = {{"present", {}}, {"absent", {}}}});
  lexicon.characters.push_back(
      {.id = "beak-tip",
       .applicable_if = Applicability{.character = "beak", .states = {"present"}},
       .states = {{"bifid", {}}, {"entire", {}}}});
  auto edition =
      make_edition("old", {{"1", {{"tip bifid", "Aus bus"}, {"tip entire", "Cus cus"}}}});
  say(edition, 0, 0, {states("beak-tip", {"bifid"})});
  say(edition, 0, 1, {states("beak-tip", {"entire"})});
  TwoEditions const two{edition, edition, lexicon};
  EXPECT_EQ(two.verdict("", {{"beak", "absent"}}).outcome, Outcome::stranded);
  // A bifid tip implies a beak: recorded without one, the name never fitted.
  EXPECT_EQ(two.verdict("Aus bus", {{"beak", "absent"}}).outcome, Outcome::doubtful);
  EXPECT_EQ(two.verdict("Aus bus", {{"beak", "present"}}).outcome, Outcome::stands);
}

}  // namespace
}  // namespace keydrift::test
