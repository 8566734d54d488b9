#pragma once
// How far a page's style sheet sets its paragraphs in.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <unordered_map>

#include "keydrift/formats/hypertext_sheet.hpp"

namespace keydrift::hypertext {

// The columns that paragraphs are set in by, by the offset of the tag that opens them, where rules
// such as
//   p.k1 { margin-left: 2.5em; }
// have three margins or more for classes that many of them bear, as e-texts of floras set their
// outlines; empty for any other page.  Linear in the text.
[[nodiscard]] std::unordered_map<std::size_t, std::uint32_t> margins_of(std::string_view text,
                                                                        Sheet const& sheet);

}  // namespace keydrift::hypertext
