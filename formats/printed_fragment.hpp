#pragma once
// Some couplets of a key, printed without the rest.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// Reads the lines (some of `text`, which is the whole of the source) as couplets of a larger key:
// they may start at any number, one of them may have a single lead or no number, and numbers that
// are not among them may be led to.  What is no lead is kept in Edition::notes, in printed order;
// an edition without couplets is a text without any.  Titles of keys are notes as well.
[[nodiscard]] Edition read_fragment(std::string_view name, std::string_view text,
                                    std::vector<SourceLine> lines, std::vector<Finding>& findings);

}  // namespace keydrift::printed
