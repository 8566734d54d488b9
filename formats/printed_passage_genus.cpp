#include "keydrift/formats/printed_passage_genus.hpp"

#include <array>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "les Silvadrus", "die Silvadrus": of the species of a genus.
bool is_article_of_several(std::string_view word) {
  return word == "les" || word == "des" || word == "die" || word == "the" || word == "los" ||
         word == "las" || word == "os" || word == "chez" || word == "Chez";
}

// "four genera: Ausella, Busella and Cusella": the one with that initial; empty without one.
std::string listed_genus(std::vector<std::string_view> const& words, std::string_view initial) {
  static constexpr std::array kGenera{"genera"sv,  "gattungen"sv, "genres"sv,    "géneros"sv,
                                      "gêneros"sv, "generi"sv,    "geslachten"sv};
  bool announced = false;
  for (std::size_t w = 0; w < words.size(); ++w) {
    announced = announced || is_one_of(kGenera, fold(bare_name(words[w])));
    // A list goes on behind a comma or "and".
    auto const listed = [&words](std::size_t i) {
      auto const word = i < words.size() ? bare_name(words[i]) : std::string_view{};
      return is_capitalised(word) && is_latin_genus(word) && !has_higher_ending(fold(word));
    };
    if (!announced || !listed(w) || !words[w].starts_with(initial)) continue;
    bool const first = w > 0 && (words[w - 1].ends_with(',') || is_separator(words[w - 1]));
    bool const behind = first && (listed(w - 1) || (w > 1 && listed(w - 2)));
    bool const goes_on = w + 1 < words.size() && ((words[w].ends_with(',') && listed(w + 1)) ||
                                                  (is_separator(words[w + 1]) && listed(w + 2)));
    if (behind || goes_on) return std::string{bare_name(words[w])};
  }
  return {};
}

}  // namespace

std::string genus_in_passage(std::string_view text, std::string_view initial,
                             std::unordered_set<std::string> const& epithets) {
  auto const words = words_of(text);
  for (std::size_t w = 0; w + 1 < words.size(); ++w) {
    auto word = words[w];
    while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
    if (!word.starts_with(initial) || !is_capitalised(word) || !has_latin_ending(word)) continue;
    auto const next = words[w + 1].substr(0, words[w + 1].find_first_of(",;:)"));
    bool const several = next == "spp." || next == "sp.";
    bool const species =
        has_strict_latin_ending(word) && is_epithet(next) && has_strict_latin_ending(next) && w > 0;
    // "Ausomyces bus" where a lead says "A. bus".
    bool const led_to = is_epithet(next) && epithets.contains(std::string{next});
    if (several || species || led_to) return std::string{word};
  }
  // "Ausella Roe, 1931 now includes …", "genitalia of the genus Ausella", "genre Ausella"
  for (std::size_t w = 0; w < words.size(); ++w) {
    auto const word = bare_name(words[w]);
    if (!word.starts_with(initial) || !is_capitalised(word)) continue;
    auto const folded = fold(word);
    constexpr std::size_t kShortest = 4;  // bytes
    if (word.size() < kShortest || has_higher_ending(folded)) continue;
    bool const strict = has_strict_latin_ending(folded);
    bool const dated = w + 2 < words.size() && is_authorish(words[w + 1]) &&
                       words[w + 1].ends_with(',') && is_year(words[w + 2]);
    bool const announced = w > 0 && says_genus(fold(words[w - 1]));
    bool const article = w > 0 && is_article_of_several(words[w - 1]) && !word.ends_with('a');
    if (dated || announced || (article && strict)) return std::string{word};
  }
  return listed_genus(words, initial);
}

}  // namespace keydrift::printed
