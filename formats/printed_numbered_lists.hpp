#pragma once
// Lists and headings of sections that are numbered as leads are, before a key, between keys and
// behind them: "1. Introduction", "[2] Roe P. Notes on beetles".  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks their lines as such that begin no lead: each number stands once, though the couplets of
// the key beside them have rivals.  Lines that are marked already are passed over.
void mark_numbered_lists(std::vector<SourceLine>& lines);

// The lines with all marked that stand above the first title of a key; nullopt where nothing there
// could be taken for a lead.
[[nodiscard]] std::optional<std::vector<SourceLine>> with_all_above_title_marked(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
