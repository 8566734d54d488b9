#include "keydrift/formats/printed_end_habits.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestHabitEnd = 160;    // bytes of a destination
constexpr std::size_t kWordsOfAuthoredName = 6;  // with its author
constexpr std::size_t kFewestHabitEnds = 3;      // ends that make a habit

// "Roe", "Roe & Dorn, 1900": an author behind a name.
bool may_be_authors(std::string_view text) {
  auto const words = words_of(text);
  return std::all_of(words.begin(), words.end(), [](std::string_view word) {
    return (is_authorish(word) && !is_digit(code_point_at(word, 0).value)) || is_particle(word) ||
           is_year(word);
  });
}

// A number of the key, a name: what may stand at an end.
bool is_end_of_habit(std::string_view text, Numbering const& numbering) {
  text = trim(text);
  if (text.empty() || text.size() > kLongestHabitEnd) return false;
  auto const stripped = strip_pointer(text);
  if (auto const number = numbering.read(stripped)) return numbering.has_number(number->number);
  if (certain_destination(text, numbering) || is_bare_epithet(text) || is_genusless_name(text)) {
    return true;
  }
  // "Marsh Bat, Aus bus"
  auto const taxa = read_taxa(text);
  return !taxa.before.empty() && is_latin_name(taxa.taxa.front().name);
}

// Behind the last of the signs that stand before a blank.
template <class IsSign>
std::string_view behind_last(std::string_view text, IsSign is_sign) {
  auto const from = text.size() > kLongestHabitEnd ? text.size() - kLongestHabitEnd : 0;
  for (std::size_t at = text.size(); at > from;) {
    auto const c = code_point_before(text, at);
    if (at < text.size() && is_blank(code_point_at(text, at).value) && is_sign(c.value)) {
      return trim(text.substr(at));
    }
    at -= c.length;
  }
  return {};
}

// Latin words of the trade that end many a lead.
bool is_part_of_a_body(std::string_view word) {
  static constexpr std::array kWords{
      "seta"sv,       "setae"sv,     "antenna"sv,   "antennae"sv,   "tibia"sv,      "tibiae"sv,
      "carina"sv,     "carinae"sv,   "stria"sv,     "striae"sv,     "lamina"sv,     "laminae"sv,
      "maxilla"sv,    "maxillae"sv,  "lamella"sv,   "lamellae"sv,   "papilla"sv,    "papillae"sv,
      "coxa"sv,       "coxae"sv,     "fovea"sv,     "foveae"sv,     "costa"sv,      "costae"sv,
      "femora"sv,     "femur"sv,     "tarsus"sv,    "labrum"sv,     "clypeus"sv,    "scutellum"sv,
      "thorax"sv,     "pronotum"sv,  "aedeagus"sv,  "apex"sv,       "vertex"sv,     "genitalia"sv,
      "metatarsus"sv, "radius"sv,    "stigma"sv,    "rostrum"sv,    "abdomen"sv,    "larvae"sv,
      "larva"sv,      "pupa"sv,      "pupae"sv,     "corolla"sv,    "calyx"sv,      "stamina"sv,
      "sepala"sv,     "petala"sv,    "rhizoma"sv,   "bractea"sv,    "umbilicus"sv,  "sinus"sv,
      "siphon"sv,     "elytra"sv,    "ocelli"sv,    "spicula"sv,    "spiracula"sv,  "hypha"sv,
      "hyphae"sv,     "basidia"sv,   "conidia"sv,   "asci"sv,       "cystidia"sv,   "area"sv,
      "media"sv,      "cilia"sv,     "nodus"sv,     "pedicellus"sv, "flagellum"sv,  "sternum"sv,
      "tergum"sv,     "mesonotum"sv, "metanotum"sv, "propodeum"sv,  "mandibulae"sv, "foramen"sv};
  while (!word.empty() && (word.back() == '.' || word.back() == ',')) word.remove_suffix(1);
  return is_one_of(kWords, word);
}

// "Aus Roe (2 spp.)", "Aus gen. et sp. nov.", "Aus [= Bus Dorn]" without what is said of the name.
std::string_view without_remarks(std::string_view text) {
  static constexpr std::array kMarks{"nov."sv,  "n."sv,    "gen."sv, "sp."sv,    "spp."sv,
                                     "et"sv,    "new"sv,   "and"sv,  "genus"sv,  "species"sv,
                                     "stat."sv, "comb."sv, "&"sv,    "partim"sv, "p.p."sv};
  bool const bracket = text.ends_with(')') || text.ends_with(']');
  if (bracket) {
    auto const open = text.rfind(text.back() == ')' ? " (" : " [");
    if (open == std::string_view::npos || open == 0) return text;
    return trim_right(text.substr(0, open));
  }
  auto rest = text;
  while (true) {
    auto const blank = rest.rfind(' ');
    if (blank == std::string_view::npos) return text;
    auto const word = rest.substr(blank + 1);
    if (!is_one_of(kMarks, without_end(word))) break;
    rest = trim_right(rest.substr(0, blank));
  }
  return rest.ends_with(',') ? rest.substr(0, rest.size() - 1) : rest;
}

// "Aus S. 12", "Aus, 12" without the page.
std::string_view without_page_behind_genus(std::string_view text) {
  auto const words = words_of(text);
  if (words.size() < 3 || !is_digit(code_point_at(words.back(), 0).value)) return text;
  bool const page = is_page(words[words.size() - 2], words.back());
  auto const name = without_end(words[words.size() - (page ? 3 : 2)]);
  auto const plain = words.back().find_first_not_of("0123456789.") == std::string_view::npos;
  bool const genus = is_capitalised(name) &&
                     (has_strict_latin_ending(fold(name)) || has_higher_ending(fold(name)));
  if (!genus || !(page || plain)) return text;
  return text.substr(0, static_cast<std::size_t>(name.data() + name.size() - text.data()));
}

// "Ausbarba" in "… of 24 scales Ausbarba busa", the word with a capital before the epithet at
// `epithet`, though no genus may end so.
std::optional<std::size_t> genus_before(std::string_view text, std::size_t epithet) {
  constexpr std::size_t kShortest = 4;  // bytes
  auto const before = trim_right(text.substr(0, epithet));
  auto const begin = last_word_begin(before);
  auto const genus = before.substr(begin);
  bool const likely = begin > 0 && genus.size() >= kShortest && is_capitalised(genus) &&
                      is_lower(code_point_at(text, epithet).value);
  return likely ? std::optional{begin} : std::nullopt;
}

// The couplet that the letter alone at the end of the line numbers, "Wings dark B", "Wings dark
// b."; 0 without.
std::uint32_t letter_at_end(std::string_view line, Numbering const& numbering) {
  if (line.ends_with('.')) line.remove_suffix(1);
  auto const begin = last_word_begin(line);
  if (begin == 0 || begin + 1 != line.size()) return 0;
  auto const reference = read_reference(line.substr(begin));
  bool const couplet =
      reference && reference->family == numbering.family && numbering.has_number(reference->number);
  return couplet ? reference->number : 0;
}

// Most couplets are led to by a letter that ends a line, and hardly one by two.
bool do_letters_lead_on(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  if (numbering.family == LabelFamily::digits) return false;
  std::size_t ends = 0;
  std::unordered_set<std::uint32_t> led_to;
  for (auto const& line : lines) {
    auto const number = letter_at_end(line.text, numbering);
    if (number == 0) continue;
    ++ends;
    led_to.insert(number);
  }
  auto const couplets = numbering.numbers.size();
  return led_to.size() >= kFewestHabitEnds && led_to.size() * 2 >= couplets - 1 &&
         ends * 4 <= led_to.size() * 5;
}

// Line i ends in "(Ausella busa)", a break within it or before it and all.
bool ends_in_brackets(std::vector<SourceLine> const& lines, std::size_t i,
                      Numbering const& numbering) {
  auto const text = lines[i].text;
  if (auto const whole = bracketed_end(text)) return is_end_of_habit(whole->inside, numbering);
  bool const closes = text.ends_with(')') || text.ends_with(").");
  if (!closes || i == 0 || lines[i - 1].text.empty() || text.size() > kLongestHabitEnd) {
    return false;
  }
  auto const joined = std::string{lines[i - 1].text} + ' ' + std::string{text};
  auto const whole = bracketed_end(joined);
  return whole && is_end_of_habit(whole->inside, numbering);
}

// "..... go to 5" leads in another way than names do.
std::size_t count_pointed(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  return static_cast<std::size_t>(
      std::count_if(lines.begin(), lines.end(), [&numbering](SourceLine const& line) {
        auto const found = trailing_reference(line.text, &numbering);
        return found && found->pointed;
      }));
}

bool is_colon(char32_t c) { return c == ':'; }
bool is_long_dash(char32_t c) { return is_dash(c); }

}  // namespace

std::optional<BracketedEnd> bracketed_end(std::string_view text) {
  text = trim_right(text);
  if (text.size() > 3 && text.back() == '.') text.remove_suffix(1);
  if (text.size() < 4 || (text.back() != ')' && text.back() != ']')) return std::nullopt;
  char const closes = text.back();
  char const opens = closes == ')' ? '(' : '[';
  std::size_t depth = 0;
  auto const from = text.size() > kLongestHabitEnd ? text.size() - kLongestHabitEnd : 0;
  for (std::size_t at = text.size(); at-- > from;) {
    if (text[at] == closes) ++depth;
    if (text[at] != opens || --depth > 0) continue;
    if (at == 0) return std::nullopt;
    BracketedEnd const end{at, trim(text.substr(at + 1, text.size() - at - 2))};
    if (closes == ')' && may_be_authors(end.inside)) return std::nullopt;
    return end;
  }
  return std::nullopt;
}

namespace {

// "– Alps, rare" / "3. A. busa Roe", "— Corse." / "3. busa (p. 9)", "— Tuscany." / "busa Roe": what
// stands behind the dash of line `i` is no end.
bool stands_above_name(std::vector<SourceLine> const& lines, std::size_t i) {
  auto const below = std::find_if(lines.begin() + static_cast<std::ptrdiff_t>(i) + 1, lines.end(),
                                  [](SourceLine const& line) { return !line.text.empty(); });
  return below != lines.end() &&
         (is_numbered_name(below->text) || is_numbered_epithet(below->text) ||
          is_genusless_name(below->text));
}

}  // namespace

EndHabits decide_end_habits(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  std::size_t filled = 0;
  std::size_t brackets = 0;
  std::size_t colons = 0;
  std::size_t dashes = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    if (line.text.empty()) continue;
    ++filled;
    if (ends_in_brackets(lines, i, numbering)) ++brackets;
    // Most lines have neither sign.
    bool const colon = line.text.find(':') != std::string_view::npos;
    if (colon && is_end_of_habit(behind_last(line.text, is_colon), numbering)) ++colons;
    auto const behind_dash =
        may_have_dash(line.text) ? behind_last(line.text, is_long_dash) : std::string_view{};
    bool const dash =
        is_end_of_habit(behind_dash, numbering) && !has_numbered_name_within(behind_dash);
    if (dash && !stands_above_name(lines, i)) ++dashes;
  }
  // About half of the leads of a nested key end in a destination, and leads may take two lines.
  auto const is_habit = [filled](std::size_t count) {
    return count >= kFewestHabitEnds && count * 4 >= filled;
  };
  EndHabits habits;
  habits.brackets = is_habit(brackets);
  if (!habits.brackets && brackets >= kFewestHabitEnds) {
    habits.brackets = brackets * 4 >= filled - count_pointed(lines, numbering);
  }
  habits.colon = is_habit(colons);
  habits.dash = is_habit(dashes);
  habits.letters = do_letters_lead_on(lines, numbering);
  return habits;
}

std::optional<std::size_t> loose_name(std::string_view text, bool names_have_genera) {
  auto const begin = loose_name(text);
  return begin && names_have_genera ? genus_before(text, *begin).value_or(*begin) : begin;
}

std::optional<std::size_t> loose_name(std::string_view text) {
  text = without_page_behind_genus(without_remarks(trim_right(text)));
  // "… of the pars thoracica G": a letter alone is no author.
  bool const letter = text.size() > 2 && text[text.size() - 2] == ' ' &&
                      is_upper(static_cast<unsigned char>(text.back()));
  if (letter) return std::nullopt;
  auto const from =
      text.size() > kLongestHabitEnd ? text.find(' ', text.size() - kLongestHabitEnd) : 0;
  if (from == std::string_view::npos) return std::nullopt;
  auto const words = words_of(text.substr(from));
  auto const first = words.size() > kWordsOfAuthoredName ? words.size() - kWordsOfAuthoredName : 1;
  for (auto w = first; w < words.size(); ++w) {
    auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
    auto name = text.substr(begin);
    if (name.ends_with('.')) name.remove_suffix(1);
    if (is_part_of_a_body(words[w])) return std::nullopt;
    bool const last_but_author = w + 2 == words.size() && is_authorish(words[w + 1]);
    bool const strict = has_strict_latin_ending(without_end(words[w])) ||
                        words[w].ends_with("or") ||
                        (last_but_author && (words[w].ends_with("er") || is_genitive(words[w])));
    if (strict && is_bare_epithet(name)) return begin;
    bool const numbered = is_species_number(words[w - 1]);  // "Flowers red 3. Aus Roe"
    bool const sentence = !numbered && (words[w - 1].ends_with('.') || words[w - 1].ends_with(':'));
    bool const authored =
        std::all_of(words.begin() + static_cast<std::ptrdiff_t>(w) + 1, words.end(),
                    [](std::string_view word) { return is_authorish(word) || is_particle(word); });
    auto const genus = without_end(words[w]);
    bool const latin = is_capitalised(genus) && has_strict_latin_ending(fold(genus));
    if (latin && authored && (!sentence || w + 1 == words.size())) {
      return with_rank_before(text, begin);
    }
  }
  return std::nullopt;
}

}  // namespace keydrift::printed
