#pragma once
// The keys in article XML: the Journal Article Tag Suite (ANSI/NISO Z39.96) with or without the
// elements for taxonomic treatments (TaxPub, "tp:").

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/formats/xml_document.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Every key of the article becomes a part: tables marked as keys, tables that look like keys, and
// the paragraphs, lists and quotations of sections whose type or title speaks of a key (English,
// German, French, Italian, Spanish, Portuguese, Latin).  A cell of destinations is the destination,
// whatever it says.  Title, authors, year and language come from the article's front.  Places are
// lines and columns of the XML file.
//
// Errors: those of xml::parse and read_manuscript; no-couplets where no key is found.  Information:
// unread-section (a section speaks of a key, but no couplets were found in it).  The rest of the
// article is left aside.
[[nodiscard]] Loaded<PrintedReading> read_jats(xml::Document const& document,
                                               ReadLimits const& limits = {});

// Is it an article, or does it hold one (in the envelope of an archive)?
[[nodiscard]] bool is_jats(xml::Document const& document);

}  // namespace keydrift
