#include <algorithm>
#include <tuple>

#include "keydrift/taxa/name_text.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {
namespace {

template <class T>
bool share(std::vector<T> const& a, std::vector<T> const& b) {
  return std::any_of(a.begin(), a.end(),
                     [&](T const& x) { return std::find(b.begin(), b.end(), x) != b.end(); });
}

bool misapplied(ParsedName const& name) { return name.sensu.find("auct") != std::string::npos; }

std::string const& last_epithet(ParsedName const& name) {
  return name.infraspecies.empty() ? name.species : name.infraspecies;
}

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

std::vector<std::string> near_names(std::string_view name, std::vector<std::string> const& known,
                                    std::size_t maximum) {
  auto const key = spelling_key(name);
  auto const parsed = parse_name(name);
  auto const stem = gender_stem(folded_word(last_epithet(parsed), Marks::transcribed));
  if (key.empty() || maximum == 0) return {};
  // Beyond a quarter of its letters a name is another name, not a slip.
  auto const limit = std::clamp<std::size_t>(key.size() / 4, 2, 6);
  std::vector<std::tuple<std::size_t, std::string_view>> found;
  for (auto const& candidate : known) {
    auto const other = spelling_key(candidate);
    if (other.empty()) continue;
    auto distance = edit_distance(key, other, limit);
    // The same epithet in another genus, however different the genus reads.
    auto const blank = other.find(' ');
    if (stem.size() >= 3 && blank != std::string::npos) {
      auto const last = other.substr(other.rfind(' ') + 1);
      if (gender_stem(last) == stem && distance.value_or(limit) >= 2) distance = 2;
    }
    if (distance) found.emplace_back(*distance, candidate);
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

}  // namespace keydrift
