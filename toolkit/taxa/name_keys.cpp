#include <algorithm>

#include "keydrift/taxa/name_text.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

enum class Gender { kept, folded };

std::string epithet_key(std::string_view epithet, Marks marks, Gender gender) {
  auto const folded = folded_word(epithet, marks);
  return gender == Gender::folded ? gender_stem(folded) : folded;
}

// Ranks that make another name; a trinomen without a rank word is read as a subspecies
// (ICZN 5.2; common practice in checklists of plants).
std::string_view rank_part(std::string_view rank) {
  return rank == "subspecies" ? std::string_view{} : rank;
}

std::string key_of(ParsedName const& name, Marks marks, Gender gender) {
  std::string key;
  auto const join = [&](std::string_view part) {
    if (part.empty()) return;
    if (!key.empty()) key += ' ';
    key += part;
  };
  auto genus = folded_word(name.genus, marks);
  // An abbreviation never equals a genus spelled out.
  if (!genus.empty() && name.genus.ends_with('.')) genus += '.';
  join(genus);
  join(epithet_key(name.species, marks, gender));
  join(rank_part(name.rank));
  if (name.species.empty() && !name.rank.empty()) {
    join(folded_word(name.subgenus, marks));
  } else if (name.rank == "cultivar") {
    join(folded_word(name.infraspecies, marks));
  } else {
    join(epithet_key(name.infraspecies, marks, gender));
  }
  return key;
}

std::string whole_key(ParsedName const& name, Marks marks, Gender gender) {
  auto const& rest = name.other_parent;
  auto key = key_of(name, marks, gender);
  if (rest.empty()) return key;
  // A formula is an unordered set of parents (ICN H.2.1).
  static constexpr std::string_view kBetween = " \xC3\x97 ";
  std::vector<std::string> parents{std::move(key)};
  for (std::size_t begin = 0; begin <= rest.size();) {
    auto const end = std::min(rest.find(kBetween, begin), rest.size());
    parents.push_back(key_of(parse_name(rest.substr(begin, end - begin)), marks, gender));
    begin = end + kBetween.size();
  }
  std::sort(parents.begin(), parents.end());
  std::string joined;
  for (auto const& parent : parents) joined += (joined.empty() ? "" : " x ") + parent;
  return joined;
}

std::vector<std::string> keys_of(ParsedName const& name, Gender gender) {
  std::vector<std::string> keys{whole_key(name, Marks::transcribed, gender)};
  bool const plain = ascii(name.genus) && ascii(name.subgenus) && ascii(name.species) &&
                     ascii(name.infraspecies) && ascii(name.other_parent);
  if (!plain) {
    auto other = whole_key(name, Marks::dropped, gender);
    if (other != keys.front()) keys.push_back(std::move(other));
  }
  keys.erase(std::remove(keys.begin(), keys.end(), std::string{}), keys.end());
  return keys;
}

}  // namespace

std::string name_key(std::string_view name) {
  return whole_key(parse_name(name), Marks::transcribed, Gender::folded);
}

std::string spelling_key(std::string_view name) {
  return whole_key(parse_name(name), Marks::transcribed, Gender::kept);
}

std::vector<std::string> name_keys(ParsedName const& name) { return keys_of(name, Gender::folded); }
std::vector<std::string> name_keys(std::string_view name) { return name_keys(parse_name(name)); }

std::vector<std::string> spelling_keys(ParsedName const& name) {
  return keys_of(name, Gender::kept);
}
std::vector<std::string> spelling_keys(std::string_view name) {
  return spelling_keys(parse_name(name));
}

}  // namespace keydrift
