#include <algorithm>
#include <tuple>
#include <utility>

#include "keydrift/taxa/matching_parts.hpp"
#include "keydrift/taxa/name_text.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

template <class T>
bool share(std::vector<T> const& a, std::vector<T> const& b) {
  return std::any_of(a.begin(), a.end(),
                     [&](T const& x) { return std::find(b.begin(), b.end(), x) != b.end(); });
}

bool misapplied(ParsedName const& name) { return name.sensu.find("auct") != std::string::npos; }

// Are two words one edit (two, if long) apart?  Words of up to four letters must be equal: among
// them nearly every edit makes another word.
bool slip(std::string_view a, std::string_view b) {
  auto const shorter = std::min(a.size(), b.size());
  if (shorter < 5) return a == b;
  return edit_distance(a, b, shorter < 8 ? 1 : 2).has_value();
}

// Compound words whose connecting vowel differs: nigri- / nigro- (ICZN 58).
bool connecting_vowel(std::string_view a, std::string_view b) {
  if (a.size() != b.size() || a.size() < 7) return false;
  std::size_t differences = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] == b[i]) continue;
    bool const vowels = (a[i] == 'i' && b[i] == 'o') || (a[i] == 'o' && b[i] == 'i');
    if (!vowels || i < 3 || i + 3 >= a.size()) return false;
    ++differences;
  }
  return differences == 1;
}

bool variant_word(std::string_view a, std::string_view b, bool epithet) {
  auto const x = folded_word(a, Marks::transcribed);
  auto const y = folded_word(b, Marks::transcribed);
  return variant_stem(x, epithet) == variant_stem(y, epithet) || connecting_vowel(x, y);
}

}  // namespace

NameLikeness compare_names(std::string_view a, std::string_view b) {
  auto const x = parse_name(a);
  auto const y = parse_name(b);
  auto const keys_x = name_keys(x);
  auto const keys_y = name_keys(y);
  if (keys_x.empty() || keys_y.empty()) {
    return cleaned_name(a) == cleaned_name(b) ? NameLikeness::identical : NameLikeness::different;
  }
  if (!same_authorship(x.authorship, y.authorship) || misapplied(x) != misapplied(y)) {
    return NameLikeness::different;
  }
  if (plain_name(x) == plain_name(y)) return NameLikeness::identical;
  if (share(spelling_keys(x), spelling_keys(y))) return NameLikeness::spelling;
  if (share(keys_x, keys_y)) return NameLikeness::gender;
  bool const formula = !x.other_parent.empty() || !y.other_parent.empty();
  if (formula) return NameLikeness::different;
  bool const same_form = x.species.empty() == y.species.empty() &&
                         x.infraspecies.empty() == y.infraspecies.empty() && x.rank == y.rank;
  if (same_form && variant_word(x.genus, y.genus, false) &&
      variant_word(x.species, y.species, true) &&
      variant_word(x.infraspecies, y.infraspecies, true) && !x.species.empty()) {
    return NameLikeness::variant;
  }
  auto const stem = [](ParsedName const& name, Marks marks) {
    return gender_stem(folded_word(last_epithet(name), marks));
  };
  bool const same_stem = stem(x, Marks::transcribed) == stem(y, Marks::transcribed) ||
                         stem(x, Marks::dropped) == stem(y, Marks::dropped);
  bool const provisional = x.species.starts_with("sp. ") || y.species.starts_with("sp. ");
  if (same_stem && !last_epithet(x).empty() && !provisional && x.rank != "aggregate" &&
      y.rank != "aggregate") {
    return NameLikeness::recombination;
  }
  auto const fold = [](std::string_view word) { return folded_word(word, Marks::transcribed); };
  if (same_form && !provisional && slip(fold(x.genus), fold(y.genus)) &&
      slip(fold(x.species), fold(y.species)) && slip(fold(x.infraspecies), fold(y.infraspecies))) {
    return NameLikeness::misprint;
  }
  return NameLikeness::different;
}

NearNames::NearNames(std::vector<std::string> const& known) {
  known_.reserve(known.size());
  for (auto const& name : known) {
    Known entry{.name = name, .key = spelling_key(name), .stem = {}};
    if (entry.key.empty()) continue;
    if (auto const blank = entry.key.rfind(' '); blank != std::string::npos) {
      entry.stem = gender_stem(std::string_view{entry.key}.substr(blank + 1));
    }
    known_.push_back(std::move(entry));
  }
}

std::vector<std::string> NearNames::find(std::string_view name, std::size_t maximum) const {
  auto const parsed = parse_name(name);
  auto const key = spelling_key(name);
  if (key.empty() || maximum == 0) return {};
  auto const stem = gender_stem(folded_word(last_epithet(parsed), Marks::transcribed));
  // Beyond a quarter of its letters a name is another name, not a slip.
  auto const limit = std::clamp<std::size_t>(key.size() / 4, 2, 6);
  std::vector<std::tuple<std::size_t, std::string_view>> found;
  for (auto const& candidate : known_) {
    auto distance = edit_distance(key, candidate.key, limit);
    // The same epithet in another genus, however different the genus reads.
    bool const same_epithet = stem.size() >= 3 && candidate.stem == stem;
    if (same_epithet && distance.value_or(limit) >= 2) distance = 2;
    if (distance) found.emplace_back(*distance, candidate.name);
  }
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  std::vector<std::string> names;
  for (auto const& [distance, candidate] : found) {
    if (names.size() == maximum) break;
    names.emplace_back(candidate);
  }
  return names;
}

std::vector<std::string> near_names(std::string_view name, std::vector<std::string> const& known,
                                    std::size_t maximum) {
  return NearNames{known}.find(name, maximum);
}

}  // namespace keydrift
