#pragma once
// Initials of genera that scanning made others of.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "F. busa" is read as "V. busa" where all other species have V, which looks like it, and the text
// names no genus with F, "JI. busa" as "H. busa", "7. 1. busa" and "7. /. busa" as "7. I. busa"
// behind the number of a species; "PI. busa" as "Pl. busa" where it names a genus that begins so.
// How many were put right.
std::size_t restore_odd_initials(std::string& text);

// "Pl. busa" is read as "P. busa", for "Pl." says "plate" as well, where the text names a genus
// that begins so.  How many were shortened.
std::size_t shorten_abbreviations(std::string& text);

}  // namespace keydrift::printed
