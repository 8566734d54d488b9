// Counting by several redeterminers comes to what one comes to, lists and bounds included.

#include "keydrift/redetermination/redeterminer.hpp"

#include <gtest/gtest.h>

#include <random>

#include "awn_and_leaf.hpp"

namespace keydrift::test {
namespace {

std::vector<Specimen> made_specimens(unsigned seed, std::size_t count) {
  std::mt19937 random{seed};
  auto const below_n = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  std::vector<Specimen> specimens;
  for (std::size_t i = 0; i < count; ++i) {
    Specimen one;
    one.line = i + 2;
    one.catalog_number = "N" + std::to_string(i);
    constexpr std::array kNames{"Aus alba", "Aus bella", "Aus clara", "Aus", "", "Bus nemo"};
    one.scientific_name = kNames[below_n(kNames.size())];
    one.storage = "Cabinet " + std::to_string(below_n(3));
    one.identified_by = below_n(2) == 0 ? "Orm" : "Tal";
    one.date_identified = std::to_string(1950 + below_n(60));
    if (below_n(12) == 0) one.type_status = "holotype";
    one.voucher = below_n(10) == 0;
    if (below_n(3) == 0) {
      one.observations.push_back({"awn",
                                  below_n(2) == 0   ? "present"
                                  : below_n(6) == 0 ? "crooked"
                                                    : "absent",
                                  "", 0, 3});
    }
    if (below_n(3) == 0) {
      one.observations.push_back({"leaf", std::to_string(1 + below_n(9)), "", 0, 4});
    }
    specimens.push_back(std::move(one));
  }
  return specimens;
}

// Everything of a result, in words.
std::string told(Redetermination const& result) {
  std::string text;
  auto const add = [&text](auto const& value) {
    if constexpr (std::is_arithmetic_v<std::decay_t<decltype(value)>>) {
      text += std::to_string(value) + " ";
    } else {
      text += value + std::string{" "};
    }
  };
  auto const add_totals = [&](auto const& totals) {
    for (auto const total : totals) add(total);
  };
  add(result.read);
  add_totals(result.totals);
  for (auto const& totals : result.totals_by_reading) add_totals(totals);
  for (auto const& totals : result.by_footing) add_totals(totals);
  for (auto const number :
       {result.reading_dependent, result.with_characters, result.name_only,
        result.sheets_to_look_at, result.sheets_to_relabel, result.expected, result.failed}) {
    add(number);
  }
  for (auto const& count : result.editions.counts) add(count.specimens);
  for (auto const& row : result.from_to) text += row.from + ">" + row.to + " ";
  for (auto const* table : {&result.by_storage, &result.by_decade, &result.by_person}) {
    for (auto const& [word, totals] : *table) {
      add(word);
      add_totals(totals);
    }
  }
  for (auto const& verdict : result.verdicts) {
    add(to_word(verdict.outcome));
    for (auto const& terminal : verdict.terminals) add(terminal.taxon.index);
  }
  auto const add_list = [&](std::vector<SpecimenOutcome> const& list) {
    text += "\n";
    for (auto const& one : list) {
      add(one.specimen.catalog_number);
      add(one.verdict);
    }
  };
  add_list(result.to_look_at);
  add_list(result.to_relabel);
  add_list(result.expectations);
  for (auto const& failure : result.failures) add(failure.specimen);
  for (auto const& group : result.worklist) {
    text += "\n" + group.storage + " " + group.question + " ";
    add(group.sheets);
    add(group.verdict);
    add(static_cast<int>(group.has_types));
    add(static_cast<int>(group.has_vouchers));
    for (auto const index : group.specimens) add(index);
  }
  for (auto const& finding : result.findings) text += "\n" + to_text(finding);
  return text;
}

class Counting : public testing::TestWithParam<unsigned> {};

TEST_P(Counting, ByAssistantsIsCountingByOne) {
  auto const two = awn_and_leaf();
  auto const specimens = made_specimens(GetParam(), 150);
  RedetermineOptions options;
  options.to_look_at_kept = 7;
  options.to_relabel_kept = 5;
  options.expectations_kept = 4;
  auto const fresh = [&] {
    return std::make_unique<Redeterminer>(two.old_edition, two.old_graph, two.new_edition,
                                          two.new_graph, two.collation, two.lexicon, two.parents,
                                          options);
  };
  auto const alone = fresh();
  for (auto const& specimen : specimens) (void)alone->count(specimen);
  auto const one = std::move(*alone).finish();
  // With hardly any verdicts at hand, the others are forgotten over and over again.
  options.verdicts_kept = 3;
  EXPECT_EQ(one.to_look_at.size(), 7U);
  EXPECT_GT(one.sheets_to_look_at, 20U);
  EXPECT_FALSE(one.findings.empty());

  auto const chief = fresh();
  std::vector<std::unique_ptr<Redeterminer>> assistants;
  for (int i = 0; i < 3; ++i) assistants.push_back(chief->assistant());
  std::mt19937 random{GetParam() + 1};
  for (std::size_t i = 0; i < specimens.size(); ++i) {
    auto& assistant = *assistants[random() % assistants.size()];
    assistant.stand_at(i);
    (void)assistant.count(specimens[i]);
  }
  // In whatever order they come back.
  for (auto const i : {2U, 0U, 1U}) chief->absorb(*assistants[i]);
  EXPECT_EQ(told(std::move(*chief).finish()), told(one));
}

INSTANTIATE_TEST_SUITE_P(Seeds, Counting, testing::Range(1U, 41U));

}  // namespace
}  // namespace keydrift::test
