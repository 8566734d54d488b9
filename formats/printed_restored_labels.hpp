#pragma once
// Labels that a scan damaged or lost, told by the couplets around them.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

struct RestoredLabels {
  std::vector<SourceLine> lines;
  bool shown{true};  // each of the lines has something left of the label that is told
};

// The lines, with labels told (SourceLine::told) where the count misses one and a line that stands
// in its place shows what is left of it, or begins a lead without any: between couplets 3 and 5,
// where a lead leads to 4.  nullopt where nothing is missing, or nothing tells which line it was.
[[nodiscard]] std::optional<RestoredLabels> restore_labels(std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
