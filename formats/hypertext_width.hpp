#pragma once
// Pages whose source was broken at a width.  Inner header of formats.

#include <string_view>

namespace keydrift::hypertext {

// Did a word processor or an editor break the words of the page wherever a width ended, so that a
// line feed is a blank?  Then no line would have taken up the first word of the next one, and the
// lines hardly ever begin with a label.  Linear in the text.
[[nodiscard]] bool wraps_at_width(std::string_view text);

}  // namespace keydrift::hypertext
