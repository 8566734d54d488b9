#pragma once
// Links as plain text writes them.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

struct LinksTaken {
  std::size_t links{};     // 0 leaves the text as it is
  bool saved_page{false};  // addresses stand in angle brackets, as pages are saved as text
};

// Leaves the words of "[Aus bus](/species/bus)", "[2](#couplet-2)", "![Fig. 3](fig-3.png)" and
// "Aus bus <species/bus.html>": the brackets and addresses go, and as many blanks are added at the
// line's end, so that lines keep their length.
LinksTaken take_off_links(std::string& text);

}  // namespace keydrift::printed
