#pragma once
// Bytes of whatever form to an Edition.

#include <optional>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

struct EditionReading {
  Edition edition;
  // How its lines were taken; nullopt for forms that say themselves what is what (JSON).
  std::optional<SourceReading> source;
};

// Printed-key text, a sheet saved as CSV (key_sheet.hpp), a word-processor manuscript (.docx),
// keydrift's JSON, article XML (JATS) or SDD 1.1, told by the file itself, not by its name.
// Anything else (a PDF, other XML, a compressed file, binary data) is refused with what it is and
// what to do: unsupported-file.  Other errors: those of printed_key.hpp, docx.hpp, key_json.hpp,
// jats_read.hpp and sdd_read.hpp.
[[nodiscard]] Loaded<EditionReading> read_edition(Source source, ReadLimits const& limits = {});

}  // namespace keydrift
