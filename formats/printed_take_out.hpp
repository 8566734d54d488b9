#pragma once
// Signs taken out of a text whose lines keep their length.  Inner header of formats.

#include <cstddef>
#include <string>
#include <vector>

namespace keydrift::printed {

// Bytes [begin, end) of a text, none of them the end of a line.
struct Signs {
  std::size_t begin{};
  std::size_t end{};
};

// Takes the signs out; as many blanks are added at the ends of their lines.  Ascending, none
// within another.
void take_out(std::string& text, std::vector<Signs> const& signs);

}  // namespace keydrift::printed
