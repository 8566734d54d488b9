#pragma once
// Names at the ends of leads that scanning made others of, mended by what the rest of the text
// prints.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// May scanning have made the one word of the other: up to two signs or groups of signs that text
// layers confuse ("rn" for m, "fi" for fl, "u" for n), and nothing else?  Common practice, as
// printed_misread_figures.hpp says of figures.
[[nodiscard]] bool may_be_misread(std::string_view word, std::string_view other);

// "S. tenuifiora" at a lead's end, "2. S. tenuiflora Roe" in the account behind the key: where the
// end's epithet stands nowhere else, and another that scanning may have made it of does and ends no
// lead, that one is meant, or one much alike that has the number of the end ("12. S. vemus", and
// "12. STENA VERNUS" over an account), unless its letters follow each other less as those of the
// text's other words do.  Changes `reads`' names (the printed destinations stay) and reports each.
void mend_misread_names(KeyText const& key, SortedLines const& sorted, std::vector<ReadLead>& reads,
                        std::vector<Finding>& findings);

}  // namespace keydrift::printed
