#pragma once
// Epithets that are printed with a capital, as older works do.  Inner header of formats.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Is the capitalised word an epithet made from a person's name, beyond doubt: "Smithii",
// "Roeae", "Dorniana"?
[[nodiscard]] bool is_epithet_of_person(std::string_view word);

// Where nearly all leads end in epithets without their genus, "Smithi" and "Smithi Roe" are
// epithets too, and no genera: such readings become "smithi", by Roe.
void take_capital_epithets(std::vector<ReadLead>& reads);

// Lone words in capitals, or with one where the key stands in the account of a genus, are epithets
// and no genera: a title speaks of species or of a genus, and hardly a lead ends otherwise.
[[nodiscard]] bool are_capitals_epithets(std::vector<ReadLead> const& reads,
                                         std::vector<std::string> const& titles,
                                         std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed
