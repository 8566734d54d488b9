#pragma once
// Conversions to UTF-8 that text.cpp chooses among.  Inner header of formats.

#include <cstddef>
#include <string>
#include <string_view>

namespace keydrift::encodings {

inline constexpr char32_t kReplacement = 0xFFFD;  // stands for what is no character

void append_code_point(std::string& out, char32_t code_point);

// Length of the well-formed UTF-8 sequence at the front of `bytes` (Unicode 15, table 3-7), 0 when
// there is none.  Precondition: not empty.
[[nodiscard]] std::size_t sequence_length(std::string_view bytes);

// First byte that no well-formed sequence covers, or npos.
[[nodiscard]] std::size_t first_ill_formed(std::string_view bytes);

// The code point of a byte in Windows-1252; U+FFFD for the five bytes that it leaves undefined.
[[nodiscard]] char32_t windows_1252(unsigned char byte);

// The code point of a byte in Mac OS Roman.
[[nodiscard]] char32_t mac_roman(unsigned char byte);

// Unpaired surrogates and an odd last byte become U+FFFD.
enum class ByteOrder { little, big };
[[nodiscard]] std::string utf_16_to_utf_8(std::string_view bytes, ByteOrder order);
// What is no character, and bytes that are left over at the end, become U+FFFD.
[[nodiscard]] std::string utf_32_to_utf_8(std::string_view bytes, ByteOrder order);
[[nodiscard]] std::string windows_1252_to_utf_8(std::string_view bytes);
[[nodiscard]] std::string mac_roman_to_utf_8(std::string_view bytes);

// UTF-8 with stray bytes: each of these is read as Windows-1252.
[[nodiscard]] std::string repair_utf_8(std::string_view bytes);

// Normalisation form C; copies what cannot change, so that plain text costs little.
[[nodiscard]] std::string to_nfc(std::string_view utf8);

}  // namespace keydrift::encodings
