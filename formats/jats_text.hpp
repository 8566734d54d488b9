#pragma once
// The paragraphs and lists of a key in article XML as lines of a manuscript.  Inner header of
// formats.

#include <pugixml.hpp>
#include <vector>

#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/xml_document.hpp"
#include "keydrift/formats/xml_text.hpp"

namespace keydrift::jats {

// What a paragraph, list or quotation says, a line for each of its paragraphs, items and breaks.  A
// name or a number at a line's end that is marked up as one is its destination.
[[nodiscard]] std::vector<ManuscriptLine> text_lines(xml::Document const& document,
                                                     pugi::xml_node element);

// The element's words as one line of the role.  None if there are no words.
[[nodiscard]] std::vector<ManuscriptLine> whole_line(xml::Document const& document,
                                                     pugi::xml_node element, LineRole role);

// "5", "5.": nothing but the number of a couplet.
[[nodiscard]] bool is_number_alone(xml::FlowText const& words);

[[nodiscard]] ManuscriptLine to_line(xml::FlowText&& flow, LineRole role);

}  // namespace keydrift::jats
