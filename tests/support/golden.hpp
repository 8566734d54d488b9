#pragma once
// Golden files: tests/golden/<name> holds what a piece of output must be, to the byte.
//
// A mismatch writes build/received/<name> and fails with the diff command.  With
// KEYDRIFT_UPDATE_GOLDEN=1 (ignored where CI is set) the golden file is rewritten and the test
// still fails, so that a change is always seen in `git diff` before it is kept.

#include <string>
#include <string_view>

namespace keydrift::test {

// Fails the running test when tests/golden/<name> is not exactly `actual`.
void expect_golden(std::string_view name, std::string_view actual);

// The whole file, or a failure of the running test and "".
[[nodiscard]] std::string slurp(std::string const& path);

}  // namespace keydrift::test
