// The commands that the README shows for the forms of a key, run on fixtures/forms.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "binary.hpp"

namespace keydrift::test {
namespace {

// The lines of a chapter, its heading left out.
std::vector<std::string> chapter(std::string const& heading) {
  std::ifstream file{std::filesystem::path{KEYDRIFT_SOURCE_DIR} / "README.md"};
  std::vector<std::string> lines;
  bool within = false;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with("## ")) {
      within = line == "## " + heading;
    } else if (within) {
      lines.push_back(line);
    }
  }
  EXPECT_FALSE(lines.empty()) << heading;
  return lines;
}

std::vector<std::string> words_of_command(std::string const& command) {
  std::istringstream words{command};
  std::vector<std::string> arguments;
  for (std::string word; words >> word;) arguments.push_back(word);
  return arguments;
}

class ReadmeOfForms : public testing::Test {
 protected:
  ReadmeOfForms() {
    for (auto const& entry : std::filesystem::directory_iterator{fixture("forms")}) {
      std::filesystem::copy(entry.path(), sandbox_.path() / entry.path().filename());
    }
  }
  // `command` without the name of the program.
  [[nodiscard]] Ran run(std::string const& command) const {
    return run_keydrift(words_of_command(command), sandbox_.path());
  }

  Sandbox sandbox_;
};

TEST_F(ReadmeOfForms, CommandsInTheTextRun) {
  std::string text;
  for (auto const& line : chapter("Files in")) text += line + " ";
  std::string const begin = "`keydrift ";
  std::size_t commands = 0;
  for (auto at = text.find(begin); at != std::string::npos; at = text.find(begin, at + 1)) {
    auto const from = at + begin.size();
    auto const command = text.substr(from, text.find('`', from) - from);
    auto const ran = run(command);
    EXPECT_EQ(ran.exit, 0) << command << '\n' << ran.out << ran.err;
    EXPECT_EQ(ran.err, "") << command;
    ++commands;
  }
  EXPECT_EQ(commands, 6U);  // manuscript, article, page, SDD, and two of JSON
}

TEST_F(ReadmeOfForms, CommandsWriteWhatIsShown) {
  std::string const prompt = "    $ keydrift ";
  std::size_t commands = 0;
  auto const lines = chapter("Writing a key in another form");
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!lines[i].starts_with(prompt)) continue;
    ++commands;
    auto const command = lines[i].substr(prompt.size());
    auto const ran = run(command);
    EXPECT_EQ(ran.exit, 0) << command << '\n' << ran.err;
    // What stands between ellipses must come out so, one stretch behind the other.
    std::size_t at = 0;
    std::string stretch;
    auto const must_follow = [&] {
      while (stretch.ends_with("\n\n")) stretch.pop_back();
      auto const found = ran.out.find(stretch, at);
      EXPECT_NE(found, std::string::npos) << command << " does not write\n"
                                          << stretch << "but\n"
                                          << ran.out;
      if (found != std::string::npos) at = found + stretch.size();
      stretch.clear();
    };
    for (++i; i < lines.size() && (lines[i].empty() || lines[i].starts_with("    ")); ++i) {
      if (lines[i].starts_with(prompt)) break;
      auto const shown = lines[i].empty() ? std::string{} : lines[i].substr(4);
      if (shown == "…") {
        must_follow();
      } else {
        stretch += shown + '\n';
      }
    }
    must_follow();
    --i;
  }
  EXPECT_EQ(commands, 3U);
}

TEST_F(ReadmeOfForms, AllFormsHoldOneKey) {
  for (auto const* form : {"key.docx", "page.html", "key.xml"}) {
    auto const ran = run(std::string{"convert "} + form + " --to json");
    EXPECT_EQ(ran.exit, 0) << form << ran.err;
    for (auto const* text : {"\"text\": \"Rostrum smooth; carapace (38–)42–60 mm long\"",
                             "\"destination\": {\"taxa\": [\"Halvus bellus\"]}"}) {
      EXPECT_NE(ran.out.find(text), std::string::npos) << form << '\n' << ran.out;
    }
  }
  EXPECT_EQ(run("collate article.xml page.html").exit, 0);
}

TEST(Help, SaysWhatEachExitStatusMeans) {
  auto ran = run_keydrift({"--help"});
  std::replace(ran.out.begin(), ran.out.end(), '\n', ' ');
  EXPECT_NE(ran.out.find("or would not read back"), std::string::npos) << ran.out;
}

}  // namespace
}  // namespace keydrift::test
