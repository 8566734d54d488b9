// Ways that are followed from taxon to taxon are what the graph lists and a walk back collects.

#include "keydrift/collation/followed_ways.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "history_cases.hpp"
#include "keydrift/taxa/concepts.hpp"
#include "sketch.hpp"

namespace keydrift {
namespace {

using namespace collating;
using test::Dice;

// In every order of the taxa.
void expect_followed(Edition const& old_edition, Edition const& new_edition, std::uint64_t seed) {
  std::array<Edition const*, 2> const editions{&old_edition, &new_edition};
  KeyGraph const old_graph{old_edition};
  KeyGraph const new_graph{new_edition};
  auto const old_side = make_side(old_edition, old_graph);
  auto const new_side = make_side(new_edition, new_graph);
  auto const matching = match_taxa(old_edition, new_edition, nullptr);
  ParentTable const parents;
  Exceptions const exceptions{old_side, new_side, matching, parents};
  CharacterNumbers const numbers{old_edition, new_edition};
  std::array<Ways, 2> const kept{Ways{old_side, Of::old_edition, exceptions, numbers},
                                 Ways{new_side, Of::new_edition, exceptions, numbers}};
  auto walked = kept;
  FollowedWays followed{old_side, new_side, kept};
  std::array<std::vector<std::uint32_t>, 2> characters;  // of the path that each edition is at
  Dice dice{seed};
  for (int step = 0; step < 200; ++step) {
    auto const of = dice.one_in(2) ? Of::old_edition : Of::new_edition;
    auto const index = static_cast<std::size_t>(of);
    if (editions[index]->taxa.empty()) continue;
    TaxonId const taxon{static_cast<std::uint32_t>(dice.below(editions[index]->taxa.size()))};
    auto const& graph = of == Of::old_edition ? old_graph : new_graph;
    auto const routes = graph.routes_to(taxon, 2);
    if (!followed.has_one(of, taxon)) {
      // None, several, or one that could be left by a cycle.
      EXPECT_TRUE(routes.routes.size() != 1 || !graph.cycles().empty()) << "seed " << seed;
      continue;
    }
    ASSERT_EQ(routes.routes.size(), 1U) << "seed " << seed;
    auto const& route = routes.routes.front();
    followed.follow(of, taxon);
    EXPECT_EQ(followed.path(of), route) << "seed " << seed;
    auto const end = followed.end_of(of, taxon, 3);
    EXPECT_EQ(end.length, route.size());
    EXPECT_TRUE(end.leads.size() == std::min<std::size_t>(route.size(), 3) &&
                std::equal(end.leads.rbegin(), end.leads.rend(), route.rbegin()))
        << "seed " << seed;

    characters[index] = walked[index].characters(taxon);
    std::sort(characters[index].begin(), characters[index].end());
    auto const& on_path = followed.on_path(of);
    EXPECT_TRUE(std::equal(on_path.begin(), on_path.end(), characters[index].begin(),
                           characters[index].end()))
        << "seed " << seed;
    for (std::size_t i = 0; i < 2; ++i) {
      std::vector<std::uint32_t> only;
      std::set_difference(characters[i].begin(), characters[i].end(), characters[1 - i].begin(),
                          characters[1 - i].end(), std::back_inserter(only));
      auto const& here = followed.on_this_path_only(static_cast<Of>(i));
      EXPECT_TRUE(std::equal(here.begin(), here.end(), only.begin(), only.end()))
          << "seed " << seed;
    }
  }
}

TEST(FollowedWays, AreTheWaysOfTheGraphAndTheCharactersOfTheWalk) {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    auto const made = test::make_case({.seed = seed,
                                       .couplets = 40,
                                       .percent = 40,
                                       .shape = test::all_shapes[seed % test::all_shapes.size()],
                                       .gathered = seed > 6});
    expect_followed(made.old_edition, made.new_edition, seed);
  }
}

TEST(FollowedWays, AreFoundInBrokenKeysToo) {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    Dice dice{seed};
    auto const tangle = [&] {
      return test::sketched("tangle",
                            test::make_tangle(1 + dice.below(20), 8, test::Tangle::broken, dice));
    };
    auto const old_edition = tangle();
    auto const new_edition = tangle();
    expect_followed(old_edition, new_edition, seed);
  }
}

}  // namespace
}  // namespace keydrift
