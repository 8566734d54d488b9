// Why couplets correspond, and why others do not.

#include "keydrift/collation/reasons.hpp"

#include <gtest/gtest.h>

#include <array>

#include "history_cases.hpp"
#include "keydrift/key/graph.hpp"
#include "sketch.hpp"

namespace keydrift {
namespace {

using test::CoupletSketch;
using test::sketched;
using test::snails;

struct ToldReasons {
  Edition old_edition;
  Edition new_edition;
  Collation collation;
  std::vector<CoupletReasons> reasons;
};

ToldReasons why(std::string const& label, std::vector<CoupletSketch> const& old_sketch,
                std::vector<CoupletSketch> const& new_sketch) {
  ToldReasons told{sketched("old", old_sketch), sketched("new", new_sketch), {}, {}};
  told.collation = test::collated(told.old_edition, told.new_edition);
  told.reasons = reasons_for(label, told.old_edition, KeyGraph{told.old_edition}, told.new_edition,
                             KeyGraph{told.new_edition}, told.collation);
  return told;
}

TEST(Reasons, ACoupletThatWasKeptAgreesInEverything) {
  auto const told = why("3", snails(), snails());
  ASSERT_EQ(told.reasons.size(), 1U);
  auto const& reasons = told.reasons.front();
  EXPECT_EQ(reasons.counterpart, CoupletId{2});
  EXPECT_EQ(reasons.similarity.total, 1.0);
  ASSERT_EQ(reasons.leads.size(), 2U);
  EXPECT_EQ(reasons.leads[1].taxa, 1.0);
  ASSERT_EQ(reasons.leads[1].below_both.size(), 1U);
  EXPECT_EQ(told.new_edition[reasons.leads[1].below_both[0]].name, "Aus dus");
  ASSERT_EQ(reasons.leads[1].compared.size(), 1U);
  EXPECT_EQ(reasons.leads[1].compared[0].agreement, 1.0);
}

TEST(Reasons, ThePartsAreThoseOfTheAgreement) {
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    auto const made = test::make_case({.seed = seed, .couplets = 30, .percent = 50});
    auto const collation = collated(made);
    KeyGraph const old_graph{made.old_edition};
    KeyGraph const new_graph{made.new_edition};
    auto const [taxa, statements, neighbours] = similarity_weights();
    for (auto const& pair : collation.alignment.pairs) {
      auto const all = reasons_for(made.old_edition[pair.old_couplet].label, made.old_edition,
                                   old_graph, made.new_edition, new_graph, collation);
      ASSERT_FALSE(all.empty());
      auto const& told = all.front();
      ASSERT_EQ(told.counterpart, pair.new_couplet);
      EXPECT_EQ(told.similarity.total, pair.similarity.total);
      EXPECT_NEAR(told.similarity.total,
                  (taxa * told.similarity.taxa + statements * told.similarity.statements +
                   neighbours * told.similarity.neighbours) /
                      (taxa + statements + neighbours),
                  1e-5);
      double sum = 0;
      double weights = 0;
      for (auto const& one : told.neighbours) {
        sum += one.weight * one.agreement;
        weights += one.weight;
      }
      EXPECT_NEAR(told.similarity.neighbours, weights == 0 ? 1 : sum / weights, 1e-5)
          << test::described({.seed = seed, .couplets = 30, .percent = 50});
      for (auto const& one : told.runners_up) EXPECT_NE(one.couplet, pair.new_couplet);
    }
  }
}

TEST(Reasons, ARunnerUpIsTheCounterpartOfAnother) {
  auto const told = why("5", snails(), snails());
  ASSERT_FALSE(told.reasons.front().runners_up.empty());
  auto const& next = told.reasons.front().runners_up.front();
  EXPECT_NE(next.couplet, CoupletId{4});
  EXPECT_EQ(next.taken_by, next.couplet);
  EXPECT_EQ(next.taken_with.total, 1.0);
  EXPECT_LT(next.similarity.total, 0.5);
  EXPECT_EQ(next.why, WhyNot::too_unlike);
}

TEST(Reasons, AnInsertedCoupletHasNoCounterpartAndOthersHaveTheirs) {
  auto revised = snails();
  revised[0].leads[0].to = "1x";
  revised.push_back({"1x", {{"foot: black", "Aus novus"}, {"foot: pale", "2"}}});
  auto const told = why("1x", snails(), revised);
  ASSERT_EQ(told.reasons.size(), 1U);
  auto const& reasons = told.reasons.front();
  EXPECT_TRUE(reasons.of_new);
  EXPECT_EQ(reasons.counterpart, std::nullopt);
  EXPECT_EQ(reasons.part_of, std::nullopt);
  ASSERT_FALSE(reasons.runners_up.empty());
  for (auto const& one : reasons.runners_up) {
    EXPECT_TRUE(one.taken_by.has_value());
    EXPECT_NE(one.why, WhyNot::no_candidate);
  }
}

TEST(Reasons, APartSaysOfWhat) {
  auto old_sketch = snails();
  old_sketch[2].leads.push_back({"lip: blue", "Aus ius"});
  auto revised = snails();
  revised[2].leads = {{"lip: white", "Aus bus"}, {"lip: blue | brown", "3x"}};
  revised.push_back({"3x", {{"lip: brown", "Aus dus"}, {"lip: blue", "Aus ius"}}});
  auto const part = why("3x", old_sketch, revised);
  ASSERT_EQ(part.reasons.size(), 1U);
  EXPECT_EQ(part.reasons.front().part_of, CoupletId{2});
  EXPECT_FALSE(part.reasons.front().part_apart);
  auto const whole = why("3", old_sketch, revised);
  ASSERT_EQ(whole.reasons.size(), 1U);
  auto const& next = whole.reasons.front().runners_up.front();
  EXPECT_EQ(whole.new_edition[next.couplet].label, "3x");
  EXPECT_EQ(next.why, WhyNot::part);
  EXPECT_EQ(whole.reasons.front().together_with, next.couplet);
  EXPECT_EQ(why("3", old_sketch, old_sketch).reasons.front().together_with, std::nullopt);
}

TEST(Reasons, APartThatHangsElsewhereIsToldFromOneThatHangsBesideIt) {
  auto revised = snails();  // couplet 5 put where 3 hung, and united with 2
  revised[1].leads = {{"spire: low", "Aus cus"},
                      {"spire: high; mouth: round", "6"},
                      {"spire: high; mouth: oval", "Bus gus"}};
  revised[3].leads[1].to = "3";
  revised.erase(revised.begin() + 4);
  auto const part = why("5", snails(), revised);
  ASSERT_EQ(part.reasons.size(), 1U);
  EXPECT_EQ(part.reasons.front().part_of, CoupletId{1});
  EXPECT_TRUE(part.reasons.front().part_apart);
}

TEST(Reasons, CoupletsOfBothEditionsWithOneNumberAreTold) {
  auto revised = snails();
  revised.insert(revised.begin() + 1, {"n", {{"foot: black", "Aus novus"}, {"foot: pale", "2"}}});
  revised[0].leads[0].to = "n";
  for (auto& couplet : revised) {  // what was 2 is 3, and so on
    auto const renamed = [](std::string& label) {
      if (label == "n") {
        label = "2";
      } else if (label.size() == 1 && label >= "2" && label <= "6") {
        label[0] = static_cast<char>(label[0] + 1);
      }
    };
    renamed(couplet.label);
    for (auto& lead : couplet.leads) renamed(lead.to);
  }
  auto const told = why("3", snails(), revised);
  ASSERT_EQ(told.reasons.size(), 2U);
  EXPECT_FALSE(told.reasons[0].of_new);
  EXPECT_EQ(told.new_edition[*told.reasons[0].counterpart].label, "4");
  EXPECT_TRUE(told.reasons[1].of_new);
  EXPECT_EQ(told.old_edition[*told.reasons[1].counterpart].label, "2");
  EXPECT_TRUE(why("77", snails(), revised).reasons.empty());
}

}  // namespace
}  // namespace keydrift
