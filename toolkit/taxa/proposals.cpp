// Names that are left over on both sides and look alike: told, never applied.

#include <algorithm>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/taxa/matching_parts.hpp"
#include "keydrift/taxa/name_text.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

// A bucket with more names than this tells nothing about any of them.
constexpr std::size_t kLargestBucket = 64;

// Keys such that names of tiers 4 to 6 share at least one: by variant classes, by the last
// epithet's stem, and by each way to drop a letter (which finds one edit and an exchange).
std::vector<std::string> likeness_keys(ParsedName const& name) {
  std::vector<std::string> keys;
  auto const fold = [](std::string_view word) { return folded_word(word, Marks::transcribed); };
  auto const genus = fold(name.genus);
  auto const species = fold(name.species);
  auto const below = fold(name.infraspecies);
  if (species.empty()) return keys;
  keys.push_back("v " + variant_stem(genus, false) + " " + variant_stem(species, true) + " " +
                 variant_stem(below, true));
  keys.push_back("e " + gender_stem(fold(last_epithet(name))));
  auto const drop_one = [&](std::string const& before, std::string const& word,
                            std::string const& behind) {
    // Below five letters every edit makes another word; far above, no name is that long.
    if (word.size() < 5 || word.size() > 40) return;
    for (std::size_t i = 0; i <= word.size(); ++i) {
      auto key = "d " + before + "|" + word + "|" + behind;
      if (i < word.size()) key.erase(before.size() + 3 + i, 1);
      keys.push_back(std::move(key));
    }
  };
  drop_one("", genus, species + " " + below);
  drop_one(genus, species, below);
  if (!below.empty()) drop_one(genus + " " + species, below, "");
  std::sort(keys.begin(), keys.end());
  keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
  return keys;
}

char const* likeness_words(NameLikeness likeness) {
  switch (likeness) {
    case NameLikeness::variant:
      return "their spellings are variants of one another";
    case NameLikeness::recombination:
      return "the last epithet is the same";
    case NameLikeness::misprint:
      return "they differ by a letter or two";
    case NameLikeness::identical:
    case NameLikeness::spelling:
    case NameLikeness::gender:
    case NameLikeness::different:
      break;
  }
  return "";
}

// All but how the two are alike, which the message ends in.
Finding proposal(Edition const& old_edition, Edition const& new_edition, TaxonTable const& old,
                 TaxonTable const& new_table, TaxonId o, TaxonId n) {
  auto const& a = old[o].plain;
  auto const& b = new_table[n].plain;
  Finding finding;
  finding.code = "likely-same-taxon";
  finding.severity = Severity::information;
  finding.file = new_edition.name;
  finding.place = new_edition[n].place;
  finding.printed = new_table[n].full;
  finding.message =
      "\"" + a + "\" of the old edition and \"" + b + "\" of the new one may be one taxon: ";
  finding.remedy = "if they are, add the row " + a + ",congruent," + b + " to the concept map";
  finding.related.push_back(
      {.place = old_edition[o].place, .message = "\"" + a + "\" in " + old_edition.name});
  return finding;
}

}  // namespace

std::string how_spelled(std::string_view a, std::string_view b) {
  auto const likeness = compare_names(a, b);
  std::string const how = likeness == NameLikeness::gender ? "gender ending" : "spelling";
  return how + ": \"" + std::string{a} + "\" and \"" + std::string{b} + "\"";
}

void propose_likely_matches(Edition const& old_edition, Edition const& new_edition,
                            TaxonTable const& old, TaxonTable const& new_table,
                            TaxonMatching& matching) {
  std::unordered_map<std::string, std::vector<TaxonId>> buckets;
  for (auto const n : matching.only_new) {
    for (auto& key : likeness_keys(new_table[n].parsed)) buckets[std::move(key)].push_back(n);
  }
  std::unordered_set<std::uint64_t> apart;  // pairs that the map calls disjoint
  for (auto const& match : matching.matches) {
    if (match.relation != Relation::disjoint) continue;
    apart.insert((std::uint64_t{match.old_taxon.index} << 32) | match.new_taxon.index);
  }
  for (auto const o : matching.only_old) {
    std::vector<TaxonId> candidates;
    for (auto const& key : likeness_keys(old[o].parsed)) {
      auto const found = buckets.find(key);
      if (found == buckets.end() || found->second.size() > kLargestBucket) continue;
      candidates.insert(candidates.end(), found->second.begin(), found->second.end());
    }
    std::sort(candidates.begin(), candidates.end());
    candidates.erase(std::unique(candidates.begin(), candidates.end()), candidates.end());
    auto best = std::pair{NameLikeness::different, TaxonId{}};
    for (auto const n : candidates) {
      if (apart.contains((std::uint64_t{o.index} << 32) | n.index)) continue;
      auto const likeness = compare_names(old[o].full, new_table[n].full);
      bool const proposed = likeness == NameLikeness::variant ||
                            likeness == NameLikeness::recombination ||
                            likeness == NameLikeness::misprint;
      if (proposed && likeness < best.first) best = {likeness, n};
    }
    if (best.first == NameLikeness::different) continue;
    auto finding = proposal(old_edition, new_edition, old, new_table, o, best.second);
    finding.message += likeness_words(best.first);
    matching.findings.push_back(std::move(finding));
  }
}

}  // namespace keydrift
