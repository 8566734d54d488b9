#pragma once
// Leads that run on in a paragraph, told by their labels alone.  Inner header of formats.

#include <cstddef>
#include <string_view>
#include <vector>

namespace keydrift::printed {

// Where leads begin in `text`, the first at 0 apart: behind the end of a sentence, with a label
// that carries the count on or answers one before it, and a capital.  Empty unless there are
// enough of them for the labels to be beyond doubt.
[[nodiscard]] std::vector<std::size_t> label_cuts(std::string_view text);

}  // namespace keydrift::printed
