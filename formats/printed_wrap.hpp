#pragma once
// Setting words in lines that read back as they were.  Inner header of formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

// Columns that the text takes on a terminal.
[[nodiscard]] std::size_t columns_of(std::string_view text);

// Would a line that starts so be taken for something else than the words' continuation?
[[nodiscard]] bool misleads(std::string_view rest);

// Breaks the text at single blanks into lines of at most `width` columns where it can; `first` is
// the room on the first line.  No line begins with what a reader would take for a label, a note or
// a caption, nor ends with a hyphen that would be taken for a broken word's: such words stay with
// their neighbours, even if the line grows too long.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t first,
                                            std::size_t width);

}  // namespace keydrift::printed
