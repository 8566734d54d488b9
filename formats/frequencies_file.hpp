#pragma once
// The frequencies' file: CSV with the columns taxon and count.

#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/taxa/frequencies.hpp"

namespace keydrift {

// Errors: those of a table (side_table.hpp); missing-name, bad-count (no finite number of 0 or
// more).  A taxon may have several rows: their counts are added up.
[[nodiscard]] Loaded<FrequencyTable> read_frequencies(Source source);

}  // namespace keydrift
