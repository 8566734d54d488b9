#pragma once
// Words with a capital before epithets that stand without their genus.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// The text ends as before a name of a place: "Mexico,", "southern", "Greater", "Long. 2 mm —".
[[nodiscard]] bool may_stand_before_place(std::string_view text);

// "… ohne Dornen bus", "…; Congo, Ouganda bus Roe": where leads end in epithets alone, a noun or a
// place before one is no genus.  A word that several leads have there stays one, unless it ends a
// list of places.
void give_words_back(KeyText const& key, LeadCutter& cutter, std::vector<ReadLead>& reads);

}  // namespace keydrift::printed
