#pragma once
// Notes and pages' numbers that stand behind a lead's destination, on lines of their own.  Inner
// header of formats.

#include <cstddef>

#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

// "… cuillerons blancs. 2. bus Roe." / "Long. 7-8 mm. — Dunes.": where a line of lead `lead` but
// the last ends in what is surely a name, and the next one begins afresh, the lines behind it
// become a note of the lead.  True where that was so.
bool part_note_behind_name(KeyText const& key, SortedLines& sorted, std::size_t lead);

// "… without pores busus Roe" / "" / "13" / "": where the last line of lead `lead` is a number
// between blank lines and the one above ends in an epithet and its author, the number becomes a
// page's. True where that was so.
bool part_page_behind_name(KeyText const& key, SortedLines& sorted, std::size_t lead);

}  // namespace keydrift::printed
