#pragma once
// The seeds of property tests: fixed, so that a run says the same as the run before; more of them
// on demand (KEYDRIFT_SEEDS=20000, or KEYDRIFT_SEEDS=500-20000 for those from 500 on).

#include <cstdint>

namespace keydrift::test {

struct Seeds {
  std::uint32_t begin{};
  std::uint32_t end{};  // not among them
};

// 0 … usual - 1 unless the environment says otherwise.
[[nodiscard]] Seeds seeds(std::uint32_t usual);

}  // namespace keydrift::test
