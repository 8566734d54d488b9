#pragma once
// Where couplets begin within paragraphs that hold several, or a whole key.  Inner header of
// formats.

#include <cstddef>
#include <vector>

#include "keydrift/formats/printed_couplet_paragraph.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

struct CoupletPlace {
  Spot spot;
  Label label;
};

struct ParagraphCouplets {
  std::vector<CoupletPlace> couplets;  // in order; empty where that is not the habit
  std::size_t end{};                   // the line behind the paragraphs that were looked at
};

// Couplets that count on from 1, the first at line `first`, each with a labelled rival before the
// next one: "1. Wings clear (2). – Wings dark: Aus bus. 2. Legs pale …", wrapped or not.  Only
// where most of them begin within lines.  `first` has to be a line of the text that is not blank.
[[nodiscard]] ParagraphCouplets couplets_in_paragraphs(std::vector<SourceLine> const& lines,
                                                       std::size_t first);

}  // namespace keydrift::printed
