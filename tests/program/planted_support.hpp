#pragma once
// The scenarios of fixtures/ run through the real binary, and what the planted truth is compared
// with: whole sets of rows, told row by row when they differ.

#include <filesystem>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "binary.hpp"
#include "table.hpp"

namespace keydrift::test {

// What `redetermine` prints and writes.
struct Redetermined {
  Ran ran;
  std::string json;  // as written
  std::string html;
  std::string worklist;   // CSV
  std::string specimens;  // CSV
  nlohmann::json result;  // `json`, read
};

// Runs `redetermine` in a folder with all four outputs.  `inputs`: editions, archive and options.
// The outputs are written to a folder of their own and read back.
[[nodiscard]] Redetermined redetermine(std::filesystem::path const& folder,
                                       std::vector<std::string> const& inputs);

// The Velunaceae archive of 1998 under 2024 as the demo runs it, from plain files named by
// themselves in their own folder.  Run once for all tests.
[[nodiscard]] Redetermined const& velunaceae();
// Archive and options of that run, without the editions.  `data`: prefix of the file names.
[[nodiscard]] std::vector<std::string> velunaceae_options(std::string const& data = "");

// The result of `collate --json` in a folder of fixtures/.
[[nodiscard]] nlohmann::json collate(std::filesystem::path const& folder,
                                     std::vector<std::string> const& inputs);

// Both ways: names each row that was planted and is not reported, and the other way round.
void expect_the_same_rows(std::multiset<std::string> const& planted,
                          std::multiset<std::string> const& reported);
// The same rows in the same order; names the first few that differ.
void expect_the_same_list(std::vector<std::string> const& planted,
                          std::vector<std::string> const& reported);

[[nodiscard]] std::vector<std::string> lines_of(std::string_view text);
[[nodiscard]] std::string replaced(std::string text, std::string_view what, std::string_view by);
// "a | b" -> its items.
[[nodiscard]] std::vector<std::string> items_of(std::string const& joined);
[[nodiscard]] std::string joined(std::vector<std::string> const& items);
// Names of {"name": …} or labels of {"label": …} in an array, joined.
[[nodiscard]] std::string joined_field(nlohmann::json const& array, char const* field);

// "1,387" -> 1387; nothing when it is no whole number.
[[nodiscard]] std::optional<long> whole_number(std::string_view figure);
// The figure behind the dots of a line such as "  stands ........ 1,387   77.1 %".
[[nodiscard]] std::optional<long> figure_of(std::string_view line);
// Lines of the part of a terminal report under a heading, up to the next heading.
[[nodiscard]] std::vector<std::string> part_of(std::string_view report, std::string_view heading);

}  // namespace keydrift::test
