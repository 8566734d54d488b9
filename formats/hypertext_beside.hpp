#pragma once
// What a page sets beside its text: menus, contents, comments.  Inner header of formats.

#include <cstddef>
#include <string_view>
#include <vector>

namespace keydrift::hypertext {

struct Stretch {
  std::size_t begin{};  // bytes of the text
  std::size_t end{};
};

// The elements that are no part of what the page tells, by their names (<nav>, <aside>, <footer>,
// <figcaption>: WHATWG's living standard, 4.3 and 4.4) or by words of their class or id that pages
// commonly use ("toc", "sidebar": common practice).  In printed order, none within another; none
// that does not close, or takes more than two fifths of the text.
[[nodiscard]] std::vector<Stretch> beside_text(std::string_view text);

// Behind the tag that closes the element of that name that is opened at `at`; npos without one.
[[nodiscard]] std::size_t end_of_element(std::string_view text, std::size_t at,
                                         std::string_view name);

// What a class of an inline element tells to be no part of the words: the link by which wikis let a
// title be edited, and the page of the book that an e-text was made from ("pagenum": common
// practice).
[[nodiscard]] bool is_set_aside(std::string_view said);

}  // namespace keydrift::hypertext
