#include "keydrift/formats/printed_vernacular.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_references.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kMostVernacularWords = 6;

std::string_view without_bracket(std::string_view word) {
  if (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
  return word;
}

std::string_view without_closing(std::string_view word) {
  while (!word.empty() && ").],;:"sv.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  return word;
}

}  // namespace

bool is_rank_noun(std::string_view folded) {
  static constexpr std::array kWords{
      "family"sv,     "subfamily"sv,    "superfamily"sv, "order"sv,      "suborder"sv,
      "class"sv,      "tribe"sv,        "subtribe"sv,    "genus"sv,      "subgenus"sv,
      "familie"sv,    "unterfamilie"sv, "tribus"sv,      "gattung"sv,    "untergattung"sv,
      "ordnung"sv,    "unterordnung"sv, "famille"sv,     "ordre"sv,      "sous-famille"sv,
      "sous-genre"sv, "genre"sv,        "familia"sv,     "subfamilia"sv, "orden"sv,
      "ordem"sv,      "género"sv,       "gênero"sv,      "ordo"sv,       "phylum"sv,
      "tribe"sv,      "supertribe"sv,   "infraorder"sv,  "superorder"sv, "subclass"sv,
      "cohort"sv,     "section"sv,      "subsection"sv,  "series"sv,     "sektion"sv,
      "tribu"sv,      "sous-tribu"sv,   "sous-ordre"sv,  "fam."sv,       "subfam."sv,
      "gen."sv,       "subgen."sv,      "sect."sv,       "subg."sv};
  return is_one_of(kWords, folded);
}

namespace {

bool is_long_in_capitals(std::string_view word) {
  constexpr std::size_t kShortest = 5;  // bytes
  return word.size() >= kShortest && is_in_capitals(word);
}

// "SWAMP SABINE, Aus bus": word i, in capitals and with a comma, ends a vernacular name, for the
// species follows and it is no genus beyond doubt.
bool is_vernacular_end(std::span<std::string_view const> words, std::size_t i) {
  if (i + 2 >= words.size() || !words[i].ends_with(',')) return false;
  auto const genus = words[i + 1];
  auto const epithet = without_closing(words[i + 2]);
  return !has_strict_latin_ending(fold(without_closing(words[i]))) && is_capitalised(genus) &&
         !is_long_in_capitals(genus) && has_latin_ending(genus) &&
         ((is_epithet(epithet) && has_epithet_ending(epithet)) || epithet == "sp" ||
          epithet == "spp");
}

// "Aus bus", "(A. bus)", "AUSIDAE", "(Ausidae)" begins at word i: beyond doubt Latin.
bool name_begins(std::span<std::string_view const> words, std::size_t i) {
  auto const first = without_bracket(words[i]);
  auto const alone = without_closing(first);
  auto const folded = fold(alone);
  if (is_capitalised(alone) && has_higher_ending(folded)) return true;
  // "setiger ROE": an epithet and its author.
  bool const author = i == 1 && i + 1 == words.size() &&
                      is_lower(code_point_at(words[0], 0).value) && is_plain_word(words[0]) &&
                      has_epithet_ending(words[0]) && !has_strict_latin_ending(folded);
  if (is_long_in_capitals(alone) && has_latin_ending(folded) && !author &&
      !is_vernacular_end(words, i)) {
    return true;
  }
  if (i + 1 >= words.size() || ends_item(first)) return false;
  bool const bracketed = first.size() < words[i].size();
  auto next = words[i + 1];
  bool const subgenus = next.size() > 3 && next.front() == '(' && next.back() == ')';
  if (subgenus && i + 2 < words.size()) next = words[i + 2];
  auto const epithet = bracketed ? without_closing(next) : without_end(next);
  // "(Aus spp.)"
  bool const several = bracketed && (epithet == "spp" || epithet == "sp");
  if (several && is_capitalised(first) && has_latin_ending(first)) return true;
  bool const unnamed = next == "sp." || next == "spp." || next == "sp" || next == "spp";
  if (unnamed && i > 0 && is_capitalised(first) && has_strict_latin_ending(first)) return true;
  // English nouns that end as epithets do: "Merrowdale scale".
  static constexpr std::array kNouns{"scale"sv, "hare"sv, "whale"sv, "crocodile"sv};
  if (!is_epithet(epithet) || is_one_of(kNouns, epithet)) return false;
  if (is_abbreviated(first)) return has_epithet_ending(epithet);
  // "Mud Knobstar, Limaxter limicola", "Feld-Masch – Platacer campicola"
  auto const dash = i > 0 ? code_point_at(words[i - 1], 0) : CodePoint{};
  bool const parted = is_dash(dash.value) && dash.length == words[i - 1].size();
  if (i > 0 && (ends_item(words[i - 1]) || parted) && is_capitalised(first) &&
      is_latin_epithet(epithet)) {
    return true;
  }
  if (!is_capitalised(first) || !has_latin_ending(first)) return false;
  // "(Trimerophyes tomenti), p. 35"
  if (bracketed && without_end(next).ends_with(')') && has_epithet_ending(epithet)) return true;
  // "Pine warbler" has the form of a name; "Aus minor" and "Pinion albus" are names.
  return has_strict_latin_ending(epithet) ||
         (has_strict_latin_ending(first) && has_epithet_ending(epithet));
}

// May the word be one of a vernacular name?
bool may_be_vernacular(std::string_view word) {
  static constexpr std::array kNever{"in"sv,   "ex"sv, "nec"sv, "non"sv, "vel"sv, "sp."sv, "cf."sv,
                                     "aff."sv, "="sv,  "×"sv,   "nr"sv,  "see"sv, "part"sv};
  if (is_separator(word) || is_rank(word) || is_year(word)) return false;
  if (is_one_of(kNever, word)) return false;
  if (word.ends_with(';')) return false;
  bool const letters = std::any_of(word.begin(), word.end(), [](char c) {
    return is_letter(static_cast<unsigned char>(c)) || static_cast<unsigned char>(c) >= 0x80;
  });
  bool const digits = std::any_of(word.begin(), word.end(),
                                  [](char c) { return is_digit(static_cast<unsigned char>(c)); });
  return !digits && (letters || is_dash(code_point_at(word, 0).value) || word == ":");
}

// "Lesser kernel weevil, Aus minor": words in small letters, a comma, and what is no common name.
std::size_t words_before_comma(std::span<std::string_view const> words) {
  for (std::size_t i = 2; i + 1 < words.size() && i <= kMostVernacularWords; ++i) {
    auto const last = without_end(words[i - 1]);
    if (!is_lower(code_point_at(words[i - 1], 0).value) || !is_plain_word(last)) return 0;
    if (!words[i - 1].ends_with(',')) continue;
    auto const genus = words[i];
    auto const epithet = without_closing(words[i + 1]);
    bool const name = is_capitalised(genus) && (has_latin_ending(genus) || genus.ends_with('o')) &&
                      is_epithet(epithet) && has_epithet_ending(epithet);
    return name && !has_strict_latin_ending(last) ? i : 0;
  }
  return 0;
}

// "Buchenfink, Aus coelebs", "Marsh Tilapel, Aus macrops": capitalised words before the comma, of
// which the last is no genus, and a binomial behind it, whatever its epithet.
std::size_t capitals_before_comma(std::span<std::string_view const> words) {
  constexpr std::size_t kMost = 6;
  std::size_t i = 0;
  while (i < words.size() && i < kMost && !ends_item(words[i])) ++i;
  if (i + 2 >= words.size() || i >= kMost || !words[i].ends_with(',')) return 0;
  auto const named = words.first(i + 1);
  bool const plain = std::all_of(named.begin(), named.end(), [](std::string_view word) {
    auto const bare = without_end(word);
    bool const joins = is_separator(bare) && is_plain_word(bare);
    return bare.size() >= 3 && (is_capitalised(bare) || joins) && is_plain_word(bare);
  });
  auto const genus = words[i + 1];
  auto const epithet = without_closing(words[i + 2]);
  auto const last = without_end(words[i]);
  bool const latin_genus =
      has_strict_latin_ending(genus) || (has_latin_ending(genus) && !has_latin_ending(last));
  // "Buchenfink, Fringilaster coelebs" and nothing behind.
  bool const whole = i + 3 == words.size() && !has_latin_ending(last);
  bool const name = is_capitalised(genus) && (latin_genus || whole) && is_epithet(epithet);
  if (!plain || !name) return 0;
  // "Aus, Bus cus" is a list; "Aus Roe, Bus cus" too.
  auto const first = without_end(words[0]);
  bool const latin = i == 0 ? has_latin_ending(first)
                            : has_strict_latin_ending(first) && !first.ends_with("er") &&
                                  !first.ends_with("re");  // "Square Ashling"
  // "Marina Frilly-cup, Ausella busa": no author has a hyphen before a small letter.
  auto const hyphen = last.find('-');
  bool const common = i > 0 && hyphen != std::string_view::npos && hyphen + 1 < last.size() &&
                      is_lower(code_point_at(last, hyphen + 1).value);
  return latin && !common ? 0 : i + 1;
}

// "MARSH HAWS (Aus)": words in capitals that have no Latin ending, before the name in brackets;
// before a binomial more may stand behind it, "MARSH SPURGE (Aus bus). Annual."
std::size_t capitals_before_bracket(std::span<std::string_view const> words) {
  constexpr std::size_t kShortest = 3;  // bytes of the last word
  std::size_t i = 0;
  while (i < words.size() && i <= kMostVernacularWords && is_in_capitals(words[i])) ++i;
  if (i == 0 || i >= words.size() || words[i].front() != '(') return 0;
  if (has_strict_latin_ending(fold(words[0]))) return 0;  // "AUSELLA BUSA (Busella busa Roe)"
  auto const genus = without_closing(without_bracket(words[i]));
  if (!is_capitalised(genus) || !has_latin_ending(genus)) return 0;
  bool const binomial = i + 1 < words.size() && words[i].find(')') == std::string_view::npos &&
                        is_latin_epithet(without_closing(words[i + 1]));
  if (binomial) return i;
  auto const last = words[i - 1];
  bool const whole = i + 2 >= words.size() && words.back().ends_with(')');
  return whole && last.size() >= kShortest && !has_latin_ending(fold(last)) ? i : 0;
}

// "С. меловой — A. bus": the first name in Latin letters, behind words in letters of another kind.
std::size_t words_in_other_letters(std::span<std::string_view const> words) {
  auto const is_latin_letter = [](std::string_view word) {
    auto const first = code_point_at(word, 0).value;
    constexpr std::uint32_t kLastLatin = 0x24F;
    return is_letter(first) && first <= kLastLatin;
  };
  if (words[0].size() < 2 || is_latin_letter(words[0]) ||
      !is_letter(code_point_at(words[0], 0).value)) {
    return 0;
  }
  for (std::size_t i = 1; i < std::min(words.size(), kMostVernacularWords + 1); ++i) {
    if (is_latin_letter(without_bracket(words[i]))) return name_begins(words, i) ? i : 0;
  }
  return 0;
}

// "Pale", "Simile": as epithets end, and hardly a genus.
bool ends_as_neuter(std::string_view word) {
  return word.ends_with("ale") || word.ends_with("are") || word.ends_with("ile");
}

// "Cherry pea scale (Globolecan cerasinum)": two words in brackets behind a common name, of which
// one has no capital, and nothing else.  The genus need not end as most do.
bool is_bracketed_at_end(std::span<std::string_view const> words, std::size_t i) {
  if (i < 2 || i + 2 != words.size() || !words[i + 1].ends_with(')')) return false;
  auto const genus = without_bracket(words[i]);
  auto const epithet = without_closing(words[i + 1]);
  bool const small = std::any_of(
      words.begin() + 1, words.begin() + static_cast<std::ptrdiff_t>(i), [](std::string_view word) {
        return is_lower(code_point_at(word, 0).value) && !is_particle(word) && is_plain_word(word);
      });
  return small && is_capitalised(genus) && is_epithet(epithet) && has_epithet_ending(epithet);
}

// "Big-headed ants (Ausella spp.)": all of a genus, behind its common name.
std::size_t words_before_bracketed_genus(std::span<std::string_view const> words) {
  // "The Oakels (Quercella), p. 121"
  for (std::size_t i = 1; i < words.size() && i <= kMostVernacularWords; ++i) {
    auto const& word = words[i];
    if (word.front() != '(') {
      if (!is_upper(code_point_at(word, 0).value) || word.ends_with('.')) break;
      continue;
    }
    auto const genus = without_closing(word.substr(1));
    bool const closed = word.find(')') != std::string_view::npos;
    bool const page = i + 3 == words.size() && is_page(words[i + 1], words[i + 2]);
    bool const names = closed && (i + 1 == words.size() || page) && is_capitalised(genus) &&
                       has_strict_latin_ending(genus);
    bool const common = is_capitalised(words[0]) && !has_strict_latin_ending(fold(words[0])) &&
                        !has_strict_latin_ending(fold(words[i - 1])) && i > 1;
    if (names && common) return i;
    break;
  }
  constexpr std::size_t kWordsOfName = 2;
  if (words.size() <= kWordsOfName || words.size() > kMostVernacularWords + kWordsOfName) return 0;
  auto const before = words.size() - kWordsOfName;
  auto const all = without_closing_marks(without_closing(words.back()));
  bool const species = all == "spp" || all == "spp." || all == "sp." || all == "sp";
  bool const genus = words[before].front() == '(' && is_capitalised(words[before].substr(1)) &&
                     has_latin_ending(words[before].substr(1));
  if (!species || !genus) return 0;
  auto const common = words.first(before);
  bool const plain = std::none_of(common.begin(), common.end(),
                                  [](std::string_view word) { return word.ends_with('.'); });
  return plain && !has_strict_latin_ending(fold(words[0])) ? before : 0;
}

}  // namespace

std::size_t words_before_name(std::span<std::string_view const> words) {
  if (words.size() < 2) return 0;
  // "paludosus DE BROSSE": an epithet and its author.
  if (words.size() > 2 && (is_latin_epithet(words[0]) || is_genitive(words[0])) &&
      is_in_capitals(words[1], 2) && is_surname_particle(fold(words[1])) &&
      is_in_capitals(without_closing_marks(words[2]), 3)) {
    return 0;
  }
  for (auto const before :
       {words_in_other_letters(words), words_before_comma(words), capitals_before_comma(words),
        words_before_bracketed_binomial(words), capitals_before_bracket(words),
        words_in_capitals_before_binomial(words)}) {
    if (before > 0) return before;
  }
  if (auto const before = words_before_bracketed_genus(words); before > 0) return before;
  auto const second = without_closing(words[1]);
  bool const latin_second = has_latin_ending(second) || has_strict_latin_ending(second);
  if (is_rank_noun(fold(words[0])) && is_capitalised(second) && latin_second) return 1;
  if (auto const pointing = words_of_reference(words); pointing > 0) {
    return pointing;  // "see Aus, p. 50", "see also 5. A. bus"
  }
  if (words[0].ends_with(':') && is_capitalised(second) && latin_second) {
    return 1;  // "AUSIDAE: Aus Roe"
  }
  // "Pine warbler" has the form of a name; so has what follows it.
  bool const begins_with_name = is_abbreviated(words[0]) || name_begins(words, 0);
  // "Leaf-bale beetle (Aus bus)"
  bool const neuter = ends_as_neuter(words[0]) && words[0].find('-') != std::string_view::npos &&
                      words.size() > 3 && words[2].front() == '(' && name_begins(words, 2);
  // "Marsh spike (Aus bus)": neither word is Latin beyond doubt, both in the bracket are.
  bool const spoken =
      words.size() > 3 && words[2].front() == '(' && !is_abbreviated(words[0]) &&
      !has_strict_latin_ending(fold(words[0])) && !has_strict_latin_ending(without_end(words[1])) &&
      is_capitalised(without_bracket(words[2])) && is_latin_epithet(without_closing(words[3]));
  if (spoken) return 2;
  if ((begins_with_name && !neuter) || is_rank(words[0])) return 0;
  for (std::size_t i = 0; i < std::min(words.size(), kMostVernacularWords + 1); ++i) {
    if (i > 0 && name_begins(words, i)) {
      // "Aus, Bus cus" and "Aus (Bus) cus" are Latin from the first word on.
      bool const latin =
          has_strict_latin_ending(without_end(words[0])) && is_capitalised(without_end(words[0]));
      bool const bracket = words[i].front() == '(';
      bool const parted = ends_item(words[i - 1]) || bracket;
      // "Savanna bont tick (Aus bus)": no author is written so.
      bool const common =
          bracket && std::any_of(words.begin() + 1, words.begin() + static_cast<std::ptrdiff_t>(i),
                                 [](std::string_view word) {
                                   return is_lower(code_point_at(word, 0).value) &&
                                          !is_particle(without_end(word)) && is_plain_word(word);
                                 });
      return latin && !common && (parted || i == 1) ? 0 : i;
    }
    if (words[i].front() == '(' && is_bracketed_at_end(words, i)) return i;
    if (words[i].front() == '(' || words[i].front() == '[' || !may_be_vernacular(words[i]))
      return 0;
  }
  return 0;
}

namespace {

// "ausella", "ausia": as genera are made, where "tolva" and "bemba" may be words of any language.
bool has_genus_suffix(std::string_view folded) {
  static constexpr std::array kSuffixes{"ella"sv, "ia"sv, "ina"sv, "ula"sv, "ola"sv, "us"sv,
                                        "um"sv,   "is"sv, "es"sv,  "era"sv, "ea"sv,  "ana"sv,
                                        "os"sv,   "on"sv, "ax"sv,  "ix"sv,  "ops"sv, "oda"sv};
  return std::any_of(kSuffixes.begin(), kSuffixes.end(),
                     [folded](std::string_view suffix) { return folded.ends_with(suffix); });
}

}  // namespace

std::size_t words_before_bracketed_binomial(std::span<std::string_view const> words) {
  std::size_t i = 0;
  bool capitals = true;
  for (; i < words.size() && i <= kMostVernacularWords && words[i].front() != '('; ++i) {
    // "CENTRE-BORER"
    auto const hyphen = words[i].find('-');
    bool const upper =
        is_in_capitals(words[i].substr(0, hyphen)) &&
        (hyphen == std::string_view::npos || is_in_capitals(words[i].substr(hyphen + 1)));
    capitals = capitals && upper;
    if (!upper && (!is_capitalised(words[i]) || ends_item(words[i]))) return 0;
    if (words[i].ends_with('.')) return 0;
  }
  if (i == 0 || i + 1 >= words.size() || words[i].front() != '(') return 0;
  // "Ausella Roe (Busella busa)", "AUSELLA BUSA (Busella busa)", but "MARSHA HOPPER (Busella busa)"
  // too, and "Tolva (Busella busa Roe)", where "Cusella (Busella busa)" would be a genus and what
  // it was called.
  constexpr std::size_t kAuthored = 4;  // words; synonyms are named without authors as a rule
  // "Mapleback (Busunio busus)" has no ending of a genus at all.
  bool const lone = i == 1 && (words.size() >= kAuthored || !has_latin_ending(fold(words[0]))) &&
                    without_full_stop(words.back()).ends_with(')') &&
                    !has_genus_suffix(fold(words[0]));
  bool const common = lone || (capitals && i > 1 && !has_strict_latin_ending(fold(words[1])));
  if (!common && has_strict_latin_ending(fold(words[0])) && !ends_as_neuter(words[0])) return 0;
  auto const genus = without_bracket(words[i]);
  auto const epithet = without_closing(words[i + 1]);
  bool const name = is_capitalised(genus) && is_epithet(epithet) && has_epithet_ending(epithet);
  // "(Fumavria levis (Roe) Dorn)" holds another bracket.
  auto close = i + 1;
  std::ptrdiff_t open = 1;
  for (; close < words.size(); ++close) {
    open += std::count(words[close].begin(), words[close].end(), '(') -
            std::count(words[close].begin(), words[close].end(), ')');
    if (open <= 0) break;
  }
  if (!name || close >= words.size() || !(capitals || close + 1 == words.size())) return 0;
  // "Ausella Roe (Northern slopes)"
  bool const latin =
      has_latin_ending(genus) || (close == i + 1 && !has_strict_latin_ending(fold(words[0])));
  return latin ? i : 0;
}

bool closes_common_name(std::string_view text) {
  auto const words = words_of(text, kMostVernacularWords + 2);
  if (words_before_bracketed_genus(words) > 0) return true;
  return words.size() > 2 && is_bracketed_at_end(words, words.size() - 2) &&
         words[words.size() - 2].starts_with('(');
}

bool is_name_behind_common_one(std::string_view text) {
  auto const words = words_of(start_of(text, 200));
  if (words_before_bracketed_binomial(words) > 0) return true;
  auto const before = words_before_name(words);
  if (before == 0 || before + 1 >= words.size()) return false;
  if (stands_before_noun(words[before - 1])) return false;  // "oberhalb der Waldgrenze alba"
  return is_capitalised(words[before]) && is_epithet(without_closing(words[before + 1]));
}

bool stands_before_noun(std::string_view word) {
  static constexpr std::array kBefore{"im"sv,  "in"sv,    "am"sv,   "auf"sv,  "unter"sv, "an"sv,
                                      "bei"sv, "aus"sv,   "vom"sv,  "zum"sv,  "der"sv,   "dem"sv,
                                      "den"sv, "des"sv,   "die"sv,  "das"sv,  "the"sv,   "of"sv,
                                      "on"sv,  "under"sv, "near"sv, "dans"sv, "sous"sv,  "sur"sv};
  return is_one_of(kBefore, fold(word));
}

}  // namespace keydrift::printed
