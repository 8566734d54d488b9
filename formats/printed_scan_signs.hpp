#pragma once
// What scanning makes of signs, put right in the text itself before it is parted
// into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// Lines that begin with "t" and "tt" for one dagger and two, where no lettered label comes before;
// "tt" and "ff" beside daggers, "++" beside a double one.  Columns stay.  Returns the number of
// lines.
std::size_t restore_daggers(std::string& text);

// "-|-", "-\\-", "-h" and "-f" for a cross, "-h +" for two, where other lines begin with crosses as
// they should be; "X" and "XX" beside crosses and asterisks for one saltire and two, "x" beside
// true saltires for one.  Returns the number of lines.
std::size_t restore_crosses(std::string& text);

// "©" and "0" for a ring at the beginning of a line, beside rings, which stand as "O", and crosses
// or stars.  Returns the number of lines.
std::size_t restore_rings(std::string& text);

// "*♦" and "♦" for stars at the beginning of a line, where other lines begin with stars as they
// should be.  Returns the number of lines.
std::size_t restore_stars(std::string& text);

// "a)" … "ß)", "«." … "/3." for α and β: a sharp s is no label, so that the nearest "a" above
// stands for alpha.  "p." beneath a true alpha, or a second "a." directly beneath a first, stands
// for beta, "y." beneath a true beta for gamma.  Returns the number of lines.
std::size_t restore_greek_labels(std::string& text);

// "pal1ens", "g1abra", "r0tunda": figures between the small letters of a word are l and o.  Returns
// the number of figures.
std::size_t restore_letters(std::string& text);

// "SCAPH0DORA": a figure 0 within a word in capitals is O.  Returns the number of words.
std::size_t restore_capital_letters(std::string& text);

// "villosuIa", "palIida": a capital I between the small letters of a word is l.  Returns the number
// of letters.
std::size_t restore_small_l(std::string& text);

}  // namespace keydrift::printed
