#pragma once
// Ends of leads whose scientific name stands in brackets behind a common one, and links to other
// keys, as markup sets them apart.  Inner header of formats.

#include <cstddef>

#include "keydrift/formats/xml_text.hpp"

namespace keydrift::marked {

// Where the destination begins in "Eyes large. <a><b>Red crayfish</b> (<i>Aus bus</i>)</a>", with
// or without the link or the bold type, and a word or two behind: at the common name.  And in
// "Eyes small. <a>Go to the key to burrowing crayfishes</a>": at the link.  kNotTold elsewhere.
[[nodiscard]] std::size_t common_name_or_key(xml::FlowText const& line);

// "Legs long — Red crayfish, <i>Aus bus</i>": the common name that a dash sets apart from the words
// belongs to the name at `begin`, which is returned elsewhere.
[[nodiscard]] std::size_t with_common_name(xml::FlowText const& line, std::size_t begin);

}  // namespace keydrift::marked
