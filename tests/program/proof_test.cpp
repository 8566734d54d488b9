// `keydrift proof` as a user runs it: numbers, frequencies, error rates, style, exit status.

#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "binary.hpp"

namespace keydrift::test {
namespace {

// Depths 1, 2, 3, 3.
constexpr char const* kComb =
    "1 Beak bifid ........ Aus bus\n- Beak entire ....... 2\n"
    "2 Spike long ........ Aus cus\n- Spike short ....... 3\n"
    "3 Stem hollow ....... Aus dus\n- Stem solid ........ Aus eus\n";

nlohmann::json json_of(Sandbox const& sandbox, std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), "proof");
  arguments.insert(arguments.end(), {"--json", "out.json"});
  auto const ran = run_keydrift(arguments, sandbox.path());
  EXPECT_EQ(ran.err, "");
  std::ifstream file{sandbox.path() / "out.json"};
  return nlohmann::json::parse(file);
}

// The figure at the end of the line that begins (blanks aside) with the words.
std::string figure(std::string const& report, std::string const& words) {
  std::istringstream lines{report};
  for (std::string line; std::getline(lines, line);) {
    auto const begin = line.find_first_not_of(' ');
    if (begin == std::string::npos || line.compare(begin, words.size(), words) != 0) continue;
    auto const dots = line.rfind(". ");
    return dots == std::string::npos ? std::string{} : line.substr(dots + 2);
  }
  return "no such line";
}

TEST(ProofCommand, SaysHowOftenDeterminationsComeOutRight) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kComb));
  static_cast<void>(
      sandbox.write("counts.csv", "taxon,count\nAus bus,6\nAus cus,2\nAus dus,1\nAus eus,1\n"));
  auto const ran = run_keydrift(
      {"proof", "key.txt", "--frequencies", "counts.csv", "--error-rate", "10%"}, sandbox.path());
  EXPECT_EQ(ran.exit, 0) << ran.out << ran.err;
  EXPECT_EQ(figure(ran.out, "on the average, all taxa equally frequent"), "2.25");
  EXPECT_EQ(figure(ran.out, "on the average, 4 taxa by the frequencies given"), "1.60");
  // (.9 + .81 + .729 + .729) / 4; (6 * .9 + 2 * .81 + 2 * .729) / 10
  EXPECT_EQ(figure(ran.out, "all taxa equally frequent"), "79.2 %");
  EXPECT_EQ(figure(ran.out, "by the frequencies given"), "84.8 %");
  EXPECT_EQ(figure(ran.out, "lowest: Aus dus"), "72.9 %");

  auto const json =
      json_of(sandbox, {"key.txt", "--frequencies", "counts.csv", "--error-rate", "0.1"});
  EXPECT_NEAR(json["expectedRight"]["mean"], .792, 1e-12);
  EXPECT_NEAR(json["expectedRight"]["frequencyMean"], .8478, 1e-12);
  EXPECT_EQ(json["expectedRight"]["taxa"].size(), 4U);
  EXPECT_NEAR(json["frequencyNumbers"]["meanRoute"], 1.6, 1e-12);
  EXPECT_NEAR(json["frequencyNumbers"]["huffmanBound"], 1.6, 1e-12);
  EXPECT_FALSE(json.contains("difficultyNumbers"));
}

TEST(ProofCommand, ReportsCountsThatMeanNoTaxonOfTheKey) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kComb));
  static_cast<void>(sandbox.write("counts.csv", "taxon,count\nAus buss,6\nAus cus,2\n"));
  auto const ran = run_keydrift(
      {"proof", "key.txt", "--frequencies", "counts.csv", "--fail-on", "warning"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.out.find("counts.csv:2:1 [frequency-of-unknown-taxon]"), std::string::npos)
      << ran.out;
  EXPECT_NE(ran.out.find("did you mean \"Aus bus\""), std::string::npos) << ran.out;
}

TEST(ProofCommand, RefusesRatesAndFilesThatItCannotUse) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kComb));
  static_cast<void>(sandbox.write("counts.csv", "taxon,count\nAus bus,often\n"));
  for (auto const* rate : {"2", "-0.1", "much", "eye=0.1", "microscope=", "nan"}) {
    auto const ran = run_keydrift({"proof", "key.txt", "--error-rate", rate}, sandbox.path());
    EXPECT_EQ(ran.exit, 2) << rate;
    EXPECT_EQ(ran.out, "") << rate;
    EXPECT_NE(ran.err.find(std::string{"--error-rate "} + rate), std::string::npos) << ran.err;
    EXPECT_NE(ran.err.find("as in 0.025 or 2.5%"), std::string::npos) << ran.err;
  }
  auto const ran =
      run_keydrift({"proof", "key.txt", "--frequencies", "counts.csv"}, sandbox.path());
  EXPECT_EQ(ran.exit, 3);
  EXPECT_NE(ran.err.find("bad-count"), std::string::npos) << ran.err;
}

TEST(ProofCommand, RefusesRatesByDifficultyWithoutALexicon) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kComb));
  auto const ran =
      run_keydrift({"proof", "key.txt", "--error-rate", "microscope=10%"}, sandbox.path());
  EXPECT_EQ(ran.exit, 2);
  EXPECT_EQ(ran.out, "");
  EXPECT_EQ(
      ran.err,
      "keydrift: --error-rate microscope=10%: without --lexicon no couplet is known to take a "
      "microscope; give the lexicon, or one rate for all couplets\n");
}

TEST(ProofCommand, KeysOutTaxaBehindACircle) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt",
                                  "1 Beak bifid ........ Aus bus\n- Beak entire ....... 2\n"
                                  "2 Spike long ........ Aus cus\n- Spike short ....... 3\n"
                                  "3 Stem hollow ....... Aus dus\n- Stem solid ........ 2\n"));
  auto const ran = run_keydrift({"proof", "key.txt", "--error-rate", "5%"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1);
  EXPECT_NE(ran.out.find("3 couplets, with 6 leads in all, key out 3 taxa."), std::string::npos)
      << ran.out;
  EXPECT_EQ(ran.out.find("cannot be reached"), std::string::npos) << ran.out;
  EXPECT_EQ(ran.out.find("come out right"), std::string::npos) << ran.out;
  auto const json = json_of(sandbox, {"key.txt", "--error-rate", "5%"});
  EXPECT_EQ(json["numbers"]["taxaBehindCircles"], 2);
  EXPECT_FALSE(json["numbers"].contains("meanRoute"));
  EXPECT_FALSE(json.contains("expectedRight"));
}

TEST(ProofCommand, TakesRatesByDifficultyFromTheLexicon) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kComb));
  static_cast<void>(
      sandbox.write("lexicon.csv",
                    "character,label,structure,subjects,kind,difficulty,state\n"
                    "beak,beak,beak,beak,categorical,microscope,bifid\n,,,,,,entire\n"
                    "spike,spike,spike,spike,categorical,naked eye,long\n,,,,,,short\n"
                    "stem,stem,stem,stem,categorical,hand lens,hollow\n,,,,,,solid\n"));
  auto const json =
      json_of(sandbox, {"key.txt", "--lexicon", "lexicon.csv", "--error-rate", "0.02",
                        "--error-rate", "microscope=0.05", "--error-rate", "hand lens=0.10"});
  EXPECT_EQ(json["difficultyNumbers"]["couplets"]["microscope"], 1);
  EXPECT_EQ(json["difficultyNumbers"]["hardEarly"], 1);
  EXPECT_EQ(json["difficultyNumbers"]["taxaBehindHard"], 4);
  EXPECT_NEAR(json["difficultyNumbers"]["meanCost"], (4 + 5 + 7 + 7) / 4.0, 1e-12);
  // .95 * .98 * .90
  EXPECT_NEAR(json["expectedRight"]["taxa"][0]["chance"], .8379, 1e-12);
  EXPECT_EQ(json["expectedRight"]["errorRateByDifficulty"]["hand lens"], .1);
}

TEST(ProofCommand, CountsRemarksOnStyleAndShowsThemOnlyWhenAsked) {
  Sandbox const sandbox;
  static_cast<void>(
      sandbox.write("key.txt",
                    "1 Beak not bifid .... 2\n- Stem hollow ....... Aus bus\n"
                    "2 Spike long ........ Aus cus\n- Spike short ....... Aus dus\n"));
  auto const plain = run_keydrift({"proof", "key.txt"}, sandbox.path());
  EXPECT_EQ(plain.out.find("STYLE"), std::string::npos) << plain.out;
  auto const ran = run_keydrift({"proof", "key.txt", "--style"}, sandbox.path());
  EXPECT_EQ(ran.exit, plain.exit);
  EXPECT_NE(ran.out.find("3 remarks on style"), std::string::npos) << ran.out;
  EXPECT_EQ(figure(ran.out, "The first lead is negative [first-lead-negative]"), "1");
  EXPECT_EQ(figure(ran.out, "The lead of more taxa comes first [larger-side-first]"), "1");
  EXPECT_NE(ran.out.find("    line 2\n"), std::string::npos) << ran.out;
}

TEST(ProofCommand, PointsAtTheNameInTheFrontMatter) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write(
      "key.txt", std::string{"Title: Aus\nLists: Aus bus; Aus cus;\n   Aus dus; Aus zus; Aus eus\n"
                             "Excludes: Bus; Aus eus\n\n"} +
                     kComb));
  auto const json = json_of(sandbox, {"key.txt"});
  std::vector<std::string> places;
  for (auto const& finding : json["findings"]) {
    places.push_back(finding["code"].get<std::string>() + "@" + finding["line"].dump() + ":" +
                     finding["column"].dump());
    for (auto const& related : finding.value("related", nlohmann::json::array())) {
      places.back() += " see " + related["line"].dump() + ":" + related["column"].dump();
    }
  }
  EXPECT_EQ(places, (std::vector<std::string>{"listed-not-keyed@3:13",
                                              "keyed-though-excluded@11:23 see 4:16"}));
}

TEST(ProofCommand, KnowsSynonymsInExceptions) {
  Sandbox const sandbox;
  static_cast<void>(
      sandbox.write("key.txt",
                    "Title: Aus\nSynonyms: Aus bus = Fus gus\n\n"
                    "1 Beak bifid, except in Fus gus ........ 2\n- Beak entire ....... Aus eus\n"
                    "2 Spike long ........ Aus bus\n- Spike short ....... Aus dus\n"));
  auto const ran = run_keydrift({"proof", "key.txt"}, sandbox.path());
  EXPECT_EQ(ran.out.find("exception-"), std::string::npos) << ran.out;
}

TEST(ProofCommand, ExplainsACodeAndListsThemAll) {
  auto const one = run_keydrift({"proof", "--explain-finding", "encoding-damage"});
  EXPECT_EQ(one.exit, 0);
  EXPECT_EQ(one.out.rfind("encoding-damage (warning): Letters were lost on the way\n\n", 0), 0U)
      << one.out;
  auto const all = run_keydrift({"proof", "--explain-finding"});
  EXPECT_EQ(all.exit, 0);
  EXPECT_EQ(all.out.rfind("abbreviation-not-resolved ", 0), 0U) << all.out;
  std::istringstream lines{all.out};
  for (std::string line; std::getline(lines, line);) {
    auto const title = line.find_first_not_of(' ', std::min(line.find(' '), line.size()));
    if (line.front() == ' ' || title == std::string::npos) continue;  // goes on
    EXPECT_FALSE(line[title] >= 'a' && line[title] <= 'z') << line;
  }
  auto const none = run_keydrift({"proof", "--explain-finding", "encoding-damaged"});
  EXPECT_EQ(none.exit, 2);
  EXPECT_EQ(none.err,
            "keydrift: no finding is called \"encoding-damaged\"\n"
            "  did you mean \"encoding-damage\"?\n");
}

// --- every code is explained -------------------------------------------------------------------

// Functions whose first text is a finding's code.
bool reports(std::string_view function) {
  for (std::string_view const begin : {"report", "refus", "finding_"}) {
    if (function.starts_with(begin)) return true;
  }
  static std::set<std::string_view> const kNames{
      "add",    "add_about", "add_finding", "complain",     "warn",           "remark",
      "reject", "finding",   "error_in",    "make_finding", "at_destination", "fail"};
  return kNames.contains(function);
}

// The literals of a source that are codes: what is assigned to a member `code`, and what a function
// that reports is given first.
std::set<std::string> codes_in(std::filesystem::path const& source) {
  std::ifstream file{source};
  std::string text;
  for (std::string line; std::getline(file, line);) {
    text += line.substr(0, line.find("//")) + "\n";
  }
  static std::regex const kLiteral{"\"([a-z]+(?:-[a-z0-9]+)*)\""};
  static std::regex const kAssigned{"\\bcode\\s*[={][^;\"]*(\\?[^;]*)?$"};
  static std::regex const kFunction{"(\\w+)\\s*$"};
  constexpr std::ptrdiff_t kFarthest = 200;
  std::set<std::string> found;
  for (std::sregex_iterator at{text.begin(), text.end(), kLiteral}, end; at != end; ++at) {
    auto const begin = std::max<std::ptrdiff_t>(0, at->position() - kFarthest);
    auto const before = text.substr(static_cast<std::size_t>(begin),
                                    static_cast<std::size_t>(at->position() - begin));
    if (before.find("code") != std::string::npos && std::regex_search(before, kAssigned))
      found.insert((*at)[1].str());
    // The parenthesis that the literal stands in.
    std::size_t open = before.size();
    for (int depth = 0; open-- > 0;) {
      char const c = before[open];
      if (c == ';' || c == '{' || c == '}') open = 0;
      if (c == ')') ++depth;
      if (c == '(' && depth-- == 0) break;
      if (open == 0) break;
    }
    if (open == 0 || open >= before.size()) continue;
    auto const between = before.substr(open + 1);
    bool const first =
        between.find('"') == std::string::npos || between.find('?') != std::string::npos;
    std::smatch function;
    auto const head = before.substr(0, open);
    if (first && std::regex_search(head, function, kFunction) && reports(function[1].str())) {
      found.insert((*at)[1].str());
    }
  }
  return found;
}

// Of those, what is none after all: parts of labels.
std::set<std::string> const kNoCodes{"bis", "ter"};

TEST(ProofCommand, ExplainsEveryCodeInTheSources) {
  auto const all = run_keydrift({"proof", "--explain-finding"});
  std::set<std::string> explained;
  std::istringstream lines{all.out};
  for (std::string line; std::getline(lines, line);)
    explained.insert(line.substr(0, line.find(' ')));
  std::filesystem::path const root{KEYDRIFT_SOURCE_DIR};
  std::size_t codes = 0;
  for (auto const* folder :
       {"formats", "toolkit/key", "toolkit/characters", "toolkit/editions", "toolkit/taxa",
        "toolkit/amendment", "toolkit/program", "toolkit/redetermination"}) {
    for (auto const& entry : std::filesystem::recursive_directory_iterator{root / folder}) {
      if (entry.path().extension() != ".cpp" && entry.path().extension() != ".hpp") continue;
      for (auto const& code : codes_in(entry.path())) {
        if (kNoCodes.contains(code)) continue;
        ++codes;
        EXPECT_TRUE(explained.contains(code))
            << entry.path() << " reports \"" << code
            << "\", which no table of finding kinds explains (or name it in kNoCodes)";
      }
    }
  }
  EXPECT_GT(codes, 150U);  // the search finds what it is to find
}

}  // namespace
}  // namespace keydrift::test
