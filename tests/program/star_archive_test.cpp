// The demo's archive as a Darwin Core archive with its measurements in an extension.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "binary.hpp"
#include "golden.hpp"
#include "planted_support.hpp"
#include "table.hpp"

namespace keydrift::test {
namespace {

constexpr char const* kTerms = "http://rs.tdwg.org/dwc/terms/";

std::string on_one_line(std::string cell) {
  for (char& c : cell) {
    if (c == '\n' || c == '\t' || c == '\r') c = ' ';
  }
  return cell;
}

TEST(StarArchive, GivesWhatTheFlatTableGivesInWhateverOrderItsRowsAre) {
  Sandbox const sandbox;
  std::vector<std::string> const core_columns{"occurrenceID",   "catalogNumber",
                                              "scientificName", "identificationQualifier",
                                              "identifiedBy",   "dateIdentified",
                                              "typeStatus",     "country",
                                              "stateProvince",  "identificationReferences",
                                              "voucher",        "storageLocation",
                                              "institutionCode"};
  std::string const sheets = slurp(fixture("velunaceae/sheets.csv"));
  auto const header = sheets.substr(0, sheets.find('\n'));
  std::vector<std::string> characters;
  bool behind = false;
  std::size_t from = 0;
  while (from <= header.size()) {
    auto const end = std::min(header.find(',', from), header.size());
    auto const column = header.substr(from, end - from);
    if (behind) characters.push_back(column);
    behind = behind || column == "voucher";
    from = end + 1;
  }
  ASSERT_GT(characters.size(), 20U);

  std::string occurrences;
  std::vector<std::string> facts;
  for (auto const& row : read_table(sheets)) {
    for (auto const& column : core_columns) {
      occurrences += (column == core_columns.front() ? "" : "\t") + on_one_line(row.at(column));
    }
    occurrences += "\n";
    for (auto const& character : characters) {
      if (row.at(character).empty()) continue;
      facts.push_back(row.at("occurrenceID") + "\t" + character + "\t" + row.at(character) +
                      "\t\n");
    }
  }
  for (auto const& row : read_table_file(fixture("velunaceae/measurements.csv"))) {
    facts.push_back(row.at("occurrenceID") + "\t" + row.at("measurementType") + "\t" +
                    row.at("measurementValue") + "\t" + row.at("measurementUnit") + "\n");
  }
  std::sort(facts.begin(), facts.end(), [](std::string const& a, std::string const& b) {
    return std::string{a.rbegin(), a.rend()} < std::string{b.rbegin(), b.rend()};
  });
  std::string all_facts;
  for (auto const& fact : facts) all_facts += fact;

  std::string fields;
  for (std::size_t i = 0; i < core_columns.size(); ++i) {
    fields +=
        "<field index=\"" + std::to_string(i) + "\" term=\"" + kTerms + core_columns[i] + "\"/>\n";
  }
  std::string const form = " fieldsTerminatedBy=\"\\t\" fieldsEnclosedBy=\"\" ";
  (void)sandbox.write(
      "meta.xml",
      "<archive xmlns=\"http://rs.tdwg.org/dwc/text/\">\n<core rowType=\"" + std::string{kTerms} +
          "Occurrence\"" + form + "><files><location>occurrence.txt</location></files>" +
          "<id index=\"0\"/>\n" + fields + "</core>\n<extension rowType=\"" + kTerms +
          "MeasurementOrFact\"" + form + "><files><location>facts.txt</location></files>" +
          "<coreid index=\"0\"/><field index=\"1\" term=\"" + kTerms + "measurementType\"/>" +
          "<field index=\"2\" term=\"" + kTerms + "measurementValue\"/><field index=\"3\" term=\"" +
          kTerms + "measurementUnit\"/></extension></archive>\n");
  (void)sandbox.write("occurrence.txt", occurrences);
  (void)sandbox.write("facts.txt", all_facts);

  auto const data = fixture("velunaceae") + "/";
  auto const ran = run_keydrift(
      {"redetermine", data + "edition-1998.txt", data + "edition-2024.txt", sandbox.path().string(),
       "--lexicon", data + "lexicon.csv", "--concepts", data + "concepts-1998-2024.csv",
       "--parents", data + "parents.csv", "--specimens", "specimens.csv"},
      sandbox.path());
  ASSERT_EQ(ran.exit, 0) << ran.err;
  std::multiset<std::string> planted;
  std::multiset<std::string> reported;
  for (auto const& row : read_table_file(data + "expected-outcomes.csv")) {
    planted.insert(row.at("catalogNumber") + " " + row.at("outcome") + " " +
                   row.at("newScientificName"));
  }
  for (auto const& row : read_table_file((sandbox.path() / "specimens.csv").string())) {
    reported.insert(row.at("catalogNumber") + " " + row.at("outcome") + " " +
                    row.at("newScientificName"));
  }
  expect_the_same_rows(planted, reported);
}

}  // namespace
}  // namespace keydrift::test
