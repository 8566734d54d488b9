#include "keydrift/taxa/placement.hpp"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include "keydrift/taxa/name_text.hpp"
#include "keydrift/taxa/name_tokens.hpp"
#include "keydrift/taxa/names.hpp"
#include "keydrift/taxa/taxon_table.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

// "some species of Aus", "the genus Aus": what an exception says around the name.
std::string_view without_quantity(std::string_view group) {
  static constexpr std::array<std::string_view, 23> kWords{
      "some", "a few",   "few",       "many",         "most",       "all",
      "the",  "certain", "genus",     "species of",   "members of", "forms of",
      "of",   "family",  "subfamily", "species",      "tribe",      "both",
      "in",   "rarely",  "group",     "specimens of", "several"};
  for (bool again = true; again;) {
    again = false;
    auto const low = lowered(group.substr(0, 16));
    for (auto const word : kWords) {
      if (low.starts_with(word) && group.size() > word.size() && group[word.size()] == ' ') {
        group.remove_prefix(word.size() + 1);
        again = true;
        break;
      }
    }
  }
  return group;
}

}  // namespace

NameIndex::NameIndex(Edition const& edition, ParentTable const& parents)
    : table_{edition}, near_{table_.plain_names()} {
  for (auto const& row : parents.rows) {
    auto const above_keys = name_keys(table_.expanded(row.parent));
    for (auto const& child : name_keys(table_.expanded(row.taxon))) {
      for (auto const& key : above_keys) parents_.emplace_back(child, key);
    }
  }
  std::sort(parents_.begin(), parents_.end());
  parents_.erase(std::unique(parents_.begin(), parents_.end()), parents_.end());

  auto const add_ancestors = [&](TaxonId taxon, std::vector<std::string> const& keys,
                                 std::string_view subgenus, std::string const& name,
                                 bool by_synonym) {
    for (auto& step : ladder(keys, subgenus)) {
      ancestors_.push_back({.key = std::move(step.key),
                            .taxon = taxon,
                            .how = step.by_table ? "above " + name + " by the parent table"
                                                 : "above " + name + " by its name",
                            .authorship = {},
                            .by_synonym = by_synonym});
    }
  };
  for (std::uint32_t i = 0; i < table_.rows().size(); ++i) {
    auto const& row = table_.rows()[i];
    add_ancestors(TaxonId{i}, row.keys, row.parsed.subgenus, row.plain, false);
  }
  for (auto const& entry : edition.front.synonyms) {
    auto const accepted = table_.find(entry.accepted);
    if (!accepted) continue;
    auto const& row = table_[*accepted];
    auto const name = table_.expanded(with_genus(entry.synonym, row.parsed.genus));
    auto const keys = name_keys(name);
    for (auto const& key : keys) {
      synonyms_.push_back({.key = key,
                           .taxon = *accepted,
                           .how = "synonym of " + row.plain,
                           .authorship = parse_name(name).authorship,
                           .by_synonym = true});
    }
    add_ancestors(*accepted, keys, {}, plain_name(name) + ", synonym of " + row.plain + ",", true);
  }
  auto const by_key = [](Entry const& a, Entry const& b) {
    return std::tie(a.key, a.by_synonym, a.taxon) < std::tie(b.key, b.by_synonym, b.taxon);
  };
  std::stable_sort(synonyms_.begin(), synonyms_.end(), by_key);
  std::stable_sort(ancestors_.begin(), ancestors_.end(), by_key);
}

std::vector<NameIndex::Step> NameIndex::ladder(std::vector<std::string> keys,
                                               std::string_view subgenus) const {
  std::vector<Step> steps;
  std::vector<std::string> seen = keys;
  auto const own = keys.size();
  auto const take = [&](std::string key, bool by_table) {
    if (key.empty() || std::find(seen.begin(), seen.end(), key) != seen.end()) return;
    seen.push_back(key);
    keys.push_back(key);
    steps.push_back({.key = std::move(key), .by_table = by_table});
  };
  // Breadth first; a table that runs in a circle ends when nothing new comes.
  for (std::size_t at = 0; at < keys.size(); ++at) {
    auto const key = keys[at];
    auto row = std::lower_bound(parents_.begin(), parents_.end(), std::pair{key, std::string{}});
    for (; row != parents_.end() && row->first == key; ++row) take(row->second, true);
    auto const genus_end = key.find(' ');
    if (genus_end == std::string::npos) continue;
    auto const species_end = key.find(' ', genus_end + 1);
    bool const aggregate = key.ends_with(" aggregate");
    if (species_end != std::string::npos && !aggregate) take(key.substr(0, species_end), false);
    if (!aggregate) take(key.substr(0, species_end) + " aggregate", false);
    auto const genus = key.substr(0, genus_end);
    if (at < own && initial_of(subgenus) == Initial::capital) {
      take(name_key(genus + " subg. " + std::string{subgenus}), false);
    }
    take(genus, false);
  }
  return steps;
}

NameIndex::Entry const* NameIndex::synonym(std::vector<std::string> const& keys,
                                           std::string_view authorship) const {
  for (auto const& key : keys) {
    auto at =
        std::lower_bound(synonyms_.begin(), synonyms_.end(), key,
                         [](Entry const& entry, std::string const& k) { return entry.key < k; });
    for (; at != synonyms_.end() && at->key == key; ++at) {
      if (same_authorship(at->authorship, authorship)) return &*at;
    }
  }
  return nullptr;
}

std::vector<TaxonId> NameIndex::above(std::vector<std::string> const& keys,
                                      std::string* how) const {
  std::vector<TaxonId> taxa;
  for (auto const& key : keys) {
    auto at =
        std::lower_bound(ancestors_.begin(), ancestors_.end(), key,
                         [](Entry const& entry, std::string const& k) { return entry.key < k; });
    for (; at != ancestors_.end() && at->key == key; ++at) {
      // A genus that terminals were moved out of still means those that stayed, if any did.
      if (at->by_synonym && !taxa.empty()) break;
      if (how != nullptr && taxa.empty()) *how = at->how;
      taxa.push_back(at->taxon);
      if (at->by_synonym) {
        while (std::next(at) != ancestors_.end() && std::next(at)->key == key) {
          taxa.push_back((++at)->taxon);
        }
      }
    }
  }
  std::sort(taxa.begin(), taxa.end());
  taxa.erase(std::unique(taxa.begin(), taxa.end()), taxa.end());
  return taxa;
}

std::optional<Placement> NameIndex::finer(std::vector<std::string> const& keys,
                                          std::string_view subgenus) const {
  for (auto const& step : ladder(keys, subgenus)) {
    auto const& same = table_.with_key(step.key);
    auto const* entry = same.empty() ? synonym({step.key}, {}) : nullptr;
    if (same.empty() && entry == nullptr) continue;
    auto const taxon = same.empty() ? entry->taxon : same.front();
    auto how =
        "within " + table_[taxon].plain + (step.by_table ? " by the parent table" : " by its name");
    if (entry != nullptr) how += ", " + entry->how;
    return Placement{
        .kind = PlacementKind::finer, .taxa = {taxon}, .how = std::move(how), .near = {}};
  }
  return std::nullopt;
}

Placement NameIndex::place(std::string_view name) const {
  auto const found = table_.all(name);
  if (auto const taxon = table_.find(name)) {
    auto const& plain = table_[*taxon].plain;
    return {.kind = PlacementKind::exact,
            .taxa = {*taxon},
            .how = plain == plain_name(name) ? "same name" : "another spelling of " + plain,
            .near = {}};
  }
  Placement none;
  if (found.size() > 1) {
    for (auto const taxon : found) none.near.push_back(table_[taxon].plain);
    none.how = "the abbreviated genus fits several terminals";
    return none;
  }
  auto const full = table_.expanded(name);
  auto const parsed = parse_name(full);
  auto const keys = name_keys(full);
  if (auto const* entry = synonym(keys, parsed.authorship)) {
    return {.kind = PlacementKind::exact, .taxa = {entry->taxon}, .how = entry->how, .near = {}};
  }
  for (auto const& key : keys) {
    auto const& same = table_.with_key(key);
    if (same.empty()) continue;
    none.near.push_back(table_[same.front()].plain);
    auto const& terminal = table_[same.front()];
    bool const misapplied =
        sense_of(parsed) == Sense::misapplied && terminal.sense != Sense::misapplied;
    none.how = misapplied ? "it was misapplied, and " + terminal.full + " is not what is meant"
                          : "the author is not that of " + terminal.full;
    return none;
  }
  if (auto placed = finer(keys, parsed.subgenus)) return *std::move(placed);
  std::string how;
  if (auto taxa = above(keys, &how); !taxa.empty()) {
    return {.kind = PlacementKind::coarser, .taxa = std::move(taxa), .how = how, .near = {}};
  }
  none.near = near_.find(full);
  return none;
}

std::vector<TaxonId> NameIndex::members(std::string_view group) const {
  auto const clean = cleaned_name(group);
  auto const full = table_.expanded(without_quantity(clean));
  auto const parsed = parse_name(full);
  auto const keys = name_keys(full);
  auto taxa = above(keys, nullptr);
  for (auto const& key : keys) {
    auto const& same = table_.with_key(key);
    taxa.insert(taxa.end(), same.begin(), same.end());
  }
  if (taxa.empty()) taxa = table_.all(full);
  if (taxa.empty()) {
    if (auto const* entry = synonym(keys, parsed.authorship)) taxa = {entry->taxon};
  }
  if (taxa.empty()) {
    if (auto const placed = finer(keys, parsed.subgenus)) taxa = placed->taxa;
  }
  if (taxa.empty() && parsed.genus_only && initial_of(parsed.genus) == Initial::small) {
    taxa = table_.with_epithet(parsed.genus);
  }
  std::sort(taxa.begin(), taxa.end());
  taxa.erase(std::unique(taxa.begin(), taxa.end()), taxa.end());
  return taxa;
}

}  // namespace keydrift
