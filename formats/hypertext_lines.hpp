#pragma once
// Text with HTML in it as lines of a manuscript.  Inner header of formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/manuscript.hpp"

namespace keydrift::hypertext {

struct Lines {
  std::vector<ManuscriptLine> lines;  // empty ones where the layout leaves a gap
  std::size_t tags{};                 // that were left out
  std::size_t characters{};           // references that were resolved
};

// `text`: decoded.  Places are lines and columns of it.
[[nodiscard]] Lines lines_of(std::string_view text);

// A tag at text[0], which is '<'; length 0 for any other sign.
struct Tag {
  std::size_t length{};  // bytes, brackets included
  std::string name;      // in small letters, without a prefix ("td" of "x:td")
  bool closes{false};    // "</td>"
  bool empty{false};     // "<br/>"
};
[[nodiscard]] Tag tag_at(std::string_view text);

// What stands behind the attribute's "=" in the tag, quotation marks aside: "a b" of `class="a b"`.
// `tag`: as it is written, from "<" to ">"; `attribute`: in small letters.  Empty without it.
[[nodiscard]] std::string_view attribute_of(std::string_view tag, std::string_view attribute);

// Where the tag that closes an element of that name begins, at or behind `at`: scripts and styles
// hold no elements.  text.size() without one.
[[nodiscard]] std::size_t closing_tag(std::string_view text, std::size_t at, std::string_view name);

[[nodiscard]] constexpr bool is_white(char c) {
  return c == ' ' || c == '\t' || c == '\f' || c == '\n';
}

// Is it an element of HTML, or one that a journal's markup has for the same thing?
[[nodiscard]] bool is_known(std::string_view name);
// Does it begin or end a line: "p", "tr", "li", "h2"?
[[nodiscard]] bool breaks_line(std::string_view name);
[[nodiscard]] bool is_cell(std::string_view name);
// "h2", and the titles of pages and tables.
[[nodiscard]] bool is_heading(std::string_view name);

// A character reference at text[0], which is '&': "&eacute;", "&#233;", "&#xE9;".  Length 0 where
// it is none that is known.
struct Reference {
  std::size_t length{};
  std::string character;  // UTF-8
};
[[nodiscard]] Reference reference_at(std::string_view text);

}  // namespace keydrift::hypertext
