#pragma once
// Japanese, Chinese and Korean texts that say nothing of their encoding.  Inner header of formats.

#include <optional>
#include <string_view>

#include "keydrift/formats/text_labels.hpp"

namespace keydrift::encodings {

// Told by bytes that are an encoding's from the first to the last, stand in words, and make of it
// the signs without which its language is not written: kana, the commonest syllables, the commonest
// characters.  nullopt where nothing is sure.  Linear.
[[nodiscard]] std::optional<Encoding> japanese_chinese_or_korean(std::string_view bytes);

}  // namespace keydrift::encodings
