// The graph against a naive model that walks every way: on every key of up to three couplets, then
// on larger random ones (fixed seed; --gtest_random_seed overrides it).

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <set>
#include <sstream>

#include "keydrift/key/graph.hpp"

namespace keydrift {
namespace {

using Set = std::set<std::uint32_t>;

// What the graph should say, found by brute force.
class Model {
 public:
  explicit Model(Edition const& edition) : edition_{edition} {
    auto const n = edition.couplets.size();
    reaches_.resize(n);
    for (std::uint32_t c = 0; c < n; ++c) {
      for (auto const to : next(c)) reaches_[c].insert(to);
    }
    for (std::size_t round = 0; round < n; ++round) {
      for (auto& below : reaches_) {
        for (auto const to : Set{below}) below.insert(reaches_[to].begin(), reaches_[to].end());
      }
    }
    start_ = edition.parts.front().start.index;
    if (!on_cycle(start_)) walk(start_, {});
  }

  [[nodiscard]] bool on_cycle(std::uint32_t c) const { return reaches_[c].contains(c); }
  [[nodiscard]] bool reachable(std::uint32_t c) const {
    return c == start_ || reaches_[start_].contains(c);
  }
  [[nodiscard]] Set taxa_below(LeadId lead) const {
    auto taxa = named(lead);
    for (auto const to : couplets(lead)) {
      auto const below = taxa_below(to);
      taxa.insert(below.begin(), below.end());
    }
    return taxa;
  }
  [[nodiscard]] Set taxa_below(std::uint32_t c) const {
    Set taxa;
    auto all = reaches_[c];
    all.insert(c);
    for (auto const each : all) {
      for (std::uint32_t l = 0; l < edition_.couplets[each].leads.size(); ++l) {
        auto const here = named({CoupletId{each}, l});
        taxa.insert(here.begin(), here.end());
      }
    }
    return taxa;
  }
  [[nodiscard]] std::vector<Route> routes_to_couplet(std::uint32_t c) const {
    return pick(to_couplets_, c);
  }
  [[nodiscard]] std::vector<Route> routes_to_taxon(std::uint32_t t) const {
    return pick(to_taxa_, t);
  }
  [[nodiscard]] std::optional<std::uint32_t> depth(std::uint32_t c) const {
    Set level{start_};
    for (std::uint32_t steps = 1; steps <= edition_.couplets.size(); ++steps) {
      if (level.contains(c)) return steps;
      Set below;
      for (auto const each : level) {
        for (auto const to : next(each)) below.insert(to);
      }
      level = below;
    }
    return std::nullopt;
  }
  [[nodiscard]] Set couplets(LeadId lead) const {
    auto const* to = std::get_if<ToCouplet>(&edition_[lead].destination);
    return to == nullptr ? Set{} : Set{to->couplet.index};
  }
  [[nodiscard]] Set named(LeadId lead) const {
    Set taxa;
    if (auto const* to = std::get_if<ToTaxa>(&edition_[lead].destination)) {
      for (auto const taxon : to->taxa) taxa.insert(taxon.index);
    }
    return taxa;
  }

 private:
  using Ends = std::vector<std::pair<std::uint32_t, Route>>;

  [[nodiscard]] std::vector<std::uint32_t> next(std::uint32_t c) const {
    std::vector<std::uint32_t> all;
    for (std::uint32_t l = 0; l < edition_.couplets[c].leads.size(); ++l) {
      for (auto const to : couplets({CoupletId{c}, l})) all.push_back(to);
    }
    return all;
  }
  void walk(std::uint32_t c, Route const& route) {
    to_couplets_.emplace_back(c, route);
    for (std::uint32_t l = 0; l < edition_.couplets[c].leads.size(); ++l) {
      LeadId const lead{CoupletId{c}, l};
      auto taken = route;
      taken.push_back(lead);
      for (auto const taxon : named(lead)) to_taxa_.emplace_back(taxon, taken);
      for (auto const to : couplets(lead)) {
        if (!on_cycle(to)) walk(to, taken);
      }
    }
  }
  static std::vector<Route> pick(Ends const& ends, std::uint32_t wanted) {
    std::vector<Route> routes;
    for (auto const& [end, route] : ends) {
      if (end == wanted) routes.push_back(route);
    }
    return routes;
  }

  Edition const& edition_;
  std::uint32_t start_{};
  std::vector<Set> reaches_;  // by couplets, the couplet itself only if on a cycle
  Ends to_couplets_;          // in printed order
  Ends to_taxa_;
};

// The key as a person would write it down, for the message of a failure.
std::string show_edition(Edition const& edition) {
  std::ostringstream text;
  text << "start " << edition.parts.front().start.index << ';';
  for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
    text << ' ' << c << '(';
    for (auto const& lead : edition.couplets[c].leads) {
      if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
        text << ' ' << to->couplet.index;
      } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
        text << ' ';
        for (auto const taxon : taxa->taxa) text << static_cast<char>('A' + taxon.index);
      } else {
        text << " -";
      }
    }
    text << " )";
  }
  return text.str();
}

Set positions_as_taxa(KeyGraph const& graph, std::span<TaxonRun const> runs) {
  std::uint32_t end = 0;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    EXPECT_LT(runs[i].begin, runs[i].end);
    EXPECT_TRUE(i == 0 || runs[i].begin > end) << "runs that touch were not merged";
    end = runs[i].end;
  }
  Set taxa;
  for (auto const taxon : graph.list(runs)) taxa.insert(taxon.index);
  return taxa;
}

void expect_as_modelled(Edition const& edition) {
  SCOPED_TRACE(show_edition(edition));
  KeyGraph const graph{edition};
  Model const model{edition};

  std::vector<std::vector<LeadId>> to_couplet(edition.couplets.size());
  std::vector<std::vector<LeadId>> to_taxon(edition.taxa.size());
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    CoupletId const id{c};
    for (std::uint32_t l = 0; l < edition.couplets[c].leads.size(); ++l) {
      LeadId const lead{id, l};
      for (auto const to : model.couplets(lead)) to_couplet[to].push_back(lead);
      for (auto const to : model.named(lead)) to_taxon[to].push_back(lead);
      ASSERT_EQ(positions_as_taxa(graph, graph.taxa_below(lead)), model.taxa_below(lead));
    }
    ASSERT_EQ(positions_as_taxa(graph, graph.taxa_below(id)), model.taxa_below(c));
    ASSERT_EQ(graph.reachable(id), model.reachable(c));
    ASSERT_EQ(graph.depth(id), model.depth(c));
    auto const routes = model.routes_to_couplet(c);
    ASSERT_EQ(graph.route_count(id), routes.size());
    ASSERT_EQ(graph.routes_to(id, 1000).routes, routes);
  }
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    auto const leads = graph.leads_to(CoupletId{c});
    ASSERT_EQ((std::vector<LeadId>{leads.begin(), leads.end()}), to_couplet[c]);
  }
  std::set<std::uint32_t> positions;
  for (std::uint32_t t = 0; t < edition.taxa.size(); ++t) {
    TaxonId const id{t};
    auto const leads = graph.leads_to(id);
    ASSERT_EQ((std::vector<LeadId>{leads.begin(), leads.end()}), to_taxon[t]);
    auto const routes = model.routes_to_taxon(t);
    ASSERT_EQ(graph.route_count(id), routes.size());
    ASSERT_EQ(graph.routes_to(id, 1000).routes, routes);
    auto const two = graph.routes_to(id, 2);
    ASSERT_EQ(two.complete, routes.size() <= 2);
    ASSERT_EQ(two.routes.size(), std::min<std::size_t>(routes.size(), 2));
    ASSERT_TRUE(std::equal(two.routes.begin(), two.routes.end(), routes.begin()));
    positions.insert(graph.position_of(id));
    ASSERT_EQ(graph.taxon_at(graph.position_of(id)), id);
  }
  ASSERT_EQ(positions.size(), edition.taxa.size());

  Set cyclic;
  for (auto const& cycle : graph.cycles()) {
    ASSERT_TRUE(std::is_sorted(cycle.begin(), cycle.end()));
    for (auto const couplet : cycle) cyclic.insert(couplet.index);
  }
  std::vector<std::size_t> place(edition.couplets.size(), edition.couplets.size());
  auto const order = graph.topological_order();
  for (std::size_t i = 0; i < order.size(); ++i) place[order[i].index] = i;
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    ASSERT_EQ(cyclic.contains(c), model.on_cycle(c));
    ASSERT_EQ(place[c] < edition.couplets.size(), model.reachable(c));
    if (!model.reachable(c) || model.on_cycle(c)) continue;
    for (auto const lead : to_couplet[c]) {
      if (!model.reachable(lead.couplet.index) || model.on_cycle(lead.couplet.index)) continue;
      ASSERT_LT(place[lead.couplet.index], place[c]);
    }
  }
}

TEST(KeyGraphProperties, HoldOnEveryKeyOfUpToThreeCouplets) {
  for (std::uint32_t couplets = 1; couplets <= 3; ++couplets) {
    auto const choices = couplets + 2;  // a couplet, A, or A and B
    std::size_t keys = 1;
    for (std::uint32_t l = 0; l < 2 * couplets; ++l) keys *= choices;
    for (std::size_t key = 0; key < keys && !testing::Test::HasFailure(); ++key) {
      Edition edition;
      edition.parts.push_back({});
      edition.couplets.resize(couplets);
      edition.taxa.resize(2);
      auto rest = key;
      for (auto& couplet : edition.couplets) {
        couplet.leads.resize(2);
        for (auto& lead : couplet.leads) {
          auto const choice = static_cast<std::uint32_t>(rest % choices);
          rest /= choices;
          if (choice < couplets) {
            lead.destination = ToCouplet{CoupletId{choice}};
          } else if (choice == couplets) {
            lead.destination = ToTaxa{{TaxonId{0}}};
          } else {
            lead.destination = ToTaxa{{TaxonId{1}, TaxonId{0}, TaxonId{1}}};
          }
        }
      }
      expect_as_modelled(edition);
    }
  }
}

using Random = std::mt19937;

std::uint32_t below(Random& random, std::uint32_t bound) {
  return static_cast<std::uint32_t>(random() % bound);
}

enum class Turning { never, may };

// A key of `couplets`; leads lead on to later couplets, or anywhere where they may turn back.
Edition random_key(Random& random, std::uint32_t couplets, Turning turning) {
  Edition edition;
  edition.couplets.resize(couplets);
  auto const taxa = 1 + below(random, couplets + 1);
  edition.taxa.resize(taxa);
  for (std::uint32_t c = 0; c < couplets; ++c) {
    auto& leads = edition.couplets[c].leads;
    leads.resize(below(random, 10) == 0 ? 1 + below(random, 4) : 2);
    for (auto& lead : leads) {
      auto const kind = below(random, 20);
      bool const back = turning == Turning::may && below(random, 8) == 0;
      if (kind == 0) continue;  // nowhere
      if (kind < 11 && (back || c + 1 < couplets)) {
        auto const to = back ? below(random, couplets) : c + 1 + below(random, couplets - c - 1);
        lead.destination = ToCouplet{CoupletId{to}};
      } else {
        ToTaxa to;
        auto const count = kind == 19 ? 3U : 1U;
        for (std::uint32_t i = 0; i < count; ++i) to.taxa.push_back(TaxonId{below(random, taxa)});
        lead.destination = to;
      }
    }
  }
  edition.parts.push_back({});
  return edition;
}

TEST(KeyGraphProperties, HoldOnRandomKeysWithoutCycles) {
  Random random{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed())};
  for (int i = 0; i < 400 && !testing::Test::HasFailure(); ++i) {
    expect_as_modelled(random_key(random, 1 + below(random, 12), Turning::never));
  }
}

TEST(KeyGraphProperties, HoldOnRandomKeysWithCycles) {
  Random random{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed()) + 1};
  for (int i = 0; i < 400 && !testing::Test::HasFailure(); ++i) {
    expect_as_modelled(random_key(random, 1 + below(random, 12), Turning::may));
  }
}

// The same key with its couplets and taxa in another order: row i becomes row to[i].
struct Shuffled {
  Edition edition;
  std::vector<std::uint32_t> couplet;
  std::vector<std::uint32_t> taxon;
};

std::vector<std::uint32_t> permutation(Random& random, std::size_t size) {
  std::vector<std::uint32_t> to(size);
  std::iota(to.begin(), to.end(), 0U);
  for (auto i = size; i > 1; --i) {
    std::swap(to[i - 1], to[below(random, static_cast<std::uint32_t>(i))]);
  }
  return to;
}

Shuffled shuffle(Random& random, Edition const& edition) {
  Shuffled result;
  result.couplet = permutation(random, edition.couplets.size());
  result.taxon = permutation(random, edition.taxa.size());
  auto& copy = result.edition;
  copy.couplets.resize(edition.couplets.size());
  copy.taxa.resize(edition.taxa.size());
  copy.parts = edition.parts;
  copy.parts[0].start.index = result.couplet[edition.parts[0].start.index];
  for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
    auto& couplet = copy.couplets[result.couplet[c]];
    couplet = edition.couplets[c];
    for (auto& lead : couplet.leads) {
      if (auto* to = std::get_if<ToCouplet>(&lead.destination)) {
        to->couplet.index = result.couplet[to->couplet.index];
      } else if (auto* taxa = std::get_if<ToTaxa>(&lead.destination)) {
        for (auto& taxon : taxa->taxa) taxon.index = result.taxon[taxon.index];
      }
    }
  }
  return result;
}

TEST(KeyGraphProperties, DoNotDependOnTheOrderOfCouplets) {
  Random random{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed()) + 2};
  for (int i = 0; i < 300 && !testing::Test::HasFailure(); ++i) {
    auto const edition =
        random_key(random, 1 + below(random, 40), i % 2 == 0 ? Turning::never : Turning::may);
    auto const shuffled = shuffle(random, edition);
    KeyGraph const graph{edition};
    KeyGraph const other{shuffled.edition};
    for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
      CoupletId const here{c};
      CoupletId const there{shuffled.couplet[c]};
      ASSERT_EQ(graph.reachable(here), other.reachable(there));
      ASSERT_EQ(graph.depth(here), other.depth(there));
      ASSERT_EQ(graph.route_count(here), other.route_count(there));
      ASSERT_EQ(graph.leads_to(here).size(), other.leads_to(there).size());
      Set taxa;
      for (auto const taxon : graph.list(graph.taxa_below(here))) {
        taxa.insert(shuffled.taxon[taxon.index]);
      }
      ASSERT_EQ(taxa, positions_as_taxa(other, other.taxa_below(there)));
    }
    for (std::uint32_t t = 0; t < edition.taxa.size(); ++t) {
      TaxonId const here{t};
      TaxonId const there{shuffled.taxon[t]};
      ASSERT_EQ(graph.route_count(here), other.route_count(there));
      if (graph.route_count(here) > 0) {
        ASSERT_EQ(graph.position_of(here), other.position_of(there));
      }
      auto const routes = graph.routes_to(here, 50);
      auto mapped = routes.routes;
      for (auto& route : mapped) {
        for (auto& lead : route) lead.couplet.index = shuffled.couplet[lead.couplet.index];
      }
      ASSERT_EQ(mapped, other.routes_to(there, 50).routes);
    }
    ASSERT_EQ(graph.cycles().size(), other.cycles().size());
  }
}

}  // namespace
}  // namespace keydrift
