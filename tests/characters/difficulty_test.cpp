// How hard couplets are, and what error rates by difficulty come to.

#include "keydrift/characters/difficulty.hpp"

#include <gtest/gtest.h>

#include "edition_builder.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {
namespace {

using Difficulties = std::vector<std::optional<Difficulty>>;

Lexicon lexicon() {
  Lexicon lexicon;
  for (auto const& [id, difficulty] :
       {std::pair{"stem", Difficulty::naked_eye}, std::pair{"beak", Difficulty::hand_lens},
        std::pair{"nerve", Difficulty::microscope}, std::pair{"embryo", Difficulty::dissection}}) {
    lexicon.characters.push_back({.id = id, .difficulty = difficulty});
  }
  return lexicon;
}

// Characters of each lead, as their ids.
struct LeadCharacters {
  std::vector<std::string> first;
  std::vector<std::string> second;
};
std::vector<Statement> statements_on(std::vector<std::string> const& characters) {
  std::vector<Statement> statements;
  for (auto const& character : characters) {
    Statement statement;
    Atom atom;
    atom.character = character;
    atom.states = {"x"};
    statement.any_of.push_back(atom);
    statements.push_back(statement);
  }
  return statements;
}
// A comb of couplets: the second lead of each leads to the next.
Edition comb_of(std::vector<LeadCharacters> const& couplets) {
  std::vector<test::CoupletSketch> sketch;
  for (std::size_t i = 0; i < couplets.size(); ++i) {
    auto const next = i + 1 < couplets.size() ? std::to_string(i + 2) : "Last";
    sketch.push_back({std::to_string(i + 1), {{"a", "T" + std::to_string(i + 1)}, {"b", next}}});
  }
  auto edition = test::make_edition("k", sketch);
  for (std::size_t i = 0; i < couplets.size(); ++i) {
    edition.couplets[i].leads[0].statements = statements_on(couplets[i].first);
    edition.couplets[i].leads[1].statements = statements_on(couplets[i].second);
  }
  return edition;
}
Difficulties difficulties_of(LeadCharacters const& leads) {
  return couplet_difficulties(comb_of({leads}), lexicon());
}

TEST(CoupletDifficulty, IsThatOfTheEasiestCharacterThatIsContrasted) {
  EXPECT_EQ(difficulties_of({{"beak"}, {"beak"}}), Difficulties{Difficulty::hand_lens});
  EXPECT_EQ(difficulties_of({{"nerve", "beak"}, {"nerve", "beak"}}),
            Difficulties{Difficulty::hand_lens});
  // The stem is spoken of on one side only, so it decides nothing.
  EXPECT_EQ(difficulties_of({{"nerve", "stem"}, {"nerve"}}), Difficulties{Difficulty::microscope});
  EXPECT_EQ(difficulties_of({{"nerve"}, {"embryo"}}), Difficulties{Difficulty::microscope});
}

TEST(CoupletDifficulty, IsNotKnownWhereAnUnknownCharacterMayBeEasier) {
  EXPECT_EQ(difficulties_of({{"nerve", "~words"}, {"nerve", "~words"}}),
            Difficulties{std::nullopt});
  EXPECT_EQ(difficulties_of({{"stem", "~words"}, {"stem", "~words"}}),
            Difficulties{Difficulty::naked_eye});
  EXPECT_EQ(difficulties_of({{}, {}}), Difficulties{std::nullopt});
}

TEST(CoupletDifficulty, IsNotThatOfANote) {
  auto edition = comb_of({{{"nerve", "stem"}, {"nerve", "stem"}}});
  for (auto& lead : edition.couplets[0].leads) lead.statements[1].strength = Strength::noted;
  EXPECT_EQ(couplet_difficulties(edition, lexicon()), Difficulties{Difficulty::microscope});
}

TEST(DifficultyNumbers, CountCoupletsTaxaAndTrouble) {
  auto const edition = comb_of({{{"stem"}, {"stem"}},
                                {{"nerve"}, {"nerve"}},
                                {{"~words"}, {"~words"}},
                                {{"beak"}, {"beak"}}});
  KeyGraph const graph{edition};
  auto const difficulties = couplet_difficulties(edition, lexicon());
  auto const numbers = difficulty_numbers(edition, graph, difficulties);
  EXPECT_EQ(numbers.couplets, (std::array<std::size_t, kDifficulties>{1, 1, 1, 0}));
  EXPECT_EQ(numbers.unrated, 1U);
  EXPECT_EQ(numbers.taxa, 5U);
  EXPECT_EQ(numbers.taxa_behind_hard, 4U);  // all but T1
  // T1 1; T2 1 + 4; T3 1 + 4 + 1; T4 and Last 1 + 4 + 1 + 2.
  EXPECT_NEAR(numbers.mean_cost.value(), (1 + 5 + 6 + 8 + 8) / 5.0, 1e-12);
  EXPECT_EQ(numbers.hard_early, 1U);
  auto const early = hard_early(edition, graph, difficulties);
  ASSERT_EQ(early.size(), 1U);
  EXPECT_EQ(early[0].couplet, CoupletId{1});
  EXPECT_EQ(early[0].difficulty, Difficulty::microscope);
  EXPECT_EQ(early[0].easier, CoupletId{3});
}

TEST(DifficultyNumbers, FindNothingEarlyWhereWhatIsHardComesLast) {
  auto const edition =
      comb_of({{{"stem"}, {"stem"}}, {{"nerve"}, {"nerve"}}, {{"embryo"}, {"embryo"}}});
  KeyGraph const graph{edition};
  EXPECT_EQ(hard_early(edition, graph, couplet_difficulties(edition, lexicon())).size(), 0U);
}

TEST(DifficultyNumbers, LeaveOutWhatHangsOnTheLengthOfWaysWhereLeadsGoRound) {
  auto const edition =
      test::make_edition("k", {{"1", {{"a", "2"}, {"b", "T1"}}}, {"2", {{"a", "1"}, {"b", "T2"}}}});
  KeyGraph const graph{edition};
  auto const difficulties = couplet_difficulties(edition, lexicon());
  auto const numbers = difficulty_numbers(edition, graph, difficulties);
  EXPECT_EQ(numbers.taxa, 2U);
  EXPECT_FALSE(numbers.mean_cost);
  EXPECT_FALSE(numbers.taxa_behind_hard);
  EXPECT_FALSE(expected_right(edition, graph, difficulties, {.rate = .1}, {}));
}

TEST(ExpectedRight, TakesTheRateOfEachCoupletsDifficulty) {
  auto const edition =
      comb_of({{{"stem"}, {"stem"}}, {{"nerve"}, {"nerve"}}, {{"beak"}, {"beak"}}});
  KeyGraph const graph{edition};
  ErrorRates rates{.rate = .05};
  rates.by_difficulty[static_cast<std::size_t>(Difficulty::hand_lens)] = .10;
  rates.by_difficulty[static_cast<std::size_t>(Difficulty::microscope)] = .02;
  std::vector<double> const weights{0, 0, 1, 3};
  auto const right =
      expected_right(edition, graph, couplet_difficulties(edition, lexicon()), rates, weights);
  ASSERT_TRUE(right);
  ASSERT_EQ(right->taxa.size(), 4U);
  // T3 and Last: .95 * .98 * .90; equal ones in order of first naming.
  EXPECT_EQ(edition[right->taxa[0].taxon].name, "T3");
  EXPECT_EQ(edition[right->taxa[1].taxon].name, "Last");
  EXPECT_EQ(edition[right->taxa[3].taxon].name, "T1");
  EXPECT_NEAR(right->taxa[0].chance, .8379, 1e-12);
  EXPECT_NEAR(right->taxa[2].chance, .95 * .98, 1e-12);
  EXPECT_NEAR(right->mean, (.95 + .95 * .98 + 2 * .8379) / 4, 1e-12);
  ASSERT_TRUE(right->frequency_mean);
  EXPECT_NEAR(*right->frequency_mean, .8379, 1e-12);
}

TEST(ExpectedRight, HasNoMeanByFrequencyWithoutFrequencies) {
  auto const edition = comb_of({{{"stem"}, {"stem"}}});
  KeyGraph const graph{edition};
  auto const difficulties = couplet_difficulties(edition, lexicon());
  EXPECT_FALSE(expected_right(edition, graph, difficulties, {.rate = .1}, {})->frequency_mean);
  auto const lost = test::make_edition("k", {{"1", {{"a", ""}, {"b", ""}}}});
  EXPECT_FALSE(
      expected_right(lost, KeyGraph{lost}, couplet_difficulties(lost, {}), {.rate = .1}, {}));
}

}  // namespace
}  // namespace keydrift
