// Looking up characters, and what is wrong with a lexicon.

#include "keydrift/characters/lexicon.hpp"

#include <gtest/gtest.h>

#include "reading_support.hpp"

namespace keydrift::test {
namespace {

TEST(LexiconFind, TakesIdsAndLabelsInAnyCase) {
  auto lexicon = plant_lexicon();
  lexicon.characters[0].label = "Leaf in section";
  EXPECT_EQ(lexicon.find("leaf-section"), &lexicon.characters[0]);
  EXPECT_EQ(lexicon.find("LEAF-Section"), &lexicon.characters[0]);
  EXPECT_EQ(lexicon.find("Leaf in section"), &lexicon.characters[0]);
  EXPECT_EQ(lexicon.find("leaf in SECTION"), &lexicon.characters[0]);
  EXPECT_EQ(lexicon.find("leaf"), nullptr);
  EXPECT_EQ(lexicon.find(""), nullptr);
}

TEST(CheckLexicon, FindsNothingWrongWithASoundOne) {
  for (auto const& finding : check_lexicon(plant_lexicon())) ADD_FAILURE() << to_text(finding);
  for (auto const& finding : check_lexicon(animal_lexicon())) ADD_FAILURE() << to_text(finding);
}

std::string findings_of(Lexicon lexicon) {
  std::uint32_t line = 1;
  for (auto& character : lexicon.characters) character.place.line = ++line;
  std::string text;
  for (auto const& finding : check_lexicon(lexicon)) text += to_text(finding);
  return text;
}

LexiconCharacter two_states(char const* id) {
  LexiconCharacter character;
  character.id = id;
  character.states = {{"bifid", {}}, {"entire", {}}};
  return character;
}

TEST(CheckLexicon, ReportsACharacterDefinedTwice) {
  EXPECT_EQ(
      findings_of({.name = "lexicon.csv", .characters = {two_states("tip"), two_states("tip")}}),
      "lexicon.csv:3:1: error: the character \"tip\" is defined twice "
      "[lexicon-duplicate-character]\n"
      "  tip\n"
      "  lexicon.csv:2:1: first defined here\n"
      "  give one of the two another id, or put their states into one character\n");
}

TEST(CheckLexicon, ReportsIdsThatAreNone) {
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {two_states("Beak tip")}}),
            "lexicon.csv:2:1: error: the character id \"Beak tip\" is not made of lower-case "
            "letters, digits and hyphens [lexicon-character-id]\n"
            "  Beak tip\n"
            "  write an id like \"utricle-beak\" and put the words for people into the label\n");
}

TEST(CheckLexicon, ReportsLabelsOfTwoCharacters) {
  auto first = two_states("tip");
  auto second = two_states("apex");
  first.label = "Tip of the beak";
  second.label = "tip of the Beak";
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {first, second}}),
            "lexicon.csv:3:1: warning: the characters \"tip\" and \"apex\" bear the same label "
            "\"tip of the Beak\" [lexicon-duplicate-label]\n"
            "  tip of the Beak\n"
            "  lexicon.csv:2:1: first used here\n"
            "  give them labels that tell them apart\n");
}

TEST(CheckLexicon, ReportsStatesDefinedTwiceAndPhrasesOfTwoStates) {
  auto character = two_states("tip");
  character.states.push_back({"bifid", {}});
  character.states[1].phrases = {{"Bifid", ""}};
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {character}}),
            "lexicon.csv:2:1: error: the state \"bifid\" of the character \"tip\" is defined twice "
            "[lexicon-duplicate-state]\n"
            "  bifid\n"
            "  put the phrases of both into one state\n"
            "lexicon.csv:2:1: error: the phrase \"Bifid\" stands for the states \"bifid\" and "
            "\"entire\" of the character \"tip\" [lexicon-phrase-of-two-states]\n"
            "  Bifid\n"
            "  keep it with one of the two\n");
}

TEST(CheckLexicon, ReportsCharactersAndStatesWithoutWords) {
  LexiconCharacter none;
  none.id = "tip";
  LexiconCharacter wordless;
  wordless.id = "apex";
  wordless.states = {{"–", {}}};
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {none, wordless}}),
            "lexicon.csv:2:1: error: the character \"tip\" has no states [lexicon-no-states]\n"
            "  tip\n"
            "  list its states, or make its kind \"measurement\" or \"count\"\n"
            "lexicon.csv:3:1: error: the state \"–\" of the character \"apex\" has neither a name "
            "nor a phrase made of words [lexicon-state-without-words]\n"
            "  –\n"
            "  write the words that express it in leads\n");
}

TEST(CheckLexicon, ReportsNumbersWithStatesUnknownUnitsAndTolerances) {
  auto measured = two_states("spike");
  measured.kind = CharacterKind::measurement;
  measured.unit = "furlong";
  measured.tolerance = 1.5;
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {measured}}),
            "lexicon.csv:2:1: error: the character \"spike\" is a measurement and has states "
            "[lexicon-states-of-number]\n"
            "  bifid\n"
            "  leave the states out, or make its kind \"categorical\"\n"
            "lexicon.csv:2:1: error: the tolerance of the character \"spike\" is not between 0 and "
            "1 [lexicon-tolerance]\n"
            "  spike\n"
            "  write the share of the limit by which \"ca.\" widens it, for example 0.1\n"
            "lexicon.csv:2:1: error: the unit \"furlong\" of the character \"spike\" is not known "
            "[lexicon-unit]\n"
            "  furlong\n"
            "  write mm, cm, m, µm, in, ft, mm2, ° or %, or leave the unit of a ratio empty\n");
}

TEST(CheckLexicon, ReportsConditionsOnWhatItLacks) {
  auto beak = two_states("beak-shape");
  auto tip = two_states("tip");
  tip.applicable_if = Applicability{.character = "beek-shape", .states = {"bifid"}};
  auto apex = two_states("apex");
  apex.applicable_if = Applicability{.character = "beak-shape", .states = {"bifit"}};
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {beak, tip, apex}}),
            "lexicon.csv:3:1: error: the character \"tip\" depends on \"beek-shape\", which the "
            "lexicon lacks [lexicon-applicability-character]\n"
            "  beek-shape\n"
            "  did you mean \"beak-shape\"?\n"
            "lexicon.csv:4:1: error: the character \"apex\" depends on the state \"bifit\" of "
            "\"beak-shape\", which has no such state [lexicon-applicability-state]\n"
            "  bifit\n"
            "  did you mean \"bifid\"?\n");
}

TEST(CheckLexicon, ReportsConditionsThatNameNoState) {
  auto tip = two_states("tip");
  tip.applicable_if = Applicability{.character = "beak-shape", .states = {}};
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {two_states("beak-shape"), tip}}),
            "lexicon.csv:3:1: error: the character \"tip\" depends on \"beak-shape\" but on none "
            "of its states, so it could never apply [lexicon-applicability-state]\n"
            "  beak-shape\n"
            "  name the states with which it applies\n");
}

TEST(CheckLexicon, ReportsConditionsInACircle) {
  auto tip = two_states("tip");
  auto apex = two_states("apex");
  tip.applicable_if = Applicability{.character = "apex", .states = {"bifid"}};
  apex.applicable_if = Applicability{.character = "tip", .states = {"bifid"}};
  EXPECT_EQ(findings_of({.name = "lexicon.csv", .characters = {tip, apex}}),
            "lexicon.csv:2:1: error: characters depend on each other in a circle: \"tip\" on "
            "\"apex\" on \"tip\" [lexicon-applicability-cycle]\n"
            "  tip\n"
            "  take out one \"applicable if\"\n");
}

}  // namespace
}  // namespace keydrift::test
