#!/bin/sh
# Do the oracles notice?  Plants one bug after the other in a copy of the sources (the keying, the
# reader of limits, the aligner), builds, asks the oracles, and says which of them noticed.
# Usage: sh tests/oracles/planted_bugs.sh
#
# Works in build/bugs/.  Exit status 1 when a bug goes unnoticed, or when a place to plant it is not
# there any more (then choose another one below).
set -eu
keydrift_root=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
. "$keydrift_root/fixtures/setup.sh"
# shellcheck disable=SC2086
install_missing $keydrift_packages libgtest-dev $keydrift_oracle_packages ccache
work="$keydrift_root/build/bugs"
mkdir -p "$work"
cd "$keydrift_root"
(git ls-files; git ls-files --others --exclude-standard) | tar cf - -T - | tar xf - -C "$work"
cd "$work"
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Quick -DCMAKE_CXX_FLAGS="-O0 -g1" \
  -DKEYDRIFT_TESTS=ON >/dev/null
status=0

# plant PART FILE SED-EXPRESSION ORACLE...
plant() {
  part=$1 file=$2 bug=$3
  shift 3
  cp "$file" "$work/sound"
  sed "$bug" "$work/sound" >"$file"
  if cmp -s "$file" "$work/sound"; then
    echo "$part: $file has no such place any more: $bug"
    status=1
    return
  fi
  cmake --build build --target keydrift heaviest >build.log 2>&1 || { cat build.log; exit 2; }
  noticed=""
  for oracle in "$@"; do
    if ! /usr/bin/python3 tests/oracles/oracles.py build/keydrift asked "$oracle" >asked.log 2>&1
    then noticed="$noticed $oracle"
    fi
  done
  cp "$work/sound" "$file"
  [ -n "$noticed" ] || { noticed=" nobody"; status=1; }
  echo "$part, $bug: noticed by$noticed"
}

plant keying toolkit/redetermination/walk.cpp \
  's/intersect(space_.part(part, atom.character), atom.allowed);//' open_data
plant keying toolkit/redetermination/walk.cpp \
  's/is_subset(cells, taken)/is_subset(taken, cells)/' open_data strands
plant limits toolkit/characters/units.cpp 's/micrometers", "mm", 0.001/micrometers", "mm", 0.01/' \
  open_data
plant limits toolkit/characters/reading/qualifier_lists.cpp 's/"or less|or fewer|/"or fewer|/' \
  open_data
plant aligner toolkit/collation/assignment.cpp 's/augment(root);$/return;/' alignment assignment
plant aligner toolkit/collation/assignment.cpp \
  's/row_price_\[root\] -= end_distance;/row_price_[root] += end_distance;/' alignment assignment
exit $status
