#pragma once
// Numbers of couplets that stand on lines of their own above the words.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "1" / "Wings clear" / "Go to 2" / "" / "Wings dark" / "Aus bus": the lines, each number told to
// be the label of the lead beneath it.  Only where such numbers count up from 1 and hardly a line
// begins with a label besides, or the first that does goes on with the count; nullopt elsewhere.
[[nodiscard]] std::optional<std::vector<SourceLine>> tell_numbers_above(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
