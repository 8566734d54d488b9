#pragma once
// The tables of finding codes: what each means.  Every folder that reports findings has one.

#include <span>
#include <string_view>

#include "keydrift/key/finding.hpp"

namespace keydrift {

// One entry; `keydrift proof --explain-finding CODE` prints it.
struct FindingKind {
  std::string_view code;
  Severity severity;             // the usual one; a finding says its own
  std::string_view title;        // one line
  std::string_view explanation;  // why it matters and what to do; may hold line feeds
};

// Those of proof_structure().
[[nodiscard]] std::span<FindingKind const> structural_finding_kinds();

}  // namespace keydrift
