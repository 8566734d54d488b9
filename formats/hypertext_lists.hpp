#pragma once
// Lists of HTML that number couplets where they are shown: the numbers stand in no text.  Inner
// header of formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_map>

namespace keydrift::hypertext {

// How a line begins that a list's tag sets.
struct ListLine {
  std::string label;     // "3. ", "3a. ", "– ": shown, and not written
  bool joins{false};     // goes on with the line before: the words of "<dt>3.<dd>Wings clear"
  bool beside{false};    // no part of a lead: the title of a couplet
  bool touches{false};   // and no blank parts them: "<dt>3<dd>a. Wings clear"
  bool ends{false};      // where the lead leads, on a line of its own
  bool signless{false};  // in place of the sign that the line begins with: "• Wings clear"
  bool numbers{false};  // "Couplet 3 [back to 1]" over the leads: the number, and what is beside it
};

// By the offset of the tag that begins the line: an "<li>", a "<dd>", or what parts an item's
// lines. Taken for couplets are
//   <ol><li><ol><li>Wings clear … 2<li>Wings dark … 3</ol>…   each item a couplet, its leads a list
//   <ol><li>Wings clear … 2<br>Wings dark … 3…                each item a couplet of a few lines
//   <dl><dt>1.<dd>Wings clear … 2<dd>Wings dark … 3…          terms that are nothing but numbers
// if a fair part of their lines ends in the number of an item; and first leads in lists that count
// on from each other,
//   <ol><li>Wings clear … 2</ol>…<ol start="2"><li>Legs long … 3</ol>…
//   <h3>Couplet 2</h3><ul><li>Wings clear<br>Couplet 3<li>Wings dark<br>Aus bus</ul>
// whose ends on lines of their own go on with the words, where a fair part names another couplet.
// Items that write labels of their own keep those.  Linear in the text.
[[nodiscard]] std::unordered_map<std::size_t, ListLine> couplets_in_lists(std::string_view text);

// Bytes of the words and the number at the begin of "Couplet 3", "Step 3 [back to 1]"; 0 where
// anything else stands behind them, or no such word before.
[[nodiscard]] std::size_t numbering_title(std::string_view line);

}  // namespace keydrift::hypertext
