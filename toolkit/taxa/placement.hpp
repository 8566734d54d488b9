#pragma once
// Placing a name among the terminals of an edition: exact, finer or coarser.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/taxa/names.hpp"
#include "keydrift/taxa/taxon_table.hpp"

namespace keydrift {

struct ParentRow {
  std::string taxon;
  std::string parent;
  Place place;
};
// Child -> parent names, e.g. species -> genus -> family.
struct ParentTable {
  std::string name;  // file
  std::vector<ParentRow> rows;
};

enum class PlacementKind {
  exact,    // the name is a terminal (by the Codes' habits, or a synonym in the front matter)
  finer,    // below a terminal: its genus, species or a parent in the table is one
  coarser,  // above terminals: they are in `taxa`
  none,
};

struct Placement {
  PlacementKind kind{PlacementKind::none};
  std::vector<TaxonId> taxa;      // exact, finer: one; coarser: all below, ascending
  std::string how;                // "same name", "synonym of Aus bus", "genus of Aus bus", …
  std::vector<std::string> near;  // for none: the most similar terminals
};

// Names are indexed once; place() is then cheap.  Borrows nothing.
class NameIndex {
 public:
  NameIndex(Edition const& edition, ParentTable const& parents);
  // A name whose printed author disagrees with the terminal's is a homonym or misapplied: none,
  // and `how` says so.
  [[nodiscard]] Placement place(std::string_view name) const;
  // The terminals that belong to a group as an exception names it: "Aus", "A. bus" (abbreviated
  // genus of a terminal), "bus" (an epithet), "some species of Aus"; "Aus bus and Aus cus" is split
  // by the caller.  A group finer than any terminal gives the terminal that holds it.  Ascending.
  [[nodiscard]] std::vector<TaxonId> members(std::string_view group) const;

 private:
  struct Entry {
    std::string key;
    TaxonId taxon;
    std::string how;
    std::string authorship;  // of a synonym, as printed
    bool by_synonym{false};  // an ancestor that only a synonym of the terminal has
  };
  // Keys above the given ones: by the name itself, then by the parent table; nearest first.
  struct Step {
    std::string key;
    bool by_table{};
  };
  [[nodiscard]] std::vector<Step> ladder(std::vector<std::string> keys,
                                         std::string_view subgenus) const;
  [[nodiscard]] std::vector<TaxonId> above(std::vector<std::string> const& keys,
                                           std::string* how) const;
  [[nodiscard]] Entry const* synonym(std::vector<std::string> const& keys,
                                     std::string_view authorship) const;
  [[nodiscard]] std::optional<Placement> finer(std::vector<std::string> const& keys,
                                               std::string_view subgenus) const;

  TaxonTable table_;
  NearNames near_;
  std::vector<Entry> synonyms_;   // sorted by key
  std::vector<Entry> ancestors_;  // sorted by key: every group above a terminal
  std::vector<std::pair<std::string, std::string>> parents_;  // name keys, sorted
};

}  // namespace keydrift
