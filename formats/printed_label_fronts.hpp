#pragma once
// What can be told of lines before any rule of their labels is looked at.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

struct LineFront {
  bool empty{};
  bool may_be_label{};         // its front is short, or has a figure or sign
  bool may_be_words{};         // a lead may begin there without a label
  std::optional<Label> label;  // that it seems to begin with
  bool is_no_lead{};           // so it was marked, by what the damaged labels let it look like
};

// By line.
[[nodiscard]] std::vector<LineFront> line_fronts(std::vector<SourceLine> const& lines);

// Numbers that lines end in, of couplets it may be.
[[nodiscard]] std::set<std::uint32_t> numbers_at_ends(std::vector<SourceLine> const& lines);

// By line: what stands above it ends a lead.
[[nodiscard]] std::vector<bool> ended_above(std::vector<SourceLine> const& lines,
                                            Numbering const& numbering);

// Signs or figures stand before a word with a capital, "'b. Wings", "c : Legs", "1 6 (15) Head":
// they may be what is left of a label.
[[nodiscard]] bool may_begin_with_label(std::string_view line);

}  // namespace keydrift::printed
