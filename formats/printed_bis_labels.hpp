#pragma once
// "1bis" and "1.1." for the rival of "1".  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Tells the labels of keys whose second leads bear "bis" and whose third ones bear "ter", as
// Romance works have it.  Elsewhere "9bis" is a couplet that was put behind couplet 9.
void tell_bis_labels(std::vector<SourceLine>& lines);

// Tells the labels of keys whose second leads bear the number twice, "7.7." beneath "7.", as old
// faunas have it.  Elsewhere "7.7" is a part of section 7.
void tell_doubled_numbers(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed
