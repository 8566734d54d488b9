// The demo archive without any lexicon: what is decided agrees with what the lexicon decides, sheet
// by sheet.

#include <gtest/gtest.h>

#include <iostream>
#include <map>

#include "planted_support.hpp"

namespace keydrift::test {
namespace {

// Every outcome but those that leave it to somebody.
bool decides(std::string const& outcome) { return outcome != "open" && outcome != "not keyed"; }

std::vector<std::string> without_lexicon(std::vector<std::string> options) {
  for (std::size_t i = 0; i + 1 < options.size(); ++i) {
    if (options[i] != "--lexicon") continue;
    options.erase(options.begin() + static_cast<std::ptrdiff_t>(i),
                  options.begin() + static_cast<std::ptrdiff_t>(i) + 2);
    break;
  }
  return options;
}

Redetermined const& by_words() {
  static auto const run = [] {
    std::vector<std::string> inputs{"edition-1998.txt", "edition-2024.txt"};
    auto const options = without_lexicon(velunaceae_options());
    inputs.insert(inputs.end(), options.begin(), options.end());
    return redetermine(fixture("velunaceae"), inputs);
  }();
  return run;
}

TEST(WithoutLexicon, DecidesNoSheetOtherwiseThanTheLexicon) {
  auto const with = read_table(velunaceae().specimens);
  auto const without = read_table(by_words().specimens);
  ASSERT_EQ(with.size(), without.size());
  std::size_t decided = 0;
  std::size_t by_lexicon = 0;
  std::map<std::string, std::size_t> moves;
  for (std::size_t i = 0; i < with.size(); ++i) {
    ASSERT_EQ(with[i].at("catalogNumber"), without[i].at("catalogNumber"));
    auto const& a = with[i].at("outcome");
    auto const& b = without[i].at("outcome");
    if (decides(a)) ++by_lexicon;
    if (a != b) ++moves[a + " -> " + b];
    if (!decides(b)) continue;
    ++decided;
    EXPECT_EQ(a, b) << with[i].at("catalogNumber") << ' ' << with[i].at("scientificName") << ": "
                    << without[i].at("reason");
    if (b == "stands" || b == "renamed") {
      EXPECT_EQ(with[i].at("newScientificName"), without[i].at("newScientificName"))
          << with[i].at("catalogNumber");
    }
  }
  std::cout << decided << " of " << with.size() << " sheets are decided without a lexicon, "
            << by_lexicon << " with one\n";
  for (auto const& [move, count] : moves) std::cout << "  " << move << ": " << count << '\n';
  EXPECT_GE(decided, 1480U);
}

TEST(WithoutLexicon, TellsWhatRecordsWereTakenFor) {
  auto const& result = by_words().result;
  ASSERT_TRUE(result.contains("ties"));
  std::map<std::string, std::string> ties;
  for (auto const& tie : result.at("ties")) {
    auto const key = tie.at("column").get<std::string>() + '=' + tie.value("value", "");
    ties[key] = tie.contains("character")
                    ? tie.at("confidence").get<std::string>() + ' ' + tie.value("states", "number")
                    : "not tied";
  }
  EXPECT_EQ(ties["leaf-margin=scabrid"], "high scabrid");
  EXPECT_EQ(ties["utricle-nerves=strong"], "high strongly nerved");
  EXPECT_EQ(ties["bract-length=shorter"], "medium shorter than the inflorescence");
  EXPECT_EQ(ties["stigmas="], "high number");
  // No lead knows of such margins.
  EXPECT_EQ(ties["leaf-margin=wavy"], "not tied");
}

}  // namespace
}  // namespace keydrift::test
