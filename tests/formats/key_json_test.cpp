#include "keydrift/formats/key_json.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "edition_builder.hpp"
#include "finding_text.hpp"
#include "golden.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

// An edition that uses every field there is.
Edition full_edition() {
  auto edition = test::make_edition(
      "key.txt",
      {{"1", {{"Beak bifid; spike 3–8 mm, rarely red", "2"}, {"Beak entire", "Cus cus"}}},
       {"2", {{"Scales dark", "Aus bus | Aus dus"}, {"Scales pale", ""}, {"Scales none", ""}}},
       {"1", {{"Rostrum long", "Bus bus"}, {"Rostrum short", "Bus bus"}}}});
  auto& front = edition.front;
  front.title = "Key to the \"Ausidae\"";
  front.edition = "2nd";
  front.year = 1998;
  front.authors = {"R. Roe", "D. Doe"};
  front.language = "en";
  front.scope = {.taxa = "the species of Aus",
                 .region = "Halvern Basin",
                 .places = {"Halvern", "Outer Marches"},
                 .excluded_taxa = {"Dus"},
                 .listed_taxa = {"Aus bus", "Cus cus"},
                 .life_stage = "adult",
                 .sex = "male",
                 .material = "dried"};
  front.synonyms = {{"Aus bus", "Bus aus", {.line = 4, .column = 11, .begin = 90, .end = 97}}};
  front.other = {{"Printed at", "Halvern"}, {"Series", "3; 4"}};
  edition.parts = {{"", CoupletId{0}, {}}, {"Key B", CoupletId{2}, {.line = 20, .column = 1}}};
  edition.notes = {{"After the types.\nAnd the rest.", {.line = 30, .column = 2}}};
  edition.taxa[0].authorship = "(Roe) Doe";
  edition.couplets[1].back_references = {{"1", {.line = 3, .column = 3, .begin = 50, .end = 51}}};
  edition.couplets[1].notes = {"See the plate."};

  auto& lead = edition.couplets[0].leads[0];
  lead.runs.push_back({11, {.line = 2, .column = 5, .begin = 30, .end = 52}});
  lead.notes = {"N.B. worn beaks look entire"};
  lead.figures = {"Fig. 7", "Pl. 2"};
  lead.taxon_remark = "in part";
  Statement beak;
  beak.text = "Beak bifid";
  beak.place = {.line = 1, .column = 4, .begin = 3, .end = 13};
  beak.strength = Strength::excepted;
  beak.any_of = {{.character = "beak-tip",
                  .states = {"bifid", "notched"},
                  .ranges = {},
                  .unit = "",
                  .negated = true}};
  beak.except = {"Aus", "C. cus"};
  beak.exception_words = "except in Aus and C. cus";
  beak.limits = {{LimitKind::sex, "male"}, {LimitKind::life_stage, "adult"}};
  beak.origin = Origin::lexicon;
  Statement spike;
  spike.text = "spike 3–8 mm, rarely red";
  spike.text_begin = 12;
  spike.strength = Strength::hedged;
  spike.hedge = "rarely";
  NumericRange four_to_six{.usual = {.low = 4, .high = 6}, .extreme = {.low = 3, .high = 8.25}};
  NumericRange above{.usual = {.low = 9, .high = kInfinity, .low_open = true},
                     .extreme = {.low = 8, .high = kInfinity, .low_open = true},
                     .approximate = true};
  spike.any_of = {
      {.character = "spike-length",
       .states = {},
       .ranges = {four_to_six, above},
       .unit = "mm",
       .negated = false},
      {.character = "~red", .states = {"red"}, .ranges = {}, .unit = "", .negated = false}};
  Statement noted;
  noted.text = "red";
  noted.text_begin = 34;
  noted.strength = Strength::noted;
  lead.statements = {beak, spike, noted};
  Statement count;
  count.text = "Beak entire";
  count.any_of = {{.character = "~n",
                   .states = {},
                   .ranges = {{.usual = {.low = -kInfinity, .high = 0.1},
                               .extreme = {.low = -kInfinity, .high = 0.1}}},
                   .unit = "1",
                   .negated = false}};
  count.origin = Origin::number;
  edition.couplets[0].leads[1].statements = {count};
  edition.couplets[1].leads[1].destination = ToKey{"Key B"};
  edition.couplets[1].leads[2].destination = Unresolved{"27"};
  edition.couplets[1].leads[0].destination_printed = "Aus bus Roe, p. 44 or A. dus";
  return edition;
}

Loaded<Edition> read_json(std::string_view json) {
  return read_key_json({.name = "k.json", .bytes = json});
}

Lines json_errors(std::string_view json) {
  auto const loaded = read_json(json);
  EXPECT_FALSE(loaded);
  return one_line_each(loaded.findings);
}

// The findings of a JSON text in which "@" marks, in ascending order, where each finding must
// stand; the rest of each finding ("error: …") is given in the order of the findings.
struct Marked {
  std::string json;
  std::vector<std::string> places;  // "k.json:line:column: "
};
Marked without_marks(std::string_view marked) {
  Marked out;
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  for (char const c : marked) {
    if (c == '@') {
      out.places.push_back("k.json:" + std::to_string(line) + ":" + std::to_string(column) + ": ");
      continue;
    }
    out.json += c;
    if (c == '\n') {
      ++line;
      column = 1;
    } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80) {
      ++column;
    }
  }
  return out;
}
void expect_errors(std::string_view marked, Lines wanted) {
  auto const [json, places] = without_marks(marked);
  ASSERT_EQ(places.size(), wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) wanted[i] = places[i] + wanted[i];
  EXPECT_EQ(json_errors(json), wanted);
}

// A key of one couplet with `extra` fields in its outermost object, written on one line.
std::string small_key(std::string const& extra = "", std::string const& lead_extra = "") {
  return R"({"keydrift": 1, )" + extra +
         R"("couplets": [{"label": "1", "leads": [{"text": "Beak bifid", )" + lead_extra +
         R"("destination": {"taxa": ["Aus bus"]}}, {"text": "Beak entire", )" +
         R"("destination": {"taxa": ["Aus cus"]}}]}]})";
}

TEST(KeyJson, WritesEveryFieldInAStableOrder) {
  Finding finding;
  finding.code = "dangling-couplet";
  finding.severity = Severity::warning;
  finding.file = "key.txt";
  finding.place = {.line = 4, .column = 9};
  finding.printed = "27";
  finding.message = "lead 2b leads to couplet \"27\", which this key lacks";
  finding.remedy = "did you mean \"2\"?";
  finding.related = {{{.line = 2, .column = 1}, "couplet 2 stands here"}};
  std::vector const findings{finding};
  test::expect_golden("key_json/full.json", write_key_json(full_edition(), findings));
}

TEST(KeyJson, WritesTheFieldsThatStayWhereThereIsNothingToPutInThem) {
  auto edition = test::make_edition("s.txt", {{"1", {{"A", ""}, {"B", ""}}}});
  for (auto& lead : edition.couplets[0].leads) lead.label.clear();
  auto const text = write_key_json(edition);
  for (auto const* field :
       {"\"taxa\": []", "\"findings\": []", "\"scope\": {}", "\"label\": \"\""}) {
    EXPECT_NE(text.find(field), std::string::npos) << field << '\n' << text;
  }
  auto const loaded = read_json(text);
  ASSERT_TRUE(loaded);
  EXPECT_TRUE(same_content(*loaded.value, edition));
}

TEST(KeyJson, ReadsBackWhatItWrote) {
  auto const edition = full_edition();
  auto const text = write_key_json(edition);
  auto const loaded = read_json(text);
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  EXPECT_TRUE(same_content(*loaded.value, edition));
  EXPECT_EQ(loaded.value->name, "key.txt");
  EXPECT_EQ(write_key_json(*loaded.value), text);  // places, runs and statements too
}

TEST(KeyJson, ReadsBackSmallKeysOfEveryShape) {
  for (int shape = 0; shape < 64; ++shape) {
    auto const to = [&](int bit, char const* couplet) {
      return (shape >> bit & 1) != 0 ? std::string{couplet} : "Taxon " + std::to_string(bit);
    };
    auto const edition = test::make_edition(
        "s.txt", {{(shape & 1) != 0 ? "1" : "1a", {{"A", to(1, "2")}, {"B", to(2, "3")}}},
                  {"2", {{"C", to(3, "3")}, {"D", to(4, "1")}, {"E", ""}}},
                  {(shape & 32) != 0 ? "2" : "3", {{"F", to(5, "nowhere")}}}});
    auto const text = write_key_json(edition);
    auto const loaded = read_json(text);
    ASSERT_TRUE(loaded) << text;
    EXPECT_TRUE(same_content(*loaded.value, edition)) << text;
    EXPECT_EQ(write_key_json(*loaded.value), text);
  }
}

TEST(KeyJson, ReadsBackRangesWithEveryKindOfEnd) {
  auto edition = test::make_edition("s.txt", {{"1", {{"A", "Aus"}, {"B", "Bus"}}}});
  auto const interval = [](double low, double high, unsigned open) {
    return Interval{low, high, (open & 1U) != 0, (open & 2U) != 0};
  };
  for (unsigned open = 0; open < 16; ++open) {
    for (double const reach : {0.0, 1.5, kInfinity}) {
      Statement statement;
      statement.text = "A";
      NumericRange const range{.usual = interval(0.1, 4, open),
                               .extreme = interval(0.1 - reach, 4 + reach, open >> 2U),
                               .approximate = open == 5};
      statement.any_of = {{"c", {}, {range}, "mm", false}};
      edition.couplets[0].leads[0].statements = {statement};
      auto const loaded = read_json(write_key_json(edition));
      ASSERT_TRUE(loaded);
      EXPECT_EQ(loaded.value->couplets[0].leads[0].statements[0].any_of, statement.any_of)
          << open << ' ' << reach;
    }
  }
}

TEST(KeyJson, ReadsTheExampleOfTheContract) {
  auto const loaded = read_json(
      R"({"keydrift": 1, "title": "Key", "edition": "1998", "year": 1998, "language": "en",
 "scope": {"taxa": "Aus", "region": "Halvern"},
 "couplets": [{"label": "7", "leads": [{"label": "7a", "text": "beak bifid", "source": {"line": 31, "column": 1},
   "destination": {"couplet": "8"},
   "statements": [{"text": "beak bifid", "character": "utricle-beak", "states": ["bifid"], "strength": "firm", "except": ["Aus"]}]},
   {"label": "7b", "text": "beak entire", "destination": {"key": "Key B"}}]},
  {"label": "8", "leads": [{"text": "x", "destination": {"taxa": ["Aus bus", "Aus cus"]}},
   {"text": "y", "destination": {"unresolved": "27"}}]}],
 "taxa": [{"name": "Aus cus", "authorship": "Roe"}],
 "findings": [{"code": "…", "severity": "error", "line": 12, "column": 3, "message": "…"}]}
)");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  auto const& edition = *loaded.value;
  EXPECT_EQ(edition.name, "k.json");
  EXPECT_EQ(edition.front.year, 1998);
  ASSERT_EQ(edition.couplets.size(), 2U);
  auto const& lead = edition.couplets[0].leads[0];
  EXPECT_EQ(lead.place, (Place{.line = 31, .column = 1}));
  EXPECT_EQ(lead.destination, Destination{ToCouplet{CoupletId{1}}});
  ASSERT_EQ(lead.statements.size(), 1U);
  auto const& statement = lead.statements[0];
  EXPECT_EQ(statement.origin, Origin::mark);
  EXPECT_EQ(statement.any_of, (std::vector<Atom>{{.character = "utricle-beak",
                                                  .states = {"bifid"},
                                                  .ranges = {},
                                                  .unit = "",
                                                  .negated = false}}));
  EXPECT_EQ(statement.except, Lines{"Aus"});
  EXPECT_EQ(edition.couplets[0].leads[1].destination, Destination{ToKey{"Key B"}});
  // Listed taxa come first; others follow in the order of their naming.
  ASSERT_EQ(edition.taxa.size(), 2U);
  EXPECT_EQ(edition.taxa[0].name, "Aus cus");
  EXPECT_EQ(edition.taxa[1].name, "Aus bus");
  EXPECT_EQ(edition.couplets[1].leads[0].destination,
            (Destination{ToTaxa{{TaxonId{1}, TaxonId{0}}}}));
  EXPECT_EQ(edition.couplets[1].leads[1].destination, Destination{Unresolved{"27"}});
  EXPECT_EQ(edition.parts.size(), 1U);
}

TEST(KeyJson, TakesPlacesFromTheJsonWhereItGivesNone) {
  auto const loaded = read_json(
      "{\"keydrift\": 1,\n \"couplets\": [\n  {\"label\": \"µ1\", \"leads\": [\n"
      "   {\"text\": \"Äh; beak\", \"statements\": [{\"text\": \"beak\"}],"
      " \"destination\": {\"taxa\": [\"Aus\"]}}]}]}");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  auto const& couplet = loaded.value->couplets[0];
  EXPECT_EQ(couplet.place.line, 3U);
  EXPECT_EQ(couplet.place.column, 3U);
  auto const& lead = couplet.leads[0];
  EXPECT_EQ(lead.place.line, 4U);
  EXPECT_EQ(lead.place.column, 4U);
  auto const beak = place_in_text(lead, lead.text.find("beak"), 4);
  EXPECT_EQ(beak.line, 4U);
  EXPECT_EQ(beak.column, 18U);
  EXPECT_EQ(lead.statements[0].text_begin, 5U);
  EXPECT_EQ(lead.statements[0].place.column, 40U);
  EXPECT_EQ(lead.destination_place.column, 74U);
  EXPECT_EQ(loaded.value->taxa[0].place.line, 4U);
}

TEST(KeyJson, ComposesTextAndDropsControlCharacters) {
  auto const loaded = read_json(small_key(R"("title": "e\u0301\u0000x", )"));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->front.title, "é x");
}

TEST(KeyJson, SaysWhereJsonIsMalformed) {
  expect_errors("{\"keydrift\": 1,\n \"couplets\": [1 @2]}",
                {"error: this is not well-formed JSON: unexpected number literal; expected ']' "
                 "[malformed-json] (mend it here, or a little before this place)"});
  expect_errors("{\"keydrift\": 1,\n \"title\": \"é\" @tru",
                {"error: this is not well-formed JSON: invalid literal; last read: '\"é\" tru'; "
                 "expected '}' [malformed-json] (mend it here, or a little before this place)"});
  expect_errors("{\"keydrift\": 1@",
                {"error: this is not well-formed JSON: unexpected end of input; expected '}' "
                 "[malformed-json] (mend it here, or a little before this place)"});
  expect_errors("{\"keydrift\": @1e999}",
                {"error: this is not well-formed JSON: number overflow parsing '1e999' "
                 "[malformed-json] (mend it here, or a little before this place)"});
}

TEST(KeyJson, RefusesJsonThatIsNestedTooDeep) {
  expect_errors(
      "{\"keydrift\": 1, \"x\": " + std::string(63, '[') + '@' + std::string(100'000, '['),
      {"error: objects and lists are nested more than 64 deep [json-too-deep] (check that "
       "this is the right file)"});
}

TEST(KeyJson, WantsItsVersion) {
  Lines const no_version{
      "error: the JSON does not say \"keydrift\": 1, so it is of another kind [no-version] (check "
      "that this is the right file, or add \"keydrift\": 1 to its outermost object)"};
  expect_errors("\n@[]",
                {"error: the JSON is a list, not an object that says \"keydrift\": 1 [no-version] "
                 "(check that this is the right file)"});
  expect_errors("@{\"couplets\": []}", no_version);
  expect_errors("{\"keydrift\": @2}",
                {"error: the file has version 2 of the format; this program reads version 1 "
                 "[newer-version] (load it with a newer version of the program)"});
  expect_errors("{\"keydrift\": @\"1\"}",
                {"error: \"keydrift\" must be the number 1 [no-version] (write \"keydrift\": 1)"});
}

TEST(KeyJson, WantsCouplets) {
  expect_errors("@{\"keydrift\": 1}",
                {"error: the key has no couplets [no-couplets] (add them as \"couplets\")"});
}

TEST(KeyJson, SaysWhichValuesAreOfTheWrongType) {
  expect_errors(
      small_key(R"("title": @3, "year": @1998.5, "authors": ["a", @1], )"),
      {"error: \"title\" wants a text, not a number [wrong-type] (write a text here)",
       "error: \"year\" wants a whole number [wrong-type] (write the year alone, and anything else "
       "as \"edition\")",
       "error: \"authors\" wants a list of texts, not a number [wrong-type] (write a list of texts "
       "here)"});
  expect_errors(
      R"({"keydrift": 1, "couplets": [@7, @{"leads": @"x"}], "taxa": @3})",
      {"error: a couplet is an object, not a number [wrong-type] (write an object in braces here)",
       "error: this couplet has no \"label\" [missing-field] (add \"label\" with a text)",
       "error: \"leads\" wants a list, not a text [wrong-type] (write a list here)",
       "error: \"taxa\" wants a list, not a number [wrong-type] (write a list here)"});
}

TEST(KeyJson, ReportsUnknownCouplets) {
  expect_errors(
      R"({"keydrift": 1, "parts": [{"start": @"x"}],
 "couplets": [{"label": "21", "leads": [{"text": "a", "destination": {"couplet": @"27"}},
  {"text": "b", "destination": {"couplet": @"999"}}]}]})",
      {"error: the start of this part leads to couplet \"x\", which this key lacks "
       "[unknown-couplet] (correct the number, or write {\"unresolved\": \"x\"})",
       "error: this lead leads to couplet \"27\", which this key lacks [unknown-couplet] (did you "
       "mean \"21\"?)",
       "error: this lead leads to couplet \"999\", which this key lacks [unknown-couplet] (correct "
       "the number, or write {\"unresolved\": \"999\"})"});
}

TEST(KeyJson, ReportsTwoCoupletsOrTaxaOfOneName) {
  expect_errors(
      R"({"keydrift": 1, "taxa": [{"name": "Aus"}, {"name": @"Aus"}],
 "couplets": [{"label": "1", "leads": []}, {"label": @"1", "leads": []}]})",
      {"error: a second taxon is called \"Aus\" [duplicate-taxon] (remove one of the two, or give "
       "this one an \"id\" of its own and refer to it by that)",
       "error: a second couplet is called \"1\" [duplicate-label] (renumber one of the two, or "
       "give "
       "this one an \"id\" of its own and refer to it by that)"});
}

TEST(KeyJson, ReportsTwoDestinationsOfALead) {
  expect_errors(R"({"keydrift": 1, "couplets": [{"label": "1", "leads": [
 {"text": "a", "destination": @{"couplet": "1", "taxa": ["Aus"]}}]}]})",
                {"error: this lead has more than one destination [two-destinations] (keep one of "
                 "\"couplet\", \"taxa\", \"key\" and \"unresolved\")"});
}

TEST(KeyJson, ReportsFieldsGivenTwice) {
  expect_errors(small_key(R"("title": "a", @"title": "b", )"),
                {"error: \"title\" stands twice in one object [repeated-field] (keep one of the "
                 "two)"});
}

TEST(KeyJson, WarnsOfFieldsItDoesNotKnow) {
  auto const [json, places] = without_marks(
      small_key(R"(@"titel": "a", "x-mine": 1, "$schema": "s", )", R"(@"nonsense": {}, )"));
  auto const loaded = read_json(json);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(
      one_line_each(loaded.findings),
      (Lines{places[0] + "warning: \"titel\" is not a field of a key; it was not read "
                         "[unknown-field] (did you mean \"title\"?)",
             places[1] + "warning: \"nonsense\" is not a field of a lead; it was not read "
                         "[unknown-field] (remove it, or begin its name with \"x-\" to keep it "
                         "beside)"}));
}

void expect_statement_errors(std::string const& mark, std::string const& statement, Lines wanted) {
  expect_errors(
      small_key("", R"("statements": [)" + mark + R"({"text": "b", )" + statement + "}], "),
      std::move(wanted));
}

TEST(KeyJson, ChecksStatements) {
  expect_statement_errors("", R"("strength": @"frim")",
                          {"error: \"frim\" is not a word for \"strength\" [unknown-word] (did you "
                           "mean \"firm\"?)"});
  expect_statement_errors(
      "", R"("limits": [{"kind": @"weather", "value": "x"}])",
      {"error: \"weather\" is not a word for \"kind\" [unknown-word] (write one "
       "of \"sex\", \"life stage\", \"material\", \"season\" and \"other\")"});
  expect_statement_errors("@", R"("character": "c")",
                          {"error: this statement on \"c\" has neither \"states\" nor \"range\" "
                           "[missing-field] (add the states or the range that the words allow)"});
  expect_statement_errors("@", R"("states": ["s"])",
                          {"error: this statement has states or a range but no \"character\" "
                           "[missing-field] (add \"character\" with the character's id)"});
  expect_statement_errors("", R"("character": "c", "states": ["s"], "anyOf": @[])",
                          {"error: this statement has both \"character\" and \"anyOf\" "
                           "[two-predicates] (put the character among the alternatives of "
                           "\"anyOf\")"});
}

TEST(KeyJson, ChecksRanges) {
  auto const expect_range_error = [](std::string const& range, std::string wanted) {
    expect_statement_errors("", R"("character": "c", "range": )" + range, {std::move(wanted)});
  };
  expect_range_error("@{}",
                     "error: this range has no \"usual\" [missing-field] (add \"usual\" with two "
                     "numbers)");
  expect_range_error(R"({"usual": @[6, 4]})",
                     "error: the lower end of \"usual\" is above the upper end [bad-range] (swap "
                     "the two numbers)");
  expect_range_error(R"({"usual": @[4]})",
                     "error: \"usual\" wants two numbers, or null for an open end [bad-range] "
                     "(write it as [4, 6] or [4, null])");
  expect_range_error(R"(@{"usual": [4, 6], "extreme": [5, 6]})",
                     "error: the usual range reaches beyond the extreme one [bad-range] (widen "
                     "\"extreme\", or leave it out)");
  expect_range_error(R"({"usual": [4, 6], "usualOpen": @[true]})",
                     "error: \"usualOpen\" wants two of true or false, not a list [wrong-type] "
                     "(write two of true or false here)");
}

TEST(KeyJson, RefusesEmptyAndBinaryFiles) {
  EXPECT_EQ(json_errors(""),
            Lines{"k.json:1:1: error: the file is empty [empty-file] (check that this "
                  "is the right file and that it was saved)"});
  EXPECT_EQ(json_errors("%PDF-1.4"),
            Lines{"k.json:1:1: error: this is a PDF, not text [binary-file] (export it as plain "
                  "text (UTF-8) and load that file)"});
}

TEST(KeyJson, NeverYieldsAKeyTogetherWithAnErrorNorCrashes) {
  auto const whole = write_key_json(full_edition());
  auto const check = [](std::string const& bytes) {
    auto const loaded = read_json(bytes);
    bool error = false;
    for (auto const& finding : loaded.findings) {
      error = error || finding.severity == Severity::error;
      EXPECT_FALSE(finding.message.empty());
    }
    EXPECT_NE(loaded.value.has_value(), error) << bytes;
    if (loaded) {
      auto const again = write_key_json(*loaded.value);
      EXPECT_EQ(write_key_json(*read_json(again).value), again);
    }
  };
  auto const small = small_key(R"("year": 3, )",
                               R"("statements": [{"text": "B", "character": "c",
 "range": {"usual": [1, null]}, "limits": [{"kind": "sex", "value": "male"}]}], )");
  for (auto const* text : {&small, &whole}) {
    std::size_t const step = text == &small ? 1 : 397;  // time
    for (std::size_t i = 0; i < text->size(); i += step) {
      check(text->substr(0, i));
      for (char const c : {'\0', '"', '{', ']', '9', ' ', '\xFF', '\n'}) {
        auto damaged = *text;
        damaged[i] = c;
        check(damaged);
      }
    }
  }
}

TEST(KeyJson, AMarkBehindAnEscapeIsNoneOfItsLetters) {
  auto edition = *read_json(small_key()).value;
  edition.couplets[0].leads[0].text = "Wings\t\u030cclear";
  auto const again = read_json(write_key_json(edition));
  ASSERT_TRUE(again.value.has_value());
  EXPECT_EQ(again.value->couplets[0].leads[0].text, "Wings\t\u030cclear");
}

}  // namespace
}  // namespace keydrift
