#pragma once
// Texts as SDD's schema allows them, and the elements that every object has.  Inner header of
// formats.

#include <cstddef>
#include <pugixml.hpp>
#include <string>
#include <string_view>

namespace keydrift::sdd {

inline constexpr char const* kNamespace = "http://rs.tdwg.org/UBIF/2006/";
inline constexpr char const* kGenerator = "keydrift";
inline constexpr std::size_t kShortText = 255;  // characters of a label
inline constexpr std::size_t kLongText = 64'000;

// Blanks squeezed, no control characters: what the schema's types make of a text anyway.
[[nodiscard]] std::string clean(std::string_view text);
// The same, cut to a label's length.
[[nodiscard]] std::string short_text(std::string_view text);
[[nodiscard]] std::string start_of_text(std::string_view text, std::size_t characters);
[[nodiscard]] std::size_t code_points(std::string_view text);

// Could be xs:language.
[[nodiscard]] bool is_language(std::string_view text);

// "Yes", "nein.": what answers a question and says nothing without it.
[[nodiscard]] bool answers_yes_or_no(std::string_view words);

// The object's Representation: `text`, or `fallback` where there is none, as its label; all of it
// as a detail as well if it is too long for a label.
void add_representation(pugi::xml_node object, std::string_view text, std::string_view fallback);

// An element of our own namespace at the object's end.
pugi::xml_node add_own(pugi::xml_node object, char const* name, std::string_view text);

// None for an empty value.
void add_attribute(pugi::xml_node object, char const* name, std::string_view value);

}  // namespace keydrift::sdd
