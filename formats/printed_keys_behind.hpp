#pragma once
// Further keys behind a key, labelled in a way of their own: those to the subspecies within the
// accounts of a flora.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift::printed {

// Looks through the paragraphs that begin with a first label of another kind than the key's.  Those
// behind the last lead that are keys without any fault, leaders before all their destinations,
// become parts of the reading, if more leads hang together then.
void take_keys_behind(DecodedText const& text, std::vector<SourceLine> const& lines,
                      Attempt& attempt);

}  // namespace keydrift::printed
