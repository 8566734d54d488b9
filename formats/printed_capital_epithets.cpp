#include "keydrift/formats/printed_capital_epithets.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_numbered_species.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFewestGenusless = 3;      // epithets without genus that make a habit
constexpr std::size_t kShortestCapitalWord = 5;  // bytes of a word
constexpr std::size_t kShortestAfterPerson = 4;  // of "Reyi"
constexpr int kSureGenusInTitle = 6;             // as genera_in_title() weighs it

template <std::size_t N>
bool ends_in_one_of(std::string_view word, std::array<std::string_view, N> const& endings) {
  return std::any_of(endings.begin(), endings.end(),
                     [word](std::string_view ending) { return word.ends_with(ending); });
}

// The epithet that the reading's first word may be: "Smithi" of "Smithi Roe".
std::string_view capital_epithet(TaxonReading const& taxon) {
  constexpr std::size_t kMostWords = 2;  // the second is an author's name
  if (taxon.genusless || taxon.literal) return {};
  auto const words = words_of(taxon.name);
  if (words.empty() || words.size() > kMostWords) return {};
  if (words.size() == kMostWords && !is_capitalised(words[1])) return {};
  auto const first = words[0];
  bool const genitive =
      is_capitalised(first) && first.size() >= kShortestAfterPerson && first.ends_with('i');
  // "Dornakoides": after another name.
  bool const like = is_capitalised(first) && words.size() == 1 && first.ends_with("oides");
  // "Ganglensis Roe": after a place.
  bool const place = is_capitalised(first) && first.ends_with("ensis");
  return genitive || like || place || is_epithet_of_person(first) ? first : std::string_view{};
}

}  // namespace

bool is_epithet_of_person(std::string_view word) {
  static constexpr std::array kEndings{"ii"sv,   "ae"sv,    "iana"sv,  "ianus"sv,
                                       "yana"sv, "ianum"sv, "yanus"sv, "yanum"sv,
                                       "eana"sv, "eanus"sv, "eanum"sv};
  static constexpr std::array kHigher{"idae"sv, "inae"sv, "aceae"sv, "oideae"sv};
  return word.size() >= kShortestCapitalWord && is_capitalised(word) &&
         ends_in_one_of(word, kEndings) && !ends_in_one_of(word, kHigher);
}

namespace {

// The one taxon that a lead leads to, printed as a word in capitals; nullptr for other leads.
TaxonReading* lone_in_capitals(ReadLead& read) {
  if (read.to.form != DestinationForm::taxa || read.to.taxa.taxa.size() != 1) return nullptr;
  auto& taxon = read.to.taxa.taxa.front();
  auto words = words_of(read.lead.destination_printed);
  // "1092. BUSA."
  bool const numbered = words.size() > 1 && words.front().ends_with('.') &&
                        is_digit(code_point_at(words.front(), 0).value);
  if (numbered) words.erase(words.begin());
  bool const capitals =
      !words.empty() && is_in_capitals(without_closing_marks(words.front()), kShortestCapitalWord);
  bool const lone = !taxon.genusless && taxon.name.find(' ') == std::string::npos;
  return capitals && lone ? &taxon : nullptr;
}

// "BUSA, 1894." between "ausa, 1893." and "cusa, 1895.": the numbers count species.
void take_capitals_in_series(std::vector<ReadLead>& reads) {
  std::unordered_set<std::uint32_t> epithets;  // numbers of ends that leave the genus out
  for (auto const& read : reads) {
    auto const& taxa = read.to.taxa.taxa;
    bool const epithet =
        read.to.form == DestinationForm::taxa && taxa.size() == 1 && taxa.front().genusless;
    if (auto const number = species_number_at(read.lead.destination_printed);
        epithet && number > 0) {
      epithets.insert(number);
    }
  }
  if (epithets.size() < kFewestGenusless) return;
  auto const [least, most] = std::minmax_element(epithets.begin(), epithets.end());
  std::vector<TaxonReading*> capitals;
  for (auto& read : reads) {
    auto const number = species_number_at(read.lead.destination_printed);
    auto* taxon = lone_in_capitals(read);
    // The first of a series and the last stand beside others of it.
    if (taxon != nullptr && number + 1 >= *least && number <= *most + 1) capitals.push_back(taxon);
  }
  for (auto* taxon : capitals) {
    taxon->name = fold(taxon->name);
    taxon->genusless = true;
    if (is_year(taxon->authorship)) taxon->authorship.clear();  // the number, "busa, 1894"
  }
}

// "BUSA CUSA, 18a." where another lead leads to "BUSA, 18.": its subspecies.
void take_subspecies_in_capitals(std::vector<ReadLead>& reads) {
  std::unordered_set<std::string> species;
  for (auto& read : reads) {
    auto const* taxon = lone_in_capitals(read);
    bool const alone =
        taxon != nullptr && (taxon->authorship.empty() || is_year(taxon->authorship));
    if (alone) species.insert(fold(taxon->name));
  }
  if (species.empty()) return;
  for (auto& read : reads) {
    auto* taxon = lone_in_capitals(read);
    if (taxon == nullptr || !species.contains(fold(taxon->name))) continue;
    auto const words = words_of(taxon->authorship);
    auto const epithet = words.empty() ? std::string{} : std::string{without_end(words.front())};
    if (!is_in_capitals(epithet, kShortestCapitalWord) || !has_epithet_ending(fold(epithet))) {
      continue;
    }
    taxon->name = fold(taxon->name) + " " + fold(epithet);
    taxon->authorship.clear();
    taxon->genusless = true;
  }
}

}  // namespace

void take_capital_epithets(std::vector<ReadLead>& reads) {
  take_subspecies_in_capitals(reads);
  take_capitals_in_series(reads);
  std::size_t epithets = 0;
  std::size_t others = 0;
  std::vector<TaxonReading*> capitals;
  for (auto& read : reads) {
    if (read.to.form != DestinationForm::taxa) continue;
    for (auto& taxon : read.to.taxa.taxa) {
      if (taxon.genusless) {
        ++epithets;
      } else if (!capital_epithet(taxon).empty()) {
        capitals.push_back(&taxon);
      } else {
        ++others;
      }
    }
  }
  if (epithets < kFewestGenusless || others * 3 > epithets || capitals.size() > epithets) return;
  for (auto* taxon : capitals) {
    auto const words = words_of(taxon->name);
    if (words.size() == 2 && taxon->authorship.empty()) taxon->authorship = words[1];
    taxon->name = fold(words[0]);
    taxon->genusless = true;
  }
}

bool are_capitals_epithets(std::vector<ReadLead> const& reads,
                           std::vector<std::string> const& titles,
                           std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewestCapitals = 3;
  constexpr std::size_t kOneIn = 8;          // may be read otherwise
  constexpr std::size_t kWordsOfAGenus = 4;  // with its number and author
  auto const of_species = [](std::string const& title) {
    static constexpr std::array kWords{"species"sv, "espèces"sv,   "especies"sv, "espécies"sv,
                                       "arten"sv,   "specierum"sv, "specie"sv,   "soorten"sv};
    auto const words = words_of(title);
    return std::any_of(words.begin(), words.end(), [](std::string_view word) {
      return is_one_of(kWords, fold(without_closing_marks(word)));
    });
  };
  auto const says_higher = [](std::string const& title) {
    static constexpr std::array kHigher{
        "genera"sv,     "families"sv,   "gattungen"sv,   "familien"sv,       "genres"sv,
        "familles"sv,   "géneros"sv,    "familias"sv,    "gêneros"sv,        "famílias"sv,
        "generi"sv,     "famiglie"sv,   "generum"sv,     "orders"sv,         "tribes"sv,
        "subgenera"sv,  "sections"sv,   "subfamilies"sv, "untergattungen"sv, "sous-genres"sv,
        "subgéneros"sv, "subgêneros"sv, "sottogeneri"sv, "sektionen"sv,      "sectionum"sv,
        "secciones"sv,  "seções"sv,     "sezioni"sv,     "groups"sv,         "gruppen"sv,
        "groupes"sv,    "grupos"sv,     "gruppi"sv,      "tribus"sv,         "ordnungen"sv,
        "subgenerum"sv};
    auto const words = words_of(title);
    return std::any_of(words.begin(), words.end(), [](std::string_view word) {
      return is_one_of(kHigher, fold(without_closing_marks(word)));
    });
  };
  auto const of_genus = [&says_higher](std::string const& title) {
    auto const words = words_of(title);
    auto const genera = genera_in_title(title);
    bool const sure = std::any_of(genera.begin(), genera.end(), [](TitleGenus const& genus) {
      return genus.weight >= kSureGenusInTitle;
    });
    // "114. AUS, Roe." alone: what is in a genus is its species.
    return !says_higher(title) && (mentions_key(title) || words.size() <= kWordsOfAGenus) && sure;
  };
  // "612. AUS Roe." above the key.
  auto const of_account = [&reads, &lines] {
    if (reads.empty()) return false;
    auto const first = std::find_if(lines.begin(), lines.end(), [&reads](SourceLine const& line) {
      return line.number == reads.front().lead.place.line;
    });
    auto const head = group_head_above(lines, static_cast<std::size_t>(first - lines.begin()), 0);
    return head && head->sure && !head->genus.empty();
  };
  // "331. AUS BUS, Roe." beneath the key, where a lead leads to BUS.
  auto const accounts_name_epithets = [&reads, &lines] {
    std::unordered_set<std::string> led;
    for (auto const& read : reads) {
      for (auto const& taxon : read.to.taxa.taxa) led.insert(fold(taxon.name));
    }
    return std::any_of(lines.begin(), lines.end(), [&led](SourceLine const& line) {
      auto const words = words_of(start_of(line.text, 80), 3);
      if (words.size() < 3 || !is_digit(code_point_at(words[0], 0).value)) return false;
      auto const epithet = without_closing_marks(words[2]);
      return words[0].ends_with('.') && is_in_capitals(words[1]) && is_in_capitals(epithet) &&
             led.contains(fold(epithet));
    });
  };
  // "Key to the genera" above all: "Genus AUS" is then the account of one.
  bool const genera = std::any_of(titles.begin(), titles.end(), [&](std::string const& title) {
    return mentions_key(title) && says_higher(title);
  });
  bool const in_account = !genera && of_account();
  // The accounts that follow such a key may speak of species.
  bool const titled = std::any_of(titles.begin(), titles.end(), [&](std::string const& title) {
    return of_species(title) && (!genera || mentions_key(title));
  });
  bool const species =
      titled || in_account || (!genera && std::any_of(titles.begin(), titles.end(), of_genus));
  if (!species && (genera || !accounts_name_epithets())) return false;
  // "Quadripustulata." beneath "Genre Aus, Roe.", and nothing that speaks of groups.
  bool const account = in_account && std::none_of(titles.begin(), titles.end(), says_higher);
  std::size_t capitals = 0;
  std::size_t small = 0;
  std::size_t others = 0;
  for (auto const& read : reads) {
    for (auto const& taxon : read.to.taxa.taxa) {
      if (read.to.form != DestinationForm::taxa) continue;
      auto const first = without_closing_marks(words_of(read.lead.destination_printed).front());
      if (taxon.genusless && is_in_capitals(first, kShortestCapitalWord)) {  // "BUSA CUSA, 18a."
        ++capitals;
        continue;
      }
      if (taxon.genusless) {  // "busa, 17", set small as few are
        ++small;
        continue;
      }
      bool const lone = taxon.name.find(' ') == std::string::npos && !taxon.name.empty() &&
                        !taxon.genusless && !taxon.literal;
      bool const capital = is_in_capitals(first) || (account && has_strict_latin_ending(first));
      if (!lone || !is_plain_word(first) || fold(first) != fold(taxon.name) || !capital) {
        ++others;
      } else {
        ++capitals;
      }
    }
  }
  return capitals >= kFewestCapitals && small * 3 <= capitals && others * kOneIn <= capitals;
}

}  // namespace keydrift::printed
