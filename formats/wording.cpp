#include "keydrift/formats/wording.hpp"

#include <algorithm>
#include <vector>

#include "keydrift/key/fold.hpp"
#include "keydrift/key/near.hpp"

namespace keydrift::tables {
namespace {

constexpr std::size_t kLongestWord = 64;  // no name of a column or fixed word is longer

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
                           [](char c) { return c == ' ' || c == '-' || c == '_'; }),
            key.end());
  return key;
}

std::string nearest_word(std::string_view word, std::span<std::string_view const> known) {
  if (word.size() > kLongestWord) return "";
  auto const near = near_words(word, std::vector<std::string>{known.begin(), known.end()}, 1);
  return near.empty() ? "" : near.front();
}

std::string suggestion(std::string_view word, std::span<std::string_view const> known,
                       std::string_view otherwise) {
  auto const nearest = nearest_word(word, known);
  return nearest.empty() ? std::string{otherwise} : did_you_mean({nearest});
}

std::string quoted_list(std::span<std::string_view const> words) { return join_quoted(words); }
std::string quoted_list(std::span<std::string const> words) { return join_quoted(words); }

std::string counted(std::size_t number, std::string_view one, std::string_view several) {
  return std::to_string(number) + " " + std::string{number == 1 ? one : several};
}

}  // namespace keydrift::tables
