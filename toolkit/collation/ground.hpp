#pragma once
// What the reports of a collation are worked out from once the couplets are aligned.

#include <cstdint>
#include <vector>

#include "keydrift/collation/alignment.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/comparison.hpp"
#include "keydrift/collation/divisions.hpp"
#include "keydrift/collation/exceptions.hpp"
#include "keydrift/collation/lead_changes.hpp"
#include "keydrift/collation/ways.hpp"

namespace keydrift::collating {

// Borrows everything that collate() was given.
struct Ground {
  Side const& old_side;
  Side const& new_side;
  Comparison const& comparison;
  TaxonMatching const& matching;
  Alignment const& alignment;
  Counterparts const& counterparts;
  Exceptions const& exceptions;
  Divisions const& divisions;
  std::vector<LeadChange> const& lead_changes;  // by row of old lead; empty without counterpart
  CharacterNumbers const& numbers;

  [[nodiscard]] Side const& side(Of of) const {
    return of == Of::old_edition ? old_side : new_side;
  }
};

[[nodiscard]] std::vector<LeadChange> compare_aligned_leads(Side const& old_side,
                                                            Side const& new_side,
                                                            Counterparts const& counterparts,
                                                            Exceptions const& exceptions);

// What happened to each couplet.  Whether a lead goes elsewhere and whether a couplet hangs
// elsewhere is seen through couplets without counterpart: an inserted couplet is said to be
// inserted, and nothing else is said of what stands before and behind it.
[[nodiscard]] std::vector<CoupletChange> couplet_changes(Ground const& ground);

[[nodiscard]] std::vector<TaxonChange> taxon_changes(Ground const& ground);

[[nodiscard]] std::vector<RoleChange> role_changes(Ground const& ground);
[[nodiscard]] std::vector<CharacterUse> character_uses(Edition const& old_edition,
                                                       Edition const& new_edition,
                                                       Lexicon const& lexicon);

// Sorts the findings of both editions into mended, introduced and lasting.
struct FindingChanges {
  std::vector<Finding> mended;
  std::vector<Finding> introduced;
  std::vector<Finding> lasting;
};
[[nodiscard]] FindingChanges finding_changes(Ground const& ground,
                                             std::vector<Finding> old_findings,
                                             std::vector<Finding> new_findings);

// Differences of the front matter's scope, one sentence each without a final full stop.  Of the
// lists of taxa those names are left out that key out in the edition that has them: the changes of
// taxa tell of them.
[[nodiscard]] std::vector<std::string> scope_changes(Edition const& old_edition,
                                                     Edition const& new_edition);

}  // namespace keydrift::collating
