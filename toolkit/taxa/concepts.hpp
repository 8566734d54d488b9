#pragma once
// Which taxon of one edition is which of another: names first, then the taxonomist's concept map.
//
// "Same name" is not "same concept": without a map the same name is presumed congruent, and every
// result says that it is presumed.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

// Old concept R new concept (RCC-5; TCS 2 isCongruentWith, includes, isIncludedIn,
// partiallyOverlaps, isDisjointFrom).
enum class Relation { congruent, includes, included_in, overlaps, disjoint };
[[nodiscard]] char const* to_word(Relation relation);  // "congruent", "includes", "included in", …
// Accepts the words above, the signs == > < >< | (and ≅ ⊃ ⊂ ⊕), the TCS 2 local names or full
// IRIs, and the TCS 1.01 words.  Not = and ≡: in synonymy lists those tell kinds of synonyms.
[[nodiscard]] std::optional<Relation> relation_from_word(std::string_view word);
[[nodiscard]] Relation converse(Relation relation);

struct ConceptRow {
  std::string old_name;
  Relation relation{Relation::congruent};
  std::string new_name;
  std::string note;
  Place place;
};
struct ConceptMap {
  std::string name;  // file
  std::vector<ConceptRow> rows;
};

enum class MatchBasis {
  same_name,    // equal plain names: congruence presumed
  spelling,     // equal after the Codes' habits (tiers 2 and 3): congruence presumed
  synonymy,     // front matter of either edition: congruence presumed
  concept_map,  // asserted
  containment,  // one name lies within the other (genus of a species, species of a subspecies …):
                // inclusion presumed
};
[[nodiscard]] char const* to_word(MatchBasis basis);

struct TaxonMatch {
  TaxonId old_taxon;
  TaxonId new_taxon;
  Relation relation{Relation::congruent};
  MatchBasis basis{MatchBasis::same_name};
  bool same_name{false};  // plain names equal (so: nothing to relabel)
  std::string note;       // the concept map's, or how the spelling differs
};

struct TaxonMatching {
  std::vector<TaxonMatch> matches;  // sorted by (old, new); disjoint rows included
  std::vector<TaxonId> only_old;    // no counterpart (other than disjoint)
  std::vector<TaxonId> only_new;
  std::vector<Finding> findings;      // map naming unknown taxa (with near names), likely misprints
  std::vector<std::uint32_t> by_new;  // indexes into matches, sorted by (new, old); optional: when
                                      // it is not as long as matches, of_new() searches them all

  // Relation of the pair; disjoint when no match says otherwise.
  [[nodiscard]] Relation relation(TaxonId old_taxon, TaxonId new_taxon) const;
  [[nodiscard]] TaxonMatch const* find(TaxonId old_taxon, TaxonId new_taxon) const;
  // New taxa that share something with the old one (congruent, includes, included in, overlaps).
  [[nodiscard]] std::vector<TaxonMatch const*> of_old(TaxonId old_taxon) const;
  [[nodiscard]] std::vector<TaxonMatch const*> of_new(TaxonId new_taxon) const;
};

// A row of the map decides over names: a map row for a pair replaces what names would say, and a
// taxon with non-disjoint map rows is not matched by name to a taxon outside those rows.
// Synonymy that ties several old taxa to one new one is a lump (`included in`), the reverse a split
// (`includes`).  A taxon that keeps its name while the other edition keys a part of it apart is
// presumed to include (be included in) its namesake.  Likenesses beyond the Codes' habits are
// findings, never matches.  Findings about the map bear its name as their file; the others bear the
// new edition's.  Cost: O(n log n) in taxa and rows.  map may be nullptr.
[[nodiscard]] TaxonMatching match_taxa(Edition const& old_edition, Edition const& new_edition,
                                       ConceptMap const* map);

}  // namespace keydrift
