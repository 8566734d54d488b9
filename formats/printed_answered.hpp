#pragma once
// Which labelled lines answer each other by standing equally deep.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// What the labels of rivals have in common: a couplet's number, a rank; dashes answer all.
using LabelKinds = std::vector<std::optional<std::uint32_t>>;  // by line; nullopt without label
inline constexpr std::uint32_t kAnswersAll = 0;

// By line: another line is set in as far and bears a label of the same kind or a dash, and whatever
// stands between the two is set in further.  So the leads of an indented key stand; numbers that
// open a line of words or a destination hardly ever do.
[[nodiscard]] std::vector<bool> find_answered(std::vector<SourceLine> const& lines,
                                              LabelKinds const& kinds);
// The same of couplets' numbers.
[[nodiscard]] std::vector<bool> find_answered(std::vector<SourceLine> const& lines,
                                              Numbering const& numbering);

}  // namespace keydrift::printed
