// What is found of leads whose numbers are formulas, ratios, or measurements without a unit:
// nothing that their author would deny.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "edition_builder.hpp"
#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/reading.hpp"

namespace keydrift {
namespace {

struct TwoLeads {
  char const* first;
  char const* second;
};

std::vector<Finding> findings_of_two(TwoLeads const& leads) {
  auto edition =
      test::make_edition("key.txt", {{"1", {{leads.first, "Aus bus"}, {leads.second, "Cus dus"}}}});
  auto findings = read_statements(edition, {});
  for (auto& finding : proof_contrast(edition, KeyGraph{edition})) {
    findings.push_back(std::move(finding));
  }
  return findings;
}

class ContrastsOfNumbers : public testing::TestWithParam<TwoLeads> {};

TEST_P(ContrastsOfNumbers, AreNotDenied) {
  for (auto const& finding : findings_of_two(GetParam())) {
    EXPECT_EQ(finding.severity, Severity::information) << to_text(finding);
  }
}

constexpr TwoLeads kContrasts[]{
    {"Vertebrae 24 (10 + 14); D. XII, 14–16; A. III, 8",
     "Vertebrae 25 (11 + 14); D. X, 11–12; A. III, 7"},
    {"Scutum with 2 + 3 dorsocentral bristles, 1 + 1 acrostichals",
     "Scutum with 2 + 4 dorsocentral bristles, 2 + 1 acrostichals"},
    {"Setal formula of legs II–VII 3-2-1; leg formula 4-1-2-3",
     "Setal formula of legs II–VII 2-2-1; leg formula 1-4-2-3"},
    {"Legs 4-1-2-3 in length", "Legs 1-4-2-3 in length"},
    {"Tarsi 5-5-4", "Tarsi 4-4-4"},
    {"Leg formula 4123", "Leg formula 1423"},
    {"Gill rakers 5–6 + 12–14", "Gill rakers 8–9 + 16–18"},
    {"Dorsal fin IX, 12; vein R4+5 bare", "Dorsal fin XI, 12; vein R4+5 with setae"},
    {"Femur to tibia 1:1.5", "Femur to tibia 1:3.2"},
    {"Dentition 1/2", "Dentition 2/3"},
    {"Basal 1/3 of elytra black", "Basal 1/2 of elytra black"},
    {"Carapace length 1.8–2.4", "Carapace length 2.5–3.1"},
    {"Umbilicus up to 1/4 of diameter", "Umbilicus more than 1/4 of diameter"},
    {"Fühler lang (♂: 3,5–4,0 mm; ♀: 3,0–3,2 mm)", "Fühler kurz (♂: 2,5–2,8 mm; ♀: 2,0–2,2 mm)"},
    {"Antennae long (male: 3.5–4 mm; female: 3–3.2 mm)",
     "Antennae short (male: 2.5–2.8 mm; female: 2–2.2 mm)"},
    {"Trees with pale bark", "Shrubs creeping on rocks"},
    {"Annual", "Perennial with a thick rootstock"},
    {"Petals white. 5–7", "Petals blue"},
    {"Tergite 1 longer than wide", "Tergite 1 wider than long"},
    {"Segment 2 as long as segment 3", "Segment 2 longer than segment 3"},
    {"Tergites 2–4 with yellow spots", "Tergites 2–5 with yellow spots"},
    {"Antennomere 3 longer than 4", "Antennomere 3 shorter than 4"},
    {"Tibia 1 with 2 spurs", "Tibia 1 with 1 spur"},
    {"Genitalia as in Figs 12, 13", "Genitalia as in Figs 14, 15"},
    {"Head black; genitalia as in Fig. 3a", "Head red; genitalia as in Fig. 3b"},
};

INSTANTIATE_TEST_SUITE_P(Contrast, ContrastsOfNumbers, testing::ValuesIn(kContrasts));

TEST(ContrastsOfFigures, AreARemark) {
  auto const findings = findings_of_two({"Genitalia as in Fig. 12", "Genitalia as in Fig. 14"});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(to_text(findings[0]),
            "key.txt:2:1: information: leads 1a and 1b contrast in their figures alone "
            "[no-contrast]\n"
            "  Genitalia as in Fig. 14\n"
            "  key.txt:1:1: lead 1a is here\n"
            "  say in words as well what the figures show\n");
}

TEST(ContrastsOfFigures, NeedFiguresOnBothSides) {
  auto const findings = findings_of_two({"Legs black (Fig. 1)", "Legs black"});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].severity, Severity::error);
}

TEST(ContrastsOfNumbersWithoutUnit, ShowWhereTheyOverlap) {
  auto const findings = findings_of_two({"Carapace length 1.8–2.4", "Carapace length 2.2–3.1"});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].code, "overlapping-ranges");
}

// The numbers of findings are those that the key prints.
struct TwoLeadsToldOf {
  char const* first;
  char const* second;
  char const* message;
};

class NumbersOfFindings : public testing::TestWithParam<TwoLeadsToldOf> {};

TEST_P(NumbersOfFindings, AreInTheUnitAndDirectionOfThePrint) {
  auto const& [a, b, message] = GetParam();
  auto const findings = findings_of_two({a, b});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].message.substr(0, std::string{message}.size()), message)
      << findings[0].message;
}

constexpr TwoLeadsToldOf kToldOf[]{
    {"Sheath at least 1.2 times as long as metasoma", "Sheath shorter than metasoma",
     "what lies between 1 and 1.2 fits no lead"},
    {"Scape 1.5–2.0 × as long as eye", "Scape 2.2–2.6 × as long as eye",
     "what lies between 2 and 2.2 fits no lead"},
    {"Beak 3 times as wide as long", "Beak 1–2 times as wide as long",
     "what lies between 2 and 3 fits no lead"},
    {"OOL less than 0.5 × diameter of ocellus", "OOL at least 1.0 × diameter of ocellus",
     "what lies between 0.5 and 1 fits no lead"},
    {"Segment 3 twice as long as segment 2", "Segment 3 subequal to segment 2",
     "what lies between 1.1 and 2 fits no lead"},
    {"Tarsi as long as tibiae", "Tarsi two-thirds length of tibiae",
     "what lies between 0.667 and 1 fits no lead"},
    {"Spores 5–7 µm long", "Spores 9–11 µm long", "what lies between 7 and 9 µm fits no lead"},
    {"Stems 5–15 cm", "Stems 20–50 cm", "what lies between 15 and 20 cm fits no lead"},
    {"Stems 5–15 cm", "Stems 12–50 cm",
     "\"Stems 5–15 cm\" of lead 1a and \"Stems 12–50 cm\" of lead 1b both take in 12–15 cm"},
    // one unit of the last decimal, as it is printed
    {"Stems 2.0–3.9 dm long", "Stems 4.0–5.5 dm long", "what lies between 3.9 and 4 dm"},
    {"Hills 100–900 m", "Hills 1500–2000 m", "what lies between 900 and 1500 m fits no lead"},
};

INSTANTIATE_TEST_SUITE_P(Contrast, NumbersOfFindings, testing::ValuesIn(kToldOf));

TEST(NumbersOfFindings, AreNoGapWhereOneDecimalParts) {
  auto const findings = findings_of_two({"Stems 2.0–3.9 dm long", "Stems 4.0–5.5 dm long"});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].severity, Severity::information);
}

// A bare number of so many metres is of the place, whatever was spoken of before.
TEST(Altitudes, AnswerEachOther) {
  auto const findings = findings_of_two(
      {"Nutlets tuberculate, 2.5-3 mm; 800-1,400 m", "Nutlets smooth, 1-2 mm; below 100 m"});
  for (auto const& finding : findings) {
    EXPECT_NE(finding.code, "one-sided") << to_text(finding);
    EXPECT_NE(finding.code, "units-differ") << to_text(finding);
  }
  EXPECT_EQ(findings_of_two({"Nutlets 3–4 mm; alt. 800–1400 m", "Nutlets 1–2 mm; below 900 m"})
                .back()
                .code,
            "overlapping-ranges");
}

}  // namespace
}  // namespace keydrift
