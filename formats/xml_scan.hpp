#pragma once
// Whether a text is well-formed XML, told before a tree is built of it.  Inner header of formats.
//
// The tree's own parser forgives what the standard forbids and forgets names and places; the scan
// says what is wrong where, and counts, so that no tree is built that would exhaust the memory.

#include <string_view>
#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift::xml {

// Extensible Markup Language (XML) 1.0, fifth edition, without declarations: the constraints of
// sections 2 and 3 on characters, tags, attributes and references.  Adds the errors and warnings
// that parse() lists; false when there is an error.  Linear; no recursion.
[[nodiscard]] bool scan(std::string_view file, std::string_view text, PlaceIndex const& places,
                        ReadLimits const& limits, Doctype doctype, std::vector<Finding>& findings);

// The encoding that the XML declaration at the front of `text` names, as written; "" without one.
[[nodiscard]] std::string_view declared_encoding(std::string_view text);

}  // namespace keydrift::xml
