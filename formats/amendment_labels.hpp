#pragma once
// "6bis a." and "6bis b.", "3’a." and "3’b.": leads of couplets that a piece puts between others,
// each with a letter.  Inner header of formats.

#include <cstddef>
#include <deque>
#include <string>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Gives the first lead of such a couplet its number and the others a dash, as other keys print
// them, and takes the letter from what leads there.  No byte of any line changes its place; `made`
// keeps the texts.  Returns where such couplets begin and where others follow them: bytes of the
// text, in order.  They are read apart, for beside 3a and 3b the label 3’ would be a third lead.
[[nodiscard]] std::vector<std::size_t> take_letters_from_labels(std::vector<SourceLine>& lines,
                                                                std::deque<std::string>& made);

}  // namespace keydrift::printed
