#pragma once
// What is known of a printed line before it is read, because its origin marks it up (the cells of a
// table).  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <limits>

namespace keydrift {

enum class LineRole : std::uint8_t {
  told_by_text,  // nothing is known: the line's words and its neighbours decide
  lead,          // the whole of one lead
  heading,       // title of a key, cross-heading between leads
  note,          // belongs to the lead before it
  aside,         // belongs to the edition: prose around a table, footnotes
};

inline constexpr std::size_t kNotTold = std::numeric_limits<std::size_t>::max();

// Offsets in bytes.  Behind the line's end: there, and empty.
struct LineMarkup {
  // The line's text begins so many bytes further on.
  void move(std::size_t bytes) {
    for (auto* const border : {&words_begin, &destination_begin, &destination_end}) {
      if (*border != kNotTold) *border += bytes;
    }
  }

  LineRole role{LineRole::told_by_text};
  std::size_t words_begin{kNotTold};        // what stands before is the label
  std::size_t destination_begin{kNotTold};  // what follows is the destination, whatever it says
  std::size_t destination_end{kNotTold};    // before numbers of figures, pages … in other cells
};

}  // namespace keydrift
