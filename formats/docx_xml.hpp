#pragma once
// Small pieces for reading WordprocessingML (ISO/IEC 29500-1).  Inner header of formats.
//
// Elements are told by their local names: the transitional and the strict form differ in their
// namespaces and in a few words only.

#include <cstdint>
#include <optional>
#include <pugixml.hpp>
#include <string_view>

namespace keydrift::docx {

// The first child element or attribute of that local name; empty without one.
[[nodiscard]] pugi::xml_node child(pugi::xml_node node, std::string_view name);
[[nodiscard]] std::optional<std::string_view> attribute(pugi::xml_node node, std::string_view name);

// The attribute "val" of the child of that name.
[[nodiscard]] std::optional<std::string_view> value_of(pugi::xml_node node, std::string_view name);

// An on/off property: nullopt when it is not given, true for an element without value
// (ISO/IEC 29500-1, 17.17.4).
[[nodiscard]] std::optional<bool> on_off(pugi::xml_node node, std::string_view name);

// A length in twentieths of a point, written as such or with a unit ("1.5cm", 22.9.2.15).  Damaged
// and absurd values: nullopt.
[[nodiscard]] std::optional<std::int32_t> twips(std::optional<std::string_view> text);

// A whole number of at least 0.
[[nodiscard]] std::optional<std::uint32_t> whole(std::optional<std::string_view> text);

}  // namespace keydrift::docx
