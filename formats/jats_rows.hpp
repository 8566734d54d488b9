#pragma once
// The tables of a key in article XML as lines of a manuscript.  Inner header of formats.

#include <pugixml.hpp>
#include <vector>

#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/xml_document.hpp"
#include "keydrift/formats/xml_text.hpp"

namespace keydrift::jats {

// The rows of a `table` (or of an OASIS `tgroup`), a lead each: which columns hold labels, words
// and destinations is decided from all rows.  Cells' footnotes follow as asides.  Empty rows give
// none.
[[nodiscard]] std::vector<ManuscriptLine> table_lines(xml::Document const& document,
                                                      pugi::xml_node table);

// Does the table look like a key whatever is written over it: numbers that count up in leads of two
// and more, cells at the end that lead on to such numbers?
[[nodiscard]] bool looks_like_key(std::vector<ManuscriptLine> const& rows);

// The same of a small table, or a piece of one, where a section says that it is a key: leads that
// have rivals.
[[nodiscard]] bool may_be_of_key(std::vector<ManuscriptLine> const& rows);

}  // namespace keydrift::jats
