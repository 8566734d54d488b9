#pragma once
// Names at the ends of leads that scanning made others of, mended by what the rest of the text
// prints.  Inner header of formats.

#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "S. tenuifiora" at a lead's end, "2. S. tenuiflora Roe" in the account behind the key: where the
// end's epithet stands nowhere else, and another that scanning may have made it of does and ends no
// lead, that one is meant, or one much alike that has the number of the end ("12. S. vemus", and
// "12. STENA VERNUS" over an account), unless its letters follow each other less as those of the
// text's other words do.  Changes `reads`' names (the printed destinations stay) and reports each.
void mend_misread_names(KeyText const& key, SortedLines const& sorted, std::vector<ReadLead>& reads,
                        std::vector<Finding>& findings);

// The lead's name, or a part of it, was read as `meant`, as the line of that number has it.
[[nodiscard]] Finding misread_name(KeyText const& key, ReadLead const& read,
                                   std::string_view printed, std::string_view meant,
                                   std::uint32_t line);

}  // namespace keydrift::printed
