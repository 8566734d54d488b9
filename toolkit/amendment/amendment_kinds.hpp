#pragma once
// What the findings about amendments mean.

#include <span>

#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {

// Of reading them (formats/amendment_reader.hpp) and of applying them.
[[nodiscard]] std::span<FindingKind const> amendment_finding_kinds();

}  // namespace keydrift
