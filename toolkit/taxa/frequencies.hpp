#pragma once
// How often each taxon is met with: what means over taxa are weighted by.

#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {

struct FrequencyRow {
  std::string taxon;
  double count{};  // of specimens, or any measure in proportion; finite, 0 or more
  Place place;
};
struct FrequencyTable {
  std::string name;  // file
  std::vector<FrequencyRow> rows;
};

struct TaxonWeights {
  std::vector<double> by_taxon;  // by row of Edition::taxa; 0 where no row speaks of the taxon
  std::vector<Finding> findings;
};
// Counts of several rows that one terminal takes in are added up; so are those of names below a
// terminal.  Findings: frequency-of-unknown-taxon (warning, with near names), frequency-of-group
// (warning: a name above several terminals could be any of them), taxa-without-frequency
// (information).
[[nodiscard]] TaxonWeights taxon_weights(Edition const& edition, NameIndex const& names,
                                         FrequencyTable const& table);

}  // namespace keydrift
