#pragma once
// "Name: value" lines before a key.  Inner header of formats.

#include <cstddef>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

// Reads the front matter among the lines before `end` into `edition.front` and returns the accounts
// of the lines that it took, in order.  Front matter ends at the first line that is neither
// "Name: value", nor its indented continuation, nor blank; a title line may stand before it.
[[nodiscard]] std::vector<LineAccount> read_front_matter(std::vector<SourceLine> const& lines,
                                                         std::size_t end, Edition& edition,
                                                         std::vector<Finding>& findings);

}  // namespace keydrift::printed
