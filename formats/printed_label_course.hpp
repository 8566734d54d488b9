#pragma once
// The labels of a key whose scan damaged some, read together: each line is held to what the count,
// the halves of couplets and the ends of leads call for there.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// A label to be printed as the others are.
struct LabelChange {
  std::size_t line{};   // index into the lines
  std::size_t bytes{};  // of the line's text that the label takes up; 0 where it is lost
  std::string label;    // with its blank behind where none stands
  bool unprinted{};     // the key prints no label for second leads
};

// The changes that make the labels count on through the key, in the order of the lines.  Empty
// where none is damaged, or the labels are of no kind that is known here.
//
// `scan`: damage elsewhere shows that the text was scanned.  Only then, or where labels show it, a
// number is taken for another one, for it may be the author's slip as well.
//
// Of all ways to take lines for the leads of the key that one is chosen in which the least is amiss
// (a beam of the likeliest states from line to line): labels' wear (worn_label()), lines that look
// like labels and are none, leads that begin before the one above has ended, couplets that lack a
// lead.  The weights are common practice, not measured.
[[nodiscard]] std::vector<LabelChange> label_course(std::vector<SourceLine> const& lines,
                                                    bool scan);

}  // namespace keydrift::printed
