// What leads have in common in taxa, against listing the taxa.

#include "keydrift/collation/shared_taxa.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "edition_builder.hpp"
#include "histories.hpp"

namespace keydrift {
namespace {

using collating::Of;
using collating::SharedTaxa;
using test::Dice;

// Several routes to couplets and taxa, so that sets are several runs.
Edition reticulate(Dice& dice, std::size_t couplets, std::size_t taxa) {
  return test::make_edition("reticulate",
                            test::make_tangle(couplets, taxa, test::Tangle::sound, dice));
}

TEST(SharedTaxaSums, AgreeWithListingTheTaxa) {
  Dice dice{5};
  for (int round = 0; round < 60; ++round) {
    auto const old_edition = reticulate(dice, 2 + dice.below(14), 20);
    auto const new_edition = reticulate(dice, 2 + dice.below(14), 20);
    KeyGraph const old_graph{old_edition};
    KeyGraph const new_graph{new_edition};
    auto const old_side = collating::make_side(old_edition, old_graph);
    auto const new_side = collating::make_side(new_edition, new_graph);
    TaxonMatching matching;
    std::vector<std::size_t> old_degree(old_edition.taxa.size());
    std::vector<std::size_t> new_degree(new_edition.taxa.size());
    for (std::uint32_t i = 0; i < old_edition.taxa.size(); ++i) {
      for (std::uint32_t j = 0; j < new_edition.taxa.size(); ++j) {
        if (old_edition.taxa[i].name != new_edition.taxa[j].name && !dice.one_in(12)) continue;
        TaxonMatch match{.old_taxon = TaxonId{i}, .new_taxon = TaxonId{j}, .note = ""};
        match.relation = dice.one_in(6) ? Relation::disjoint : Relation::overlaps;
        matching.matches.push_back(match);
        if (match.relation == Relation::disjoint) continue;
        ++old_degree[i];
        ++new_degree[j];
      }
    }
    SharedTaxa const shared{matching, old_side, new_side};
    auto const common_by_listing = [&](std::vector<TaxonId> const& olds,
                                       std::vector<TaxonId> const& news) {
      std::uint64_t sum = 0;
      for (auto const& match : matching.matches) {
        if (match.relation == Relation::disjoint) continue;
        if (std::find(olds.begin(), olds.end(), match.old_taxon) == olds.end()) continue;
        if (std::find(news.begin(), news.end(), match.new_taxon) == news.end()) continue;
        sum += collating::tie_weight /
               std::max(old_degree[match.old_taxon.index], new_degree[match.new_taxon.index]);
      }
      return sum;
    };
    std::vector<TaxonId> all_old;
    for (std::uint32_t i = 0; i < old_edition.taxa.size(); ++i) all_old.push_back(TaxonId{i});
    std::vector<TaxonId> all_new;
    for (std::uint32_t i = 0; i < new_edition.taxa.size(); ++i) all_new.push_back(TaxonId{i});
    for (auto const old_lead : old_side.leads) {
      auto const old_runs = old_graph.taxa_below(old_lead);
      EXPECT_EQ(shared.mass(Of::old_edition, old_runs),
                common_by_listing(old_graph.list(old_runs), all_new));
      for (auto const new_lead : new_side.leads) {
        auto const new_runs = new_graph.taxa_below(new_lead);
        EXPECT_EQ(shared.mass(Of::new_edition, new_runs),
                  common_by_listing(all_old, new_graph.list(new_runs)));
        EXPECT_EQ(shared.common(old_runs, new_runs),
                  common_by_listing(old_graph.list(old_runs), new_graph.list(new_runs)))
            << "round " << round;
      }
    }
  }
}

TEST(SharedTaxaSums, ASplitTaxonWeighsAsMuchAsItsPartsTogether) {
  auto const old_edition = test::make_edition("old", {{"1", {{"a", "Aus bus"}, {"b", "Aus cus"}}}});
  auto const new_edition = test::make_edition(
      "new", {{"1", {{"a", "2"}, {"b", "Aus cus"}}}, {"2", {{"c", "Aus bus"}, {"d", "Aus dus"}}}});
  KeyGraph const old_graph{old_edition};
  KeyGraph const new_graph{new_edition};
  auto const old_side = collating::make_side(old_edition, old_graph);
  auto const new_side = collating::make_side(new_edition, new_graph);
  auto const taxon = [](Edition const& edition, std::string const& name) {
    auto const found = std::find_if(edition.taxa.begin(), edition.taxa.end(),
                                    [&](Taxon const& t) { return t.name == name; });
    return TaxonId{static_cast<std::uint32_t>(found - edition.taxa.begin())};
  };
  auto const match = [&](std::string const& was, std::string const& is, Relation relation) {
    return TaxonMatch{.old_taxon = taxon(old_edition, was),
                      .new_taxon = taxon(new_edition, is),
                      .relation = relation,
                      .note = ""};
  };
  TaxonMatching matching;
  matching.matches = {match("Aus bus", "Aus bus", Relation::includes),
                      match("Aus bus", "Aus dus", Relation::includes),
                      match("Aus cus", "Aus cus", Relation::congruent)};
  SharedTaxa const shared{matching, old_side, new_side};
  LeadId const old_lead{CoupletId{0}, 0};
  LeadId const new_lead{CoupletId{0}, 0};
  EXPECT_EQ(shared.mass(Of::old_edition, old_graph.taxa_below(old_lead)),
            shared.mass(Of::new_edition, new_graph.taxa_below(new_lead)));
  EXPECT_EQ(shared.fingerprint(Of::old_edition, old_graph.taxa_below(old_lead)),
            shared.fingerprint(Of::new_edition, new_graph.taxa_below(new_lead)));
  LeadId const part{CoupletId{1}, 0};
  EXPECT_EQ(2 * shared.common(old_graph.taxa_below(old_lead), new_graph.taxa_below(part)),
            shared.mass(Of::old_edition, old_graph.taxa_below(old_lead)));
}

TEST(SharedTaxaSums, EqualSetsHaveTheSameFirstTieInEveryShuffle) {
  Dice dice{9};
  std::vector<std::size_t> order;
  auto const draft = test::make_draft(60, test::Shape::bushy, dice);
  auto const edition = test::make_edition("key", test::print(draft, order));
  KeyGraph const graph{edition};
  auto const side = collating::make_side(edition, graph);
  TaxonMatching matching;
  for (std::uint32_t i = 0; i < edition.taxa.size(); ++i) {
    matching.matches.push_back({.old_taxon = TaxonId{i}, .new_taxon = TaxonId{i}, .note = ""});
  }
  SharedTaxa const shared{matching, side, side};
  for (unsigned shuffle = 0; shuffle < SharedTaxa::shuffles; ++shuffle) {
    std::set<std::uint32_t> first;
    for (std::uint32_t i = 0; i < side.couplet_count(); ++i) {
      auto const runs = graph.taxa_below(CoupletId{i});
      EXPECT_EQ(shared.least(Of::old_edition, shuffle, runs),
                shared.least(Of::new_edition, shuffle, runs));
      first.insert(shared.least(Of::old_edition, shuffle, runs));
    }
    EXPECT_GT(first.size(), 5U) << "every set has the same first tie";
  }
}

}  // namespace
}  // namespace keydrift
