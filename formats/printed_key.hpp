#pragma once
// Printed-key text to an Edition.  (Back: keydrift/formats/printed_write.hpp.)
//
// Reads what a person pastes from a publication or a manuscript: bracketed (parallel) keys with any
// usual numbering, with or without front matter ("Name: value" lines).  Every line of the input is
// accounted for.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/line_markup.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/formats/told_names.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/key/source_reading.hpp"

namespace keydrift {

struct PrintedReading {
  Edition edition;  // Lead::statements are empty: keydrift/characters fills them
  SourceReading source;
};

// Codes of errors (nothing is loaded): those of decode_text, line-too-long, no-couplets.
// Everything else that is doubtful is a warning or an information with its place.  Couplet numbers
// that lead nowhere stay Unresolved and duplicate numbers keep both couplets: proof_structure
// reports them.  Linear in the size of the text; no recursion.
//
// `markup`: of each line, its offsets those of the decoded text; empty for plain text.  `told`:
// what the origin says that names cut short stand for.
[[nodiscard]] Loaded<PrintedReading> read_printed_key(Source source, ReadLimits const& limits = {},
                                                      std::span<LineMarkup const> markup = {},
                                                      ToldNames const& told = {});

}  // namespace keydrift
