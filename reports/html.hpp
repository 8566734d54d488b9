#pragma once
// One-file HTML reports: no request, no script needed, a content-security policy inside.
//
// Everything foreign is escaped.  Long lists are cut at stated numbers, and the report says how
// many rows it leaves out and where they are; nothing is left out silently.

#include <cstddef>
#include <string>

#include "keydrift/characters/edition_proof.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

struct HtmlLimits {
  std::size_t specimens_per_group{60};  // catalogue numbers named per question
  std::size_t groups{400};              // questions
  std::size_t from_to_rows{400};
  std::size_t relabel_rows{400};
};

// One edition: its couplets as printed with the findings beside them, and its numbers.
[[nodiscard]] std::string proof_html(Edition const& edition, EditionProof const& proof);

// Two editions side by side: summary, taxa, characters, couplets, faults.
[[nodiscard]] std::string collation_html(Edition const& old_edition, Edition const& new_edition,
                                         Collation const& collation);

// The same, headed by what it means for an archive.
[[nodiscard]] std::string redetermination_html(Edition const& old_edition,
                                               Edition const& new_edition,
                                               Collation const& collation,
                                               Redetermination const& redetermination,
                                               HtmlLimits const& limits = {});

}  // namespace keydrift
