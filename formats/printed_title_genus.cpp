#include "keydrift/formats/printed_title_genus.hpp"

#include <algorithm>
#include <array>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_slips.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// Titles are looked at without their accents.
template <std::size_t N>
std::unordered_set<std::string> with_and_without_stress(
    std::array<std::string_view, N> const& words) {
  std::unordered_set<std::string> all;
  for (auto const word : words) {
    all.emplace(word);
    all.insert(without_stress(word));
  }
  return all;
}

// "Key to Female Ausella": the sex or the stage before the genus.
bool says_sex_or_stage(std::string_view folded) {
  static constexpr std::array kWords{"female"sv,  "male"sv,   "adult"sv,    "larval"sv,
                                     "nymphal"sv, "worker"sv, "mature"sv,   "fertile"sv,
                                     "sterile"sv, "known"sv,  "described"sv};
  return is_one_of(kWords, folded);
}

// Words that announce the genus in a title.
bool announces_genus(std::string_view folded) {
  static constexpr std::array kWords{"of"sv,       "genus"sv,  "gattung"sv, "genre"sv,
                                     "género"sv,   "gênero"sv, "genere"sv,  "generis"sv,
                                     "der"sv,      "de"sv,     "du"sv,      "do"sv,
                                     "geslacht"sv, "род"sv,    "slægten"sv, "släktet"sv};
  // "绒苣属 Aus"
  if (folded.ends_with("属") || folded.ends_with("屬")) return true;
  static auto const kAll = with_and_without_stress(kWords);
  return kAll.contains(std::string{folded});
}

// "LOPHIDÉS", "Lophinés.": a family; without its accent it would pass for a genus.
bool is_french_group(std::string_view word) {
  while (!word.empty() && ",.:;)"sv.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  static constexpr std::array kEndings{"id\u00E9s"sv, "ID\u00C9S"sv, "in\u00E9s"sv, "IN\u00C9S"sv};
  return std::any_of(kEndings.begin(), kEndings.end(),
                     [word](std::string_view ending) { return word.ends_with(ending); });
}

}  // namespace

bool names_section(std::string_view folded) {
  static constexpr std::array kWords{"sect"sv,         "section"sv,   "sektion"sv, "sectio"sv,
                                     "ser"sv,          "series"sv,    "subg"sv,    "subgen"sv,
                                     "subgenus"sv,     "subsect"sv,   "sección"sv, "seção"sv,
                                     "untergattung"sv, "sous-genre"sv};
  return is_one_of(kWords, folded);
}

bool is_title_word(std::string_view folded) {
  static constexpr std::array kWords{"key"sv,
                                     "keys"sv,
                                     "species"sv,
                                     "genus"sv,
                                     "genera"sv,
                                     "subgenus"sv,
                                     "males"sv,
                                     "females"sv,
                                     "larvae"sv,
                                     "gen"sv,
                                     "adults"sv,
                                     "female"sv,
                                     "male"sv,
                                     "adult"sv,
                                     "worker"sv,
                                     "nymphs"sv,
                                     "workers"sv,
                                     "families"sv,
                                     "familia"sv,
                                     "família"sv,
                                     "familias"sv,
                                     "famílias"sv,
                                     "famille"sv,
                                     "familles"sv,
                                     "familie"sv,
                                     "tribu"sv,
                                     "tribo"sv,
                                     "tribus"sv,
                                     "subfamilia"sv,
                                     "subfamília"sv,
                                     "orden"sv,
                                     "ordem"sv,
                                     "classe"sv,
                                     "clase"sv,
                                     "family"sv,
                                     "tribes"sv,
                                     "groups"sv,
                                     "subspecies"sv,
                                     "especies"sv,
                                     "espécies"sv,
                                     "espèces"sv,
                                     "specie"sv,
                                     "specierum"sv,
                                     "generum"sv,
                                     "generis"sv,
                                     "sectionis"sv,
                                     "subgeneris"sv,
                                     "clavis"sv,
                                     "clave"sv,
                                     "chave"sv,
                                     "clé"sv,
                                     "genre"sv,
                                     "género"sv,
                                     "gênero"sv,
                                     "genere"sv,
                                     "table"sv,
                                     "tabula"sv,
                                     "tabella"sv,
                                     "tavola"sv,
                                     "prospetto"sv,
                                     "sinossi"sv,
                                     "quadro"sv,
                                     "chiave"sv,
                                     "tabelle"sv,
                                     "revision"sv,
                                     "notes"sv,
                                     "identification"sv,
                                     "determination"sv,
                                     "une"sv,
                                     "les"sv,
                                     "des"sv,
                                     "pages"sv,
                                     "figures"sv,
                                     "plates"sv,
                                     "introduction"sv,
                                     "synopsis"sv,
                                     "monographia"sv,
                                     "monograph"sv,
                                     "prodromus"sv,
                                     "revisio"sv,
                                     "enumeratio"sv,
                                     "tentamen"sv,
                                     "conspectus"sv,
                                     "synoptica"sv,
                                     "dispositio"sv,
                                     "diagnosis"sv,
                                     "descriptions"sv,
                                     "contributions"sv,
                                     "observations"sv,
                                     "synonymia"sv,
                                     "distributio"sv,
                                     "systematica"sv,
                                     "flora"sv,
                                     "fauna"sv,
                                     "larva"sv,
                                     "imagines"sv,
                                     "females,"sv,
                                     "hembras"sv,
                                     "machos"sv,
                                     "las"sv,
                                     "los"sv,
                                     "islas"sv,
                                     "the"sv,
                                     "basis"sv,
                                     "of"sv,
                                     "to"sv,
                                     "for"sv,
                                     "known"sv,
                                     "from"sv,
                                     "arten"sv,
                                     "gattungen"sv,
                                     "familien"sv,
                                     "übersicht"sv,
                                     "uebersicht"sv,
                                     "bestimmungstabelle"sv,
                                     "bestimmungsschlüssel"sv,
                                     "schlüssel"sv,
                                     "analysis"sv,
                                     "arter"sv,
                                     "soorten"sv,
                                     "gatunków"sv,
                                     "genres"sv,
                                     "géneros"sv,
                                     "gêneros"sv,
                                     "generi"sv,
                                     "orders"sv,
                                     "imagos"sv,
                                     "puparia"sv,
                                     "para"sv,
                                     "das"sv,
                                     "dos"sv,
                                     "die"sv,
                                     "der"sv,
                                     "den"sv,
                                     "dem"sv,
                                     "ein"sv,
                                     "eine"sv,
                                     "einige"sv,
                                     "unsere"sv,
                                     "zu"sv,
                                     "zur"sv,
                                     "zum"sv,
                                     "und"sv,
                                     "im"sv,
                                     "mit"sv,
                                     "über"sv,
                                     "von"sv,
                                     "il"sv,
                                     "lo"sv,
                                     "la"sv,
                                     "le"sv,
                                     "el"sv,
                                     "gli"sv,
                                     "una"sv,
                                     "del"sv,
                                     "della"sv,
                                     "delle"sv,
                                     "dei"sv,
                                     "degli"sv,
                                     "sur"sv,
                                     "our"sv,
                                     "some"sv,
                                     "these"sv};
  static auto const kAll = with_and_without_stress(kWords);
  return kAll.contains(std::string{folded});
}

bool says_genus(std::string_view folded) {
  static constexpr std::array kWords{"gen"sv,    "genus"sv,  "gattung"sv, "gatt"sv,    "genre"sv,
                                     "género"sv, "gênero"sv, "genere"sv,  "generis"sv, "geslacht"sv,
                                     "род"sv,    "slekt"sv,  "slægt"sv,   "släkt"sv,   "slägte"sv,
                                     "släkte"sv, "sl"sv,     "suku"sv,    "rod"sv,     "rodzaj"sv};
  static auto const kAll = with_and_without_stress(kWords);
  if (kAll.contains(std::string{folded})) return true;
  // "Gattiing", as scans have it
  constexpr std::size_t kShortest = 5;
  return folded.size() >= kShortest && folded != "genua" &&
         (folded.starts_with("gat") || folded.starts_with("gen")) &&
         std::any_of(kWords.begin(), kWords.end(), [folded](std::string_view word) {
           return word.size() >= kShortest && word.substr(0, 3) == folded.substr(0, 3) &&
                  may_be_misread(folded, word);
         });
}

bool is_common_before_genus(std::vector<std::string_view> const& words, std::size_t at) {
  constexpr std::size_t kShortest = 4;  // bytes
  if (at + 2 >= words.size()) return false;
  // "PILOSARIE. — PILOSARIUM Borv.": the French name and the Latin one.
  auto const dash = code_point_at(words[at + 1], 0);
  if (words[at].ends_with('.') && is_dash(dash.value) && dash.length == words[at + 1].size()) {
    auto const latin = words[at + 2];
    return is_in_capitals(without_closing_marks(words[at]), kShortest) &&
           is_in_capitals(latin, kShortest) && has_strict_latin_ending(fold(latin));
  }
  auto const common = without_closing_marks(words[at]);
  auto const genus = words[at + 1];
  bool const parted = common.size() + 1 == words[at].size() && !words[at].ends_with(')');
  return parted && is_in_capitals(without_stress(common), kShortest) && is_capitalised(genus) &&
         !is_in_capitals(genus, kShortest) && has_strict_latin_ending(genus) &&
         is_authorish(words[at + 2]);
}

std::string full_genus(std::string_view name) {
  auto const words = words_of(name);
  if (words.empty() || !is_capitalised(words[0])) return {};
  auto const genus = without_stress(words[0]);
  if (!is_in_capitals(genus)) return genus;
  // Ligatures are written out in names: International Code of Zoological Nomenclature, 4th ed.,
  // art. 27; International Code of Nomenclature for algae, fungi, and plants (Shenzhen), art. 60
  // (both from memory).
  std::string full;
  for (std::size_t at = 0; at < genus.size();) {
    auto const c = code_point_at(genus, at);
    std::string_view pair = std::string_view{genus}.substr(at, c.length);
    if (c.value == 0xC6) pair = "Ae";
    if (c.value == 0x152) pair = "Oe";
    full += full.empty() ? std::string{pair} : fold(pair);
    at += c.length;
  }
  return full;
}

bool titles_genus(std::string_view line) {
  constexpr std::size_t kMost = 8;  // words
  auto const words = words_of(start_of(line, 120));
  if (words.size() < 2 || words.size() > kMost) return false;
  auto first = words[0];
  if (first.ends_with('.')) first.remove_suffix(1);
  if (!says_genus(fold(first)) || !is_capitalised(first)) return false;
  std::size_t at = 1;
  if (is_digit(code_point_at(words[at], 0).value) && words.size() > 2) ++at;
  auto const name = words[at].substr(0, words[at].find_first_of(",.;:("));
  if (name.size() < 3 || !is_capitalised(name)) return false;
  // "Genus AUS 33" is the head of a page.
  bool const page = is_digit(code_point_at(words.back(), 0).value) && !is_year(words.back());
  return !page && line.find(". . ") == std::string_view::npos &&
         line.find("...") == std::string_view::npos;
}

bool ends_in_authored_genus(std::string_view title) {
  constexpr std::size_t kLongestAuthor = 7;  // bytes: "Roth."
  auto const words = words_of(start_of(title, 160));
  if (words.size() < 3 || !title.ends_with('.') || !mentions_key(title)) return false;
  auto const genus = words[words.size() - 2];
  return words.back().size() <= kLongestAuthor && is_authorish(words.back()) &&
         is_capitalised(genus) && has_strict_latin_ending(genus);
}

bool is_region(std::string_view folded) {
  static constexpr std::array kRegions{
      "africa"sv,  "america"sv, "arabia"sv,  "asia"sv,     "australia"sv, "austria"sv,
      "bolivia"sv, "borneo"sv,  "burma"sv,   "china"sv,    "colombia"sv,  "cuba"sv,
      "europa"sv,  "florida"sv, "gallia"sv,  "germania"sv, "guiana"sv,    "hispania"sv,
      "india"sv,   "italia"sv,  "java"sv,    "malaya"sv,   "malaysia"sv,  "persia"sv,
      "russia"sv,  "siberia"sv, "sumatra"sv, "syria"sv,    "tasmania"sv,  "venezuela"sv};
  return is_one_of(kRegions, folded);
}

std::vector<TitleGenus> genera_in_title(std::string const& title) {
  std::vector<TitleGenus> found;
  std::string before;
  bool in_section = false;
  bool bracketed = false;
  bool authored_genus = false;  // the title opens with a genus and its author
  bool of_work = false;         // the title of a flora or fauna
  bool behind_dash = false;     // "Aus Roe – Marshwort": there the common name stands
  bool species = false;  // "AUS BUS Roe": the words in capitals behind the genus are its epithets
  auto const plain = without_stress(title);
  auto const words = words_of(plain);
  auto const as_printed = words_of(title);
  bool const alike = as_printed.size() == words.size();  // word for word, but for accents
  auto const abbreviations = std::count_if(words.begin(), words.end(), is_cut_short_in_capitals);
  // In a text of sentences every noun behind a full stop has a capital.
  constexpr std::size_t kWordsOfATitle = 12;
  constexpr std::size_t kWordsOfAName = 3;
  bool const prose =
      !mentions_key(title) &&
      (words.size() > kWordsOfATitle || (title.ends_with('.') && words.size() > kWordsOfAName));
  for (std::size_t w = 0; w < words.size(); ++w) {
    auto bare = words[w];
    while (!bare.empty() && "([\"'"sv.find(bare.front()) != std::string_view::npos) {
      bare.remove_prefix(1);
    }
    // "CLÉ DES ESPÈCES D'AUSARIA"
    if (bare.size() > 4 && (bare[0] == 'D' || bare[0] == 'd')) {
      if (bare[1] == '\'') bare.remove_prefix(2);
      if (bare.substr(1).starts_with("\u2019")) bare.remove_prefix(4);
    }
    bare = bare.substr(0, bare.find('-'));
    bare = bare.substr(0, bare.find("\u2014"));
    while (!bare.empty() && ",.:;)]\"'*"sv.find(bare.back()) != std::string_view::npos) {
      bare.remove_suffix(1);
    }
    // Quotation marks beyond ASCII, the dagger of a footnote and its number set high.
    for (auto const mark : {"\u201C"sv, "\u201D"sv, "\u2018"sv, "\u2019"sv, "\u2020"sv, "\u00B9"sv,
                            "\u00B2"sv, "\u00B3"sv}) {
      if (bare.starts_with(mark)) bare.remove_prefix(mark.size());
      if (bare.ends_with(mark)) bare.remove_suffix(mark.size());
    }
    auto const genus = full_genus(bare);
    auto const folded = fold(bare);
    bool const capitals = genus != bare;
    // "EYES AND LEGS"
    bool const authored = w + 1 < words.size() && is_authorish(words[w + 1]) &&
                          !is_separator(fold(words[w + 1])) &&
                          !announces_genus(fold(words[w + 1]));  // "DIRETORIA DO FOMENTO"
    bool const family = folded.ends_with("idae") || folded.ends_with("inae") ||
                        folded.ends_with("aceae") || folded.ends_with("oidea") ||
                        folded.ends_with("idæ") || folded.ends_with("inæ") ||
                        folded.ends_with("aceæ") || folded.ends_with("acees") ||
                        folded.ends_with("idees") || folded.ends_with("inees") ||
                        folded.ends_with("pteres") || (alike && is_french_group(as_printed[w]));
    bool const numeral = capitals && roman_number(bare, kLargestGroupNumeral) > 0;
    bool const likely = !prose || capitals || authored || announces_genus(before);
    // "generis Ausae" is not the name's own form; "generis Ausella" is.
    // "DE AUSELLIIS" speaks of several.
    bool const genitive =
        folded.ends_with("iis") ||
        (before == "generis" && (folded.ends_with("ae") || folded.ends_with('i')));
    // "Sect. 2. Verticillatae": sections have names of their own.
    if (names_section(before)) in_section = true;
    bool const section = in_section;
    if (announces_genus(folded)) in_section = false;
    bracketed = bracketed || words[w].front() == '(';
    bool const latin = has_latin_ending(genus);
    bool const announced =
        announces_genus(before) || (says_sex_or_stage(before) && mentions_key(title));
    bool const epithet = species && capitals && has_epithet_ending(folded);
    // "Flora de la Cuenca de Xoltepec": a place.
    static constexpr std::array kWorks{"flora"sv, "fauna"sv, "flore"sv, "faune"sv};
    of_work = of_work || (is_one_of(kWorks, before) && !mentions_key(title));
    bool const place =
        (of_work && !has_strict_latin_ending(folded)) || (is_region(folded) && !says_genus(before));
    // "26 AUSELLA.": a page's number has no full stop.
    bool const numbered =
        w == 1 && words[0].ends_with('.') &&
        (is_digit(code_point_at(words[0], 0).value) ||
         (roman_number(words[0].substr(0, words[0].size() - 1), kLargestGroupNumeral) > 0));
    // "in Journ. Harrowdale Bot. Club": of a work.
    // "par Odile VERNAZET": the given name of a person whose surname is set in capitals.
    static constexpr std::array kBeforePersons{"par"sv, "by"sv, "von"sv, "por"sv,
                                               "per"sv, "et"sv, "and"sv, "&"sv,
                                               "und"sv, "y"sv,  "e"sv,   "door"sv};
    bool const given = !capitals && is_one_of(kBeforePersons, before) && w + 1 < words.size() &&
                       is_in_capitals(without_end(words[w + 1]), 3);
    // "P. ALCORZA VIDAURRE, Las especies australes", "P. ROSSIA, Note": an author.
    bool const initialled = capitals && w == 1 && is_abbreviated(words[0]) &&
                            words[0].size() == 2 &&
                            (words[w].ends_with(',') ||
                             (w + 1 < words.size() && words[w + 1].ends_with(',') &&
                              is_in_capitals(words[w + 1].substr(0, words[w + 1].size() - 1), 3)));
    bool const cited = w > 1 && !capitals && words[w - 1].ends_with('.') &&
                       words[w - 1].size() > 2 && !says_genus(before) &&
                       is_capitalised(without_closing_marks(words[w - 1])) &&
                       !is_common_before_genus(words, w - 1);
    bool const named_behind = is_common_before_genus(words, w);
    // "Merrivale": adjectives end so, and no genera.
    bool const neuter = folded.ends_with("ale") || folded.ends_with("ile") ||
                        folded.ends_with("are") || folded.ends_with("ense");
    // "Descriptions of Australian Micro-Lepidoptera"
    bool const adjective = !has_strict_latin_ending(folded) && announced && w + 1 < words.size() &&
                           is_upper(code_point_at(words[w + 1], 0).value) &&
                           (folded.ends_with("an") || folded.ends_with("ese") ||
                            folded.ends_with("ish") || folded.ends_with("ic"));
    // "TRANS. MARSH ENT. SOC.": of a journal.
    bool const journal =
        capitals && words[w].ends_with('.') && w + 2 < words.size() && abbreviations > 1;
    // "of this genus (Trans. Phil. Soc. Marsh": of a work.
    bool const begins_work = !capitals && words[w].front() == '(' && words[w].ends_with('.') &&
                             w + 1 < words.size() && words[w + 1].ends_with('.') &&
                             is_capitalised(without_closing_marks(words[w + 1]));
    // "Bl = Blatt, Fr = Frucht": abbreviations are told.
    bool const glossed = w > 0 && words[w - 1] == "=";
    auto const sign = code_point_at(words[w], 0);
    behind_dash = behind_dash || (authored_genus && is_dash(sign.value) &&
                                  sign.length == words[w].size() && !mentions_key(title));
    bool const common = behind_dash && !capitals && !(authored && has_strict_latin_ending(folded));
    bool const candidate = genus.size() >= 3 && !is_title_word(folded) && likely && !family &&
                           !numeral && !genitive && !section && !epithet && !given && !initialled &&
                           !cited && !journal && !begins_work && !glossed && !common &&
                           !named_behind && !adjective && !place && !(neuter && !announced) &&
                           (latin || announced);
    bool const opens = w == 0 || (w == 1 && is_digit(code_point_at(words[0], 0).value));
    authored_genus = authored_genus || (candidate && opens && authored);
    species = (epithet || (candidate && opens && capitals)) && !ends_item(words[w]);
    if (candidate) {
      auto const next = w + 1 < words.size() ? words[w + 1] : std::string_view{};
      bool const several =
          next == "spp." || next == "sp." || words[w].find("-Art") != std::string_view::npos;
      int weight = latin ? 1 : 0;
      if (has_strict_latin_ending(folded)) weight += 3;
      if (says_genus(before)) weight += 8;
      if (announced) weight += 3;
      if (authored && !is_title_word(fold(next))) weight += 3;
      if (several) weight += 3;
      if (opens && capitals && next.starts_with('(')) weight += 3;  // "AUS (after Dr. Roe)"
      if (w > 0 && is_common_before_genus(words, w - 1)) weight += 6;
      if (numbered && capitals && next.empty()) weight += 6;  // "7. AUS", "XXII. AUS."
      if (before == "to" && next.empty()) weight += 2;        // "Key to Aus"
      if (bracketed) weight -= 2;
      found.push_back({genus, weight});
    }
    // "generis Quorbae": of Quorba, as the first declension has it.
    constexpr std::size_t kShortestGenitive = 5;  // letters
    if (before == "generis" && folded.ends_with("ae") && folded.size() >= kShortestGenitive) {
      constexpr int kSaidSo = 12;
      found.push_back({genus.substr(0, genus.size() - 1), kSaidSo});
    }
    if (words[w].find(')') != std::string_view::npos) bracketed = false;
    before = folded;
  }
  return found;
}

}  // namespace keydrift::printed
