// How right the alignment is, against what else, and how fast.
//   alignment_benchmark SCRIPTS KEYDRIFT [SEEDS [LARGEST]]

#include <cstdio>
#include <cstdlib>

#include "benchmark.hpp"

int main(int argc, char** argv) {
  using namespace keydrift::bench;
  if (argc < 3) {
    std::fputs("alignment_benchmark SCRIPTS KEYDRIFT [SEEDS [LARGEST]]\n", stderr);
    return 2;
  }
  Settings settings{.scripts = argv[1], .keydrift = argv[2]};
  if (argc > 3) settings.seeds = std::strtoull(argv[3], nullptr, 10);
  if (argc > 4) settings.largest = std::strtoull(argv[4], nullptr, 10);
  print_quality(settings);
  print_oracles(settings);
  print_scale(settings);
  return 0;
}
