// Taxa whose way through the key changed, one event a test.

#include <gtest/gtest.h>

#include "sketch.hpp"

namespace keydrift {
namespace {

using test::collated;
using test::CoupletSketch;
using test::sketched;
using test::snails;

// One taxon of a collation, as words.
struct ToldChange {
  std::string events;
  std::string steps;
  std::optional<std::size_t> parting;
  TaxonChange change;
};

ToldChange taxon(std::vector<CoupletSketch> const& old_sketch,
                 std::vector<CoupletSketch> const& new_sketch, std::string const& name,
                 test::Surroundings const& surroundings = {}) {
  auto const old_edition = sketched("old", old_sketch);
  auto const new_edition = sketched("new", new_sketch);
  auto const collation = collated(old_edition, new_edition, surroundings);
  auto const change = test::taxon_named(collation, old_edition, new_edition, name);
  return {test::words_of(change.events), test::steps_of(change, old_edition, new_edition),
          change.parting, change};
}

test::Surroundings relating(std::vector<ConceptRow> rows) {
  return {.lexicon = {}, .rows = std::move(rows), .parents = {}};
}

ConceptRow row(std::string old_name, Relation relation, std::string new_name) {
  return {.old_name = std::move(old_name),
          .relation = relation,
          .new_name = std::move(new_name),
          .note = "",
          .place = {}};
}

TEST(TaxonChanges, ATaxonOfAnUnchangedKeyKeepsItsRoute) {
  auto const told = taxon(snails(), snails(), "Aus dus");
  EXPECT_EQ(told.events, "same route");
  EXPECT_EQ(told.steps, "1a=1a 2a=2a 3b=3b");
  EXPECT_EQ(told.parting, std::nullopt);
}

TEST(TaxonChanges, SwappedAndRenumberedCoupletsKeepTheRoute) {
  auto revised = snails();
  std::swap(revised[1].leads[0], revised[1].leads[1]);
  revised[1].label = "9";
  revised[0].leads[0].to = "9";
  auto const told = taxon(snails(), revised, "Aus dus");
  EXPECT_EQ(told.events, "same route");
  EXPECT_EQ(told.steps, "1a=1a 2a=9b 3b=3b");
}

TEST(TaxonChanges, AnInsertedCoupletIsAnotherRouteAndSaysWhereItParts) {
  auto revised = snails();
  revised[0].leads[0].to = "1x";
  revised.push_back({"1x", {{"foot: black", "Aus novus"}, {"foot: pale", "2"}}});
  auto const told = taxon(snails(), revised, "Aus dus");
  EXPECT_EQ(told.events, "other route");
  EXPECT_EQ(told.steps, "1a=1a -1xb 2a=2a 3b=3b");
  EXPECT_EQ(told.parting, 1U);
  EXPECT_EQ(told.change.characters_gained, std::vector<std::string>{"foot"});
  EXPECT_TRUE(told.change.characters_lost.empty());
}

TEST(TaxonChanges, AnotherLeadOfTheSameCoupletIsAnotherRoute) {
  auto revised = snails();
  std::swap(revised[2].leads[0].to, revised[1].leads[1].to);  // Aus bus <-> Aus cus
  auto const told = taxon(snails(), revised, "Aus bus");
  EXPECT_EQ(told.events, "other route");
  EXPECT_EQ(told.steps, "1a=1a 2a/2b 3a-");
  EXPECT_EQ(told.parting, 1U);
  EXPECT_EQ(told.change.characters_lost, std::vector<std::string>{"lip"});
}

TEST(TaxonChanges, ARestatedLeadOnTheWayIsARestatedRoute) {
  auto revised = snails();
  revised[2].leads[1].text = "lip: brown | pink";
  auto const told = taxon(snails(), revised, "Aus dus");
  EXPECT_EQ(told.events, "route restated");
  EXPECT_EQ(told.steps, "1a=1a 2a=2a 3b~3b");
  EXPECT_EQ(told.parting, 2U);
}

TEST(TaxonChanges, ANewNameOfTheSameConceptIsARename) {
  auto revised = snails();
  revised[2].leads[0].to = "Cus bus";
  auto const told = taxon(snails(), revised, "Cus bus",
                          relating({row("Aus bus", Relation::congruent, "Cus bus")}));
  EXPECT_EQ(told.events, "same route, renamed");
  EXPECT_EQ(told.change.basis, MatchBasis::concept_map);
}

TEST(TaxonChanges, BothPartsOfASplitTaxonAreTold) {
  auto revised = snails();
  revised[2].leads[0].to = "3x";
  revised.push_back({"3x", {{"foot: black", "Aus bus"}, {"foot: pale", "Aus novus"}}});
  auto const map = relating({row("Aus bus", Relation::includes, "Aus bus"),
                             row("Aus bus", Relation::includes, "Aus novus")});
  auto const one = taxon(snails(), revised, "Aus bus", map);
  EXPECT_EQ(one.events, "other route, split");
  EXPECT_EQ(one.steps, "1a=1a 2a=2a 3a=3a -3xa");
  auto const other = taxon(snails(), revised, "Aus novus", map);
  EXPECT_EQ(other.events, "other route, split");
  EXPECT_EQ(other.steps, "1a=1a 2a=2a 3a=3a -3xb");
}

TEST(TaxonChanges, ALumpedTaxonIsTold) {
  auto revised = snails();
  revised[1].leads[0].to = "Aus bus";
  revised.erase(revised.begin() + 2);
  auto const told = taxon(snails(), revised, "Aus bus",
                          relating({row("Aus bus", Relation::included_in, "Aus bus"),
                                    row("Aus dus", Relation::included_in, "Aus bus")}));
  EXPECT_EQ(told.events, "other route, lumped");
  EXPECT_EQ(told.steps, "1a=1a 2a=2a 3a-");
}

TEST(TaxonChanges, OverlappingConceptsAreTold) {
  auto const told = taxon(snails(), snails(), "Aus bus",
                          relating({row("Aus bus", Relation::overlaps, "Aus bus")}));
  EXPECT_EQ(told.events, "same route, overlapping");
}

TEST(TaxonChanges, ANewTaxonEntersWithItsWholeRoute) {
  auto revised = snails();
  revised[2].leads.push_back({"lip: blue", "Aus novus"});
  auto const told = taxon(snails(), revised, "Aus novus");
  EXPECT_EQ(told.events, "entered");
  EXPECT_EQ(told.steps, "-1a -2a -3c");
  EXPECT_TRUE(told.change.old_taxa.empty());
  EXPECT_EQ(told.change.characters_gained, (std::vector<std::string>{"lip", "shell", "spire"}));
}

TEST(TaxonChanges, ATaxonThatLeavesComesLast) {
  auto old_sketch = snails();
  old_sketch[2].leads.push_back({"lip: blue", "Aus ius"});
  auto const told = taxon(old_sketch, snails(), "Aus ius");
  EXPECT_EQ(told.events, "left");
  EXPECT_EQ(told.steps, "1a- 2a- 3c-");
  auto const collation = collated(old_sketch, snails());
  EXPECT_TRUE(collation.taxa.back().new_taxa.empty());
}

TEST(TaxonChanges, KeyingOutInMorePlacesIsTold) {
  auto revised = snails();
  revised[4].leads[1].to = "5x";
  revised.push_back({"5x", {{"foot: black", "Bus gus"}, {"foot: pale", "Aus bus"}}});
  auto const more = taxon(snails(), revised, "Aus bus");
  EXPECT_EQ(more.events, "other route, keys out in more places");
  EXPECT_EQ(more.change.old_ends, 1U);
  EXPECT_EQ(more.change.new_ends, 2U);
  EXPECT_EQ(taxon(revised, snails(), "Aus bus").events, "other route, keys out in fewer places");
}

TEST(TaxonChanges, ReachedOnlyThroughAnExceptionIsTold) {
  auto revised = snails();
  revised[1].leads[0].text = "spire: high except Aus dus";
  auto const now = taxon(snails(), revised, "Aus dus");
  EXPECT_EQ(now.events, "route restated, now reached only through an exception");
  EXPECT_EQ(taxon(revised, snails(), "Aus dus").events,
            "route restated, no longer reached only through an exception");
  EXPECT_EQ(taxon(snails(), revised, "Aus bus").events, "route restated")
      << "the exception is not for Aus bus";
}

TEST(TaxonChanges, ASecondRouteWithoutExceptionIsNotOnlyThroughAnException) {
  auto revised = snails();
  revised[2].leads[1].text = "lip: brown except Aus dus";
  revised[4].leads[1].to = "5x";
  revised.push_back({"5x", {{"foot: black", "Bus gus"}, {"foot: pale", "Aus dus"}}});
  EXPECT_EQ(taxon(snails(), revised, "Aus dus").events, "other route, keys out in more places");
}

TEST(TaxonChanges, HedgedStatementsAreNoCharactersOfARoute) {
  auto revised = snails();
  revised[2].leads[0].text = "usually lip: white";
  auto const told = taxon(snails(), revised, "Aus bus");
  EXPECT_EQ(told.events, "route restated");
  EXPECT_EQ(told.change.characters_lost, std::vector<std::string>{"lip"});
}

TEST(TaxonChanges, OfSeveralRoutesTheOneThatChangedIsShown) {
  auto old_sketch = snails();
  old_sketch[4].leads[1].to = "5x";
  old_sketch.push_back({"5x", {{"foot: black", "Bus gus"}, {"foot: pale", "Aus bus"}}});
  auto revised = old_sketch;
  revised[6].leads[1].text = "foot: pale | grey";
  auto const told = taxon(old_sketch, revised, "Aus bus");
  EXPECT_EQ(told.events, "route restated");
  EXPECT_EQ(told.steps, "1b=1b 4b=4b 5b=5b 5xb~5xb");
}

// A comb of couplets with a character each; its last taxon stands at the end of all.
std::vector<CoupletSketch> comb(std::size_t couplets) {
  std::vector<CoupletSketch> sketch;
  for (std::size_t i = 1; i <= couplets; ++i) {
    auto const number = std::to_string(i);
    auto const character = "c" + std::string(3 - number.size(), '0') + number;
    sketch.push_back(
        {number,
         {{character + ": s0", "Aus t" + number},
          {character + ": s1", i < couplets ? std::to_string(i + 1) : "Aus ultimus"}}});
  }
  return sketch;
}

TEST(TaxonChanges, OfVeryManyCharactersTheOthersAreCounted) {
  auto revised = comb(150);
  revised.front().leads.push_back({"c001: s2", "Aus ultimus"});
  revised.back().leads.back().to = "Aus novus";
  auto const told = taxon(comb(150), revised, "Aus ultimus");
  ASSERT_EQ(told.change.characters_lost.size(), most_characters_told);
  EXPECT_EQ(told.change.characters_lost.front(), "c002");
  EXPECT_EQ(told.change.characters_lost.back(), "c129");
  EXPECT_EQ(told.change.others_lost, 21U);
  EXPECT_EQ(told.change.others_gained, 0U);
}

// A newcomer at the end of a long way is shown where it keys out.
TEST(TaxonChanges, OfALongWayOfOneEditionTheEndIsShown) {
  auto revised = comb(150);
  revised.back().leads.push_back({"c150: s2", "Aus novus"});
  auto const came = taxon(comb(150), revised, "Aus novus").change;
  ASSERT_EQ(came.steps.size(), 128U);
  EXPECT_EQ(came.steps_before, 22U);
  EXPECT_EQ(came.steps_after, 0U);
  EXPECT_FALSE(came.parting);
  ASSERT_TRUE(came.steps.back().new_lead);
  EXPECT_EQ(came.steps.back().new_lead->couplet.index, 149U);
  EXPECT_EQ(came.steps.front().new_lead->couplet.index, 22U);
  EXPECT_FALSE(came.steps.front().old_lead);
  auto const left = taxon(revised, comb(150), "Aus novus").change;
  EXPECT_EQ(left.steps_before, 22U);
  ASSERT_TRUE(left.steps.back().old_lead);
  EXPECT_EQ(left.steps.back().old_lead->couplet.index, 149U);
}

}  // namespace
}  // namespace keydrift
