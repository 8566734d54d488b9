#pragma once
// The margin of a key whose couplets stand in braces: the numbers and what is left of the braces.
// Inner header of formats.

#include <cstddef>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_brace_fronts.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

struct BraceMargin {
  std::vector<BraceFront> fronts;    // by line
  std::vector<std::size_t> numbers;  // lines that bear a couplet's number, in order
  bool signs{false};                 // pieces of braces stand there
};

// nullopt where numbers and braces do not count couplets: no pieces of braces stand beside the
// numbers, or the numbers begin their paragraphs as those of other layouts do.
[[nodiscard]] std::optional<BraceMargin> read_brace_margin(std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
