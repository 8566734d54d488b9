#pragma once
// Does a sentence ask for a change of the key, though nothing more of it was understood?  Inner
// header of formats.

#include <vector>

#include "keydrift/formats/amendment_where.hpp"
#include "keydrift/formats/amendment_words.hpp"

namespace keydrift::printed {

// A sentence that begins with a couplet does, and one that speaks of a couplet and of a change.
// `couplets`: those that it names.
[[nodiscard]] bool asks_for_change(std::vector<Token> const& tokens,
                                   std::vector<NumberList> const& couplets);

// "The two leads should be interchanged".
[[nodiscard]] bool speaks_of_swapping(std::vector<Token> const& tokens);

}  // namespace keydrift::printed
