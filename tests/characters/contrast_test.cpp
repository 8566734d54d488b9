// Leads against each other and against the routes above them.  Statements are built by hand from
// a short form, so that nothing here depends on how words are read.

#include "keydrift/characters/contrast.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "edition_builder.hpp"

namespace keydrift {
namespace {

std::vector<std::string> split(std::string const& text, std::string const& by) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  for (;;) {
    auto const end = text.find(by, begin);
    parts.push_back(text.substr(begin, end == std::string::npos ? end : end - begin));
    if (end == std::string::npos) return parts;
    begin = end + by.size();
  }
}

// "beak=bifid|entire", "beak!=bifid", "len=3..5 mm", "len=(2)3..5(8) mm", "len=..5 mm" (up to 5),
// "len=>5 mm" (more than 5).
Atom atom_of(std::string const& text) {
  Atom atom;
  auto equals = text.find("!=");
  atom.negated = equals != std::string::npos;
  if (!atom.negated) equals = text.find('=');
  atom.character = text.substr(0, equals);
  auto const value = text.substr(equals + (atom.negated ? 2 : 1));
  bool const numeric = value.find_first_of("0123456789") != std::string::npos;
  if (!numeric) {
    atom.states = split(value, "|");
    return atom;
  }
  auto const words = split(value, " ");
  if (words.size() > 1) atom.unit = words[1];
  for (auto const& part : split(words[0], "|")) {
    NumericRange range;
    if (part[0] == '>') {
      range.extreme.low = std::stod(part.substr(1));
      range.extreme.low_open = true;
      range.usual = range.extreme;
    } else {
      auto ends = split(part, "..");
      if (ends.size() == 1) ends.push_back(ends[0]);
      auto const bracket = ends[0].find(')');
      if (!ends[0].empty()) {
        range.usual.low = std::stod(ends[0].substr(bracket == std::string::npos ? 0 : bracket + 1));
        range.extreme.low =
            bracket == std::string::npos ? range.usual.low : std::stod(ends[0].substr(1));
      }
      auto const open = ends[1].find('(');
      if (!ends[1].empty()) {
        range.usual.high = std::stod(ends[1]);
        range.extreme.high =
            open == std::string::npos ? range.usual.high : std::stod(ends[1].substr(open + 1));
      }
    }
    atom.ranges.push_back(range);
  }
  return atom;
}

// Statements of a lead, joined by "; ": "usually X" is hedged, "X except A & B" excepted,
// "note X" noted, "male: X" limited, "X or Y" an either-or.
std::vector<Statement> statements_in(std::string const& text, Place place) {
  std::vector<Statement> statements;
  if (text.empty()) return statements;
  std::uint32_t column = 1;
  for (auto const& part : split(text, "; ")) {
    Statement statement;
    statement.text = part;
    statement.origin = Origin::mark;
    statement.place = place;
    statement.place.column = column;
    column += static_cast<std::uint32_t>(part.size()) + 2;
    auto words = part;
    if (words.starts_with("usually ")) {
      statement.strength = Strength::hedged;
      words = words.substr(8);
    } else if (words.starts_with("note ")) {
      statement.strength = Strength::noted;
      words = words.substr(5);
    } else if (words.starts_with("male: ")) {
      statement.limits.push_back({.kind = LimitKind::sex, .value = "male"});
      words = words.substr(6);
    }
    if (auto const except = words.find(" except "); except != std::string::npos) {
      statement.strength = Strength::excepted;
      statement.except = split(words.substr(except + 8), " & ");
      words = words.substr(0, except);
    }
    for (auto const& atom : split(words, " or ")) statement.any_of.push_back(atom_of(atom));
    statements.push_back(std::move(statement));
  }
  return statements;
}

Edition key_of(std::vector<test::CoupletSketch> const& couplets) {
  auto edition = test::make_edition("key.txt", couplets);
  for (auto& couplet : edition.couplets) {
    for (auto& lead : couplet.leads) lead.statements = statements_in(lead.text, lead.place);
  }
  return edition;
}

// One couplet of two leads.
Edition contrasted_pair(std::string const& a, std::string const& b) {
  return key_of({{"1", {{a, "Aus bus"}, {b, "Cus dus"}}}});
}

std::string told_contrasts(std::vector<Finding> const& findings) {
  std::string text;
  for (auto const& finding : findings) text += to_text(finding);
  return text;
}
std::string told_contrasts(Edition const& edition, ContrastOptions const& options = {}) {
  return told_contrasts(proof_contrast(edition, KeyGraph{edition}, options));
}
std::set<std::string> codes(Edition const& edition) {
  std::set<std::string> found;
  for (auto const& finding : proof_contrast(edition, KeyGraph{edition})) found.insert(finding.code);
  return found;
}
using CodeSet = std::set<std::string>;

TEST(Contrast, FindsNothingInACoupletThatContrasts) {
  EXPECT_EQ(told_contrasts(contrasted_pair("beak=bifid; len=..5 mm", "beak=entire; len=>5 mm")),
            "");
  EXPECT_EQ(told_contrasts(contrasted_pair("beak=bifid", "beak!=bifid")), "");
  EXPECT_EQ(told_contrasts(contrasted_pair("stamens=2|4 1", "stamens=3|5 1")), "");
}

TEST(Contrast, WarnsOfACharacterStatedInOneLeadOnly) {
  EXPECT_EQ(told_contrasts(contrasted_pair("beak=bifid; glume=pale", "beak=entire")),
            "key.txt:1:13: warning: lead 1a says \"glume=pale\", but lead 1b does not say how it "
            "is there [one-sided]\n"
            "  glume=pale\n"
            "  state it in both leads, or leave it out\n");
}

TEST(Contrast, OnlyMentionsAOneSidedCharacterWhereSeveralOthersExclude) {
  auto const findings = proof_contrast(
      contrasted_pair("beak=bifid; hair=none; glume=pale", "beak=entire; hair=dense"),
      KeyGraph{contrasted_pair("beak=bifid; hair=none; glume=pale", "beak=entire; hair=dense")});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].code, "one-sided");
  EXPECT_EQ(findings[0].severity, Severity::information);
}

TEST(Contrast, AdvisesALexiconWhereTheWordsWereNotUnderstood) {
  auto edition = contrasted_pair("beak=bifid; ~x=x", "beak=entire");
  edition.couplets[0].leads[0].statements[1].origin = Origin::opaque;
  EXPECT_EQ(
      told_contrasts(edition),
      "key.txt:1:13: warning: lead 1a says \"~x=x\", but lead 1b does not say how it is there "
      "[one-sided]\n"
      "  ~x=x\n"
      "  state it in both leads, or leave it out; if other words stand for it, tie them to "
      "one character in a lexicon\n");
}

TEST(Contrast, TakesStatementsOfOneBeginningForAnswersWhereOneWasNotUnderstood) {
  auto edition = contrasted_pair("beak=bifid; ~x=y", "beak=entire; stem=three");
  auto& left = edition.couplets[0].leads[0].statements[1];
  auto& right = edition.couplets[0].leads[1].statements[1];
  left.text = "stems round";
  right.text = "the stem three-sided";
  EXPECT_EQ(codes(edition), CodeSet{"one-sided"});
  left.origin = Origin::opaque;
  EXPECT_EQ(codes(edition), CodeSet{});
  left.text = "stamens round";
  EXPECT_EQ(codes(edition), CodeSet{"one-sided"});
}

TEST(Contrast, KnowsFromTheLexiconThatACharacterIsInapplicableInTheOtherLead) {
  auto const edition = contrasted_pair("beak=present; tip=bifid", "beak=absent");
  EXPECT_EQ(codes(edition), CodeSet{"one-sided"});
  Lexicon lexicon;
  lexicon.characters.push_back({.id = "beak"});
  lexicon.characters.push_back({.id = "tip"});
  lexicon.characters.back().applicable_if = Applicability{"beak", {"present"}};
  EXPECT_EQ(told_contrasts(edition, {.lexicon = &lexicon}), "");
}

TEST(Contrast, WarnsOfTheSameStateInBothLeads) {
  EXPECT_EQ(told_contrasts(contrasted_pair("beak=bifid; glume=pale", "beak=entire; glume=pale")),
            "key.txt:2:14: warning: leads 1a and 1b say the same: \"glume=pale\" and "
            "\"glume=pale\" [same-state]\n"
            "  glume=pale\n"
            "  key.txt:1:13: lead 1a says \"glume=pale\"\n"
            "  contrast the two, or leave the statement out of both leads\n");
}

TEST(Contrast, WarnsOfAStateThatBothLeadsAllow) {
  EXPECT_EQ(
      told_contrasts(contrasted_pair("flower=blue|red", "flower=blue|green")),
      "key.txt:2:1: warning: \"flower=blue|red\" of lead 1a and \"flower=blue|green\" of lead 1b "
      "both allow \"blue\" [shared-state]\n"
      "  flower=blue|green\n"
      "  key.txt:1:1: lead 1a says \"flower=blue|red\"\n"
      "  allow each state in one lead only, or part the taxa that share it by another character\n");
}

TEST(Contrast, WarnsOfOverlappingRangesWithTheNumbers) {
  EXPECT_EQ(told_contrasts(contrasted_pair("len=1.5..2.7 mm", "len=2.2..3.5 mm")),
            "key.txt:2:1: warning: \"len=1.5..2.7 mm\" of lead 1a and \"len=2.2..3.5 mm\" of lead "
            "1b both take in 2.2–2.7 mm [overlapping-ranges]\n"
            "  len=2.2..3.5 mm\n"
            "  key.txt:1:1: lead 1a says \"len=1.5..2.7 mm\"\n"
            "  part the ranges, or add a character that decides where they overlap\n");
}

TEST(Contrast, CountsACommonEndPointAsOverlapUnlessOneSideIsStrict) {
  EXPECT_EQ(codes(contrasted_pair("len=3..5 mm", "len=5..8 mm")), CodeSet{"overlapping-ranges"});
  EXPECT_EQ(codes(contrasted_pair("len=3..5 mm", "len=>5 mm")), CodeSet{});
}

TEST(Contrast, OnlyMentionsOverlapOfExtremes) {
  EXPECT_EQ(told_contrasts(contrasted_pair("len=1..4(6) mm", "len=(5)7..9 mm")),
            "key.txt:2:1: information: the extremes of \"len=1..4(6) mm\" of lead 1a and of "
            "\"len=(5)7..9 mm\" of lead 1b both take in 5–6 mm [overlapping-extremes]\n"
            "  len=(5)7..9 mm\n"
            "  key.txt:1:1: lead 1a says \"len=1..4(6) mm\"\n"
            "  add a character that decides there, or key such taxa out under both leads\n");
}

TEST(Contrast, WarnsOfAGapBetweenRangesWithTheNumbers) {
  EXPECT_EQ(told_contrasts(contrasted_pair("len=20..30 mm", "len=60..70 mm")),
            "key.txt:2:1: warning: what lies between 30 and 60 mm fits no lead: \"len=20..30 mm\" "
            "of lead 1a and \"len=60..70 mm\" of lead 1b [gapping-ranges]\n"
            "  len=60..70 mm\n"
            "  let the ranges meet, or say what becomes of such specimens\n");
}

TEST(Contrast, OnlyMentionsAGapOfTheLastPrintedDecimal) {
  auto const edition = contrasted_pair("len=..3.9 mm", "len=4.. mm");
  auto const findings = proof_contrast(edition, KeyGraph{edition});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].code, "gapping-ranges");
  EXPECT_EQ(findings[0].severity, Severity::information);
}

TEST(Contrast, SeesNoGapBetweenCountsThatFollowEachOther) {
  EXPECT_EQ(codes(contrasted_pair("stamens=2..4 1", "stamens=5..8 1")), CodeSet{});
  EXPECT_EQ(codes(contrasted_pair("stamens=..4 1", "stamens=>4 1")), CodeSet{});
  EXPECT_EQ(told_contrasts(contrasted_pair("stamens=2..4 1", "stamens=6..8 1")),
            "key.txt:2:1: warning: exactly 5 fits no lead: \"stamens=2..4 1\" of lead 1a and "
            "\"stamens=6..8 1\" of lead 1b [gapping-ranges]\n"
            "  stamens=6..8 1\n"
            "  let the ranges meet, or say what becomes of such specimens\n");
}

TEST(Contrast, FillsAGapOfTwoLeadsByTheThird) {
  EXPECT_EQ(codes(key_of({{"1",
                           {{"len=1..3 mm", "Aus bus"},
                            {"len=>6 mm", "Cus dus"},
                            {"len=>3 mm; hair=none", "Eus fus"}}}})),
            (CodeSet{"one-sided", "overlapping-ranges"}));
}

TEST(Contrast, CallsACoupletWithoutContrastAnError) {
  EXPECT_EQ(told_contrasts(contrasted_pair("beak=bifid", "glume=pale")),
            "key.txt:2:1: error: leads 1a and 1b do not contrast: they have no character in common "
            "[no-contrast]\n"
            "  glume=pale\n"
            "  key.txt:1:1: lead 1a is here\n"
            "  say of one character how the leads differ in it\n");
  EXPECT_EQ(told_contrasts(contrasted_pair("beak=bifid; note glume=pale", "beak=bifid")),
            "key.txt:2:1: error: leads 1a and 1b do not contrast: they say the same of each "
            "character that they share [no-contrast]\n"
            "  beak=bifid\n"
            "  key.txt:1:1: lead 1a is here\n"
            "  say of one character how the leads differ in it\n");
}

TEST(Contrast, LetsAnEitherOrContrast) {
  EXPECT_EQ(codes(contrasted_pair("beak=bifid or hair=none", "beak=entire; hair=dense")),
            CodeSet{});
  EXPECT_EQ(codes(contrasted_pair("beak=bifid or hair=none", "glume=pale")),
            CodeSet{"no-contrast"});
}

TEST(Contrast, ComparesSexesApart) {
  EXPECT_EQ(codes(contrasted_pair("male: horn=long; beak=bifid", "male: horn=short; beak=entire")),
            CodeSet{});
  EXPECT_EQ(codes(contrasted_pair("male: horn=long; beak=bifid", "horn=short; beak=entire")),
            CodeSet{"one-sided"});
}

TEST(Contrast, ReportsLeadsThatRestOnHedges) {
  EXPECT_EQ(told_contrasts(contrasted_pair("usually glume=pale", "usually glume=dark")),
            "key.txt:1:1: warning: lead 1a rests on hedged statements only, so nothing refutes it "
            "[hedged-only]\n"
            "  usually glume=pale\n"
            "  add a statement that holds without exception, or name the exceptions\n"
            "key.txt:2:1: warning: lead 1b rests on hedged statements only, so nothing refutes it "
            "[hedged-only]\n"
            "  usually glume=dark\n"
            "  add a statement that holds without exception, or name the exceptions\n");
  auto const edition = contrasted_pair("usually glume=pale", "glume=dark");
  auto const findings = proof_contrast(edition, KeyGraph{edition});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].severity, Severity::information);
}

TEST(Contrast, LeavesLeadsOfTheSameWordsAndWithoutWordsToTheProofOfStructure) {
  EXPECT_EQ(codes(contrasted_pair("beak=bifid", "beak=bifid")), CodeSet{});
  EXPECT_EQ(codes(contrasted_pair("beak=bifid", "")), CodeSet{});
}

TEST(Contrast, WarnsOfUnitsThatAreMissingOrMixed) {
  EXPECT_EQ(told_contrasts(contrasted_pair("len=1..3 mm", "len=4..6")),
            "key.txt:2:1: warning: lead 1b gives no unit in \"len=4..6\", and lead 1a measures the "
            "same in mm [unit-missing]\n"
            "  len=4..6\n"
            "  key.txt:1:1: lead 1a says \"len=1..3 mm\"\n"
            "  write the unit behind the number\n");
  EXPECT_EQ(
      told_contrasts(contrasted_pair("angle=1..3 mm", "angle=4..6 °")),
      "key.txt:2:1: warning: lead 1b measures in ° what lead 1a measures in mm [mixed-units]\n"
      "  angle=4..6 °\n"
      "  key.txt:1:1: lead 1a says \"angle=1..3 mm\"\n"
      "  measure it in one kind of unit\n");
}

// --- routes ------------------------------------------------------------------------------------

TEST(Contrast, FindsALeadThatNoSpecimenCanPass) {
  auto const edition = key_of({{"1", {{"beak=bifid", "2"}, {"beak=entire", "Aus bus"}}},
                               {"2", {{"hair=none", "3"}, {"hair=dense", "Cus dus"}}},
                               {"3", {{"beak=entire", "Eus fus"}, {"beak=bifid", "Gus hus"}}}});
  EXPECT_EQ(told_contrasts(edition),
            "key.txt:5:1: error: no specimen can pass lead 3a: \"beak=entire\" contradicts "
            "\"beak=bifid\" of lead 1a above [dead-lead]\n"
            "  beak=entire\n"
            "  key.txt:1:1: lead 1a says \"beak=bifid\"\n"
            "  key.txt:6:1: so whatever comes to couplet \"3\" takes lead 3b\n"
            "  mend one of the two statements, or drop the couplet\n"
            "key.txt:6:1: information: \"beak=bifid\" of lead 3b decides nothing: the leads above "
            "it leave only bifid [settled-above]\n"
            "  beak=bifid\n"
            "  leave it out, unless it is meant as a reminder\n");
}

TEST(Contrast, ReportsTheFirstDeadLeadAndNotAllBelowIt) {
  auto const edition = key_of({{"1", {{"beak=bifid", "2"}, {"beak=entire", "Aus bus"}}},
                               {"2", {{"beak=entire", "3"}, {"beak=oblique", "Cus dus"}}},
                               {"3", {{"beak=oblique", "Eus fus"}, {"beak=blunt", "Gus hus"}}}});
  auto const text = told_contrasts(edition);
  EXPECT_NE(text.find("lead 2a"), std::string::npos);
  EXPECT_NE(text.find("lead 2b"), std::string::npos);
  EXPECT_EQ(text.find("lead 3"), std::string::npos);
}

TEST(Contrast, CutsMeasurementsAlongARoute) {
  auto const edition =
      key_of({{"1", {{"len=..8 mm", "2"}, {"len=>8 mm", "Aus bus"}}},
              {"2", {{"len=5.. mm; a=x", "3"}, {"len=..4.9 mm; a=y", "Cus dus"}}},
              {"3", {{"len=9..12 mm; b=x", "Eus fus"}, {"len=4..8.5 mm; b=y", "Gus hus"}}}});
  auto const text = told_contrasts(edition);
  EXPECT_NE(text.find("no specimen can pass lead 3a: \"len=9..12 mm; b=x\""), 0U);
  EXPECT_NE(
      text.find("no specimen can pass lead 3a: \"len=9..12 mm\" contradicts \"len=..8 mm\" of "
                "lead 1a above [dead-lead]"),
      std::string::npos)
      << text;
  EXPECT_NE(text.find("\"len=4..8.5 mm\" of lead 3b decides nothing: the leads above it leave only "
                      "5–8 mm [settled-above]"),
            std::string::npos)
      << text;
}

TEST(Contrast, FindsAContradictionThatTakesTwoLeadsTogether) {
  auto const edition =
      key_of({{"1", {{"flower=blue|red", "2"}, {"flower=white", "Aus bus"}}},
              {"2", {{"flower=green|red|white", "3"}, {"flower=blue", "Cus dus"}}},
              {"3", {{"flower=blue|green", "Eus fus"}, {"flower=red", "Gus hus"}}}});
  EXPECT_NE(told_contrasts(edition).find(
                "no specimen can pass lead 3a: \"flower=blue|green\" contradicts "
                "\"flower=green|red|white\" of lead 2a above [dead-lead]"),
            std::string::npos)
      << told_contrasts(edition);
}

TEST(Contrast, CallsALeadDeadOnlyWhenEveryRouteContradictsIt) {
  auto const reticulate = [](std::string const& last) {
    return key_of({{"1", {{"a=x", "2"}, {"a=y", "3"}}},
                   {"2", {{"beak=bifid", "4"}, {"beak=blunt", "Aus bus"}}},
                   {"3", {{"beak=entire", "4"}, {"beak=blunt", "Aus cus"}}},
                   {"4", {{last, "Cus dus"}, {"beak=bifid", "Eus fus"}}}});
  };
  EXPECT_EQ(codes(reticulate("beak=entire")), CodeSet{});
  EXPECT_EQ(told_contrasts(reticulate("beak=blunt")),
            "key.txt:7:1: error: no specimen can pass lead 4a: \"beak=blunt\" contradicts "
            "\"beak=bifid\" of lead 2a above, and every other route bars it too [dead-lead]\n"
            "  beak=blunt\n"
            "  key.txt:3:1: lead 2a says \"beak=bifid\"\n"
            "  key.txt:8:1: so whatever comes to couplet \"4\" takes lead 4b\n"
            "  mend one of the two statements, or drop the couplet\n");
}

TEST(Contrast, ForgetsWhereRoutesMeetWhatOneOfThemLeavesOpen) {
  EXPECT_EQ(codes(key_of({{"1", {{"a=x", "2"}, {"a=y", "3"}}},
                          {"2", {{"beak=bifid", "3"}, {"beak=blunt", "Aus bus"}}},
                          {"3", {{"beak=entire", "Cus dus"}, {"beak=bifid", "Eus fus"}}}})),
            CodeSet{});
}

TEST(Contrast, FindsAContradictionWithinOneLead) {
  EXPECT_EQ(told_contrasts(contrasted_pair("beak=bifid; a=x; beak=entire", "beak=blunt; a=y")),
            "key.txt:1:18: error: no specimen can pass lead 1a: \"beak=entire\" contradicts "
            "\"beak=bifid\" of the same lead [dead-lead]\n"
            "  beak=entire\n"
            "  key.txt:1:1: the other statement\n"
            "  mend one of the two statements\n");
}

TEST(Contrast, CallsLeadsThatContradictThemselvesNotTheSame) {
  EXPECT_EQ(codes(contrasted_pair("stamens=2 1; stamens=5 1", "stamens=3 1; stamens=6 1")),
            (CodeSet{"dead-lead", "dead-lead"}));
}

TEST(Contrast, BuildsOnNothingThatIsNotFirm) {
  for (auto const* above : {"usually beak=bifid", "beak=bifid except Cus", "male: beak=bifid",
                            "note beak=bifid", "beak=bifid or a=z"}) {
    auto const edition =
        key_of({{"1", {{std::string{above} + "; a=x", "2"}, {"beak=blunt; a=y", "Aus bus"}}},
                {"2", {{"beak=entire", "Cus dus"}, {"beak=bifid", "Eus fus"}}}});
    auto const found = codes(edition);
    EXPECT_FALSE(found.contains("dead-lead")) << above;
    EXPECT_FALSE(found.contains("settled-above")) << above;
  }
}

TEST(Contrast, ClaimsOfWordsNotUnderstoodOnlyThatTheLeadsOfACoupletDiffer) {
  auto const key = [](std::string const& below) {
    return key_of({{"1", {{"~nut=smooth-or-ridged", "2"}, {"~nut=pitted", "Aus bus"}}},
                   {"2", {{"~nut=" + below, "Cus dus"}, {"~nut=ridged", "Eus fus"}}}});
  };
  EXPECT_EQ(codes(key("smooth")), CodeSet{});
  EXPECT_EQ(told_contrasts(key("pitted")),
            "key.txt:3:1: error: no specimen can pass lead 2a: \"~nut=pitted\" contradicts "
            "\"~nut=smooth-or-ridged\" of lead 1a above [dead-lead]\n"
            "  ~nut=pitted\n"
            "  key.txt:1:1: lead 1a says \"~nut=smooth-or-ridged\"\n"
            "  key.txt:4:1: so whatever comes to couplet \"2\" takes lead 2b\n"
            "  mend one of the two statements, or drop the couplet\n");
}

TEST(Contrast, ClaimsNothingOfWordsNotUnderstoodWhereLeadsHaveTooManyRivals) {
  auto const key = [](std::size_t leads) {
    test::CoupletSketch first{"1", {{"~nut=smooth", "2"}}};
    while (first.leads.size() < leads) first.leads.push_back({"~nut=pitted", "Aus bus"});
    return key_of({first, {"2", {{"~nut=pitted", "Cus dus"}, {"~nut=ridged", "Eus fus"}}}});
  };
  EXPECT_TRUE(codes(key(64)).contains("dead-lead"));
  // Each lead would be compared with all others: quadratic work on damaged files.
  EXPECT_FALSE(codes(key(66)).contains("dead-lead"));
}

TEST(Contrast, CallsAnEitherOrDeadWhenEachPartIs) {
  auto const edition = key_of(
      {{"1", {{"beak=bifid; hair=none", "2"}, {"beak=blunt; hair=dense", "Aus bus"}}},
       {"2", {{"beak=blunt or hair=dense", "Cus dus"}, {"beak=bifid; hair=none", "Eus fus"}}}});
  EXPECT_TRUE(codes(edition).contains("dead-lead"));
}

TEST(Contrast, TakesNothingForSettledOnACycle) {
  EXPECT_FALSE(codes(key_of({{"1", {{"beak=bifid", "2"}, {"beak=blunt", "Aus bus"}}},
                             {"2", {{"beak=entire", "1"}, {"beak=bifid", "Cus dus"}}}}))
                   .contains("dead-lead"));
}

// Is there a specimen that takes the route and then fits all the statements of the last lead?
// States of one character are tried one by one; characters do not depend on each other.
bool passable(Edition const& edition, Route const& route) {
  std::set<std::string> characters;
  for (auto const lead : route) {
    for (auto const& statement : edition[lead].statements) {
      characters.insert(statement.any_of[0].character);
    }
  }
  std::vector<std::string> const states{"p", "q", "r", "another"};
  return std::all_of(characters.begin(), characters.end(), [&](std::string const& character) {
    return std::any_of(states.begin(), states.end(), [&](std::string const& state) {
      for (auto const lead : route) {
        for (auto const& statement : edition[lead].statements) {
          auto const& atom = statement.any_of[0];
          if (atom.character != character) continue;
          bool const named =
              std::find(atom.states.begin(), atom.states.end(), state) != atom.states.end();
          if (named == atom.negated) return false;
        }
      }
      return true;
    });
  });
}

// Couplets lead forward only; `join` lets several leads lead to one couplet.
Edition random_key(std::mt19937& random, bool join) {
  auto const below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>{0, n - 1}(random);
  };
  static std::vector<std::string> const kStates{"p", "q", "r", "p|q", "q|r", "p|r"};
  std::size_t const n = 2 + below(6);
  std::vector<std::vector<std::string>> to(n, std::vector<std::string>(2));
  for (std::size_t i = 1; i < n; ++i) {
    std::size_t const ways = join ? 1 + below(2) : 1;
    for (std::size_t way = 0; way < ways; ++way) {
      auto& slot = to[below(i)][below(2)];
      if (slot.empty()) slot = std::to_string(i + 1);
    }
  }
  std::vector<test::CoupletSketch> couplets;
  for (std::size_t i = 0; i < n; ++i) {
    test::CoupletSketch couplet{.label = std::to_string(i + 1), .leads = {}};
    for (std::size_t side = 0; side < 2; ++side) {
      std::string words;
      for (std::size_t k = 1 + below(2); k > 0; --k) {
        words += (words.empty() ? "" : "; ") + std::string(1, static_cast<char>('a' + below(2))) +
                 (below(4) == 0 ? "!=" : "=") + kStates[below(kStates.size())];
      }
      couplet.leads.push_back({words, to[i][side].empty() ? "Aus bus" : to[i][side]});
    }
    couplets.push_back(std::move(couplet));
  }
  return key_of(couplets);
}

struct DeadLeads {
  std::set<LeadId> reported;
  std::set<LeadId> true_ones;  // below couplets that some specimen reaches
  std::set<LeadId> living;     // that some specimen passes
};
DeadLeads dead_leads(Edition const& edition) {
  KeyGraph const graph{edition};
  DeadLeads dead;
  for (auto const& finding : proof_contrast(edition, graph)) {
    if (finding.code != "dead-lead") continue;
    for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
      for (std::uint32_t i = 0; i < 2; ++i) {
        if (edition[LeadId{c, i}].place.line == finding.place.line) {
          dead.reported.insert(LeadId{c, i});
        }
      }
    }
  }
  for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
    if (!graph.reachable(c)) continue;
    auto const routes = graph.routes_to(c).routes;
    bool const reached = std::any_of(routes.begin(), routes.end(),
                                     [&](Route const& route) { return passable(edition, route); });
    for (std::uint32_t i = 0; i < 2; ++i) {
      bool const passed = std::any_of(routes.begin(), routes.end(), [&](Route route) {
        route.push_back(LeadId{c, i});
        return passable(edition, route);
      });
      if (passed) {
        dead.living.insert(LeadId{c, i});
      } else if (reached) {
        dead.true_ones.insert(LeadId{c, i});
      }
    }
  }
  return dead;
}

std::string words_of(Edition const& edition) {
  std::string text;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      text += lead.label + " " + lead.text + " -> " + lead.destination_printed + "\n";
    }
  }
  return text;
}

TEST(Contrast, FindsExactlyTheDeadLeadsWhereEachCoupletHasOneRoute) {
  std::mt19937 random{1};
  std::size_t found = 0;
  for (int i = 0; i < 1'000; ++i) {
    auto const edition = random_key(random, false);
    auto const dead = dead_leads(edition);
    ASSERT_EQ(dead.reported, dead.true_ones) << words_of(edition);
    found += dead.reported.size();
  }
  EXPECT_GT(found, 500U);
}

TEST(Contrast, ReportsNoLivingLeadAsDeadWhereRoutesMeet) {
  std::mt19937 random{2};
  std::size_t found = 0, missed = 0;
  for (int i = 0; i < 1'000; ++i) {
    auto const edition = random_key(random, true);
    auto const dead = dead_leads(edition);
    for (auto const lead : dead.reported) {
      ASSERT_FALSE(dead.living.contains(lead)) << words_of(edition);
    }
    for (auto const lead : dead.true_ones) ++(dead.reported.contains(lead) ? found : missed);
  }
  // What is missed takes two characters together; it must stay the exception.
  EXPECT_GT(found, 500U);
  EXPECT_LT(missed * 20, found);
}

// --- exceptions --------------------------------------------------------------------------------

Edition with_exception(std::string const& group) {
  return key_of({{"1", {{"beak=bifid except " + group, "2"}, {"beak=entire", "Aus bus"}}},
                 {"2", {{"hair=none", "Cus albus"}, {"hair=dense", "Eus"}}}});
}

TEST(Contrast, AcceptsExceptionsForGroupsBelowTheLead) {
  for (auto const* group : {"Cus albus", "C. albus", "Cus", "cus", "some Cus species", "Eus fus",
                            "Cus alba", "albus", "C. albus & Eus"}) {
    EXPECT_EQ(codes(with_exception(group)), CodeSet{}) << group;
  }
}

TEST(Contrast, WarnsOfAnExceptionForAGroupThatKeysOutElsewhere) {
  EXPECT_EQ(told_contrasts(with_exception("A. bus")),
            "key.txt:1:1: warning: lead 1a makes an exception for \"A. bus\", but \"Aus bus\" does "
            "not key out below it [exception-not-below]\n"
            "  beak=bifid except A. bus\n"
            "  key.txt:2:1: \"Aus bus\" keys out here\n"
            "  key the group out below lead 1a, or drop the exception\n");
}

TEST(Contrast, WarnsOfAnExceptionForAnUnknownGroup) {
  EXPECT_EQ(told_contrasts(with_exception("Zus")),
            "key.txt:1:1: warning: lead 1a makes an exception for \"Zus\", which this key does not "
            "key out [exception-unknown-group]\n"
            "  beak=bifid except Zus\n"
            "  name the group as the key's taxa are named, or drop the exception\n");
}

TEST(Contrast, AsksTheGivenNamesForTheMembersOfAGroup) {
  auto const edition = with_exception("Oldname");
  EXPECT_EQ(told_contrasts(edition,
                           {.members = [](std::string_view) { return std::vector{TaxonId{1}}; }}),
            "");
}

// --- the whole ---------------------------------------------------------------------------------

TEST(Contrast, ExplainsEveryCodeItReports) {
  std::set<std::string_view> known;
  for (auto const& kind : contrast_finding_kinds()) {
    EXPECT_TRUE(known.insert(kind.code).second) << kind.code;
    EXPECT_FALSE(kind.title.empty() || kind.explanation.empty()) << kind.code;
  }
  for (auto const* code :
       {"dead-lead", "exception-not-below", "exception-unknown-group", "gapping-ranges",
        "hedged-only", "mixed-units", "no-contrast", "one-sided", "overlapping-extremes",
        "overlapping-ranges", "same-state", "settled-above", "shared-state", "unit-missing",
        "inconsistent-terms", "limited-couplet", "needs-second-specimen", "repeated-couplet",
        "units-differ"}) {
    EXPECT_TRUE(known.contains(code)) << code;
  }
  EXPECT_EQ(known.size(), 19U);
}

TEST(Contrast, FollowsALongCombWithoutRunningDeep) {
  std::vector<test::CoupletSketch> couplets;
  std::size_t const n = 5'000;
  for (std::size_t i = 1; i <= n; ++i) {
    auto const character = "c" + std::to_string(i % 100);
    couplets.push_back({std::to_string(i),
                        {{character + "=left", "Aus bus"},
                         {character + "=right", i == n ? "Cus dus" : std::to_string(i + 1)}}});
  }
  auto const edition = key_of(couplets);
  auto const findings = proof_contrast(edition, KeyGraph{edition});
  // Past the first round of characters each left lead is dead and each right one settled.
  EXPECT_EQ(findings.size(), 2 * (n - 100));
}

}  // namespace
}  // namespace keydrift
