#!/bin/sh
# The top level holds exactly what it should; no include steps around the include roots; no source
# outside toolkit/editions touches libgit2 and none outside toolkit/key Boost.Graph.
set -eu
status=0

git rev-parse --git-dir >/dev/null 2>&1 || { echo "skipped: not a git checkout"; exit 77; }
git ls-files | sed 's,/.*,,' | grep -v '^\.' | sort -u >"${TMPDIR:-/tmp}/keydrift-top.$$"
trap 'rm -f "${TMPDIR:-/tmp}/keydrift-top.$$"' EXIT
for name in CMakeLists.txt README.md DEVELOPERS.md toolkit formats fixtures tests reports; do
  grep -qx "$name" "${TMPDIR:-/tmp}/keydrift-top.$$" || { echo "missing at the top: $name"; status=1; }
done
extra=$(grep -vxE 'CMakeLists\.txt|README\.md|DEVELOPERS\.md|toolkit|formats|fixtures|tests|reports' \
  "${TMPDIR:-/tmp}/keydrift-top.$$" || true)
[ -z "$extra" ] || { echo "too much at the top: $extra"; status=1; }

if git grep -nE '#include "\.\.?/' -- toolkit formats reports; then
  echo "includes go by keydrift/<folder>/, so that the link list is the permission list"
  status=1
fi
if git grep -nE '#include <git2' -- toolkit formats reports ':!toolkit/editions'; then status=1; fi
if git grep -nE '#include <boost/graph' -- toolkit formats reports ':!toolkit/key/*.cpp'; then
  status=1
fi
exit $status
