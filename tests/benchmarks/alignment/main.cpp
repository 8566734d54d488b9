// How right the alignment is, against what else, and how fast.
//   alignment_benchmark SCRIPTS KEYDRIFT [SEEDS [LARGEST]]     SEEDS: how many, or FIRST-LAST
//   alignment_benchmark --write FOLDER SHAPE COUPLETS    the editions that are timed, to look at

#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "benchmark.hpp"

int main(int argc, char** argv) {
  using namespace keydrift::bench;
  if (argc == 5 && argv[1] == std::string_view{"--write"}) {
    for (auto const shape : keydrift::test::all_shapes) {
      if (argv[3] != std::string_view{to_word(shape)}) continue;
      write_editions(argv[2], shape, std::strtoull(argv[4], nullptr, 10));
      return 0;
    }
  }
  if (argc < 3 || argv[1][0] == '-') {
    std::fputs(
        "alignment_benchmark SCRIPTS KEYDRIFT [SEEDS [LARGEST]]\n"
        "alignment_benchmark --write FOLDER SHAPE COUPLETS\n",
        stderr);
    return 2;
  }
  std::filesystem::path const scripts{argv[1]};
  Settings settings{
      .scripts = scripts, .oracles = scripts / ".." / ".." / "oracles", .keydrift = argv[2]};
  if (argc > 3) {  // "10": the first ten; "101-110": those
    char* rest = nullptr;
    settings.seeds = std::strtoull(argv[3], &rest, 10);
    if (*rest == '-') {
      settings.first_seed = settings.seeds;
      settings.seeds = std::strtoull(rest + 1, nullptr, 10) + 1 - settings.first_seed;
    }
  }
  if (argc > 4) settings.largest = std::strtoull(argv[4], nullptr, 10);
  print_quality(settings);
  print_oracles(settings);
  if (settings.largest > 0) print_scale(settings);
  return 0;
}
