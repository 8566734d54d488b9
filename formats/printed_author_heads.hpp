#pragma once
// Heads of pages that name an author.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// "E. CARDONA, Las especies de Ausella 281" between blank lines: an author in capitals behind the
// initials, what the paper is called, and the page.  "250   Roe, M.T. & Dorn, L.O." as well.
void find_heads_of_authors(std::vector<SourceLine> const& lines, Numbering const& numbering,
                           std::vector<bool>& heads);

// "Roe & Dorn" directly between the number of a page and a head that was found before.
void find_authors_beside_heads(std::vector<SourceLine> const& lines, std::vector<bool>& heads);

// "Fenwick — Planthoppers: Ausidae": an author and what the work is about, each word with a
// capital.
[[nodiscard]] bool is_author_with_title(std::string_view words);

}  // namespace keydrift::printed
