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

std::string_view strip_word_marks(std::string_view word) {
  while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
  while (!word.empty() && (word.back() == '.' || word.back() == ',' || word.back() == ':' ||
                           word.back() == ';' || word.back() == ')' || word.back() == ']')) {
    word.remove_suffix(1);
  }
  return word;
}

// Words that announce a couplet's number (English, German, French, Spanish, Portuguese, Italian,
// Dutch, Latin, Scandinavian, Czech, Russian).
constexpr std::array kPointerWords{
    "to"sv,     "goto"sv,     "go"sv,        "see"sv,       "couplet"sv,    "couplets"sv,
    "turn"sv,   "proceed"sv,  "continue"sv,  "with"sv,      "at"sv,         "now"sv,
    "siehe"sv,  "s"sv,        "s.u"sv,       "u"sv,         "weiter"sv,     "bei"sv,
    "mit"sv,    "zu"sv,       "unter"sv,     "nr"sv,        "no"sv,         "n°"sv,
    "nº"sv,     "num"sv,      "núm"sv,       "voir"sv,      "aller"sv,      "allez"sv,
    "passer"sv, "passez"sv,   "à"sv,         "au"sv,        "véase"sv,      "vease"sv,
    "ver"sv,    "ir"sv,       "vaya"sv,      "a"sv,         "al"sv,         "vide"sv,
    "vid"sv,    "para"sv,     "passe"sv,     "vá"sv,        "siga"sv,       "seguir"sv,
    "pase"sv,   "pasar"sv,    "continuer"sv, "dilema"sv,    "dilemma"sv,    "dichotomie"sv,
    "vgl"sv,    "vergl"sv,    "gehe"sv,      "dann"sv,      "punkt"sv,      "alternative"sv,
    "vedi"sv,   "vai"sv,      "andare"sv,    "zie"sv,       "ga"sv,         "naar"sv,
    "verder"sv, "bij"sv,      "dicotomía"sv, "numéro"sv,    "número"sv,     "numero"sv,
    "nummer"sv, "number"sv,   "dicotomia"sv, "step"sv,      "lead"sv,       "gå"sv,
    "till"sv,   "til"sv,      "se"sv,        "fortsätt"sv,  "fortsett"sv,   "el"sv,
    "n.º"sv,    "n.°"sv,      "n"sv,         "sigue"sv,     "segue"sv,      "continúa"sv,
    "en"sv,     "em"sv,       "si"sv,        "veda"sv,      "v"sv,          "cf"sv,
    "jdi"sv,    "na"sv,       "dále"sv,      "viz"sv,       "przejdź"sv,    "do"sv,
    "см"sv,     "смотри"sv,   "смотреть"sv,  "переходим"sv, "переходите"sv, "перейти"sv,
    "далее"sv,  "к"sv,        "п"sv,         "пункту"sv,    "passo"sv,      "paso"sv,
    "étape"sv,  "etapa"sv,    "schritt"sv,   "stap"sv,      "o"sv,          "question"sv,
    "frage"sv,  "pregunta"sv, "pergunta"sv,  "questão"sv,   "vraag"sv,      "domanda"sv,
    "fråga"sv};
// Of these, the ones that announce a number; the others only go along with them.
constexpr std::array kStrongPointers{
    "goto"sv,      "go"sv,        "see"sv,        "couplet"sv,  "couplets"sv,   "turn"sv,
    "proceed"sv,   "siehe"sv,     "voir"sv,       "véase"sv,    "vease"sv,      "ver"sv,
    "vide"sv,      "vid"sv,       "weiter"sv,     "aller"sv,    "allez"sv,      "ir"sv,
    "passe"sv,     "pase"sv,      "passer"sv,     "passez"sv,   "dichotomie"sv, "dilema"sv,
    "dilemma"sv,   "vá"sv,        "vaya"sv,       "siga"sv,     "vgl"sv,        "gehe"sv,
    "vedi"sv,      "vai"sv,       "zie"sv,        "ga"sv,       "verder"sv,     "s.u"sv,
    "dicotomía"sv, "dicotomia"sv, "gå"sv,         "fortsätt"sv, "fortsett"sv,   "sigue"sv,
    "segue"sv,     "veda"sv,      "jdi"sv,        "viz"sv,      "przejdź"sv,    "смотри"sv,
    "смотреть"sv,  "переходим"sv, "переходите"sv, "перейти"sv};
// Of these, the ones that stand right before a number: "If no, go to 3" says otherwise.
constexpr std::array kNumberWords{"no"sv, "nr"sv, "n"sv, "n°"sv, "nº"sv, "n.º"sv, "n.°"sv};
// Words whose number is no couplet's.
constexpr std::array kNumberedThings{
    "fig"sv,     "figs"sv,  "figure"sv,   "figures"sv,   "p"sv,       "pp"sv,      "page"sv,
    "pages"sv,   "pl"sv,    "pls"sv,      "plate"sv,     "plates"sv,  "abb"sv,     "taf"sv,
    "tafel"sv,   "tab"sv,   "table"sv,    "map"sv,       "maps"sv,    "seite"sv,   "lám"sv,
    "lam"sv,     "est"sv,   "chapter"sv,  "chap"sv,      "kapitel"sv, "species"sv, "sp"sv,
    "article"sv, "no"sv,    "nr"sv,       "vol"sv,       "ca"sv,      "c"sv,       "about"sv,
    "than"sv,    "least"sv, "most"sv,     "until"sv,     "since"sv,   "karte"sv,   "carte"sv,
    "página"sv,  "pag"sv,   "text-fig"sv, "text-figs"sv, "x"sv,       "×"sv,       "photo"sv,
    "photos"sv,  "foto"sv,  "fotos"sv,    "photograph"sv};

bool is_pointer_word(std::string_view word) {
  static constexpr auto kLengths = lengths_by_beginning(kPointerWords);
  auto const folded = fold(word);
  return may_be_among(kLengths, folded) && is_one_of(kPointerWords, folded);
}

// "group of A. bus (A. bus, A. cus)"
bool names_group(std::string_view text, std::vector<std::string_view> const& words) {
  return is_group_word(fold(words[0])) && text.ends_with(')') && read_taxa(text).taxa.size() > 1;
}

bool ends_in_point(std::string_view text) {
  return text.back() == '.' || text.back() == ';' || text.back() == ',' || text.back() == ':';
}

// "s. 9" is "see 9"; "S. 9" is page 9.
bool is_short_see(std::string_view printed) { return printed == "s." || printed == "s.u."; }

// "V. 9", "S. 9": no word that points is cut short to a capital.
bool is_initial(std::string_view printed) {
  return printed.size() == 2 && printed[1] == '.' && is_upper(code_point_at(printed, 0).value);
}

// "… leaves entire."
bool closes_sentence(std::string_view text) {
  constexpr std::size_t kShortest = 4;  // letters; shorter words are cut short
  if (!text.ends_with('.')) return false;
  auto const word = text.substr(last_word_begin(text));
  return word.size() > kShortest && is_plain_word(word.substr(0, word.size() - 1));
}

// No key has so many couplets that leaders would not be printed before their numbers.
bool is_year_number(Reference const& reference) {
  return reference.number >= 1700 && reference.number < 2100 && reference.printed.size() == 4;
}

std::size_t end_before_blanks(std::string_view text, std::size_t end) {
  return trim_right(text.substr(0, end)).size();
}

// "entire.4": bytes before the number of the next couplet that a sentence's full stop was all the
// room for; 0 for "fig.4" and the like.
std::size_t word_before_number(std::string_view word) {
  constexpr std::size_t kShortest = 4;  // letters; shorter ones are cut short
  auto const stop = word.rfind('.');
  if (stop == std::string_view::npos || stop + 1 >= word.size()) return 0;
  auto const before = word.substr(0, stop);
  bool const digits = word.find_first_not_of("0123456789"sv, stop + 1) == std::string_view::npos;
  bool const whole = before.size() >= kShortest && is_plain_word(before);
  return digits && whole && !is_one_of(kNumberedThings, fold(before)) ? stop + 1 : 0;
}

// Where "(p. 22)", "(page 22)" at the end of the text opens; 0 where none stands.
std::size_t page_in_brackets(std::string_view text) {
  if (!text.ends_with(')')) return 0;
  auto const open = text.rfind(" (");
  if (open == std::string_view::npos || open == 0) return 0;
  auto const words = words_of(text.substr(open + 2, text.size() - open - 3));
  return words.size() == 2 && is_page(words[0], words[1]) ? open : 0;
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
    if (auto const before = without_page_behind(text, words); before.size() < text.size()) {
      return plausible_destination(before, numbering);
    }
    // A name without its genus, or a vernacular one.
    bool const listed = words.size() >= 3 && is_separator(words[1]) && is_epithet(words[0]) &&
                        is_epithet(words[2]) && has_epithet_ending(words[0]) &&
                        has_epithet_ending(without_end(words[2]));
    return words.size() == 1 || is_lettered_rank(text) || listed ||
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

std::optional<TrailingReference> trailing_reference(std::string_view text,
                                                    Numbering const* numbering) {
  text = trim_right(text);
  if (auto const page = page_in_brackets(text); page > 0) {  // "go to 2 (p. 22)"
    auto const found = trailing_reference(text.substr(0, page), numbering);
    if (found && found->pointed) return found;
  }
  auto const begin = last_word_begin(text);
  auto word = text.substr(begin);
  if (begin == 0 || word.empty()) return std::nullopt;
  if (word.size() > 1 && (word.back() == '.' || word.back() == ';')) word.remove_suffix(1);
  bool const bracketed = word.size() > 2 && ((word.front() == '(' && word.back() == ')') ||
                                             (word.front() == '[' && word.back() == ']'));
  if (bracketed) word = word.substr(1, word.size() - 2);
  // "(go to 5)", "[go to 5]"
  bool const square = !bracketed && word.size() > 1 && word.back() == ']';
  bool const closes = square || (!bracketed && word.size() > 1 && word.back() == ')');
  if (closes) word.remove_suffix(1);
  if (word.size() > 1 && word.front() == '#') word.remove_prefix(1);
  std::size_t glued = 0;  // bytes of the word before the number
  auto reference = read_reference(word);
  if (!reference && numbering != nullptr) {
    glued = word_before_number(word);
    if (glued > 0) reference = read_reference(word.substr(glued));
    if (reference && !numbering->has_number(reference->number)) return std::nullopt;
  }
  bool const roman = numbering != nullptr && numbering->roman;
  if (auto const number = roman ? roman_number(word) : 0; number > 0) {
    reference = Reference{.number = number, .letter = {}, .printed = word};
  }
  if (!reference) return std::nullopt;
  bool const letter = reference->family != LabelFamily::digits;
  if (letter && (numbering == nullptr || numbering->family != reference->family)) {
    return std::nullopt;
  }
  TrailingReference found;
  found.reference = *reference;
  found.destination_begin = begin + glued;
  found.words_end = glued > 0 ? begin + glued : end_before_blanks(text, begin);
  // Take in all of "go to couplet".
  bool opened = false;
  bool strong = false;
  std::size_t end = found.words_end;
  std::size_t phrase_begin = found.destination_begin;
  while (end > 0) {
    auto const word_begin = last_word_begin(text.substr(0, end));
    auto const printed = text.substr(word_begin, end - word_begin);
    auto const before = fold(strip_word_marks(printed));
    if (is_initial(printed) || !is_one_of(kPointerWords, before)) break;
    if (found.pointed && is_one_of(kNumberWords, before)) break;
    strong = strong || is_one_of(kStrongPointers, before);
    found.pointed = strong || found.pointed || is_short_see(printed);
    phrase_begin = word_begin;
    end = end_before_blanks(text, word_begin);
    opened = opened || printed.front() == (square ? '[' : '(');
    if (opened) break;
  }
  // "see 3)", where labels are "3)": nothing was opened before.
  bool const within =
      std::count(text.begin(), text.end(), '(') >= std::count(text.begin(), text.end(), ')');
  if (closes && !opened && (within || !found.pointed)) return std::nullopt;
  if (square && !(opened && found.pointed)) return std::nullopt;
  // "anal rays 9 to 11."
  bool const range = text.substr(phrase_begin, found.destination_begin - phrase_begin) == "to " &&
                     end > 0 && phrase_begin == end + 1 &&
                     is_digit(static_cast<unsigned char>(text[end - 1])) &&
                     (numbering == nullptr || !numbering->has_number(reference->number));
  if (range) return std::nullopt;
  bool const known = numbering != nullptr && numbering->has_number(reference->number);
  // "Blad kala A. bus Roe s. 33": in Swedish it is a page.
  if (found.pointed && !strong && numbering != nullptr && !known) {
    auto const name = trailing_name(text.substr(0, end));
    if (name && is_certain_name(text.substr(*name, end - *name))) return std::nullopt;
  }
  // Behind a sentence words announce a number that stand before other figures as well: "… leaves
  // entire. Nr. 2", "… leaves entire. cf. 2".
  bool const apart = phrase_begin < found.destination_begin && closes_sentence(text.substr(0, end));
  if (found.pointed || (apart && known && !letter)) {
    found.pointed = true;
    found.destination_begin = phrase_begin;
    found.words_end = end;
    return found;
  }
  if ((letter && !numbering->ends.letters) || is_year_number(found.reference)) return std::nullopt;
  // "Corolle bleue v. 2": nothing else is said so of a couplet's number, if it is one.
  static constexpr std::array kPlain{"v."sv, "cf."sv, "cfr."sv, "см."sv, "naar"sv, "se"sv, "к"sv};
  if (known && end > 0 &&
      is_one_of(kPlain, text.substr(phrase_begin, found.words_end - phrase_begin))) {
    found.destination_begin = phrase_begin;
    found.words_end = end;
    return found;
  }
  auto const before_begin = last_word_begin(text.substr(0, found.words_end));
  auto const before = text.substr(before_begin, found.words_end - before_begin);
  constexpr std::size_t kLongestShortened = 5;  // bytes: "long."
  found.after_sentence = glued > 0 || (before.size() > kLongestShortened && before.back() == '.') ||
                         text[begin] == '[' || (bracketed && text.ends_with('.'));
  // "Ausella sp. nov. 1", "Ausella busa (1)", "busa Roe (1)"
  auto const words = text.substr(0, found.words_end);
  bool const fresh = (before == "nov." || before == "n.") &&
                     trim_right(text.substr(0, before_begin)).ends_with(" sp.");
  bool const round = bracketed && text[begin] == '(';
  auto const name = round ? trailing_name(words) : std::nullopt;
  bool const named =
      (name && is_latin_name(words.substr(*name))) || (round && is_genusless_name(words));
  if (fresh || named) return std::nullopt;
  bool const closed = before.back() == ')' || before.back() == ']';  // "(3 species) 6"
  // "Seite 4", "Band 4"; in small letters a band may be dark.
  if (before == "S." || before == "Band" ||
      (!closed && is_one_of(kNumberedThings, fold(strip_word_marks(before))))) {
    return std::nullopt;
  }
  return found;
}

}  // namespace keydrift::printed
