#include "keydrift/formats/lexicon_file.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "golden.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

Loaded<Lexicon> read_lexicon_text(std::string_view text) {
  return read_lexicon({.name = "l.csv", .bytes = text});
}
Lines lexicon_errors(std::string_view text) {
  auto const loaded = read_lexicon_text(text);
  EXPECT_FALSE(loaded);
  return one_line_each(loaded.findings);
}

constexpr std::string_view kHeader =
    "character,label,structure,property,subjects,kind,unit,difficulty,applicable "
    "if,tolerance,state,phrases\n";

// Everything a lexicon can hold, with the words that a spreadsheet or a list would mangle.
Lexicon full_lexicon() {
  Lexicon lexicon;
  lexicon.name = "l.csv";
  LexiconCharacter beak;
  beak.id = "beak";
  beak.label = "=beak, of the \"utricle\"";
  beak.structure = "utricle";
  beak.property = "beak";
  beak.subjects = {{"beak", "en"},     {"beaks", ""},    {"de: odd", ""},
                   {"Schnabel", "de"}, {"bec", "fr-CA"}, {"a|b\\c", ""}};
  beak.difficulty = Difficulty::hand_lens;
  beak.states = {{"present", {{"beaked", ""}, {"with a beak", ""}, {"geschnäbelt", "de"}}},
                 {"absent", {}}};
  LexiconCharacter tip;
  tip.id = "beak-tip";
  tip.structure = "beak";
  tip.kind = CharacterKind::categorical;
  tip.difficulty = Difficulty::dissection;
  tip.applicable_if = Applicability{"beak", {"present", "absent"}};
  tip.tolerance = 0.25;
  tip.states = {{"bifid", {{"-split", ""}, {"'=split", ""}}}, {"entire", {{"whole", "en"}}}};
  tip.states[0].not_told_from = {"entire"};
  tip.states[0].support = {"low", "=contrasted in 1 couplet (\"1998\": 5)"};
  tip.support = {"medium", "2 statements | 1 couplet"};
  LexiconCharacter spike;
  spike.id = "spike-length";
  spike.label = "length of the spike";
  spike.subjects = {{"spike", ""}};
  spike.kind = CharacterKind::measurement;
  spike.unit = "mm";
  spike.difficulty = Difficulty::naked_eye;
  spike.tolerance = 0;
  LexiconCharacter stamens;
  stamens.id = "stamens";
  stamens.kind = CharacterKind::count;
  stamens.unit = "1";
  stamens.difficulty = Difficulty::microscope;
  lexicon.characters = {beak, tip, spike, stamens};
  return lexicon;
}

TEST(LexiconFile, WritesCsvForASpreadsheet) {
  test::expect_golden("lexicon/full.csv", write_lexicon_csv(full_lexicon()));
}

TEST(LexiconFile, WritesJson) {
  test::expect_golden("lexicon/full.json", write_lexicon_json(full_lexicon()));
}

TEST(LexiconFile, LosesNothingInEitherForm) {
  auto const lexicon = full_lexicon();
  auto const json = write_lexicon_json(lexicon);
  auto const csv = write_lexicon_csv(lexicon);
  for (auto const& text : {json, csv}) {
    auto const loaded = read_lexicon_text(text);
    ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
    EXPECT_EQ(one_line_each(loaded.findings), Lines{});
    EXPECT_EQ(write_lexicon_json(*loaded.value), json);
    EXPECT_EQ(write_lexicon_csv(*loaded.value), csv);
  }
}

TEST(LexiconFile, ReadsEveryFieldOfTheCsv) {
  auto const loaded =
      read_lexicon_text(std::string{kHeader} +
                        "beak,beak,utricle,tip,beak | de: Schnabel,categorical,,hand lens,,0.2,"
                        "bifid,two-toothed | de-AT: zweispitzig\n"
                        ",,,,,,,,,,entire,\n"
                        "length,,,,,Measurement,cm,naked eye,beak = bifid | entire,\"0,5\",,\n");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  ASSERT_EQ(loaded.value->characters.size(), 2U);
  auto const& beak = loaded.value->characters[0];
  EXPECT_EQ(beak.id, "beak");
  EXPECT_EQ(beak.label, "beak");
  EXPECT_EQ(beak.structure, "utricle");
  EXPECT_EQ(beak.property, "tip");
  EXPECT_EQ(beak.subjects, (std::vector<Phrase>{{"beak", ""}, {"Schnabel", "de"}}));
  EXPECT_EQ(beak.kind, CharacterKind::categorical);
  EXPECT_EQ(beak.difficulty, Difficulty::hand_lens);
  EXPECT_EQ(beak.tolerance, 0.2);
  ASSERT_EQ(beak.states.size(), 2U);
  EXPECT_EQ(beak.states[0].id, "bifid");
  EXPECT_EQ(beak.states[0].phrases,
            (std::vector<Phrase>{{"two-toothed", ""}, {"zweispitzig", "de-AT"}}));
  EXPECT_EQ(beak.states[1].id, "entire");
  EXPECT_TRUE(beak.states[1].phrases.empty());
  EXPECT_EQ(beak.place.line, 2U);
  auto const& length = loaded.value->characters[1];
  EXPECT_EQ(length.kind, CharacterKind::measurement);
  EXPECT_EQ(length.unit, "cm");
  EXPECT_EQ(length.tolerance, 0.5);
  ASSERT_TRUE(length.applicable_if.has_value());
  EXPECT_EQ(length.applicable_if->character, "beak");
  EXPECT_EQ(length.applicable_if->states, (Lines{"bifid", "entire"}));
  EXPECT_EQ(length.place.line, 4U);
}

TEST(LexiconFile, FindsTheRowsOfACharacterAfterSorting) {
  auto const loaded =
      read_lexicon_text("character,state,kind,label\nb,y,,\na,x,,Aa\nb,x,categorical,Bb\n");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  ASSERT_EQ(loaded.value->characters.size(), 2U);
  EXPECT_EQ(loaded.value->characters[0].label, "Bb");
  EXPECT_EQ(loaded.value->characters[0].states.size(), 2U);
}

TEST(LexiconFile, ReportsEveryCellThatIsWrong) {
  EXPECT_EQ(
      lexicon_errors("character,kind,difficulty,tolerance,applicable if,state,phrases,label\n"
                     ",,,,,,,\n,,,,,x,,\n"
                     "a,categorial,,,,x,,A\n"
                     "a,,hand lense,,,x,,B\n"
                     "a,,,2,,,p,\n"
                     "b,count,,half,a,,,\n"),
      (Lines{"l.csv:3:1: error: the first row names no character [missing-name] (write the "
             "character's id in the column \"character\")",
             "l.csv:4:3: error: \"categorial\" is not a kind of character [unknown-kind] (did you "
             "mean \"categorical\"?)",
             "l.csv:5:4: error: \"hand lense\" is not a difficulty [unknown-difficulty] (did you "
             "mean \"hand lens\"?)",
             "l.csv:5:17: error: \"a\" has the state \"x\" twice [repeated-state] (put all phrases "
             "of the state into one row)",
             "l.csv:5:20: error: \"a\" has the label \"B\" here and \"A\" in line 4 "
             "[conflicting-cell] (keep one of the two and leave the cell blank in further rows)",
             "l.csv:6:5: error: a tolerance is a share from 0 to less than 1, not \"2\" "
             "[bad-number] (write 0.1 for a tenth)",
             "l.csv:6:8: error: the row has phrases but no state of \"a\" that they express "
             "[missing-name] (write the state's id in the column \"state\")",
             "l.csv:7:10: error: a tolerance is a share from 0 to less than 1, not \"half\" "
             "[bad-number] (write 0.1 for a tenth)",
             "l.csv:7:15: error: \"a\" does not say which states of which character are needed "
             "[bad-applicability] (write it as \"beak = present | long\")"}));
}

TEST(LexiconFile, ReportsWhatIsWrongInTheJson) {
  EXPECT_EQ(
      lexicon_errors(
          "{\"keydrift-lexicon\": 1, \"characters\": [\n"
          "{\"label\": \"A\", \"kind\": \"kount\", \"tolerance\": 1.5},\n"
          "{\"id\": \"b\", \"difficulty\": \"loup\", \"states\": [{\"phrases\": [7]}]}]}"),
      (Lines{"l.csv:2:1: error: this character has no \"id\" [missing-field] (add \"id\" with "
             "a text)",
             "l.csv:2:24: error: \"kount\" is not a kind of character [unknown-kind] (did "
             "you mean \"count\"?)",
             "l.csv:2:46: error: a tolerance is a share from 0 to less than 1, not 1.5 "
             "[bad-number] (write 0.1 for a tenth)",
             "l.csv:3:27: error: \"loup\" is not a difficulty [unknown-difficulty] (write "
             "one of \"naked eye\", \"hand lens\", \"microscope\" and \"dissection\")",
             "l.csv:3:46: error: this state has no \"id\" [missing-field] (add \"id\" with a "
             "text)",
             "l.csv:3:59: error: a phrase is an object, not a number [wrong-type] (write an "
             "object in braces here)"}));
  EXPECT_EQ(lexicon_errors("{\"keydrift\": 1}"),
            Lines{"l.csv:1:1: error: the JSON does not say \"keydrift-lexicon\": 1, so it is of "
                  "another kind [no-version] (check that this is the right file, or add "
                  "\"keydrift-lexicon\": 1 to its outermost object)"});
}

TEST(LexiconFile, RefusesALexiconThatDoesNotHoldTogether) {
  EXPECT_EQ(lexicon_errors("character,state,applicable if\nbeak,x,\ntip,y,beek = x\n"),
            Lines{"l.csv:3:1: error: the character \"tip\" depends on \"beek\", which the lexicon "
                  "lacks [lexicon-applicability-character] (did you mean \"beak\"?)"});
}

TEST(LexiconFile, SaysWhichColumnsItWants) {
  EXPECT_EQ(lexicon_errors("charakter,state\na,x\n"),
            (Lines{"l.csv:1:1: error: the first row has no column \"character\"; it has "
                   "\"charakter\" and \"state\" [missing-column] (a lexicon wants the columns "
                   "\"character\" and \"state\" named in its first row)",
                   "l.csv:1:1: warning: the column \"charakter\" is not one of a lexicon; it was "
                   "not read [unknown-column] (did you mean \"character\"?)"}));
  EXPECT_EQ(lexicon_errors(" "),
            Lines{"l.csv:1:1: error: the file holds nothing but blanks [empty-file] "
                  "(check that this is the right file and that it was saved)"});
}

TEST(LexiconFile, ReadsTheLexiconsOfTheScenarios) {
  for (auto const* name : {"velunaceae/lexicon.csv", "two-editions/lexicon.csv"}) {
    auto const text = test::slurp(std::string{KEYDRIFT_SOURCE_DIR} + "/fixtures/" + name);
    auto const loaded = read_lexicon({.name = name, .bytes = text});
    ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
    EXPECT_EQ(one_line_each(loaded.findings), Lines{});
    auto const again = read_lexicon({.name = name, .bytes = write_lexicon_csv(*loaded.value)});
    EXPECT_EQ(write_lexicon_json(*again.value), write_lexicon_json(*loaded.value));
  }
}

TEST(LexiconFile, NeverYieldsAValueTogetherWithAnError) {
  test::read_damaged(
      "character,subjects,kind,tolerance,applicable if,state,phrases\n"
      "a,\"de: x | y\",categorical,0.1,,s,\"p\\|q\"\n,,,,,t,\nb,,count,,a = s,,\n",
      read_lexicon_text);
  test::read_damaged(
      R"({"keydrift-lexicon": 1, "characters": [{"id": "a", "states": [{"id": "s", "phrases": ["p",
 {"text": "q", "language": "de"}]}], "tolerance": 0.1, "kind": "categorical"}]})",
      read_lexicon_text);
}

}  // namespace
}  // namespace keydrift
