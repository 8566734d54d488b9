#!/bin/sh
# How fast an archive is re-keyed, and in how much memory.
#
#     sh tests/benchmarks/archive/run.sh [KEYDRIFT]     default: build/keydrift, a Release build
#
# Makes 500,000 rows x 42 columns and a stream of 10,000,000 rows below build/benchmark-archive/ (in
# KEYDRIFT_ROWS and KEYDRIFT_STREAM other numbers), runs `redetermine` on both, and beside it what
# merely scans the same file: the embedded analytical database of the npm registry
# (@duckdb/node-api, where `node` finds it) and scikit-learn's tree walk (Debian's python3-sklearn).
# What is not there is skipped, with a word.  Rows of the table that have no bar are references.
set -eu
here=$(cd "$(dirname -- "$0")" && pwd)
root=$(cd "$here/../../.." && pwd)
keydrift=${1:-$root/build/keydrift}
folder=${KEYDRIFT_FOLDER:-$root/build/benchmark-archive}
rows=${KEYDRIFT_ROWS:-500000}
stream=${KEYDRIFT_STREAM:-10000000}
[ -x "$keydrift" ] || { echo "no program at $keydrift: build it first (Release)"; exit 2; }

python3 "$here/make_archive.py" "$folder" --rows "$rows"
bytes=$(wc -c <"$folder/sheets.csv")
editions="$folder/edition-old.txt $folder/edition-new.txt"

# Seconds and kilobytes of a command, as "seconds kilobytes".
measure() {
  python3 -c '
import os, subprocess, sys, time
start = time.monotonic()
child = subprocess.Popen(sys.argv[1:], stdout=subprocess.DEVNULL)
_, status, used = os.wait4(child.pid, 0)
if status != 0: sys.exit(f"{sys.argv[1]} ended with {status}")
print(f"{time.monotonic() - start:.2f} {used.ru_maxrss}")' "$@"
}
line() { printf '%-44s %10s %10s %12s\n' "$@"; }
per_second() { awk "BEGIN { printf \"%.0f\", $1 / $2 }"; }

line "what" "seconds" "MB/s" "resident MB"
# shellcheck disable=SC2086
set -- $(measure "$keydrift" redetermine $editions "$folder/sheets.csv" \
  --lexicon "$folder/lexicon.csv" --specimens "$folder/outcomes.csv")
line "redetermine, $rows rows, --specimens" "$1" "$(per_second "$bytes" "$1e6")" "$(($2 / 1024))"
# shellcheck disable=SC2086
set -- $(measure "$keydrift" redetermine $editions "$folder/sheets.csv" \
  --lexicon "$folder/lexicon.csv")
line "redetermine, $rows rows, report only" "$1" "$(per_second "$bytes" "$1e6")" "$(($2 / 1024))"
ours=$1
# shellcheck disable=SC2086
set -- $(measure "$keydrift" redetermine $editions "$folder/sheets.csv" \
  --lexicon "$folder/lexicon.csv" --threads 1)
line "the same, one thread" "$1" "$(per_second "$bytes" "$1e6")" "$(($2 / 1024))"

if command -v node >/dev/null 2>&1 && node -e 'require.resolve("@duckdb/node-api")' 2>/dev/null; then
  scan=$(node "$here/scan_reference.js" "$folder/sheets.csv")
  line "analytical database, scan of the file" "$scan" "$(per_second "$bytes" "$scan"e6)" ""
  echo "ratio to the scan: $(awk "BEGIN { printf \"%.2f\", $scan / $ours }") (bar: 2)"
else
  echo "skipped: no @duckdb/node-api (npm install @duckdb/node-api)"
fi
# Debian's python has the packages even where another one comes first.
python=
for one in python3 /usr/bin/python3; do
  if [ -z "$python" ] && "$one" -c 'import sklearn' 2>/dev/null; then python=$one; fi
done
if [ -z "$python" ]; then
  echo "skipped: no scikit-learn (apt-get install python3-sklearn)"
else
  "$python" "$here/tree_reference.py" "$folder/sheets.csv" "$folder/tree.txt" "$folder/leaves.txt"
  kernel=$(dirname "$keydrift")/tests/benchmarks/archive/kernel_benchmark
  if [ -x "$kernel" ]; then
    "$kernel" "$folder/tree.txt" "$folder/lexicon.csv" "$folder/sheets.csv" "$folder/leaves.txt"
  else
    echo "skipped: no kernel_benchmark (configure with -DKEYDRIFT_BENCH=ON)"
  fi
fi

if [ "$stream" -gt 0 ]; then
  pipe="$folder/stream"
  rm -f "$pipe"
  mkfifo "$pipe"
  python3 "$here/make_archive.py" "$folder" --stream "$stream" >"$pipe" &
  # shellcheck disable=SC2086
  set -- $(measure "$keydrift" redetermine $editions "$pipe" --lexicon "$folder/lexicon.csv")
  wait
  rm -f "$pipe"
  line "redetermine, stream of $stream rows" "$1" "" "$(($2 / 1024))"
  echo "(the stream is made at the same time; bar: 150 MB resident)"
fi
