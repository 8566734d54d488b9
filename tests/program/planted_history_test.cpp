// Both steps in the history of the key to the Velunaceae: `collate` reports the rows of planted.csv
// and no others.

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <ostream>

#include "planted_support.hpp"

namespace keydrift::test {
namespace {

using Json = nlohmann::json;

struct Step {
  char const* old_year;
  char const* new_year;
  [[nodiscard]] std::string name() const { return std::string{old_year} + " to " + new_year; }
};

void PrintTo(Step const& step, std::ostream* out) { *out << step.name(); }

std::vector<std::string> inputs_of(Step const& step) {
  std::string const old_year = step.old_year;
  std::string const new_year = step.new_year;
  return {"edition-" + old_year + ".txt",
          "edition-" + new_year + ".txt",
          "--lexicon",
          "lexicon.csv",
          "--concepts",
          "concepts-" + old_year + "-" + new_year + ".csv",
          "--parents",
          "parents.csv"};
}

Json const& collation_of(Step const& step) {
  static Json const later = collate(fixture("velunaceae"), inputs_of({"1998", "2024"}));
  static Json const earlier = collate(fixture("velunaceae"), inputs_of({"1974", "1998"}));
  return std::string_view{step.old_year} == "1998" ? later : earlier;
}

std::string sorted(std::string const& joined_items) {
  auto items = items_of(joined_items);
  std::sort(items.begin(), items.end());
  return joined(items);
}

std::string from_to(std::string const& was, std::string const& is) {
  return (was.empty() ? "(none)" : was) + " to " + (is.empty() ? "(none)" : is);
}

class PlantedHistory : public testing::TestWithParam<Step> {
 protected:
  [[nodiscard]] Json const& reported() const { return collation_of(GetParam()); }
  // Rows of planted.csv of one kind.
  [[nodiscard]] std::vector<Row> planted(std::string const& kind) const {
    std::vector<Row> rows;
    for (auto& row : read_table_file(fixture("velunaceae/planted.csv"))) {
      if (row.at("comparison") == GetParam().name() && row.at("kind") == kind) {
        rows.push_back(std::move(row));
      }
    }
    return rows;
  }
};

TEST_P(PlantedHistory, TheEventsOfTheCoupletsAreThosePlanted) {
  std::multiset<std::string> wanted;
  for (auto const& row : planted("couplet")) {
    wanted.insert("couplet " + from_to(row.at("old"), row.at("new")) + ": " +
                  sorted(row.at("what")));
  }
  std::multiset<std::string> found;
  for (auto const& change : reported().at("couplets")) {
    found.insert(
        "couplet " +
        from_to(joined_field(change.at("old"), "label"), joined_field(change.at("new"), "label")) +
        ": " + sorted(joined(change.at("events").get<std::vector<std::string>>())));
  }
  expect_the_same_rows(wanted, found);
}

TEST_P(PlantedHistory, TheEventsOfTheTaxaAreThosePlanted) {
  std::multiset<std::string> wanted;
  for (auto const& row : planted("taxon")) {
    wanted.insert("taxon " + from_to(row.at("old"), row.at("new")) + ": " + sorted(row.at("what")));
  }
  std::multiset<std::string> found;
  for (auto const& change : reported().at("taxa")) {
    found.insert(
        "taxon " +
        from_to(joined_field(change.at("old"), "name"), joined_field(change.at("new"), "name")) +
        ": " + sorted(joined(change.at("events").get<std::vector<std::string>>())));
  }
  expect_the_same_rows(wanted, found);
}

std::string lead_name(Json const& change, char const* which) {
  return change.contains(which) ? change.at(which).at("name").get<std::string>() : "";
}

std::string role_told(std::string const& character, std::string const& was, std::string const& is,
                      std::string const& what) {
  return "character " + character + ", lead " + from_to(was, is) + ": " + what;
}

std::multiset<std::string> roles_told(Json const& collation) {
  std::multiset<std::string> told;
  for (auto const& change : collation.at("roles")) {
    told.insert(role_told(change.at("character"), lead_name(change, "oldLead"),
                          lead_name(change, "newLead"), change.at("transition")));
  }
  return told;
}

TEST_P(PlantedHistory, TheRolesThatCharactersChangeAreThosePlanted) {
  std::multiset<std::string> wanted;
  for (auto const& row : planted("character")) {
    wanted.insert(role_told(row.at("subject"), row.at("old"), row.at("new"), row.at("what")));
  }
  expect_the_same_rows(wanted, roles_told(reported()));
}

// The concept map with the editions in each other's place, as a file of its own.
std::string turned_concepts(Step const& step, Sandbox const& sandbox) {
  std::string text = "old,relation,new,note\n";
  for (auto const& row : read_table_file(fixture(
           "velunaceae/concepts-" + std::string{step.old_year} + "-" + step.new_year + ".csv"))) {
    auto relation = row.at("relation");
    if (relation == "includes") {
      relation = "included in";
    } else if (relation == "included in") {
      relation = "includes";
    }
    text += row.at("new") + "," + relation + "," + row.at("old") + ",\n";
  }
  auto const file = (sandbox.path() / "concepts.csv").string();
  std::ofstream{file} << text;
  return file;
}

// With the editions in each other's place: what came goes, what became weaker becomes stronger.
TEST_P(PlantedHistory, TurnedRoundTheRolesAreThosePlantedTurnedRound) {
  std::map<std::string, std::string> const turned{
      {"became an exception note", "became firm"},
      {"became hedged", "became firm"},
      {"became firm", "became hedged"},  // all that became firm in these editions was hedged
      {"dropped", "introduced"},
      {"introduced", "dropped"},
      {"limits changed", "limits changed"},
      {"states changed", "states changed"},
  };
  std::multiset<std::string> wanted;
  for (auto const& row : planted("character")) {
    wanted.insert(
        role_told(row.at("subject"), row.at("new"), row.at("old"), turned.at(row.at("what"))));
  }
  Sandbox const sandbox;
  auto inputs = inputs_of(GetParam());
  std::swap(inputs[0], inputs[1]);
  inputs[5] = turned_concepts(GetParam(), sandbox);
  expect_the_same_rows(wanted, roles_told(collate(fixture("velunaceae"), inputs)));
}

// Without a lexicon characters go by their words, so that another word is another state: all that
// was planted is told, and what is told besides is of the one couplet that was merely reworded.
// (The step before it changed the words of every couplet, which a lexicon alone sees through.)
TEST(PlantedRoles, WithoutALexiconThePlantedOnesAreToldAndThoseOfRewordedCouplets) {
  std::multiset<std::string> wanted;
  for (auto const& row : read_table_file(fixture("velunaceae/planted.csv"))) {
    if (row.at("comparison") != "1998 to 2024" || row.at("kind") != "character") continue;
    wanted.insert(role_told("", row.at("old"), row.at("new"), row.at("what")));
  }
  // Two statements in each lead of couplet 18, which planted.csv calls reworded.
  for (auto const* words : {"a to 19a", "a to 19a", "b to 19b", "b to 19b"}) {
    wanted.insert("character , lead 18" + std::string{words} + ": states changed");
  }
  auto inputs = inputs_of({"1998", "2024"});
  inputs.erase(inputs.begin() + 2, inputs.begin() + 4);
  auto collation = collate(fixture("velunaceae"), inputs);
  for (auto& change : collation.at("roles")) change.at("character") = "";
  expect_the_same_rows(wanted, roles_told(collation));
}

// "3-4.5 mm became 3-4 mm": the words of both statements; "except in Aus", "usually": of the new.
TEST_P(PlantedHistory, AChangedRoleQuotesTheWordsThatWerePlanted) {
  auto const words_of = [](Json const& change, char const* which) {
    if (!change.contains(which)) return std::string{};
    return replaced(change.at(which).at("text").get<std::string>(), "–", "-");
  };
  std::size_t compared = 0;
  for (auto const& row : planted("character")) {
    auto const& detail = row.at("detail");
    if (detail.empty() || detail == "with its couplet") continue;
    auto const told = role_told(row.at("subject"), row.at("old"), row.at("new"), row.at("what"));
    for (auto const& change : reported().at("roles")) {
      if (role_told(change.at("character"), lead_name(change, "oldLead"),
                    lead_name(change, "newLead"), change.at("transition")) != told) {
        continue;
      }
      ++compared;
      auto const was = words_of(change, "oldStatement");
      auto const is = words_of(change, "newStatement");
      constexpr std::string_view became = " became ";
      auto const at = detail.find(became);
      if (at != std::string::npos) {
        EXPECT_NE(was.find(detail.substr(0, at)), std::string::npos) << told << ": " << was;
        EXPECT_NE(is.find(detail.substr(at + became.size())), std::string::npos)
            << told << ": " << is;
      } else if (detail == "hedged") {
        EXPECT_EQ(change.at("newStatement").at("strength"), "hedged") << told;
      } else if (row.at("what") == "became an exception note") {
        EXPECT_EQ(
            "except in " + joined(change.at("exceptionsAdded").get<std::vector<std::string>>()),
            detail)
            << told;
      } else if (row.at("what") == "became hedged") {
        EXPECT_EQ(was.find(detail), std::string::npos) << told << ": " << was;
        EXPECT_NE(is.find(detail), std::string::npos) << told << ": " << is;
      } else if (row.at("what") == "became firm") {
        auto const word = detail.substr(1, detail.find('"', 1) - 1);  // "usually" went
        EXPECT_NE(was.find(word), std::string::npos) << told << ": " << was;
        EXPECT_EQ(is.find(word), std::string::npos) << told << ": " << is;
      } else {
        auto const word = detail.substr(0, detail.find(' '));  // silky dropped
        EXPECT_NE(was.find(word), std::string::npos) << told << ": " << was;
        EXPECT_EQ(is.find(word), std::string::npos) << told << ": " << is;
      }
    }
  }
  EXPECT_GE(compared, 9U);
}

// The couplet that a finding speaks of, its leads where it speaks of several couplets, and nothing
// where it speaks of the front matter.
std::string place_of(Json const& finding, Json const& edition) {
  std::vector<long> lines{finding.at("line").get<long>()};
  for (auto const& other : finding.value("related", Json::array())) {
    lines.push_back(other.at("line").get<long>());
  }
  std::set<std::string> couplets;
  std::vector<std::string> leads;
  for (auto const line : lines) {
    std::string couplet;
    std::string lead;
    for (auto const& one : edition.at("couplets")) {
      for (auto const& candidate : one.at("leads")) {
        if (candidate.at("source").at("line").get<long>() > line) continue;
        couplet = one.at("label");
        lead = candidate.at("name");
      }
    }
    couplets.insert(couplet);
    leads.push_back(lead);
  }
  return couplets.size() == 1 ? *couplets.begin() : joined(leads);
}

// Each planted finding is there, its message says what was planted, and there are no others.
void expect_findings(std::vector<Row> const& planted, char const* side, Json const& findings,
                     Json const& edition) {
  std::multiset<std::string> wanted;
  std::multiset<std::string> found;
  for (auto const& finding : findings) {
    found.insert(finding.at("code").get<std::string>() + " at " + place_of(finding, edition));
  }
  for (auto const& row : planted) {
    auto const told = row.at("subject") + " at " + row.at(side);
    wanted.insert(told);
    for (auto const& finding : findings) {
      if (finding.at("code").get<std::string>() + " at " + place_of(finding, edition) != told) {
        continue;
      }
      auto const said = replaced(finding.at("message").get<std::string>(), "–", "-");
      auto const& what = row.at("what");
      for (std::size_t at = 0; at < what.size();) {
        auto const end = what.find_first_not_of("0123456789.", at);
        auto const number = what.substr(at, end - at);
        if (!number.empty()) {
          EXPECT_NE(said.find(number), std::string::npos) << told << ": " << said;
        }
        at = end == std::string::npos ? what.size() : end + 1;
      }
      if (what.find_first_of("0123456789") == std::string::npos) {
        EXPECT_EQ(finding.at("printed"), what) << told;
      }
      if (!row.at("detail").empty()) {
        EXPECT_EQ(finding.at("severity"), row.at("detail")) << told;
      }
    }
  }
  if (wanted.empty()) {
    EXPECT_EQ(found, wanted);
  } else {
    expect_the_same_rows(wanted, found);
  }
}

TEST_P(PlantedHistory, TheFaultsThatWereMendedAreThosePlanted) {
  expect_findings(planted("finding mended"), "old", reported().at("mended"), reported().at("old"));
}

TEST_P(PlantedHistory, TheFaultsThatWereIntroducedAreThosePlanted) {
  expect_findings(planted("finding introduced"), "new", reported().at("introduced"),
                  reported().at("new"));
  EXPECT_EQ(reported().at("lasting"), Json::array());
}

TEST_P(PlantedHistory, TheChangesOfScopeAreThosePlanted) {
  std::multiset<std::string> wanted;
  for (auto const& row : planted("scope")) {
    auto const& what = row.at("what");
    if (what == "added") {
      wanted.insert(row.at("subject") + ": now also " + replaced(row.at("new"), " | ", ", "));
    } else if (what == "excluded") {
      wanted.insert("taxa left out: now also " + replaced(row.at("new"), " | ", ", "));
    } else {
      wanted.insert(row.at("subject") + ": " + row.at("old") + " → " + row.at("new"));
    }
  }
  auto const changes = reported().at("scopeChanges").get<std::vector<std::string>>();
  expect_the_same_rows(wanted, {changes.begin(), changes.end()});
}

INSTANTIATE_TEST_SUITE_P(ByStep, PlantedHistory,
                         testing::Values(Step{"1998", "2024"}, Step{"1974", "1998"}),
                         [](testing::TestParamInfo<Step> const& step) {
                           return std::string{step.param.old_year} + "To" + step.param.new_year;
                         });

}  // namespace
}  // namespace keydrift::test
