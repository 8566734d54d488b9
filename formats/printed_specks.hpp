#pragma once
// Dirt among the leaders of a scanned key and at what they lead to, cleared in the text itself
// before it is parted into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "Legs red . . ■ . 2", "Legs red ....^ 2", "..... 'A. busa", "..... A. busa■": each sign that
// belongs neither to the row nor to the name becomes a dot of the row or a blank, so that columns
// stay.  What stands beside a number stays: the couplets tell.  Rows of three dots and more are
// asked for; no other line changes.  Returns the number of lines.
std::size_t clear_specks(std::string& text);

// "..... M . busa" and "..... M, busa" where other leads have "..... M. cusa": the full stop of the
// genus.  "..... iM. busa", "..... lM. busa": a letter too many before it.  Columns stay.  Returns
// the number of lines.
std::size_t restore_initials(std::string& text);

// "2. 0. busa" where other species are "1. O. cusa": the initial of the genus.  Columns stay.
// Returns the number of names.
std::size_t restore_initial_o(std::string& text);

// "..... 2, M. busa", "..... l. M. cusa" where other leads have "..... 3. M. dusa": the number of
// the species; "..... No. 2. M. busa" without the word.  Columns stay.  Returns the number of
// lines.
std::size_t restore_species_numbers(std::string& text);

// "… base without pits ." without leaders, above a blank line or one that begins with a number:
// the full stop closes up to the word, so that columns stay.  Returns the number of lines.
std::size_t close_full_stops(std::string& text);

// "..... A. busa Roe ... p. 145", and "... 145" where no line begins with a number as large: the
// page is set behind a comma, "..... A. busa Roe , p. 145".  Returns the number of lines.
std::size_t take_pages_for_remarks(std::string& text);

}  // namespace keydrift::printed
