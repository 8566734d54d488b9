#pragma once
// The concept map's file: CSV with the columns old, relation, new and (optional) note.

#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/taxa/concepts.hpp"

namespace keydrift {

// One row says how the old edition's concept stands to the new one's; relations as in
// relation_from_word(), case aside.  Errors: those of a table (side_table.hpp); unknown-relation,
// missing-name, contradictory-rows (one pair, two relations).  repeated-row is information.
[[nodiscard]] Loaded<ConceptMap> read_concept_map(Source source);

}  // namespace keydrift
