// Inline marks, and statements that came in with predicates.

#include <gtest/gtest.h>

#include "reading_support.hpp"

namespace keydrift::test {
namespace {

class Marks : public testing::TestWithParam<ReadingCase> {};

TEST_P(Marks, TakeThePlaceOfTheWords) {
  EXPECT_EQ(reading_of(GetParam().text, plant_lexicon()), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kMarks[]{
    {"Utricle tip cleft {beak-tip: bifid}", "beak-tip = bifid"},
    {"Utricle tip cleft {Beak-tip: Bifid}", "beak-tip = bifid"},
    {"Utricle tip cleft {beak-tip: two-toothed}", "beak-tip = bifid"},
    {"Utricle tip cleft {beak-tip: bifid | oblique}", "beak-tip = bifid|oblique"},
    {"Utricle tip whole {beak-tip: not bifid}", "beak-tip ≠ bifid"},
    {"Utricle tip whole {beak-tip: not bifid | oblique}", "beak-tip ≠ bifid|oblique"},
    {"Spikes short {spike-length: 2-3 cm}", "spike-length 20–30 mm"},
    {"Spikes short {spike-length: 2-3}", "spike-length 20–30 mm"},
    {"Spikes short {spike-length: (10–)20–30(–40) mm}", "spike-length 20–30 (10–40) mm"},
    {"Spikes short {spike-length: < 3 cm}", "spike-length <30 mm"},
    {"Few stigmas {stigmas: 2}", "stigmas 2"},
    {"Leaves flat {leaf-section: channelled}", "leaf-section = channelled"},
    {"{beak-tip: bifid}", "beak-tip = bifid"},
    {"Leaves flat; tip cleft {beak-tip: bifid}; sheaths red",
     "leaf-section = flat & beak-tip = bifid & sheath-colour = red"},
    {"Leaves flat, bluish {leaf-colour: glaucous}", "leaf-section = flat & leaf-colour = glaucous"},
    {"Tip cleft {beak-tip: bifid} and shining {fruit-skin: shining}",
     "beak-tip = bifid & fruit-skin = shining"},
    // strength, exception and limit stay with the words
    {"Tip usually cleft {beak-tip: bifid}", "beak-tip = bifid [usually]"},
    {"Tip cleft {beak-tip: bifid} except in Aus", "beak-tip = bifid [except Aus]"},
    {"Tip cleft, except in Aus {beak-tip: bifid}", "beak-tip = bifid [except Aus]"},
    {"♂: tip cleft {beak-tip: bifid}", "beak-tip = bifid [male]"},
    {"[Tip cleft {beak-tip: bifid}]", "beak-tip = bifid [noted]"},
};

INSTANTIATE_TEST_SUITE_P(Leads, Marks, testing::ValuesIn(kMarks));

TEST(Marks, DefineTheirCharacterWhereThereIsNoLexicon) {
  EXPECT_EQ(readings_of({"Tip cleft {Beak tip: Bifid}", "Tip whole {beak-tip: entire | not known}"},
                        Lexicon{}),
            (std::vector<std::string>{"beak-tip = bifid", "beak-tip = entire|not known"}));
  EXPECT_EQ(reading_of("Spikes short {spike length: 2-3 cm}", Lexicon{}), "spike-length 20–30 mm");
}

TEST(Marks, AreKeptInTheText) {
  auto edition = couplet_of({"Tip cleft {beak-tip: bifid}; leaves flat"});
  read_statements(edition, plant_lexicon());
  auto const& lead = edition.couplets[0].leads[0];
  EXPECT_EQ(lead.text, "Tip cleft {beak-tip: bifid}; leaves flat");
  EXPECT_EQ(lead.statements[0].text, "Tip cleft {beak-tip: bifid}");
  EXPECT_EQ(lead.statements[0].origin, Origin::mark);
  EXPECT_EQ(lead.statements[1].origin, Origin::lexicon);
}

struct BadMark {
  char const* text;
  char const* says;     // how the words are read instead
  char const* finding;  // as printed
};

class BadMarks : public testing::TestWithParam<BadMark> {};

TEST_P(BadMarks, AreReportedAndTheWordsAreReadInstead) {
  auto edition = couplet_of({GetParam().text, "Beak oblique"});
  auto const findings = read_statements(edition, plant_lexicon());
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(to_text(findings[0]), GetParam().finding);
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements), GetParam().says);
}

constexpr BadMark kBadMarks[]{
    {"Beak entire {beek-tip: bifid}", "beak-tip = entire",
     "test:1:13: error: the mark \"{beek-tip: bifid}\" names the character \"beek-tip\", which the "
     "lexicon lacks [unknown-character]\n"
     "  {beek-tip: bifid}\n"
     "  did you mean \"beak-tip\"?\n"},
    {"Beak entire {beak-tip: bifit}", "beak-tip = entire",
     "test:1:13: error: the mark \"{beak-tip: bifit}\" names the state \"bifit\", which the "
     "character \"beak-tip\" lacks [unknown-state]\n"
     "  {beak-tip: bifit}\n"
     "  did you mean \"bifid\"?\n"},
    {"Beak entire {beak-tip: purple}", "beak-tip = entire",
     "test:1:13: error: the mark \"{beak-tip: purple}\" names the state \"purple\", which the "
     "character \"beak-tip\" lacks [unknown-state]\n"
     "  {beak-tip: purple}\n"
     "  its states are \"bifid\", \"entire\", \"oblique\"\n"},
    {"Beak entire {beak-tip bifid}", "beak-tip = entire",
     "test:1:13: error: the mark \"{beak-tip bifid}\" does not name a character and a state "
     "[malformed-mark]\n"
     "  {beak-tip bifid}\n"
     "  write it as {character: state}\n"},
    {"Beak entire {beak-tip:}", "beak-tip = entire",
     "test:1:13: error: the mark \"{beak-tip:}\" names no state of \"beak-tip\" [malformed-mark]\n"
     "  {beak-tip:}\n"
     "  write it as {character: state}\n"},
    {"Beak entire {beak-tip: bifid", "beak-tip = bifid|entire",
     "test:1:13: error: a mark begins with \"{\" and has no \"}\" [malformed-mark]\n"
     "  {\n"
     "  write it as {character: state}\n"},
    {"Beak entire {spike-length: long}", "beak-tip = entire",
     "test:1:13: error: the mark \"{spike-length: long}\" gives \"long\" for the character "
     "\"spike-length\", which is a measurement [mark-without-number]\n"
     "  {spike-length: long}\n"
     "  write a number or a range like {spike-length: 3-5 cm}\n"},
    {"Beak entire {spike-length: 3 %}", "beak-tip = entire",
     "test:1:13: error: the mark \"{spike-length: 3 %}\" gives \"3 %\" for the character "
     "\"spike-length\", which is measured in \"cm\" [unit-in-mark]\n"
     "  {spike-length: 3 %}\n"
     "  write the number in that unit\n"},
};

INSTANTIATE_TEST_SUITE_P(Leads, BadMarks, testing::ValuesIn(kBadMarks));

Statement given(std::string text, Atom atom) {
  Statement statement;
  statement.text = std::move(text);
  statement.any_of = {std::move(atom)};
  statement.origin = Origin::mark;
  return statement;
}

TEST(GivenStatements, AreKeptAndTheRestIsReadFromTheWords) {
  auto edition = couplet_of({"Tip cleft; leaves flat", "Tip whole; leaves inrolled"});
  edition.couplets[0].leads[0].statements = {
      given("Tip cleft", {.character = "beak-tip", .states = {"bifid"}, .ranges = {}, .unit = ""})};
  read_statements(edition, plant_lexicon());
  auto const& lead = edition.couplets[0].leads[0];
  EXPECT_EQ(said(lead.statements), "beak-tip = bifid & leaf-section = flat");
  EXPECT_EQ(lead.statements[0].text_begin, 0U);
  EXPECT_EQ(lead.statements[0].place.line, 1U);
}

TEST(GivenStatements, AreAllThereIsWhenTheyAreNotInTheText) {
  auto edition = couplet_of({"Tip cleft; leaves flat", "Leaves inrolled"});
  edition.couplets[0].leads[0].statements = {
      given("", {.character = "beak-tip", .states = {"bifid"}, .ranges = {}, .unit = ""})};
  read_statements(edition, plant_lexicon());
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements), "beak-tip = bifid");
}

TEST(GivenStatements, ThatWereReadFromTheWordsAreReadAgain) {
  auto edition = couplet_of({"Leaves flat", "Leaves inrolled"});
  read_statements(edition, Lexicon{});
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements), "~leaves flat = leaves flat");
  read_statements(edition, plant_lexicon());
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements), "leaf-section = flat");
}

TEST(ReadingCoverage, CountsWhatTheStatementsRestOn) {
  auto edition = couplet_of({"Tip cleft {beak-tip: bifid}; leaves flat; petiole 3 mm; stem winged",
                             "Tip whole; stem round"});
  read_statements(edition, plant_lexicon());
  auto const covered = coverage(edition);
  EXPECT_EQ(covered.statements, 6U);
  EXPECT_EQ(covered.by_mark, 1U);
  EXPECT_EQ(covered.by_lexicon, 1U);
  EXPECT_EQ(covered.by_number, 1U);
  EXPECT_EQ(covered.opaque, 3U);
}

TEST(MissingUnits, AreReported) {
  auto edition = couplet_of({"Spike 2–3 long", "Spike 4 cm long"});
  auto const findings = read_statements(edition, plant_lexicon());
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(to_text(findings[0]),
            "test:1:1: warning: a measurement in \"Spike 2–3 long\" has no unit [missing-unit]\n"
            "  Spike 2–3 long\n"
            "  print the unit behind the number\n");
}

}  // namespace
}  // namespace keydrift::test
