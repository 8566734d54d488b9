#include "keydrift/formats/near_words.hpp"

#include <algorithm>

#include "keydrift/key/fold.hpp"

namespace keydrift {
namespace {

// Optimal string alignment distance (Damerau 1964): insertions, deletions, substitutions and swaps
// of neighbours, over bytes of folded words.  The words are short.
std::size_t slips(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> cost(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) cost[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) cost[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      std::size_t const same = a[i - 1] == b[j - 1] ? 0 : 1;
      cost[i][j] = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + same});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
      }
    }
  }
  return cost[a.size()][b.size()];
}

template <class Word>
std::string join_quoted(std::span<Word const> words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " and " : ", ";
    text += '"';
    text += words[i];
    text += '"';
  }
  return text;
}

}  // namespace

std::string column_key(std::string_view name) {
  auto key = fold_words(name);
  key.erase(std::remove_if(key.begin(), key.end(),
                           [](char c) { return c == ' ' || c == '-' || c == '_' || c == '\t'; }),
            key.end());
  return key;
}

std::string nearest_word(std::string_view word, std::span<std::string_view const> known) {
  constexpr std::size_t kLongest = 64;  // no word of a format is longer
  auto const folded = fold_words(word);
  std::string best;
  if (folded.empty() || folded.size() > kLongest) return best;
  std::size_t least = 0;
  for (auto const candidate : known) {
    auto const other = fold_words(candidate);
    if (other.size() > kLongest) continue;
    auto const distance = slips(folded, other);
    auto const shorter = std::min(folded.size(), other.size());
    bool const begins_so = shorter >= 3 && folded.compare(0, shorter, other, 0, shorter) == 0;
    if (!begins_so && distance > std::max<std::size_t>(1, shorter / 3)) continue;
    if (best.empty() || distance < least) {
      best = candidate;
      least = distance;
    }
  }
  return best;
}

std::string did_you_mean(std::string_view word, std::span<std::string_view const> known,
                         std::string_view otherwise) {
  auto const nearest = nearest_word(word, known);
  return nearest.empty() ? std::string{otherwise} : "did you mean \"" + nearest + "\"?";
}

std::string quoted_list(std::span<std::string_view const> words) { return join_quoted(words); }
std::string quoted_list(std::span<std::string const> words) { return join_quoted(words); }

}  // namespace keydrift
