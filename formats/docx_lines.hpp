#pragma once
// The lines of a manuscript's text: paragraphs, rows of tables, text boxes, notes.  Inner header of
// formats.

#include <cstddef>
#include <cstdint>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "keydrift/formats/docx_numbering.hpp"
#include "keydrift/formats/docx_styles.hpp"
#include "keydrift/formats/manuscript.hpp"

namespace keydrift::docx {

struct Line {
  std::string text;  // without indentation; automatic number first; leaders as dots
  // Where its characters come from.  Columns count the characters of the paragraph as typed; its
  // automatic number, which nobody typed, stands at column 1.
  std::vector<ManuscriptStretch> stretches;
  std::int32_t indent{};  // twips
  bool in_row{false};     // of a table: the indentation says nothing
  bool heading{false};    // by its style, or its place in the outline
  bool centred{false};
  bool emphatic{false};  // all its words are bold or underlined
  bool kept{false};      // on one page with the paragraph below
  LineMarkup markup{};
};

// What is met on the way and is worth a word, or a note.
enum class Mark : std::uint8_t {
  insertion,  // tracked changes; each is read as accepted
  deletion,
  move,
  hidden_text,
  struck_text,  // crossed out by hand, not deleted
  comment,
  footnote,
  endnote,
  text_box,
  unknown_symbol,
  open_field,  // a field without end: its code was kept as text
  embedded,    // another document that is to be put in here
};

struct Marked {
  Mark mark{};
  std::uint32_t number{};  // of the paragraph
  std::uint32_t column{};
  std::string text;  // words; the id of a comment or note; the date of a change
};

struct Story {
  std::vector<Line> lines;
  std::vector<Marked> marks;  // in the order of the text
};

// The looks that a story is read with.  Borrows; the numbering counts on.
struct Looks {
  Styles const& styles;
  Numbering& numbering;
};

// The text below `root` (w:body, w:footnote).  Paragraphs are numbered in the order of the file,
// those in tables and text boxes too, from 1.  Deleted text is left out, and so is hidden text.
// Linear; no recursion.
[[nodiscard]] Story read_story(pugi::xml_node root, Looks looks);

}  // namespace keydrift::docx
