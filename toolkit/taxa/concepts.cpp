#include "keydrift/taxa/concepts.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace keydrift {
namespace {

struct RelationWord {
  std::string_view word;
  Relation relation;
};
// Lower case, without blanks, hyphens and underscores.  TCS 2 (2025-12-11) and TCS 1.01 terms.
constexpr std::array kRelationWords{
    RelationWord{"congruent", Relation::congruent},
    RelationWord{"congruentwith", Relation::congruent},
    RelationWord{"iscongruentwith", Relation::congruent},
    RelationWord{"iscongruentto", Relation::congruent},
    RelationWord{"==", Relation::congruent},
    RelationWord{"\xE2\x89\x85", Relation::congruent},  // ≅
    RelationWord{"includes", Relation::includes},
    RelationWord{">", Relation::includes},
    RelationWord{"\xE2\x8A\x83", Relation::includes},  // ⊃
    RelationWord{"includedin", Relation::included_in},
    RelationWord{"isincludedin", Relation::included_in},
    RelationWord{"<", Relation::included_in},
    RelationWord{"\xE2\x8A\x82", Relation::included_in},  // ⊂
    RelationWord{"overlaps", Relation::overlaps},
    RelationWord{"partiallyoverlaps", Relation::overlaps},
    RelationWord{"><", Relation::overlaps},
    RelationWord{"\xE2\x8A\x95", Relation::overlaps},  // ⊕
    RelationWord{"disjoint", Relation::disjoint},
    RelationWord{"isdisjointfrom", Relation::disjoint},
    RelationWord{"isdisjointwith", Relation::disjoint},
    RelationWord{"disjointfrom", Relation::disjoint},
    RelationWord{"excludes", Relation::disjoint},
    RelationWord{"|", Relation::disjoint},
};

std::pair<TaxonId, TaxonId> pair_of(TaxonMatch const& match) {
  return {match.old_taxon, match.new_taxon};
}

}  // namespace

std::optional<Relation> relation_from_word(std::string_view word) {
  if (auto const slash = word.find_last_of("/#"); slash != std::string_view::npos) {
    word.remove_prefix(slash + 1);
  }
  std::string plain;
  for (char const c : word) {
    if (c == ' ' || c == '-' || c == '_' || c == '\t') continue;
    plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  auto const found = std::find_if(kRelationWords.begin(), kRelationWords.end(),
                                  [&](RelationWord const& entry) { return entry.word == plain; });
  if (found == kRelationWords.end()) return std::nullopt;
  return found->relation;
}

TaxonMatch const* TaxonMatching::find(TaxonId old_taxon, TaxonId new_taxon) const {
  std::pair const wanted{old_taxon, new_taxon};
  auto const found = std::lower_bound(
      matches.begin(), matches.end(), wanted,
      [](TaxonMatch const& match, auto const& key) { return pair_of(match) < key; });
  return found != matches.end() && pair_of(*found) == wanted ? &*found : nullptr;
}

Relation TaxonMatching::relation(TaxonId old_taxon, TaxonId new_taxon) const {
  auto const* match = find(old_taxon, new_taxon);
  return match == nullptr ? Relation::disjoint : match->relation;
}

std::vector<TaxonMatch const*> TaxonMatching::of_old(TaxonId old_taxon) const {
  std::vector<TaxonMatch const*> found;
  auto at = std::lower_bound(
      matches.begin(), matches.end(), old_taxon,
      [](TaxonMatch const& match, TaxonId taxon) { return match.old_taxon < taxon; });
  for (; at != matches.end() && at->old_taxon == old_taxon; ++at) {
    if (at->relation != Relation::disjoint) found.push_back(&*at);
  }
  return found;
}

std::vector<TaxonMatch const*> TaxonMatching::of_new(TaxonId new_taxon) const {
  std::vector<TaxonMatch const*> found;
  auto const take = [&](TaxonMatch const& match) {
    if (match.new_taxon == new_taxon && match.relation != Relation::disjoint) {
      found.push_back(&match);
    }
  };
  if (by_new.size() != matches.size()) {
    for (auto const& match : matches) take(match);
    return found;
  }
  auto at = std::lower_bound(
      by_new.begin(), by_new.end(), new_taxon,
      [&](std::uint32_t index, TaxonId taxon) { return matches[index].new_taxon < taxon; });
  for (; at != by_new.end() && matches[*at].new_taxon == new_taxon; ++at) take(matches[*at]);
  return found;
}

}  // namespace keydrift
