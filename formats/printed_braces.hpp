#pragma once
// Keys whose couplets stand in braces at the left margin, the number beside the brace's middle, as
// faunas and floras set them; scans make letters and signs of the brace, or nothing.  Inner header
// of formats.

#include <cstddef>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"

namespace keydrift::printed {

struct BracedKey {
  std::vector<SourceLine> lines;  // without numbers and braces where words follow them
  NumberedPlan found;
  std::size_t couplets{};
  bool signs{false};  // pieces of braces are printed
};

// Lines begin with pieces of braces that can hardly be anything else.
[[nodiscard]] bool shows_braces(std::vector<SourceLine> const& lines);

// nullopt where numbers and braces do not count couplets: they stand on lines on which no lead
// begins, or pieces of braces beside them.
[[nodiscard]] std::optional<BracedKey> find_braces(std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
