#pragma once
// Word-processor manuscripts (.docx; ISO/IEC 29500 WordprocessingML, transitional and strict) to an
// Edition, by way of the lines that they print.

#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// A Place's line is the number of the paragraph in the manuscript, from 1, empty paragraphs and
// those in tables and text boxes counted in the order of the file; its column counts the characters
// of that paragraph as typed.  An automatic number stands at column 1.
//
// Read: paragraphs, with automatic numbers as printed, indentation as leading blanks (a step for
// each depth that the manuscript uses), tab leaders as dots; rows of tables, cells parted by tabs;
// text boxes after the paragraph that they are anchored in; results of fields, not their code;
// footnotes and endnotes as notes of their leads.  Tracked changes are taken as accepted.  Left
// out: hidden text, comments, headers and footers, pictures.
//
// Errors: those of PackedFile, xml::parse (about "FILE (PART)"), read_printed_key;
// damaged-manuscript.  Warnings: hidden-text, unknown-symbol, numbering-format, damaged-field,
// embedded-document.  Information: tracked-changes, comments, headers, text-boxes, footnotes.
[[nodiscard]] Loaded<PrintedReading> read_docx(Source source, ReadLimits const& limits = {});

// The lines alone, for what is no key.
[[nodiscard]] Loaded<std::vector<ManuscriptLine>> read_docx_lines(Source source,
                                                                  ReadLimits const& limits = {});

}  // namespace keydrift
