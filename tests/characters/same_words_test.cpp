// The same words: what they are, and what becomes of leads that have them.

#include <gtest/gtest.h>

#include <array>
#include <random>
#include <string>
#include <vector>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"
#include "reading_support.hpp"

namespace keydrift::test {
namespace {

std::string words_of_tokens(std::string_view text) {
  using reading::TokenKind;
  std::string joined;
  for (auto const& token : reading::tokenise(text)) {
    if (token.kind == TokenKind::sign || token.kind == TokenKind::mark) continue;
    if (token.kind == TokenKind::word && reading::is_article(token.word)) continue;
    joined += (joined.empty() ? "" : " ") + token.word;
  }
  return joined;
}

TEST(NormalisedWords, AreThoseOfTheTokensWhateverStandsBetweenThem) {
  constexpr std::array kPieces{"Leaf", "the", "A",     "an", "M1",     "mm2",      "nut's", "nuts'",
                               "3",    "3rd", "1 1/2", "½",  "b",      "Blätter",  "œuf",   " ",
                               " ",    " ",   "-",     "--", "–",      ",",        ";",     ".",
                               "(",    ")",   "{",     "}",  "{a: b}", "'",        "’",     "\t",
                               "\n",   "/",   "µm",    "x",  "\xFF",   "e\xCC\x81"};
  EXPECT_EQ(normalised_words("The nut's beak, M1-M2; a 3rd {a: b}"), "nut's beak m1 m2 3rd");
  std::mt19937 random{7};
  for (int i = 0; i < 20'000; ++i) {
    std::string text;
    for (auto n = 1 + random() % 8; n > 0; --n) text += kPieces.at(random() % kPieces.size());
    ASSERT_EQ(normalised_words(text), words_of_tokens(text)) << text;
  }
}

// What the statements of every couplet say when the editions are read together.
std::vector<std::string> read_together(std::vector<Edition> editions, Lexicon const& lexicon) {
  std::vector<Edition*> pointers;
  for (auto& edition : editions) pointers.push_back(&edition);
  (void)read_statements(pointers, lexicon);
  std::vector<std::string> all;
  for (auto const& edition : editions) {
    for (auto const& couplet : edition.couplets) {
      for (auto const& lead : couplet.leads) all.push_back(said(lead.statements));
    }
  }
  return all;
}

TEST(LeadsOfTheSameWords, SayTheSame) {
  auto const first = couplet_of({"Spike 30 mm; beak bifid", "Spike 20 mm; nuts ridged"});
  auto const second = couplet_of({"Spike 30 mm; beak bifid", "Beak entire; nuts ridged"});
  auto const all = read_together({first, second}, plant_lexicon());
  EXPECT_EQ(all[0], all[2]);
  EXPECT_NE(all[0].find("bifid"), std::string::npos) << all[0];
  EXPECT_NE(all[1].find("nuts ridged"), std::string::npos) << all[1];
  EXPECT_NE(all[3].find("nuts ridged"), std::string::npos) << all[3];
}

TEST(LeadsOfTheSameWords, AreEachTheContraryOfTheirOwnCouplet) {
  auto const first = couplet_of({"Beak bifid", "Not as above"});
  auto const second = couplet_of({"Nuts ridged", "Not as above"});
  auto const all = read_together({first, second}, plant_lexicon());
  EXPECT_EQ(all[1], read_together({first}, plant_lexicon())[1]);
  EXPECT_EQ(all[3], read_together({second}, plant_lexicon())[1]);
  EXPECT_NE(all[1], all[3]);
}

TEST(LeadsOfTheSameWords, KeepWhatCameInWithOneOfThem) {
  auto first = couplet_of({"Beak bifid; nuts ridged", "Beak entire"});
  auto const second = first;
  auto given = second;
  (void)read_statements(given, plant_lexicon());
  // A mark's predicate for the first statement, as the interchange form hands it over.
  auto statement = given.couplets[0].leads[0].statements[0];
  statement.origin = Origin::mark;
  statement.any_of[0].states = {"entire"};
  first.couplets[0].leads[0].statements = {statement};
  auto const all = read_together({first, second}, plant_lexicon());
  EXPECT_EQ(all[0].find("bifid"), std::string::npos) << all[0];
  EXPECT_NE(all[0].find("nuts ridged"), std::string::npos) << all[0];
  EXPECT_NE(all[2].find("bifid"), std::string::npos) << all[2];
}

}  // namespace
}  // namespace keydrift::test
