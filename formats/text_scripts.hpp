#pragma once
// Cyrillic and Greek texts that say nothing of their encoding.  Inner header of formats.

#include <optional>
#include <string_view>

#include "keydrift/formats/text_labels.hpp"

namespace keydrift::encodings {

// Told by words that are all of high bytes, which no language in Latin letters has but in names
// ("ışığı"), and then by which encoding makes its script's commonest letters of them, with
// capitals at the beginnings of words only.  nullopt where nothing is sure.  Linear.
[[nodiscard]] std::optional<Encoding> cyrillic_or_greek(std::string_view bytes);

}  // namespace keydrift::encodings
