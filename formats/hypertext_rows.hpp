#pragma once
// Rows of a table in HTML that hold a whole couplet.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/formats/manuscript.hpp"

namespace keydrift::hypertext {

// Makes lines of the leads that rows hold, one row after another.
class RowParter {
 public:
  // <tr><td>1<td>Wings clear<br>Wings dark<td>2<br>Aus bus: a line for each lead, its cells parted
  // by tabs as those of `row` are.  `breaks`: bytes of the row's text at which a line breaks within
  // a cell, ascending.  Only where two cells or more, the last among them, have the same few lines
  // and all others one at most.  <td>1a. Wings clear<br>Fig. 1<br>Go to 2<td>1b. Wings dark<br>Aus
  // bus: leads beside each other, with labels or with their couplet's number above, a line for
  // each, what it leads to behind a tab and its captions below it. `numbered`: the line above is a
  // couplet's number.  <td>1<td>Wings clear … 2<td>Wings dark … Aus bus: beside each other behind
  // their number, each with its end.
  //
  // Appends these lines to `lines`; false for any other row.  A row that the next one answers is
  // put back whole: what looked like its second lead said something of the taxon.
  [[nodiscard]] bool part(ManuscriptLine const& row, std::vector<std::size_t> const& breaks,
                          bool numbered, std::vector<ManuscriptLine>& lines);

 private:
  struct PartedRow {
    ManuscriptLine whole;
    std::size_t begin{};  // of its leads in the lines
    std::size_t end{};
  };
  std::optional<PartedRow> behind_number_;  // the last row, if it was parted so
  std::optional<std::uint32_t> number_;     // of the last row's couplet
};

// Adds to `line` those bytes of the text of `from`, with the places of their characters.
void append_stretch(ManuscriptLine& line, ManuscriptLine const& from, std::size_t begin,
                    std::size_t end);

}  // namespace keydrift::hypertext
