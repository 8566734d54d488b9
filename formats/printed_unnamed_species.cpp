#include "keydrift/formats/printed_unnamed_species.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;
using Words = std::span<std::string_view const>;

std::string_view word_or_none(Words words, std::size_t i) {
  return i < words.size() ? words[i] : std::string_view{};
}

// "1", "A", "B2": what stands for an epithet that has not been given yet.
bool is_code(std::string_view word) {
  auto bare = without_end(word);
  if (bare.size() > 1 && bare.ends_with('.')) bare.remove_suffix(1);  // of the lead
  // "CO-03": the longer ones have a number.
  bool const numbered =
      bare.size() <= 6 && bare.find_first_of("0123456789") != std::string_view::npos;
  return !bare.empty() && (bare.size() <= 3 || numbered) && bare.front() != '-' &&
         std::all_of(bare.begin(), bare.end(), [](char c) {
           return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || c == '-';
         });
}

// "species 1", "type A": before a code.
bool stands_for_species(std::string_view word) {
  return word == "species" || word == "type" || word == "morphospecies" || word == "morphotype" ||
         word == "genus";
}

// How many words the quotation takes that begins with the first; 0 where none does, or a long one.
std::size_t words_in_quotation(Words words) {
  constexpr std::size_t kMost = 4;
  static constexpr std::array<std::pair<char32_t, char32_t>, 6> kMarks{
      {{U'"', U'"'}, {U'\'', U'\''}, {U'“', U'”'}, {U'„', U'“'}, {U'‘', U'’'}, {U'«', U'»'}}};
  auto const opening = code_point_at(word_or_none(words, 0), 0);
  for (auto const& [open, close] : kMarks) {
    if (opening.value != open) continue;
    for (std::size_t i = 0; i < std::min(kMost, words.size()); ++i) {
      auto const last = without_end(words[i]);
      bool const more = i > 0 || last.size() > opening.length;
      if (more && code_point_before(last, last.size()).value == close) return i + 1;
    }
  }
  return 0;
}

// "Tarn Hill (A.Roe 3317)": an Australian phrase name ends in its collector and number; 0 where
// none does.
std::size_t words_of_phrase(Words words) {
  constexpr std::size_t kMost = 8;
  if (!is_capitalised(word_or_none(words, 0))) return 0;
  bool open = false;
  for (std::size_t i = 0; i < std::min(kMost, words.size()); ++i) {
    open = open || words[i].find('(') != std::string_view::npos;
    if (!open || !without_end(words[i]).ends_with(')')) continue;
    bool const number = words[i].find_first_of("0123456789") != std::string_view::npos;
    return number ? i + 1 : 0;
  }
  return 0;
}

// Behind "sp.": "1", "A", "n.", "nov. 2", "n. “Tarn Hill”", "nr bus", "“Tarn Hill”".
std::size_t words_of_designation(Words words) {
  auto const first = without_end(word_or_none(words, 0));
  if (is_code(first) || first == "indet.") return 1;
  if (first == "n." || first == "nov.") {
    if (ends_item(words[0])) return 1;
    return 1 + (is_code(word_or_none(words, 1)) ? 1 : words_in_quotation(words.subspan(1)));
  }
  if (auto const quoted = words_in_quotation(words); quoted > 0) return quoted;
  if (auto const phrase = words_of_phrase(words); phrase > 0) return phrase;
  return is_rank(first) && is_epithet(word_or_none(words, 1)) ? 2 : 0;  // "sp. aff. bus"
}

}  // namespace

bool is_unnamed(std::string_view word) {
  auto const bare = without_end(word);
  // "sp2", "sp.1"
  bool const stop = bare.starts_with("sp.") && bare.size() > 3;
  bool const coded =
      bare.size() > 2 && bare.starts_with("sp") && is_code(bare.substr(stop ? 3 : 2));
  return coded || bare == "sp." || bare == "spp." || bare == "sp" || bare == "spp" ||
         bare == "spec.";
}

bool is_unnamed_genus(std::string_view word, std::string_view code) {
  static constexpr std::array kWords{std::string_view{"Genus"}, std::string_view{"Gattung"},
                                     std::string_view{"Genre"}, std::string_view{"Género"},
                                     std::string_view{"Gênero"}};
  return is_one_of(kWords, word) && is_code(code);
}

bool is_undescribed(std::string_view text) {
  static constexpr std::array kBefore{"undescribed"sv, "unnamed"sv, "unidentified"sv, "new"sv};
  static constexpr std::array kGroups{"genus"sv, "species"sv, "taxon"sv};
  auto const words = words_of(text, 3);
  if (words.size() == 1) return fold(words[0]) == "morphospecies";
  if (words.size() != 2) return false;
  return is_one_of(kBefore, fold(words[0])) && is_one_of(kGroups, fold(words[1]));
}

std::size_t words_of_unnamed_species(Words words) {
  auto const first = word_or_none(words, 0);
  if (first == "n." && word_or_none(words, 1) == "sp.") {
    auto const behind = words.subspan(2);
    auto const told = is_code(word_or_none(behind, 0)) ? 1 : words_in_quotation(behind);
    if (told > 0) return 2 + told;
  }
  if (stands_for_species(first) && is_code(word_or_none(words, 1))) return 2;
  if (!is_unnamed(first)) return 0;
  return ends_item(first) ? 1 : 1 + words_of_designation(words.subspan(1));
}

}  // namespace keydrift::printed
