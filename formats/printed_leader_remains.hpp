#pragma once
// What is left of leaders at the end of a lead's words.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// Bytes of the words without dots and bullets that stand apart behind them: "Petals red. .",
// "Petals red ....", "Petals red •".  One dot behind a blank is the words' own full stop where they
// have no other: "Petals red ."
[[nodiscard]] std::size_t without_leader_remains(std::string_view words);

// Takes them off the words of all leads, and off what tells where the words stand.
void drop_leader_remains(std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
