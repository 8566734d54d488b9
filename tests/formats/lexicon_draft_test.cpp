// Drafting a lexicon: what it holds, that it reads back, and how much of the scenarios it covers.

#include "keydrift/characters/drafting/draft_lexicon.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <iostream>
#include <map>
#include <random>
#include <set>

#include "edition_builder.hpp"
#include "finding_text.hpp"
#include "golden.hpp"
#include "keydrift/characters/lexicon_use.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "made_editions.hpp"
#include "seeds.hpp"

namespace keydrift {
namespace {

using test::make_edition;
using test::one_line_each;
using Lines = std::vector<std::string>;

Lexicon draft(std::vector<Edition> editions) {
  std::vector<Edition*> read;
  for (auto& edition : editions) read.push_back(&edition);
  (void)read_statements(read, {});
  std::vector<Edition const*> const given{read.begin(), read.end()};
  return draft_lexicon(given);
}

Edition edition_file(std::string const& name) {
  auto const text = test::slurp(std::string{KEYDRIFT_SOURCE_DIR} + "/fixtures/" + name);
  auto loaded = read_edition({.name = name, .bytes = text});
  EXPECT_TRUE(loaded.value.has_value()) << name;
  return std::move(loaded.value->edition);
}

Lexicon lexicon_file(std::string const& name) {
  auto const text = test::slurp(std::string{KEYDRIFT_SOURCE_DIR} + "/fixtures/" + name);
  return *read_lexicon({.name = name, .bytes = text}).value;
}

// "culm-shape: terete [not told from flattened]; trigonous"
std::string told(LexiconCharacter const& character) {
  auto text = character.id + ':';
  for (auto const& state : character.states) {
    text += ' ' + state.id;
    if (!state.not_told_from.empty()) {
      text += " [not told from";
      for (auto const& other : state.not_told_from) text += ' ' + other;
      text += ']';
    }
    text += ';';
  }
  if (character.kind != CharacterKind::categorical) {
    text += std::string{" "} + to_word(character.kind) + " in \"" + character.unit + '"';
  }
  return text;
}

Lines told(Lexicon const& lexicon) {
  Lines lines;
  for (auto const& character : lexicon.characters) lines.push_back(told(character));
  return lines;
}

TEST(LexiconDraft, LinesUpWhatContrasts) {
  auto const lexicon = draft(
      {make_edition("k.txt", {{"1",
                               {{"Culms terete; spikes 3-5 mm long; stigmas 2", "2"},
                                {"Culms trigonous; spikes 6-8 mm long; stigmas 3", "Aus bus"}}},
                              {"2",
                               {{"Leaf blades flat, channelled or inrolled", "Aus cus"},
                                {"Leaf blades absent", "Aus dus"}}}})});
  EXPECT_EQ(told(lexicon),
            (Lines{"culm-shape: terete; trigonous;",
                   "leaf-blade-shape: absent; channelled [not told from flat inrolled]; flat [not "
                   "told from channelled inrolled]; inrolled [not told from channelled flat];",
                   "spike-length: measurement in \"mm\"", "stigma-number: count in \"1\""}));
}

TEST(LexiconDraft, NeverTakesTwoWordsForOneState) {
  // Each was contrasted with "trigonous" only: nothing says whether they are the same.
  auto const lexicon =
      draft({make_edition("a.txt",
                          {{"1", {{"Culms terete", "Aus bus"}, {"Culms trigonous", "Aus cus"}}}}),
             make_edition("b.txt",
                          {{"1", {{"Culms round", "Aus bus"}, {"Culms trigonous", "Aus cus"}}}})});
  EXPECT_EQ(told(lexicon), Lines{"culm-shape: trigonous; round [not told from terete]; terete [not "
                                 "told from round];"});
}

TEST(LexiconDraft, KeepsPartsApartThatShareAWord) {
  auto const lexicon =
      draft({make_edition("k.txt", {{"1",
                                     {{"Leaf blades flat; leaf margins smooth", "Aus bus"},
                                      {"Leaf margins rough; leaf blades folded", "Aus cus"}}}})});
  EXPECT_EQ(told(lexicon),
            (Lines{"leaf-blade-shape: flat; folded;", "leaf-margin-surface: rough; smooth;"}));
}

TEST(LexiconDraft, CallsThePartsOfARowByTheirNumbers) {
  auto const editions = [] {
    return std::vector{
        make_edition("k.txt", {{"1",
                                {{"Tergite 1 longer than wide; tergite 2 black", "Aus bus"},
                                 {"Tergite 1 wider than long; tergite 2 red", "Aus cus"}}}})};
  };
  auto const lexicon = draft(editions());
  ASSERT_EQ(lexicon.characters.size(), 2U);
  EXPECT_EQ(lexicon.characters[0].id, "tergite-1-length-width");
  EXPECT_EQ(lexicon.characters[0].structure, "tergite 1");
  EXPECT_EQ(lexicon.characters[1].structure, "tergite 2");
  // What was drafted is read by it.
  auto read = editions();
  (void)read_statements(read[0], lexicon);
  for (auto const& lead : read[0].couplets[0].leads) {
    ASSERT_EQ(lead.statements.size(), 2U);
    for (auto const& statement : lead.statements) EXPECT_EQ(statement.origin, Origin::lexicon);
  }
}

TEST(LexiconDraft, SaysWhatItRestsOn) {
  auto const lexicon = draft({make_edition(
      "k.txt", {{"1", {{"Culms terete; leaves hairy", "2"}, {"Culms trigonous", "3"}}},
                {"2", {{"Culms terete", "Aus bus"}, {"Culms trigonous", "Aus cus"}}},
                {"3", {{"Spores warty", "Aus dus"}, {"Spores smooth", "Aus eus"}}}})});
  std::map<std::string, Support> support;
  std::map<std::string, Difficulty> difficulty;
  for (auto const& character : lexicon.characters) {
    difficulty[character.structure] = character.difficulty;
    for (auto const& state : character.states) support[state.id] = state.support;
  }
  EXPECT_EQ(support["terete"], (Support{"high", "contrasted in 2 couplets (k.txt: 1, 2)"}));
  EXPECT_EQ(support["warty"], (Support{"medium", "contrasted in 1 couplet (k.txt: 3)"}));
  EXPECT_EQ(support["hairy"],
            (Support{"low", "said, and contrasted with nothing, in 1 couplet (k.txt: 1)"}));
  EXPECT_EQ(difficulty["spore"], Difficulty::microscope);
  EXPECT_EQ(difficulty["leaf"], Difficulty::hand_lens);
  EXPECT_EQ(difficulty["culm"], Difficulty::naked_eye);
}

TEST(LexiconDraft, HangsThePartsOfAStructureOnItsPresence) {
  auto const lexicon = draft({make_edition(
      "k.txt",
      {{"1", {{"Utricles beaked", "2"}, {"Utricles beakless", "Aus bus"}}},
       {"2", {{"Beak of utricle bifid", "Aus cus"}, {"Beak of utricle entire", "Aus dus"}}}})});
  for (auto const& character : lexicon.characters) {
    if (character.structure != "beak of utricle") {
      EXPECT_FALSE(character.applicable_if.has_value());
      continue;
    }
    ASSERT_TRUE(character.applicable_if.has_value());
    EXPECT_EQ(lexicon.find(character.applicable_if->character)->structure, "utricle");
    EXPECT_EQ(character.applicable_if->states, Lines{"beaked"});
  }
}

TEST(LexiconDraft, GoesByRepeatedFirstWordsInOtherLanguages) {
  auto edition =
      make_edition("k.txt", {{"1", {{"Blüten rot", "2"}, {"Blüten weiß oder gelb", "Aus bus"}}},
                             {"2", {{"Blüten rot", "Aus cus"}, {"Blüten gelb", "Aus dus"}}}});
  edition.front.language = "de";
  EXPECT_EQ(told(draft({edition})),
            Lines{"bluten-gelb: gelb [not told from weiss]; rot; weiss [not told from gelb];"});
}

// The draft of random editions and of the scenarios, in both forms.
void expect_to_read_back(Lexicon const& lexicon, std::string const& what) {
  SCOPED_TRACE(what);
  auto const json = write_lexicon_json(lexicon);
  auto const csv = write_lexicon_csv(lexicon);
  for (auto const& text : {json, csv}) {
    if (lexicon.characters.empty()) continue;  // a table of no rows is no lexicon
    auto const loaded = read_lexicon({.name = "l", .bytes = text});
    ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front() << '\n' << text;
    EXPECT_EQ(one_line_each(loaded.findings), Lines{}) << text;
    EXPECT_EQ(write_lexicon_json(*loaded.value), json);
    EXPECT_EQ(write_lexicon_csv(*loaded.value), csv);
  }
}

TEST(LexiconDraft, ReadsBackFromBothForms) {
  auto const seeds = test::seeds(10);
  for (auto seed = seeds.begin; seed != seeds.end; ++seed) {
    expect_to_read_back(draft({test::odd_edition(seed), test::odd_edition(seed + 1)}),
                        "seed " + std::to_string(seed));
  }
  expect_to_read_back(draft({edition_file("velunaceae/edition-1998.txt")}), "velunaceae");
}

std::vector<Edition> velunaceae() {
  return {edition_file("velunaceae/edition-1974.txt"), edition_file("velunaceae/edition-1998.txt"),
          edition_file("velunaceae/edition-2024.txt")};
}
std::vector<Edition> crayfish() {
  return {edition_file("halvern-crayfish/edition-2001.txt"),
          edition_file("halvern-crayfish/edition-2019.txt")};
}

TEST(LexiconDraft, DoesNotHangOnTheOrderOfEditionsAndCouplets) {
  auto editions = velunaceae();
  auto const as_given = write_lexicon_csv(draft(editions));
  std::reverse(editions.begin(), editions.end());
  EXPECT_EQ(write_lexicon_csv(draft(editions)), as_given);
  std::mt19937 random{7};
  for (auto& edition : editions) {
    // Words and labels only: where leads lead to does not matter here.
    std::shuffle(edition.couplets.begin(), edition.couplets.end(), random);
    for (auto& couplet : edition.couplets)
      std::shuffle(couplet.leads.begin(), couplet.leads.end(), random);
  }
  EXPECT_EQ(write_lexicon_csv(draft(editions)), as_given);
}

void expect_coverage(std::vector<Edition> editions, std::string const& what) {
  auto const lexicon = draft(editions);
  std::vector<Edition*> read;
  for (auto& edition : editions) read.push_back(&edition);
  auto const use = check_lexicon_use(lexicon, read);
  std::size_t all = 0;
  std::size_t opaque = 0;
  for (auto const& coverage : use.coverage) {
    all += coverage.statements;
    opaque += coverage.opaque;
  }
  std::cout << what << ": the draft covers " << all - opaque << " of " << all << " statements\n";
  EXPECT_GE((all - opaque) * 100, all * 90);
  // What was drafted from the words is read out of them again.
  EXPECT_EQ(use.unused_characters, 0U);
  EXPECT_EQ(use.unused_states, 0U);
  for (auto const& finding : use.findings) {
    EXPECT_NE(finding.code, "lexicon-state-on-both-sides") << finding.message;
  }
}

TEST(LexiconDraft, CoversTheScenarios) {
  expect_coverage(velunaceae(), "Velunaceae");
  expect_coverage(crayfish(), "crayfish");
}

std::set<std::string> subjects_of(LexiconCharacter const& character) {
  std::set<std::string> subjects;
  for (auto const& subject : character.subjects) {
    subjects.insert(reading::singular_words(normalised_words(subject.text)));
  }
  return subjects;
}

std::set<std::string> phrases_of(LexiconState const& state) {
  std::set<std::string> phrases{normalised_words(state.id)};
  for (auto const& phrase : state.phrases) phrases.insert(normalised_words(phrase.text));
  return phrases;
}

bool meet(std::set<std::string> const& a, std::set<std::string> const& b) {
  return std::any_of(a.begin(), a.end(), [&](auto const& one) { return b.contains(one); });
}

// How much of a lexicon made by hand the draft finds: characters by structure and any of their
// states, states by structure and words.
void compare_with_hand_made(std::vector<Edition> const& editions, std::string const& hand_made,
                            std::size_t characters_wanted, std::size_t states_wanted) {
  auto const drafted = draft(editions);
  auto const by_hand = lexicon_file(hand_made);
  std::size_t characters = 0;
  std::size_t states = 0;
  std::size_t states_found = 0;
  for (auto const& character : by_hand.characters) {
    bool found = false;
    for (auto const& other : drafted.characters) {
      if (!meet(subjects_of(character), subjects_of(other)) || other.kind != character.kind)
        continue;
      found = found || (other.states.empty() && character.states.empty());
    }
    for (auto const& state : character.states) {
      ++states;
      bool const known =
          std::any_of(drafted.characters.begin(), drafted.characters.end(), [&](auto const& other) {
            return meet(subjects_of(character), subjects_of(other)) &&
                   std::any_of(other.states.begin(), other.states.end(), [&](auto const& one) {
                     return meet(phrases_of(state), phrases_of(one));
                   });
          });
      if (known) ++states_found;
      found = found || known;
    }
    if (found) ++characters;
  }
  std::cout << hand_made << ": of the lexicon made by hand the draft finds " << characters << " of "
            << by_hand.characters.size() << " characters and " << states_found << " of " << states
            << " states\n";
  EXPECT_GE(characters * 100, by_hand.characters.size() * characters_wanted);
  EXPECT_GE(states_found * 100, states * states_wanted);
}

TEST(LexiconDraft, FindsWhatWasMadeByHand) {
  compare_with_hand_made(velunaceae(), "velunaceae/lexicon.csv", 90, 90);
  compare_with_hand_made(crayfish(), "halvern-crayfish/lexicon.csv", 90, 90);
}

// --- lexicon held against editions --------------------------------------------------------------

TEST(LexiconUse, TellsWhatIsUnusedContradictoryAndMissing) {
  auto const loaded = read_lexicon({.name = "l.csv",
                                    .bytes = "character,subjects,kind,unit,state,phrases\n"
                                             "culm,culm,,,round,terete | three-sided\n"
                                             "culm,,,,flat,flattened\n"
                                             "tail,tail,,,forked,\n"
                                             "length,spike,measurement,°,,\n"
                                             "surface,culm,,,smooth,smooth\n"
                                             "feel,culm,,,even,smooth\n"});
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  auto edition =
      make_edition("k.txt", {{"1",
                              {{"Culms terete; spikes 3-5 mm long", "2"},
                               {"Culms three-sided; spikes 6-8 mm long", "Aus bus"}}},
                             {"2", {{"Petals red", "3"}, {"Petals blue", "Aus cus"}}},
                             {"3", {{"Culms smooth", "Aus dus"}, {"Petals white", "Aus eus"}}}});
  std::array<Edition*, 1> const editions{&edition};
  auto const use = check_lexicon_use(*loaded.value, editions);
  EXPECT_EQ(
      one_line_each(use.findings),
      (Lines{
          "l.csv:2:1: information: no lead names the state \"flat\" of the character \"culm\" "
          "[lexicon-unused-state] (keep it for records, or take it out)",
          "l.csv:4:1: warning: no lead speaks of the character \"tail\" [lexicon-unused-character] "
          "(see that its subjects and phrases are what the editions print, or take it out)",
          "l.csv:5:1: warning: the character \"length\" is measured in °, but \"spikes 3-5 mm "
          "long\" of k.txt is measured in mm [lexicon-unit-disagrees] (mend the unit or the kind, "
          "or add a character for what the leads measure)",
          "l.csv:5:1: warning: no lead speaks of the character \"length\" "
          "[lexicon-unused-character] (see that its subjects and phrases are what the editions "
          "print, or take it out)",
          "l.csv:6:1: warning: no lead speaks of the character \"surface\" "
          "[lexicon-unused-character] (see that its subjects and phrases are what the editions "
          "print, or take it out)",
          "l.csv:7:1: warning: \"smooth\" is a state of \"surface\" and of \"feel\", which share a "
          "subject [lexicon-ambiguous-phrase] (make the phrases longer, or the subjects "
          "different)",
          "k.txt:2:1: warning: \"Culms terete\" and \"Culms three-sided\" of couplet \"1\" are "
          "both "
          "the state \"round\" of \"culm\" [lexicon-state-on-both-sides] (part the state into two, "
          "each with its own phrases)",
          "k.txt:3:1: warning: nothing that couplet \"2\" says is in the lexicon "
          "[lexicon-uncovered-couplet] (add its characters, or put its words among the phrases "
          "of one that is there)",
          "k.txt:5:1: warning: \"smooth\" is read as a state of \"feel\" and may also mean "
          "\"surface\" [ambiguous-words] (name the structure in the words, or add a mark "
          "{character: state})"}));
  ASSERT_FALSE(use.worst.empty());
  EXPECT_EQ(edition[use.worst[0].couplet].label, "2");
}

}  // namespace
}  // namespace keydrift
