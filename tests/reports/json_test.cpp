#include "keydrift/reports/json.hpp"

#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "edition_builder.hpp"
#include "golden.hpp"
#include "keydrift/characters/lexicon_use.hpp"
#include "keydrift/reports/lexicon_text.hpp"
#include "sample.hpp"

namespace keydrift {
namespace {

using test::expect_golden;
using test::make_sample;
using Json = nlohmann::ordered_json;

// Kept for check_schemas.py, which ctest runs after this program.
void keep(std::string const& name, std::string const& text) {
  auto const folder = std::filesystem::path{KEYDRIFT_BINARY_DIR} / "reports_json";
  std::filesystem::create_directories(folder);
  std::ofstream{folder / name, std::ios::binary} << text;
}

TEST(ProofJson, HoldsFindingsNumbersAndCoverage) {
  auto const sample = make_sample();
  auto const text = proof_json(sample.old_edition, sample.proof);
  keep("proof.json", text);
  expect_golden("reports/proof.json", text);
}

TEST(ProofJson, LeavesTheNumbersOutWhereThereAreNone) {
  auto const sample = make_sample();
  auto const json = Json::parse(proof_json(sample.old_edition, {}));
  EXPECT_FALSE(json.contains("numbers"));
  EXPECT_TRUE(json["findings"].empty());
}

// A lexicon that knows of culms and of nothing else.
struct CheckSample {
  Lexicon lexicon;
  Edition edition;
  LexiconUse use;
};
CheckSample check_sample() {
  CheckSample sample;
  sample.lexicon.name = "l.csv";
  LexiconCharacter culm;
  culm.id = "culm";
  culm.subjects = {{"culms", ""}};
  culm.states = {{.id = "terete", .phrases = {{"terete", ""}}},
                 {.id = "flat", .phrases = {{"flattened", ""}}}};
  culm.place = {.line = 2, .column = 1};
  sample.lexicon.characters = {culm};
  sample.edition = test::make_edition(
      "k.txt",
      {{"1", {{"Culms terete; petals red", "2"}, {"Culms angled; petals blue", "Aus bus"}}},
       {"2", {{"Petals long", "Aus cus"}, {"Petals short", "Aus dus"}}}});
  std::array<Edition*, 1> const editions{&sample.edition};
  sample.use = check_lexicon_use(sample.lexicon, editions);
  return sample;
}

TEST(LexiconCheckJson, HoldsCoverageWorstCoupletsAndFindings) {
  auto const sample = check_sample();
  std::array<Edition const*, 1> const editions{&sample.edition};
  auto const text = lexicon_use_json(sample.lexicon, editions, sample.use);
  keep("lexicon-check.json", text);
  auto const json = Json::parse(text);
  EXPECT_EQ(json["editions"][0]["coverage"].dump(),
            R"({"statements":6,"byMark":0,"byLexicon":1,"byNumber":0,"opaque":5})");
  EXPECT_EQ(json["unusedStates"], 1);
  ASSERT_EQ(json["uncoveredCouplets"].size(), 2);
  EXPECT_EQ(json["uncoveredCouplets"][0]["label"], "2");
  EXPECT_EQ(json["uncoveredCouplets"][0]["opaque"].size(), 2);
  EXPECT_EQ(json["uncoveredCouplets"][1]["opaque"].size(), 3);
  std::vector<std::string> codes;
  for (auto const& finding : json["findings"]) codes.push_back(finding["code"]);
  EXPECT_EQ(codes, (std::vector<std::string>{"lexicon-unused-state", "lexicon-uncovered-couplet"}));
}

TEST(LexiconCheckText, IsSetWithinEightyColumns) {
  auto const sample = check_sample();
  std::array<Edition const*, 1> const editions{&sample.edition};
  expect_golden("reports/lexicon-check.txt",
                lexicon_use_text(sample.lexicon, editions, sample.use, {}));
}

Json collation_image(test::Sample const& sample) {
  auto const text = collation_json(sample.old_edition, sample.new_edition, sample.collation);
  keep("collation.json", text);
  return Json::parse(text);
}

TEST(CollationJson, TellsACoupletsEventsAndLeads) {
  auto const json = collation_image(make_sample());
  EXPECT_EQ(json["couplets"].size(), 6);
  EXPECT_EQ(json["couplets"][3].dump(),
            R"({"old":[{"couplet":2,"label":"3"}],"new":[{"couplet":3,"label":"4"}],)"
            R"("events":["renumbered","leads swapped"],"changesMeaning":false,)"
            R"("similarity":{"taxa":1.0,"statements":1.0,"neighbours":1.0,"total":1.0},)"
            R"("leads":[{"old":1,"new":0},{"old":0,"new":1}]})");
}

TEST(CollationJson, TellsAChangeOfRoleWithBothEditionsWords) {
  auto const json = collation_image(make_sample());
  EXPECT_EQ(
      json["roles"][1].dump(),
      R"({"character":"third-leg-hook","transition":"became hedged",)"
      R"("oldStatement":{"couplet":3,"lead":0,"name":"4a","statement":0,)"
      R"("text":"♂ with a hook on the third leg","strength":"firm"},)"
      R"("newStatement":{"couplet":4,"lead":0,"name":"5a","statement":0,)"
      R"("text":"♂ usually with a hook on the third leg","strength":"hedged"},)"
      R"("oldLead":{"couplet":3,"lead":0,"name":"4a"},"newLead":{"couplet":4,"lead":0,"name":"5a"},)"
      R"("oldTaxa":[{"taxon":3,"name":"Pellucina hamata"}],)"
      R"("newTaxa":[{"taxon":4,"name":"Pellucina hamata"}]})");
}

TEST(CollationJson, TellsATaxonsStepsInBothEditions) {
  auto const json = collation_image(make_sample());
  EXPECT_EQ(
      json["taxa"][4].dump(),
      R"({"old":[{"taxon":4,"name":"Pellucina nigra"}],"new":[{"taxon":5,"name":"Nigrella nigra"}],)"
      R"("relation":"congruent","basis":"synonymy","events":["other route","renamed"],)"
      R"("oldEnds":1,"newEnds":1,"steps":[)"
      R"({"old":{"couplet":0,"lead":1,"name":"1b"},"new":{"couplet":0,"lead":1,"name":"1b"},)"
      R"("aligned":true,"sameLead":true,"restated":false},)"
      R"({"old":{"couplet":3,"lead":1,"name":"4b"},"new":{"couplet":4,"lead":1,"name":"5b"},)"
      R"("aligned":true,"sameLead":true,"restated":false},)"
      R"({"old":{"couplet":4,"lead":0,"name":"5a"},"aligned":false,"sameLead":false,)"
      R"("restated":false}],"parting":2,"charactersLost":["eye-colour"]})");
}

TEST(CollationJson, HoldsBothEditionsInFull) {
  auto const json = collation_image(make_sample());
  auto const& lead = json["new"]["couplets"][0]["leads"][0];
  EXPECT_EQ(lead["text"], "Rostrum with teeth on its edges; claws hairy (except in Orla clausa)");
  EXPECT_EQ(lead["destination"].dump(), R"({"couplet":"2"})");
  EXPECT_EQ(lead["statements"][1]["except"].dump(), R"(["Orla clausa"])");
  EXPECT_EQ(json["old"]["taxa"].size(), 6);
}

// A pair with all that is told of one, and a couplet without counterpart.
std::vector<CoupletReasons> sample_reasons() {
  Similarity const similarity{.taxa = 1, .statements = 0.5, .neighbours = 0.75, .total = 0.775};
  CoupletReasons paired;
  paired.couplet = CoupletId{3};
  paired.counterpart = CoupletId{4};
  paired.similarity = similarity;
  paired.leads.push_back({.old_lead = LeadId{CoupletId{3}, 0},
                          .new_lead = LeadId{CoupletId{4}, 0},
                          .taxa = 1,
                          .statements = 0.5,
                          .below_both = {TaxonId{4}},
                          .below_old_only = {},
                          .below_new_only = {},
                          .compared = {{.old_statement = StatementId{LeadId{CoupletId{3}, 0}, 0},
                                        .new_statement = StatementId{LeadId{CoupletId{4}, 0}, 0},
                                        .agreement = 0.5}}});
  paired.neighbours.push_back({.place = NeighbourPlace::before,
                               .old_lead = LeadId{CoupletId{0}, 1},
                               .new_lead = std::nullopt,
                               .agreement = 1,
                               .weight = 1});
  paired.runners_up.push_back({.couplet = CoupletId{3},
                               .similarity = similarity,
                               .why = WhyNot::better_taken,
                               .taken_by = CoupletId{2},
                               .taken_with = similarity});
  CoupletReasons alone;
  alone.of_new = true;
  alone.couplet = CoupletId{2};
  alone.part_of = CoupletId{1};
  return {paired, alone};
}

TEST(CollationJson, TellsWhyACoupletHasItsCounterpart) {
  auto const sample = make_sample();
  auto const text =
      collation_json(sample.old_edition, sample.new_edition, sample.collation, sample_reasons());
  keep("collation-why.json", text);
  auto const json = Json::parse(text);
  ASSERT_EQ(json["why"].size(), 2U);
  EXPECT_EQ(json["why"][0].dump(),
            R"({"edition":"old","couplet":{"couplet":3,"label":"4"},)"
            R"("counterpart":{"couplet":4,"label":"5"},)"
            R"("similarity":{"taxa":1.0,"statements":0.5,"neighbours":0.75,"total":0.775},)"
            R"("leads":[{"old":{"couplet":3,"lead":0,"name":"4a"},)"
            R"("new":{"couplet":4,"lead":0,"name":"5a"},"taxa":1.0,"statements":0.5,)"
            R"("belowBoth":[{"taxon":4,"name":"Pellucina hamata"}],)"
            R"("compared":[{"old":{"couplet":3,"lead":0,"name":"4a","statement":0,)"
            R"("text":"♂ with a hook on the third leg","strength":"firm"},)"
            R"("new":{"couplet":4,"lead":0,"name":"5a","statement":0,)"
            R"("text":"♂ usually with a hook on the third leg","strength":"hedged"},)"
            R"("agreement":0.5}]}],)"
            R"("neighbours":[{"place":"before","old":{"couplet":0,"lead":1,"name":"1b"},)"
            R"("agreement":1.0,"weight":1}],)"
            R"("runnersUp":[{"couplet":{"couplet":3,"label":"4"},)"
            R"("similarity":{"taxa":1.0,"statements":0.5,"neighbours":0.75,"total":0.775},)"
            R"("why":"better taken","takenBy":{"couplet":2,"label":"3"},)"
            R"("takenWith":{"taxa":1.0,"statements":0.5,"neighbours":0.75,"total":0.775}}]})");
  EXPECT_EQ(json["why"][1].dump(),
            R"({"edition":"new","couplet":{"couplet":2,"label":"3"},)"
            R"("partOf":{"couplet":1,"label":"2"},"partApart":false,"runnersUp":[]})");
}

Json redetermination_image(test::Sample const& sample) {
  auto const text = json_of_redetermination(sample);
  keep("redetermination.json", text);
  return Json::parse(text);
}

TEST(RedeterminationJson, TellsAVerdictWithItsReasonPartingAndQuestions) {
  auto const json = redetermination_image(make_sample());
  auto const& verdict = json["verdicts"][2];
  EXPECT_EQ(verdict["outcome"], "narrowed");
  EXPECT_EQ(verdict["lookAt"],
            "look at underside of the claws (naked eye): red → Orla rubra; white → stands");
  EXPECT_EQ(verdict["parting"].dump(),
            R"({"oldLead":{"couplet":1,"lead":0,"name":"2a"},)"
            R"("newCouplet":{"couplet":2,"label":"3"},"deciding":[{"inNew":true,)"
            R"("statement":{"couplet":2,"lead":0,"name":"3a","statement":0,)"
            R"("text":"Underside of the claws red","strength":"firm"},"recorded":false}]})");
  EXPECT_EQ(verdict["questions"][0]["answers"][0].dump(),
            R"({"words":"red","outcome":"changes","newTaxa":[{"taxon":0,"name":"Orla rubra"}]})");
}

TEST(RedeterminationJson, KeepsSpecimensByReferenceToTheirVerdict) {
  auto const json = redetermination_image(make_sample());
  EXPECT_EQ(json["toLookAt"][1].dump(),
            R"({"specimen":{"line":2,"catalogNumber":"HLVN 0007","scientificName":"Orla major",)"
            R"("typeStatus":"holotype of Orla major","storageLocation":"Cabinet 1 / Shelf 1"},)"
            R"("verdict":2,"newNames":"Orla rubra | Orla major"})");
  EXPECT_EQ(json["worklist"][0]["specimens"].dump(), "[1]");
  EXPECT_EQ(json["failures"].dump(), R"([{"specimen":1,"inNew":true}])");
}

TEST(RedeterminationJson, SaysThatNoSpecimenWasExamined) {
  auto const json = redetermination_image(make_sample());
  EXPECT_EQ(json["specimensExamined"], 0);
  EXPECT_TRUE(json["caution"].get<std::string>().starts_with("A re-keyed name is a hypothesis"));
}

TEST(KeyoutJson, HoldsTheWayAndWhereItEnds) {
  auto const sample = make_sample();
  auto const text = keyout_json(sample.new_edition, sample.specimen, sample.keyout);
  keep("keyout.json", text);
  expect_golden("reports/keyout.json", text);
}

TEST(ReportJson, IsTheSameBytesOnEveryRun) {
  auto const one = make_sample();
  auto const two = make_sample();
  EXPECT_EQ(collation_json(one.old_edition, one.new_edition, one.collation),
            collation_json(two.old_edition, two.new_edition, two.collation));
  EXPECT_EQ(json_of_redetermination(one), json_of_redetermination(two));
}

TEST(ReportJson, CountsOfTheImageEqualThoseOfTheValue) {
  auto const sample = make_sample();
  auto const json = Json::parse(json_of_redetermination(sample));
  auto const& result = sample.redetermination;
  for (std::size_t i = 0; i < kOutcomes; ++i) {
    EXPECT_EQ(json["totals"][to_word(static_cast<Outcome>(i))], result.totals[i]);
  }
  EXPECT_EQ(json["toLookAt"].size(), result.to_look_at.size());
  EXPECT_EQ(json["verdicts"].size(), result.verdicts.size());
  EXPECT_EQ(json["fromTo"][3]["byOutcome"]["open"], 1);
}

TEST(ReportJson, EndsInOneLineFeedAndIndentsByTwoBlanks) {
  auto const sample = make_sample();
  auto const text = keyout_json(sample.new_edition, sample.specimen, sample.keyout);
  EXPECT_TRUE(text.starts_with("{\n  \"keydrift\": 1,\n  \"report\": \"keyout\","));
  EXPECT_TRUE(text.ends_with("\n}\n"));
}

TEST(ReportJson, BytesThatAreNoUtf8BecomeTheReplacementCharacter) {
  auto sample = make_sample();
  sample.specimen.remarks =
      "a\xFF"
      "b";
  auto const json = Json::parse(keyout_json(sample.new_edition, sample.specimen, sample.keyout));
  EXPECT_EQ(json["specimen"]["remarks"], "a\uFFFDb");
}

TEST(ReportJson, OpenEndsOfRangesAreLeftOut) {
  auto sample = make_sample();
  auto& atom = sample.old_edition.couplets[1].leads[1].statements[1].any_of[0];
  atom = {};
  atom.character = "carapace-length";
  atom.unit = "mm";
  NumericRange range;
  range.usual.high = range.extreme.high = 40;
  range.extreme.high_open = true;
  atom.ranges = {range};
  auto const json =
      Json::parse(collation_json(sample.old_edition, sample.new_edition, sample.collation));
  auto const& image = json["old"]["couplets"][1]["leads"][1]["statements"][1]["anyOf"][0];
  EXPECT_EQ(image.dump(),
            R"({"character":"carapace-length","unit":"mm","ranges":[{"usual":{"high":40.0},)"
            R"("extreme":{"high":40.0,"highOpen":true}}]})");
}

}  // namespace
}  // namespace keydrift
