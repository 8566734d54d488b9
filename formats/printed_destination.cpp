#include "keydrift/formats/printed_destination.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "keydrift/formats/printed_bracketed_names.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_pointer_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_references.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestKeyWord = 12;  // bytes
constexpr std::size_t kLongestDestinationWords = 40;
constexpr std::size_t kWordsBeforeName = 8;        // "white halver A. bus Roe" and no more
constexpr std::size_t kWordsOfEpithet = 8;         // of a numbered epithet with its author
constexpr std::size_t kLongestDestination = 2000;  // bytes; bounds the work on lines of dots

// "group of A. bus (A. bus, A. cus)"
bool names_group(std::string_view text, std::vector<std::string_view> const& words) {
  return is_group_word(fold(words[0])) && text.ends_with(')') && read_taxa(text).taxa.size() > 1;
}

bool ends_in_point(std::string_view text) {
  return text.back() == '.' || text.back() == ';' || text.back() == ',' || text.back() == ':';
}

// "bus n. sp." of "bus n. sp., p. 25".
std::string_view without_page_behind(std::string_view text,
                                     std::vector<std::string_view> const& words) {
  if (words.size() < 3 || !ends_item(words[words.size() - 3])) return text;
  if (!is_page(words[words.size() - 2], words.back())) return text;
  return without_end(
      text.substr(0, static_cast<std::size_t>(words[words.size() - 3].data() - text.data()) +
                         words[words.size() - 3].size()));
}

// "busula, new species (p. 113)." without the page.
std::string_view without_bracketed_page(std::string_view text) {
  auto const open = text.rfind(" (");
  bool const closes = text.ends_with(')') || text.ends_with(").");
  if (!closes || open == std::string_view::npos || open == 0) return text;
  return starts_with_page(text.substr(open + 2)) ? trim_right(text.substr(0, open)) : text;
}

// "the key to busy ants", behind "go to"
std::string_view without_article(std::string_view text) {
  static constexpr std::array kArticles{"the"sv, "our"sv, "den"sv, "zum"sv, "la"sv,
                                        "el"sv,  "as"sv,  "die"sv, "der"sv, "de"sv};
  auto const end = text.find(' ');
  if (end > 3 || !is_one_of(kArticles, fold(text.substr(0, end)))) return text;
  return trim_left(text.substr(end));
}

// "busa, cusa, dusa and nigripes"
bool lists_epithets(std::vector<std::string_view> const& words) {
  constexpr std::size_t kFewest = 3;
  constexpr std::size_t kMost = 12;  // words
  if (words.size() > kMost) return false;
  std::size_t epithets = 0;
  for (std::size_t w = 0; w < words.size(); ++w) {
    if (is_separator(words[w])) continue;
    auto const epithet = without_end(words[w]);
    bool const parted =
        words[w].ends_with(',') || w + 1 == words.size() || is_separator(words[w + 1]);
    if (!parted || !is_epithet(epithet) || !has_epithet_ending(epithet)) return false;
    ++epithets;
  }
  return epithets >= kFewest;
}

}  // namespace

bool names_a_key(std::string_view text) {
  static constexpr std::array kKeyWords{
      "key"sv,         "keys"sv,          "group"sv,          "section"sv,  "part"sv,
      "table"sv,       "schlüssel"sv,     "gruppe"sv,         "teil"sv,     "tabelle"sv,
      "clé"sv,         "cle"sv,           "clef"sv,           "groupe"sv,   "clave"sv,
      "grupo"sv,       "chave"sv,         "clavis"sv,         "parte"sv,    "subkey"sv,
      "sub-key"sv,     "tableau"sv,       "série"sv,          "serie"sv,    "hauptgruppe"sv,
      "untergruppe"sv, "skupina"sv,       "grupa"sv,          "grupp"sv,    "gruppo"sv,
      "groep"sv,       "teilschlüssel"sv, "unterschlüssel"sv, "sous-clé"sv, "subclave"sv,
      "subchave"sv,    "sottochiave"sv};
  if (!explicit_key_title(text).empty()) return true;
  auto const first_end = text.find(' ');
  if (first_end == std::string_view::npos || first_end > kLongestKeyWord) return false;
  // "part; A. bus only" is said of a taxon.
  if (first_end == 0 || text[first_end - 1] == ';' || text[first_end - 1] == ',') return false;
  auto const first = fold(strip_word_marks(text.substr(0, first_end)));
  if (!is_one_of(kKeyWords, first)) return false;
  auto const words = words_of(start_of(text, 400));
  if (words.size() < 2 || words.size() > 20) return false;
  auto const second = strip_word_marks(words[1]);
  // "part, p. 37" is said of a species.
  bool const page = second == "p" || second == "pp" || second == "S";
  bool const numbered = (read_reference(second).has_value() && !page) ||
                        std::all_of(second.begin(), second.end(),
                                    [](char c) { return c == 'I' || c == 'V' || c == 'X'; });
  // "Key C-2"
  bool const lettered = second.size() >= 3 && second[0] >= 'A' && second[0] <= 'Z' &&
                        second[1] == '-' && is_digit(code_point_at(second, 2).value);
  // "Key 4.2", but for tables and parts of another kind
  static constexpr std::array kOfKeys{"key"sv, "subkey"sv, "sub-key"sv, "schlüssel"sv, "clé"sv,
                                      "cle"sv, "clef"sv,   "clave"sv,   "chave"sv,     "clavis"sv};
  bool const decimal = is_one_of(kOfKeys, first) && is_digit(code_point_at(second, 0).value) &&
                       second.find_first_not_of("0123456789.") == second.npos;
  static constexpr std::array kLinks{"to"sv, "of"sv,   "for"sv,  "zu"sv,  "der"sv, "des"sv, "für"sv,
                                     "de"sv, "para"sv, "pour"sv, "aux"sv, "das"sv, "dos"sv};
  bool const linked = is_one_of(kLinks, fold(second));
  // "Part key II", "Group key B"
  bool const of_part = is_one_of(kOfKeys, fold(second)) && !is_one_of(kOfKeys, first);
  if (of_part) return names_a_key(trim(text.substr(first_end)));
  return numbered || lettered || decimal ||
         (linked && (first == "key" || first == "keys" || first.substr(0, 3) == "sch" ||
                     first.substr(0, 2) == "cl" || first == "chave"));
}

std::string_view pointed_key(std::string_view text) {
  text = trim(text);
  auto const named = strip_pointer(text);
  if (named.size() == text.size()) return {};
  auto const title = without_article(named);
  return names_a_key(title) ? title : std::string_view{};
}

std::string_view explicit_key_title(std::string_view text) {
  static constexpr auto kStart = "key:"sv;
  if (text.size() <= kStart.size() || text[kStart.size() - 1] != ':') return {};
  if (fold(start_of(text, kStart.size())) != kStart) return {};
  return trim(text.substr(kStart.size()));
}

bool points_into_other_work(std::string_view text) {
  auto const comma = text.find(", in "sv);
  return comma != std::string_view::npos && read_reference(text.substr(0, comma)) &&
         starts_with_upper(text.substr(comma + 5));
}

bool points_in_words(std::string_view text) {
  return !text.empty() && is_letter(code_point_at(text, 0).value) &&
         read_reference(strip_pointer(text)).has_value();
}

std::string_view strip_pointer(std::string_view text) {
  text = trim(text);
  bool const bracketed = (text.starts_with('(') && text.find(')') == text.size() - 1) ||
                         (text.starts_with('[') && text.find(']') == text.size() - 1);
  if (bracketed && text.size() > 4 &&
      text.find(' ') != std::string_view::npos) {  // "(go to 2)", "[go to 2]"
    auto const inside = strip_pointer(text.substr(1, text.size() - 2));
    if (read_reference(inside) || roman_number(inside) > 0) return inside;
  }
  bool const number_first = !text.empty() && is_digit(code_point_at(text, 0).value);
  for (bool again = !number_first; again;) {
    again = false;
    if (auto const arrow = arrow_length(text, 0); arrow > 0) {
      text = trim_left(text.substr(arrow));
      again = true;
    }
    std::size_t end = 0;
    while (end < text.size() && !is_blank(code_point_at(text, end).value)) {
      end += code_point_at(text, end).length;
    }
    auto const word = text.substr(0, end);
    if (end < text.size() && is_pointer_word(strip_word_marks(word)) &&
        (word.size() > 1 || word == "a" || word == "o") && !is_initial(word)) {
      text = trim_left(text.substr(end));
      again = true;
    }
  }
  // "..... > 2": half an arrow.
  if (text.starts_with('>') && read_reference(trim_left(text.substr(1)))) {
    text = trim_left(text.substr(1));
  }
  if (text.size() > 1 && text.front() == '#' && is_digit(code_point_at(text, 1).value)) {
    text.remove_prefix(1);
  }
  if (text.ends_with(')') && text.find('(') == std::string_view::npos &&
      read_reference(text.substr(0, text.size() - 1))) {  // "see 3)"
    text.remove_suffix(1);
  }
  // "(2)." as a sentence's end.
  if (text.size() > 3 && text.back() == '.' && (text.front() == '(' || text.front() == '[') &&
      (text[text.size() - 2] == ')' || text[text.size() - 2] == ']')) {
    text.remove_suffix(1);
  }
  if (text.size() > 2 && (text.front() == '(' || text.front() == '[') &&
      (text.back() == ')' || text.back() == ']') &&
      read_reference(text.substr(1, text.size() - 2))) {
    text = trim(text.substr(1, text.size() - 2));
  }
  while (text.size() > 1 && ends_in_point(text) &&
         read_reference(text.substr(0, text.size() - 1))) {
    text.remove_suffix(1);
  }
  return text;
}

void take_brackets(std::string_view& rest, std::string& remark, std::vector<std::string>& figures) {
  for (;;) {
    if (rest.size() < 4) return;
    bool const square = rest.back() == ']';
    if (!square && rest.back() != ')') return;
    auto const open = rest.rfind(square ? " [" : " (");
    if (open == std::string_view::npos || open == 0) return;
    auto const inside = rest.substr(open + 2, rest.size() - open - 3);
    if (square) {
      if (!remark.empty()) return;
      remark = squeeze(inside);
    } else {
      auto const found = figures_in(inside);
      if (found.size() != 1 || found.front() != inside) return;
      figures.insert(figures.begin(), found.front());
    }
    rest = trim_right(rest.substr(0, open));
  }
}

bool plausible_destination(std::string_view text, Numbering const& numbering) {
  text = without_open_page(trim(text));
  if (text.empty() || text.size() > kLongestDestination) return false;
  std::string remark;
  std::vector<std::string> figures;
  take_brackets(text, remark, figures);
  text = without_bracketed_page(text);
  bool const bare =
      std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
  auto const stripped = bare ? text : strip_pointer(text);
  if (auto const reference = numbering.read(stripped)) {
    return reference->family == LabelFamily::digits || reference->family == numbering.family ||
           (numbering.family == LabelFamily::digits && misread_number(stripped));
  }
  text.remove_prefix(signs_before_name(text));
  text.remove_prefix(begin_behind_page(text));
  if (read_bracketed_names(text)) return true;
  auto const words = words_of(text);
  if (auto const pointing = words_of_reference(words); pointing > 0) {
    auto const name = static_cast<std::size_t>(words[pointing].data() - text.data());
    return plausible_destination(text.substr(name), numbering);
  }
  // "bus Roe and cus Dorn (females hardly to be told; for males see fig. 9)"
  constexpr std::size_t kShortRemark = 3;  // words
  auto const open = text.ends_with(')') ? text.rfind(" (") : std::string_view::npos;
  if (open != std::string_view::npos && open > 0 &&
      words_of(text.substr(open)).size() > kShortRemark) {
    return plausible_destination(text.substr(0, open), numbering);
  }
  auto const first = code_point_at(text, 0);
  bool const begins_name = is_upper(first.value) || first.value == 0xD7;
  if (begins_name && words.size() <= kLongestDestinationWords) return true;
  if (numbering.family == LabelFamily::digits && misread_number(stripped)) return true;
  if (couplet_number(stripped, numbering)) return true;
  if (names_a_key(stripped) || !pointed_key(text).empty() || points_into_other_work(stripped)) {
    return true;
  }
  if (words.size() > kLongestDestinationWords) return false;
  if (is_digit(first.value) && has_name_behind_ideograph(text)) return true;
  if (is_digit(first.value)) {  // "3. Aus bus", "12 Aus bus", "4. bus, Roe"
    if (words.size() < 2) return false;
    if (is_numbered_name(text)) return true;  // "2842 — A. bus Roe"
    bool const numbered = words[0].back() == '.' && words.size() <= kWordsOfEpithet &&
                          is_letter(code_point_at(words[1], 0).value);
    return starts_with_upper(words[1]) || numbered;
  }
  if (is_lower(first.value)) {
    if (are_epithets_with_pages(text)) return true;
    if (auto const before = without_page_behind(text, words); before.size() < text.size()) {
      return plausible_destination(before, numbering);
    }
    // A name without its genus, or a vernacular one.
    bool const listed = words.size() >= 3 && is_separator(words[1]) && is_epithet(words[0]) &&
                        is_epithet(words[2]) && has_epithet_ending(words[0]) &&
                        has_epithet_ending(without_end(words[2]));
    return words.size() == 1 || is_lettered_rank(text) || listed || lists_epithets(words) ||
           (words.size() <= 8 && starts_with_upper(words[1])) ||
           (words.size() <= 4 && text.find_first_of(";:") == std::string_view::npos) ||
           is_bare_epithet(text) || names_group(text, words) ||
           (words.size() <= kWordsBeforeName && words_before_name(words) > 0);
  }
  return is_letter(first.value) || first.value == '"' || first.value == '(' || first.value == '[' ||
         first.value == '?' || first.value == 0x201C;
}

bool certain_destination(std::string_view text, Numbering const& numbering) {
  text = trim(text);
  if (text.empty() || text.size() > kLongestDestination) return false;
  auto const stripped = strip_pointer(text);
  if (auto const reference = numbering.read(stripped)) {
    return reference->family == LabelFamily::digits || reference->family == numbering.family;
  }
  text.remove_prefix(signs_before_name(text));
  if (is_numbered_name(text)) return true;
  if (text.find(';') != std::string_view::npos) {
    return is_name_with_figures(text) || (is_latin_name(text) && read_taxa(text).taxa.size() > 1);
  }
  if (names_a_key(stripped) || is_latin_name(text) || is_lettered_rank(text)) return true;
  if (is_unnamed_species(text)) return true;
  // "bus n. sp."
  auto const named = without_mark_of_new(text);
  if (named.size() < text.size() && is_epithet(named)) return true;
  // "Aus Roe (3 species)", "Aus Roe [in part]"
  if (text.back() == ')' || text.back() == ']') {
    auto const open = text.rfind(text.back() == ')' ? " (" : " [");
    if (open != std::string_view::npos && open > 0) text = trim_right(text.substr(0, open));
  }
  // "AUSELLA Roe, p. 93"
  auto words = words_of(text);
  if (words.size() >= 3 && ends_item(words[words.size() - 3]) &&
      is_page(words[words.size() - 2], words.back())) {
    words.resize(words.size() - 2);
  }
  // "Females" over the next key ends as a genus may.
  bool const genus = is_latin_genus(words[0]) && !is_no_author(fold(words[0]));
  // "Ausella Am. & Lind."
  auto const joint = std::find(words.begin(), words.end(), "&");
  if (joint != words.end() && joint - words.begin() > 1 && joint + 1 != words.end() &&
      has_strict_latin_ending(words[0])) {
    words.erase(joint, joint + 2);
  }
  return words.size() <= 3 && genus && std::all_of(words.begin(), words.end(), [](auto word) {
           return is_upper(code_point_at(word, word.front() == '(' ? 1 : 0).value) ||
                  is_digit(code_point_at(word, 0).value);
         });
}

}  // namespace keydrift::printed
