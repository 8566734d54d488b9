// Findings that a revision mended or introduced, and what it says about its scope.

#include <gtest/gtest.h>

#include <algorithm>

#include "keydrift/key/proof.hpp"
#include "sketch.hpp"

namespace keydrift {
namespace {

using test::collated;
using test::CoupletSketch;
using test::sketched;
using test::snails;

// "code@line" of each finding.
std::string listed(std::vector<Finding> const& findings) {
  std::string text;
  for (auto const& finding : findings) {
    if (!text.empty()) text += " ";
    text += finding.code + "@" + std::to_string(finding.place.line);
  }
  return text;
}

bool has(std::vector<Finding> const& findings, std::string const& code, std::uint32_t line) {
  return std::any_of(findings.begin(), findings.end(), [&](Finding const& finding) {
    return finding.code == code && finding.place.line == line;
  });
}

// Couplet 3 without its second lead.
std::vector<CoupletSketch> with_a_single_lead() {
  auto sketch = snails();
  sketch[2].leads.pop_back();
  return sketch;
}

// The code that proof gives to a couplet with one lead; the collation must not depend on it.
std::string code_for_single_lead() {
  auto const edition = sketched("key", with_a_single_lead());
  KeyGraph const graph{edition};
  for (auto const& finding : proof_structure(edition, graph)) {
    if (finding.place.line == 5 && finding.severity != Severity::information) return finding.code;
  }
  return "none";
}

TEST(FindingsOfBothEditions, AnErrorThatVanishedIsMended) {
  auto const code = code_for_single_lead();
  ASSERT_NE(code, "none");
  auto const collation = collated(with_a_single_lead(), snails());
  EXPECT_TRUE(has(collation.mended, code, 5)) << listed(collation.mended);
  EXPECT_TRUE(collation.introduced.empty()) << listed(collation.introduced);
  EXPECT_TRUE(collation.lasting.empty()) << listed(collation.lasting);
}

TEST(FindingsOfBothEditions, AnErrorThatIsNewIsIntroduced) {
  auto const code = code_for_single_lead();
  auto const collation = collated(snails(), with_a_single_lead());
  EXPECT_TRUE(has(collation.introduced, code, 5)) << listed(collation.introduced);
  EXPECT_TRUE(collation.mended.empty()) << listed(collation.mended);
}

TEST(FindingsOfBothEditions, AnErrorThatMovedToAnotherLineAndNumberIsLasting) {
  auto const code = code_for_single_lead();
  auto revised = with_a_single_lead();
  // Printed last, under another number.
  auto moved = revised[2];
  moved.label = "7";
  revised.erase(revised.begin() + 2);
  revised.push_back(moved);
  revised[1].leads[0].to = "7";
  auto const collation = collated(with_a_single_lead(), revised);
  EXPECT_TRUE(has(collation.lasting, code, 11)) << listed(collation.lasting);
  EXPECT_FALSE(has(collation.mended, code, 5)) << listed(collation.mended);
  EXPECT_FALSE(has(collation.introduced, code, 11)) << listed(collation.introduced);
}

TEST(FindingsOfBothEditions, AnErrorOfARemovedCoupletIsMended) {
  auto const code = code_for_single_lead();
  auto revised = with_a_single_lead();
  revised[1].leads[0].to = "Aus bus";
  revised.erase(revised.begin() + 2);
  auto const collation = collated(with_a_single_lead(), revised);
  EXPECT_TRUE(has(collation.mended, code, 5)) << listed(collation.mended);
}

std::vector<std::string> scope_changes(Scope const& was, Scope const& is) {
  auto old_edition = sketched("old", snails());
  auto new_edition = sketched("new", snails());
  old_edition.front.scope = was;
  new_edition.front.scope = is;
  auto const collation = collated(old_edition, new_edition);
  EXPECT_EQ(collation.changes_meaning, !collation.scope_changes.empty());
  return collation.scope_changes;
}

TEST(ScopeChanges, EveryDifferenceIsSaidInWords) {
  Scope was;
  was.taxa = "the snails of the pans";
  was.region = "Outer Pans";
  was.places = {"Outer Pan", "Long Pan"};
  was.life_stage = "adult";
  was.excluded_taxa = {"Cus"};
  Scope is;
  is.taxa = "the snails and slugs of the pans";
  is.region = "Outer and Inner Pans";
  is.places = {"Long Pan", "Inner Pan"};
  is.sex = "female";
  is.material = "dry shells";
  is.listed_taxa = {"Aus bus", "Aus absens", "Aus rarus"};
  EXPECT_EQ(scope_changes(was, is),
            (std::vector<std::string>{
                "taxa: the snails of the pans → the snails and slugs of the pans",
                "region: Outer Pans → Outer and Inner Pans",
                "places: now also Inner Pan; no longer Outer Pan",
                "life stage: adult → not said",
                "sex: not said → female",
                "material: not said → dry shells",
                "taxa left out: no longer Cus",
                "taxa listed: now also Aus absens, Aus rarus",
            }));
}

TEST(ScopeChanges, AListedTaxonThatCeasesToKeyOutWasListedBefore) {
  auto const old_edition = [](std::vector<std::string> listed) {
    auto edition = sketched("old", snails());
    edition.front.scope.listed_taxa = std::move(listed);
    return edition;
  };
  auto revised = snails();
  revised[1].leads[1].to = "Aus novus";  // was Aus cus
  auto new_edition = sketched("new", revised);
  new_edition.front.scope.listed_taxa = {"Aus cus", "Aus absens"};
  EXPECT_EQ(collated(old_edition({"Aus absens", "Aus cus"}), new_edition).scope_changes,
            std::vector<std::string>{});
  EXPECT_EQ(collated(old_edition({"Aus absens"}), new_edition).scope_changes,
            std::vector<std::string>{"taxa listed: now also Aus cus"});
}

TEST(ScopeChanges, TheSameScopeOtherwiseSpacedAndOrderedIsNoChange) {
  Scope was;
  was.region = "Outer Pans";
  was.places = {"Outer Pan", "Long Pan"};
  Scope is;
  is.region = "outer  pans";
  is.places = {"Long Pan", "Outer Pan"};
  EXPECT_EQ(scope_changes(was, is), std::vector<std::string>{});
}

}  // namespace
}  // namespace keydrift
