#pragma once
// Keys that print whole couplets in one paragraph each, their rivals unlabelled.  Inner header of
// formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

struct PartedCouplets {
  std::vector<SourceLine> lines;
  bool labelled{};  // all further leads bear labels
};

// The lines, parted where the second and further leads begin within "1. Wings clear (2). Wings
// dark: Aus bus.", "1. Wings clear ... 2 – Wings dark ... Aus bus", wrapped or not, leads without a
// label of their own with that of their couplet told.  Only where the paragraphs count on from 1,
// print no other labels, and what their leads end in leads on to nearly every one of them, once
// each; nullopt elsewhere.
[[nodiscard]] std::optional<PartedCouplets> part_whole_couplets(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
