#include "keydrift/taxa/taxon_table.hpp"

#include <algorithm>
#include <set>

#include "keydrift/key/side_by_side.hpp"
#include "keydrift/taxa/name_text.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

bool abbreviated(std::string_view genus) { return genus.size() > 1 && genus.ends_with('.'); }

std::string epithets_of(std::string const& key) {
  auto const blank = key.find(' ');
  return blank == std::string::npos ? std::string{} : key.substr(blank + 1);
}

// Does the genus begin with the abbreviation, marks and case aside?
bool short_for(std::string_view abbreviation, std::string_view genus) {
  auto const begin = folded_word(abbreviation, Marks::dropped);
  return !begin.empty() && folded_word(genus, Marks::dropped).starts_with(begin);
}

// What follows from the name once its genus is written out.
void complete(TaxonRow& row) {
  row.plain = plain_name(row.parsed);
  row.keys = name_keys(row.parsed);
  row.sense = sense_of(row.parsed);
}

}  // namespace

Sense sense_of(ParsedName const& name) {
  auto const& said = name.sensu;
  auto const says = [&](std::string_view word) { return said.find(word) != std::string::npos; };
  if (says("auct")) return Sense::misapplied;
  if (says("s. l") || says("s.l") || says("lato") || says("s. ampl") || says("s.ampl")) {
    return Sense::wide;
  }
  if (says("s. str") || says("s.str") || says("stricto") || says("s. s.") || says("s.s.")) {
    return Sense::narrow;
  }
  return Sense::plain;
}

std::vector<std::string> containing_names(ParsedName const& name) {
  std::vector<std::string> names;
  if (name.genus.empty() || !name.other_parent.empty()) return names;
  bool const aggregate = name.rank == "aggregate";
  if (!name.species.empty()) {
    auto const species = name.genus + " " + name.species;
    if (!name.infraspecies.empty()) names.push_back(species);
    if (!aggregate) names.push_back(species + " agg.");
    bool const printed_subgenus =
        !name.subgenus.empty() && initial_of(name.subgenus) == Initial::capital;
    if (printed_subgenus) names.push_back(name.genus + " subg. " + name.subgenus);
    names.push_back(name.genus);
  } else if (!name.rank.empty()) {
    names.push_back(name.genus);
  }
  return names;
}

std::string with_genus(std::string_view name, std::string_view genus) {
  auto const parsed = parse_name(name);
  if (!abbreviated(parsed.genus) || !short_for(parsed.genus, genus)) return std::string{name};
  auto const clean = cleaned_name(name);
  auto const at = clean.find(parsed.genus);
  if (at == std::string::npos) return std::string{name};
  bool const glued =
      at + parsed.genus.size() < clean.size() && clean[at + parsed.genus.size()] != ' ';
  return clean.substr(0, at) + std::string{genus} + (glued ? " " : "") +
         clean.substr(at + parsed.genus.size());
}

TaxonTable::TaxonTable(Edition const& edition) : rows_(edition.taxa.size()) {
  // With fewer names another thread is not worth its start.
  constexpr std::size_t worth_a_thread = 500;
  in_parts(rows_.size(), worth_a_thread, [&](std::size_t begin, std::size_t end) {
    for (auto i = begin; i < end; ++i) {
      auto const& taxon = edition.taxa[i];
      auto& row = rows_[i];
      row.parsed = parse_name(taxon.name);
      row.authorship = taxon.authorship.empty() ? row.parsed.authorship : taxon.authorship;
      row.full = taxon.authorship.empty() ? taxon.name : taxon.name + " " + taxon.authorship;
      if (!abbreviated(row.parsed.genus)) complete(row);
    }
  });
  std::set<std::string> genera;
  for (auto const& row : rows_) {
    if (!abbreviated(row.parsed.genus)) genera.insert(row.parsed.genus);
  }
  genera_.assign(genera.begin(), genera.end());
  for (std::uint32_t i = 0; i < rows_.size(); ++i) {
    auto& row = rows_[i];
    // The genus is looked for among the names in front.
    if (abbreviated(row.parsed.genus)) {
      row.parsed = parse_name(expanded(edition.taxa[i].name));
      complete(row);
    }
    add(TaxonId{i});
  }
}

void TaxonTable::add(TaxonId taxon) {
  for (auto const& key : rows_[taxon.index].keys) {
    by_key_[key].push_back(taxon);
    if (auto epithets = epithets_of(key); !epithets.empty()) {
      by_epithets_[std::move(epithets)].push_back(taxon);
    }
  }
}

std::vector<TaxonId> const& TaxonTable::with_key(std::string const& key) const {
  static std::vector<TaxonId> const none;
  auto const found = by_key_.find(key);
  return found == by_key_.end() ? none : found->second;
}

std::vector<TaxonId> TaxonTable::all(std::string_view name) const {
  auto const parsed = parse_name(name);
  std::vector<TaxonId> found;
  for (auto const& key : name_keys(parsed)) {
    if (abbreviated(parsed.genus)) {
      auto const same = by_epithets_.find(epithets_of(key));
      if (same == by_epithets_.end()) continue;
      for (auto const taxon : same->second) {
        if (short_for(parsed.genus, rows_[taxon.index].parsed.genus)) found.push_back(taxon);
      }
    } else {
      auto const& same = with_key(key);
      found.insert(found.end(), same.begin(), same.end());
    }
  }
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  // Labels of a key that misapplies a name do not say so; one that does means no other name.
  bool const misapplied = sense_of(parsed) == Sense::misapplied;
  std::erase_if(found, [&](TaxonId taxon) {
    auto const& row = rows_[taxon.index];
    return !same_authorship(parsed.authorship, row.authorship) ||
           (misapplied && row.sense != Sense::misapplied);
  });
  if (found.size() < 2) return found;
  auto const plain = plain_name(parsed);
  std::stable_partition(found.begin(), found.end(),
                        [&](TaxonId taxon) { return rows_[taxon.index].plain == plain; });
  return found;
}

std::optional<TaxonId> TaxonTable::find(std::string_view name) const {
  auto const found = all(name);
  if (found.empty()) return std::nullopt;
  if (found.size() == 1) return found.front();
  // Several: the one that is spelled just so, if it alone is.
  auto const plain = plain_name(name);
  bool const first = rows_[found[0].index].plain == plain;
  bool const second = rows_[found[1].index].plain == plain;
  if (first && !second) return found.front();
  // The same name printed twice is one taxon; two genera for one abbreviation are not.
  bool const one_name = std::all_of(found.begin(), found.end(), [&](TaxonId taxon) {
    return rows_[taxon.index].keys == rows_[found.front().index].keys;
  });
  return one_name ? std::optional{found.front()} : std::nullopt;
}

std::vector<TaxonId> TaxonTable::with_epithet(std::string_view epithet) const {
  for (auto const marks : {Marks::transcribed, Marks::dropped}) {
    auto const found = by_epithets_.find(gender_stem(folded_word(epithet, marks)));
    if (found != by_epithets_.end()) return found->second;
  }
  return {};
}

std::string TaxonTable::expanded(std::string_view name) const {
  auto const parsed = parse_name(name);
  if (!abbreviated(parsed.genus)) return std::string{name};
  auto taxon = find(name);
  if (!taxon && !parsed.species.empty()) taxon = find(parsed.genus + " " + parsed.species);
  if (taxon) {
    auto const& genus = rows_[taxon->index].parsed.genus;
    if (!abbreviated(genus)) return with_genus(name, genus);
  }
  std::string const* only = nullptr;
  for (auto const& genus : genera_) {
    if (!short_for(parsed.genus, genus)) continue;
    if (only != nullptr) return std::string{name};
    only = &genus;
  }
  return only == nullptr ? std::string{name} : with_genus(name, *only);
}

std::vector<std::string> TaxonTable::plain_names() const {
  std::vector<std::string> names;
  names.reserve(rows_.size());
  for (auto const& row : rows_) names.push_back(row.plain);
  return names;
}

}  // namespace keydrift
