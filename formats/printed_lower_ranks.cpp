#include "keydrift/formats/printed_lower_ranks.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"

namespace keydrift::printed {

BracketedRanks bracketed_ranks(DestinationWords const& words, std::size_t at) {
  BracketedRanks found;
  if (!words.word(at).starts_with('(')) return {};
  auto i = at;
  for (bool closed = false; !closed; i += 2) {
    auto const rank = i == at ? words.word(i).substr(1) : words.word(i);
    auto const printed = words.word(i + 1);
    closed = printed.ends_with(')');
    auto const epithet = closed ? printed.substr(0, printed.size() - 1) : without_end(printed);
    bool const joined = is_separator(words.word(i + 2));
    bool const apart = closed || joined || ends_item(printed);
    if (!is_lower_rank(rank) || !is_epithet(epithet) || !apart) return {};
    found.ranks.push_back(std::string{rank} + " " + std::string{epithet});
    if (!closed && joined) ++i;
  }
  if (found.ranks.size() < 2) return {};
  found.end = i;
  return found;
}

BracketedRanks bracketed_rank(DestinationWords const& words, std::size_t at) {
  if (!words.word(at).starts_with('(')) return {};
  auto i = at;
  auto rank = words.word(i).substr(1);
  if (rank.size() == 2 && rank.back() == '.') rank = words.word(++i);  // its letter
  auto epithet = without_end(words.word(i + 1));
  if (!is_lower_rank(rank) || !epithet.ends_with(')')) return {};
  epithet.remove_suffix(1);
  if (!is_epithet(epithet)) return {};
  return {{std::string{rank} + " " + std::string{epithet}}, i + 2};
}

bool names_lower_rank(DestinationWords const& words, std::size_t i) {
  auto const rank = words.word(i);
  auto const epithet = without_end(words.word(i + 1));
  // "var. nov.", "f." of a son
  return rank.size() > 2 && is_lower_rank(rank) && !ends_item(rank) && is_epithet(epithet) &&
         !is_mark_of_new(epithet);
}

bool may_go_on_with(std::string_view name, std::string_view rank) {
  auto const words = words_of(name);
  return std::find(words.begin(), words.end(), rank) == words.end();
}

std::string_view shared_with_rank(std::string_view name, std::string_view rank) {
  auto const words = words_of(name);
  std::size_t cut = 0;
  for (auto w = words.size(); w-- > 1;) {
    if (!is_lower_rank(words[w])) continue;
    cut = w;
    if (words[w] == rank) break;
  }
  if (cut == 0) return {};
  return trim_right(name.substr(0, static_cast<std::size_t>(words[cut].data() - name.data())));
}

}  // namespace keydrift::printed
