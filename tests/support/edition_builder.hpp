#pragma once
// Makes small editions for tests without any reader.

#include <initializer_list>
#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"

namespace keydrift::test {

// One lead: its words and where it leads.  `to` is a couplet's label when some couplet of the
// edition bears it, else a taxon ("Aus bus"; several separated by " | "), else unresolved when "".
struct LeadSketch {
  std::string text;
  std::string to;
};
struct CoupletSketch {
  std::string label;
  std::vector<LeadSketch> leads;
};

// Lead labels are "1a", "1b" …; places are line n for the n-th lead, column 1.
[[nodiscard]] Edition make_edition(std::string name, std::vector<CoupletSketch> const& couplets);

}  // namespace keydrift::test
