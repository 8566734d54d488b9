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
  // Sections and treatments within it that were left aside.
  std::vector<pugi::xml_node> left{};
};

// The sections and tables that speak of a key or look like one; none of them lies in another.
[[nodiscard]] std::vector<KeyZone> find_key_zones(xml::Document const& document,
                                                  pugi::xml_node article);

// The other sections with words of their own: keys that nothing calls so.
[[nodiscard]] std::vector<KeyZone> other_sections(xml::Document const& document,
                                                  pugi::xml_node article,
                                                  std::vector<KeyZone> const& zones);

// "Key to the species", "Bestimmungsschlüssel", "sec-type=key".
[[nodiscard]] bool speaks_of_key(std::string_view words);

// The title or caption by which messages call the element; may be empty.
[[nodiscard]] std::string title_of(xml::Document const& document, pugi::xml_node element);

}  // namespace keydrift::jats
