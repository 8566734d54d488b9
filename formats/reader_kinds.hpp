#pragma once
// What the findings of the readers mean.

#include <span>

#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {

[[nodiscard]] std::span<FindingKind const> reader_finding_kinds();

}  // namespace keydrift
