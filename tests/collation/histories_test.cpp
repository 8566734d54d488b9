// Laws of the alignment, and its precision and recall on generated histories with known truth.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "histories.hpp"
#include "sketch.hpp"

namespace keydrift {
namespace {

using test::Dice;
using test::Draft;
using test::Shape;

struct Case {
  Edition old_edition;
  Edition new_edition;
  std::vector<std::size_t> old_nodes;  // by couplet
  std::vector<std::size_t> new_nodes;
  test::History history;
};

Case make_case(std::size_t couplets, std::size_t percent, Shape shape, std::uint64_t seed) {
  Dice dice{seed};
  Case made;
  auto draft = test::make_draft(couplets, shape, dice);
  made.old_edition = test::sketched("old", test::print(draft, made.old_nodes));
  made.history = test::revise(draft, percent, dice);
  made.new_edition = test::sketched("new", test::print(draft, made.new_nodes));
  return made;
}

Collation collated(Case const& made) {
  return test::collated(made.old_edition, made.new_edition,
                        {.lexicon = {}, .rows = made.history.rows, .parents = {}});
}

struct Score {
  std::size_t right{};
  std::size_t found{};
  std::size_t true_pairs{};
  [[nodiscard]] double precision() const {
    return static_cast<double>(right) / static_cast<double>(std::max<std::size_t>(found, 1));
  }
  [[nodiscard]] double recall() const {
    return static_cast<double>(right) / static_cast<double>(std::max<std::size_t>(true_pairs, 1));
  }
};

Score score(Case const& made, Collation const& collation) {
  std::set<std::size_t> const news{made.new_nodes.begin(), made.new_nodes.end()};
  Score result;
  for (auto const node : made.old_nodes) result.true_pairs += news.count(node);
  for (auto const& pair : collation.alignment.pairs) {
    ++result.found;
    auto const was = made.old_nodes[pair.old_couplet.index];
    auto const is = made.new_nodes[pair.new_couplet.index];
    bool const part = std::find(made.history.parts.begin(), made.history.parts.end(),
                                std::pair{was, is}) != made.history.parts.end();
    if (was == is || part) ++result.right;
  }
  return result;
}

class Histories : public testing::TestWithParam<std::size_t> {};

TEST_P(Histories, PlantedPairsAreFoundAndNoOthers) {
  auto const percent = GetParam();
  double const wanted = percent <= 30 ? 0.98 : 0.93;
  for (auto const shape : {Shape::bushy, Shape::comb}) {
    Score sum;
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      auto const made = make_case(120, percent, shape, seed);
      auto const one = score(made, collated(made));
      sum.right += one.right;
      sum.found += one.found;
      sum.true_pairs += one.true_pairs;
    }
    EXPECT_GE(sum.precision(), wanted) << (shape == Shape::comb ? "comb" : "bushy");
    EXPECT_GE(sum.recall(), wanted) << (shape == Shape::comb ? "comb" : "bushy");
    RecordProperty(shape == Shape::comb ? "comb_precision" : "precision",
                   std::to_string(sum.precision()));
    RecordProperty(shape == Shape::comb ? "comb_recall" : "recall", std::to_string(sum.recall()));
  }
}

INSTANTIATE_TEST_SUITE_P(ByShareEdited, Histories, testing::Values(0, 5, 15, 30, 45, 60));

TEST(Laws, AnEditionComparedWithItselfIsKeptThroughout) {
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    auto const made = make_case(80, 0, seed % 2 == 0 ? Shape::comb : Shape::bushy, seed);
    auto const collation = collated(made);
    EXPECT_FALSE(collation.changes_meaning) << "seed " << seed;
    EXPECT_EQ(collation.alignment.pairs.size(), made.old_edition.couplets.size());
    for (auto const& pair : collation.alignment.pairs) {
      EXPECT_EQ(pair.old_couplet.index, pair.new_couplet.index) << "seed " << seed;
      EXPECT_EQ(pair.similarity.total, 1.0) << "seed " << seed;
    }
    for (auto const& change : collation.couplets) {
      EXPECT_EQ(change.events, std::vector{CoupletEvent::kept}) << "seed " << seed;
    }
    EXPECT_TRUE(collation.roles.empty()) << "seed " << seed;
  }
}

TEST(Laws, ABrokenKeyComparedWithItselfIsKeptThroughout) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Dice dice{seed};
    auto const kind = seed % 3 == 0 ? test::Tangle::sound : test::Tangle::broken;
    auto const edition =
        test::sketched("tangle", test::make_tangle(1 + dice.below(40), 12, kind, dice));
    auto const collation = test::collated(edition, edition);
    EXPECT_FALSE(collation.changes_meaning) << "seed " << seed;
    EXPECT_EQ(collation.alignment.pairs.size(), edition.couplets.size()) << "seed " << seed;
    for (auto const& pair : collation.alignment.pairs) {
      EXPECT_EQ(pair.old_couplet.index, pair.new_couplet.index) << "seed " << seed;
      EXPECT_EQ(pair.similarity.total, 1.0) << "seed " << seed;
    }
    for (auto const& change : collation.taxa) {
      EXPECT_EQ(change.events, std::vector{TaxonEvent::same_route}) << "seed " << seed;
      EXPECT_EQ(change.parting, std::nullopt) << "seed " << seed;
    }
    EXPECT_TRUE(collation.mended.empty() && collation.introduced.empty()) << "seed " << seed;
  }
}

TEST(Laws, ChangingPlacesMirrorsBrokenKeysToo) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Dice dice{seed};
    auto sketch = test::make_tangle(1 + dice.below(30), 12, test::Tangle::broken, dice);
    auto const old_edition = test::sketched("old", sketch);
    for (auto& couplet : sketch) {
      if (dice.one_in(3)) std::swap(couplet.leads.front(), couplet.leads.back());
      if (dice.one_in(4)) couplet.leads.front().text += "; c1: s" + std::to_string(dice.below(3));
      if (dice.one_in(4)) couplet.leads.front().to = "Aus t" + std::to_string(dice.below(14));
      if (dice.one_in(5)) couplet.leads.push_back({"keel: sharp", "Aus novus"});
    }
    if (dice.one_in(2)) sketch.pop_back();
    auto const new_edition = test::sketched("new", sketch);
    auto const there = test::collated(old_edition, new_edition);
    auto const back = test::collated(new_edition, old_edition);
    ASSERT_EQ(there.alignment.pairs.size(), back.alignment.pairs.size()) << "seed " << seed;
    for (auto const& pair : there.alignment.pairs) {
      auto const* mirror = back.alignment.of_old(pair.new_couplet);
      ASSERT_NE(mirror, nullptr) << "seed " << seed;
      EXPECT_EQ(mirror->new_couplet, pair.old_couplet) << "seed " << seed;
      EXPECT_EQ(mirror->similarity.total, pair.similarity.total) << "seed " << seed;
    }
  }
}

TEST(Laws, EmptyEditionsAreCompared) {
  Edition const nothing;
  auto const edition = test::sketched("snails", test::snails());
  EXPECT_FALSE(test::collated(nothing, nothing).changes_meaning);
  auto const all_new = test::collated(nothing, edition);
  EXPECT_EQ(all_new.alignment.only_new.size(), 6U);
  EXPECT_EQ(all_new.taxa.size(), edition.taxa.size());
  auto const all_old = test::collated(edition, nothing);
  EXPECT_EQ(all_old.alignment.only_old.size(), 6U);
  EXPECT_EQ(all_old.couplets.size(), 6U);
}

Edition permuted(Edition const& edition, Dice& dice) {
  auto const count = edition.couplets.size();
  std::vector<std::uint32_t> place(count);  // of the couplet in the new order
  for (std::uint32_t i = 0; i < count; ++i) place[i] = i;
  for (std::size_t i = 1; i + 1 < count; ++i) {
    std::swap(place[i], place[i + dice.below(count - i)]);
  }
  Edition result = edition;
  for (std::uint32_t i = 0; i < count; ++i) {
    auto& couplet = result.couplets[place[i]];
    couplet = edition.couplets[i];
    couplet.label = std::to_string(place[i] + 1);
    for (auto& lead : couplet.leads) {
      if (auto* to = std::get_if<ToCouplet>(&lead.destination)) {
        to->couplet.index = place[to->couplet.index];
        lead.destination_printed = std::to_string(to->couplet.index + 1);
      }
    }
  }
  return result;
}

TEST(Laws, AnotherPrintedOrderChangesNothingButNumbers) {
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    auto const made = make_case(60, 0, seed % 2 == 0 ? Shape::comb : Shape::bushy, seed);
    Dice dice{seed};
    auto const shuffled = permuted(made.old_edition, dice);
    auto const collation = test::collated(made.old_edition, shuffled);
    EXPECT_FALSE(collation.changes_meaning) << "seed " << seed;
    for (auto const& change : collation.couplets) {
      ASSERT_EQ(change.events.size(), 1U);
      EXPECT_TRUE(change.events.front() == CoupletEvent::kept ||
                  change.events.front() == CoupletEvent::renumbered)
          << "seed " << seed;
      EXPECT_EQ(change.similarity.total, 1.0) << "seed " << seed;
    }
  }
}

TEST(Laws, ThePrintedOrderOfARevisionDoesNotMatter) {
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    auto const made = make_case(60, 40, seed % 2 == 0 ? Shape::comb : Shape::bushy, seed);
    Dice dice{seed};
    auto const shuffled = permuted(made.new_edition, dice);
    auto const plain = collated(made);
    auto const other = test::collated(made.old_edition, shuffled,
                                      {.lexicon = {}, .rows = made.history.rows, .parents = {}});
    ASSERT_EQ(plain.alignment.pairs.size(), other.alignment.pairs.size()) << "seed " << seed;
    for (std::size_t i = 0; i < plain.alignment.pairs.size(); ++i) {
      auto const& a = plain.alignment.pairs[i];
      auto const& b = other.alignment.pairs[i];
      EXPECT_EQ(a.old_couplet, b.old_couplet);
      EXPECT_EQ(made.new_edition[a.new_couplet].leads.front().text,
                shuffled[b.new_couplet].leads.front().text)
          << "seed " << seed;
      EXPECT_EQ(a.similarity.total, b.similarity.total) << "seed " << seed;
    }
  }
}

CoupletEvent mirrored(CoupletEvent event) {
  switch (event) {
    case CoupletEvent::lead_added:
      return CoupletEvent::lead_dropped;
    case CoupletEvent::lead_dropped:
      return CoupletEvent::lead_added;
    case CoupletEvent::split:
      return CoupletEvent::merged;
    case CoupletEvent::merged:
      return CoupletEvent::split;
    case CoupletEvent::inserted:
      return CoupletEvent::removed;
    case CoupletEvent::removed:
      return CoupletEvent::inserted;
    default:
      return event;
  }
}

TEST(Laws, ChangingPlacesMirrorsTheResult) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    auto const made = make_case(70, 50, seed % 2 == 0 ? Shape::comb : Shape::bushy, seed);
    auto const there = collated(made);
    auto rows = made.history.rows;
    for (auto& row : rows) {
      std::swap(row.old_name, row.new_name);
      row.relation = row.relation == Relation::includes ? Relation::included_in : row.relation;
    }
    auto const back = test::collated(made.new_edition, made.old_edition,
                                     {.lexicon = {}, .rows = rows, .parents = {}});
    ASSERT_EQ(there.alignment.pairs.size(), back.alignment.pairs.size()) << "seed " << seed;
    for (auto const& pair : there.alignment.pairs) {
      auto const* mirror = back.alignment.of_old(pair.new_couplet);
      ASSERT_NE(mirror, nullptr) << "seed " << seed;
      EXPECT_EQ(mirror->new_couplet, pair.old_couplet) << "seed " << seed;
      EXPECT_EQ(mirror->similarity.total, pair.similarity.total) << "seed " << seed;
      for (auto const& leads : pair.leads) {
        EXPECT_NE(std::find(mirror->leads.begin(), mirror->leads.end(),
                            LeadPair{.old_lead = leads.new_lead, .new_lead = leads.old_lead}),
                  mirror->leads.end())
            << "seed " << seed;
      }
    }
    std::multiset<std::pair<std::vector<CoupletId>, std::vector<CoupletEvent>>> forwards;
    std::multiset<std::pair<std::vector<CoupletId>, std::vector<CoupletEvent>>> backwards;
    for (auto const& change : there.couplets) {
      std::vector<CoupletEvent> events;
      for (auto const event : change.events) events.push_back(mirrored(event));
      std::sort(events.begin(), events.end());
      auto couplets = change.old_couplets;
      couplets.insert(couplets.end(), change.new_couplets.begin(), change.new_couplets.end());
      forwards.emplace(couplets, events);
    }
    for (auto const& change : back.couplets) {
      auto couplets = change.new_couplets;
      couplets.insert(couplets.end(), change.old_couplets.begin(), change.old_couplets.end());
      backwards.emplace(couplets, change.events);
    }
    EXPECT_EQ(forwards, backwards) << "seed " << seed;
    EXPECT_EQ(there.changes_meaning, back.changes_meaning) << "seed " << seed;
    ASSERT_EQ(there.taxa.size(), back.taxa.size()) << "seed " << seed;
    std::size_t lost = 0;
    std::size_t gained = 0;
    for (auto const& change : there.taxa) lost += change.characters_lost.size();
    for (auto const& change : back.taxa) gained += change.characters_gained.size();
    EXPECT_EQ(lost, gained) << "seed " << seed;
  }
}

TEST(Laws, TheSameCallGivesTheSameResult) {
  auto const made = make_case(120, 40, Shape::bushy, 3);
  auto const once = collated(made);
  auto const again = collated(made);
  EXPECT_EQ(test::told(once, made.old_edition, made.new_edition),
            test::told(again, made.old_edition, made.new_edition));
  EXPECT_EQ(test::roles_of(once, made.old_edition, made.new_edition),
            test::roles_of(again, made.old_edition, made.new_edition));
}

}  // namespace
}  // namespace keydrift
