#pragma once
// Proof findings that need characters: leads that do not contrast, ranges that overlap or gape,
// statements contradicted higher on the same route, exceptions for groups that do not key out below.

#include <span>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/proof.hpp"

namespace keydrift {

// Precondition: read_statements() was run on the edition.
[[nodiscard]] std::vector<Finding> proof_contrast(Edition const& edition, KeyGraph const& graph);
[[nodiscard]] std::span<FindingKind const> contrast_finding_kinds();

}  // namespace keydrift
