#pragma once
// Lines that no author wrote: what archives stamp on the pages that they hand out, and what a
// typescript says of where its plates and tables belong.  Inner header of formats.

#include <string_view>

namespace keydrift::printed {

// "This content downloaded from 192.0.2.7 on …", "Digitized by Marsh Books": told by its wording
// alone, wherever it stands.
[[nodiscard]] bool is_stamp(std::string_view line);

// "via free access", "Terms of Use: …": of a stamp, if the line above is one.
[[nodiscard]] bool goes_on_with_stamp(std::string_view line);

// "[Plate 4 near here]", "Table 2 about here", "(insert Fig. 3 here)".
[[nodiscard]] bool tells_place_of_plate(std::string_view line);

// "PLATE IV", "TAF. 4": the head of a plate and no more.
[[nodiscard]] bool is_head_of_plate(std::string_view line);

}  // namespace keydrift::printed
