// Statements that no lexicon covers: what contrasts, what is the same, what order must not matter.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <random>

#include "edition_builder.hpp"
#include "reading_support.hpp"

namespace keydrift::test {
namespace {

using Leads = std::vector<std::string>;

struct CoupletCase {
  Leads leads;
  Leads say;
};

class OpaqueCouplets : public testing::TestWithParam<CoupletCase> {};

TEST_P(OpaqueCouplets, MakeCharactersOfWhatContrasts) {
  EXPECT_EQ(readings_of(GetParam().leads, Lexicon{}), GetParam().say);
}

std::vector<CoupletCase> const kCouplets{
    // the same structure
    {{"Leaves flat", "Leaves rolled"},
     {"~leaves flat = leaves flat", "~leaves flat = leaves rolled"}},
    {{"Leaves rolled", "Leaves flat"},
     {"~leaves flat = leaves rolled", "~leaves flat = leaves flat"}},
    {{"Leaf margin entire", "Margin of leaf toothed"},
     {"~leaf margin entire = leaf margin entire", "~leaf margin entire = margin of leaf toothed"}},
    {{"Leaves flat; stem winged", "Stem round; leaves rolled"},
     {"~leaves flat = leaves flat & ~stem round = stem winged",
      "~stem round = stem round & ~leaves flat = leaves rolled"}},
    {{"Wings clear; legs black", "Wings dark; legs red"},
     {"~wings clear = wings clear & ~legs black = legs black",
      "~wings clear = wings dark & ~legs black = legs red"}},
    // the same position, where nothing names a structure
    {{"Annual", "Perennial"}, {"~annual = annual", "~annual = perennial"}},
    {{"Aquatic; leaves flat", "Terrestrial; leaves rolled"},
     {"~aquatic = aquatic & ~leaves flat = leaves flat",
      "~aquatic = terrestrial & ~leaves flat = leaves rolled"}},
    // nothing contrasts
    {{"Leaves flat", "Stem winged"}, {"~leaves flat = leaves flat", "~stem winged = stem winged"}},
    {{"Leaves flat; stem winged", "Leaves rolled"},
     {"~leaves flat = leaves flat & ~stem winged = stem winged", "~leaves flat = leaves rolled"}},
    {{"Leaves flat", "Leaf sheaths open"},
     {"~leaves flat = leaves flat", "~leaf sheaths open = leaf sheaths open"}},
    // one and the same
    {{"Leaves flat", "Leaves flat"}, {"~leaves flat = leaves flat", "~leaves flat = leaves flat"}},
    // negation
    {{"Leaves flat", "Leaves not flat"},
     {"~leaves flat = leaves flat", "~leaves flat ≠ leaves flat"}},
    // a denial denies what it contrasts with
    {{"Body with metallic reflections", "Body not metallic"},
     {"~body metallic = body with metallic reflections",
      "~body metallic ≠ body metallic|body with metallic reflections"}},
    {{"Antennes dépassant la base du pronotum", "Antennes n’atteignant pas la base du pronotum"},
     {"~antennes atteignant base du pronotum = antennes dépassant base du pronotum",
      "~antennes atteignant base du pronotum ≠ antennes atteignant base du pronotum|antennes "
      "dépassant base du pronotum"}},
    // "not" of something that is said of the part is no denial of the whole
    {{"Wings fully developed", "Wings reduced to pads not reaching abdomen"},
     {"~wings fully developed = wings fully developed",
      "~wings fully developed = wings reduced to pads not reaching abdomen"}},
    {{"Petals of outer whorl hairy", "Petals of outer whorl not hairy"},
     {"~petals of outer whorl hairy = petals of outer whorl hairy",
      "~petals of outer whorl hairy ≠ petals of outer whorl hairy"}},
    // three leads
    {{"Flowers red", "Flowers green", "Flowers blue"},
     {"~flowers blue = flowers red", "~flowers blue = flowers green",
      "~flowers blue = flowers blue"}},
    // commas
    {{"Leaves flat, glaucous", "Leaves rolled, green"},
     {"~leaves flat = leaves flat & ~leaves glaucous = leaves glaucous",
      "~leaves flat = leaves rolled & ~leaves glaucous = leaves green"}},
    {{"Leaves ovate, elliptic or round", "Leaves linear"},
     {"~leaves linear = leaves ovate elliptic or round", "~leaves linear = leaves linear"}},
    {{"Leaves densely, finely hairy", "Leaves glabrous"},
     {"~leaves densely finely hairy = leaves densely finely hairy",
      "~leaves densely finely hairy = leaves glabrous"}},
    {{"Leaves flat (at least the lower)", "Leaves rolled"},
     {"~leaves flat at least lower = leaves flat at least lower",
      "~leaves flat at least lower = leaves rolled"}},
    // what is carried over a comma, and what is not
    {{"Eyes large, separated by a ridge", "Eyes small, contiguous"},
     {"~eyes large = eyes large & ~eyes contiguous = eyes separated by ridge",
      "~eyes large = eyes small & ~eyes contiguous = eyes contiguous"}},
    {{"Seeds 2; endocarp thick", "Seeds 5; endocarp thin"},
     {"~n:seed|1 2 & ~endocarp thick = endocarp thick",
      "~n:seed|1 5 & ~endocarp thick = endocarp thin"}},
    // either … or
    {{"Either leaves flat or stem winged", "Leaves rolled; stem round"},
     {"~leaves flat = leaves flat or ~stem winged = stem winged",
      "~leaves rolled = leaves rolled & ~stem round = stem round"}},
    // the contrary of the other lead
    {{"Leaves flat; stem winged", "Not as above"},
     {"~leaves flat = leaves flat & ~stem winged = stem winged",
      "~leaves flat ≠ leaves flat or ~stem winged ≠ stem winged"}},
    {{"Leaves flat; spike 2–3 cm long", "Without the above combination of characters"},
     {"~leaves flat = leaves flat & ~n:spike length|mm 20–30 mm",
      "~leaves flat ≠ leaves flat or ~n:spike length|mm not 20–30 mm"}},
    {{"Leaves usually flat", "Not as above"},
     {"~leaves flat = leaves flat [usually]",
      "~not as above (leaves flat) = not as above (leaves flat)"}},
    // counts against words
    {{"Culms three-sided", "Culms round"},
     {"~culms round = culms three sided", "~culms round = culms round"}},
    {{"Flowers of one sex", "Flowers with both sexes"},
     {"~flowers of one sex = flowers of one sex", "~flowers of one sex = flowers with both sexes"}},
    {{"Stamens 2", "Stamens 3"}, {"~n:stamen|1 2", "~n:stamen|1 3"}},
    {{"Stamens 2; nuts smooth", "Nuts ridged"},
     {"~n:stamen|1 2 & ~nuts ridged = nuts smooth", "~nuts ridged = nuts ridged"}},
    {{"Bract longer than the spike", "Bract outtopped by the spike"},
     {"~bract longer than spike = bract longer than spike",
      "~bract longer than spike = bract outtopped by spike"}},
    // a bare figure
    {{"Plants 20 cm", "Plants more than 30 cm tall"},
     {"~n:plant height|mm 200 mm", "~n:plant height|mm >300 mm"}},
    {{"Spike 20 mm", "Spike 2 mm wide"}, {"~n:spike length|mm 20 mm", "~n:spike width|mm 2 mm"}},
};

INSTANTIATE_TEST_SUITE_P(Leads, OpaqueCouplets, testing::ValuesIn(kCouplets));

// --- over couplets and editions ----------------------------------------------------------------

TEST(OpaqueCharacters, AreTiedAcrossCoupletsByEqualWords) {
  auto edition =
      make_edition("test", {{"1", {{"Leaves flat", "2"}, {"Leaves rolled", "Aus"}}},
                            {"2", {{"Stem winged", "Bus"}, {"Leaves flat!", "3"}}},
                            {"3", {{"Leaves rolled", "Cus"}, {"Leaves folded", "Dus"}}}});
  read_statements(edition, Lexicon{});
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements), "~leaves flat = leaves flat");
  EXPECT_EQ(said(edition.couplets[1].leads[1].statements), "~leaves flat = leaves flat");
  EXPECT_EQ(said(edition.couplets[2].leads[0].statements), "~leaves flat = leaves rolled");
  EXPECT_EQ(said(edition.couplets[2].leads[1].statements), "~leaves flat = leaves folded");
}

TEST(OpaqueCharacters, AreTiedAcrossEditionsByEqualWords) {
  auto older = couplet_of({"Leaves flat", "Leaves rolled"});
  auto newer = couplet_of({"Leaves flat", "Leaves folded"});
  std::array<Edition*, 2> const both{&older, &newer};
  read_statements(both, Lexicon{});
  EXPECT_EQ(said(older.couplets[0].leads[1].statements), "~leaves flat = leaves rolled");
  EXPECT_EQ(said(newer.couplets[0].leads[1].statements), "~leaves flat = leaves folded");
}

TEST(OpaqueCharacters, NeverHoldTwoStatementsOfOneLead) {
  // The second couplet would tie what the first states side by side.
  auto edition =
      make_edition("test", {{"1", {{"Leaves flat; leaves hairy", "2"}, {"Leaves rolled", "Aus"}}},
                            {"2", {{"Leaves flat", "Bus"}, {"Leaves hairy", "Cus"}}}});
  read_statements(edition, Lexicon{});
  auto const& together = edition.couplets[0].leads[0].statements;
  ASSERT_EQ(together.size(), 2U);
  EXPECT_NE(together[0].any_of[0].character, together[1].any_of[0].character);
}

TEST(OpaqueCharacters, DoNotTieNotAsAboveOverCouplets) {
  auto edition =
      make_edition("test", {{"1", {{"Leaves usually flat", "2"}, {"Otherwise", "Aus"}}},
                            {"2", {{"Stem usually winged", "Bus"}, {"Otherwise", "Cus"}}}});
  read_statements(edition, Lexicon{});
  EXPECT_NE(edition.couplets[0].leads[1].statements[0].any_of[0].character,
            edition.couplets[1].leads[1].statements[0].any_of[0].character);
}

// The words that a lexicon leaves unread decide when they alone contrast.
TEST(PartlyReadStatements, KeepTheWordsThatDecide) {
  auto const lexicon = plant_lexicon();
  EXPECT_EQ(readings_of({"Beak deeply bifid", "Beak shallowly bifid"}, lexicon),
            (Leads{"beak-tip = bifid & ~beak deeply bifid = beak deeply bifid",
                   "beak-tip = bifid & ~beak deeply bifid = beak shallowly bifid"}));
  EXPECT_EQ(readings_of({"Beak deeply bifid", "Beak entire"}, lexicon),
            (Leads{"beak-tip = bifid", "beak-tip = entire"}));
  EXPECT_EQ(readings_of({"Leaves crowded flat", "Leaves distant inrolled"}, lexicon),
            (Leads{"leaf-section = flat & ~leaves crowded flat = leaves crowded flat",
                   "leaf-section = inrolled & ~leaves crowded flat = leaves distant inrolled"}));
  EXPECT_EQ(readings_of({"Leaves flat with reddish veins", "Leaves inrolled"}, lexicon),
            (Leads{"leaf-section = flat & ~with reddish veins = with reddish veins",
                   "leaf-section = inrolled"}));
}

// --- properties --------------------------------------------------------------------------------

// Keys of random couplets from a small stock of statements, so that ties and clashes abound.
class RandomKeys {
 public:
  explicit RandomKeys(std::uint32_t seed) : random_{seed} {}

  std::vector<CoupletSketch> couplets(std::size_t count) {
    std::vector<CoupletSketch> sketches;
    for (std::size_t i = 0; i < count; ++i) {
      CoupletSketch sketch{.label = std::to_string(i + 1), .leads = {}};
      auto const leads = pick(5) == 0 ? 3U : 2U;
      for (unsigned lead = 0; lead < leads; ++lead) {
        std::string text = statement();
        for (auto more = pick(3); more > 0; --more) text += "; " + statement();
        sketch.leads.push_back({text, "Taxon" + std::to_string(i * 3 + lead)});
      }
      sketches.push_back(sketch);
    }
    return sketches;
  }
  std::mt19937& random() { return random_; }
  std::size_t pick(std::size_t below) { return random_() % below; }

 private:
  std::string statement() {
    static std::vector<std::string> const kParts{"leaves", "stem",     "leaf margin",  "wings",
                                                 "legs",   "carapace", "lower leaves", "spike"};
    static std::vector<std::string> const kStates{
        "flat",  "rolled",       "hairy",  "not hairy", "usually winged",   "3 mm long",
        "black", "red or black", "entire", "10–12",     "longer than wide", "with a ridge"};
    return kParts[pick(kParts.size())] + " " + kStates[pick(kStates.size())];
  }
  std::mt19937 random_;
};

std::string all_said(Edition const& edition, std::size_t couplet) {
  std::string text;
  for (auto const& lead : edition.couplets[couplet].leads) text += said(lead.statements) + "\n";
  return text;
}

TEST(ReadingProperties, DoNotHangOnTheOrderOfCouplets) {
  RandomKeys keys{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed())};
  for (int round = 0; round < 40; ++round) {
    auto const sketches = keys.couplets(12);
    std::vector<std::size_t> order(sketches.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::shuffle(order.begin(), order.end(), keys.random());
    std::vector<CoupletSketch> shuffled;
    for (auto const i : order) shuffled.push_back(sketches[i]);
    auto plain = make_edition("plain", sketches);
    auto mixed = make_edition("mixed", shuffled);
    read_statements(plain, Lexicon{});
    read_statements(mixed, Lexicon{});
    for (std::size_t i = 0; i < order.size(); ++i) {
      ASSERT_EQ(all_said(mixed, i), all_said(plain, order[i])) << "round " << round;
    }
  }
}

TEST(ReadingProperties, DoNotHangOnTheOrderOfEditions) {
  RandomKeys keys{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed()) + 1};
  for (int round = 0; round < 40; ++round) {
    auto first = make_edition("first", keys.couplets(8));
    auto second = make_edition("second", keys.couplets(8));
    auto first_again = first;
    auto second_again = second;
    std::array<Edition*, 2> const one_way{&first, &second};
    std::array<Edition*, 2> const other_way{&second_again, &first_again};
    read_statements(one_way, Lexicon{});
    read_statements(other_way, Lexicon{});
    for (std::size_t i = 0; i < first.couplets.size(); ++i) {
      ASSERT_EQ(all_said(first, i), all_said(first_again, i)) << "round " << round;
      ASSERT_EQ(all_said(second, i), all_said(second_again, i)) << "round " << round;
    }
  }
}

TEST(ReadingProperties, DoNotHangOnTheOrderOfLeads) {
  RandomKeys keys{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed()) + 2};
  for (int round = 0; round < 40; ++round) {
    auto const sketches = keys.couplets(10);
    auto swapped = sketches;
    for (auto& sketch : swapped) std::reverse(sketch.leads.begin(), sketch.leads.end());
    auto plain = make_edition("plain", sketches);
    auto mirror = make_edition("mirror", swapped);
    read_statements(plain, Lexicon{});
    read_statements(mirror, Lexicon{});
    for (std::size_t c = 0; c < sketches.size(); ++c) {
      auto const count = sketches[c].leads.size();
      for (std::size_t i = 0; i < count; ++i) {
        ASSERT_EQ(said(plain.couplets[c].leads[i].statements),
                  said(mirror.couplets[c].leads[count - 1 - i].statements))
            << "round " << round;
      }
    }
  }
}

TEST(ReadingProperties, ReadingTwiceIsReadingOnce) {
  RandomKeys keys{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed()) + 3};
  auto edition = make_edition("test", keys.couplets(60));
  read_statements(edition, Lexicon{});
  auto again = edition;
  read_statements(again, Lexicon{});
  for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
    EXPECT_EQ(all_said(edition, c), all_said(again, c));
  }
}

TEST(ReadingProperties, TheSameEditionTwiceReadsTheSameInBoth) {
  RandomKeys keys{static_cast<std::uint32_t>(testing::UnitTest::GetInstance()->random_seed()) + 4};
  auto first = make_edition("first", keys.couplets(60));
  auto second = first;
  std::array<Edition*, 2> const both{&first, &second};
  read_statements(both, Lexicon{});
  for (std::size_t c = 0; c < first.couplets.size(); ++c) {
    EXPECT_EQ(all_said(first, c), all_said(second, c));
  }
}

}  // namespace
}  // namespace keydrift::test
