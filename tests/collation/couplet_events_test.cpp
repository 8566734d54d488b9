// What happened to each couplet, one event a test.

#include <gtest/gtest.h>

#include "sketch.hpp"

namespace keydrift {
namespace {

using test::collated;
using test::CoupletSketch;
using test::sketched;
using test::snails;
using test::told;

std::string told_of(std::vector<CoupletSketch> const& old_sketch,
                    std::vector<CoupletSketch> const& new_sketch,
                    test::Surroundings const& surroundings = {}) {
  auto const old_edition = sketched("old", old_sketch);
  auto const new_edition = sketched("new", new_sketch);
  return told(collated(old_edition, new_edition, surroundings), old_edition, new_edition);
}

TEST(CoupletEvents, TheSameEditionIsKept) {
  auto const collation = collated(snails(), snails());
  auto const edition = sketched("snails", snails());
  EXPECT_EQ(told(collation, edition, edition),
            "1-1 kept; 2-2 kept; 3-3 kept; 4-4 kept; 5-5 kept; 6-6 kept");
  EXPECT_FALSE(collation.changes_meaning);
  for (auto const& pair : collation.alignment.pairs) {
    EXPECT_EQ(pair.similarity.taxa, 1.0);
    EXPECT_EQ(pair.similarity.statements, 1.0);
    EXPECT_EQ(pair.similarity.neighbours, 1.0);
    EXPECT_EQ(pair.similarity.total, 1.0);
  }
}

TEST(CoupletEvents, AnotherNumberIsRenumberedAndNothingElse) {
  auto revised = snails();
  revised[1].label = "11";
  revised[0].leads[0].to = "11";
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-11 renumbered; 3-3 kept; 4-4 kept; 5-5 kept; 6-6 kept");
  EXPECT_FALSE(collated(snails(), revised).changes_meaning);
}

TEST(CoupletEvents, SwappedLeadsChangeNoMeaning) {
  auto revised = snails();
  std::swap(revised[1].leads[0], revised[1].leads[1]);
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-2 leads swapped; 3-3 kept; 4-4 kept; 5-5 kept; 6-6 kept");
  EXPECT_FALSE(collated(snails(), revised).changes_meaning);
}

TEST(CoupletEvents, OtherWordsForTheSamePredicateAreReworded) {
  auto const old_edition = sketched("old", snails());
  auto new_edition = old_edition;
  new_edition.couplets[2].leads[0].text = "rim of the mouth white";
  auto const collation = collated(old_edition, new_edition);
  EXPECT_EQ(told(collation, old_edition, new_edition),
            "1-1 kept; 2-2 kept; 3-3 reworded; 4-4 kept; 5-5 kept; 6-6 kept");
  EXPECT_FALSE(collation.changes_meaning);
}

TEST(CoupletEvents, AnInlineMarkIsNoPartOfTheWords) {
  auto const old_edition = sketched("old", snails());
  auto new_edition = old_edition;
  new_edition.couplets[2].leads[0].text += " {lip: white}";
  auto const collation = collated(old_edition, new_edition);
  EXPECT_EQ(test::events_of_new(collation, new_edition, "3"), "kept");
  EXPECT_EQ(collation.alignment.pairs[2].similarity.total, 1.0);
}

TEST(CoupletEvents, AnotherNoteUnderALeadIsReworded) {
  auto const old_edition = sketched("old", snails());
  auto new_edition = old_edition;
  new_edition.couplets[2].leads[0].notes = {"Look at dry shells only"};
  auto const collation = collated(old_edition, new_edition);
  EXPECT_EQ(test::events_of_new(collation, new_edition, "3"), "reworded");
}

TEST(CoupletEvents, AnotherPredicateIsRestated) {
  auto revised = snails();
  revised[2].leads[1].text = "lip: brown | pink";
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-2 kept; 3-3 restated; 4-4 kept; 5-5 kept; 6-6 kept");
  EXPECT_TRUE(collated(snails(), revised).changes_meaning);
}

TEST(CoupletEvents, AnotherStrengthIsRestated) {
  auto revised = snails();
  revised[2].leads[1].text = "usually lip: brown";
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-2 kept; 3-3 restated; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, ALeadThatNamesAnotherTaxonIsRedirected) {
  auto revised = snails();
  std::swap(revised[2].leads[0].to, revised[1].leads[1].to);  // Aus bus <-> Aus cus
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-2 redirected; 3-3 redirected; 4-4 kept; 5-5 kept; 6-6 kept");
  EXPECT_TRUE(collated(snails(), revised).changes_meaning);
}

TEST(CoupletEvents, ALeadToARenamedTaxonIsNotRedirected) {
  auto revised = snails();
  revised[2].leads[0].to = "Cus bus";
  EXPECT_EQ(told_of(snails(), revised,
                    {.lexicon = {},
                     .rows = {{.old_name = "Aus bus",
                               .relation = Relation::congruent,
                               .new_name = "Cus bus",
                               .note = "",
                               .place = {}}},
                     .parents = {}}),
            "1-1 kept; 2-2 kept; 3-3 kept; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, ACoupletThatHangsElsewhereIsMoved) {
  auto revised = snails();
  // Couplet 3 comes to hang below 4a, and Bus eus takes its place.
  revised[1].leads[0].to = "Bus eus";
  revised[3].leads[0].to = "3";
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-2 redirected; 3-3 moved; 4-4 redirected; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, AThirdLeadIsALeadAdded) {
  auto revised = snails();
  revised[2].leads.push_back({"lip: blue", "Aus ius"});
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-2 kept; 3-3 lead added; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, ALeadThatIsGoneIsALeadDropped) {
  auto old_sketch = snails();
  old_sketch[2].leads.push_back({"lip: blue", "Aus ius"});
  EXPECT_EQ(told_of(old_sketch, snails()),
            "1-1 kept; 2-2 kept; 3-3 lead dropped; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, ANewCoupletIsInsertedAndItsNeighboursAreLeftAlone) {
  std::vector<CoupletSketch> const revised{
      {"1", {{"shell: smooth", "2"}, {"shell: ribbed", "5"}}},
      {"2", {{"foot: black", "Aus novus"}, {"foot: pale", "3"}}},
      {"3", {{"spire: high", "4"}, {"spire: low", "Aus cus"}}},
      {"4", {{"lip: white", "Aus bus"}, {"lip: brown", "Aus dus"}}},
      {"5", {{"height: < 5 mm", "Bus eus"}, {"height: >= 5 mm", "6"}}},
      {"6", {{"mouth: round", "7"}, {"mouth: oval", "Bus gus"}}},
      {"7", {{"umbilicus: open", "Bus fus"}, {"umbilicus: closed", "Bus hus"}}},
  };
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; -2 inserted; 2-3 renumbered; 3-4 renumbered; 4-5 renumbered; "
            "5-6 renumbered; 6-7 renumbered");
}

TEST(CoupletEvents, ACoupletThatIsGoneIsRemovedWhereItStood) {
  auto revised = snails();
  revised[0].leads[0].to = "3";
  revised.erase(revised.begin() + 1);
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2- removed; 3-3 kept; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, APolytomyResolvedIntoTwoCoupletsIsSplit) {
  auto old_sketch = snails();
  old_sketch[2].leads.push_back({"lip: blue", "Aus ius"});
  auto revised = snails();
  revised[2].leads = {{"lip: white", "Aus bus"}, {"lip: blue | brown", "3x"}};
  revised.push_back({"3x", {{"lip: brown", "Aus dus"}, {"lip: blue", "Aus ius"}}});
  EXPECT_EQ(told_of(old_sketch, revised),
            "1-1 kept; 2-2 kept; 3-3,3x split; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, ACoupletSplitByItsCharactersIsSplit) {
  auto old_sketch = snails();
  old_sketch[2].leads = {{"lip: white; foot: black", "Aus bus"},
                         {"lip: brown; foot: pale", "Aus dus"}};
  auto revised = snails();
  revised[2].leads = {{"lip: white", "3x"}, {"lip: brown", "Aus dus"}};
  revised.push_back({"3x", {{"foot: black", "Aus bus"}, {"foot: pale", "Aus dus"}}});
  EXPECT_EQ(told_of(old_sketch, revised),
            "1-1 kept; 2-2 kept; 3-3,3x split; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, WhatIsInsertedBehindAPartIsNoPart) {
  auto old_sketch = snails();
  old_sketch[2].leads.push_back({"lip: blue", "Aus ius"});
  auto revised = snails();
  revised[2].leads = {{"lip: white", "Aus bus"}, {"lip: blue | brown", "3x"}};
  revised.push_back({"3x", {{"lip: brown", "3y"}, {"lip: blue", "Aus ius"}}});
  revised.push_back({"3y", {{"foot: black", "Aus novus"}, {"foot: pale", "Aus dus"}}});
  EXPECT_EQ(told_of(old_sketch, revised),
            "1-1 kept; 2-2 kept; 3-3,3x split; 4-4 kept; 5-5 kept; 6-6 kept; -3y inserted");
  EXPECT_EQ(told_of(revised, old_sketch),
            "1-1 kept; 2-2 kept; 3,3x-3 merged; 4-4 kept; 5-5 kept; 6-6 kept; 3y- removed");
}

TEST(CoupletEvents, ACoupletThatTakesOverHalfOfWhatItSaysIsInserted) {
  auto old_sketch = snails();
  old_sketch[2].leads = {{"lip: white; keel: blunt; foot: black", "Aus bus"},
                         {"lip: brown; keel: sharp; foot: pale", "Aus dus"}};
  auto revised = snails();
  revised[2].leads = {{"lip: white; keel: blunt", "3x"}, {"lip: brown; keel: sharp", "Aus dus"}};
  revised.push_back(
      {"3x",
       {{"foot: black; mantle: dark", "Aus bus"}, {"foot: pale; mantle: light", "Aus novus"}}});
  EXPECT_EQ(told_of(old_sketch, revised),
            "1-1 kept; 2-2 kept; 3-3 restated; 4-4 kept; 5-5 kept; 6-6 kept; -3x inserted");
}

TEST(CoupletEvents, TwoCoupletsMadeOnePolytomyAreMerged) {
  auto revised = snails();
  revised[1].leads = {{"spire: high; lip: white", "Aus bus"},
                      {"spire: high; lip: brown", "Aus dus"},
                      {"spire: low", "Aus cus"}};
  revised.erase(revised.begin() + 2);
  EXPECT_EQ(told_of(snails(), revised), "1-1 kept; 2,3-2 merged; 4-4 kept; 5-5 kept; 6-6 kept");
}

TEST(CoupletEvents, SeveralThingsHappenToOneCouplet) {
  auto revised = snails();
  revised[1].label = "20";
  revised[0].leads[0].to = "20";
  std::swap(revised[1].leads[0], revised[1].leads[1]);
  revised[1].leads[0].text = "usually spire: low";
  EXPECT_EQ(told_of(snails(), revised),
            "1-1 kept; 2-20 renumbered, leads swapped, restated; 3-3 kept; 4-4 kept; 5-5 kept; "
            "6-6 kept");
}

TEST(CoupletEvents, AnotherPrintedOrderOfTheCoupletsChangesNothing) {
  auto revised = snails();
  std::swap(revised[1], revised[5]);
  std::swap(revised[2], revised[3]);
  auto const collation = collated(snails(), revised);
  EXPECT_FALSE(collation.changes_meaning);
  for (auto const& change : collation.couplets) {
    EXPECT_EQ(change.events, std::vector{CoupletEvent::kept});
    EXPECT_EQ(change.similarity.total, 1.0);
  }
}

}  // namespace
}  // namespace keydrift
