#pragma once
// Lists and headings of sections that are numbered as leads are, before a key, between keys and
// behind them: "1. Introduction", "[2] Roe P. Notes on beetles".  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks their lines as such that begin no lead: each number stands once, though the couplets of
// the key beside them have rivals.  Lines that are marked already are passed over.
void mark_numbered_lists(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
