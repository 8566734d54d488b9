// Chances and costs along routes.  Oracles: tables of (1 - p)^m and of the means over even keys and
// combs, computed apart; closed forms; and every route of random keys walked one by one.

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

#include "edition_builder.hpp"
#include "keydrift/key/numbers.hpp"

namespace keydrift {
namespace {

using test::CoupletSketch;
using test::make_edition;

// n taxa; couplet i parts taxon i from the rest.
Edition comb_of_taxa(std::uint32_t taxa) {
  Edition edition;
  edition.taxa.resize(taxa);
  edition.couplets.resize(taxa - 1);
  for (std::uint32_t c = 0; c + 1 < taxa; ++c) {
    auto& leads = edition.couplets[c].leads;
    leads.resize(2);
    leads[0].destination = ToTaxa{{TaxonId{c}}};
    if (c + 2 < taxa) {
      leads[1].destination = ToCouplet{CoupletId{c + 1}};
    } else {
      leads[1].destination = ToTaxa{{TaxonId{c + 1}}};
    }
  }
  edition.parts.push_back({});
  return edition;
}

// 2^levels taxa: couplet i leads to 2i + 1 and 2i + 2.
Edition even(std::uint32_t levels) {
  Edition edition;
  auto const couplets = (std::uint32_t{1} << levels) - 1;
  edition.taxa.resize(couplets + 1);
  edition.couplets.resize(couplets);
  for (std::uint32_t c = 0; c < couplets; ++c) {
    auto& leads = edition.couplets[c].leads;
    leads.resize(2);
    for (std::uint32_t l = 0; l < 2; ++l) {
      auto const next = 2 * c + 1 + l;
      if (next < couplets) {
        leads[l].destination = ToCouplet{CoupletId{next}};
      } else {
        leads[l].destination = ToTaxa{{TaxonId{next - couplets}}};
      }
    }
  }
  edition.parts.push_back({});
  return edition;
}

std::vector<double> chances(Edition const& edition, double error) {
  std::vector<double> const errors(edition.couplets.size(), error);
  return chances_of_right(edition, KeyGraph{edition}, errors);
}
double mean(std::vector<double> const& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

struct PowersRow {
  double error;
  std::vector<double> powers;  // (1 - error)^m for m = 3, 4, 5, 7, 10, 15, 20, 31
};

class Powers : public testing::TestWithParam<PowersRow> {};

// The last taxon but one of a comb has all its couplets to pass.
TEST_P(Powers, AreTheChancesAlongAComb) {
  auto const& row = GetParam();
  auto const of = chances(comb_of_taxa(33), row.error);
  std::vector<std::size_t> const steps{3, 4, 5, 7, 10, 15, 20, 31};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    EXPECT_NEAR(of[steps[i] - 1], row.powers[i], 5.001e-5) << steps[i];
  }
}

INSTANTIATE_TEST_SUITE_P(
    ExpectedRight, Powers,
    testing::Values(PowersRow{.01, {.9703, .9606, .9510, .9321, .9044, .8601, .8179, .7323}},
                    PowersRow{.02, {.9412, .9224, .9039, .8681, .8171, .7386, .6676, .5346}},
                    PowersRow{.05, {.8574, .8145, .7738, .6983, .5987, .4633, .3585, .2039}},
                    PowersRow{.10, {.7290, .6561, .5905, .4783, .3487, .2059, .1216, .0382}},
                    PowersRow{.21, {.4930, .3895, .3077, .1920, .0947, .0291, .0090, .0007}}),
    [](auto const& row) {
      return "Error" + std::to_string(static_cast<int>(std::lround(row.param.error * 100)));
    });

TEST(ExpectedRight, HasTheMeansOfEvenKeysAndCombs) {
  struct Means {
    std::uint32_t levels;
    double error;
    double even;
    double comb;
  };
  for (auto const& row : {Means{3, .01, .970299, .957199}, Means{3, .05, .857375, .803741},
                          Means{3, .10, .729000, .646703}, Means{4, .01, .960596, .919643},
                          Means{4, .05, .814506, .666297}, Means{4, .10, .656100, .459554},
                          Means{5, .01, .950990, .851071}, Means{5, .05, .773781, .479052},
                          Means{5, .10, .590490, .271712}}) {
    auto const taxa = std::uint32_t{1} << row.levels;
    EXPECT_NEAR(mean(chances(even(row.levels), row.error)), row.even, 5.001e-7);
    auto const combed = mean(chances(comb_of_taxa(taxa), row.error));
    EXPECT_NEAR(combed, row.comb, 5.001e-7);
    // [(q - q^n) / (1 - q) + q^(n-1)] / n
    auto const q = 1 - row.error;
    auto const n = static_cast<double>(taxa);
    EXPECT_NEAR(combed, ((q - std::pow(q, n)) / (1 - q) + std::pow(q, n - 1)) / n, 1e-12);
  }
}

TEST(ExpectedRight, MultipliesUnequalRates) {
  std::vector<double> const errors{.05, .02, .10};
  auto const edition = comb_of_taxa(4);
  auto const of = chances_of_right(edition, KeyGraph{edition}, errors);
  EXPECT_NEAR(of[3], .8379, 1e-12);
  EXPECT_NEAR(of[0], .95, 1e-12);
}

TEST(ExpectedRight, IsOneWithoutErrorsAndNoughtWithNothingElse) {
  EXPECT_EQ(chances(comb_of_taxa(5), 0), (std::vector<double>{1, 1, 1, 1, 1}));
  EXPECT_EQ(chances(comb_of_taxa(5), 1), (std::vector<double>{0, 0, 0, 0, 0}));
}

TEST(ExpectedRight, IsNoNumberForTaxaThatNothingLeadsTo) {
  auto const edition = make_edition("k", {{"1", {{"a", "A"}, {"b", "B"}}},  //
                                          {"2", {{"a", "C"}, {"b", "A"}}}});
  auto const of = chances(edition, .1);
  EXPECT_NEAR(of[0], .9, 1e-12);
  EXPECT_NEAR(of[1], .9, 1e-12);
  EXPECT_TRUE(std::isnan(of[2]));
}

// Couplets lead to later ones or to taxa, so that routes meet; some couplets have three leads.
Edition random_reticulate(std::mt19937& random) {
  std::vector<CoupletSketch> couplets;
  auto const pick = [&](int from, int to) {
    return std::uniform_int_distribution<int>{from, to}(random);
  };
  int const n = pick(3, 9);
  for (int i = 1; i <= n; ++i) {
    CoupletSketch couplet{std::to_string(i), {}};
    for (int l = pick(2, 3); l > 0; --l) {
      bool const ends = i == n || pick(0, 2) == 0;
      couplet.leads.push_back(
          {"x", ends ? "T" + std::to_string(pick(1, 5)) : std::to_string(pick(i + 1, n))});
    }
    couplets.push_back(std::move(couplet));
  }
  return make_edition("k", couplets);
}

TEST(RouteMeans, AreThoseOfAllRoutesWalkedOneByOne) {
  std::mt19937 random{20240917};
  std::size_t compared = 0;
  for (int round = 0; round < 200; ++round) {
    auto const edition = random_reticulate(random);
    KeyGraph const graph{edition};
    std::vector<double> errors, costs;
    for (std::size_t i = 0; i < edition.couplets.size(); ++i) {
      errors.push_back(std::uniform_real_distribution<>{0, 1}(random));
      costs.push_back(std::uniform_real_distribution<>{0, 8}(random));
    }
    auto const chance = chances_of_right(edition, graph, errors);
    auto const cost = mean_route_costs(edition, graph, costs);
    for (TaxonId t; t.index < edition.taxa.size(); ++t.index) {
      auto const routes = graph.routes_to(t, 100'000);
      ASSERT_TRUE(routes.complete);
      double product = 0, sum = 0;
      for (auto const& route : routes.routes) {
        double along = 1;
        for (auto const lead : route) {
          along *= 1 - errors[lead.couplet.index];
          sum += costs[lead.couplet.index];
        }
        product += along;
      }
      if (routes.routes.empty()) {
        EXPECT_TRUE(std::isnan(chance[t.index]));
        EXPECT_TRUE(std::isnan(cost[t.index]));
        continue;
      }
      auto const n = static_cast<double>(routes.routes.size());
      EXPECT_NEAR(chance[t.index], product / n, 1e-9);
      EXPECT_NEAR(cost[t.index], sum / n, 1e-9);
      ++compared;
    }
  }
  EXPECT_GT(compared, 500U);
}

TEST(RouteMeans, FollowALongCombWithoutRunningDeep) {
  auto const edition = comb_of_taxa(200'001);
  KeyGraph const graph{edition};
  std::vector<double> const errors(edition.couplets.size(), 5e-6);
  auto const chance = chances_of_right(edition, graph, errors);
  EXPECT_NEAR(chance.back(), std::exp(-1), 1e-5);
  auto const numbers = key_numbers(edition, graph);
  ASSERT_TRUE(numbers);
  EXPECT_EQ(numbers->longest_route, 200'000U);
  EXPECT_NEAR(numbers->mean_route.value(), 200'002.0 / 2 - 1 / 200'001.0, 1e-3);
}

// --- frequencies -------------------------------------------------------------------------------

TEST(FrequencyNumbers, LetACombBeatAnEvenKeyWhereOneTaxonDominates) {
  std::vector<double> const weights{.55, .15, .1, .1, .05, .05};
  auto const combed = comb_of_taxa(6);
  auto const of_comb = frequency_numbers(combed, KeyGraph{combed}, weights);
  ASSERT_TRUE(of_comb);
  EXPECT_NEAR(of_comb->mean_route, 2.05, 1e-12);
  EXPECT_NEAR(of_comb->huffman_bound, 2.00, 1e-12);
  EXPECT_NEAR(of_comb->entropy, 1.981496, 5e-7);
  EXPECT_NEAR(of_comb->entropy_bound, 1.981496, 5e-7);
  EXPECT_EQ(of_comb->taxa, 6U);
  EXPECT_NEAR(of_comb->total, 1, 1e-12);

  // Depths 2, 2, 3, 3, 3, 3.
  auto const key = make_edition("k", {{"1", {{"a", "2"}, {"b", "3"}}},
                                      {"2", {{"a", "A"}, {"b", "4"}}},
                                      {"3", {{"a", "B"}, {"b", "5"}}},
                                      {"4", {{"a", "C"}, {"b", "D"}}},
                                      {"5", {{"a", "E"}, {"b", "F"}}}});
  KeyGraph const graph{key};
  EXPECT_NEAR(frequency_numbers(key, graph, weights)->mean_route, 2.30, 1e-12);
  std::vector<double> const deep{.05, .05, .55, .15, .1, .1};
  EXPECT_NEAR(frequency_numbers(key, graph, deep)->mean_route, 2.90, 1e-12);
}

TEST(FrequencyNumbers, DoNotDependOnTheScaleOfTheWeights) {
  auto const edition = comb_of_taxa(6);
  KeyGraph const graph{edition};
  std::vector<double> const counts{110, 30, 20, 20, 10, 10};
  auto const numbers = frequency_numbers(edition, graph, counts);
  ASSERT_TRUE(numbers);
  EXPECT_NEAR(numbers->mean_route, 2.05, 1e-12);
  EXPECT_NEAR(numbers->entropy, 1.981496, 5e-7);
  EXPECT_NEAR(numbers->total, 200, 1e-12);
}

TEST(FrequencyNumbers, DivideTheEntropyByTheWidthOfTheCoupletsAnswered) {
  auto const edition = make_edition("k", {{"1", {{"a", "A"}, {"b", "B"}, {"c", "C"}, {"d", "D"}}}});
  std::vector<double> const weights{1, 1, 1, 1};
  auto const numbers = frequency_numbers(edition, KeyGraph{edition}, weights);
  ASSERT_TRUE(numbers);
  EXPECT_NEAR(numbers->entropy, 2, 1e-12);
  EXPECT_NEAR(numbers->entropy_bound, 1, 1e-12);
}

TEST(FrequencyNumbers, LeaveOutWhatIsNeverMetWithAndDoNotExistForNothing) {
  auto const edition = comb_of_taxa(4);
  KeyGraph const graph{edition};
  std::vector<double> const some{0, 3, 1, 0};
  auto const numbers = frequency_numbers(edition, graph, some);
  ASSERT_TRUE(numbers);
  EXPECT_EQ(numbers->taxa, 2U);
  EXPECT_NEAR(numbers->mean_route, (2 * 3 + 3) / 4.0, 1e-12);
  std::vector<double> const none{0, 0, 0, 0};
  EXPECT_FALSE(frequency_numbers(edition, graph, none));
}

TEST(FrequencyNumbers, DoNotExistWhereTaxaStandBehindACircle) {
  auto const edition =
      make_edition("k", {{"1", {{"a", "A"}, {"b", "2"}}}, {"2", {{"a", "1"}, {"b", "B"}}}});
  std::vector<double> const weights{1, 1};
  EXPECT_FALSE(frequency_numbers(edition, KeyGraph{edition}, weights));
}

TEST(Entropy, IsShannons) {
  std::vector<double> const dyadic{.5, .25, .125, .125};
  EXPECT_NEAR(entropy(dyadic), 1.75, 1e-12);
  std::vector<double> const scaled{4, 2, 1, 1, 0};
  EXPECT_NEAR(entropy(scaled), 1.75, 1e-12);
  std::vector<double> const one{7};
  EXPECT_EQ(entropy(one), 0);
  EXPECT_EQ(entropy({}), 0);
}

}  // namespace
}  // namespace keydrift
