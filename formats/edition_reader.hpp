#pragma once
// Bytes of whatever form to an Edition.

#include "keydrift/formats/text.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Printed-key text or keydrift's JSON, told by the first characters.  Anything else (a
// word-processor manuscript, a PDF, XML, a compressed file, binary data) is refused with what it is
// and what to do: unsupported-file.  Other errors: those of printed_key.hpp and key_json.hpp.
[[nodiscard]] Loaded<Edition> read_edition(Source source);

}  // namespace keydrift
