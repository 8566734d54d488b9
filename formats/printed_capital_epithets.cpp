#include "keydrift/formats/printed_capital_epithets.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFewest = 3;    // epithets without genus that make a habit
constexpr std::size_t kShortest = 5;  // bytes of a word

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
  bool const genitive = is_capitalised(first) && first.size() >= kShortest && first.ends_with('i');
  // "Zoufaloides": after another name.
  bool const like = is_capitalised(first) && words.size() == 1 && first.ends_with("oides");
  return genitive || like || is_epithet_of_person(first) ? first : std::string_view{};
}

}  // namespace

bool is_epithet_of_person(std::string_view word) {
  static constexpr std::array kEndings{"ii"sv,    "ae"sv,   "iana"sv,  "ianus"sv,
                                       "ianum"sv, "eana"sv, "eanus"sv, "eanum"sv};
  static constexpr std::array kHigher{"idae"sv, "inae"sv, "aceae"sv, "oideae"sv};
  return word.size() >= kShortest && is_capitalised(word) && ends_in_one_of(word, kEndings) &&
         !ends_in_one_of(word, kHigher);
}

void take_capital_epithets(std::vector<ReadLead>& reads) {
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
  if (epithets < kFewest || others * 3 > epithets || capitals.size() > epithets) return;
  for (auto* taxon : capitals) {
    auto const words = words_of(taxon->name);
    if (words.size() == 2 && taxon->authorship.empty()) taxon->authorship = words[1];
    taxon->name = fold(words[0]);
    taxon->genusless = true;
  }
}

}  // namespace keydrift::printed
