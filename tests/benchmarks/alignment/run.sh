#!/bin/sh
# Builds the benchmark of the alignment and runs it: how right, against what else, how fast.
#   sh tests/benchmarks/alignment/run.sh [SEEDS [LARGEST]]     (defaults: 4 seeds, 100000 couplets;
#   0 couplets leaves the times out; 101-110 for SEEDS takes those)
# python3 serves the text-line matcher; Debian's python3-scipy and python3-dendropy the outside
# oracles.  What is not installed is said and left out.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
top=$(cd "$here/../../.." && pwd)
build=${BUILD:-$top/build}
cmake -G Ninja -S "$top" -B "$build" -DCMAKE_BUILD_TYPE=Release -DKEYDRIFT_BENCH=ON >/dev/null
cmake --build "$build" --target alignment_benchmark keydrift
exec "$build/tests/benchmarks/alignment/alignment_benchmark" "$here" \
  "$build/keydrift" "${1:-4}" "${2:-100000}"
