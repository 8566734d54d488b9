#pragma once
// Sections of the HTML reports, one source each.  Internal to reports.

#include "keydrift/collation/collation.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/reports/collation_parts.hpp"
#include "keydrift/reports/html.hpp"
#include "keydrift/reports/html_writer.hpp"

namespace keydrift::reports {

// Links to the sections in order.
void write_contents(HtmlWriter& html, bool with_specimens);
// What the two editions are, in two columns.
void write_editions(HtmlWriter& html, CollationView const& view);

void write_collation_summary(HtmlWriter& html, CollationView const& view);
void write_taxa(HtmlWriter& html, CollationView const& view);
void write_roles(HtmlWriter& html, CollationView const& view);
void write_couplets(HtmlWriter& html, CollationView const& view);
void write_faults(HtmlWriter& html, CollationView const& view);
void write_coverage(HtmlWriter& html, CollationView const& view);

void write_outcomes(HtmlWriter& html, CollationView const& view, Redetermination const& result);
void write_specimens(HtmlWriter& html, CollationView const& view, Redetermination const& result,
                     HtmlLimits const& limits);
void write_expectations(HtmlWriter& html, CollationView const& view, Redetermination const& result);

// One lead, set as printed: label, words, dot leaders, destination.  Linked to nothing.
void write_lead(HtmlWriter& html, Edition const& edition, LeadId lead);

}  // namespace keydrift::reports
