#pragma once
// Names whose parts an article marks with what they stand for.  Inner header of formats.

#include <pugixml.hpp>

#include "keydrift/formats/told_names.hpp"

namespace keydrift::jats {

// Adds the names within `element` of which a part is cut short, or not printed, and bears the whole
// word as its attribute: <taxon-name-part taxon-name-part-type="genus" reg="Halmia">H.</…>.  Words
// that are printed whole stay, whatever the attribute says.
void tell_names(pugi::xml_node element, ToldNames& told);

}  // namespace keydrift::jats
