#pragma once
// Epithets that are printed with a capital, as older works do.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// Is the capitalised word an epithet made from a person's name, beyond doubt: "Smithii",
// "Roeae", "Dorniana"?
[[nodiscard]] bool is_epithet_of_person(std::string_view word);

// Where nearly all leads end in epithets without their genus, "Smithi" and "Smithi Roe" are
// epithets too, and no genera: such readings become "smithi", by Roe.
void take_capital_epithets(std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
