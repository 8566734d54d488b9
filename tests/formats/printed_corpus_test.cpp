// Invented keys in the typographic habits of real sources, each with the truth about its leads
// (corpus/README.md): how many leads the reader sends to the right destination.
//
//   KEYDRIFT_CORPUS_REPORT=FILE  writes what went wrong, lead by lead, and which lines were left
//   out KEYDRIFT_CORPUS_RAISE=1      raises the recorded expectations to what was reached (never
//   lowers) KEYDRIFT_CORPUS=DIR          reads other keys than those of the repository

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "printed_truth.hpp"

namespace keydrift::test {
namespace {

namespace fs = std::filesystem;

std::string read_file(fs::path const& path) {
  std::ifstream in{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

fs::path corpus_folder() {
  if (auto const* folder = std::getenv("KEYDRIFT_CORPUS")) return folder;
  return fs::path{KEYDRIFT_SOURCE_DIR} / "tests/formats/corpus";
}

std::vector<fs::path> corpus_keys() {
  std::vector<fs::path> keys;
  for (auto const& entry : fs::directory_iterator{corpus_folder()}) {
    if (entry.path().extension() == ".txt") keys.push_back(entry.path());
  }
  std::sort(keys.begin(), keys.end());
  return keys;
}

fs::path truth_of(fs::path key) { return key.replace_extension(".truth"); }

struct Score {
  std::string key;
  std::size_t leads{};
  std::size_t right{};
  std::size_t invented{};             // leads that the key does not have
  std::vector<std::string> lost;      // words
  std::vector<std::string> wrong;     // "LINE: truth X; read Y"
  std::vector<std::string> left_out;  // lines with letters that were kept nowhere
  [[nodiscard]] double share() const {
    return static_cast<double>(right) / static_cast<double>(leads);
  }
};

// Whole hundredths, rounded down: what may be recorded without promising too much.
double hundredths(double share) { return std::floor(share * 100 + 1e-9) / 100; }

void compare_leads(Truth const& truth, Edition const& edition, Score& score) {
  auto read = read_truth(edition);
  // A key within the file is as well named by its first couplet.
  auto const alternative = [&](std::string const& wanted) -> std::string {
    for (auto const& part : edition.parts) {
      if (!agrees(wanted, "key: " + part.title)) continue;
      auto const& leads = edition[part.start].leads;
      if (!leads.empty()) return "-> " + to_text(LeadSpot{leads.front().place.line});
    }
    return {};
  };
  for (auto const& [spot, wanted] : truth.leads) {
    ++score.leads;
    auto const found = read.find(spot);
    auto const said = found == read.end() ? "no lead begins here" : found->second;
    if (agrees(wanted, said) || said == alternative(wanted)) {
      ++score.right;
    } else {
      score.wrong.push_back(fmt::format("{}: truth {}; read {}", to_text(spot), wanted, said));
    }
    if (found != read.end()) read.erase(found);
  }
  score.invented = read.size();
  for (auto const& [spot, said] : read) {
    score.wrong.push_back(fmt::format("{}: no lead; read {}", to_text(spot), said));
  }
}

// Every line has one account, lines with letters are never blank, what is left out has a reason.
void expect_accounted(std::string const& key, SourceReading const& source) {
  std::istringstream lines{source.text};
  std::string line;
  std::size_t number = 0;
  while (std::getline(lines, line)) {
    ++number;
    ASSERT_LE(number, source.lines.size()) << key << ": no account of line " << number;
    auto const& account = source.lines[number - 1];
    EXPECT_EQ(account.line, number) << key;
    EXPECT_TRUE(!account.reason.empty() || account.kind == LineKind::blank) << key << ":" << number;
    bool const letters = std::any_of(line.begin(), line.end(), [](char c) {
      return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    });
    EXPECT_FALSE(letters && account.kind == LineKind::blank) << key << ":" << number;
  }
  EXPECT_EQ(number, source.lines.size()) << key;
}

Score score_key(fs::path const& path, Truth const& truth) {
  Score score{.key = path.stem().string(), .lost = {}, .wrong = {}, .left_out = {}};
  auto const bytes = read_file(path);
  auto const name = path.filename().string();
  auto const loaded = read_edition({.name = name, .bytes = bytes});
  if (truth.unreadable) {
    score.leads = 1;
    bool const refused = !loaded || loaded.value->edition.couplets.empty();
    score.right = refused ? 1 : 0;
    if (!refused) {
      score.invented = loaded.value->edition.couplets.size();
      score.wrong.push_back(fmt::format("no couplet key; {} couplets read", score.invented));
    }
    EXPECT_TRUE(loaded || !loaded.findings.empty()) << name;
    return score;
  }
  if (!loaded) {
    score.leads = truth.leads.size();
    for (auto const& finding : loaded.findings) score.wrong.push_back(to_text(finding));
    return score;
  }
  compare_leads(truth, loaded.value->edition, score);
  EXPECT_TRUE(loaded.value->source) << name << " was not read as printed text";
  if (loaded.value->source) {
    expect_accounted(name, *loaded.value->source);
    score.left_out = left_out_lines(*loaded.value->source);
  }
  score.lost = lost_words(*loaded.value);
  return score;
}

void write_report(std::vector<Score> const& scores) {
  auto const* path = std::getenv("KEYDRIFT_CORPUS_REPORT");
  if (path == nullptr) return;
  std::ofstream out{path};
  for (auto const& score : scores) {
    if (score.wrong.empty() && score.lost.empty() && score.left_out.empty()) continue;
    out << fmt::format("== {}: {} of {} right, {} invented\n", score.key, score.right, score.leads,
                       score.invented);
    for (auto const& line : score.wrong) out << "  " << line << '\n';
    for (auto const& word : score.lost) out << "  lost word " << word << '\n';
    for (auto const& line : score.left_out) out << "  left out " << line << '\n';
  }
}

void raise_expectation(fs::path const& path, Truth const& truth, Score const& score) {
  auto const expect = std::max(truth.expect, hundredths(score.share()));
  auto const lost = std::min(truth.lost, score.lost.size());
  auto const old = read_file(path);
  auto const first = lost == 0 ? fmt::format("expect {:.2f}", expect)
                               : fmt::format("expect {:.2f} lost {}", expect, lost);
  std::ofstream{path, std::ios::binary} << first << old.substr(old.find('\n'));
}

TEST(PrintedCorpus, SendsLeadsToTheRightDestination) {
  std::vector<Score> scores;
  Score all{.key = "all", .lost = {}, .wrong = {}, .left_out = {}};
  for (auto const& key : corpus_keys()) {
    auto const truth = parse_truth(read_file(truth_of(key)), truth_of(key).filename().string());
    scores.push_back(score_key(key, truth));
    auto const& score = scores.back();
    EXPECT_GE(score.share() + 1e-9, truth.expect) << score.key;
    EXPECT_LE(score.lost.size(), truth.lost) << score.key << ": first " << score.lost.front();
    if (std::getenv("KEYDRIFT_CORPUS_RAISE") != nullptr) {
      raise_expectation(truth_of(key), truth, score);
    }
    all.leads += score.leads;
    all.right += score.right;
    all.invented += score.invented;
    all.lost.insert(all.lost.end(), score.lost.begin(), score.lost.end());
  }
  ASSERT_FALSE(scores.empty());
  scores.push_back(all);
  std::string table = fmt::format("{:40} {:>6} {:>6} {:>6} {:>8} {:>5}\n", "key", "leads", "right",
                                  "share", "invented", "lost");
  for (auto const& score : scores) {
    table += fmt::format("{:40} {:6} {:6} {:6.3f} {:8} {:5}\n", score.key, score.leads, score.right,
                         score.share(), score.invented, score.lost.size());
  }
  std::cout << table;
  scores.pop_back();
  write_report(scores);
  EXPECT_GE(all.share(), 0.99);  // above the bar that is set for printed keys
}

}  // namespace
}  // namespace keydrift::test
