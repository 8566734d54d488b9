#include "keydrift/formats/printed_references.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "see", case-folded.  "s." and "cf." send to a name only where a genus follows.
bool points_at(std::string_view folded) {
  static constexpr std::array kWords{"see"sv,  "siehe"sv, "voir"sv, "véase"sv, "vease"sv,
                                     "vide"sv, "ver"sv,   "vedi"sv, "zie"sv,   "compare"sv,
                                     "cfr."sv, "cf."sv,   "vgl."sv, "vgl"sv,   "vergl."sv,
                                     "s."sv,   "conf."sv};
  return is_one_of(kWords, folded);
}

// "also" of "see also".
bool goes_along(std::string_view word) {
  static constexpr std::array kWords{"also"sv, "auch"sv,    "aussi"sv,  "anche"sv, "ook"sv,
                                     "a."sv,   "también"sv, "também"sv, "under"sv, "unter"sv};
  return is_one_of(kWords, word);
}

// "Ausella", "A. bus", "5. A. bus"
bool begins_name(std::span<std::string_view const> words) {
  if (words.size() > 2 && is_species_number(words[0])) words = words.subspan(1);
  if (words.empty()) return false;
  auto const genus = without_closing_marks(words[0]);
  bool const latin = has_latin_ending(genus) || has_strict_latin_ending(genus);
  if (is_capitalised(genus) && latin) return true;
  return words.size() > 1 && is_abbreviated(words[0]) &&
         is_epithet(without_closing_marks(words[1]));
}

}  // namespace

std::size_t words_of_reference(std::span<std::string_view const> words) {
  if (words.size() < 2 || !points_at(fold(words[0]))) return 0;
  // "S. Ausella" is a genus cut short, or a page.
  if (words[0] == "S.") return 0;
  std::size_t const count = words.size() > 2 && goes_along(words[1]) ? 2 : 1;
  return begins_name(words.subspan(count)) ? count : 0;
}

bool is_page_alone(std::string_view text) {
  constexpr std::size_t kLongest = 40;  // bytes
  if (text.size() > kLongest) return false;
  auto const words = words_of(text);
  if (words.size() < 2 || words.size() > 3) return false;
  auto const page = words[words.size() - 2];
  bool const number = is_digit(code_point_at(words.back(), 0).value) &&
                      words.back().find_first_not_of("0123456789–-.)") == std::string_view::npos;
  if (!number || !is_page(page, words.back())) return false;
  // "s. 15" leads to a couplet.
  if (page == "s.") return false;
  return words.size() == 2 || points_at(fold(words[0]));
}

bool is_chapter_alone(std::string_view text) {
  constexpr std::size_t kLongest = 40;  // bytes
  static constexpr std::array kChapters{"chapter"sv,  "chap."sv,    "chapitre"sv, "kapitel"sv,
                                        "kap."sv,     "capítulo"sv, "capitolo"sv, "hoofdstuk"sv,
                                        "rozdział"sv, "глава"sv};
  if (text.size() > kLongest) return false;
  auto const words = words_of(text);
  if (words.size() < 2 || words.size() > 3) return false;
  bool const number = words.back().find_first_not_of("0123456789.") == std::string_view::npos &&
                      is_digit(code_point_at(words.back(), 0).value);
  bool const chapter = is_one_of(kChapters, fold(words[words.size() - 2]));
  return number && chapter && (words.size() == 2 || points_at(fold(words[0])));
}

bool points_to_species_of(std::string_view text) {
  constexpr std::size_t kLongest = 80;  // bytes
  static constexpr std::array kSpecies{"species"sv,   "arten"sv,     "espèces"sv, "especies"sv,
                                       "espécies"sv,  "specie"sv,    "soorten"sv, "genera"sv,
                                       "gattungen"sv, "genres"sv,    "géneros"sv, "gêneros"sv,
                                       "generi"sv,    "geslachten"sv};
  static constexpr std::array kOf{"of"sv, "in"sv, "der"sv, "des"sv, "von"sv,
                                  "de"sv, "du"sv, "del"sv, "di"sv,  "van"sv};
  if (text.size() > kLongest) return false;
  auto const words = words_of(text);
  return words.size() >= 4 && points_at(fold(words[0])) && is_one_of(kSpecies, fold(words[1])) &&
         is_one_of(kOf, words[2]) && is_capitalised(words.back());
}

bool is_numbered_part(std::string_view text, bool pointed) {
  constexpr std::size_t kShortest = 3;  // bytes of "Lab"
  auto const words = words_of(text, 3);
  if (!pointed || words.size() < 2 || words[0].size() < kShortest) return false;
  bool const number = words[1].find_first_not_of("0123456789"sv) == std::string_view::npos;
  bool const noun = is_capitalised(words[0]) && !has_strict_latin_ending(words[0]);
  bool const ends = words.size() == 2 || words[2].starts_with('(');
  return number && noun && ends && figures_in(text).empty();
}

bool leads_to_no_name(std::string_view text) {
  constexpr std::size_t kLongest = 80;  // bytes
  constexpr std::size_t kMostWords = 12;
  static constexpr std::array kDenying{"not"sv, "nicht"sv, "kein"sv, "keine"sv};
  static constexpr std::array kPersons{"specialist"sv, "expert"sv, "spezialist"sv, "spécialiste"sv,
                                       "especialista"sv};
  static constexpr std::array kSent{"to"sv,    "a"sv,     "an"sv, "consult"sv, "ask"sv,
                                    "einem"sv, "einen"sv, "un"sv, "à"sv,       "al"sv};
  text = trim(text);
  if (text.ends_with('.')) text.remove_suffix(1);
  if (text.size() > kLongest) return false;
  auto const words = words_of(text);
  if (words.size() < 2 || words.size() > kMostWords) return false;
  // A capital begins a name.
  bool const named = std::any_of(words.begin() + 1, words.end(), [](std::string_view word) {
    return is_upper(code_point_at(word, 0).value);
  });
  if (named) return false;
  if (is_one_of(kDenying, fold(words[0]))) return true;
  auto const last = fold(words.back());
  // "Fig specialist" may be a common name.
  bool const sent = is_one_of(kSent, words[words.size() - 2]);
  return sent && std::any_of(kPersons.begin(), kPersons.end(),
                             [&last](std::string_view person) { return last.starts_with(person); });
}

std::size_t begin_behind_page(std::string_view text) {
  constexpr std::size_t kLookedAt = 80;  // bytes
  static constexpr std::array kNumbers{"nr."sv, "no."sv, "n°"sv, "nº"sv, "n.º"sv, "n.°"sv, "№"sv};
  auto const words = words_of(start_of(text, kLookedAt), 4);
  if (words.size() < 3) return 0;
  bool const number = words[1].find_first_not_of("0123456789"sv) == std::string_view::npos;
  bool const page = words[0].ends_with('.') && is_page_word(words[0]);
  if (!number || !(page || is_one_of(kNumbers, fold(words[0])))) return 0;
  bool const species =
      words.size() > 3 && is_abbreviated(words[2]) && is_epithet(without_end(words[3]));
  bool const genus = is_capitalised(without_end(words[2])) &&
                     has_strict_latin_ending(fold(without_closing_marks(words[2])));
  return species || genus ? static_cast<std::size_t>(words[2].data() - text.data()) : 0;
}

}  // namespace keydrift::printed
