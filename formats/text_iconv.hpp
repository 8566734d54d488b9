#pragma once
// Conversions by POSIX iconv, which knows the encodings by explicit names; no locale has a part in
// it.  Inner header of formats.

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "keydrift/formats/text_labels.hpp"

namespace keydrift::encodings {

// The characters of bytes 0x80 to 0xFF; U+FFFD for those that the encoding leaves undefined.
using HighBytes = std::array<char32_t, 128>;

// nullopt when the system has no such conversion.  Precondition: is_single_byte(encoding).
[[nodiscard]] std::optional<HighBytes> high_bytes(Encoding encoding);

struct Foreign {
  std::string text;      // UTF-8
  std::size_t damage{};  // bytes that are not of the encoding, each U+FFFD in the text
};

// By table for single bytes, which is faster; else by iconv.  Stops early where more than
// `most_damage` bytes are not of the encoding.  nullopt when the system has no such conversion.
// Precondition: not UTF-8.
[[nodiscard]] std::optional<Foreign> from_encoding(std::string_view bytes, Encoding encoding,
                                                   std::size_t most_damage = std::string::npos);

}  // namespace keydrift::encodings
