#include "keydrift/formats/printed_hybrids.hpp"

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr auto kCross = "×"sv;
constexpr std::size_t kMostWordsBeforeCross = 6;  // behind the genus: epithets, authors

// May the word stand between the first parent's genus and the cross?
bool may_be_of_parent(std::string_view word) {
  if (ends_item(word)) return false;
  return is_epithet(word) || is_rank(word) || is_particle(word) || is_authorish(word);
}

}  // namespace

std::string_view without_cross(std::string_view word) {
  bool const close = word.starts_with(kCross) && word.size() > kCross.size();
  return close ? word.substr(kCross.size()) : word;
}

bool is_cross(std::string_view word) { return word == kCross || word == "x" || word == "X"; }

std::size_t begin_with_cross(std::span<std::string_view const> words, std::size_t name) {
  if (name < 2 || !is_cross(words[name - 1])) return name;
  for (auto w = name - 1; w-- > 1 && w + kMostWordsBeforeCross + 2 > name;) {
    bool const genus = is_abbreviated(words[w]) || is_capitalised(words[w]);
    if (genus && is_epithet(words[w + 1])) {
      bool const latin = is_abbreviated(words[w]) || has_latin_ending(words[w]);
      return latin && has_epithet_ending(words[w + 1]) ? w : name;
    }
    if (!may_be_of_parent(words[w])) break;
  }
  // "4 × Ausella cusa" counts.
  bool const counts = is_digit(code_point_at(words[name - 2], 0).value);
  return words[name - 1] == kCross && !counts ? name - 1 : name;
}

std::string with_parents_in_full(std::string_view name) {
  auto const words = words_of(name);
  std::string full;
  for (std::size_t w = 0; w < words.size(); ++w) {
    bool const parent = w > 1 && is_cross(words[w - 1]) && is_abbreviated(words[w]) &&
                        words[0].starts_with(words[w].substr(0, words[w].size() - 1));
    full += (w > 0 ? " " : "") + std::string{parent ? words[0] : words[w]};
  }
  return full;
}

}  // namespace keydrift::printed
