#pragma once
// What the findings about records and cited editions mean.

#include <span>

#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {

[[nodiscard]] std::span<FindingKind const> redetermination_finding_kinds();

}  // namespace keydrift
