#pragma once
// Placing a name among the terminals of an edition: exact, finer or coarser.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

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
  std::vector<TaxonId> taxa;        // exact, finer: one; coarser: all below, ascending
  std::string how;                  // "same name", "synonym of Aus bus", "genus of Aus bus", …
  std::vector<std::string> near;    // for none: the most similar terminals
};

// Names are indexed once; place() is then cheap.  Borrows nothing.
class NameIndex {
 public:
  NameIndex(Edition const& edition, ParentTable const& parents);
  [[nodiscard]] Placement place(std::string_view name) const;
  // The terminals that belong to a group as an exception names it: "Aus", "A. bus" (abbreviated
  // genus of a terminal), "Aus bus and Aus cus" is split by the caller.
  [[nodiscard]] std::vector<TaxonId> members(std::string_view group) const;

 private:
  struct Entry {
    std::string key;
    TaxonId taxon;
    std::string how;
  };
  std::vector<Entry> names_;      // sorted by key: terminals and synonyms
  std::vector<Entry> ancestors_;  // sorted by key: every group above a terminal
  std::vector<std::pair<std::string, std::string>> parents_;  // name keys, sorted
  std::vector<std::string> terminals_;                        // plain names by TaxonId
};

}  // namespace keydrift
