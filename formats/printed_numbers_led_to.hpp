#pragma once
// Numbers of couplets at the ends of leads that scanning damaged, mended in the text itself before
// it is parted into lines.  Inner header of formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "… in the middle l2." and "bidentate. . ll." where lines begin with "12." and "11.", no other
// line ends in them, and they are ahead: letters that stand for figures of what a lead leads to.
// Returns the number of lines.
std::size_t restore_numbers_led_to(std::string& text);

}  // namespace keydrift::printed
