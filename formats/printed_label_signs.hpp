#pragma once
// Labels that scanning took apart or whose signs it made others of, put right in the text itself
// before it is parted into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "a 1 . Carapace", "b 2. Spine": a letter with an index below or above the line (common practice
// of outlines of few columns) that scanning parted, "d l ." and "6 1 ." and "c- ." among them; they
// are closed to "a1." where several pairs stand so, and the blanks stand at the line's end instead.
// Returns the number of lines.
std::size_t close_indexed_labels(std::string& text);

// "5 Petals yellow" / "5; Petals white" beside "6 Leaves" / "6: Leaves": the semicolon was a colon.
// Returns the number of lines.
std::size_t restore_colons_of_labels(std::string& text);

}  // namespace keydrift::printed
