// The chain of two routes that change at their ends is the one that is found from the beginning,
// and none is longer.

#include "keydrift/collation/route_chain.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "histories.hpp"

namespace keydrift {
namespace {

using namespace collating;
using test::Dice;

// Of couplets, each once; the first `kept` are those of `before`.
Route route_after(Route const& before, std::size_t kept, std::uint32_t couplets, Dice& dice) {
  Route route{before.begin(), before.begin() + static_cast<std::ptrdiff_t>(kept)};
  for (auto more = dice.below(6); more > 0; --more) {
    CoupletId const couplet{static_cast<std::uint32_t>(dice.below(couplets))};
    bool const known = std::any_of(route.begin(), route.end(),
                                   [&](LeadId lead) { return lead.couplet == couplet; });
    if (!known) route.push_back({couplet, static_cast<std::uint32_t>(dice.below(2))});
  }
  return route;
}

std::size_t longest(Route const& olds, Route const& news, Counterparts const& counterparts) {
  std::vector<std::vector<std::size_t>> length(olds.size() + 1,
                                               std::vector<std::size_t>(news.size() + 1, 0));
  for (std::size_t i = 0; i < olds.size(); ++i) {
    for (std::size_t j = 0; j < news.size(); ++j) {
      bool const aligned = counterparts.couplet[0][olds[i].couplet.index] == news[j].couplet.index;
      length[i + 1][j + 1] =
          aligned ? length[i][j] + 1 : std::max(length[i][j + 1], length[i + 1][j]);
    }
  }
  return length[olds.size()][news.size()];
}

TEST(RouteChain, KeptUpIsTheChainFoundFromTheBeginning) {
  constexpr std::uint32_t couplets = 24;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Dice dice{seed};
    Counterparts counterparts;
    for (auto& list : counterparts.couplet) list.assign(couplets, none);
    std::vector<std::uint32_t> shuffled(couplets);
    for (std::uint32_t i = 0; i < couplets; ++i) shuffled[i] = i;
    for (std::uint32_t swaps = 0; swaps < seed % 9; ++swaps) {
      std::swap(shuffled[dice.below(couplets)], shuffled[dice.below(couplets)]);
    }
    for (std::uint32_t i = 0; i < couplets; ++i) {
      if (dice.one_in(6)) continue;
      counterparts.couplet[0][i] = shuffled[i];
      counterparts.couplet[1][shuffled[i]] = i;
    }
    RouteChain chain{counterparts};
    Route olds;
    Route news;
    std::vector<RouteChain::Link> before;
    for (int call = 0; call < 40; ++call) {
      auto const old_kept = olds.size() - std::min(olds.size(), dice.below(5));
      auto const new_kept = news.size() - std::min(news.size(), dice.below(5));
      olds = route_after(olds, old_kept, couplets, dice);
      news = route_after(news, new_kept, couplets, dice);
      chain.update(olds, old_kept, news, new_kept);
      RouteChain afresh{counterparts};
      afresh.update(olds, 0, news, 0);
      ASSERT_EQ(chain.links(), afresh.links()) << "seed " << seed << ", call " << call;
      ASSERT_EQ(chain.links().size(), longest(olds, news, counterparts)) << "seed " << seed;
      for (auto const& link : chain.links()) {
        EXPECT_EQ(counterparts.couplet[0][olds[link.old_step].couplet.index],
                  news[link.new_step].couplet.index);
      }
      EXPECT_TRUE(std::is_sorted(chain.links().begin(), chain.links().end(),
                                 [](auto const& a, auto const& b) {
                                   return a.old_step < b.old_step && a.new_step < b.new_step;
                                 }));
      ASSERT_LE(chain.links_kept(), before.size());
      EXPECT_TRUE(std::equal(before.begin(),
                             before.begin() + static_cast<std::ptrdiff_t>(chain.links_kept()),
                             chain.links().begin()));
      before = chain.links();
    }
  }
}

}  // namespace
}  // namespace keydrift
