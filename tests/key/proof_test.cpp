#include "keydrift/key/proof.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "edition_builder.hpp"

namespace keydrift {
namespace {

using test::CoupletSketch;
using test::make_edition;

// Findings as they are shown, those of `left_out` codes aside.
std::string proof_of(Edition const& edition, std::set<std::string> const& left_out = {}) {
  std::string text;
  for (auto const& finding : proof_structure(edition, KeyGraph{edition})) {
    if (!left_out.contains(finding.code)) text += to_text(finding);
  }
  return text;
}

Edition sound() {
  return make_edition("k", {{"1", {{"leaves flat", "2"}, {"leaves round", "3"}}},
                            {"2", {{"beak bifid", "Aus bus"}, {"beak entire", "Aus cus"}}},
                            {"3", {{"stem hollow", "Bus aus"}, {"stem solid", "4"}}},
                            {"4", {{"spike erect", "Bus dus"}, {"spike nodding", "Cus"}}}});
}

Lead& lead(Edition& edition, std::uint32_t couplet, std::uint32_t ordinal) {
  return edition.couplets[couplet].leads[ordinal];
}

// The lead ends in words that no reader could tell.
void unresolve(Lead& lead, std::string const& printed) {
  lead.destination = Unresolved{printed};
  lead.destination_printed = printed;
}

TEST(Proof, FindsNothingInASoundKey) { EXPECT_EQ(proof_of(sound()), ""); }

TEST(Proof, ReportsAnEditionWithoutCouplets) {
  Edition edition;
  edition.name = "k";
  EXPECT_EQ(proof_of(edition),
            "k:1:1: error: this edition holds no couplets [no-couplets]\n"
            "  see whether the text is a key, and whether the reader took its numbering\n");
}

TEST(Proof, ReportsALeadToAMissingCoupletAndProposesTheOneThatNothingLeadsTo) {
  auto edition = sound();
  edition.couplets[3].label = "14";
  edition.couplets[2].label = "13";
  unresolve(lead(edition, 2, 1), "24");
  EXPECT_EQ(proof_of(edition, {"skipped-number"}),
            "k:6:1: error: lead 13b leads to couplet \"24\", which this edition lacks "
            "[dangling-couplet]\n"
            "  24\n"
            "  did you mean \"14\"?\n"
            "k:7:1: error: no lead leads to couplet \"14\" [unreachable-couplet]\n"
            "  4a spike erect … Bus dus\n"
            "  mend the lead that should lead here, or leave the couplet out\n");
}

TEST(Proof, ReportsALeadThatLeadsNowhereAndOneThatEndsInSomethingUnknown) {
  auto edition = make_edition("k", {{"1", {{"flat", ""}, {"round", "Aus"}}}});
  EXPECT_EQ(proof_of(edition),
            "k:1:1: error: lead 1a leads nowhere [lead-without-destination]\n"
            "  1a flat\n"
            "  print the couplet or the taxon that it leads to\n");
  unresolve(lead(edition, 0, 0), "?? see below");
  EXPECT_EQ(proof_of(edition),
            "k:1:1: error: lead 1a ends in \"?? see below\", which is neither a couplet of this "
            "edition nor a taxon [unclear-destination]\n"
            "  ?? see below\n"
            "  print the number of a couplet or the name of a taxon\n");
}

TEST(Proof, ReportsAMissingCoupletWhereTheNumbersSkipIt) {
  auto edition = sound();
  for (std::size_t i = 2; i < 4; ++i) edition.couplets[i].label = std::to_string(i + 2);
  lead(edition, 2, 0).label = "4a";
  lead(edition, 2, 1).label = "4b";
  unresolve(lead(edition, 1, 1), "3");
  EXPECT_EQ(
      proof_of(edition, {"listed-not-keyed"}),
      "k:4:1: error: lead 2b leads to couplet \"3\", which this edition lacks "
      "[dangling-couplet]\n"
      "  3\n"
      "  mend the number, or print the couplet that is missing\n"
      "k:5:1: error: couplet \"3\" is missing before couplet \"4\", though lead 2b leads to it "
      "[missing-couplet]\n"
      "  4\n"
      "  k:4:1: lead 2b leads to it here\n"
      "  print couplet \"3\", or mend the lead\n");
}

TEST(Proof, ReportsSkippedNumbersAsRanges) {
  auto edition = sound();
  edition.couplets[2].label = "5";
  edition.couplets[3].label = "10";
  EXPECT_EQ(proof_of(edition),
            "k:5:1: warning: numbers 3 to 4 are skipped before couplet \"5\" [skipped-number]\n"
            "  5\n"
            "  see whether a couplet was lost; otherwise number the couplets anew\n"
            "k:7:1: warning: numbers 6 to 9 are skipped before couplet \"10\" [skipped-number]\n"
            "  10\n"
            "  see whether a couplet was lost; otherwise number the couplets anew\n");
}

TEST(Proof, ReportsNoNumberThatALeadBearsAsSkipped) {
  auto edition =
      make_edition("k", {{"1", {{"leaves flat", "Aus bus"}, {"leaves round", "3"}}},
                         {"3", {{"beak bifid", "4"}, {"beak entire", "Aus cus"}}},
                         {"4", {{"stem hollow", "Bus aus"}, {"stem solid", "Bus dus"}}}});
  std::vector<std::vector<std::string>> const labels{{"1", "2"}, {"3", "6"}, {"4", "5"}};
  for (std::uint32_t c = 0; c < labels.size(); ++c) {
    for (std::uint32_t l = 0; l < labels[c].size(); ++l) lead(edition, c, l).label = labels[c][l];
  }
  EXPECT_EQ(proof_of(edition), "");
  lead(edition, 0, 1).label = "1'";
  EXPECT_EQ(proof_of(edition),
            "k:3:1: warning: number 2 is skipped before couplet \"3\" [skipped-number]\n"
            "  3\n"
            "  see whether a couplet was lost; otherwise number the couplets anew\n");
}

TEST(Proof, ReportsACoupletWhoseNumberIsOutOfOrderAndProposesTheNumberExpectedThere) {
  auto edition = sound();
  edition.couplets[1].label = "12";
  EXPECT_EQ(proof_of(edition),
            "k:3:1: warning: couplet \"12\" stands out of order, behind couplet \"1\" "
            "[misnumbered-couplet]\n"
            "  12\n"
            "  did you mean \"2\"?\n");
}

TEST(Proof, ReportsCoupletsPrintedInAnotherOrderThanTheirNumbers) {
  auto edition = sound();
  edition.couplets[1].label = "3";
  edition.couplets[2].label = "2";
  EXPECT_EQ(proof_of(edition),
            "k:3:1: warning: couplet \"3\" stands out of order, behind couplet \"1\" "
            "[misnumbered-couplet]\n"
            "  3\n"
            "  print it behind couplet \"2\", where its number belongs\n");
}

TEST(Proof, ProposesThePlaceOfACoupletWhoseNumberIsMissingAmongTheOthers) {
  auto edition = make_edition("k", {{"1", {{"leaves flat", "2"}, {"leaves round", "3"}}},
                                    {"3", {{"beak bifid", "4"}, {"beak entire", "Aus cus"}}},
                                    {"4", {{"stem hollow", "Bus aus"}, {"stem solid", "Bus dus"}}},
                                    {"2", {{"awn long", "Cus aus"}, {"awn short", "Cus dus"}}}});
  EXPECT_EQ(proof_of(edition),
            "k:7:1: warning: couplet \"2\" stands out of order, behind couplet \"4\" "
            "[misnumbered-couplet]\n"
            "  2\n"
            "  print it behind couplet \"1\", where its number belongs\n");
}

TEST(Proof, TakesSuffixedNumbersSqueezedInAndPrimesAndMissingPlainNumbers) {
  auto edition = sound();
  edition.couplets[1].label = "1a";
  edition.couplets[2].label = "2a";
  edition.couplets[3].label = "2a'";
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, ChecksNoSequenceOfLettersOrDecimals) {
  auto edition = sound();
  char const* const letters[] = {"A", "C", "B", "AA"};
  for (std::size_t i = 0; i < 4; ++i) edition.couplets[i].label = letters[i];
  EXPECT_EQ(proof_of(edition), "");
  char const* const decimals[] = {"1", "1.2", "1.1", "2.7"};
  for (std::size_t i = 0; i < 4; ++i) edition.couplets[i].label = decimals[i];
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, ChecksNoSequenceWhereNumbersAreTheException) {
  auto edition = sound();
  char const* const labels[] = {"1", "A", "9", "B"};
  for (std::size_t i = 0; i < 4; ++i) edition.couplets[i].label = labels[i];
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, ReportsTwoCoupletsOfOneNumberOnceAndNotAsUnreachableToo) {
  auto edition = make_edition("k", {{"1", {{"flat", "2"}, {"round", "Aus"}}},
                                    {"2", {{"erect", "Bus"}, {"nodding", "Cus"}}},
                                    {"2", {{"hollow", "Dus"}, {"solid", "Eus"}}}});
  EXPECT_EQ(
      proof_of(edition),
      "k:5:1: error: couplet \"2\" occurs a second time; lead 1a, which leads to that number, "
      "is taken to mean the first, in line 3 [duplicate-couplet]\n"
      "  2\n"
      "  k:3:1: the first couplet of this label is here\n"
      "  did you mean \"3\"? mend the leads that mean it as well\n");
}

TEST(Proof, TakesALeadToTheNextNumberForOneToTheSecondCoupletOfANumber) {
  auto edition = make_edition("k", {{"1", {{"flat", "2"}, {"round", "3"}}},
                                    {"2", {{"erect", "Bus"}, {"nodding", "Cus"}}},
                                    {"2", {{"hollow", "Dus"}, {"solid", "Eus"}}}});
  unresolve(lead(edition, 0, 1), "3");
  EXPECT_EQ(
      proof_of(edition, {"listed-not-keyed"}),
      "k:2:1: error: lead 1b leads to couplet \"3\", which this edition lacks "
      "[dangling-couplet]\n"
      "  3\n"
      "  the second couplet \"2\", in line 5, is probably this one: give it the number \"3\"\n"
      "k:5:1: error: couplet \"2\" occurs a second time; lead 1a, which leads to that number, "
      "is taken to mean the first, in line 3 [duplicate-couplet]\n"
      "  2\n"
      "  k:3:1: the first couplet of this label is here\n"
      "  did you mean \"3\", to which lead 1b leads?\n");
}

// Two keys, "Group 1" and "Group 2", behind a first one that leads to them.
Edition groups() {
  auto edition =
      make_edition("k", {{"1", {{"leaves flat", ""}, {"leaves round", ""}}},
                         {"1 ", {{"beak bifid", "Aus bus"}, {"beak entire", "Aus cus"}}},
                         {"1  ", {{"stem hollow", "Bus aus"}, {"stem solid", "Bus dus"}}}});
  for (auto& couplet : edition.couplets) {
    couplet.label = "1";
    couplet.leads[0].label = "1a";
    couplet.leads[1].label = "1b";
  }
  edition.parts.push_back({.title = "Group 1",
                           .start = CoupletId{1},
                           .place = {.line = 3, .column = 1, .begin = 0, .end = 0}});
  edition.parts.push_back({.title = "Group 2",
                           .start = CoupletId{2},
                           .place = {.line = 5, .column = 1, .begin = 0, .end = 0}});
  for (std::uint32_t i = 0; i < 2; ++i) {
    auto const title = edition.parts[i + 1].title;
    lead(edition, 0, i).destination = ToKey{title};
    lead(edition, 0, i).destination_printed = title;
  }
  return edition;
}

TEST(Proof, ReportsAKeyOfTheFileThatNoLeadLeadsTo) {
  EXPECT_EQ(proof_of(groups()), "");
  auto edition = groups();
  lead(edition, 0, 1).destination = ToTaxa{{TaxonId{0}}};
  lead(edition, 0, 1).destination_printed = "Aus bus";
  EXPECT_EQ(
      proof_of(edition, {"taxon-repeated"}),
      "k:5:1: information: no lead leads to the key \"Group 2\", though leads lead to other keys "
      "of this file [unreached-key]\n"
      "  Group 2\n"
      "  mend the lead that should lead here; where the key is begun by itself, all is well\n");
  // Its title names a taxon that keys out: whoever gets there goes on.
  edition.parts[2].title = "Males of Aus bus";
  EXPECT_EQ(proof_of(edition, {"taxon-repeated"}), "");
}

Edition pasted_twice(std::string const& last_words) {
  auto edition = make_edition("k", {{"1", {{"leaves flat", "2"}, {"leaves round", "Aus bus"}}},
                                    {"2", {{"beak bifid", "Aus cus"}, {"beak entire", ""}}},
                                    {"1 ", {{"leaves flat", "2 "}, {"leaves round", "Aus bus"}}},
                                    {"2 ", {{"beak bifid", "Aus cus"}, {last_words, ""}}}});
  for (std::uint32_t c = 2; c < 4; ++c) {
    edition.couplets[c].label = edition.couplets[c - 2].label;
    for (auto& lead : edition.couplets[c].leads) {
      if (lead.destination_printed == "2 ") lead.destination_printed = "2";
    }
  }
  edition.parts = {{.title = "Key to Aus", .start = CoupletId{0}, .place = {.line = 1}},
                   {.title = "Key to Aus", .start = CoupletId{2}, .place = {.line = 5}}};
  return edition;
}

TEST(Proof, ReportsAKeyThatWasPastedTwiceAndNothingElseOfTheSecond) {
  auto const twice = proof_of(pasted_twice("beak entire"));
  EXPECT_EQ(twice.find("taxon-repeated"), std::string::npos) << twice;
  EXPECT_NE(twice.find("k:5:1: warning: a key stands here a second time: its 2 couplets are those "
                       "of the key in line 1, word for word [repeated-key]\n"
                       "  Key to Aus\n"
                       "  k:1:1: it stands here first\n"
                       "  leave one of the two out\n"),
            std::string::npos)
      << twice;
  // The lead without an end is told of once.
  auto const without_end = twice.find("lead-without-destination");
  EXPECT_NE(without_end, std::string::npos) << twice;
  EXPECT_EQ(twice.find("lead-without-destination", without_end + 1), std::string::npos) << twice;
  // One word makes another key of it.
  auto const other = proof_of(pasted_twice("beak minute"));
  EXPECT_EQ(other.find("repeated-key"), std::string::npos) << other;
  EXPECT_NE(other.find("taxon-repeated"), std::string::npos) << other;
}

TEST(Proof, SaysNothingOfKeysOfWhichNoneLeadsToAnother) {
  auto edition = groups();
  for (std::uint32_t i = 0; i < 2; ++i) {
    lead(edition, 0, i).destination = ToTaxa{{TaxonId{i}}};
    lead(edition, 0, i).destination_printed = edition.taxa[i].name;
  }
  EXPECT_EQ(proof_of(edition, {"taxon-repeated"}), "");
}

TEST(Proof, ProposesOfNumberedKeysOnlyOneThatNothingLeadsTo) {
  auto edition = groups();
  lead(edition, 2, 1).destination = ToKey{"Group 3"};
  EXPECT_EQ(proof_of(edition, {"listed-not-keyed"}),
            "k:6:1: information: lead 1b leads to another key, \"Group 3\", which is not in this "
            "file [key-elsewhere]\n"
            "  Group 3\n"
            "  determinations stop here unless that key is at hand\n");
  edition = groups();
  lead(edition, 0, 1).destination = ToKey{"Group 3"};
  EXPECT_EQ(proof_of(edition, {"unreached-key"}),
            "k:2:1: information: lead 1b leads to another key, \"Group 3\", which is not in this "
            "file [key-elsewhere]\n"
            "  Group 3\n"
            "  did you mean \"Group 2\"?\n");
}

TEST(Proof, NamesTheKeysWhereATaxonKeysOutInSeveralOfOneFile) {
  auto edition = groups();
  lead(edition, 2, 0).destination = ToTaxa{{TaxonId{0}}};
  EXPECT_EQ(proof_of(edition, {"listed-not-keyed"}),
            "k:3:1: information: \"Aus bus\" keys out 2 times: at leads 1a of the key \"Group 1\" "
            "and 1a of the key \"Group 2\" [taxon-repeated]\n"
            "  Aus bus\n"
            "  k:5:1: it keys out again at lead 1a of the key \"Group 2\"\n"
            "  where this is meant, \"in part\" after the name says so\n");
}

TEST(Proof, ReportsACoupletWithoutNumber) {
  auto edition = sound();
  edition.couplets[3].label = "";
  EXPECT_EQ(proof_of(edition, {"unreachable-couplet"}),
            "k:7:1: warning: this couplet bears no number [unlabelled-couplet]\n"
            "  4a spike erect … Bus dus\n"
            "  number it, so that leads can lead to it\n");
}

TEST(Proof, NumbersEveryKeyOfAFileForItself) {
  auto edition = make_edition("k", {{"1", {{"flat", "2"}, {"round", "Aus"}}},
                                    {"2", {{"erect", "Bus"}, {"nodding", "Cus"}}},
                                    {"1", {{"hollow", "Dus"}, {"solid", "Eus"}}},
                                    {"2", {{"pale", "Fus"}, {"dark", "Gus"}}},
                                    {"3", {{"long", "Hus"}, {"short", "Ius"}}}});
  lead(edition, 2, 0).destination = ToCouplet{CoupletId{3}};
  edition.taxa.erase(edition.taxa.begin() + 3);
  for (std::uint32_t c = 2; c < 5; ++c) {
    for (auto& each : edition.couplets[c].leads) {
      if (auto* to = std::get_if<ToTaxa>(&each.destination)) --to->taxa[0].index;
    }
  }
  edition.parts.push_back({.title = "Larvae", .start = CoupletId{2}, .place = {}});
  edition.parts.push_back({.title = "Pupae", .start = CoupletId{4}, .place = {}});
  EXPECT_EQ(proof_of(edition), "");  // the third goes on with the numbers of the second
}

TEST(Proof, ReportsAnUnreachableCoupletOnceForAllBelowIt) {
  auto edition = sound();
  edition.couplets[0].leads[1].destination = ToTaxa{{TaxonId{0}}};
  edition.couplets[2].back_references.push_back({"1", edition.couplets[2].place});
  EXPECT_EQ(proof_of(edition, {"taxon-repeated", "wrong-back-reference"}),
            "k:5:1: error: no lead leads to couplet \"3\", nor so to the couplet below it "
            "[unreachable-couplet]\n"
            "  3a stem hollow … Bus aus\n"
            "  it says that it is reached from \"1\": mend the lead there\n");
}

TEST(Proof, ReportsACycleWithTheShortestWayRound) {
  auto edition = sound();
  lead(edition, 3, 1).destination = ToCouplet{CoupletId{0}};
  lead(edition, 3, 1).destination_printed = "1";
  EXPECT_EQ(proof_of(edition, {"backward-lead", "listed-not-keyed"}),
            "k:8:1: error: the leads go round in a circle: couplets 1 → 3 → 4 → 1 [cycle]\n"
            "  4b spike nodding … 1\n"
            "  k:2:1: lead 1b leads to 3\n"
            "  k:6:1: lead 3b leads to 4\n"
            "  k:8:1: lead 4b leads to 1\n"
            "  mend the destination that leads back\n");
}

TEST(Proof, ReportsTheShortestOfSeveralWaysRound) {
  auto const edition = make_edition("k", {{"1", {{"a", "2"}, {"b", "A"}}},
                                          {"2", {{"a", "3"}, {"b", "4"}}},
                                          {"3", {{"a", "4"}, {"b", "B"}}},
                                          {"4", {{"a", "1"}, {"b", "C"}}}});
  auto const findings = proof_structure(edition, KeyGraph{edition});
  ASSERT_FALSE(findings.empty());
  auto const cycle = std::find_if(findings.begin(), findings.end(),
                                  [](Finding const& finding) { return finding.code == "cycle"; });
  ASSERT_NE(cycle, findings.end());
  EXPECT_EQ(
      cycle->message,
      "the leads go round in a circle: couplets 1 → 2 → 4 → 1, with 1 more on circles with them");
}

TEST(Proof, ReportsALeadToItsOwnCouplet) {
  auto edition = sound();
  lead(edition, 3, 0).destination = ToCouplet{CoupletId{3}};
  lead(edition, 3, 0).destination_printed = "4";
  EXPECT_EQ(proof_of(edition, {"listed-not-keyed"}),
            "k:7:1: error: lead 4a leads back to its own couplet [cycle]\n"
            "  4a spike erect … 4\n"
            "  mend its destination\n");
}

TEST(Proof, ReportsACircleThatNothingLeadsInto) {
  auto edition = make_edition("k", {{"1", {{"flat", "Aus"}, {"round", "Bus"}}},
                                    {"2", {{"erect", "3"}, {"nodding", "Cus"}}},
                                    {"3", {{"hollow", "2"}, {"solid", "4"}}},
                                    {"4", {{"pale", "Dus"}, {"dark", "Eus"}}}});
  EXPECT_EQ(proof_of(edition, {"cycle", "backward-lead"}),
            "k:3:1: error: nothing leads from the start to couplet \"2\" and its circle, nor so to "
            "the 2 couplets below it [unreachable-couplet]\n"
            "  2a erect … 3\n"
            "  mend the lead that should lead here, or leave the couplet out\n");
}

TEST(Proof, ShortensALongWayRound) {
  std::vector<CoupletSketch> couplets;
  for (int i = 1; i <= 40; ++i) {
    couplets.push_back(
        {std::to_string(i),
         {{"flat", std::to_string(i % 40 + 1)}, {"round", "T" + std::to_string(i)}}});
  }
  auto const edition = make_edition("k", couplets);
  auto const findings = proof_structure(edition, KeyGraph{edition});
  auto const cycle = std::find_if(findings.begin(), findings.end(),
                                  [](Finding const& finding) { return finding.code == "cycle"; });
  ASSERT_NE(cycle, findings.end());
  EXPECT_EQ(
      cycle->message,
      "the leads go round in a circle: couplets 1 → 2 → 3 → 4 → 5 → 6 → 7 → 8 → 9 → 10 → 11 → "
      "12 → … → 1");
  EXPECT_EQ(cycle->related.size(), 12U);
}

TEST(Proof, ReportsLoneAndMissingLeadsAndPolytomies) {
  auto edition = make_edition("k", {{"1", {{"flat", "2"}, {"round", "3"}, {"keeled", "4"}}},
                                    {"2", {{"beak bifid", "Aus"}}},
                                    {"3", {}},
                                    {"4", {{"pale", "Bus"}, {"dark", "Cus"}}}});
  edition.couplets[2].place.line = 40;
  EXPECT_EQ(proof_of(edition),
            "k:1:1: information: couplet \"1\" has 3 leads [polytomy]\n"
            "  1\n"
            "  see that each lead is contrasted with every other\n"
            "k:4:1: error: couplet \"2\" has one lead only, so there is nothing to choose "
            "[single-lead]\n"
            "  2a beak bifid … Aus\n"
            "  print the contrasting lead, or join the words to the lead that leads here\n"
            "k:40:1: error: couplet \"3\" has no leads [couplet-without-leads]\n"
            "  3\n"
            "  print its leads, or leave the number out\n");
}

void refer_back(Edition& edition, std::uint32_t couplet, std::vector<std::string> const& labels) {
  auto& target = edition.couplets[couplet];
  for (auto const& label : labels) target.back_references.push_back({label, target.place});
}

TEST(Proof, TakesBackReferencesToCoupletsAndToLeadsInEveryKindOfPrime) {
  auto edition = sound();
  refer_back(edition, 0, {"0"});
  refer_back(edition, 1, {"1a"});
  refer_back(edition, 2, {"(1)"});
  lead(edition, 2, 1).label = "3\u2032";
  refer_back(edition, 3, {"3\u00B4"});
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, ReportsBackReferencesThatDisagreeWithTheLeads) {
  auto edition = sound();
  refer_back(edition, 2, {"2"});
  refer_back(edition, 3, {"31"});
  EXPECT_EQ(
      proof_of(edition),
      "k:5:1: warning: couplet \"3\" says that it is reached from \"2\", but no lead there leads "
      "to it [wrong-back-reference]\n"
      "  2\n"
      "  lead 1b leads to it: mend the one or the other\n"
      "k:7:1: warning: couplet \"4\" says that it is reached from \"31\", which this edition "
      "lacks [dangling-back-reference]\n"
      "  31\n"
      "  lead 3b leads to it: mend the one or the other\n");
}

TEST(Proof, ReportsABackReferenceToTheWrongLeadOfTheRightCouplet) {
  auto edition = sound();
  refer_back(edition, 1, {"1b"});
  EXPECT_EQ(proof_of(edition),
            "k:3:1: warning: couplet \"2\" says that it is reached from \"1b\", but no lead there "
            "leads to it [wrong-back-reference]\n"
            "  1b\n"
            "  lead 1a leads to it: mend the one or the other\n");
}

TEST(Proof, ReportsAReticulateCoupletThatDoesNotListAllLeadsToIt) {
  auto edition = sound();
  lead(edition, 1, 1).destination = ToCouplet{CoupletId{3}};
  refer_back(edition, 3, {"3"});
  EXPECT_EQ(proof_of(edition, {"listed-not-keyed"}),
            "k:7:1: warning: couplet \"4\" does not say that lead 2b leads to it "
            "[missing-back-reference]\n"
            "  4\n"
            "  k:4:1: lead 2b leads to it here\n"
            "  add the back-reference\n");
}

TEST(Proof, MissesABackReferenceOnlyWhereTheyAreAHabit) {
  // Every second couplet follows its only lead, where many authors print no back-reference.
  std::vector<CoupletSketch> couplets;
  for (int i = 1; i <= 9; i += 2) {
    auto const next = std::to_string(i + 2);
    couplets.push_back(
        {std::to_string(i), {{"flat", std::to_string(i + 1)}, {"round", i < 9 ? next : "Zus"}}});
    couplets.push_back({std::to_string(i + 1),
                        {{"pale", "A" + std::to_string(i)}, {"dark", "B" + std::to_string(i)}}});
  }
  auto edition = make_edition("k", couplets);
  EXPECT_EQ(proof_of(edition), "");
  refer_back(edition, 2, {"1"});
  refer_back(edition, 4, {"3"});
  refer_back(edition, 6, {"5"});
  EXPECT_EQ(proof_of(edition),
            "k:17:1: warning: couplet \"9\" does not say that lead 7b leads to it "
            "[missing-back-reference]\n"
            "  9\n"
            "  k:14:1: lead 7b leads to it here\n"
            "  add the back-reference\n");
}

TEST(Proof, ReportsALeadThatEndsInATaxonAndACouplet) {
  auto edition = sound();
  lead(edition, 2, 1).destination_printed = "Aus bus, 4";
  EXPECT_EQ(proof_of(edition),
            "k:6:1: warning: lead 3b ends in both the taxon \"Aus bus\" and couplet \"4\" "
            "[two-destinations]\n"
            "  Aus bus, 4\n"
            "  keep the one that is meant\n");
  lead(edition, 2, 1).destination_printed = "Aus group, 4";  // common practice
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, ReportsATaxonFollowedByTheNumberOfACoupletThatNothingElseLeadsTo) {
  auto edition = sound();
  lead(edition, 2, 1).destination = ToTaxa{{TaxonId{0}}};
  lead(edition, 2, 1).destination_printed = "Aus bus 4";
  EXPECT_EQ(proof_of(edition, {"unreachable-couplet", "taxon-repeated"}),
            "k:6:1: warning: lead 3b ends in both the taxon \"Aus bus\" and couplet \"4\" "
            "[two-destinations]\n"
            "  Aus bus 4\n"
            "  keep the one that is meant\n");
}

TEST(Proof, TakesANumberBehindATaxonForAPageOrAFigureWhereItsCoupletIsReached) {
  auto edition = sound();
  lead(edition, 1, 0).destination_printed = "Aus bus 4";
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, SaysWhichLeadsLeadToKeysElsewhere) {
  auto edition = sound();
  edition.parts[0].title = "Key to the genera";
  lead(edition, 3, 1).destination = ToKey{"Key to the gemera"};
  EXPECT_EQ(
      proof_of(edition, {"listed-not-keyed"}),
      "k:8:1: information: lead 4b leads to another key, \"Key to the gemera\", which is not in "
      "this file [key-elsewhere]\n"
      "  Key to the gemera\n"
      "  did you mean \"Key to the genera\"?\n");
  lead(edition, 3, 1).destination = ToKey{"Larvae"};
  EXPECT_EQ(
      proof_of(edition, {"listed-not-keyed"}),
      "k:8:1: information: lead 4b leads to another key, \"Larvae\", which is not in this file "
      "[key-elsewhere]\n"
      "  Larvae\n"
      "  determinations stop here unless that key is at hand\n");
}

TEST(Proof, ReportsLeadsThatAllLeadToOnePlace) {
  auto edition = sound();
  lead(edition, 0, 0).destination = ToCouplet{CoupletId{2}};
  lead(edition, 0, 0).destination_printed = "3";
  EXPECT_EQ(
      proof_of(edition, {"unreachable-couplet"}),
      "k:1:1: warning: all leads of couplet \"1\" lead to the same place, so it decides nothing "
      "[same-destination]\n"
      "  3\n"
      "  mend one of the destinations, or leave the couplet out\n");
}

TEST(Proof, PointsOutALeadToACoupletPrintedBefore) {
  auto edition = sound();
  lead(edition, 2, 1).destination = ToCouplet{CoupletId{1}};
  lead(edition, 2, 1).destination_printed = "2";
  EXPECT_EQ(proof_of(edition, {"unreachable-couplet"}),
            "k:6:1: information: lead 3b leads back to couplet \"2\", printed before it "
            "[backward-lead]\n"
            "  2\n"
            "  see whether this is meant\n");
}

TEST(Proof, ComparesTheTaxaThatKeyOutWithThoseListed) {
  auto edition = sound();
  edition.front.scope.listed_taxa = {"Aus bus Smith, 1900", "Aus cuss", "Bus",
                                     "Cus major",           "Old name", "Dus"};
  edition.front.synonyms.push_back({"Aus bus", "Old name", {}});
  EXPECT_EQ(proof_of(edition),
            "k:1:1: error: the front matter lists \"Aus cuss\", which does not key out "
            "[listed-not-keyed]\n"
            "  Aus cuss\n"
            "  did you mean \"Aus cus\"?\n"
            "k:1:1: error: the front matter lists \"Dus\", which does not key out "
            "[listed-not-keyed]\n"
            "  Dus\n"
            "  did you mean \"Cus\"?\n"
            "k:4:1: warning: \"Aus cus\" keys out, but the front matter does not list it "
            "[keyed-not-listed]\n"
            "  Aus cus\n"
            "  did you mean \"Aus cuss\"?\n");
}

TEST(Proof, TakesASynonymInTheListForTheAcceptedNameThatKeysOut) {
  auto edition = sound();
  edition.front.scope.listed_taxa = {"Old name", "Aus cus", "Bus", "Cus"};
  edition.front.synonyms.push_back({"Aus bus", "Old name", {}});
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, ReportsATaxonOfTheKeyThatNoLeadNames) {
  auto edition = sound();
  edition.taxa.push_back({"Dus aus", "Smith", {.line = 90, .column = 2, .begin = 0, .end = 0}});
  EXPECT_EQ(proof_of(edition),
            "k:90:2: error: \"Dus aus\" is among the taxa of the key, but does not key out "
            "[listed-not-keyed]\n"
            "  Dus aus\n"
            "  key it out, or leave it out of the taxa\n");
}

TEST(Proof, ReportsATaxonThatKeysOutThoughItIsSaidToBeLeftOut) {
  auto edition = sound();
  edition.front.scope.excluded_taxa = {"Bus"};
  EXPECT_EQ(proof_of(edition),
            "k:5:1: warning: \"Bus aus\" keys out, but the front matter says it is left out "
            "[keyed-though-excluded]\n"
            "  Bus aus\n"
            "  mend the front matter, or leave the taxon out of the key\n"
            "k:7:1: warning: \"Bus dus\" keys out, but the front matter says it is left out "
            "[keyed-though-excluded]\n"
            "  Bus dus\n"
            "  mend the front matter, or leave the taxon out of the key\n");
}

TEST(Proof, TellsWhereATaxonKeysOutSeveralTimes) {
  auto edition = sound();
  lead(edition, 3, 1).destination = ToTaxa{{TaxonId{0}}};
  EXPECT_EQ(
      proof_of(edition, {"listed-not-keyed"}),
      "k:3:1: information: \"Aus bus\" keys out 2 times: at leads 2a and 4b [taxon-repeated]\n"
      "  Aus bus\n"
      "  k:8:1: it keys out again at lead 4b\n"
      "  where this is meant, \"in part\" after the name says so\n");
  lead(edition, 3, 1).taxon_remark = lead(edition, 1, 0).taxon_remark = "in part";
  EXPECT_EQ(
      proof_of(edition, {"listed-not-keyed"}),
      "k:3:1: information: \"Aus bus\" keys out 2 times: at leads 2a and 4b [taxon-repeated]\n"
      "  Aus bus\n"
      "  k:8:1: it keys out again at lead 4b\n");
}

TEST(Proof, ReportsLeadsThatSayTheSame) {
  auto edition = sound();
  lead(edition, 2, 1).text = "Stem  HOLLOW.";
  EXPECT_EQ(proof_of(edition),
            "k:6:1: error: leads 3a and 3b say the same [same-text]\n"
            "  3b Stem  HOLLOW. … 4\n"
            "  k:5:1: the other lead is here\n"
            "  contrast them\n");
}

TEST(Proof, ReportsLeadsThatSayNothingOrOnlyNegateTheOther) {
  auto edition = sound();
  lead(edition, 0, 1).text = " . ";
  lead(edition, 1, 1).text = "Not as above, or stem hollow";
  lead(edition, 2, 1).text = "Nicht so.";
  lead(edition, 3, 1).text = "Spike not so long";
  EXPECT_EQ(proof_of(edition),
            "k:2:1: warning: lead 1b says nothing [lead-without-words]\n"
            "  1b  .  … 3\n"
            "  print what a specimen must show to take it\n"
            "k:4:1: warning: lead 2b only negates its contrasting lead [not-as-above]\n"
            "  2b Not as above, or stem hollow … Aus cus\n"
            "  say what its taxa show, character by character\n"
            "k:6:1: warning: lead 3b only negates its contrasting lead [not-as-above]\n"
            "  3b Nicht so. … 4\n"
            "  say what its taxa show, character by character\n");
}

TEST(Proof, ReportsTwoLeadsWithoutWordsAsThatAndNotAsTheSame) {
  auto edition = sound();
  lead(edition, 2, 0).text = lead(edition, 2, 1).text = "";
  EXPECT_EQ(proof_of(edition),
            "k:5:1: warning: lead 3a says nothing [lead-without-words]\n"
            "  3a … Bus aus\n"
            "  print what a specimen must show to take it\n"
            "k:6:1: warning: lead 3b says nothing [lead-without-words]\n"
            "  3b … 4\n"
            "  print what a specimen must show to take it\n");
}

TEST(Proof, ReportsAnExceptionThatNamesNoGroup) {
  auto edition = sound();
  Statement statement;
  statement.text = "stem solid, with exceptions";
  statement.place = {.line = 6, .column = 4, .begin = 0, .end = 0};
  statement.strength = Strength::excepted;
  lead(edition, 2, 1).statements = {statement};
  EXPECT_EQ(proof_of(edition),
            "k:6:4: warning: lead 3b makes an exception without naming the group "
            "[exception-names-nothing]\n"
            "  stem solid, with exceptions\n"
            "  name the taxa that it holds for\n");
  lead(edition, 2, 1).statements[0].except = {"Bus dus"};
  EXPECT_EQ(proof_of(edition), "");
}

TEST(Proof, CutsTheWordsOfALongLead) {
  auto edition = sound();
  std::string text;
  for (int i = 0; i < 100; ++i) text += "ä";
  unresolve(lead(edition, 3, 1), "");
  lead(edition, 3, 1).text = text;
  auto const findings = proof_structure(edition, KeyGraph{edition});
  ASSERT_FALSE(findings.empty());
  auto const finding = std::find_if(findings.begin(), findings.end(), [](Finding const& each) {
    return each.code == "lead-without-destination";
  });
  ASSERT_NE(finding, findings.end());
  EXPECT_EQ(finding->printed, "4b " + text.substr(0, 2 * 72) + "…");
}

TEST(FindingKinds, AreSortedByCodeAndExplained) {
  auto const kinds = structural_finding_kinds();
  EXPECT_TRUE(std::is_sorted(kinds.begin(), kinds.end(),
                             [](auto const& a, auto const& b) { return a.code <= b.code; }));
  for (auto const& kind : kinds) {
    EXPECT_FALSE(kind.title.empty()) << kind.code;
    EXPECT_FALSE(kind.title.ends_with('.')) << kind.code;
    EXPECT_GT(kind.explanation.size(), kind.title.size() / 2) << kind.code;
    EXPECT_EQ(kind.code.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"), std::string_view::npos);
  }
}

}  // namespace
}  // namespace keydrift
