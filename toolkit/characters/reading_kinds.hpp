#pragma once
// What the findings of reading statements and of checking a lexicon mean.

#include <span>

#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {

[[nodiscard]] std::span<FindingKind const> statement_finding_kinds();
[[nodiscard]] std::span<FindingKind const> lexicon_finding_kinds();

}  // namespace keydrift
