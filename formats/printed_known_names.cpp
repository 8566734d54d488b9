#include "keydrift/formats/printed_known_names.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

KnownGenera::KnownGenera(std::vector<ReadLead> const& reads) {
  constexpr std::size_t kMostLetters = 3;  // of a genus that is cut short
  for (auto const& read : reads) {
    if (read.to.form != DestinationForm::taxa) continue;
    for (auto const& taxon : read.to.taxa.taxa) {
      auto const words = words_of(taxon.name);
      if (taxon.genusless || taxon.literal || words.size() < 2 || !is_epithet(words[1])) continue;
      ++species_[std::string{words[0]}];
      if (!is_capitalised(words[0])) continue;
      for (auto const& beginning : beginnings_of(words[0], kMostLetters)) {
        ++species_[beginning + "."];
      }
    }
  }
}

// All of it is names with their authors, and a remark in brackets at most.
bool KnownGenera::ends_in_names(std::string_view tail) const {
  constexpr std::size_t kLongestMark = 20;  // bytes: "in part", "sp. nov."
  auto const taxa = read_taxa(tail);
  if (!taxa.before.empty()) return false;
  bool const named = std::all_of(taxa.taxa.begin(), taxa.taxa.end(), [](TaxonReading const& taxon) {
    return !taxon.genusless && words_of(taxon.name).size() >= 2;
  });
  bool const bracketed = tail.ends_with(')') || tail.ends_with(']');
  return named && (bracketed || taxa.remark.size() <= kLongestMark);
}

std::optional<std::size_t> KnownGenera::trailing_name(std::string_view text) const {
  constexpr std::size_t kFewest = 2;      // species of a genus that is known
  constexpr std::size_t kFarthest = 200;  // bytes before the end
  auto const from = text.size() > kFarthest ? text.size() - kFarthest : 0;
  auto const blank = from == 0 ? 0 : text.find(' ', from);
  if (blank == std::string_view::npos) return std::nullopt;
  auto const words = words_of(text.substr(blank));
  std::optional<std::size_t> found;
  std::size_t listed = 0;
  for (std::size_t w = words.size(); w-- > 1;) {
    auto const known = species_.find(std::string{words[w]});
    if (known == species_.end() || known->second < kFewest || w + 1 >= words.size()) continue;
    if (!is_epithet(words[w + 1]) || is_comparing(fold(words[w - 1]))) continue;
    auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
    auto const tail = text.substr(begin);
    if (!ends_in_names(tail)) return found;
    auto const taxa = read_taxa(tail).taxa.size();
    if (taxa <= listed) return found;
    listed = taxa;
    found = begin;
  }
  return found;
}

std::optional<std::size_t> bracketed_name(std::string_view text) {
  text = trim_right(text);
  if (text.ends_with('.')) text.remove_suffix(1);
  auto const open = text.rfind(" (");
  if (!text.ends_with(')') || open == std::string_view::npos || open == 0) return std::nullopt;
  auto const inside = text.substr(open + 2, text.size() - open - 3);
  if (inside.find(')') != std::string_view::npos || !is_latin_name(inside)) return std::nullopt;
  auto const before = words_of(text.substr(0, open));
  bool const vernacular = before.size() >= 3 && is_capitalised(before.back());
  return vernacular ? std::optional{open + 1} : std::nullopt;
}

std::optional<std::size_t> explained_name(std::string_view text) {
  text = trim_right(text);
  if (text.ends_with('.')) text.remove_suffix(1);
  auto const open = text.rfind(" (");
  if (!text.ends_with(')') || open == std::string_view::npos || open == 0) return std::nullopt;
  auto const blank = text.rfind(' ', open - 1);
  if (blank == std::string_view::npos || blank == 0 || text[blank - 1] != '.') return std::nullopt;
  auto const name = text.substr(blank + 1, open - blank - 1);
  return is_latin_genus(name) ? std::optional{blank + 1} : std::nullopt;
}

}  // namespace keydrift::printed
