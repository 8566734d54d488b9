#!/bin/sh
# Installs what is missing, builds into build/, and runs every test.
# Usage: sh tests/run.sh [CTEST-OPTION...]
set -eu
. "$(dirname -- "$0")/../fixtures/setup.sh"

# shellcheck disable=SC2086
install_missing $keydrift_packages libgtest-dev ccache cmark $keydrift_oracle_packages
build -DCMAKE_BUILD_TYPE=Release -DKEYDRIFT_TESTS=ON
cd "$keydrift_root/build"
exec ctest --output-on-failure --no-tests=error --parallel "$(nproc)" "$@"
