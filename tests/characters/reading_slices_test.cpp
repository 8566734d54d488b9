// Where statements begin and end in the text of their lead.

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <random>
#include <set>
#include <sstream>

#include "edition_builder.hpp"
#include "reading_support.hpp"

namespace keydrift::test {
namespace {

// The slices, joined by " | ".
std::string slices(std::string_view text, Lexicon const& lexicon) {
  auto edition = couplet_of({std::string{text}});
  read_statements(edition, lexicon);
  std::string joined;
  for (auto const& statement : edition.couplets[0].leads[0].statements) {
    joined += (joined.empty() ? "" : " | ") + statement.text;
  }
  return joined;
}

class Slices : public testing::TestWithParam<ReadingCase> {};

TEST_P(Slices, AreTheWordsOfTheirStatement) {
  EXPECT_EQ(slices(GetParam().text, plant_lexicon()), GetParam().says);
}

constexpr ReadingCase kSlices[]{
    {"Leaves flat; sheaths red", "Leaves flat | sheaths red"},
    {"Leaves flat, glaucous", "Leaves flat | glaucous"},
    {"Leaves flat and glaucous.", "Leaves flat | glaucous"},
    {"Leaves flat (Fig. 3); sheaths red.", "Leaves flat (Fig. 3) | sheaths red"},
    {"Leaves flat, except in Aus; sheaths red", "Leaves flat, except in Aus | sheaths red"},
    {"Except in Aus; leaves flat", "Except in Aus; leaves flat"},
    {"Leaves flat; except in Aus", "Leaves flat; except in Aus"},
    {"Leaves ovate, lanceolate or elliptic, glaucous",
     "Leaves ovate, lanceolate or elliptic | glaucous"},
    {"Spike 20–30 × 4–5 mm; leaves flat",
     "Spike 20–30 × 4–5 mm | Spike 20–30 × 4–5 mm | leaves flat"},
    {"Leaves flat with ciliate margins", "Leaves flat | with ciliate margins"},
    {"Leaf margins entire and sheaths red", "Leaf margins entire | sheaths red"},
    {"Utricle with bifid beak 2 mm long", "Utricle with bifid beak | 2 mm long"},
    {"Sheaths red margins entire", "Sheaths red | margins entire"},
    {"Leaves flat [glaucous]; sheaths red", "Leaves flat [glaucous] | glaucous | sheaths red"},
    {"♂: leaves flat; sheaths red", "♂: leaves flat | sheaths red"},
    {"Ähren dicht; leaves flat", "Ähren dicht | leaves flat"},
};

INSTANTIATE_TEST_SUITE_P(Leads, Slices, testing::ValuesIn(kSlices));

TEST(StatementPlaces, PointIntoTheSource) {
  auto edition = couplet_of({"Leaves flat; sheaths red"});
  auto& lead = edition.couplets[0].leads[0];
  // The lead stands on line 7 and goes on, behind "flat; ", on line 8.
  lead.runs = {{.text_begin = 0, .place = {.line = 7, .column = 5, .begin = 100, .end = 112}},
               {.text_begin = 13, .place = {.line = 8, .column = 3, .begin = 120, .end = 131}}};
  read_statements(edition, Lexicon{});
  ASSERT_EQ(lead.statements.size(), 2U);
  EXPECT_EQ(lead.statements[0].place.line, 7U);
  EXPECT_EQ(lead.statements[0].place.column, 5U);
  EXPECT_EQ(lead.statements[1].text_begin, 13U);
  EXPECT_EQ(lead.statements[1].place.line, 8U);
  EXPECT_EQ(lead.statements[1].place.column, 3U);
}

// Leads out of pieces that part, qualify, measure, mark and break off.
std::string random_lead(std::mt19937& random) {
  static std::vector<std::string> const kPieceCases{"Leaves flat",
                                                    "sheaths red",
                                                    "usually",
                                                    "rarely",
                                                    "except in Aus",
                                                    "(except in A. bus)",
                                                    "2–3 mm long",
                                                    "(3–)4–6(–8)",
                                                    "× 2 mm",
                                                    "twice as long as wide",
                                                    "or",
                                                    "and",
                                                    "to",
                                                    "not",
                                                    "either",
                                                    "without beak",
                                                    "♂:",
                                                    "in females",
                                                    "(Fig. 3)",
                                                    "[seen once]",
                                                    "Note:",
                                                    "{beak-tip: bifid}",
                                                    "glaucous",
                                                    "stem winged",
                                                    "ca. 5",
                                                    "up to",
                                                    "(",
                                                    ")",
                                                    "Äste behaart",
                                                    "–",
                                                    "e.g.",
                                                    "subsp. cus",
                                                    "beak",
                                                    "{",
                                                    "]"};
  static std::vector<std::string> const kJoints{" ", ", ", "; ", ". ", " ", " "};
  std::string text;
  for (auto pieces = 1 + random() % 12; pieces > 0; --pieces) {
    if (!text.empty()) text += kJoints[random() % kJoints.size()];
    text += kPieceCases[random() % kPieceCases.size()];
  }
  return text;
}

// Letters, and the bytes of "ä" and its like; the signs of the pieces above begin with E2 or C2.
bool is_word_byte(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '\xC3' || c == '\xA4';
}

TEST(SliceProperties, HoldForWhateverIsPrinted) {
  std::mt19937 random{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed())};
  auto const lexicon = plant_lexicon();
  for (int round = 0; round < 800; ++round) {
    auto const text = random_lead(random);
    auto edition = couplet_of({text, random_lead(random)});
    read_statements(edition, round % 2 == 0 ? lexicon : Lexicon{});
    auto const& statements = edition.couplets[0].leads[0].statements;
    ASSERT_FALSE(statements.empty()) << text;
    std::vector<bool> covered(text.size());
    for (auto const& statement : statements) {
      // A slice of the text, at its place.
      ASSERT_LE(statement.text_begin + statement.text.size(), text.size()) << text;
      ASSERT_EQ(text.substr(statement.text_begin, statement.text.size()), statement.text) << text;
      ASSERT_FALSE(statement.text.empty()) << text;
      for (std::size_t i = 0; i < statement.text.size(); ++i) {
        covered[statement.text_begin + i] = true;
      }
      // A predicate, unless it is a note.
      if (statement.strength != Strength::noted) {
        ASSERT_FALSE(statement.any_of.empty()) << text;
      }
      for (auto const& atom : statement.any_of) {
        ASSERT_FALSE(atom.character.empty()) << text;
        ASSERT_NE(atom.states.empty(), atom.ranges.empty()) << text;
        ASSERT_TRUE(std::is_sorted(atom.states.begin(), atom.states.end())) << text;
        ASSERT_EQ(std::adjacent_find(atom.states.begin(), atom.states.end()), atom.states.end());
        for (auto const& range : atom.ranges) {
          ASSERT_LE(range.usual.low, range.usual.high) << text;
          ASSERT_LE(range.extreme.low, range.usual.low) << text;
          ASSERT_GE(range.extreme.high, range.usual.high) << text;
        }
      }
      ASSERT_EQ(statement.except.empty(), statement.exception_words.empty()) << text;
      // Pieces of it, in order, that share no byte.
      auto at = statement.text_begin;
      for (auto const& piece : statement.pieces) {
        ASSERT_GE(piece.begin, at) << text;
        ASSERT_LT(piece.begin, piece.end) << text;
        ASSERT_NE(text[piece.begin], ' ') << text;
        ASSERT_NE(text[piece.end - 1], ' ') << text;
        at = piece.end;
      }
      ASSERT_LE(at, statement.text_begin + statement.text.size()) << text;
      if (statement.strength == Strength::hedged) {
        ASSERT_FALSE(statement.hedge.empty()) << text;
      }
      if (statement.strength == Strength::excepted) {
        ASSERT_FALSE(statement.except.empty()) << text;
      }
    }
    // Every word is inside some statement; a lone joining word may be left between two.
    static std::set<std::string> const kJoining{"and", "or", "to", "either", "not", "up", "und"};
    for (std::size_t i = 0; i < text.size();) {
      if (!is_word_byte(text[i])) {
        ++i;
        continue;
      }
      auto end = i;
      while (end < text.size() && is_word_byte(text[end])) ++end;
      auto const word = text.substr(i, end - i);
      if (word.size() > 1 && kJoining.count(word) == 0) {
        ASSERT_TRUE(covered[i]) << "\"" << word << "\" of: " << text;
      }
      i = end;
    }
    ASSERT_TRUE(std::is_sorted(
        statements.begin(), statements.end(),
        [](Statement const& a, Statement const& b) { return a.text_begin < b.text_begin; }))
        << text;
  }
}

TEST(SliceProperties, HoldForBytesThatAreNoText) {
  std::mt19937 random{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed())};
  for (int round = 0; round < 500; ++round) {
    std::string text;
    for (auto bytes = random() % 60; bytes > 0; --bytes) text += static_cast<char>(random() % 256);
    auto edition = couplet_of({text, "Leaves flat"});
    read_statements(edition, plant_lexicon());
    for (auto const& statement : edition.couplets[0].leads[0].statements) {
      ASSERT_EQ(text.substr(statement.text_begin, statement.text.size()), statement.text);
    }
  }
}

// "subject <Leaves> state <flat>; subject <sheaths> state <red>"
std::string pieces_in(Lead const& lead) {
  std::string text;
  for (auto const& statement : lead.statements) {
    text += text.empty() ? "" : ";";
    for (auto const& piece : statement.pieces) {
      text += text.empty() ? "" : " ";
      text += to_word(piece.kind);
      text += " <" + lead.text.substr(piece.begin, piece.end - piece.begin) + ">";
    }
  }
  return text;
}

class PiecesOfStatements : public testing::TestWithParam<ReadingCase> {};

TEST_P(PiecesOfStatements, TellWhatItsWordsWereTakenFor) {
  auto edition = couplet_of({GetParam().text});
  read_statements(edition, plant_lexicon());
  EXPECT_EQ(pieces_in(edition.couplets[0].leads[0]), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kPieceCases[]{
    // the lexicon's states
    {"Leaves flat", "subject <Leaves> state <flat>"},
    {"Leaf blades usually flat or channelled",
     "subject <Leaf blades> hedge <usually> state <flat> state <channelled>"},
    {"Beak not bifid", "subject <Beak> state <not bifid>"},
    {"Utricle without a beak", "subject <Utricle> state <without a beak>"},
    {"Leaves broadly ovate, glaucous",
     "subject <Leaves> unread <broadly> state <ovate>; state <glaucous>"},
    {"Leaves flat (except in Aus bus); sheaths red",
     "subject <Leaves> state <flat> exception <except in Aus bus>; subject <sheaths> state <red>"},
    {"Leaves flat; except in Aus", "subject <Leaves> state <flat> exception <except in Aus>"},
    {"Except in Aus; leaves flat", "exception <Except in Aus> subject <leaves> state <flat>"},
    {"Males: leaves flat; sheaths red",
     "limit <Males> subject <leaves> state <flat>; subject <sheaths> state <red>"},
    {"Leaves flat (when dry)", "subject <Leaves> state <flat> limit <when dry>"},
    {"Leaves flat (Fig. 3)", "subject <Leaves> state <flat>"},
    {"Leaves {leaf-section: flat} plane",
     "subject <Leaves> mark <{leaf-section: flat}> state <plane>"},
    // numbers
    {"Spike (1.5–)2–3(–5) cm long", "subject <Spike> number <(1.5–)2–3(–5) cm long>"},
    {"Stem 4 mm thick when fresh", "subject <Stem> number <4 mm thick> limit <when fresh>"},
    {"Stigmas 3, rarely 2", "subject <Stigmas> number <3, rarely 2>"},
    {"Ligule twice as long as wide", "subject <Ligule> number <twice as long as wide>"},
    // what no lexicon knows
    {"Stem usually winged above", "subject <Stem> hedge <usually> state <winged above>"},
    {"Stem not winged, except in A. bus",
     "subject <Stem> state <not winged> exception <except in A. bus>"},
};

INSTANTIATE_TEST_SUITE_P(Words, PiecesOfStatements, testing::ValuesIn(kPieceCases));

TEST(EmptyLeads, HaveNoStatements) {
  auto edition = couplet_of({"", " . ; "});
  read_statements(edition, plant_lexicon());
  EXPECT_TRUE(edition.couplets[0].leads[0].statements.empty());
}

// Layout is not meaning: line breaks, no-break blanks, dashes of all lengths.
TEST(Layout, ChangesNothing) {
  auto const lexicon = plant_lexicon();
  auto const plain = reading_of("Spike 2-3 cm long; leaves egg-shaped, rarely flat", lexicon);
  EXPECT_EQ(reading_of("Spike 2–3 cm long;  leaves egg‑shaped,\trarely flat.", lexicon), plain);
  EXPECT_EQ(reading_of("Spike 2\u00A0—\u00A03\u00A0cm long; leaves\u00A0egg—shaped, rarely flat",
                       lexicon),
            plain);
}

}  // namespace
}  // namespace keydrift::test
