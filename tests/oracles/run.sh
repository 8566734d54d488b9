#!/bin/sh
# Holds the built keydrift to what others wrote (scikit-learn, rpart, networkx, dendropy, …) on open
# data and random keys, and prints the table.  Usage: sh tests/oracles/run.sh [ORACLE...]
#
# Installs the libraries from Debian when they are missing; builds what is not built.
# Works in build/oracles/; exit status 1 when anything disagrees.
set -eu
keydrift_root=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
. "$keydrift_root/fixtures/setup.sh"
# shellcheck disable=SC2086
install_missing $keydrift_packages libgtest-dev $keydrift_oracle_packages
mkdir -p "$keydrift_root/build"
cmake -S "$keydrift_root" -B "$keydrift_root/build" -G Ninja -DCMAKE_BUILD_TYPE=Release \
  -DKEYDRIFT_TESTS=ON >/dev/null
cmake --build "$keydrift_root/build" --target keydrift heaviest >/dev/null
exec /usr/bin/python3 "$keydrift_root/tests/oracles/oracles.py" "$keydrift_root/build/keydrift" \
  "$keydrift_root/build/oracles" "$@"
