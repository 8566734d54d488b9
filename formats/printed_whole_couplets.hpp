#pragma once
// Keys that print whole couplets in one paragraph each, their rivals unlabelled.  Inner header of
// formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// The lines, parted where the second and further leads begin within "1. Wings clear (2). Wings
// dark: Aus bus.", wrapped or not, these leads with the label of their couplet told.  Only where
// the paragraphs count on from 1, print no other labels, and what their leads end in leads on to
// nearly every one of them, once each; nullopt elsewhere.
[[nodiscard]] std::optional<std::vector<SourceLine>> part_whole_couplets(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
