#include "keydrift/formats/printed_text_changes.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {

std::vector<TextLine> lines_of(std::string_view text) {
  std::vector<TextLine> lines;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const first = begin + skip_blanks(text.substr(begin, end - begin), 0);
    lines.push_back({first, text.substr(first, end - first)});
    begin = end + 1;
  }
  return lines;
}

void make_changes(std::vector<TextChange> const& changes, std::string& text) {
  if (changes.empty()) return;
  std::string changed;
  changed.reserve(text.size() + changes.size() * 2);
  std::size_t done = 0;
  for (auto const& change : changes) {
    changed.append(text, done, change.at - done).append(change.put);
    done = change.at + change.bytes;
  }
  changed.append(text, done);
  text = std::move(changed);
}

}  // namespace keydrift::printed
