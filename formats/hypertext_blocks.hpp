#pragma once
// The lines of a page with the elements that hold them.  Inner header of formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::hypertext {

inline constexpr std::size_t kNowhere = static_cast<std::size_t>(-1);

// What is shown between two tags that part lines; a row of a table is one.
struct Block {
  std::size_t tag{};           // that begins it
  std::string name{};          // of that tag; "/ul" of a closing one
  std::string begin{};         // the first bytes of what is shown, white space as single blanks
  std::string end{};           // the last ones
  std::size_t item{kNowhere};  // the innermost "<li>", "<dt>", "<dd>" or "<tr>" that holds it
  std::size_t list{kNowhere};  // of that item
  bool heading{false};         // or a title of something smaller: "<caption>", "<summary>"
  bool bold{false};            // all of it
  bool ends_in_mark{false};    // in a link or in italics, but for a few words behind
};

// Linear in the text.
[[nodiscard]] std::vector<Block> blocks_of(std::string_view text);

}  // namespace keydrift::hypertext
