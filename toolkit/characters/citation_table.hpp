#pragma once
// Which cited work is which edition of a key, and when editions were published.  A person writes
// it; formats/ reads it, keydrift/redetermination resolves by it.

#include <optional>
#include <string>
#include <vector>

#include "keydrift/key/finding.hpp"
#include "keydrift/key/period.hpp"

namespace keydrift {

struct CitationRow {
  std::string citation{};  // as cited, or author and year; "": the row tells a day only
  std::string edition{};   // label, never empty
  std::optional<Period> published{};
  Place place{};
};

struct CitationTable {
  std::string name;  // file
  std::vector<CitationRow> rows;
};

}  // namespace keydrift
