#pragma once
// Accounts of species behind their key, numbered as couplets are: "1. Ausella busa Roe – Herbs of
// woods".  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks their first lines as such that begin no lead: each begins with a species that some line
// above ends in.
void mark_accounts_behind(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
