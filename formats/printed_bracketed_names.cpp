#include "keydrift/formats/printed_bracketed_names.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestBracketed = 200;  // bytes
constexpr std::size_t kMostCommonBefore = 10;   // words of common names before a bracket

// "Aus bus, A. cus Roe": species with their genera, and nothing else.
std::vector<TaxonReading> species_in(std::string_view inside) {
  auto const first = words_of(inside, 2);
  if (first.size() < 2 || !is_latin_name(inside.substr(0, inside.find_first_of(",;&")))) {
    // "Aus bus or A. cus"
    bool const begins = first.size() == 2 && is_capitalised(first[0]) &&
                        is_epithet(without_end(first[1])) &&
                        (has_latin_ending(fold(first[0])) || is_latin_epithet(first[1]));
    if (!begins) return {};
  }
  auto reading = read_plain_taxa(inside);
  bool const species =
      reading.remark.empty() && reading.before.empty() &&
      std::all_of(reading.taxa.begin(), reading.taxa.end(), [](TaxonReading const& taxon) {
        auto const words = words_of(taxon.name);
        return words.size() >= 2 && (is_capitalised(words[0]) || is_abbreviated(words[0])) &&
               is_epithet(words[1]);
      });
  return species ? std::move(reading.taxa) : std::vector<TaxonReading>{};
}

// ", page 33, or Dusky bat": without the page of the name before.
std::string_view without_page_in_front(std::string_view text) {
  if (!text.starts_with(',')) return text;
  auto const words = words_of(text.substr(1), 3);
  if (words.size() < 3 || !is_page(words[0], words[1])) return text;
  return text.substr(static_cast<std::size_t>(words[2].data() - text.data()));
}

// "Lake Bat or Common Bat": words of which none begins a Latin name.
bool are_common_names(std::vector<std::string_view> const& words) {
  if (words.empty() || words.size() > kMostCommonBefore) return false;
  for (std::size_t w = 0; w < words.size(); ++w) {
    if (is_abbreviated(words[w])) return false;
    bool const genus = is_capitalised(words[w]) && has_strict_latin_ending(fold(words[w]));
    bool const species = w + 1 < words.size() && is_capitalised(words[w]) &&
                         is_latin_epithet(without_end(words[w + 1]));
    if (genus || species) return false;
  }
  return true;
}

}  // namespace

std::optional<TaxaReading> read_bracketed_names(std::string_view text) {
  if (text.size() > kLongestBracketed) return std::nullopt;
  TaxaReading reading;
  std::size_t begin = 0;
  std::size_t brackets = 0;
  bool joined = false;  // a word joins the common names
  for (auto open = text.find(" ("); open != text.npos; open = text.find(" (", begin)) {
    auto const close = text.find(')', open);
    if (close == text.npos) break;
    auto const before = without_page_in_front(trim(text.substr(begin, open - begin)));
    auto words = words_of(before, kMostCommonBefore + 1);
    auto species = species_in(text.substr(open + 2, close - open - 2));
    if (species.empty()) break;
    // Behind the first bracket the next common name is joined to the one before.
    bool const follows = brackets == 0 || (!words.empty() && is_separator(words.front()));
    if (!follows) break;
    if (brackets > 0) words.erase(words.begin());
    if (!are_common_names(words)) return std::nullopt;
    joined = joined || brackets > 0 ||
             std::any_of(words.begin(), words.end(),
                         [](std::string_view word) { return is_separator(word); });
    if (!reading.before.empty()) reading.before += ' ';
    reading.before += squeeze(before);
    std::move(species.begin(), species.end(), std::back_inserter(reading.taxa));
    ++brackets;
    begin = close + 1;
  }
  if (!joined || reading.taxa.size() < 2) return std::nullopt;
  auto rest = trim(text.substr(begin));
  while (!rest.empty() && (rest.front() == ',' || rest.front() == ';' || rest.front() == '.')) {
    rest = trim(rest.substr(1));
  }
  // "(Aus bus) and Bus cus": another name that no bracket holds.
  auto const further = words_of(rest, 1);
  if (!further.empty() && is_separator(further.front())) return std::nullopt;
  reading.figures = figures_in(rest);
  reading.remark = squeeze(rest);
  return reading;
}

}  // namespace keydrift::printed
