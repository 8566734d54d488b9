#pragma once
// An Edition as SDD 1.1 (Structured Descriptive Data, TDWG standard 116, schema revision 5).

#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// SDD has no element for these; they stand in attributes and elements of the namespace kSddOwn,
// which the schema allows and read_sdd takes back:
//   labels of couplets and leads, back-references, notes, figures, remarks on a taxon, destinations
//   as printed, front matter beyond title, authors, language, region and sex, leads to other works,
//   what each statement says of a character, how strongly and with which exceptions.
// A lead to several taxa leads to one name that stands for them.  A couplet that no lead reaches
// begins a key of its own.  Not kept: places, couplets without leads, white space beyond one blank.
inline constexpr char const* kSddOwn = "urn:keydrift:sdd:1";

struct SddOptions {
  // SDD demands a time of creation.  It is given rather than taken from a clock, so that the same
  // edition gives the same bytes.  ISO 8601, with time zone.
  std::string created{"2000-01-01T00:00:00Z"};
};

struct SddWriting {
  std::string text;  // UTF-8, valid by SDD.xsd
  // sdd-own-words (information): what other programs will pass over.  sdd-loss (warning): what is
  // not in the file.
  std::vector<Finding> findings;
};

// Deterministic; no recursion.  Leads stand in printed order; of several leads to a couplet the
// first one on the way from the start is its parent, the others are reticulations.
[[nodiscard]] SddWriting write_sdd(Edition const& edition, SddOptions const& options = {});

}  // namespace keydrift
