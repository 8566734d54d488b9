#pragma once
// What passes over a page's tags share.  Inner header of formats.

#include <cstddef>
#include <string_view>

#include "keydrift/formats/hypertext_lines.hpp"

namespace keydrift::hypertext {

// Calls take(Tag const&, std::size_t at) for each tag, and for what stands between them
// show(std::size_t at), which gives the bytes that it has seen, one at least.  What scripts and
// styles hold is passed over.  Linear in the text.
template <class Take, class Show>
void walk(std::string_view text, Take take, Show show) {
  for (std::size_t at = 0; at < text.size();) {
    auto const tag = text[at] == '<' ? tag_at(text.substr(at)) : Tag{};
    if (tag.length == 0) {
      at += show(at);
      continue;
    }
    take(tag, at);
    at += tag.length;
    if (!tag.closes && (tag.name == "script" || tag.name == "style")) {
      at = closing_tag(text, at, tag.name);
    }
  }
}

}  // namespace keydrift::hypertext
