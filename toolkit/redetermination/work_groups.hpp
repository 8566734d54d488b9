#pragma once
// The worklist's groups, put in order at the end of a run.  Inner header of redetermination.

#include <cstddef>
#include <unordered_map>
#include <vector>

#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/redetermination/verdict_ledger.hpp"

namespace keydrift {

// Of each group those of its sheets that are in Redetermination::to_look_at.
using SheetsOfGroups = std::unordered_map<Fingerprint, std::vector<std::size_t>>;

// Fills in the worklist: groups with types first, then with vouchers, then by storage unit, cost
// and question.  Precondition: the verdicts are numbered.
void list_work_groups(VerdictLedger& ledger, Edition const& new_edition,
                      SheetsOfGroups const& sheets, Redetermination& result);

}  // namespace keydrift
