#pragma once
// The steps of match_taxa that stand on their own; see concepts.hpp for what they add up to.

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/taxa/concepts.hpp"
#include "keydrift/taxa/names.hpp"
#include "keydrift/taxa/taxon_table.hpp"

namespace keydrift {

[[nodiscard]] inline std::string const& last_epithet(ParsedName const& name) {
  return name.infraspecies.empty() ? name.species : name.infraspecies;
}

// The rows of the map whose names both editions have, one per pair; the rest become findings, and
// so do rows that cannot hold together.
[[nodiscard]] std::vector<TaxonMatch> resolve_map(ConceptMap const& map, Edition const& old_edition,
                                                  Edition const& new_edition, TaxonTable const& old,
                                                  TaxonTable const& new_table,
                                                  std::vector<Finding>& findings);

// Taxa of both editions that bear names which the front matters call synonyms.
struct SynonymGroup {
  std::vector<TaxonId> old_taxa;
  std::vector<TaxonId> new_taxa;
};
class SynonymGroups {
 public:
  SynonymGroups(Edition const& old_edition, Edition const& new_edition, TaxonTable const& old,
                TaxonTable const& new_table);
  // Groups with a taxon on both sides or on one, in order of the front matters.
  [[nodiscard]] std::vector<SynonymGroup> const& groups() const { return groups_; }
  // The group in which a name key is; nullptr when no front matter speaks of it.
  [[nodiscard]] SynonymGroup const* find(std::string const& key) const;

 private:
  std::vector<SynonymGroup> groups_;
  std::unordered_map<std::string, std::size_t> group_of_;
};

// In what two spellings of one name differ, for TaxonMatch::note.
[[nodiscard]] std::string how_spelled(std::string_view a, std::string_view b);

// Names left over on both sides that are alike beyond the Codes' habits: findings, not matches.
void propose_likely_matches(Edition const& old_edition, Edition const& new_edition,
                            TaxonTable const& old, TaxonTable const& new_table,
                            TaxonMatching& matching);

}  // namespace keydrift
