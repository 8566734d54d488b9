#include <gtest/gtest.h>

#include <array>

#include "edition_builder.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/space.hpp"

namespace keydrift::test {
namespace {

TEST(OpaqueCharacters, AStateOfSeveralAlternativesTakesInEachOfThem) {
  auto edition =
      make_edition("key", {{"1", {{"Nuts smooth or ridged", "2"}, {"Nuts pitted", "Aus bus"}}},
                           {"2", {{"Nuts smooth", "Cus cus"}, {"Nuts ridged", "Dus dus"}}},
                           {"3", {{"Nuts pitted", "Aus bus"}, {"Nuts smooth", "Cus cus"}}}});
  static_cast<void>(read_statements(edition, Lexicon{}));
  auto const& wide = edition.couplets[0].leads[0].statements.at(0).any_of.at(0);
  auto const& narrow = edition.couplets[1].leads[0].statements.at(0).any_of.at(0);
  ASSERT_EQ(wide.character, narrow.character);
  // So who comes down the first lead may take the second: the route does not contradict itself.
  EXPECT_EQ(wide.states,
            (std::vector<std::string>{"nuts ridged", "nuts smooth", "nuts smooth or ridged"}));
  EXPECT_EQ(narrow.states, (std::vector<std::string>{"nuts smooth"}));
}

// "round" and "terete" were each contrasted with "trigonous" only.
Edition two_words_against_a_third() {
  auto edition =
      make_edition("key", {{"1", {{"Culms round", "2"}, {"Culms trigonous", "Aus bus"}}},
                           {"2", {{"Culms terete", "Cus cus"}, {"Culms trigonous", "Dus dus"}}}});
  static_cast<void>(read_statements(edition, Lexicon{}));
  return edition;
}

TEST(OpaqueCharacters, ExcludeEachOtherOnlyWhereACoupletContrastsThem) {
  auto const edition = two_words_against_a_third();
  std::array<Edition const*, 1> const editions{&edition};
  CharacterSpace const space{editions, Lexicon{}};
  auto const& round = edition.couplets[0].leads[0].statements.at(0).any_of.at(0);
  auto const& trigonous = edition.couplets[0].leads[1].statements.at(0).any_of.at(0);
  auto const& terete = edition.couplets[1].leads[0].statements.at(0).any_of.at(0);
  ASSERT_EQ(round.character, terete.character);
  auto const character = *space.find(round.character);
  EXPECT_TRUE(meets(space.allowed(round), space.allowed(terete)));
  EXPECT_FALSE(meets(space.allowed(round), space.allowed(trigonous)));
  EXPECT_FALSE(meets(space.allowed(terete), space.allowed(trigonous)));
  EXPECT_EQ(space.words(character, space.allowed(round)), "culms round");
  auto both = space.allowed(round);
  intersect(both, space.allowed(terete));
  EXPECT_EQ(space.words(character, both), "culms round with culms terete");
  auto no_round = space.allowed(round);
  Atom denial = round;
  denial.negated = true;
  EXPECT_FALSE(meets(space.allowed(denial), no_round));
  EXPECT_EQ(space.words(character, space.allowed(denial)), "not culms round");
  // What is recorded by one word says nothing of the other.
  auto const observed = space.observe(character, "culms terete", "");
  EXPECT_EQ(observed.cells, space.allowed(terete));
}

TEST(OpaqueCharacters, ManyWordsThatNothingTellsApartRefuteNothing) {
  std::vector<CoupletSketch> couplets;
  for (int i = 0; i < 12; ++i) {
    auto const number = std::to_string(i + 1);
    couplets.push_back({number,
                        {{"Culms w" + std::string(1, static_cast<char>('a' + i)) + "xy",
                          i == 11 ? "Aus bus" : std::to_string(i + 2)},
                         {"Culms trigonous", "Bus bus"}}});
  }
  auto edition = make_edition("key", couplets);
  static_cast<void>(read_statements(edition, Lexicon{}));
  std::array<Edition const*, 1> const editions{&edition};
  CharacterSpace const space{editions, Lexicon{}};
  auto const& first = edition.couplets[0].leads[0].statements.at(0).any_of.at(0);
  auto const& last = edition.couplets[11].leads[0].statements.at(0).any_of.at(0);
  auto const& domain = space[*space.find(first.character)];
  EXPECT_EQ(domain.together.size(), 1U);
  EXPECT_TRUE(meets(space.allowed(first), space.allowed(last)));
}

}  // namespace
}  // namespace keydrift::test
