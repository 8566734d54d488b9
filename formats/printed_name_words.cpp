#include "keydrift/formats/printed_name_words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_hybrids.hpp"
#include "keydrift/formats/printed_months.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// All words of the lists, to be looked up in a few steps.
template <std::size_t... N>
constexpr auto sorted(std::array<std::string_view, N> const&... lists) {
  std::array<std::string_view, (N + ...)> all;
  auto out = all.begin();
  ((out = std::copy(lists.begin(), lists.end(), out)), ...);
  std::sort(all.begin(), all.end());
  return all;
}

// Small words that may begin an author's name.
constexpr std::array kSurnameParticles{"de"sv, "van"sv, "von"sv, "der"sv, "den"sv, "du"sv,
                                       "da"sv, "dos"sv, "del"sv, "la"sv,  "le"sv,  "di"sv,
                                       "zu"sv, "ter"sv, "ten"sv, "des"sv, "das"sv, "af"sv};
// Others that may stand within authors.
constexpr std::array kAuthorParticles{"y"sv,      "e"sv,   "et"sv,  "and"sv,   "&"sv,
                                      "ex"sv,     "in"sv,  "al."sv, "f."sv,    "fil."sv,
                                      "auct."sv,  "non"sv, "nec"sv, "sensu"sv, "apud"sv,
                                      "emend."sv, "em."sv, "und"sv, "st."sv};
// Small words that are no epithets.
constexpr std::array kNoEpithets{
    "in"sv,        "part"sv,       "partly"sv,       "partim"sv,    "pro"sv,       "parte"sv,
    "from"sv,      "only"sv,       "see"sv,          "and"sv,       "or"sv,        "with"sv,
    "without"sv,   "rare"sv,       "rarely"sv,       "male"sv,      "males"sv,     "female"sv,
    "females"sv,   "form"sv,       "forms"sv,        "the"sv,       "of"sv,        "some"sv,
    "species"sv,   "not"sv,        "but"sv,          "if"sv,        "when"sv,      "also"sv,
    "to"sv,        "at"sv,         "on"sv,           "by"sv,        "as"sv,        "oder"sv,
    "und"sv,       "ou"sv,         "et"sv,           "con"sv,       "mit"sv,       "teilweise"sv,
    "partie"sv,    "partly,"sv,    "usually"sv,      "mostly"sv,    "sometimes"sv, "page"sv,
    "pp"sv,        "larva"sv,      "larvae"sv,       "adult"sv,     "adults"sv,    "fig"sv,
    "figs"sv,      "an"sv,         "is"sv,           "are"sv,       "which"sv,     "below"sv,
    "above"sv,     "nov"sv,        "pars"sv,         "en"sv,        "em"sv,        "deels"sv,
    "teils"sv,     "zum"sv,        "teil"sv,         "nom"sv,       "gen"sv,       "hembra"sv,
    "macho"sv,     "weibchen"sv,   "gedeeltelijk"sv, "elsewhere"sv, "here"sv,      "than"sv,
    "that"sv,      "longer"sv,     "shorter"sv,      "new"sv,       "except"sv,    "including"sv,
    "known"sv,     "most"sv,       "many"sv,         "its"sv,       "all"sv,       "both"sv,
    "sexes"sv,     "worker"sv,     "workers"sv,      "queen"sv,     "queens"sv,    "genus"sv,
    "genera"sv,    "subspecies"sv, "single"sv,       "several"sv,   "other"sv,     "others"sv,
    "remaining"sv, "sens"sv,       "auct"sv,         "auctt"sv,     "mihi"sv,      "nob"sv,
    "nobis"sv,     "spec"sv,       "bei"sv,          "nach"sv,      "auf"sv,       "durch"sv,
    "unter"sv,     "hinter"sv,     "neben"sv,        "zwischen"sv,  "ohne"sv,      "sur"sv,
    "sous"sv,      "dans"sv,       "chez"sv,         "avec"sv,      "sans"sv,      "entre"sv,
    "sobre"sv,     "hasta"sv,      "sin"sv,          "upon"sv,      "juv"sv,       "imm"sv,
    "near"sv,      "under"sv,      "between"sv,      "behind"sv,    "into"sv,      "bis"sv,
    "einer"sv,     "dieser"sv,     "jeder"sv,        "beider"sv,    "mehrerer"sv,  "weniger"sv,
    "aller"sv,     "kurzer"sv,     "langer"sv,       "feiner"sv,    "dichter"sv,   "breiter"sv,
    "schmaler"sv,  "starker"sv,    "schwacher"sv,    "heller"sv,    "dunkler"sv,   "gelber"sv,
    "roter"sv,     "brauner"sv,    "schwarzer"sv,    "grauer"sv,    "dicker"sv,    "kleiner"sv,
    "grosser"sv,   "großer"sv,     "oberer"sv,       "unterer"sv,   "innerer"sv,   "hinterer"sv,
    "vorderer"sv,  "mittlerer"sv,  "tiefer"sv,       "flacher"sv,   "spitzer"sv,   "stumpfer"sv,
    "glatter"sv,   "rauher"sv,     "ganzer"sv,       "halber"sv,    "do"sv,        "no"sv,
    "na"sv,        "nos"sv,        "nas"sv,          "quasi"sv,     "quase"sv,     "sem"sv,
    "com"sv,       "el"sv,         "los"sv,          "las"sv,       "della"sv,     "delle"sv,
    "dei"sv,       "senza"sv,      "uden"sv,         "med"sv,       "og"sv,        "paa"sv,
    "på"sv,        "ikke"sv,       "eller"sv,        "utan"sv,      "och"sv,       "zonder"sv,
    "het"sv,       "een"sv};
// Those of German keys that end as "lichen" does.
constexpr std::array kGermanWords{
    "verbunden"sv,   "gebogen"sv,   "versehen"sv, "umgeben"sv,       "verwachsen"sv,
    "verschieden"sv, "vorhanden"sv, "erhaben"sv,  "geschnitten"sv,   "unterbrochen"sv,
    "geschlossen"sv, "gewunden"sv,  "gezogen"sv,  "abgehoben"sv,     "angewachsen"sv,
    "verborgen"sv,   "erloschen"sv, "oben"sv,     "unten"sv,         "innen"sv,
    "hinten"sv,      "selten"sv,    "offen"sv,    "ausgeschnitten"sv};
// Those of French keys that end as "nigripes" does.
constexpr std::array kFrenchWords{
    "noires"sv,  "jaunes"sv,  "rouges"sv, "brunes"sv,  "rousses"sv,    "blanches"sv,
    "grises"sv,  "vertes"sv,  "bleues"sv, "longues"sv, "courtes"sv,    "larges"sv,
    "lisses"sv,  "glabres"sv, "velues"sv, "fines"sv,   "distinctes"sv, "transverses"sv,
    "claires"sv, "sombres"sv, "droites"sv};
// Words in brackets behind a name that name no author: sexes and stages.
constexpr std::array kNoAuthors{
    "female"sv,   "females"sv,  "male"sv,     "males"sv,   "weibchen"sv, "männchen"sv, "larva"sv,
    "larvae"sv,   "larve"sv,    "larven"sv,   "adult"sv,   "adults"sv,   "femelle"sv,  "mâle"sv,
    "femelles"sv, "mâles"sv,    "hembra"sv,   "macho"sv,   "hembras"sv,  "machos"sv,   "fêmea"sv,
    "part"sv,     "partim"sv,   "teil"sv,     "rare"sv,    "north"sv,    "south"sv,    "east"sv,
    "west"sv,     "northern"sv, "southern"sv, "eastern"sv, "western"sv,  "group"sv,    "see"sv,
    "plate"sv,    "page"sv};
// Words behind a name that say how wide it is meant: part of the name.
constexpr std::array kLimitWords{"group"sv,  "complex"sv, "agg."sv,  "aggr."sv, "aggregate"sv,
                                 "gruppe"sv, "groupe"sv,  "grupo"sv, "coll."sv, "type"sv};
constexpr std::array kGroupWords{"group"sv,  "groupe"sv, "grupo"sv,  "gruppo"sv,
                                 "gruppe"sv, "groep"sv,  "complex"sv};
// Words before a name that is spoken of and not led to.
constexpr std::array kComparing{"in"sv,   "of"sv,  "than"sv,   "as"sv,   "like"sv, "from"sv,
                                "with"sv, "cf."sv, "except"sv, "to"sv,   "for"sv,  "von"sv,
                                "bei"sv,  "de"sv,  "and"sv,    "or"sv,   "on"sv,   "by"sv,
                                "see"sv,  "(in"sv, "bij"sv,    "chez"sv, "como"sv, "wie"sv,
                                "als"sv,  "van"sv, "und"sv,    "oder"sv, "et"sv,   "ou"sv};
constexpr std::array kRanks{"variety"sv,   "subsp."sv,  "ssp."sv,  "var."sv,        "forma"sv,
                            "fo."sv,       "subvar."sv, "morph"sv, "cf."sv,         "aff."sv,
                            "nr"sv,        "nr."sv,     "subg."sv, "sect."sv,       "ser."sv,
                            "subsect."sv,  "f."sv,      "×"sv,     "race"sv,        "x"sv,
                            "gr."sv,       "grp."sv,    "cfr."sv,  "nothosubsp."sv, "nothossp."sv,
                            "nothovar."sv, "nothof."sv};
constexpr std::array kSeparators{"or"sv, "and"sv, "&"sv, "oder"sv, "und"sv, "ou"sv,
                                 "et"sv, "y"sv,   "o"sv, "e"sv,    "/"sv,   "sowie"sv};

// "June", "April-June": when a species is about, at the end of its account.
bool ends_in_month(std::string_view word) {
  static constexpr std::array kMonths{"june"sv,    "october"sv, "septembre"sv, "juillet"sv,
                                      "octubre"sv, "outubro"sv, "ottobre"sv,   "novembre"sv};
  auto const hyphen = word.rfind('-');
  auto const last = hyphen == std::string_view::npos ? word : word.substr(hyphen + 1);
  return is_one_of(kMonths, fold(last));
}

}  // namespace

bool is_separator(std::string_view word) { return is_one_of(kSeparators, word); }
bool is_infrageneric_rank(std::string_view word) {
  static constexpr std::array kRanks{"subg."sv, "subgen."sv,  "sect."sv,
                                     "ser."sv,  "subsect."sv, "subser."sv};
  return is_one_of(kRanks, word);
}

bool is_rank(std::string_view word) { return is_one_of(kRanks, word); }
bool is_lower_rank(std::string_view word) {
  static constexpr std::array kLower{
      "subsp."sv, "ssp."sv,    "var."sv,        "forma"sv,     "fo."sv,       "subvar."sv, "f."sv,
      "race"sv,   "variety"sv, "nothosubsp."sv, "nothossp."sv, "nothovar."sv, "nothof."sv};
  return is_one_of(kLower, word);
}
bool is_surname_particle(std::string_view word) { return is_one_of(kSurnameParticles, word); }
bool is_particle(std::string_view word) {
  return is_one_of(kAuthorParticles, word) || is_surname_particle(word);
}
bool is_limit_word(std::string_view word) { return is_one_of(kLimitWords, word); }
bool is_group_word(std::string_view folded) { return is_one_of(kGroupWords, folded); }
bool is_comparing(std::string_view folded) { return is_one_of(kComparing, folded); }
bool is_no_author(std::string_view folded) { return is_one_of(kNoAuthors, folded); }

std::string_view without_end(std::string_view word) {
  while (!word.empty() && (word.back() == ',' || word.back() == ';')) word.remove_suffix(1);
  return word;
}

bool ends_item(std::string_view word) {
  return !word.empty() && (word.back() == ',' || word.back() == ';');
}

std::string_view bare_name(std::string_view word) {
  while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
  while (!word.empty() && ",.:;)]"sv.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  return word;
}

std::string_view without_closing_marks(std::string_view word) {
  while (!word.empty() && ".,;:)"sv.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  return word;
}

std::string_view without_mark_of_new(std::string_view name) {
  static constexpr std::array kMarks{"new species"sv, "n. sp."sv,         "sp. n."sv,
                                     "sp. nov."sv,    "new subspecies"sv, "nov. sp."sv,
                                     "new name"sv,    "new combination"sv};
  for (auto const mark : kMarks) {
    if (!name.ends_with(mark)) continue;
    name = trim_right(name.substr(0, name.size() - mark.size()));
    return name.ends_with(',') ? name.substr(0, name.size() - 1) : name;
  }
  return name;
}

bool is_plain_word(std::string_view word) {
  // Most are letters of ASCII alone.
  bool const plain = std::all_of(word.begin(), word.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  });
  if (plain) return word.size() >= 2;
  std::size_t letters = 0;
  for (std::size_t at = 0; at < word.size();) {
    auto const c = code_point_at(word, at);
    if (is_letter(c.value)) {
      ++letters;
    } else if (!((is_dash(c.value) || c.value == '\'') && at > 0 && at + c.length < word.size())) {
      return false;
    }
    at += c.length;
  }
  return letters >= 2;
}

bool is_epithet(std::string_view word) {
  word = without_cross(without_end(word));
  // "d'Orvil" is an author.
  if (word.size() > 2 && word[1] == '\'' && is_upper(static_cast<unsigned char>(word[2])))
    return false;
  if (word.empty() || !is_lower(code_point_at(word, 0).value) || !is_plain_word(word)) return false;
  static constexpr auto kSmallWords =
      lengths_by_beginning(kNoEpithets, kGermanWords, kFrenchWords, kSurnameParticles,
                           kAuthorParticles, kLimitWords, kSeparators);
  if (!may_be_among(kSmallWords, word)) return true;
  static constexpr auto kSorted = sorted(kNoEpithets, kGermanWords, kFrenchWords, kSurnameParticles,
                                         kAuthorParticles, kLimitWords, kSeparators);
  return !std::binary_search(kSorted.begin(), kSorted.end(), word);
}

bool has_latin_ending(std::string_view word) {
  static constexpr std::array kEndings{
      "us"sv, "a"sv,  "um"sv, "is"sv,  "es"sv, "as"sv, "os"sv, "on"sv, "ys"sv, "ax"sv, "ex"sv,
      "ix"sv, "ox"sv, "yx"sv, "ops"sv, "ps"sv, "ns"sv, "ae"sv, "e"sv,  "en"sv, "AE"sv, "ia"sv};
  if (!word.empty() && word.back() == '.') return true;
  return std::any_of(kEndings.begin(), kEndings.end(), [word](std::string_view ending) {
    return word.size() > ending.size() && word.substr(word.size() - ending.size()) == ending;
  });
}

bool has_epithet_ending(std::string_view word) {
  static constexpr std::array kEndings{"i"sv,  "ns"sv, "or"sv, "er"sv,
                                       "il"sv, "ps"sv, "rs"sv, "o"sv};
  // "ferruginous" is English; Greek feet are not ("brachypous").
  if (word.ends_with("ous") && !word.ends_with("pous")) return false;
  if (word.size() > 5 && word.ends_with("femur")) return true;
  // "linear" and "similar" end as these do.
  if (word.ends_with("dispar") || word.ends_with("impar") || word.ends_with("calcar")) return true;
  return has_latin_ending(word) ||
         std::any_of(kEndings.begin(), kEndings.end(), [word](std::string_view ending) {
           return word.size() > ending.size() + 1 &&
                  word.substr(word.size() - ending.size()) == ending;
         });
}

bool has_strict_latin_ending(std::string_view word) {
  static constexpr std::array kEndings{
      "us"sv,  "a"sv,       "um"sv,    "is"sv,    "ops"sv,   "ax"sv,   "ix"sv,
      "ex"sv,  "ys"sv,      "yx"sv,    "ox"sv,    "ii"sv,    "ae"sv,   "æ"sv,
      "ens"sv, "ans"sv,     "oides"sv, "ini"sv,   "ensis"sv, "cola"sv, "fer"sv,
      "ger"sv, "pes"sv,     "ceps"sv,  "color"sv, "ense"sv,  "ale"sv,  "ile"sv,
      "are"sv, "ophorum"sv, "idae"sv,  "aceae"sv, "frons"sv, "femur"sv};
  // "gracilior" compares; these say where, and are of other languages as well.
  static constexpr std::array kPlaces{"anterior"sv, "posterior"sv, "interior"sv, "exterior"sv,
                                      "superior"sv, "inferior"sv,  "ulterior"sv, "behavior"sv};
  constexpr std::size_t kShortestCompared = 7;
  if (word.size() >= kShortestCompared && word.ends_with("ior") &&
      is_lower(code_point_at(word, 0).value) && word.find('-') == std::string_view::npos &&
      !is_one_of(kPlaces, word)) {
    return true;
  }
  return std::any_of(kEndings.begin(), kEndings.end(), [word](std::string_view ending) {
    return word.size() > ending.size() && word.ends_with(ending);
  });
}

bool has_higher_ending(std::string_view folded) {
  static constexpr std::array kEndings{"idae"sv,  "aceae"sv, "inae"sv,  "oidea"sv, "oideae"sv,
                                       "ptera"sv, "ales"sv,  "idæ"sv,   "inæ"sv,   "aceæ"sv,
                                       "acées"sv, "acees"sv, "idées"sv, "idees"sv, "inées"sv};
  return std::any_of(kEndings.begin(), kEndings.end(), [folded](std::string_view ending) {
    return folded.size() > ending.size() + 2 && folded.ends_with(ending);
  });
}

bool is_mark_of_new(std::string_view word) {
  static constexpr std::array kMarks{"sp.n."sv,     "n.sp."sv,   "sp.nov."sv,  "nov.sp."sv,
                                     "spec.nov."sv, "ssp.n."sv,  "subsp.n."sv, "gen.n."sv,
                                     "n.gen."sv,    "gen.nov."sv};
  return is_one_of(kMarks, without_end(word));
}

bool is_latin_epithet(std::string_view word) {
  auto const bare = without_end(word);
  bool const common = bare.ends_with("ale") || bare.ends_with("ile") || bare.ends_with("are");
  return is_epithet(word) && has_strict_latin_ending(bare) && !common;
}

bool is_genitive(std::string_view word) {
  constexpr std::size_t kShortest = 5;  // bytes
  return word.size() >= kShortest && word.ends_with('i') && is_epithet(word);
}

bool is_counted_epithet(std::string_view word) {
  auto const digits = leading_figures(word);
  return digits > 0 && digits < word.size() && word[digits] == '-' &&
         is_latin_epithet(word.substr(digits + 1));
}

bool is_paged_epithet(std::string_view word, std::string_view next) {
  if (!next.starts_with('(')) return false;
  auto const inside = next.substr(1);
  bool const page = is_page_word(inside) || starts_with_page(inside);
  return page && is_epithet(word) && has_epithet_ending(word);
}

std::vector<std::string> beginnings_of(std::string_view genus, std::size_t most) {
  std::vector<std::string> beginnings;
  beginnings.reserve(std::min(most, genus.size()));
  std::size_t at = 0;
  while (beginnings.size() < most && at < genus.size()) {
    at += code_point_at(genus, at).length;
    beginnings.emplace_back(genus.substr(0, at));
  }
  return beginnings;
}

std::string_view initial_of(std::string_view genus) {
  return genus.substr(0, code_point_at(genus, 0).length);
}

bool is_year(std::string_view word) {
  word = without_end(word);
  while (!word.empty() && ").:"sv.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  if (word.size() > 4 && word.back() >= 'a' && word.back() <= 'z') word.remove_suffix(1);
  return word.size() == 4 && (word[0] == '1' || word[0] == '2') &&
         std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool is_authorish(std::string_view word) {
  // "of authors", "of me", "of us": no surname, but who gave the name.
  static constexpr std::array kWithoutName{"auct."sv, "auctt."sv, "mihi"sv,   "mihi."sv,
                                           "nob."sv,  "nobis"sv,  "nobis."sv, "m."sv};
  if (is_one_of(kWithoutName, word) || is_year(word)) return true;
  if (is_months(word)) return false;  // "Aus bus Roe V–VII"
  while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
  auto const first = code_point_at(word, 0).value;
  if (first == 'd' && word.size() > 2 && (word.substr(1, 1) == "'" || word.substr(1, 3) == "’")) {
    return true;
  }
  return is_upper(first) && !is_one_of(std::array{"P."sv, "Fig."sv, "Figs"sv, "Figs."sv, "Pl."sv,
                                                  "Abb."sv, "Taf."sv, "S."sv, "Plate"sv, "Page"sv},
                                       word);
}

bool is_abbreviated(std::string_view word) {
  static constexpr std::array kOthers{"Fig."sv, "Figs."sv, "Abb."sv,  "Taf."sv, "Pl."sv,
                                      "Pls."sv, "Tab."sv,  "Nr."sv,   "No."sv,  "Est."sv,
                                      "Lam."sv, "Subg."sv, "Sect."sv, "Fam."sv};
  if (word.size() < 2 || word.back() != '.' || is_one_of(kOthers, word)) return false;
  word.remove_suffix(1);
  std::size_t letters = 0;
  for (std::size_t at = 0; at < word.size();) {
    auto const c = code_point_at(word, at);
    if (!(letters == 0 ? is_upper(c.value) : is_lower(c.value))) return false;
    ++letters;
    at += c.length;
  }
  return letters >= 1 && letters <= 4;
}

bool is_latin_genus(std::string_view word) {
  word = without_end(word);
  while (!word.empty() && word.back() == '.') word.remove_suffix(1);
  if (!is_capitalised(word) || ends_in_month(word)) return false;
  bool const capitals = word.size() >= 4 && is_all_capitals(word);
  return has_latin_ending(word) || (capitals && has_strict_latin_ending(fold(word)));
}

bool is_capitalised(std::string_view word) {
  word = without_cross(word);
  if (!is_upper(code_point_at(word, 0).value)) return false;
  return is_plain_word(word);
}

bool closes_lead(std::string_view printed) {
  static constexpr std::array kShortened{
      "indet."sv, "auct."sv, "emend."sv, "forma."sv,  "aggr."sv,   "hort."sv, "subsp."sv, "subg."sv,
      "sect."sv,  "comb."sv, "stat."sv,  "spec."sv,   "nov."sv,    "gen."sv,  "spp."sv,   "ssp."sv,
      "var."sv,   "ser."sv,  "agg."sv,   "str."sv,    "lat."sv,    "rev."sv,  "syn."sv,   "det."sv,
      "fil."sv,   "nom."sv,  "aff."sv,   "subvar."sv, "subsect."sv};
  auto const bare = printed.substr(0, printed.size() - 1);
  if (!is_plain_word(bare) || is_one_of(kShortened, printed)) return false;
  return printed.size() > 5 || (is_lower(code_point_at(bare, 0).value) && bare.size() >= 3);
}

bool is_name_in_capitals(std::string_view word) {
  constexpr std::size_t kShortest = 4;  // bytes; shorter ones are signs
  return word.size() >= kShortest && is_in_capitals(word) && has_latin_ending(fold(word));
}

std::string in_small_letters(std::string_view word) {
  if (!is_all_capitals(word) || !has_latin_ending(fold(word))) return std::string{word};
  auto const first = code_point_at(word, 0).length;
  return std::string{word.substr(0, first)} + fold(word.substr(first));
}

std::size_t words_in_capitals_before_binomial(std::span<std::string_view const> words) {
  constexpr std::size_t kFewest = 2;
  constexpr std::size_t kMost = 6;
  constexpr std::size_t kShortest = 2;  // bytes of a word
  std::size_t i = 0;
  while (i < words.size() && i <= kMost && words[i].size() >= kShortest &&
         is_in_capitals(words[i])) {
    ++i;
  }
  if (i < kFewest || i + 1 >= words.size()) return 0;
  auto const genus = words[i];
  auto const epithet = without_closing_marks(words[i + 1]);
  bool const name = is_capitalised(genus) && has_latin_ending(genus) && is_epithet(epithet) &&
                    has_epithet_ending(epithet);
  return name ? i : 0;
}

}  // namespace keydrift::printed
