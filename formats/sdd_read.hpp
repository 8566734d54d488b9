#pragma once
// Keys in SDD 1.1 (Structured Descriptive Data, TDWG standard 116, schema revisions 4 and 5; the
// dialect of the primer, with Result elements and wrapped labels, as well).

#include "keydrift/formats/xml_document.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

[[nodiscard]] bool is_sdd(xml::Document const& document);

// Every identification key of the first data set that has any becomes a part.  The leads with one
// parent are a couplet; couplets are numbered in document order unless an attribute of another
// namespace called "couplet" has their number ("label" or "lead" the lead's label).  A result that
// goes on is the group's name (Lead::taxon_remark).  Of texts in several languages the data set's
// own is read.  The question of a couplet is its note; where the leads answer yes or no, it is put
// before them.  What write_sdd wrote in attributes of its own is taken back.  Characters and coded
// descriptions are left aside: an Edition has no place for them.
//
// Errors: no-couplets, sdd-version (SDD 1.0).  Warnings: repeated-id, unknown-reference (the lead
// leads nowhere), further-data-sets.  Information: further-languages.
[[nodiscard]] Loaded<Edition> read_sdd(xml::Document const& document);

}  // namespace keydrift
