#include "planted_support.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>  // mkdtemp

#include <algorithm>
#include <cctype>
#include <map>

#include "golden.hpp"

namespace fs = std::filesystem;

namespace keydrift::test {
namespace {

// Apart from Sandbox, which belongs to one test and may be in use by it.
class OutputFolder {
 public:
  OutputFolder() {
    auto name = (fs::temp_directory_path() / "keydrift-planted-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) {
      ADD_FAILURE() << "cannot make " << name;
      return;
    }
    path_ = name;
  }
  ~OutputFolder() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
  }
  OutputFolder(OutputFolder const&) = delete;
  OutputFolder& operator=(OutputFolder const&) = delete;
  [[nodiscard]] std::string file(char const* name) const { return (path_ / name).string(); }

 private:
  fs::path path_;
};

nlohmann::json parsed(std::string const& text) {
  auto result = nlohmann::json::parse(text, nullptr, false);
  if (result.is_discarded()) {
    ADD_FAILURE() << "no JSON: " << text.substr(0, 200);
    return nlohmann::json::object();
  }
  return result;
}

}  // namespace

Redetermined redetermine(fs::path const& folder, std::vector<std::string> const& inputs) {
  OutputFolder const out;
  std::vector<std::string> arguments{"redetermine"};
  arguments.insert(arguments.end(), inputs.begin(), inputs.end());
  for (auto const* form : {"json", "html", "worklist", "specimens"}) {
    arguments.push_back(std::string{"--"} + form);
    arguments.push_back(out.file(form));
  }
  Redetermined made;
  made.ran = run_keydrift(arguments, folder);
  EXPECT_LE(made.ran.exit, 1) << made.ran.err;
  made.json = slurp(out.file("json"));
  made.html = slurp(out.file("html"));
  made.worklist = slurp(out.file("worklist"));
  made.specimens = slurp(out.file("specimens"));
  made.result = parsed(made.json);
  return made;
}

std::vector<std::string> velunaceae_options(std::string const& data) {
  return {data + "sheets.csv",
          "--lexicon",
          data + "lexicon.csv",
          "--concepts",
          data + "concepts-1998-2024.csv",
          "--parents",
          data + "parents.csv",
          "--measurements",
          data + "measurements.csv",
          "--look-alikes",
          data + "look-alikes.csv"};
}

Redetermined const& velunaceae() {
  static Redetermined const made = [] {
    std::vector<std::string> inputs{"edition-1998.txt", "edition-2024.txt"};
    auto const options = velunaceae_options();
    inputs.insert(inputs.end(), options.begin(), options.end());
    return redetermine(fixture("velunaceae"), inputs);
  }();
  return made;
}

nlohmann::json collate(fs::path const& folder, std::vector<std::string> const& inputs) {
  OutputFolder const out;
  std::vector<std::string> arguments{"collate"};
  arguments.insert(arguments.end(), inputs.begin(), inputs.end());
  arguments.insert(arguments.end(), {"--json", out.file("json")});
  auto const ran = run_keydrift(arguments, folder);
  EXPECT_LE(ran.exit, 1) << ran.err;
  return parsed(slurp(out.file("json")));
}

void expect_the_same_rows(std::multiset<std::string> const& planted,
                          std::multiset<std::string> const& reported) {
  EXPECT_FALSE(planted.empty()) << "nothing is planted";
  std::vector<std::string> only;
  std::set_difference(planted.begin(), planted.end(), reported.begin(), reported.end(),
                      std::back_inserter(only));
  for (auto const& row : only) ADD_FAILURE() << "planted, not reported:  " << row;
  only.clear();
  std::set_difference(reported.begin(), reported.end(), planted.begin(), planted.end(),
                      std::back_inserter(only));
  for (auto const& row : only) ADD_FAILURE() << "reported, not planted:  " << row;
}

void expect_the_same_list(std::vector<std::string> const& planted,
                          std::vector<std::string> const& reported) {
  EXPECT_FALSE(planted.empty()) << "nothing is planted";
  EXPECT_EQ(planted.size(), reported.size());
  std::size_t told = 0;
  for (std::size_t i = 0; i < std::min(planted.size(), reported.size()); ++i) {
    if (planted[i] == reported[i]) continue;
    ADD_FAILURE() << "row " << i + 1 << "\n  planted:   " << planted[i]
                  << "\n  reported:  " << reported[i];
    if (++told == 10) break;
  }
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    auto const end = text.find('\n');
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return lines;
}

std::string replaced(std::string text, std::string_view what, std::string_view by) {
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size())) {
    text.replace(at, what.size(), by);
  }
  return text;
}

std::vector<std::string> items_of(std::string const& joined_items) {
  std::vector<std::string> items;
  constexpr std::string_view between = " | ";
  std::size_t from = 0;
  while (from < joined_items.size()) {
    auto const end = std::min(joined_items.find(between, from), joined_items.size());
    items.push_back(joined_items.substr(from, end - from));
    from = end + between.size();
  }
  return items;
}

std::string joined(std::vector<std::string> const& items) {
  std::string text;
  for (auto const& item : items) text += (text.empty() ? "" : " | ") + item;
  return text;
}

std::string joined_field(nlohmann::json const& array, char const* field) {
  std::vector<std::string> items;
  for (auto const& entry : array) items.push_back(entry.at(field).get<std::string>());
  return joined(items);
}

std::optional<long> whole_number(std::string_view figure) {
  long number = 0;
  bool any = false;
  for (char const c : figure) {
    if (c == ',') continue;
    if (c < '0' || c > '9') return std::nullopt;
    number = number * 10 + (c - '0');
    any = true;
  }
  return any ? std::optional{number} : std::nullopt;
}

std::optional<long> figure_of(std::string_view line) {
  auto const dots = line.rfind(". ");
  if (dots == std::string_view::npos) return std::nullopt;
  auto rest = line.substr(dots + 2);
  return whole_number(rest.substr(0, rest.find(' ')));
}

std::vector<std::string> part_of(std::string_view report, std::string_view heading) {
  auto const lines = lines_of(report);
  auto const is_rule = [&](std::size_t i) {
    return i < lines.size() && lines[i].rfind("──", 0) == 0;
  };
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i] != heading || !is_rule(i + 1)) continue;
    std::vector<std::string> part;
    for (std::size_t j = i + 2; j < lines.size() && !is_rule(j + 1); ++j) part.push_back(lines[j]);
    return part;
  }
  ADD_FAILURE() << "no heading \"" << heading << "\" in\n" << report;
  return {};
}

}  // namespace keydrift::test
