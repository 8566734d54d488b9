// Counting by several redeterminers comes to what one comes to, lists and bounds included.

#include "keydrift/redetermination/redeterminer.hpp"

#include <gtest/gtest.h>

#include <random>
#include <set>

#include "awn_and_leaf.hpp"
#include "keydrift/redetermination/row_check.hpp"
#include "keydrift/redetermination/specimen_bytes.hpp"

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

TEST(SpecimenBytes, GiveBackAllButTheObservations) {
  Specimen specimen;
  specimen.line = 70'000;
  specimen.voucher = true;
  int number = 0;
  for (auto const word :
       {&Specimen::catalog_number, &Specimen::occurrence_id, &Specimen::scientific_name,
        &Specimen::authorship, &Specimen::qualifier, &Specimen::identified_by,
        &Specimen::recorded_by, &Specimen::date_identified, &Specimen::identification_references,
        &Specimen::type_status, &Specimen::sex, &Specimen::life_stage,
        &Specimen::reproductive_condition, &Specimen::region, &Specimen::storage,
        &Specimen::remarks}) {
    specimen.*word = "word " + std::to_string(++number);
  }
  specimen.places = {"Halvern", "", "Aldmere"};
  specimen.untied = {"petal"};
  specimen.loosely_tied = {"sepal", "stem"};
  auto const words_of = [](Specimen const& one) {
    std::vector<std::string> words{one.catalog_number,
                                   one.occurrence_id,
                                   one.scientific_name,
                                   one.authorship,
                                   one.qualifier,
                                   one.identified_by,
                                   one.recorded_by,
                                   one.date_identified,
                                   one.identification_references,
                                   one.type_status,
                                   one.sex,
                                   one.life_stage,
                                   one.reproductive_condition,
                                   one.region,
                                   one.storage,
                                   one.remarks};
    for (auto const* list : {&one.places, &one.untied, &one.loosely_tied}) {
      words.push_back(std::to_string(list->size()));
      words.insert(words.end(), list->begin(), list->end());
    }
    return words;
  };
  auto observed = specimen;
  observed.observations.push_back({"awn", "present", "", 0, 3});
  std::string bytes;
  ByteWriter writer{bytes};
  write_bytes(writer, observed);
  // Over another one, of which nothing is left.
  Specimen read;
  read.places = {"a", "b", "c", "d"};
  read.observations = observed.observations;
  ByteReader reader{bytes};
  read_bytes(reader, read);
  EXPECT_TRUE(reader.rest().empty());
  EXPECT_EQ(words_of(read), words_of(specimen));
  EXPECT_EQ(read.line, specimen.line);
  EXPECT_EQ(read.voucher, specimen.voucher);
  EXPECT_TRUE(read.observations.empty());
}

TEST(RowCheck, HasLettersThatNoSpreadsheetTakesForANumberADateOrAWord) {
  std::set<std::string> met;
  for (int i = 0; i < 2'000; ++i) {
    auto const letters = RowCheck{"look at the awn", "awn"}.of("N" + std::to_string(i), "", "Aus");
    EXPECT_EQ(letters.size(), 6U);
    EXPECT_EQ(letters.find_first_not_of("BCDFHJKLMPRTVWXZ"), std::string::npos) << letters;
    met.insert(letters);
  }
  EXPECT_GT(met.size(), 1'990U);
  RowCheck const check{"look at the awn: present → stands", "awn"};
  auto const letters = check.of("0012", "o:1", "Aus bus");
  // Worklists that were printed once are to be taken back by every later build.
  EXPECT_EQ(letters, "FJTMVZ");
  // What a spreadsheet does to cells.
  EXPECT_EQ((RowCheck{"Look at the awn: present ? stands ", "awn"}.of("12.0", "o:1", "Aus  bus")),
            letters);
  EXPECT_NE((RowCheck{"look at the awn: present → stands", "leaf"}.of("0012", "o:1", "Aus bus")),
            letters);
  EXPECT_NE(check.of("0013", "o:1", "Aus bus"), letters);
  EXPECT_NE(check.of("0012", "o:2", "Aus bus"), letters);
  EXPECT_NE(check.of("0012", "o:1", "Aus cus"), letters);
  // What stands in one cell does not stand in the next.
  EXPECT_NE(check.of("0012o1", "", "Aus bus"), letters);
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
