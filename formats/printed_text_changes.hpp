#pragma once
// What mends of a whole text share: its lines, and changes to what stands in them.  Inner header of
// formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

struct TextLine {
  std::size_t begin{};    // in the text, behind the blanks before the line
  std::string_view text;  // of the text looked at, without these blanks and the line's end
};
[[nodiscard]] std::vector<TextLine> lines_of(std::string_view text);

struct TextChange {
  std::size_t at{};  // byte of the text
  std::size_t bytes{};
  std::string put;  // in place of these bytes
};
// `changes`: in the order of their places; without any the text stays where it is.
void make_changes(std::vector<TextChange> const& changes, std::string& text);

}  // namespace keydrift::printed
