#pragma once
// Leaders that scanning made letters of.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "Cheilocystidia capitate ........ 0. cece eee eee eee teens 6", "…............20000- 13": rows of
// dots come out as words of c, e, n, s and t and as noughts (common practice of text layers).  They
// become dots where dots stand before them and a number or a name alone stands behind them, so that
// columns stay.  So do the comma and the one dot of "reddish testaceous, .rufipes Roe (p. 13)".
// Returns the number of lines.
std::size_t clear_garbled_leaders(std::string& text);

}  // namespace keydrift::printed
