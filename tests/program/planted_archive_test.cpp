// The archive of the Velunaceae under 1998, keyed by 2024: each sheet as planted, and the same
// numbers wherever the program says them.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <map>
#include <numeric>

#include "planted_support.hpp"

namespace keydrift::test {
namespace {

using Json = nlohmann::json;

constexpr std::array<char const*, 10> kOutcomes{
    "stands",   "renamed",      "changes",      "narrowed", "open",
    "stranded", "leaves scope", "enters scope", "doubtful", "not keyed"};
std::set<std::string> const& outcomes_to_look_at() {
  static std::set<std::string> const words{"narrowed", "open", "stranded", "doubtful"};
  return words;
}

std::vector<Row> planted_table(std::string const& name) {
  return read_table_file(fixture("velunaceae/" + name));
}

std::string told(Row const& row, std::vector<std::string> const& columns) {
  std::string text;
  for (auto const& column : columns) {
    auto const cell = row.find(column);
    text += (text.empty() ? "" : ", ") + column + " = " +
            (cell == row.end() ? "(no such column)" : "\"" + cell->second + "\"");
  }
  return text;
}

std::vector<std::string> told(std::vector<Row> const& table,
                              std::vector<std::string> const& columns) {
  std::vector<std::string> rows;
  for (auto const& row : table) rows.push_back(told(row, columns));
  return rows;
}

std::map<std::string, long> count_outcomes(std::vector<Row> const& table) {
  std::map<std::string, long> counts;
  for (auto const* outcome : kOutcomes) counts[outcome] = 0;
  for (auto const& row : table) ++counts[row.at("outcome")];
  return counts;
}

std::map<std::string, long> counts_of(Json const& totals) {
  return totals.get<std::map<std::string, long>>();
}

std::multiset<std::string> catalog_numbers(std::vector<Row> const& table) {
  std::multiset<std::string> numbers;
  for (auto const& row : table) numbers.insert(row.at("catalogNumber"));
  return numbers;
}

std::multiset<std::string> catalog_numbers(Json const& outcomes) {
  std::multiset<std::string> numbers;
  for (auto const& entry : outcomes) {
    numbers.insert(entry.at("specimen").at("catalogNumber").get<std::string>());
  }
  return numbers;
}

// Catalogue numbers of the rows with one of some outcomes.
std::multiset<std::string> with_outcome(std::vector<Row> const& table,
                                        std::set<std::string> const& wanted) {
  std::multiset<std::string> numbers;
  for (auto const& row : table) {
    if (wanted.count(row.at("outcome")) != 0) numbers.insert(row.at("catalogNumber"));
  }
  return numbers;
}

// The figure behind a label of the HTML report.
std::optional<long> html_figure(std::string const& html, std::string const& label) {
  auto const at = html.find("<span>" + label + "</span>");
  if (at == std::string::npos) return std::nullopt;
  constexpr std::string_view before = "<span class=\"n\">";
  auto const from = html.find(before, at) + before.size();
  return whole_number(std::string_view{html}.substr(from, html.find('<', from) - from));
}

std::string html_section(std::string const& html, std::string const& id) {
  auto const at = html.find("<section id=\"" + id + "\">");
  EXPECT_NE(at, std::string::npos) << "no section " << id;
  if (at == std::string::npos) return {};
  return html.substr(at, html.find("<section id=", at + 1) - at);
}

std::multiset<std::string> catalog_numbers_in(std::string const& text) {
  constexpr std::string_view prefix = "HLVN";
  std::multiset<std::string> numbers;
  for (auto at = text.find(prefix); at != std::string::npos; at = text.find(prefix, at + 1)) {
    auto number = text.substr(at, prefix.size() + 5);
    if (whole_number(std::string_view{number}.substr(prefix.size()))) numbers.insert(number);
  }
  return numbers;
}

TEST(PlantedArchive, EachSheetHasTheOutcomeAndTheNewNamesThatWerePlanted) {
  auto const planted = planted_table("expected-outcomes.csv");
  EXPECT_EQ(planted.size(), 1800U);
  std::vector<std::string> const columns{"catalogNumber", "outcome", "newScientificName"};
  expect_the_same_list(told(planted, columns), told(read_table(velunaceae().specimens), columns));
}

TEST(PlantedArchive, TheSpecimensFileHasTheSheetsInInputOrderUnderTheirRecordedNames) {
  std::vector<std::string> const columns{"catalogNumber", "scientificName"};
  expect_the_same_list(told(planted_table("sheets.csv"), columns),
                       told(read_table(velunaceae().specimens), columns));
}

TEST(PlantedArchive, TypesAndVouchersAreTestedAndFailWherePlanted) {
  auto const planted = planted_table("expected-types-and-vouchers.csv");
  auto const& result = velunaceae().result;
  std::map<std::size_t, std::string> fails_in;
  for (auto const& failure : result.at("failures")) {
    fails_in[failure.at("specimen").get<std::size_t>()] =
        failure.at("inNew").get<bool>() ? "2024" : "1998";
  }
  std::vector<std::string> reported;
  auto const& expectations = result.at("expectations");
  for (std::size_t i = 0; i < expectations.size(); ++i) {
    auto const& specimen = expectations.at(i).at("specimen");
    auto const& verdict =
        result.at("verdicts").at(expectations.at(i).at("verdict").get<std::size_t>());
    reported.push_back(told({{"catalogNumber", specimen.at("catalogNumber")},
                             {"scientificName", specimen.at("scientificName")},
                             {"outcome", verdict.at("outcome")},
                             {"failsIn", fails_in[i]}},
                            {"catalogNumber", "scientificName", "outcome", "failsIn"}));
  }
  expect_the_same_list(told(planted, {"catalogNumber", "scientificName", "outcome", "failsIn"}),
                       reported);
  std::multiset<std::string> failing;
  for (auto const& row : planted) {
    if (!row.at("failsIn").empty()) failing.insert(row.at("catalogNumber"));
  }
  EXPECT_EQ(failing.size(), 4U);
  auto const tests = html_section(velunaceae().html, "tests");
  EXPECT_NE(tests.find(std::to_string(planted.size()) +
                       " specimens are marked as type or voucher; 4 do not key out"),
            std::string::npos)
      << tests;
  for (auto const& number : failing) {
    EXPECT_NE(tests.find(number), std::string::npos) << number << " is not told in the HTML";
    EXPECT_NE(velunaceae().ran.out.find("  " + number + ", "), std::string::npos)
        << number << " is not told on the terminal";
  }
}

TEST(PlantedArchive, EachLookAlikeSlipsThroughOrIsStoppedWherePlanted) {
  std::vector<std::string> const columns{"catalogNumber", "scientificName", "names1998",
                                         "stoppedAt1998", "names2024",      "stoppedAt2024"};
  std::vector<std::string> reported;
  for (auto const& stray : velunaceae().result.at("lookAlikes")) {
    auto const stop = [&](char const* which) {
      return stray.contains(which) ? stray.at(which).at("label").get<std::string>() : "";
    };
    auto const& specimen = stray.at("specimen");
    reported.push_back(told({{"catalogNumber", specimen.at("catalogNumber")},
                             {"scientificName", specimen.at("scientificName")},
                             {"names1998", joined_field(stray.at("oldTaxa"), "name")},
                             {"stoppedAt1998", stop("oldStop")},
                             {"names2024", joined_field(stray.at("newTaxa"), "name")},
                             {"stoppedAt2024", stop("newStop")}},
                            columns));
  }
  expect_the_same_list(told(planted_table("expected-look-alikes.csv"), columns), reported);
}

// What the name alone says of every terminal of the old edition.
void expect_names(std::string const& old_year, std::string const& new_year) {
  auto const planted = planted_table("expected-names-" + old_year + "-" + new_year + ".csv");
  std::string names = "catalogNumber,scientificName\n";
  for (auto const& row : planted) {
    names += "N-" + row.at("scientificName") + "," + row.at("scientificName") + "\n";
  }
  Sandbox const sandbox;
  auto const made =
      redetermine(fixture("velunaceae"),
                  {"edition-" + old_year + ".txt", "edition-" + new_year + ".txt",
                   sandbox.write("names.csv", names), "--lexicon", "lexicon.csv", "--concepts",
                   "concepts-" + old_year + "-" + new_year + ".csv", "--parents", "parents.csv"});
  EXPECT_EQ(made.ran.exit, 0) << made.ran.err;
  EXPECT_EQ(made.result.at("nameOnly"), planted.size());
  std::vector<std::string> const columns{"scientificName", "outcome", "newScientificName"};
  expect_the_same_list(told(planted, columns), told(read_table(made.specimens), columns));
}

TEST(PlantedArchive, ANameOf1998AloneHasItsPlantedOutcomeUnder2024) {
  expect_names("1998", "2024");
}

TEST(PlantedArchive, ANameOf1974AloneHasItsPlantedOutcomeUnder1998) {
  expect_names("1974", "1998");
}

TEST(PlantedNumbers, TheTotalsAreThoseOfTheSpecimensFile) {
  auto const table = read_table(velunaceae().specimens);
  auto const& result = velunaceae().result;
  auto const counts = count_outcomes(table);
  EXPECT_EQ(counts_of(result.at("totals")), counts);
  EXPECT_EQ(counts_of(result.at("totalsByReading").at("strict")), counts);
  EXPECT_EQ(result.at("read"), table.size());
  EXPECT_EQ(result.at("rejected"), 0);
  EXPECT_EQ(
      result.at("withCharacters").get<std::size_t>() + result.at("nameOnly").get<std::size_t>(),
      table.size());
  EXPECT_EQ(result.at("editionCited").get<std::size_t>() +
                result.at("editionPresumed").get<std::size_t>(),
            table.size());
}

TEST(PlantedNumbers, EveryWayOfDividingTheSheetsAddsUpToTheTotals) {
  auto const& result = velunaceae().result;
  for (auto const* division :
       {"fromTo", "byStorage", "byDecade", "byPerson", "byCollector", "byRegion"}) {
    std::map<std::string, long> sum;
    for (auto const& part : result.at(division)) {
      long together = 0;
      for (auto const& [outcome, count] : counts_of(part.at("byOutcome"))) {
        sum[outcome] += count;
        together += count;
      }
      if (part.contains("specimens")) {
        EXPECT_EQ(part.at("specimens"), together) << division;
      }
    }
    EXPECT_EQ(sum, counts_of(result.at("totals"))) << division;
  }
}

// The sums as a table, counted anew from the sheets and what became of each.
TEST(PlantedNumbers, TheSummariesAreThoseOfTheSheets) {
  Sandbox const sandbox;
  auto const data = fixture("velunaceae") + "/";
  std::vector<std::string> arguments{"redetermine", data + "edition-1998.txt",
                                     data + "edition-2024.txt"};
  auto const options = velunaceae_options(data);
  arguments.insert(arguments.end(), options.begin(), options.end());
  arguments.insert(arguments.end(), {"--summaries", "sums.csv", "--specimens", "out.csv"});
  auto const ran = run_keydrift(arguments, sandbox.path());
  ASSERT_EQ(ran.exit, 0) << ran.err;

  using Sums = std::map<std::string, std::map<std::string, long>>;  // "division: unit", outcome
  Sums reported;
  Sums recounted;
  std::set<std::string> divisions;
  for (auto const& row : read_table_file((sandbox.path() / "sums.csv").string())) {
    divisions.insert(row.at("by"));
    long together = 0;
    for (auto const* outcome : kOutcomes) {
      auto const count = std::stol(row.at(outcome));
      together += count;
      if (count > 0) reported[row.at("by") + ": " + row.at("from")][outcome] += count;
    }
    EXPECT_EQ(row.at("specimens"), std::to_string(together)) << row.at("from");
  }
  auto const sheets = read_table_file(data + "sheets.csv");
  auto const outcomes = read_table_file((sandbox.path() / "out.csv").string());
  ASSERT_EQ(sheets.size(), outcomes.size());
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    auto const& sheet = sheets[i];
    auto const& outcome = outcomes[i].at("outcome");
    auto const& date = sheet.at("dateIdentified");
    auto const decade = date.empty() ? date : date.substr(0, 3) + "0s";
    ++recounted["storage: " + sheet.at("storageLocation")][outcome];
    ++recounted["determiner: " + sheet.at("identifiedBy")][outcome];
    ++recounted["decade: " + decade][outcome];
    auto region = sheet.at("country");
    if (!region.empty() && !sheet.at("stateProvince").empty()) region += " / ";
    ++recounted["region: " + region + sheet.at("stateProvince")][outcome];
    ++recounted["collector: "][outcome];  // none is recorded
    // A name that means several terminals is called as it is recorded.
    auto const& from = outcomes[i].at("oldName");
    bool const several = from.find(" | ") != std::string::npos;
    if (!several && (outcome == "stands" || outcome == "renamed")) {
      ++recounted["name: " + from][outcome];
    }
  }
  for (auto const& [unit, counts] : recounted) {
    for (auto const& [outcome, count] : counts) {
      EXPECT_EQ(reported[unit][outcome], count) << unit << ", " << outcome;
    }
  }
  EXPECT_EQ(divisions, (std::set<std::string>{"collector", "decade", "determiner", "name", "region",
                                              "storage"}));
}

TEST(PlantedNumbers, TheTerminalShowsTheTotals) {
  auto const& made = velunaceae();
  std::map<std::string, long> shown;
  for (auto const& line : part_of(made.ran.out, "OUTCOMES")) {
    for (auto const* outcome : kOutcomes) {
      if (line.rfind(std::string{"  "} + outcome + " ", 0) != 0) continue;
      auto const figure = figure_of(line);
      ASSERT_TRUE(figure.has_value()) << line;
      shown[outcome] = *figure;
    }
    if (line.rfind("  together ", 0) == 0) {
      EXPECT_EQ(figure_of(line), 1800) << line;
    }
  }
  EXPECT_EQ(shown, counts_of(made.result.at("totals")));
  EXPECT_NE(made.ran.out.find("  1,800 records read: 1,800 specimens judged, 0 set aside"),
            std::string::npos);

  auto const names = part_of(made.ran.out, "NAMES UPDATED, SPECIMENS NOT EXAMINED");
  auto const figure_at = [&](std::string const& words) -> std::optional<long> {
    for (auto const& line : names) {
      if (line.rfind("  " + words, 0) == 0) return figure_of(line);
    }
    return std::nullopt;
  };
  EXPECT_EQ(figure_at("Same taxon, name updated without looking"), shown.at("renamed"));
  EXPECT_EQ(figure_at("Another taxon by the record alone"), shown.at("changes"));
  EXPECT_EQ(figure_at("Still to be examined"), made.result.at("toLookAt").size());
}

// "  and 19 more rows …" -> 19: rows of a long list that the terminal leaves out.
std::size_t left_out(std::vector<std::string> const& part, std::string const& ending) {
  constexpr std::string_view before = "  and ";
  for (auto const& line : part) {
    if (line.rfind(before, 0) != 0 || line.find(ending) == std::string::npos) continue;
    auto const rest = line.substr(before.size());
    return static_cast<std::size_t>(whole_number(rest.substr(0, rest.find(' '))).value_or(0));
  }
  return 0;
}

TEST(PlantedNumbers, TheTerminalsListFromNameToNameAddsUp) {
  auto const& made = velunaceae();
  auto const part = part_of(made.ran.out, "FROM 1998 TO 2024");
  std::vector<long> shown;
  for (auto const& line : part) {
    if (auto const figure = figure_of(line)) shown.push_back(*figure);
  }
  std::vector<long> changing;
  long unchanged = 0;
  for (auto const& row : made.result.at("fromTo")) {
    auto const specimens = row.at("specimens").get<long>();
    if (row.at("byOutcome").at("stands") == specimens) {
      unchanged += specimens;
    } else {
      changing.push_back(specimens);
    }
  }
  std::sort(changing.rbegin(), changing.rend());
  ASSERT_GT(changing.size(), left_out(part, "more row"));
  auto const listed = changing.end() - static_cast<std::ptrdiff_t>(left_out(part, "more row"));
  auto const beyond = std::accumulate(listed, changing.end(), 0L);
  changing.erase(listed, changing.end());
  if (beyond > 0) changing.push_back(beyond);
  changing.push_back(unchanged);
  EXPECT_EQ(shown, changing);
}

TEST(PlantedNumbers, TheTerminalsQuestionsAndPlacesAreThoseOfTheWorklist) {
  auto const& made = velunaceae();
  std::map<std::string, long> places;    // of the worklist file
  std::map<std::string, long> cabinets;  // more places than a screen holds are summed up by these
  long sheets = 0;
  for (auto const& row : read_table(made.worklist)) {
    auto const& place = row.at("storageLocation");
    ++places[place];
    ++cabinets[place.substr(0, place.find(" / "))];
    ++sheets;
  }
  auto const part = part_of(made.ran.out, "WORKLIST");
  std::size_t questions = 0;
  long asked = 0;
  std::size_t places_shown = 0;
  std::string list;
  for (auto const& line : part) {
    if (!line.empty() && line.front() != ' ') list = line;
    auto const figure = figure_of(line);
    if (!figure) continue;
    if (list == "Questions, and the specimens that each settles") {
      ++questions;
      asked += *figure;
    } else if (list == "Specimens to pull, by storage place") {
      ++places_shown;
      auto const place = line.substr(2, line.find(" .") - 2);
      EXPECT_EQ(figure, cabinets[place]) << place;
    } else {
      ADD_FAILURE() << "under no list: " << line;
    }
  }
  EXPECT_EQ(left_out(part, "question"), 0U);
  EXPECT_EQ(asked, sheets);
  ASSERT_GT(places.size(), 20U);
  EXPECT_EQ(places_shown + left_out(part, "place"), cabinets.size());
  auto const said = std::to_string(sheets) + " specimens to look at, from " +
                    std::to_string(places.size()) + " storage places, with " +
                    std::to_string(questions) + " different questions to answer.";
  EXPECT_NE(replaced(made.ran.out, "\n  ", " ").find(said), std::string::npos) << said;
}

TEST(PlantedNumbers, TheHtmlReportShowsTheTotals) {
  auto const& made = velunaceae();
  std::map<std::string, long> shown;
  for (auto const* outcome : kOutcomes) {
    auto const row =
        std::string{"<tr><td class=\"outcome-word\">"} + outcome + "</td><td class=\"n\">";
    auto const at = made.html.find(row);
    ASSERT_NE(at, std::string::npos) << outcome;
    auto const from = at + row.size();
    auto const figure =
        whole_number(std::string_view{made.html}.substr(from, made.html.find('<', from) - from));
    ASSERT_TRUE(figure.has_value()) << outcome;
    shown[outcome] = *figure;
  }
  EXPECT_EQ(shown, counts_of(made.result.at("totals")));
  auto const& result = made.result;
  EXPECT_EQ(html_figure(made.html, "Records read"), result.at("read"));
  EXPECT_EQ(html_figure(made.html, "Names to update without looking"),
            result.at("totals").at("renamed"));
  EXPECT_EQ(html_figure(made.html, "Sheets that somebody must look at"),
            result.at("toLookAt").size());
  EXPECT_EQ(html_figure(made.html, "Judged by name alone"), result.at("nameOnly"));
  EXPECT_EQ(html_figure(made.html, "Judged by recorded characters as well"),
            result.at("withCharacters"));
  EXPECT_EQ(html_figure(made.html, "Outcomes that depend on how a lead is read"),
            result.at("readingDependent"));
}

TEST(PlantedNumbers, TheHtmlTableFromNameToNameAddsUp) {
  auto const names = html_section(velunaceae().html, "names");
  constexpr std::string_view before = "<td class=\"n\">";
  long sum = 0;
  for (auto at = names.find(before); at != std::string::npos; at = names.find(before, at + 1)) {
    auto const from = at + before.size();
    sum += whole_number(std::string_view{names}.substr(from, names.find('<', from) - from))
               .value_or(0);
  }
  EXPECT_EQ(sum, velunaceae().result.at("read"));
}

TEST(PlantedWorklist, TheSheetsToLookAtAreTheSameEverywhereAndAllNeedALook) {
  auto const& made = velunaceae();
  auto const wanted = with_outcome(read_table(made.specimens), outcomes_to_look_at());
  EXPECT_EQ(wanted.size(), 174U);
  {
    SCOPED_TRACE("JSON");
    expect_the_same_rows(wanted, catalog_numbers(made.result.at("toLookAt")));
  }
  {
    SCOPED_TRACE("worklist CSV");
    expect_the_same_rows(wanted, catalog_numbers(read_table(made.worklist)));
  }
  SCOPED_TRACE("HTML");
  // A long group names its first sheets and says how many more there are.
  auto const section = html_section(made.html, "specimens");
  auto const named = catalog_numbers_in(section);
  std::size_t unnamed = 0;
  constexpr std::string_view before = ". And ";
  for (auto at = section.find(before); at != std::string::npos; at = section.find(before, at + 1)) {
    auto const rest = std::string_view{section}.substr(at + before.size());
    if (auto const more = whole_number(rest.substr(0, rest.find(" more: see the worklist.")))) {
      unnamed += static_cast<std::size_t>(*more);
    }
  }
  EXPECT_TRUE(std::includes(wanted.begin(), wanted.end(), named.begin(), named.end()));
  EXPECT_GT(named.size(), 100U);
  EXPECT_EQ(named.size() + unnamed, wanted.size());
}

TEST(PlantedWorklist, TheSheetsToRelabelAreThoseWithAnotherName) {
  auto const& made = velunaceae();
  expect_the_same_rows(with_outcome(read_table(made.specimens), {"renamed", "changes"}),
                       catalog_numbers(made.result.at("toRelabel")));
}

TEST(PlantedWorklist, EachSheetToLookAtIsInExactlyOneGroup) {
  auto const& result = velunaceae().result;
  std::vector<int> groups(result.at("toLookAt").size());
  for (auto const& group : result.at("worklist")) {
    for (auto const& index : group.at("specimens")) {
      ++groups.at(index.get<std::size_t>());
      auto const& specimen = result.at("toLookAt").at(index.get<std::size_t>()).at("specimen");
      EXPECT_EQ(specimen.value("storageLocation", ""), group.value("storageLocation", ""))
          << specimen.at("catalogNumber");
    }
  }
  EXPECT_EQ(groups, std::vector<int>(groups.size(), 1));
}

TEST(PlantedWorklist, ASheetThatAnObservationSettlesIsAskedForItWithTheAnswersAndTheirResults) {
  std::map<std::string, Row> sheets;
  for (auto const& row : read_table(velunaceae().specimens)) sheets[row.at("catalogNumber")] = row;
  for (auto const& row : read_table(velunaceae().worklist)) {
    auto const& sheet = sheets.at(row.at("catalogNumber"));
    auto const& outcome = sheet.at("outcome");
    EXPECT_FALSE(row.at("question").empty()) << told(row, {"catalogNumber"});
    EXPECT_EQ(row.at("storageLocation"), sheet.at("storageLocation"));
    EXPECT_EQ(row.at("answer") + row.at("newName") + row.at("by") + row.at("date"), "");
    if (outcome != "open" && outcome != "narrowed") continue;
    EXPECT_EQ(row.at("question"), sheet.at("lookAt"));
    EXPECT_GE(items_of(row.at("answersAllowed")).size(), 2U) << told(row, {"catalogNumber"});
  }
}

}  // namespace
}  // namespace keydrift::test
