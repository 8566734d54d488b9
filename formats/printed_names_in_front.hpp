#pragma once
// Leads whose taxon stands in front of their words.  Inner header of formats.

#include <optional>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// The lines with the names behind the words, marked as the destinations:
//   "3   Ausella busa (Roe, 1884)"
//   "    Dorsum granulate; telson acute."
//   "—   Dorsum smooth                       4"
// Parts of a line keep its number.  nullopt where fewer than three leads begin so.
[[nodiscard]] std::optional<std::vector<SourceLine>> put_names_behind_words(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
