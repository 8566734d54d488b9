#pragma once
// What pages set behind the words of a line.  Inner header of formats.

#include <string>
#include <vector>

#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/xml_text.hpp"

namespace keydrift::hypertext {

// "<a>go to 3 ›</a>", "<a>3 →</a>": the sign says that one may press there.  `marks`: of the text,
// the links among them.
void drop_link_sign(std::string& text, std::vector<xml::InlineMark> const& marks);

// Cuts "Couplet 3 [back to 1]" to "Couplet 3"; returns "[back to 1]" as a line beside the key, or
// an empty line where nothing stands behind the number.
[[nodiscard]] ManuscriptLine back_reference(ManuscriptLine& title);

// Cuts "2 Back to 1<tab>Wings clear", of which the first cell leads those back who went astray, to
// "2<tab>Wings clear"; returns "Back to 1" as a line beside the key, or an empty line.
[[nodiscard]] ManuscriptLine way_back_in_cell(ManuscriptLine& row);

// Where the destination of a lead begins whose end stood on a line of its own, from byte `joined`
// on: at the number or name that is marked, or at a link that is all of that line.  kNotTold
// elsewhere.
[[nodiscard]] std::size_t end_on_own_line(xml::FlowText const& line, std::size_t joined);

}  // namespace keydrift::hypertext
