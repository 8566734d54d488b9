#include "keydrift/formats/printed_shapes.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestPageLine = 32;  // bytes of a line that is a page number

bool starts_with_word(std::string_view folded, std::string_view word) {
  if (folded.substr(0, word.size()) != word) return false;
  return !is_letter(code_point_at(folded, word.size()).value);
}

std::string folded_start(std::string_view line) { return fold(start_of(line, 40)); }

}  // namespace

bool leaves_bracket_open(std::string_view line) {
  return std::count(line.begin(), line.end(), '(') > std::count(line.begin(), line.end(), ')');
}

bool is_number_only(std::string_view line) {
  auto const digits = static_cast<std::size_t>(
      std::find_if(line.begin(), line.end(), [](char c) { return c < '0' || c > '9'; }) -
      line.begin());
  return digits > 0 && digits <= kLongestPageNumber &&
         (digits == line.size() || (digits + 1 == line.size() && line.back() == '.'));
}

bool is_page_number(std::string_view line) {
  if (line.size() > kLongestPageLine) return false;
  auto core = line;
  auto const strip = [&core](auto accepts) {
    for (auto c = code_point_at(core, 0); c.length > 0 && accepts(c.value);
         c = code_point_at(core, 0)) {
      core.remove_prefix(c.length);
    }
    for (auto c = code_point_before(core, core.size()); c.length > 0 && accepts(c.value);
         c = code_point_before(core, core.size())) {
      core.remove_suffix(c.length);
    }
  };
  strip([](char32_t c) {
    return is_dash(c) || is_blank(c) || c == '[' || c == ']' || c == '|' || c == '~';
  });
  bool const framed = core.size() < line.size();
  auto const folded = fold(core);
  for (auto const word : {"page"sv, "p."sv, "p"sv, "seite"sv, "s."sv, "pág."sv, "página"sv}) {
    if (folded.substr(0, word.size()) == word) {
      auto const rest = trim(std::string_view{folded}.substr(word.size()));
      auto const of = rest.find(" of ");  // "Page 17 of 38"
      bool const counted = of != std::string_view::npos && is_number_only(rest.substr(of + 4));
      if (is_number_only(counted ? rest.substr(0, of) : rest)) return true;
    }
  }
  return framed && is_number_only(core) && code_point_before(core, core.size()).value != '.' &&
         (is_dash(code_point_before(line, line.size()).value) ||
          code_point_before(line, line.size()).value == ']' ||
          code_point_before(line, line.size()).value == '|');
}

bool starts_with_ditto(std::string_view line) {
  for (auto const mark :
       {",, "sv, "\u201E "sv, "\u201D "sv, "\" "sv, "'' "sv, "\u2033 "sv, "do. "sv}) {
    if (line.starts_with(mark)) return true;
  }
  return false;
}

bool is_page_furniture(std::string_view line) {
  return is_page_number(line) || is_number_only(line) || is_ruled(line) || is_head_of_family(line);
}

bool is_head_of_family(std::string_view line) {
  static constexpr std::array kEndings{"ACEAE"sv, "IDAE"sv, "INAE"sv, "ACEÆ"sv, "IDÆ"sv, "INÆ"sv};
  constexpr std::size_t kMostFigures = 4;
  auto words = words_of(line, 4);
  // "Ausella] AUSACEAE 49", "50 AUSACEAE [Ausella": the genus that the page begins or ends with.
  bool const first = words.size() == 3 && words[0].ends_with(']') && starts_with_upper(line);
  bool const last = words.size() == 3 && words[2].starts_with('[');
  if (first) words.erase(words.begin());
  if (last) words.pop_back();
  if (words.size() != 2) return false;
  bool const behind = is_digit(static_cast<unsigned char>(words[1].front()));
  auto const page = words[behind ? 1 : 0];
  auto const family = words[behind ? 0 : 1];
  bool const number = page.size() <= kMostFigures && only_figures(page);
  return number && is_in_capitals(family) &&
         (first || last ||
          std::any_of(kEndings.begin(), kEndings.end(),
                      [family](std::string_view ending) { return family.ends_with(ending); }));
}

bool is_ruled(std::string_view line) {
  std::size_t signs = 0;
  char32_t only = 0;
  for (std::size_t at = 0; at < line.size();) {
    auto const c = code_point_at(line, at);
    bool const same = only == 0 || only == c.value;
    bool const sign = same && (is_dash(c.value) || c.value == '=' || c.value == '_' ||
                               c.value == '*' || c.value == '~' || c.value == '#' ||
                               c.value == '.' || (c.value >= 0x2500 && c.value <= 0x257F));
    if (sign) {
      only = c.value;
      ++signs;
    } else if (!is_blank(c.value) && c.value != '|') {
      return false;
    }
    at += c.length;
  }
  return signs >= 3;
}

namespace {

// "back to couplet 1" beneath a lead: for those who went astray; "Back to top".
bool leads_back(std::string_view line, std::string_view folded) {
  static constexpr std::array kWords{"back to"sv,   "go back to"sv,  "return to"sv,
                                     "zurück zu"sv, "zurück nach"sv, "zurück zum"sv,
                                     "retour"sv,    "volver a"sv,    "voltar"sv};
  static constexpr std::array kPlaces{"top"sv,    "page"sv, "start"sv,  "beginning"sv, "key"sv,
                                      "home"sv,   "haut"sv, "début"sv,  "anfang"sv,    "oben"sv,
                                      "arriba"sv, "topo"sv, "inicio"sv, "início"sv};
  constexpr std::size_t kLongest = 40;  // bytes
  bool const says_so = line.size() <= kLongest &&
                       std::any_of(kWords.begin(), kWords.end(), [folded](std::string_view word) {
                         return starts_with_word(folded, word);
                       });
  if (!says_so) return false;
  auto const last = folded.substr(last_word_begin(folded));
  if (starts_with_upper(line) && is_one_of(kPlaces, last)) return true;
  if (!trailing_reference(line)) return false;
  // "Back to 1     9" tells of both ways.
  auto const words = words_of(line);
  return words.size() >= 2 && !is_digit(code_point_at(words[words.size() - 2], 0).value);
}

// "< Previous | Contents | Next >": the ways on from a page.
bool lists_ways(std::string_view line) {
  static constexpr std::array kWays{"previous"sv,  "next"sv,      "contents"sv, "home"sv,
                                    "index"sv,     "top"sv,       "up"sv,       "back"sv,
                                    "zurück"sv,    "weiter"sv,    "inhalt"sv,   "startseite"sv,
                                    "précédent"sv, "suivant"sv,   "sommaire"sv, "accueil"sv,
                                    "anterior"sv,  "siguiente"sv, "inicio"sv,   "próximo"sv};
  constexpr std::size_t kLongest = 120;  // bytes
  constexpr std::size_t kFewestWays = 2;
  if (line.size() > kLongest || line.find(" | ") == std::string_view::npos) return false;
  std::size_t ways = 0;
  for (std::size_t at = 0; at < line.size();) {
    auto const bar = std::min(line.find(" | ", at), line.size());
    auto part = line.substr(at, bar - at);
    auto const is_arrow = [](char c) {
      return c == '<' || c == '>' || c == ' ' || c == '[' || c == ']';
    };
    while (!part.empty() && is_arrow(part.front())) part.remove_prefix(1);
    while (!part.empty() && is_arrow(part.back())) part.remove_suffix(1);
    if (is_one_of(kWays, fold(part))) ++ways;
    at = bar + 3;
  }
  return ways >= kFewestWays;
}

}  // namespace

bool starts_note(std::string_view line) {
  static constexpr std::array kWords{
      "note"sv,    "notes"sv,    "n.b."sv,        "nb"sv,           "n. b."sv,        "nota"sv,
      "notas"sv,   "anm"sv,      "anmerkung"sv,   "bemerkung"sv,    "remarque"sv,     "remark"sv,
      "remarks"sv, "obs"sv,      "observation"sv, "observação"sv,   "observación"sv,  "hinweis"sv,
      "comment"sv, "caution"sv,  "oss"sv,         "osservazione"sv, "osservazioni"sv, "syn"sv,
      "synonym"sv, "synonyms"sv, "synonyme"sv,    "synonymes"sv,    "photo"sv,        "photos"sv,
      "foto"sv};
  auto const folded = folded_start(line);
  std::size_t text_at = 0;
  if (starts_couplet_note(line, text_at) || leads_back(line, folded) || lists_ways(line)) {
    return true;
  }
  for (auto const word : kWords) {
    if (!starts_with_word(folded, word)) continue;
    if (word.back() == '.') return true;
    auto const next = folded.substr(word.size(), 1);
    if (next == ":" || next == "." || (word == "nb" && next == " ")) return true;
    // "Nota — A. busa"
    auto const sign = skip_blanks(folded, word.size());
    if (sign > word.size() && is_dash(code_point_at(folded, sign).value)) return true;
  }
  return false;
}

bool starts_couplet_note(std::string_view line, std::size_t& text_at) {
  static constexpr auto kStart = "note on couplet "sv;
  if (folded_start(line).substr(0, kStart.size()) != kStart) return false;
  auto const colon = line.find(':');
  if (colon == std::string_view::npos || colon > 60) return false;
  text_at = skip_blanks(line, colon + 1);
  return true;
}

bool starts_caption(std::string_view line) {
  static constexpr std::array kWords{"fig"sv,       "figs"sv,   "figure"sv,  "figures"sv, "abb"sv,
                                     "abbildung"sv, "plate"sv,  "plates"sv,  "pl"sv,      "pls"sv,
                                     "taf"sv,       "tafel"sv,  "map"sv,     "maps"sv,    "lám"sv,
                                     "lámina"sv,    "est"sv,    "estampa"sv, "planche"sv, "karte"sv,
                                     "figura"sv,    "figuras"sv};
  auto const folded = folded_start(line);
  for (auto const word : kWords) {
    if (!starts_with_word(folded, word)) continue;
    auto const view = std::string_view{folded};
    auto at = word.size();
    if (view.substr(at, 1) == ".") ++at;
    at = skip_blanks(view, at);
    auto const c = code_point_at(view, at).value;
    auto const next = code_point_at(view, at + 1).value;
    // A number, or a roman numeral.
    return is_digit(c) || ((c == 'i' || c == 'v' || c == 'x') &&
                           (!is_letter(next) || next == 'i' || next == 'v' || next == 'x'));
  }
  return false;
}

bool starts_footnote(std::string_view line) {
  auto const c = code_point_at(line, 0).value;
  // "§ 3. Identification" is a chapter's title.
  bool const chapter = c == 0xA7 && is_digit(code_point_at(line, skip_blanks(line, 2)).value);
  return c == 0xB9 || c == 0xB2 || c == 0xB3 || (c >= 0x2070 && c <= 0x2079) || c == 0x2020 ||
         c == 0x2021 || (c == 0xA7 && !chapter);
}

bool starts_measure(std::string_view words) {
  static constexpr std::array kWords{"long."sv,  "longueur"sv, "l."sv,     "lg."sv,  "larg."sv,
                                     "haut."sv,  "taille"sv,   "länge"sv,  "lge."sv, "größe"sv,
                                     "lungh."sv, "length"sv,   "exp."sv,   "env."sv, "enverg."sv,
                                     "diam."sv,  "spannw."sv,  "longit."sv};
  auto const parts = words_of(start_of(words, 40));
  return parts.size() >= 2 && is_digit(code_point_at(parts[1], 0).value) &&
         is_one_of(kWords, fold(parts[0]));
}

bool is_unit_of_length(std::string_view word) {
  static constexpr std::array kUnits{"mm"sv, "cm"sv, "dm"sv, "km"sv, "µm"sv, "μm"sv, "mu"sv};
  return is_one_of(kUnits, word);
}

bool mentions_key(std::string_view heading) {
  if (names_a_key(heading)) return true;
  static constexpr std::array kWords{"key"sv,
                                     "keys"sv,
                                     "schlüssel"sv,
                                     "bestimmungsschlüssel"sv,
                                     "artenschlüssel"sv,
                                     "gattungsschlüssel"sv,
                                     "bestimmungstabelle"sv,
                                     "clé"sv,
                                     "clés"sv,
                                     "clave"sv,
                                     "claves"sv,
                                     "chave"sv,
                                     "chaves"sv,
                                     "clavis"sv,
                                     "tabel"sv,
                                     "chiave"sv,
                                     "klucz"sv};
  auto const words = words_of(heading);
  return std::any_of(words.begin(), words.end(),
                     [](std::string_view word) { return is_one_of(kWords, fold(word)); });
}

}  // namespace keydrift::printed
