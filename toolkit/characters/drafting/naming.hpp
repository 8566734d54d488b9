#pragma once
// What drafted characters are called, and what their words tell about them.  Inner header of
// drafting.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/lexicon.hpp"

namespace keydrift::drafting {

// "colour" of "red", "brown": the property that most of the states speak of; "" when none is known
// (the lists are English; common practice).  Ties go to the first in alphabetical order.
[[nodiscard]] std::string property_of(std::vector<std::string> const& states);

// Lower-case letters, digits and hyphens: "straw-coloured sheaths" -> "straw-coloured-sheaths",
// accents dropped.
[[nodiscard]] std::string id_from(std::string_view words);

// Told from words that name what is too small, or inside: "stigma", "spores", "genitalia", "µm".
// The hardest that is named counts; nothing named: the naked eye.
[[nodiscard]] Difficulty difficulty_from_words(std::string_view words);

// "absent", "none", "wanting" …, and nothing beside: the structure is not there.
[[nodiscard]] bool says_absent(std::string_view words);

}  // namespace keydrift::drafting
