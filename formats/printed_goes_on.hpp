#pragma once
// Leads that print no destination because they go on with the couplet below.  Inner header of
// formats.

#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_couplets.hpp"

namespace keydrift::printed {

// By lead: the couplet that it goes on with, else kNone.  "1 Wings clear / 1' Wings dark … 9 /
// 2 Legs pale": floras leave out the number where it is the next, or all numbers, and print the
// couplets of the first lead before those of the second.  The leads of a couplet stand together.
// None unless every open lead is answered by a couplet and every couplet answers something: else a
// number was forgotten, or the key is nested.
[[nodiscard]] std::vector<std::uint32_t> couplets_below(Grouping const& grouping,
                                                        std::vector<ReadLead> const& reads);

// Marks the parts of a file of several keys whose leads go on with the couplet beneath them, though
// those of the other parts lead to numbers: in such a part no lead leads to a number, each open
// lead has a couplet beneath it, and each couplet but the first stands beneath one.
void mark_nested_parts(Grouping& grouping, std::vector<ReadLead> const& reads);

}  // namespace keydrift::printed
