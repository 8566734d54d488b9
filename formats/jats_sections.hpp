#pragma once
// Where the keys of an article stand.  Inner header of formats.

#include <pugixml.hpp>
#include <string>
#include <vector>

#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift::jats {

// A stretch of the article that may hold a key, as lines in document order.
struct KeyZone {
  pugi::xml_node element;  // the section, or the table outside of any
  std::vector<ManuscriptLine> lines;
  bool has_tables{false};  // of the shape of a key, or marked as one
};

// The sections and tables that speak of a key or look like one; none of them lies in another.
[[nodiscard]] std::vector<KeyZone> find_key_zones(xml::Document const& document,
                                                  pugi::xml_node article);

// Every section with words of its own, for articles that call nothing a key.
[[nodiscard]] std::vector<KeyZone> all_sections(xml::Document const& document,
                                                pugi::xml_node article);

// "Key to the species", "Bestimmungsschlüssel", "sec-type=key".
[[nodiscard]] bool speaks_of_key(std::string_view words);

// The title or caption by which messages call the element; may be empty.
[[nodiscard]] std::string title_of(xml::Document const& document, pugi::xml_node element);

}  // namespace keydrift::jats
