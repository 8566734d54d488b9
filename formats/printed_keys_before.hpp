#pragma once
// A key in front of the others that is labelled in a way of its own: that to the genera by letters,
// those to the species by numbers.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift::printed {

// Where markup tells the titles of keys and the first lead stands beneath a later one: the lines
// beneath the first title become the first part of the reading, if each of them is a lead with a
// rival and a destination.
void take_key_before(DecodedText const& text, std::vector<SourceLine> const& lines,
                     Attempt& attempt);

}  // namespace keydrift::printed
