#include "keydrift/key/part_titles.hpp"

#include <algorithm>

#include "keydrift/key/fold.hpp"

namespace keydrift {
namespace {

// Folded text parts words by single blanks; a full stop, colon or dash after the name of the part
// ends it as well.
bool ends_word(char byte) { return byte == ' ' || byte == '.' || byte == ':' || byte == ','; }

}  // namespace

PartTitles::PartTitles(Edition const& edition) {
  for (std::size_t i = 0; i < edition.parts.size(); ++i) {
    auto folded = fold_words(edition.parts[i].title);
    if (!folded.empty()) titles_.emplace_back(std::move(folded), i);
  }
  std::sort(titles_.begin(), titles_.end());
}

std::optional<std::size_t> PartTitles::find(std::string_view title) const {
  auto const wanted = fold_words(title);
  if (wanted.empty()) return std::nullopt;
  auto const first = std::lower_bound(
      titles_.begin(), titles_.end(), wanted,
      [](auto const& entry, std::string const& value) { return entry.first < value; });
  if (first != titles_.end() && first->first == wanted) return first->second;
  std::optional<std::size_t> found;
  for (auto entry = first; entry != titles_.end() && entry->first.starts_with(wanted); ++entry) {
    if (!ends_word(entry->first[wanted.size()])) continue;
    if (found) return std::nullopt;
    found = entry->second;
  }
  return found;
}

}  // namespace keydrift
