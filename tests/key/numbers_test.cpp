// Oracles: the closed forms for combs and most even keys, and sums worked out by hand.

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "edition_builder.hpp"
#include "keydrift/key/numbers.hpp"

namespace keydrift {
namespace {

using test::CoupletSketch;
using test::make_edition;

KeyNumbers numbers_of(Edition const& edition) {
  auto const numbers = key_numbers(edition, KeyGraph{edition});
  EXPECT_TRUE(numbers.has_value());
  return numbers.value_or(KeyNumbers{});
}

// A dichotomous key of `taxa` terminals, each couplet parting n taxa into share(n) and the rest.
template <class Share>
Edition parted(std::size_t taxa, Share share) {
  Edition edition;
  edition.taxa.resize(taxa);
  struct Task {
    std::uint32_t couplet;
    std::uint32_t first;
    std::size_t size;
  };
  edition.couplets.emplace_back();
  std::vector<Task> tasks{{0, 0, taxa}};
  while (!tasks.empty()) {
    auto const task = tasks.back();
    tasks.pop_back();
    auto const left = static_cast<std::uint32_t>(share(task.size));
    std::vector<Lead> leads(2);
    auto const end_in = [&](Lead& lead, std::uint32_t first, std::size_t size) {
      if (size == 1) {
        lead.destination = ToTaxa{{TaxonId{first}}};
        return;
      }
      auto const couplet = static_cast<std::uint32_t>(edition.couplets.size());
      lead.destination = ToCouplet{CoupletId{couplet}};
      edition.couplets.emplace_back();
      tasks.push_back({couplet, first, size});
    };
    end_in(leads[0], task.first, left);
    end_in(leads[1], task.first + left, task.size - left);
    edition.couplets[task.couplet].leads = std::move(leads);
  }
  edition.parts.push_back({});
  return edition;
}

constexpr double kRounded = 5.001e-5;  // the table has four decimals

struct NumbersRow {
  std::size_t taxa;
  double even_sum;
  double even_mean;
  double log2;
  double comb_sum;
  double comb_mean;
  std::size_t even_depth;
  double colless_comb;
};

class Lengths : public testing::TestWithParam<NumbersRow> {};

TEST_P(Lengths, OfTheMostEvenKeyAreTheLeast) {
  auto const& row = GetParam();
  auto const numbers = numbers_of(parted(row.taxa, [](std::size_t n) { return n / 2; }));
  EXPECT_EQ(numbers.terminals, row.taxa);
  EXPECT_EQ(numbers.couplets, row.taxa - 1);
  EXPECT_EQ(numbers.leads, 2 * (row.taxa - 1));
  EXPECT_EQ(numbers.terminal_ends, row.taxa);
  EXPECT_NEAR(numbers.mean_route.value() * static_cast<double>(row.taxa), row.even_sum, 1e-6);
  EXPECT_NEAR(numbers.mean_route.value(), row.even_mean, kRounded);
  EXPECT_NEAR(numbers.huffman_bound, row.even_mean, kRounded);
  EXPECT_NEAR(numbers.entropy_bound, row.log2, kRounded);
  EXPECT_EQ(numbers.longest_route, row.even_depth);
  if (row.taxa > 3) {
    EXPECT_NEAR(numbers.evenness.value(), 1, 1e-9);
  }
  EXPECT_NEAR(numbers.root_share,
              std::floor(static_cast<double>(row.taxa) / 2) / static_cast<double>(row.taxa), 1e-12);
}

TEST_P(Lengths, OfACombAreTheGreatest) {
  auto const& row = GetParam();
  auto const numbers = numbers_of(parted(row.taxa, [](std::size_t) { return 1; }));
  EXPECT_NEAR(numbers.mean_route.value() * static_cast<double>(row.taxa), row.comb_sum, 1e-6);
  EXPECT_NEAR(numbers.mean_route.value(), row.comb_mean, kRounded);
  EXPECT_EQ(numbers.longest_route, row.taxa - 1);
  EXPECT_EQ(numbers.shortest_route, 1U);
  EXPECT_EQ(numbers.comb_couplets, row.taxa - 1);
  EXPECT_NEAR(numbers.root_share, 1 / static_cast<double>(row.taxa), 1e-12);
  if (row.taxa > 3) {
    EXPECT_NEAR(numbers.evenness.value(), 0, 1e-9);
    EXPECT_NEAR(numbers.colless.value(), 1, 1e-12);
  } else {  // the comb is the most even key as well
    EXPECT_FALSE(numbers.evenness);
    EXPECT_FALSE(numbers.colless);
  }
}

TEST_P(Lengths, BoundsAreThoseOfHuffmansCode) {
  auto const& row = GetParam();
  std::vector<double> const equal(row.taxa, 1);
  EXPECT_NEAR(huffman_mean(equal), row.even_mean, kRounded);
}

INSTANTIATE_TEST_SUITE_P(
    Numbers, Lengths,
    testing::Values(NumbersRow{2, 2, 1.0000, 1.0000, 2, 1.0000, 1, 0},
                    NumbersRow{3, 5, 1.6667, 1.5850, 5, 1.6667, 2, 1},
                    NumbersRow{4, 8, 2.0000, 2.0000, 9, 2.2500, 2, 3},
                    NumbersRow{5, 12, 2.4000, 2.3219, 14, 2.8000, 3, 6},
                    NumbersRow{6, 16, 2.6667, 2.5850, 20, 3.3333, 3, 10},
                    NumbersRow{7, 20, 2.8571, 2.8074, 27, 3.8571, 3, 15},
                    NumbersRow{8, 24, 3.0000, 3.0000, 35, 4.3750, 3, 21},
                    NumbersRow{10, 34, 3.4000, 3.3219, 54, 5.4000, 4, 36},
                    NumbersRow{16, 64, 4.0000, 4.0000, 135, 8.4375, 4, 105},
                    NumbersRow{20, 88, 4.4000, 4.3219, 209, 10.4500, 5, 171},
                    NumbersRow{32, 160, 5.0000, 5.0000, 527, 16.4688, 5, 465},
                    NumbersRow{50, 286, 5.7200, 5.6439, 1274, 25.4800, 6, 1176},
                    NumbersRow{100, 672, 6.7200, 6.6439, 5049, 50.4900, 7, 4851},
                    NumbersRow{1000, 9976, 9.9760, 9.9658, 500499, 500.4990, 10, 498501}),
    [](auto const& row) { return "Of" + std::to_string(row.param.taxa) + "Taxa"; });

struct Weights {
  char const* name;
  std::vector<double> weights;
  double entropy;
  double dichotomous;
  double trichotomous;
};

class Huffman : public testing::TestWithParam<Weights> {};

TEST_P(Huffman, MeanIsThatOfTheBestKeyForTheWeights) {
  auto const& row = GetParam();
  EXPECT_NEAR(huffman_mean(row.weights), row.dichotomous, 5e-7);
  EXPECT_NEAR(huffman_mean(row.weights, 3), row.trichotomous, 5e-7);
  double entropy = 0;
  for (auto const weight : row.weights) entropy -= weight * std::log2(weight);
  EXPECT_NEAR(entropy, row.entropy, 5e-7);
  EXPECT_GE(huffman_mean(row.weights) + 1e-12, entropy);
  EXPECT_LT(huffman_mean(row.weights), entropy + 1);
}

INSTANTIATE_TEST_SUITE_P(
    Numbers, Huffman,
    testing::Values(Weights{"Dyadic", {.5, .25, .125, .125}, 1.750000, 1.75, 1.25},
                    Weights{"Falling", {.4, .3, .2, .1}, 1.846439, 1.90, 1.30},
                    Weights{"OneCommon", {.7, .1, .1, .05, .05}, 1.456780, 1.60, 1.20},
                    Weights{"OneDominant", {.9, .05, .03, .02}, 0.617543, 1.15, 1.05},
                    Weights{"FiveEqual", {.2, .2, .2, .2, .2}, 2.321928, 2.40, 1.60},
                    Weights{"SixMixed", {.55, .15, .1, .1, .05, .05}, 1.981496, 2.00, 1.40},
                    Weights{"SixFalling", {.36, .18, .15, .13, .10, .08}, 2.392813, 2.46, 1.64},
                    Weights{"SevenEqual",
                            {1 / 7., 1 / 7., 1 / 7., 1 / 7., 1 / 7., 1 / 7., 1 / 7.},
                            2.807355,
                            2.857143,
                            1.857143}),
    [](auto const& row) { return row.param.name; });

TEST(Huffman, MeanDoesNotDependOnTheScaleOrOrderOfTheWeights) {
  std::vector<double> const weights{10, 36, 18, 8, 15, 13};
  EXPECT_NEAR(huffman_mean(weights), 2.46, 1e-12);
}

TEST(Huffman, MeanIsNoughtForFewerThanTwoTaxa) {
  EXPECT_EQ(huffman_mean({}), 0);
  std::vector<double> const one{0.0, 3.0, -1.0, std::nan("")};
  EXPECT_EQ(huffman_mean(one), 0);
}

// Seven people, six couplets; depths 3 3 3 3 3 3 2.
TEST(KeyNumbers, OfAWorkedKeyOfSevenAreThePublishedOnes) {
  auto const numbers = numbers_of(make_edition("k", {{"1", {{"a", "2"}, {"b", "3"}}},
                                                     {"2", {{"a", "4"}, {"b", "5"}}},
                                                     {"3", {{"a", "E"}, {"b", "6"}}},
                                                     {"4", {{"a", "A"}, {"b", "B"}}},
                                                     {"5", {{"a", "C"}, {"b", "D"}}},
                                                     {"6", {{"a", "F"}, {"b", "G"}}}}));
  EXPECT_NEAR(numbers.mean_route.value(), 20.0 / 7, 1e-12);
  EXPECT_NEAR(numbers.evenness.value(), 1, 1e-12);
  EXPECT_EQ(numbers.shortest_route, 2U);
  EXPECT_EQ(numbers.longest_route, 3U);
  EXPECT_EQ(numbers.comb_couplets, 4U);
  // |4-3| at couplet 1, |2-2| at 2, |1-2| at 3, 0 at the others; over 6 * 5 / 2.
  EXPECT_NEAR(numbers.colless.value(), 2.0 / 15, 1e-12);
  EXPECT_NEAR(numbers.root_share, 3.0 / 7, 1e-12);
}

// sum(d - 1) = L - 1 + x: couplets of d leads, L leads that end in a name, x surplus leads in.
TEST(KeyNumbers, FollowTheLawOfCountingInReticulateKeys) {
  auto const numbers = numbers_of(make_edition("k", {{"1", {{"a", "2"}, {"b", "3"}}},
                                                     {"2", {{"a", "A"}, {"b", "4"}}},
                                                     {"3", {{"a", "B"}, {"b", "4"}}},
                                                     {"4", {{"a", "C"}, {"b", "D"}}}}));
  EXPECT_EQ(numbers.couplets, 4U);
  EXPECT_EQ(numbers.terminal_ends, 4U);
  EXPECT_EQ(numbers.reticulations, 1U);
  EXPECT_EQ(numbers.leads - numbers.couplets, numbers.terminal_ends - 1 + numbers.reticulations);
}

TEST(KeyNumbers, FollowTheLawOfCountingWhereTaxaRepeat) {
  auto const numbers = numbers_of(make_edition("k", {{"1", {{"a", "2"}, {"b", "3"}}},
                                                     {"2", {{"a", "A"}, {"b", "B"}}},
                                                     {"3", {{"a", "B"}, {"b", "C"}}}}));
  EXPECT_EQ(numbers.terminals, 3U);
  EXPECT_EQ(numbers.terminal_ends, 4U);
  EXPECT_EQ(numbers.couplets, numbers.terminals - 1 + (numbers.terminal_ends - numbers.terminals));
}

TEST(KeyNumbers, FollowTheLawOfCountingInPolytomousKeys) {
  std::vector<CoupletSketch> couplets;
  int taxa = 0;
  for (int i = 1; i <= 4; ++i) {
    CoupletSketch couplet{std::to_string(i), {}};
    for (int l = 0; l < 3; ++l) {
      couplet.leads.push_back({"x", i == 1 ? std::to_string(l + 2) : "T" + std::to_string(taxa++)});
    }
    couplets.push_back(couplet);
  }
  auto const numbers = numbers_of(make_edition("k", couplets));
  EXPECT_EQ(numbers.terminals, 9U);
  EXPECT_EQ(numbers.couplets, (9U - 1) / (3 - 1));
  EXPECT_EQ(numbers.polytomies, 4U);
  EXPECT_NEAR(numbers.entropy_bound, 2, 1e-12);  // log3 9
  EXPECT_NEAR(numbers.mean_route.value(), 2, 1e-12);
  EXPECT_NEAR(numbers.colless.value(), 0, 1e-12);
  EXPECT_NEAR(numbers.evenness.value(), 1, 1e-12);  // as even as couplets of three leads make it
}

// Several taxa at one end, by hand: {A, B} and {C, D} beside E are weights 2, 2, 1.
TEST(KeyNumbers, TakeTaxaThatTheKeyDoesNotPartForOneEnd) {
  auto edition =
      make_edition("k", {{"1", {{"a", "2"}, {"b", "A"}}}, {"2", {{"a", "E"}, {"b", "C"}}}});
  edition.taxa.resize(5);
  edition.couplets[0].leads[1].destination = ToTaxa{{TaxonId{0}, TaxonId{3}}};
  edition.couplets[1].leads[0].destination = ToTaxa{{TaxonId{1}}};
  edition.couplets[1].leads[1].destination = ToTaxa{{TaxonId{2}, TaxonId{4}}};
  auto const numbers = numbers_of(edition);
  EXPECT_EQ(numbers.terminals, 5U);
  EXPECT_EQ(numbers.unparted_ends, 2U);
  EXPECT_NEAR(numbers.mean_route.value(), 1.6, 1e-12);
  EXPECT_NEAR(numbers.huffman_bound, 1.6, 1e-12);
  EXPECT_NEAR(numbers.entropy_bound, 1.521928, 5e-7);
  EXPECT_FALSE(numbers.evenness);  // three ends
}

// Depths 2 2 2 3 4 4 of six ends; one of the taxa keys out once more by itself.
TEST(KeyNumbers, ArePlainlyUnevenWhereUnpartedTaxaStandHigh) {
  auto edition = make_edition("k", {{"1", {{"a", "2"}, {"b", "3"}}},
                                    {"2", {{"a", "A"}, {"b", "B"}}},
                                    {"3", {{"a", "C"}, {"b", "4"}}},
                                    {"4", {{"a", "D"}, {"b", "5"}}},
                                    {"5", {{"a", "E"}, {"b", "F"}}}});
  edition.taxa.resize(8);
  edition.couplets[1].leads[0].destination = ToTaxa{{TaxonId{0}, TaxonId{5}, TaxonId{6}}};
  edition.couplets[1].leads[1].destination = ToTaxa{{TaxonId{1}, TaxonId{2}}};
  edition.couplets[2].leads[0].destination = ToTaxa{{TaxonId{3}}};
  edition.couplets[3].leads[0].destination = ToTaxa{{TaxonId{4}}};
  edition.couplets[4].leads[0].destination = ToTaxa{{TaxonId{1}}};
  edition.couplets[4].leads[1].destination = ToTaxa{{TaxonId{7}}};
  auto const numbers = numbers_of(edition);
  EXPECT_EQ(numbers.terminals, 8U);
  // 0, 5, 6 at 2; 1 at 2 and 4; 2 at 2; 3 at 2; 4 at 3; 7 at 4.
  EXPECT_NEAR(numbers.mean_route.value(), (3 * 2 + 3 + 2 + 2 + 3 + 4) / 8.0, 1e-12);
  // Weights 3, 1.5, 1, 1, 1, .5: joints 1.5, 2, 3, 5, 8.
  EXPECT_NEAR(numbers.huffman_bound, 19.5 / 8, 1e-12);
  EXPECT_NEAR(numbers.evenness.value(), (20 - 17) / (20 - 16.0), 1e-12);
}

TEST(KeyNumbers, WeighTheWidthOfCoupletsByHowOftenTheyAreAnswered) {
  // Three leads below, two above: a third of the answers is given at the wide couplet.
  auto const numbers = numbers_of(make_edition("k", {{"1", {{"a", "A"}, {"b", "2"}}},
                                                     {"2", {{"a", "B"}, {"b", "3"}}},
                                                     {"3", {{"a", "C"}, {"b", "D"}, {"c", "E"}}}}));
  EXPECT_NEAR(numbers.mean_route.value(), 12 / 5.0, 1e-12);
  auto const width = (9 + 3 * std::log2(3)) / 12;
  EXPECT_NEAR(numbers.entropy_bound, std::log2(5) / width, 1e-12);
  EXPECT_LE(numbers.entropy_bound, numbers.mean_route.value());
  // The even key of such couplets: the wide one above, sums 1 + 2 * 4 and 1 + 2 + 3 * 3.
  EXPECT_NEAR(numbers.evenness.value(), 0, 1e-12);
}

// Whatever the key: nothing that is said to be the least is above what the key itself comes to.
TEST(KeyNumbers, AreNeverBelowTheirBounds) {
  std::mt19937 chance{1948};
  auto const below = [&chance](std::uint32_t n) {
    return static_cast<std::uint32_t>(chance() % n);
  };
  for (int round = 0; round < 400; ++round) {
    bool const wide = round % 2 == 0;
    Edition edition;
    auto const couplets = 1 + below(12);
    auto const taxa = 1 + below(10);
    edition.couplets.resize(couplets);
    edition.taxa.resize(taxa);
    edition.parts.push_back({});
    for (std::uint32_t c = 0; c < couplets; ++c) {
      edition.couplets[c].leads.resize(wide ? 1 + below(4) : 2);
      for (auto& lead : edition.couplets[c].leads) {
        if (c + 1 < couplets && below(2) == 0) {
          lead.destination = ToCouplet{CoupletId{c + 1 + below(couplets - c - 1)}};
        } else if (below(10) > 0) {
          ToTaxa to{{TaxonId{below(taxa)}}};
          if (auto const other = TaxonId{below(taxa)}; below(3) == 0 && other != to.taxa[0]) {
            to.taxa.push_back(other);
          }
          lead.destination = to;
        }
      }
    }
    KeyGraph const graph{edition};
    auto const numbers = key_numbers(edition, graph);
    if (!numbers) continue;
    EXPECT_LE(numbers->entropy_bound, numbers->mean_route.value() + 1e-9) << round;
    if (!wide) {
      EXPECT_LE(numbers->huffman_bound, numbers->mean_route.value() + 1e-9) << round;
      EXPECT_LE(numbers->entropy_bound, numbers->huffman_bound + 1e-9) << round;
    }
    std::vector<double> weights;
    for (std::uint32_t t = 0; t < taxa; ++t) weights.push_back(below(5));
    auto const weighted = frequency_numbers(edition, graph, weights);
    if (!weighted) continue;
    EXPECT_LE(weighted->entropy_bound, weighted->mean_route + 1e-9) << round;
    if (!wide) {
      EXPECT_LE(weighted->huffman_bound, weighted->mean_route + 1e-9) << round;
    }
  }
}

TEST(KeyNumbers, AverageTheSeveralRoutesOfATaxon) {
  // A after one step and after two; B after two.
  auto const numbers = numbers_of(
      make_edition("k", {{"1", {{"a", "A"}, {"b", "2"}}}, {"2", {{"a", "A"}, {"b", "B"}}}}));
  EXPECT_NEAR(numbers.mean_route.value(), (1.5 + 2) / 2, 1e-12);
}

TEST(KeyNumbers, StayFiniteWhereRoutesAreBeyondCounting) {
  Edition edition;
  constexpr std::uint32_t kCouplets = 3000;  // 2^2999 ways
  edition.couplets.resize(kCouplets);
  edition.taxa.resize(2);
  for (std::uint32_t c = 0; c < kCouplets; ++c) {
    auto& leads = edition.couplets[c].leads;
    leads.resize(2);
    for (std::uint32_t l = 0; l < 2; ++l) {
      if (c + 1 < kCouplets) {
        leads[l].destination = ToCouplet{CoupletId{c + 1}};
      } else {
        leads[l].destination = ToTaxa{{TaxonId{l}}};
      }
    }
  }
  edition.parts.push_back({});
  auto const numbers = numbers_of(edition);
  EXPECT_NEAR(numbers.mean_route.value(), kCouplets, 1e-6);
  EXPECT_EQ(numbers.longest_route, kCouplets);
}

TEST(KeyNumbers, CountCoupletsThatRestOnOneStatement) {
  auto edition = make_edition("k", {
                                       {"1", {{"a", "2"}, {"b", "A"}}},
                                       {"2", {{"a", "B"}, {"b", "C"}}},
                                   });
  for (auto& couplet : edition.couplets) {
    for (auto& lead : couplet.leads) lead.statements.resize(1);
  }
  edition.couplets[1].leads[0].statements.resize(2);
  EXPECT_EQ(numbers_of(edition).single_statement_couplets, 1U);
  edition.couplets[1].leads[0].statements[1].strength = Strength::noted;
  EXPECT_EQ(numbers_of(edition).single_statement_couplets, 2U);
}

TEST(KeyNumbers, DoNotExistWithoutATerminalOrAWayToOne) {
  Edition empty;
  EXPECT_FALSE(key_numbers(empty, KeyGraph{empty}).has_value());
  auto const lost = make_edition("k", {{"1", {{"a", ""}, {"b", ""}}}});
  EXPECT_FALSE(key_numbers(lost, KeyGraph{lost}).has_value());
}

// What is behind a circle is reached all the same; what has no length is not averaged.
TEST(KeyNumbers, ReachTaxaBehindACircleAndLeaveOutWhatHangsOnLengths) {
  auto const edition = make_edition("k", {{"1", {{"a", "A"}, {"b", "2"}}},
                                          {"2", {{"a", "B"}, {"b", "3"}}},
                                          {"3", {{"a", "C"}, {"b", "2"}}},
                                          {"4", {{"a", "D"}, {"b", "E"}}}});
  auto const numbers = numbers_of(edition);
  EXPECT_EQ(numbers.terminals, 3U);
  EXPECT_EQ(numbers.beyond_start, 2U);
  EXPECT_EQ(numbers.behind_circles, 2U);
  EXPECT_EQ(numbers.shortest_route, 1U);
  EXPECT_NEAR(numbers.root_share, 1 / 3.0, 1e-12);
  EXPECT_FALSE(numbers.longest_route);
  EXPECT_FALSE(numbers.mean_route);
  EXPECT_FALSE(numbers.evenness);
  EXPECT_FALSE(numbers.colless);
}

TEST(KeyNumbers, ReachTaxaFromAStartThatIsOnACircle) {
  auto const numbers = numbers_of(
      make_edition("k", {{"1", {{"a", "2"}, {"b", "2"}}}, {"2", {{"a", "1"}, {"b", "A"}}}}));
  EXPECT_EQ(numbers.terminals, 1U);
  EXPECT_EQ(numbers.behind_circles, 1U);
  EXPECT_EQ(numbers.shortest_route, 2U);
  EXPECT_EQ(numbers.beyond_start, 0U);
}

TEST(KeyNumbers, AreWholeWhereNoTaxonStandsBehindTheCircle) {
  // Couplet 2 leads to itself and to nothing; 3 and 4 go round, but no lead leads there.
  auto const numbers = numbers_of(make_edition("k", {{"1", {{"a", "2"}, {"b", "A"}}},
                                                     {"2", {{"a", "2"}, {"b", ""}}},
                                                     {"3", {{"a", "4"}, {"b", "B"}}},
                                                     {"4", {{"a", "3"}, {"b", "C"}}}}));
  EXPECT_EQ(numbers.terminals, 1U);
  EXPECT_EQ(numbers.beyond_start, 2U);
  EXPECT_EQ(numbers.behind_circles, 0U);
  EXPECT_EQ(numbers.longest_route, 1U);
  EXPECT_NEAR(numbers.mean_route.value(), 1, 1e-12);
}

TEST(KeyNumbers, OfAKeyOfOneTaxonAreFinite) {
  auto const numbers = numbers_of(make_edition("k", {{"1", {{"a", "A"}, {"b", "A"}}}}));
  EXPECT_EQ(numbers.terminals, 1U);
  EXPECT_EQ(numbers.mean_route, 1);
  EXPECT_EQ(numbers.entropy_bound, 0);
  EXPECT_EQ(numbers.huffman_bound, 0);
  EXPECT_FALSE(numbers.evenness);
  EXPECT_FALSE(numbers.colless);
  EXPECT_EQ(numbers.root_share, 1);
}

}  // namespace
}  // namespace keydrift
