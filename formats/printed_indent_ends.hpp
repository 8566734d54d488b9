#pragma once
// Which lines of a key without labels end in a destination.  Inner header of formats.

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Of a name with its author at a line's end.
inline constexpr std::size_t kWordsOfNameAtEnd = 7;

struct IndentEnds {
  std::vector<bool> ends;        // by line: ends in a destination
  std::vector<bool> alone;       // by line: is one, and nothing else
  std::vector<bool> hanging;     // by line: ends in leaders
  std::vector<std::size_t> led;  // the lines that do, but for those around the key
  std::set<std::string> genera;  // first words of the destinations
};
[[nodiscard]] IndentEnds find_indent_ends(std::vector<SourceLine> const& lines,
                                          Numbering const& numbering);

// Lines that are no part of any lead: heads and feet of pages, notes, captions.
[[nodiscard]] bool is_beside_leads(std::string_view text);

}  // namespace keydrift::printed
