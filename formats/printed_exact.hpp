#pragma once
// Keys whose front matter says how to take their labels: "Layout: indented, exact".  Inner header
// of formats.
//
// In such a key every line that begins with a label and a full stop (or with a dash) is a lead, and
// a label is the couplet's whole name: 7a is couplet 7a.  Parallel: a label opens a couplet, a dash
// adds a lead to it.  Indented: a label that is open on the way down adds a lead to its couplet.
// Serial: the numbers in brackets are those of the rivals.  A lead without leaders goes on with the
// next line's couplet in the layouts indented and serial; leaders to nothing lead nowhere.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_write.hpp"

namespace keydrift::printed {

// Begins a paragraph of such a key that is said of no lead, whatever its lines look like.
inline constexpr std::string_view kNoteOnTheKey{"Note on the key:"};

// "Layout: indented, exact".
[[nodiscard]] std::string layout_line(PrintLayout layout);

// What such a line says; nullopt for any other line.
[[nodiscard]] std::optional<Layout> layout_of_line(std::string_view line);

// What the lines before the key say.
[[nodiscard]] std::optional<Layout> declared_layout(std::vector<SourceLine> const& lines);

// Numbers and styles of a key whose labels are exact.
[[nodiscard]] Numbering exact_numbering(std::vector<SourceLine> const& lines);

[[nodiscard]] Grouping group_exact(KeyText const& key, SortedLines const& sorted, Layout layout);

}  // namespace keydrift::printed
