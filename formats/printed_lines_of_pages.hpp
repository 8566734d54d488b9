#pragma once
// Lines that a page prints around its text and that a text layer leaves between the lines of leads:
// heads, feet, numbers, stamps of archives.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/key/source_reading.hpp"

namespace keydrift::printed {

struct TakenLine {
  SourceLine line;
  LineAccount account;
};

// Takes the lines out that surely are none of the key's, and the blank lines around them where the
// lead before them goes on beneath, so that no reading has to know of them.  Told by their wording,
// or by a lead that lacks its end above them, by what they say of pages and volumes and by their
// coming back; a line that may be of a lead's words stays.
[[nodiscard]] std::vector<TakenLine> take_out_lines_of_pages(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
