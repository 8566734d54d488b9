#pragma once
// Signs that a scan set too close to a word or too far from it, put right in the text itself. Inner
// header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "P.fuscipes" and "P'. fuscipes" where other names have "P. alba": the genus with its full stop
// and a blank behind it.  Returns the number of names.
std::size_t part_initials(std::string& text);

// "… at apex only .6" and "… some veins darkened -7" at the end of a line: the number of a couplet
// that no other line leads to.  Returns the number of lines.
std::size_t part_numbers_from_signs(std::string& text);

// "… without hind lobe,_angusta (p. 66)" and "… eye round_'^_busa" where other lines bear low lines
// as well: what is left of leaders, which are put there again.  Returns the number of lines.
std::size_t part_low_lines(std::string& text);

// "densata , Roe, p. 216." where other words touch their commas.  Returns the number of commas.
std::size_t close_commas(std::string& text);

// "f . Pedicels bent" where other labels touch their full stops.  Returns the number of labels.
std::size_t close_stops_of_labels(std::string& text);

}  // namespace keydrift::printed
