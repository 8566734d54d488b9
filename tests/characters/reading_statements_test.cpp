// The reader against statements that were understood by hand: statements/README.md.

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/formats/lexicon_file.hpp"
#include "reading_support.hpp"
#include "statement_table.hpp"

namespace keydrift::test {
namespace {

std::string file(std::string const& name) {
  std::ifstream in{KEYDRIFT_SOURCE_DIR "/tests/characters/statements/" + name, std::ios::binary};
  EXPECT_TRUE(in) << name;
  return {std::istreambuf_iterator<char>{in}, {}};
}

Lexicon lexicon_from(std::string const& name) {
  auto const bytes = file(name);
  auto loaded = read_lexicon({.name = name, .bytes = bytes});
  EXPECT_TRUE(loaded.value.has_value()) << name;
  for (auto const& finding : loaded.findings) ADD_FAILURE() << to_text(finding);
  return loaded.value ? std::move(*loaded.value) : Lexicon{};
}

struct Count {
  std::size_t right{};
  std::size_t said{};
  std::size_t truth{};
  Count& operator+=(Count const& other) {
    right += other.right;
    said += other.said;
    truth += other.truth;
    return *this;
  }
  [[nodiscard]] double precision() const { return share(said); }
  [[nodiscard]] double recall() const { return share(truth); }
  [[nodiscard]] double share(std::size_t of) const {
    return of == 0 ? 1 : static_cast<double>(right) / static_cast<double>(of);
  }
};

void print(std::string const& language, std::string const& kind, Count const& count) {
  std::printf("%-3s %-36s %5zu %5zu %5zu   %.3f   %.3f\n", language.c_str(), kind.c_str(),
              count.right, count.said, count.truth, count.precision(), count.recall());
}

class Statements : public testing::Test {
 protected:
  Count read(TrueLead const& lead) {
    auto edition = couplet_of({lead.text}, lead.language);
    read_statements(edition, lexicons_.at(lead.lexicon));
    std::vector<Statement> said_here;
    for (auto const& statement : edition.couplets.front().leads.front().statements) {
      if (!statement.any_of.empty()) said_here.push_back(statement);
    }
    Count count{.right = 0, .said = said_here.size(), .truth = lead.says.size()};
    auto left = said_here;
    std::string missed;
    for (auto const& truth : lead.says) {
      auto const found = std::find_if(left.begin(), left.end(), [&](Statement const& statement) {
        return agrees(truth, statement);
      });
      if (found == left.end()) {
        missed += "    wanted  " + truth.printed + '\n';
        continue;
      }
      ++count.right;
      left.erase(found);
    }
    if (std::getenv("KEYDRIFT_SHOW_STATEMENTS") != nullptr && (!missed.empty() || !left.empty())) {
      std::cout << lead.line << ": " << lead.text << '\n' << missed;
      for (auto const& statement : left) std::cout << "    read    " << said(statement) << '\n';
    }
    return count;
  }

  // Prints precision and recall by language and kind, and gives them for all.
  Count read_table(std::string const& name) {
    std::map<std::pair<std::string, std::string>, Count> counts;
    auto const leads = read_statement_table(file(name));
    for (auto const& lead : leads) counts[{lead.language, lead.kind}] += read(lead);
    std::printf("%-40s right  said  true  precision recall\n", name.c_str());
    std::map<std::string, Count> languages;
    for (auto const& [of, count] : counts) {
      print(of.first, of.second, count);
      languages[of.first] += count;
    }
    Count all;
    for (auto const& [language, count] : languages) {
      print(language, "all kinds", count);
      all += count;
    }
    print("", "all", all);
    return all;
  }

  std::map<std::string, Lexicon> const lexicons_{{"plants", lexicon_from("plants.csv")},
                                                 {"animals", lexicon_from("animals.csv")},
                                                 {"none", Lexicon{}}};
};

// Tables of their own, one bar for all: what was held out counts as much as what the reader was
// mended by.
TEST_F(Statements, AreRead) {
  Count all;
  for (auto const* table : {"english.txt", "other_languages.txt", "held_out.txt"}) {
    all += read_table(table);
  }
  print("", "all tables", all);
  constexpr double kBar = 0.97;
  EXPECT_GE(all.truth, 700U);
  EXPECT_GE(all.precision(), kBar);
  EXPECT_GE(all.recall(), kBar);
}

}  // namespace
}  // namespace keydrift::test
