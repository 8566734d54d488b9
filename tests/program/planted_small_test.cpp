// The two small scenarios through the real binary: crayfish with sexes, stages and lost legs, and
// the two editions that disagree in four cells of eighteen.

#include <gtest/gtest.h>

#include <map>

#include "planted_support.hpp"

namespace keydrift::test {
namespace {

using Json = nlohmann::json;

// --- the crayfish of the Halvern waters ---

std::string crayfish(std::string const& name) { return fixture("halvern-crayfish/" + name); }

std::vector<std::string> crayfish_options() {
  return {"--lexicon", "lexicon.csv", "--concepts", "concepts.csv", "--parents", "parents.csv"};
}

Redetermined const& crayfish_redetermined() {
  static Redetermined const made = [] {
    std::vector<std::string> inputs{"edition-2001.txt", "edition-2019.txt", "specimens.csv",
                                    "--look-alikes", "look-alikes.csv"};
    for (auto const& option : crayfish_options()) inputs.push_back(option);
    return redetermine(fixture("halvern-crayfish"), inputs);
  }();
  return made;
}

TEST(PlantedCrayfish, EachSpecimenHasItsPlantedOutcome) {
  auto const told = [](Row const& row) {
    return row.at("catalogNumber") + ": " + row.at("outcome") + ", " + row.at("newScientificName");
  };
  std::vector<std::string> planted;
  for (auto const& row : read_table_file(crayfish("expected-outcomes.csv"))) {
    planted.push_back(told(row));
  }
  std::vector<std::string> reported;
  for (auto const& row : read_table(crayfish_redetermined().specimens)) {
    reported.push_back(told(row));
  }
  EXPECT_EQ(planted.size(), 31U);
  expect_the_same_list(planted, reported);
}

TEST(PlantedCrayfish, EachLookAlikeSlipsThroughOrIsStoppedWherePlanted) {
  std::vector<std::string> planted;
  for (auto const& row : read_table_file(crayfish("expected-look-alikes.csv"))) {
    planted.push_back(row.at("catalogNumber") + ": " + row.at("names2001") + ", " +
                      row.at("stoppedAt2001") + "; " + row.at("names2019") + ", " +
                      row.at("stoppedAt2019"));
  }
  std::vector<std::string> reported;
  for (auto const& stray : crayfish_redetermined().result.at("lookAlikes")) {
    auto const stop = [&](char const* which) {
      return stray.contains(which) ? stray.at(which).at("label").get<std::string>() : "";
    };
    reported.push_back(stray.at("specimen").at("catalogNumber").get<std::string>() + ": " +
                       joined_field(stray.at("oldTaxa"), "name") + ", " + stop("oldStop") + "; " +
                       joined_field(stray.at("newTaxa"), "name") + ", " + stop("newStop"));
  }
  expect_the_same_list(planted, reported);
}

TEST(PlantedCrayfish, OneOfTwoRequiredCharactersIsReportedAsPartlyFitting) {
  auto const& result = crayfish_redetermined().result;
  for (auto const& entry : result.at("toLookAt")) {
    if (entry.at("specimen").at("catalogNumber") != "CR-12") continue;
    auto const& verdict = result.at("verdicts").at(entry.at("verdict").get<std::size_t>());
    std::multiset<std::string> leads;
    for (auto const& partly : verdict.at("partly")) {
      EXPECT_EQ(partly.at("holds").size(), 1U);
      EXPECT_EQ(partly.at("fails").size(), 1U);
      leads.insert(partly.at("lead").at("name").get<std::string>() +
                   (partly.at("inNew").get<bool>() ? " of 2019" : " of 2001"));
    }
    expect_the_same_rows({"4a of 2001", "4b of 2001"}, leads);
    return;
  }
  ADD_FAILURE() << "CR-12 is not to be looked at";
}

TEST(PlantedCrayfish, TheChangesBetweenTheEditionsAreThosePlanted) {
  std::vector<std::string> inputs{"edition-2001.txt", "edition-2019.txt"};
  for (auto const& option : crayfish_options()) inputs.push_back(option);
  auto const result = collate(fixture("halvern-crayfish"), inputs);
  std::multiset<std::string> couplets;
  for (auto const& change : result.at("couplets")) {
    couplets.insert(joined_field(change.at("old"), "label") + " to " +
                    joined_field(change.at("new"), "label") + ": " +
                    joined(change.at("events").get<std::vector<std::string>>()));
  }
  expect_the_same_rows({"1 to 1: kept", "2 to 2: restated", "3 to 3: restated", "4 to 4: kept",
                        "5 to 5: kept", "6 to 6: restated", "7 to 7: kept", " to 8: inserted"},
                       couplets);
  std::multiset<std::string> roles;
  for (auto const& change : result.at("roles")) {
    auto const lead = [&](char const* which) {
      return change.contains(which) ? change.at(which).at("name").get<std::string>() : "";
    };
    roles.insert(
        change.at("character").get<std::string>() + ", " + lead("oldLead") + " to " +
        lead("newLead") + ": " + change.at("transition").get<std::string>() +
        (change.contains("exceptionsAdded")
             ? " (" + joined(change.at("exceptionsAdded").get<std::vector<std::string>>()) + ")"
             : ""));
  }
  expect_the_same_rows(
      {"carapace-surface, 2a to 2a: became an exception note (Potamurga nigra)",
       "telson-tip, 3a to 3a: became hedged", "telson-tip, 3b to 3b: became hedged",
       "carapace-length, 6a to 6a: limits changed", "carapace-length, 6b to 6b: limits changed",
       "palm,  to 8a: introduced", "palm,  to 8b: introduced"},
      roles);
  EXPECT_EQ(result.at("scopeChanges"), Json::array({"life stage: not said → adult"}));
}

// --- two editions that disagree in four cells of eighteen ---

std::string two(std::string const& name) { return fixture("two-editions/" + name); }

// Pairs "name in A > name in B" of each specimen, sorted; by catalogue number.
std::map<std::string, std::string> pairs_of(Redetermined const& made) {
  std::map<std::string, std::string> pairs;
  auto const& result = made.result;
  for (auto const* list : {"toLookAt", "toRelabel"}) {
    for (auto const& entry : result.at(list)) {
      auto const& verdict = result.at("verdicts").at(entry.at("verdict").get<std::size_t>());
      std::set<std::string> sorted;
      for (auto const& pair : verdict.at("pairs")) {
        sorted.insert(pair.at("old").at("name").get<std::string>() + " > " +
                      pair.at("new").at("name").get<std::string>());
      }
      pairs[entry.at("specimen").at("catalogNumber")] = joined({sorted.begin(), sorted.end()});
    }
  }
  return pairs;
}

TEST(PlantedCells, FourCellsOfEighteenChangeAndTheRestStand) {
  Sandbox const sandbox;
  std::string specimens = "catalogNumber,scientificName,awn,leaf-length\n";
  std::vector<std::string> planted;
  std::map<std::string, std::string> planted_pairs;
  for (auto const& row : read_table_file(two("cells.csv"))) {
    auto const number = "C-" + std::to_string(planted.size() + 1);
    specimens += number + ",," + row.at("awn") + "," + row.at("leaf-length") + "\n";
    bool const same = row.at("same") == "yes";
    planted.push_back(number + ": " + (same ? "stands" : "changes") + ", " + row.at("edition-b"));
    if (!same) planted_pairs[number] = row.at("edition-a") + " > " + row.at("edition-b");
  }
  EXPECT_EQ(planted.size(), 18U);
  EXPECT_EQ(planted_pairs.size(), 4U);
  auto const made = redetermine(
      fixture("two-editions"), {"edition-a.txt", "edition-b.txt",
                                sandbox.write("cells.csv", specimens), "--lexicon", "lexicon.csv"});
  std::vector<std::string> reported;
  for (auto const& row : read_table(made.specimens)) {
    reported.push_back(row.at("catalogNumber") + ": " + row.at("outcome") + ", " +
                       row.at("newScientificName"));
  }
  expect_the_same_list(planted, reported);
  EXPECT_EQ(pairs_of(made), planted_pairs);
}

TEST(PlantedCells, APartialSpecimenKeepsExactlyItsPlantedPairs) {
  auto const made = redetermine(
      fixture("two-editions"),
      {"edition-a.txt", "edition-b.txt", "partial-specimens.csv", "--lexicon", "lexicon.csv"});
  std::map<std::string, std::string> planted;
  std::map<std::string, std::string> planted_outcomes;
  for (auto const& row : read_table_file(two("partial-pairs.csv"))) {
    auto const& pairs = row.at("pairs");
    std::size_t same = 0;
    for (auto const& pair : items_of(pairs)) {
      same += pair.substr(0, pair.find(" > ")) == pair.substr(pair.find(" > ") + 3) ? 1U : 0U;
    }
    bool const stands = same == items_of(pairs).size();
    planted_outcomes[row.at("catalogNumber")] = stands ? "stands" : same == 0 ? "changes" : "open";
    // The verdict of a specimen that stands is no part of the result.
    if (!stands) planted[row.at("catalogNumber")] = pairs;
  }
  std::map<std::string, std::string> outcomes;
  for (auto const& row : read_table(made.specimens)) {
    outcomes[row.at("catalogNumber")] = row.at("outcome");
  }
  EXPECT_EQ(outcomes, planted_outcomes);
  EXPECT_EQ(pairs_of(made), planted);
}

TEST(PlantedCells, TheSpecimenWithTheSameNamesUnderBothEditionsIsStillOpen) {
  auto const made = redetermine(
      fixture("two-editions"),
      {"edition-a.txt", "edition-b.txt", "partial-specimens.csv", "--lexicon", "lexicon.csv"});
  for (auto const& row : read_table(made.specimens)) {
    if (row.at("catalogNumber") != "T-3") continue;
    EXPECT_EQ(row.at("outcome"), "open");
    EXPECT_EQ(row.at("newScientificName"), "Bus | Cus");
    EXPECT_EQ(row.at("possibleOutcomes"), "stands | changes");
    return;
  }
  ADD_FAILURE() << "no T-3";
}

// Specimens that must be looked at, in so many storage places and one in none.
std::string worklist_text(std::size_t places) {
  Sandbox const sandbox;
  std::string specimens = "catalogNumber,scientificName,awn,storageLocation\nS-0,,absent,\n";
  for (std::size_t i = 1; i <= places; ++i) {
    auto const number = std::to_string(i);
    specimens += "S-" + number + ",,absent,Drawer " + number + "\n";
  }
  auto const ran =
      run_keydrift({"redetermine", "edition-a.txt", "edition-b.txt",
                    sandbox.write("specimens.csv", specimens), "--lexicon", "lexicon.csv"},
                   fixture("two-editions"));
  EXPECT_EQ(ran.exit, 0) << ran.err;
  return joined(part_of(ran.out, "WORKLIST"));
}

TEST(PlantedCells, AWorklistSaysHowManyPlacesItLeavesOut) {
  auto const twenty = worklist_text(20);
  EXPECT_NE(twenty.find("Drawer 20 ..."), std::string::npos) << twenty;
  EXPECT_NE(twenty.find("(no place recorded) ..."), std::string::npos) << twenty;
  EXPECT_EQ(twenty.find("more in the worklist"), std::string::npos) << twenty;
  auto const more = worklist_text(22);
  EXPECT_NE(more.find("and 2 places more in the worklist."), std::string::npos) << more;
}

}  // namespace
}  // namespace keydrift::test
