// Words that leave a reader without an answer, and remarks on style.  Statements are read from the
// leads' own words here.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "edition_builder.hpp"
#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/reading.hpp"

namespace keydrift {
namespace {

using test::CoupletSketch;
using Codes = std::vector<std::string>;

Edition read(std::vector<CoupletSketch> const& couplets, Lexicon const& lexicon = {}) {
  auto edition = test::make_edition("key.txt", couplets);
  auto const findings = read_statements(edition, lexicon);
  EXPECT_TRUE(findings.empty()) << to_text(findings.front());
  return edition;
}

// One couplet of two leads.
Edition worded_pair(std::string const& a, std::string const& b) {
  return read({{"1", {{a, "Aus bus"}, {b, "Cus dus"}}}});
}

std::vector<Finding> findings_of_code(Edition const& edition, ContrastOptions const& options,
                                      std::string const& code) {
  auto findings = proof_contrast(edition, KeyGraph{edition}, options);
  std::erase_if(findings, [&](Finding const& finding) { return finding.code != code; });
  return findings;
}
std::string told_of_code(Edition const& edition, std::string const& code,
                         ContrastOptions const& options = {}) {
  std::string text;
  for (auto const& finding : findings_of_code(edition, options, code)) text += to_text(finding);
  return text;
}
std::string style(Edition const& edition, std::string const& code,
                  Lexicon const* lexicon = nullptr) {
  return told_of_code(edition, code, {.lexicon = lexicon, .members = {}, .style = true});
}

// --- states that both leads allow ---------------------------------------------------------------

TEST(SharedStates, AreNoneWhereTheWiderStateIsDenied) {
  for (auto const* denied : {"never toothed", "not toothed"}) {
    EXPECT_EQ(told_of_code(worded_pair("Femora swollen, toothed below",
                                       std::string{"Femora slender, "} + denied),
                           "shared-state"),
              "")
        << denied;
  }
  // What is denied is the finer one: toothed above may still be both.
  EXPECT_NE(
      told_of_code(worded_pair("Femora swollen, toothed", "Femora slender, toothed"), "same-state"),
      "");
}

// What a couplet contrasts with a denial is denied by it, whatever the words.
TEST(SharedStates, AreNoneWhereADenialContrastsWithOtherWords) {
  for (auto const& [a, b] : std::vector<std::pair<std::string, std::string>>{
           {"Body with metallic reflections", "Body not metallic"},
           {"Wings fully developed", "Wings reduced to pads not reaching abdomen"},
           {"Antennes dépassant la base du pronotum",
            "Antennes n’atteignant pas la base du pronotum"}}) {
    EXPECT_EQ(told_of_code(worded_pair(a, b), "shared-state"), "") << a;
    EXPECT_EQ(told_of_code(worded_pair(b, a), "shared-state"), "") << a;
  }
  // An alternative that the denial leaves is shared.
  EXPECT_NE(
      told_of_code(read({{"1", {{"Leaves flat or rolled", "2"}, {"Leaves not flat", "Cus dus"}}},
                         {"2", {{"Leaves rolled", "Aus bus"}, {"Leaves flat", "Aus cus"}}}}),
                   "shared-state"),
      "");
}

// Two couplets may contrast one denial with different things: none of them is barred elsewhere.
TEST(SharedStates, OfOneCoupletBarNothingInAnother) {
  EXPECT_EQ(told_of_code(read({{"1", {{"Leaves hairy", "Aus bus"}, {"Leaves not hairy", "2"}}},
                               {"2",
                                {{"Leaves shiny; stems red", "Aus cus"},
                                 {"Leaves not hairy; stems blue", "Aus dus"}}}}),
                         "dead-lead"),
            "");
}

TEST(OneSided, IsNoGrowthThatTheOtherLeadHasAnotherOf) {
  for (auto const& [a, b] : std::vector<std::pair<std::string, std::string>>{
           {"Stamens 4, didynamous; herbs", "Stamens 5, equal; shrubs or lianas"},
           {"Leaves flat, leathery; trees or tall shrubs", "Leaves terete; herbs"},
           {"Blüten rot, klein; Kräuter", "Blüten blau; Sträucher oder Bäume"}}) {
    auto const told = told_of_code(worded_pair(a, b), "one-sided");
    EXPECT_EQ(told.find("herb"), std::string::npos) << told;
    EXPECT_EQ(told.find("shrub"), std::string::npos) << told;
    EXPECT_EQ(told.find("Kräuter"), std::string::npos) << told;
  }
}

TEST(OneSided, IsNothingThatTellsWhatIsKnownOrWhereToLook) {
  for (auto const* aside : {"siehe auch Zahl 3", "see also couplet 3", "males unknown",
                            "Männchen unbekannt", "♀ seule connue", "nur das Weibchen bekannt"}) {
    EXPECT_EQ(
        told_of_code(worded_pair(std::string{"Body red; "} + aside, "Body blue"), "one-sided"), "")
        << aside;
  }
  EXPECT_EQ(told_of_code(worded_pair("Dorsum with metallic green sheen",
                                     "Dorsum dark, without metallic sheen"),
                         "one-sided"),
            "");
  EXPECT_NE(told_of_code(worded_pair("Body red; males winged", "Body blue"), "one-sided"), "");
  EXPECT_NE(
      told_of_code(worded_pair("Dorsum with green spots", "Dorsum dark, without metallic sheen"),
                   "one-sided"),
      "");
}

TEST(Exceptions, AreNoneInAPlaceOfTheBody) {
  auto const pair =
      worded_pair("Schienen gerade", "Schienen gekrümmt, höchstens an der Spitze gerade");
  EXPECT_EQ(told_of_code(pair, "exception-unknown-group"), "");
  // A group is one still.
  EXPECT_NE(told_of_code(worded_pair("Schienen gerade", "Schienen gekrümmt, außer bei Eus"),
                         "exception-unknown-group"),
            "");
}

// --- comparisons -------------------------------------------------------------------------------

TEST(Comparisons, WithNothingNeedASecondSpecimen) {
  EXPECT_EQ(
      told_of_code(worded_pair("Body larger", "Body smaller"), "needs-second-specimen"),
      "key.txt:1:1: warning: \"Body larger\" of lead 1a compares with nothing, so that it takes "
      "a second specimen to tell [needs-second-specimen]\n"
      "  Body larger\n"
      "  give a measure, or say what it is compared with\n"
      "key.txt:2:1: warning: \"Body smaller\" of lead 1b compares with nothing, so that it takes "
      "a second specimen to tell [needs-second-specimen]\n"
      "  Body smaller\n"
      "  give a measure, or say what it is compared with\n");
  EXPECT_EQ(findings_of_code(worded_pair("Legs more robust", "Legs less robust"), {},
                             "needs-second-specimen")
                .size(),
            2U);
}

TEST(Comparisons, AreNotReportedWhereTheySayWithWhat) {
  for (auto const& [a, b] : std::vector<std::pair<std::string, std::string>>{
           {"Antennae longer than the body", "Antennae shorter than the body"},
           {"Antennae longer than the body", "Antennae usually shorter"},
           {"Larger leaves toothed", "Larger leaves entire"},
           {"Beak twice as long as wide", "Beak as long as wide"},
           {"Leaves larger, 5–7 cm long", "Leaves smaller, 2–3 cm long"},
           {"Stamens five or more", "Stamens four or fewer"}}) {
    EXPECT_EQ(told_of_code(worded_pair(a, b), "needs-second-specimen"), "") << a;
  }
}

TEST(Comparisons, AreLeftToALexiconThatExplainsThem) {
  Lexicon lexicon;
  lexicon.characters.push_back({.id = "size",
                                .structure = "body",
                                .subjects = {{.text = "body"}},
                                .states = {{.id = "larger"}, {.id = "smaller"}}});
  auto const edition =
      read({{"1", {{"Body larger", "Aus bus"}, {"Body smaller", "Cus dus"}}}}, lexicon);
  EXPECT_EQ(told_of_code(edition, "needs-second-specimen"), "");
}

// --- units -------------------------------------------------------------------------------------

TEST(PrintedUnits, ThatDifferWithinACoupletAreMentioned) {
  EXPECT_EQ(told_of_code(worded_pair("Spike 2–3 cm long", "Spike 5–8 mm long"), "units-differ"),
            "key.txt:2:1: information: lead 1b measures in mm what lead 1a measures in cm "
            "[units-differ]\n"
            "  Spike 5–8 mm long\n"
            "  key.txt:1:1: lead 1a says \"Spike 2–3 cm long\"\n"
            "  print the same unit in both leads\n");
}

TEST(PrintedUnits, MayDifferBetweenCharacters) {
  EXPECT_EQ(told_of_code(worded_pair("Spike 2–3 cm long, beak 1 mm long",
                                     "Spike 5–8 cm long, beak 2 mm long"),
                         "units-differ"),
            "");
}

// --- one sex or stage --------------------------------------------------------------------------

TEST(LimitedCouplet, IsOneThatSpeaksOfOneSexOnly) {
  EXPECT_EQ(
      told_of_code(worded_pair("Males: antennae long", "Males: antennae short"), "limited-couplet"),
      "key.txt:1:1: warning: couplet \"1\" speaks of males only, so nothing else can be keyed "
      "past it [limited-couplet]\n"
      "  Males: antennae long\n"
      "  add a character that both sexes show, or say in the front matter that the key is for "
      "no other\n");
}

TEST(LimitedCouplet, IsNoneWithAnAlternativeOrWithinTheScope) {
  EXPECT_EQ(told_of_code(worded_pair("Males: antennae long. Females: legs red",
                                     "Males: antennae short. Females: legs black"),
                         "limited-couplet"),
            "");
  EXPECT_EQ(told_of_code(
                worded_pair("Legs red. Males: antennae long", "Legs black. Males: antennae short"),
                "limited-couplet"),
            "");
  auto edition = worded_pair("Males: antennae long", "Males: antennae short");
  edition.front.scope.sex = "male";
  EXPECT_EQ(told_of_code(edition, "limited-couplet"), "");
}

// --- terms -------------------------------------------------------------------------------------

Lexicon fruits() {
  Lexicon lexicon;
  LexiconCharacter beak{.id = "beak",
                        .structure = "utricle",
                        .subjects = {{.text = "utricle"}, {.text = "utricles"}, {.text = "sac"}},
                        .states = {{.id = "bifid"}, {.id = "entire"}}};
  lexicon.characters.push_back(beak);
  return lexicon;
}

TEST(Terms, ThatChangeForOneStructureAreReportedOnce) {
  auto const lexicon = fruits();
  auto const edition = read({{"1", {{"Utricle bifid", "2"}, {"Utricles entire", "3"}}},
                             {"2", {{"sac bifid", "Aus bus"}, {"sac entire", "Aus cus"}}},
                             {"3", {{"utricle bifid", "Bus aus"}, {"utricle entire", "Bus cus"}}}},
                            lexicon);
  EXPECT_EQ(told_of_code(edition, "inconsistent-terms", {.lexicon = &lexicon, .members = {}}),
            "key.txt:3:1: warning: lead 2a calls \"sac\" what lead 1a calls \"utricle\" "
            "[inconsistent-terms]\n"
            "  sac bifid\n"
            "  key.txt:1:1: lead 1a says \"Utricle bifid\"\n"
            "  call it \"utricle\" throughout\n");
}

TEST(Terms, InTheSingularAndThePluralAreTheSame) {
  auto const lexicon = fruits();
  auto const edition = read({{"1", {{"Utricle bifid", "A"}, {"Utricles entire", "B"}}}}, lexicon);
  EXPECT_EQ(told_of_code(edition, "inconsistent-terms", {.lexicon = &lexicon, .members = {}}), "");
}

// --- repeats -----------------------------------------------------------------------------------

TEST(RepeatedCouplet, IsOneThatARouteAsksTwice) {
  auto const edition =
      read({{"1", {{"Beak usually bifid", "2"}, {"Beak usually entire", "Cus"}}},
            {"2", {{"Stem hollow", "3"}, {"Stem solid", "Dus"}}},
            {"3", {{"beak usually entire", "Aus"}, {"beak usually  bifid", "Bus"}}}});
  EXPECT_EQ(told_of_code(edition, "repeated-couplet"),
            "key.txt:5:1: warning: couplet \"3\" asks what couplet \"1\" above it has asked "
            "[repeated-couplet]\n"
            "  beak usually entire\n"
            "  key.txt:1:1: couplet \"1\" is here\n"
            "  drop one of the two, or say in one of them what it adds\n");
}

TEST(RepeatedCouplet, IsADeadLeadWhereTheFirstBarsOneOfTheLeads) {
  auto const edition = read({{"1", {{"Beak bifid", "2"}, {"Beak entire", "Cus"}}},
                             {"2", {{"Beak bifid", "Aus"}, {"Beak entire", "Bus"}}}});
  EXPECT_EQ(told_of_code(edition, "repeated-couplet"), "");
  EXPECT_EQ(findings_of_code(edition, {}, "dead-lead").size(), 1U);
}

TEST(RepeatedCouplet, IsNoneOnTwoBranches) {
  auto const edition = read({{"1", {{"Stem hollow", "2"}, {"Stem solid", "3"}}},
                             {"2", {{"Beak bifid", "Aus"}, {"Beak entire", "Bus"}}},
                             {"3", {{"Beak bifid", "Cus"}, {"Beak entire", "Dus"}}}});
  EXPECT_EQ(told_of_code(edition, "repeated-couplet"), "");
}

// Every couplet asks the same: each is a repeat of the one above it, found without going deep.
TEST(RepeatedCouplet, IsFoundAlongALongComb) {
  std::vector<CoupletSketch> couplets;
  std::size_t const n = 20'000;
  for (std::size_t i = 1; i <= n; ++i) {
    couplets.push_back(
        {std::to_string(i), {{"left", "A"}, {"right", i == n ? "B" : std::to_string(i + 1)}}});
  }
  auto const edition = test::make_edition("key.txt", couplets);
  auto const findings = findings_of_code(edition, {}, "repeated-couplet");
  ASSERT_EQ(findings.size(), n - 1);
  EXPECT_EQ(findings.back().message,
            "couplet \"20000\" asks what couplet \"19999\" above it has asked");
}

// --- style -------------------------------------------------------------------------------------

TEST(Style, IsRemarkedOnOnlyWhereItIsAsked) {
  auto const edition = worded_pair("Leaves not lobed", "Body large");
  for (auto const& finding : proof_contrast(edition, KeyGraph{edition})) {
    for (auto const& kind : style_finding_kinds()) EXPECT_NE(finding.code, kind.code);
  }
}

TEST(Style, RemarksOnAFirstLeadThatIsNegative) {
  EXPECT_EQ(
      style(worded_pair("Leaves not lobed", "Leaves lobed"), "first-lead-negative"),
      "key.txt:1:1: information: lead 1a begins with what is not there, and lead 1b with what "
      "is [first-lead-negative]\n"
      "  Leaves not lobed\n"
      "  print the positive lead first\n");
  EXPECT_EQ(style(worded_pair("Leaves lobed", "Leaves not lobed"), "first-lead-negative"), "");
}

TEST(Style, RemarksOnSizesWithoutMeasure) {
  EXPECT_EQ(style(worded_pair("Body large", "Body 3–4 mm long"), "size-without-measure"),
            "key.txt:1:1: information: lead 1a says \"large\" without a measure "
            "[size-without-measure]\n"
            "  Body large\n"
            "  give the measurement\n");
}

TEST(Style, RemarksOnBeginnings) {
  auto const edition = read({{"1", {{"Leaves flat", "2"}, {"Stem hollow", "Cus"}}},
                             {"2", {{"Beak bifid", "3"}, {"Beaks entire", "Dus"}}},
                             {"3", {{"beak long", "Aus"}, {"beak short", "Bus"}}}});
  EXPECT_EQ(style(edition, "leads-begin-differently"),
            "key.txt:2:1: information: lead 1b begins with \"stem\", and lead 1a with \"leaves\" "
            "[leads-begin-differently]\n"
            "  Stem hollow\n"
            "  begin both with the same structure\n");
  EXPECT_EQ(style(edition, "same-beginning-again"),
            "key.txt:5:1: information: couplet \"3\" begins with \"beak\" as the couplet before it "
            "does [same-beginning-again]\n"
            "  beak long\n"
            "  begin with another structure, so that readers do not slip a couplet\n");
}

TEST(Style, RemarksOnTheLargerSideBeforeTheSmaller) {
  auto const edition = read({{"1", {{"Beak bifid", "2"}, {"Beak entire", "Cus"}}},
                             {"2", {{"Stem hollow", "Aus"}, {"Stem solid", "Bus"}}}});
  EXPECT_EQ(style(edition, "larger-side-first"),
            "key.txt:1:1: information: lead 1a takes 2 taxa and lead 1b 1 [larger-side-first]\n"
            "  Beak bifid\n"
            "  print the lead of the fewer taxa first\n");
}

TEST(Style, RemarksOnWhatIsHardToSeeAboveWhatIsEasy) {
  Lexicon lexicon;
  lexicon.characters.push_back({.id = "nerve",
                                .structure = "nerve",
                                .subjects = {{.text = "nerves"}},
                                .difficulty = Difficulty::microscope,
                                .states = {{.id = "papillose"}, {.id = "smooth"}}});
  lexicon.characters.push_back({.id = "stem",
                                .structure = "stem",
                                .subjects = {{.text = "stem"}},
                                .states = {{.id = "hollow"}, {.id = "solid"}}});
  auto const edition = read({{"1", {{"Nerves papillose", "Cus"}, {"Nerves smooth", "2"}}},
                             {"2", {{"Stem hollow", "Aus"}, {"Stem solid", "Bus"}}}},
                            lexicon);
  EXPECT_EQ(
      style(edition, "hard-to-see-early", &lexicon),
      "key.txt:1:1: information: couplet \"1\" takes a microscope, and couplet \"2\" below it "
      "does with less [hard-to-see-early]\n"
      "  Nerves papillose\n"
      "  key.txt:3:1: couplet \"2\" is here\n"
      "  ask for what is easy to see first, where that parts the taxa\n");
}

TEST(Style, IsExplained) {
  Codes codes;
  for (auto const& kind : style_finding_kinds()) {
    codes.emplace_back(kind.code);
    EXPECT_EQ(kind.severity, Severity::information) << kind.code;
    EXPECT_FALSE(kind.title.empty() || kind.explanation.empty()) << kind.code;
  }
  EXPECT_EQ(codes,
            (Codes{"first-lead-negative", "hard-to-see-early", "larger-side-first",
                   "leads-begin-differently", "same-beginning-again", "size-without-measure"}));
}

}  // namespace
}  // namespace keydrift
