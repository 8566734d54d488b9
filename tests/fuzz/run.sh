#!/bin/sh
# Coverage-guided fuzzing of every reader, with the address and undefined-behaviour sanitizers.
# Usage: sh tests/fuzz/run.sh [SECONDS-PER-TARGET [TARGET...]]     (default: 60 seconds, all)
#
# Needs clang and libclang-rt-14-dev (installed when missing).  Builds into build-fuzz/, keeps what
# it learned in build-fuzz/found/<target>/ and anything that broke in build-fuzz/broken/.  A single
# input may cost twenty seconds of the clock: a reader is to take one second at most, and the
# sanitizers make the readers some twenty times slower.  On a busy machine give them more:
# KEYDRIFT_FUZZ_TIMEOUT=60 sh tests/fuzz/run.sh
set -eu
keydrift_root=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
. "$keydrift_root/fixtures/setup.sh"
seconds=${1:-60}
[ $# -eq 0 ] || shift
# shellcheck disable=SC2086
install_missing $keydrift_packages libgtest-dev ccache clang libclang-rt-14-dev llvm
cd "$keydrift_root"
cmake -S . -B build-fuzz -G Ninja -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=RelWithDebInfo \
  -DKEYDRIFT_FUZZ=ON >/dev/null
targets=${*:-printed editions amendments tables occurrences blocks statements}
for target in $targets; do
  cmake --build build-fuzz --target "fuzz_$target" >build-fuzz/build.log 2>&1 || {
    cat build-fuzz/build.log
    exit 1
  }
done
mkdir -p build-fuzz/broken
status=0
for target in $targets; do
  mkdir -p "build-fuzz/found/$target"
  seeds="tests/fuzz/seeds/$target"
  if [ "$target" = printed ]; then
    # The keys without what is expected of them, which took half of the first replay's time.
    rm -rf build-fuzz/corpus
    mkdir -p build-fuzz/corpus
    cp tests/formats/corpus/*.txt build-fuzz/corpus/
    seeds="$seeds build-fuzz/corpus"
  fi
  [ "$target" != editions ] || seeds="$seeds tests/formats/marked"
  log="build-fuzz/found/$target.log"
  # shellcheck disable=SC2086
  if build-fuzz/tests/fuzz/fuzz_"$target" -max_total_time="$seconds" -max_len=65536 \
      -timeout="${KEYDRIFT_FUZZ_TIMEOUT:-20}" -rss_limit_mb=2048 -detect_leaks=1 -print_final_stats=1 \
      -artifact_prefix="build-fuzz/broken/$target-" \
      "build-fuzz/found/$target" $seeds >"$log" 2>&1; then
    result=clean
  else
    result="BROKEN, see $log"
    status=1
  fi
  runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
  covered=$(grep -o 'cov: [0-9]*' "$log" | tail -n 1)
  echo "$target: $seconds s, ${runs:-?} runs, ${covered:-cov: ?}, $result"
done
exit $status
