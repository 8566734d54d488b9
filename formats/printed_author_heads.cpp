#include "keydrift/formats/printed_author_heads.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

void find_heads_of_authors(std::vector<SourceLine> const& lines, Numbering const& numbering,
                           std::vector<bool>& heads) {
  constexpr std::size_t kShortest = 3;  // letters of a surname
  constexpr std::size_t kMostInitials = 3;
  constexpr std::uint32_t kLeastPage = 10;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    bool const apart = (i == 0 || lines[i - 1].text.empty()) &&
                       (i + 1 == lines.size() || lines[i + 1].text.empty());
    if (!apart || lines[i].text.size() > kLongestRunningHead) continue;
    auto const edge = number_at_edge(lines[i]);
    if (!edge || edge->number < kLeastPage || is_of_key(edge->number, numbering)) continue;
    auto const words = words_of(edge->words);
    std::size_t initials = 0;
    while (initials < words.size() && initials < kMostInitials && words[initials].size() == 2 &&
           is_abbreviated(words[initials])) {
      ++initials;
    }
    if (initials == 0 || initials >= words.size()) continue;
    auto const surname = words[initials];
    bool const named = ends_item(surname) && is_in_capitals(without_end(surname), kShortest);
    if (named && initials + 1 < words.size()) heads[i] = true;
  }
}

bool is_author_with_title(std::string_view words) {
  constexpr std::size_t kMostWords = 8;
  auto const all = words_of(words, kMostWords + 1);
  if (all.size() < 3 || all.size() > kMostWords || !is_capitalised(all.front())) return false;
  auto const dash = std::find_if(all.begin(), all.end(), [](std::string_view word) {
    auto const first = code_point_at(word, 0);
    return is_dash(first.value) && first.length == word.size();
  });
  if (dash == all.begin() || dash == all.end() || dash + 1 == all.end()) return false;
  return std::all_of(all.begin(), all.end(), [](std::string_view word) {
    auto const first = code_point_at(word, 0).value;
    return is_upper(first) || is_dash(first) || word == "and" || word == "&" || word == "of";
  });
}

}  // namespace keydrift::printed
