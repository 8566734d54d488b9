#pragma once
// Signs of emphasis in plain text.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// Takes "*Aus bus*", "**2**", "_Aus bus_" and "=Aus bus=" for emphasised words where a text has
// several of them: the signs go, and as many blanks are added at the line's end, so that lines keep
// their length.  `saved_page`: "/Aus bus/" too, as pages are saved as text.  Returns the number of
// emphasised passages; 0 leaves the text as it is.
std::size_t take_off_emphasis(std::string& text, bool saved_page);

}  // namespace keydrift::printed
