#pragma once
// Proofreading one edition: what is wrong in its structure.

#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/key/finding_kinds.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

// All structural findings in one run, in order of place.  Findings that need characters come from
// keydrift/characters (contrast.hpp).
[[nodiscard]] std::vector<Finding> proof_structure(Edition const& edition, KeyGraph const& graph);

}  // namespace keydrift
