// Time and memory of the binary on editions of growing size.

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>

#include "benchmark.hpp"
#include "histories.hpp"

namespace keydrift::bench {
namespace {

using namespace test;

// As a key prints it.
std::string in_print(Draft const& draft) {
  std::vector<std::size_t> order;
  static_cast<void>(print(draft, order));
  std::vector<std::size_t> label(draft.nodes.size(), 0);
  for (std::size_t i = 0; i < order.size(); ++i) label[order[i]] = i + 1;
  std::string text = "Title: A key of many couplets\n\n";
  for (auto const node : order) {
    char letter = 'a';
    for (auto const& lead : draft.nodes[node].leads) {
      text += std::to_string(label[node]) + letter++ + ". ";
      std::string words;
      for (auto const& statement : lead.statements) {
        words += words.empty() ? "" : "; ";
        if (statement.hedged) words += "usually ";
        words += statement.words;
        if (statement.value.starts_with("< ")) words += " less than " + statement.value.substr(2);
        if (statement.value.starts_with(">= ")) words += " at least " + statement.value.substr(3);
      }
      words[0] = static_cast<char>(words[0] - 'a' + 'A');
      text += words + " ........ " +
              (lead.node == terminal ? draft.taxa[lead.taxon] : std::to_string(label[lead.node])) +
              "\n";
    }
  }
  return text;
}

// 27 in a hundred couplets say something else, 3 are inserted.
void revise(Draft& draft, Dice& dice) {
  std::vector<EditKind> const kinds{EditKind::hedge,   EditKind::limits,     EditKind::synonyms,
                                    EditKind::rewrite, EditKind::swap_leads, EditKind::statement,
                                    EditKind::hedge,   EditKind::limits,     EditKind::rewrite};
  std::vector<Edit> edits;
  for (std::size_t i = 0; i < draft.nodes.size(); ++i) {
    if (dice.percent(27)) {
      edits.push_back({kinds[dice.below(kinds.size())], i, dice.below(~std::size_t{0})});
    } else if (dice.percent(4)) {
      edits.push_back({EditKind::insert, i, dice.below(~std::size_t{0})});
    }
  }
  static_cast<void>(apply_edits(draft, edits));
}

struct Cost {
  double wall{};       // s
  double processor{};  // s
  double memory{};     // MB, the most that was resident
};

Cost run(std::vector<std::string> const& command) {
  std::vector<char*> words;
  for (auto const& word : command) words.push_back(const_cast<char*>(word.c_str()));
  words.push_back(nullptr);
  auto const begin = std::chrono::steady_clock::now();
  std::fflush(nullptr);  // or the child prints again what waits to be printed
  auto const child = ::fork();
  if (child == 0) {
    if (std::freopen("/dev/null", "w", stdout) == nullptr) ::_exit(126);
    ::execv(words[0], words.data());
    ::_exit(127);
  }
  int status = 0;
  rusage used{};
  ::wait4(child, &status, 0, &used);
  auto const end = std::chrono::steady_clock::now();
  if (!WIFEXITED(status) || WEXITSTATUS(status) > 1) std::printf("(collate failed)\n");
  auto const seconds = [](timeval const& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
  };
  return {.wall = std::chrono::duration<double>(end - begin).count(),
          .processor = seconds(used.ru_utime) + seconds(used.ru_stime),
          .memory = static_cast<double>(used.ru_maxrss) / 1024};
}

// Slope of the least-squares line through the logarithms.
double exponent(std::vector<std::pair<double, double>> const& points) {
  double n = 0;
  double x = 0;
  double y = 0;
  double xx = 0;
  double xy = 0;
  for (auto const& [size, cost] : points) {
    n += 1;
    x += std::log(size);
    y += std::log(cost);
    xx += std::log(size) * std::log(size);
    xy += std::log(size) * std::log(cost);
  }
  return (n * xy - x * y) / (n * xx - x * x);
}

// Three runs are for a small edition what one is for a large one.
Cost least_of_runs(Settings const& settings, std::filesystem::path const& folder, Shape shape,
                   std::size_t couplets) {
  write_editions(folder, shape, couplets);
  Cost least;
  for (int i = 0; i < (couplets < 100000 ? 3 : 1); ++i) {
    auto const cost = run({settings.keydrift.string(), "collate", (folder / "old.txt").string(),
                           (folder / "new.txt").string()});
    if (i == 0 || cost.wall < least.wall) least = cost;
  }
  return least;
}

}  // namespace

void write_editions(std::filesystem::path const& folder, Shape shape, std::size_t couplets) {
  std::filesystem::create_directories(folder);
  Dice dice{7};
  auto draft = make_draft(couplets, shape, dice);
  std::ofstream{folder / "old.txt"} << in_print(draft);
  revise(draft, dice);
  std::ofstream{folder / "new.txt"} << in_print(draft);
}

void print_scale(Settings const& settings) {
  auto const folder =
      std::filesystem::temp_directory_path() / ("alignment-scale-" + std::to_string(::getpid()));
  std::printf(
      "\nTime and memory of `keydrift collate`, 30 %% of the couplets edited, the least of three "
      "runs\n"
      "(one from 100,000 on)\n%-12s %12s %10s %10s %10s\n",
      "", "couplets", "wall s", "CPU s", "MB");
  for (auto const shape : all_shapes) {
    std::vector<std::pair<double, double>> times;
    std::vector<std::pair<double, double>> memory;
    for (std::size_t couplets = 100; couplets <= settings.largest; couplets *= 10) {
      auto const least = least_of_runs(settings, folder, shape, couplets);
      std::printf("%-12s %12zu %10.3f %10.3f %10.1f\n", to_word(shape), couplets, least.wall,
                  least.processor, least.memory);
      std::fflush(stdout);
      if (couplets < 1000) continue;
      times.emplace_back(static_cast<double>(couplets), least.processor);
      memory.emplace_back(static_cast<double>(couplets), least.memory);
    }
    if (times.size() > 1) {
      std::printf("%-12s from 1,000 on CPU time grows as n^%.2f, memory as n^%.2f\n",
                  to_word(shape), exponent(times), exponent(memory));
    }
  }
  std::filesystem::remove_all(folder);
}

}  // namespace keydrift::bench
