#pragma once
// The parent table's file: CSV with the columns taxon and parent.

#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {

// Errors: those of a table (side_table.hpp); missing-name, own-parent, two-parents, parent-cycle.
[[nodiscard]] Loaded<ParentTable> read_parents(Source source);

}  // namespace keydrift
