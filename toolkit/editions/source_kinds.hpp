#pragma once
// What the findings of loading files and revisions mean.

#include <span>

#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {

[[nodiscard]] std::span<FindingKind const> source_finding_kinds();

}  // namespace keydrift
