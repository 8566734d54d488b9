#pragma once
// The sums of a run over an archive as one table.

#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/reports/text_sink.hpp"

namespace keydrift {

// by,from,to,specimens and a column for each outcome.  `by` is "name" (from which recorded name to
// which new ones, most specimens first), "storage", "determiner" or "decade" (of determination),
// with the unit in `from`; an empty unit is what the records do not tell.
void write_summaries_csv(Redetermination const& redetermination, TextSink const& sink);

}  // namespace keydrift
