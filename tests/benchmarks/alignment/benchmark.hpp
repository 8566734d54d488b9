#pragma once
// The parts of the benchmark of the alignment; each prints its table.

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "histories.hpp"

namespace keydrift::bench {

struct Settings {
  std::filesystem::path scripts;  // folder of line_matcher.py
  std::filesystem::path oracles;  // tests/oracles
  std::filesystem::path keydrift;
  std::size_t first_seed{1};
  std::size_t seeds{4};         // cases for each row and shape
  std::size_t largest{100000};  // couplets
};

void print_quality(Settings const& settings);
void print_oracles(Settings const& settings);
void print_scale(Settings const& settings);

// Writes old.txt and new.txt, the editions that print_scale() times.
void write_editions(std::filesystem::path const& folder, test::Shape shape, std::size_t couplets);

// Runs a script with the text on its standard input and returns its output; nothing where python
// or what the script imports is not installed.  Why is printed.
[[nodiscard]] std::optional<std::vector<std::string>> run_script(
    std::filesystem::path const& script, std::string const& input);

}  // namespace keydrift::bench
