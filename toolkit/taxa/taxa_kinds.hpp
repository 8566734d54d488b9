#pragma once
// What the findings about names mean.

#include <span>

#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {

[[nodiscard]] std::span<FindingKind const> taxa_finding_kinds();

}  // namespace keydrift
