#pragma once
// Encodings that text files are in, and the names under which pages, articles and users speak of
// them.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace keydrift {

// In the order in which users are shown them; `encoding_table()` of text_labels.cpp has the same.
enum class Encoding : std::uint8_t {
  utf_8,
  utf_16_le,
  utf_16_be,
  utf_32_le,
  utf_32_be,
  windows_1250,
  windows_1251,
  windows_1252,
  windows_1253,
  windows_1254,
  windows_1255,
  windows_1256,
  windows_1257,
  windows_1258,
  windows_874,
  iso_8859_2,
  iso_8859_3,
  iso_8859_4,
  iso_8859_5,
  iso_8859_6,
  iso_8859_7,
  iso_8859_8,
  iso_8859_10,
  iso_8859_13,
  iso_8859_14,
  iso_8859_15,
  iso_8859_16,
  koi8_r,
  koi8_u,
  ibm_866,
  mac_roman,
  mac_cyrillic,
  gb_18030,
  big_5,
  shift_jis,
  euc_jp,
  iso_2022_jp,
  euc_kr
};

[[nodiscard]] char const* to_word(Encoding encoding);  // "UTF-8", "UTF-16 (little-endian)", …

// The encoding of a label of the WHATWG Encoding Standard ("latin1" and "us-ascii" are
// Windows-1252, "gb2312" is GB18030); upper and lower case are one, blanks around it are none of
// it.  Besides: UTF-32, and the code pages 932, 936, 949 and 950 by their numbers.
[[nodiscard]] std::optional<Encoding> encoding_by_label(std::string_view label);

// "utf-8, utf-16le, …": one label for each encoding, for messages.
[[nodiscard]] std::string encoding_labels();

namespace encodings {

[[nodiscard]] constexpr bool is_wide(Encoding encoding) {
  return encoding >= Encoding::utf_16_le && encoding <= Encoding::utf_32_be;
}

// Has every byte a character of its own?
[[nodiscard]] constexpr bool is_single_byte(Encoding encoding) {
  return encoding >= Encoding::windows_1250 && encoding <= Encoding::mac_cyrillic;
}

// What POSIX iconv calls it.
[[nodiscard]] char const* iconv_name(Encoding encoding);

}  // namespace encodings
}  // namespace keydrift
