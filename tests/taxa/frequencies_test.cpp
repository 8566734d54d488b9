#include "keydrift/taxa/frequencies.hpp"

#include <gtest/gtest.h>

#include "edition_builder.hpp"

namespace keydrift {
namespace {

Edition key() {
  return test::make_edition(
      "k", {{"1", {{"a", "Aus bus"}, {"b", "2"}}}, {"2", {{"a", "Aus cus"}, {"b", "Dus"}}}});
}

TaxonWeights weights_of(std::vector<FrequencyRow> rows) {
  auto edition = key();
  edition.front.synonyms.push_back({"Aus cus", "Eus cus", {}});
  NameIndex const names{edition, {}};
  std::uint32_t line = 1;
  for (auto& row : rows) row.place.line = ++line;
  return taxon_weights(edition, names, {.name = "f.csv", .rows = std::move(rows)});
}
std::string told_weights(TaxonWeights const& weights) {
  std::string text;
  for (auto const& finding : weights.findings) text += to_text(finding);
  return text;
}

TEST(TaxonWeights, AddUpWhatATerminalTakesIn) {
  auto const weights =
      weights_of({{"Aus bus", 3, {}}, {"Eus cus", 2, {}}, {"Aus cus", 1, {}}, {"Dus fus", 4, {}}});
  EXPECT_EQ(weights.by_taxon, (std::vector<double>{3, 3, 4}));
  EXPECT_EQ(told_weights(weights), "");
}

TEST(TaxonWeights, TellOfNamesThatAreNoTerminalAndOfTerminalsWithoutCount) {
  auto const weights = weights_of({{"Aus buss", 3, {}}, {"Aus", 2, {}}, {"Aus cus", 1, {}}});
  EXPECT_EQ(weights.by_taxon, (std::vector<double>{0, 1, 0}));
  EXPECT_EQ(told_weights(weights),
            "f.csv:2:1: warning: \"Aus buss\" does not key out, so its count is left aside "
            "[frequency-of-unknown-taxon]\n"
            "  Aus buss\n"
            "  did you mean \"Aus bus\" or \"Aus cus\"?\n"
            "f.csv:3:1: warning: \"Aus\" takes in 2 taxa of the key, so its count is left aside: "
            "\"Aus bus\" and \"Aus cus\" [frequency-of-group]\n"
            "  Aus\n"
            "  give a count for each of them\n"
            "f.csv:1:1: information: 2 taxa of the key have no count and count as never met with: "
            "\"Aus bus\" and \"Dus\" [taxa-without-frequency]\n"
            "  add a row where that is not so\n");
}

}  // namespace
}  // namespace keydrift
