#include "keydrift/key/graph.hpp"

#include <gtest/gtest.h>

#include "edition_builder.hpp"

namespace keydrift {
namespace {

using test::CoupletSketch;
using test::make_edition;

CoupletId couplet(Edition const& edition, std::string const& label) {
  for (std::uint32_t i = 0; i < edition.couplets.size(); ++i) {
    if (edition.couplets[i].label == label) return CoupletId{i};
  }
  ADD_FAILURE() << "no couplet " << label;
  return {};
}

TaxonId taxon(Edition const& edition, std::string const& name) {
  for (std::uint32_t i = 0; i < edition.taxa.size(); ++i) {
    if (edition.taxa[i].name == name) return TaxonId{i};
  }
  ADD_FAILURE() << "no taxon " << name;
  return {};
}

std::string show(Edition const& edition, std::span<LeadId const> leads) {
  std::string text;
  for (auto const lead : leads) text += (text.empty() ? "" : " ") + edition[lead].label;
  return text;
}

std::string show(Edition const& edition, std::span<CoupletId const> couplets) {
  std::string text;
  for (auto const id : couplets) text += (text.empty() ? "" : " ") + edition[id].label;
  return text;
}

std::string show(Edition const& edition, std::vector<TaxonId> const& taxa) {
  std::string text;
  for (auto const id : taxa) text += (text.empty() ? "" : " ") + edition[id].name;
  return text;
}

std::string show(Edition const& edition, Routes const& routes) {
  std::string text;
  for (auto const& route : routes.routes) {
    text += (text.empty() ? "" : " / ") + show(edition, std::span<LeadId const>{route});
  }
  return text;
}

// Couplet 4 is reached from 2 and from 3, and C keys out at three ends.
Edition reticulate() {
  return make_edition("r", {{"1", {{"a", "2"}, {"b", "3"}}},
                            {"2", {{"a", "A"}, {"b", "4"}}},
                            {"3", {{"a", "4"}, {"b", "B"}, {"c", "C"}}},
                            {"4", {{"a", "C"}, {"b", "D | C"}}}});
}

// 2 -> 3 -> 2, 5 -> 5; 6 is never reached; E lies below the first cycle, F beside it.
Edition cyclic() {
  return make_edition("c", {{"1", {{"a", "2"}, {"b", "F"}}},
                            {"2", {{"a", "3"}, {"b", "4"}}},
                            {"3", {{"a", "2"}, {"b", "A"}}},
                            {"4", {{"a", "E"}, {"b", "5"}}},
                            {"5", {{"a", "5"}, {"b", "G"}}},
                            {"6", {{"a", "4"}, {"b", "H"}}}});
}

Edition comb(std::uint32_t couplets) {
  Edition edition;
  edition.name = "comb";
  edition.couplets.resize(couplets);
  edition.taxa.resize(couplets + 1);
  for (std::uint32_t i = 0; i < couplets; ++i) {
    auto& leads = edition.couplets[i].leads;
    leads.resize(2);
    leads[0].destination = ToTaxa{{TaxonId{i}}};
    if (i + 1 < couplets) {
      leads[1].destination = ToCouplet{CoupletId{i + 1}};
    } else {
      leads[1].destination = ToTaxa{{TaxonId{couplets}}};
    }
  }
  edition.parts.push_back({.title = "", .start = CoupletId{0}, .place = {}});
  return edition;
}

TEST(KeyGraph, ListsTheLeadsToACoupletAndToATaxonInPrintedOrder) {
  auto const e = reticulate();
  KeyGraph const graph{e};
  EXPECT_EQ(graph.couplet_count(), 4U);
  EXPECT_EQ(graph.taxon_count(), 4U);
  EXPECT_EQ(show(e, graph.leads_to(couplet(e, "4"))), "2b 3a");
  EXPECT_EQ(show(e, graph.leads_to(couplet(e, "1"))), "");
  EXPECT_EQ(show(e, graph.leads_to(taxon(e, "C"))), "3c 4a 4b");
}

TEST(KeyGraph, HasOneRunOfTaxaBelowEveryLeadOfATree) {
  auto const e = make_edition("t", {{"1", {{"a", "3"}, {"b", "2"}}},
                                    {"2", {{"a", "D"}, {"b", "E"}}},
                                    {"3", {{"a", "B | C"}, {"b", "4"}}},
                                    {"4", {{"a", "A"}, {"b", "F"}, {"c", "G"}}}});
  KeyGraph const graph{e};
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(couplet(e, "1")))), "B C A F G D E");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(LeadId{couplet(e, "1"), 0}))), "B C A F G");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(LeadId{couplet(e, "3"), 0}))), "B C");
  for (std::uint32_t c = 0; c < 4; ++c) {
    EXPECT_EQ(graph.taxa_below(CoupletId{c}).size(), 1U);
    for (std::uint32_t l = 0; l < e.couplets[c].leads.size(); ++l) {
      EXPECT_EQ(graph.taxa_below(LeadId{CoupletId{c}, l}).size(), 1U);
    }
  }
}

TEST(KeyGraph, MergesTheRunsBelowReticulateCouplets) {
  auto const e = reticulate();
  KeyGraph const graph{e};
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(couplet(e, "1")))), "A C D B");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(couplet(e, "3")))), "C D B");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(LeadId{couplet(e, "3"), 2}))), "C");
  for (std::uint32_t t = 0; t < 4; ++t) {
    EXPECT_EQ(graph.taxon_at(graph.position_of(TaxonId{t})), TaxonId{t});
  }
}

TEST(KeyGraph, CountsAndListsEveryWayInPrintedOrder) {
  auto const e = reticulate();
  KeyGraph const graph{e};
  EXPECT_EQ(graph.route_count(couplet(e, "1")), 1U);
  EXPECT_EQ(graph.route_count(couplet(e, "4")), 2U);
  EXPECT_EQ(graph.route_count(taxon(e, "C")), 5U);
  EXPECT_EQ(show(e, graph.routes_to(taxon(e, "C"))),
            "1a 2b 4a / 1a 2b 4b / 1b 3a 4a / 1b 3a 4b / 1b 3c");
  EXPECT_EQ(show(e, graph.routes_to(couplet(e, "4"))), "1a 2b / 1b 3a");
  auto const to_start = graph.routes_to(couplet(e, "1"));
  ASSERT_EQ(to_start.routes.size(), 1U);
  EXPECT_TRUE(to_start.routes[0].empty());
}

TEST(KeyGraph, SaysWhenMoreWaysExistThanWereAskedFor) {
  auto const e = reticulate();
  KeyGraph const graph{e};
  auto const two = graph.routes_to(taxon(e, "C"), 2);
  EXPECT_EQ(show(e, two), "1a 2b 4a / 1a 2b 4b");
  EXPECT_FALSE(two.complete);
  EXPECT_TRUE(graph.routes_to(taxon(e, "C"), 5).complete);
  EXPECT_FALSE(graph.routes_to(taxon(e, "C"), 0).complete);
}

TEST(KeyGraph, FindsEveryCycleAndKeepsItOutOfTheWays) {
  auto const e = cyclic();
  KeyGraph const graph{e};
  ASSERT_EQ(graph.cycles().size(), 2U);
  EXPECT_EQ(show(e, std::span{graph.cycles()[0]}), "2 3");
  EXPECT_EQ(show(e, std::span{graph.cycles()[1]}), "5");
  EXPECT_EQ(graph.route_count(couplet(e, "2")), 0U);
  EXPECT_EQ(graph.route_count(taxon(e, "E")), 0U);
  EXPECT_EQ(graph.route_count(taxon(e, "F")), 1U);
  EXPECT_TRUE(graph.routes_to(taxon(e, "E")).routes.empty());
  EXPECT_TRUE(graph.routes_to(taxon(e, "E")).complete);
}

TEST(KeyGraph, KnowsTheTaxaBelowCoupletsOnCycles) {
  auto const e = cyclic();
  KeyGraph const graph{e};
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(couplet(e, "2")))), "A E G");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(couplet(e, "3")))), "A E G");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(LeadId{couplet(e, "3"), 0}))), "A E G");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(LeadId{couplet(e, "3"), 1}))), "A");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(couplet(e, "5")))), "G");
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(couplet(e, "6")))), "E G H");
}

TEST(KeyGraph, OrdersCoupletsTopologicallyWithThoseOnCyclesLast) {
  auto const e = cyclic();
  KeyGraph const graph{e};
  EXPECT_EQ(show(e, graph.topological_order()), "4 1 2 3 5");
}

TEST(KeyGraph, KnowsWhatIsReachedAndHowSoon) {
  auto const e = cyclic();
  KeyGraph const graph{e};
  EXPECT_TRUE(graph.reachable(couplet(e, "5")));
  EXPECT_FALSE(graph.reachable(couplet(e, "6")));
  EXPECT_EQ(graph.depth(couplet(e, "1")), 1U);
  EXPECT_EQ(graph.depth(couplet(e, "4")), 3U);
  EXPECT_EQ(graph.depth(couplet(e, "6")), std::nullopt);
}

TEST(KeyGraph, FollowsLeadsToAnotherPartOfTheSameFile) {
  auto e = make_edition("p", {{"1", {{"a", "A"}, {"b", "B"}, {"c", "C"}}},
                              {"2", {{"a", "D"}, {"b", "E"}}},
                              {"3", {{"a", "F"}, {"b", "G"}}}});
  e.parts[0].title = "Key to groups";
  e.parts.push_back({.title = "Key  B. Species with a beak", .start = CoupletId{1}, .place = {}});
  e.parts.push_back({.title = "Group 10", .start = CoupletId{2}, .place = {}});
  auto& leads = e.couplets[0].leads;
  leads[0].destination = ToKey{"key b"};
  leads[1].destination = ToKey{"Group 1"};
  leads[2].destination = ToKey{"GROUP 10"};
  KeyGraph const graph{e};
  EXPECT_EQ(show(e, graph.leads_to(CoupletId{1})), "1a");
  EXPECT_EQ(show(e, graph.leads_to(CoupletId{2})), "1c");
  EXPECT_TRUE(graph.taxa_below(LeadId{CoupletId{0}, 1}).empty());
  EXPECT_EQ(show(e, graph.list(graph.taxa_below(LeadId{CoupletId{0}, 2}))), "F G");
}

TEST(KeyGraph, FollowsNoTitleThatTwoPartsCouldMean) {
  auto e = make_edition("p", {{"1", {{"a", "A"}, {"b", "B"}}},
                              {"2", {{"a", "D"}, {"b", "E"}}},
                              {"3", {{"a", "F"}, {"b", "G"}}}});
  e.parts.push_back({.title = "Larvae, early", .start = CoupletId{1}, .place = {}});
  e.parts.push_back({.title = "Larvae, late", .start = CoupletId{2}, .place = {}});
  e.couplets[0].leads[0].destination = ToKey{"Larvae"};
  KeyGraph const graph{e};
  EXPECT_FALSE(graph.reachable(CoupletId{1}));
  EXPECT_FALSE(graph.reachable(CoupletId{2}));
}

TEST(KeyGraph, OfAnEditionWithoutCoupletsIsEmpty) {
  Edition e;
  e.taxa.push_back({.name = "A", .authorship = "", .place = {}});
  KeyGraph const graph{e};
  EXPECT_EQ(graph.couplet_count(), 0U);
  EXPECT_EQ(graph.route_count(TaxonId{0}), 0U);
  EXPECT_TRUE(graph.routes_to(TaxonId{0}).routes.empty());
  EXPECT_TRUE(graph.topological_order().empty());
  EXPECT_TRUE(graph.cycles().empty());
  EXPECT_EQ(graph.position_of(TaxonId{0}), 0U);
}

TEST(KeyGraph, OutlivesAMoveOfTheEdition) {
  auto e = reticulate();
  KeyGraph graph{e};
  auto const moved = std::move(e);
  e = Edition{};
  KeyGraph const taken = std::move(graph);
  EXPECT_EQ(show(moved, taken.leads_to(couplet(moved, "4"))), "2b 3a");
}

// Forty couplets, each leading to the next by both leads: 2^40 ways to the last, 2^80 with eighty.
Edition ladder(std::uint32_t couplets) {
  auto e = comb(couplets);
  for (std::uint32_t i = 0; i + 1 < couplets; ++i) {
    e.couplets[i].leads[0].destination = ToCouplet{CoupletId{i + 1}};
  }
  return e;
}

TEST(KeyGraph, CountsWaysWithoutWalkingThemAndSaturates) {
  auto const forty = ladder(41);
  EXPECT_EQ(KeyGraph{forty}.route_count(TaxonId{41}), std::uint64_t{1} << 40);
  auto const eighty = ladder(81);
  KeyGraph const graph{eighty};
  EXPECT_EQ(graph.route_count(TaxonId{81}), std::uint64_t{1} << 63);
  auto const some = graph.routes_to(TaxonId{81}, 3);
  EXPECT_EQ(some.routes.size(), 3U);
  EXPECT_FALSE(some.complete);
  EXPECT_EQ(some.routes[2].size(), 81U);
}

TEST(KeyGraph, NeverWalksIntoBlindAlleys) {
  // A ladder of 2^60 ways to one taxon hangs beside the only way to another.
  auto e = ladder(61);
  e.couplets.push_back({});
  auto& root = e.couplets.back();
  root.leads.resize(2);
  root.leads[0].destination = ToCouplet{CoupletId{0}};
  e.taxa.push_back({.name = "Z", .authorship = "", .place = {}});
  TaxonId const z{static_cast<std::uint32_t>(e.taxa.size() - 1)};
  root.leads[1].destination = ToTaxa{{z}};
  e.parts[0].start = CoupletId{61};
  KeyGraph const graph{e};
  auto const routes = graph.routes_to(z);
  EXPECT_TRUE(routes.complete);
  ASSERT_EQ(routes.routes.size(), 1U);
  EXPECT_EQ(routes.routes[0], (Route{LeadId{CoupletId{61}, 1}}));
}

TEST(KeyGraph, TakesACombOfAMillionCouplets) {
  constexpr std::uint32_t kCouplets = 1'000'000;
  auto const e = comb(kCouplets);
  KeyGraph const graph{e};
  EXPECT_EQ(graph.depth(CoupletId{kCouplets - 1}), kCouplets);
  EXPECT_EQ(graph.route_count(TaxonId{kCouplets}), 1U);
  EXPECT_EQ(graph.routes_to(TaxonId{kCouplets}).routes.at(0).size(), kCouplets);
  auto const below = graph.taxa_below(CoupletId{10});
  ASSERT_EQ(below.size(), 1U);
  EXPECT_EQ(below[0], (TaxonRun{10, kCouplets + 1}));
  EXPECT_TRUE(graph.cycles().empty());
  EXPECT_EQ(graph.topological_order().size(), kCouplets);
}

TEST(KeyGraph, TakesACycleOfManyCouplets) {
  constexpr std::uint32_t kCouplets = 200'000;
  auto e = comb(kCouplets);
  e.couplets.back().leads[1].destination = ToCouplet{CoupletId{0}};
  KeyGraph const graph{e};
  ASSERT_EQ(graph.cycles().size(), 1U);
  EXPECT_EQ(graph.cycles()[0].size(), kCouplets);
  EXPECT_EQ(graph.taxa_below(CoupletId{500}).size(), 1U);
}

}  // namespace
}  // namespace keydrift
