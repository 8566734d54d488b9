#pragma once
// The table of cited works: CSV with the columns citation, edition, published.
//
//   citation,edition,published
//   "Orm & Tal 1998",1998,
//   "Tal 1974, A field key",1974,1974-03
//   ,2010,2010
//
// The edition is named by its label; OLD and NEW mean those of the run.  A row without a citation
// says when an edition was published.

#include "keydrift/characters/citation_table.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Errors: those of a table (side_table.hpp); missing-edition, unclear-day (published is not a date
// as ISO 8601 writes it), two-editions (equal citations, case and blanks aside, for two editions),
// two-days (an edition published twice).  Warning: idle-row (neither citation nor day).
[[nodiscard]] Loaded<CitationTable> read_citations(Source source);

}  // namespace keydrift
