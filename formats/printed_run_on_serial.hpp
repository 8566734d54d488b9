#pragma once
// Serial keys whose leads run on in a paragraph.  Inner header of formats.

#include <cstddef>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Where leads begin in a paragraph, the lead of another before them in the same line or not:
// "… at base. 2 (5) Rostrum long; hairs" / "of two kinds. 3 (4) Head …".  Their labels name one
// another and count up, which no other figures with brackets do.
struct SerialCuts {
  // For each line the bytes of its text where leads begin, 0 apart; no element where a file has
  // none.
  std::vector<std::vector<std::size_t>> lines;
  // The line whose first cut ends a title: that before the first lead.
  std::vector<bool> titled;
};

[[nodiscard]] SerialCuts serial_cuts(std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
