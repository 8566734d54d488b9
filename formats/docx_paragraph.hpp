#pragma once
// From the typed text of a paragraph to the lines that it prints.  Inner header of formats.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/docx_lines.hpp"

namespace keydrift::docx {

// From `begin` on, text typed in paragraph `number`; its first character has column `column`.
struct TypedStretch {
  std::size_t begin{};
  std::uint32_t number{};
  std::uint32_t column{1};
};

// Bytes of the typed text that are set alike.
struct TypedSpan {
  std::size_t begin{};
  std::size_t end{};
};
using TypedSpans = std::vector<TypedSpan>;  // ascending, apart

// So many bytes from `begin` on, which no span reaches beyond, are set so too.
void extend(TypedSpans& spans, std::size_t begin, std::size_t size);

// Text as typed: tabs as "\t", breaks of lines, columns and pages as "\n".
struct TypedText {
  std::string text;
  std::vector<TypedStretch> stretches;  // ascending; the first begins at 0
  TypedSpans italics;
  TypedSpans emphases;                         // bold or underlined
  std::size_t small_begin{std::string::npos};  // of the end that is set smaller than the rest
  bool contents{false};                        // some of it is a table of contents
  bool emphatic{true};                         // none of it is neither bold nor underlined
};

// The lines of one paragraph, one for each break and one more.  `number`: its automatic number.
// A name in italics or bold type at the end of a line is told to be its destination
// (marked_ends.hpp); so is one with nothing behind it but words in smaller type.
// A tab that meets a stop with a leader becomes dots between blanks; which stop it meets is
// estimated from the number of characters before it, as their widths are not known.
[[nodiscard]] std::vector<Line> lines_of(TypedText const& typed, std::string_view number,
                                         ParagraphLook const& look);

// One cell of a table's row: the lines of its paragraphs and of the tables within it.
struct Cell {
  std::vector<Line> lines;
  std::uint32_t column{};  // of the table's grid, from 0
  bool from_above{false};  // a cell of the row before reaches down into it
};

// The lines of one row.  Usually one, the cells parted by tabs; rows of tables within it follow.
// Where one cell alone says anything it is a frame around text, whose lines stay as they are; cells
// that all have the same few lines hold one couplet, a lead a line; cells of many lines are columns
// of a page, one after the other.  A label that reaches down from above is left out beside a
// letter, which tells the lead: "1 | a" above " | b".
[[nodiscard]] std::vector<Line> lines_of(std::vector<Cell> const& row);

// Sets the rows of a table aside whose lines (from `first` on) are numbered, each with a number of
// its own that nothing in them leads to: "1 | Old Bridge | boulders", a list.  Whether it did.
bool set_list_aside(std::vector<Line>& lines, std::size_t first);

// Tells the leads of a table whose lines (from `first` on) mostly have three cells: label, words,
// destination.
void mark_up_leads(std::vector<Line>& lines, std::size_t first);

}  // namespace keydrift::docx
