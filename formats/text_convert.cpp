#include "keydrift/formats/text_convert.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "keydrift/formats/text_double_bytes.hpp"
#include "keydrift/formats/text_encodings.hpp"
#include "keydrift/formats/text_iconv.hpp"
#include "keydrift/formats/text_scripts.hpp"

namespace keydrift::encodings {
namespace {

using namespace std::string_view_literals;

struct Wide {
  Encoding encoding{};
  ByteOrder order{};
  std::size_t mark{};  // bytes of the byte order mark
};

// UTF-16 or UTF-32, by its mark (Unicode 15, table 23-7).
std::optional<Wide> wide_by_mark(std::string_view bytes) {
  // Before UTF-16, whose mark its own begins with.
  if (bytes.substr(0, 4) == "\xFF\xFE\0\0"sv)
    return Wide{Encoding::utf_32_le, ByteOrder::little, 4};
  if (bytes.substr(0, 4) == "\0\0\xFE\xFF"sv) return Wide{Encoding::utf_32_be, ByteOrder::big, 4};
  if (bytes.substr(0, 2) == "\xFF\xFE"sv) return Wide{Encoding::utf_16_le, ByteOrder::little, 2};
  if (bytes.substr(0, 2) == "\xFE\xFF"sv) return Wide{Encoding::utf_16_be, ByteOrder::big, 2};
  return std::nullopt;
}

// UTF-16 without mark: Latin text then has a NUL in every other byte.
std::optional<Wide> wide_by_nuls(std::string_view bytes) {
  auto const sample = bytes.substr(0, 4096);
  if (sample.size() < 4 || bytes.size() % 2 != 0) return std::nullopt;
  std::array<std::size_t, 2> nuls{};
  for (std::size_t i = 0; i < sample.size(); ++i) {
    if (sample[i] == '\0') ++nuls[i % 2];
  }
  std::size_t const pairs = sample.size() / 2;
  if (nuls[0] == 0 && nuls[1] * 10 > pairs * 7) {
    return Wide{Encoding::utf_16_le, ByteOrder::little, 0};
  }
  if (nuls[1] == 0 && nuls[0] * 10 > pairs * 7) {
    return Wide{Encoding::utf_16_be, ByteOrder::big, 0};
  }
  return std::nullopt;
}

bool is_lower(char c) { return c >= 'a' && c <= 'z'; }

// Looks at the bytes between two small letters, where words have small letters: Windows-1252 has
// them from 0xDF on, Mac OS Roman up to 0x9F.  Apostrophes (0x92 and 0xD5) tell nothing.
bool looks_like_mac_roman(std::string_view bytes) {
  std::size_t mac = 0;
  std::size_t windows = 0;
  for (std::size_t i = 1; i + 1 < bytes.size(); ++i) {
    auto const byte = static_cast<unsigned char>(bytes[i]);
    if (byte < 0x80 || !is_lower(bytes[i - 1]) || !is_lower(bytes[i + 1])) continue;
    if (byte >= 0xDF) ++windows;
    // Of these, Windows-1252 has "š", "œ" and "ž" at 0x9A, 0x9C and 0x9E.
    if (byte >= 0x87 && byte <= 0x9F && byte != 0x92 && byte != 0x9A && byte != 0x9C &&
        byte != 0x9E) {
      ++mac;
    }
  }
  return mac > 2 * windows;
}

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

bool has_sequences(std::string_view bytes) {
  while (!bytes.empty()) {
    auto const length = sequence_length(bytes);
    if (length > 1) return true;
    bytes.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return false;
}

// Half of the high bytes may form UTF-8 by accident ("её" in KOI8-R, "рав" in IBM 866, leaders "……"
// in EUC-JP); of a UTF-8 file with stray bytes, nearly all do.
bool is_mostly_utf_8(std::string_view bytes) {
  std::size_t within = 0;
  std::size_t stray = 0;
  while (!bytes.empty()) {
    auto const length = sequence_length(bytes);
    if (length > 1) within += length;
    if (length == 0) ++stray;
    bytes.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return within > 3 * stray;
}

// Line by line, for files that were pasted together.  Windows-1252 forms a UTF-8 sequence only by
// accident; a line that has both is UTF-8 with stray bytes.  nullopt where no line is UTF-8.
std::optional<Converted> convert_mixed_lines(std::string_view bytes) {
  Converted converted;
  bool any_utf_8 = false;
  std::uint32_t number = 1;
  for (std::size_t begin = 0; begin < bytes.size(); ++number) {
    auto end = bytes.find_first_of("\r\n\v", begin);
    if (end == std::string_view::npos) end = bytes.size();
    auto const line = bytes.substr(begin, end - begin);
    if (first_ill_formed(line) == std::string_view::npos) {
      any_utf_8 = any_utf_8 || !is_ascii(line);
    } else {
      any_utf_8 = any_utf_8 || has_sequences(line);
      converted.other_lines.push_back(number);
    }
    if (bytes.substr(end, 2) == "\r\n"sv) ++end;
    begin = end + 1;
  }
  if (!any_utf_8) return std::nullopt;
  converted.text = repair_utf_8(bytes);
  return converted;
}

std::string wide_to_utf_8(std::string_view bytes, Encoding encoding) {
  bool const little = encoding == Encoding::utf_16_le || encoding == Encoding::utf_32_le;
  bool const four = encoding == Encoding::utf_32_le || encoding == Encoding::utf_32_be;
  auto const order = little ? ByteOrder::little : ByteOrder::big;
  return four ? utf_32_to_utf_8(bytes, order) : utf_16_to_utf_8(bytes, order);
}

// What is no UTF-8 is damage.
void take_utf_8(std::string_view bytes, Converted& converted) {
  converted.text.reserve(bytes.size());
  while (!bytes.empty()) {
    auto const length = sequence_length(bytes);
    if (length == 0) {
      append_code_point(converted.text, 0xFFFD);
      ++converted.damage;
    }
    converted.text.append(bytes.substr(0, length));
    bytes.remove_prefix(std::max<std::size_t>(length, 1));
  }
}

// As somebody said, whatever comes of it; nullopt when the system has no such conversion.
std::optional<Converted> convert_as(std::string_view bytes, Encoding encoding, Told told) {
  Converted converted;
  converted.encoding = encoding;
  converted.told = told;
  if (is_wide(encoding)) {
    converted.text = wide_to_utf_8(bytes, encoding);
    return converted;
  }
  if (encoding == Encoding::utf_8) {
    take_utf_8(bytes, converted);
    return converted;
  }
  auto foreign = from_encoding(bytes, encoding);
  if (!foreign) return std::nullopt;
  converted.text = std::move(foreign->text);
  converted.damage = foreign->damage;
  return converted;
}

// UTF-16 of letters that are not Latin, and ISO-2022-JP, look like UTF-8 full of control
// characters (U+0431 "б" is "1" and U+0004).
bool has_controls(std::string_view bytes) {
  return std::any_of(bytes.begin(), bytes.end(), [](char c) {
    auto const byte = static_cast<unsigned char>(c);
    return byte < '\t' || (byte > '\r' && byte < ' ');
  });
}

bool shows_as_ascii(Encoding encoding) {
  return is_wide(encoding) || encoding == Encoding::iso_2022_jp;
}

// By the letters; there are no UTF-8 lines among the bytes.
Converted convert_untold(std::string_view bytes) {
  Converted converted;
  bool const mac = looks_like_mac_roman(bytes);
  converted.encoding = mac ? Encoding::mac_roman : Encoding::windows_1252;
  converted.text = mac ? mac_roman_to_utf_8(bytes) : windows_1252_to_utf_8(bytes);
  return converted;
}

// What programs write of any file, over lines of UTF-8 too.
bool says_little(Encoding declared) { return declared == Encoding::windows_1252; }
// That it is not so is seen by the bytes.
bool says_nothing(Encoding declared) { return declared == Encoding::utf_8 || is_wide(declared); }

// Not UTF-8 as a whole, and without a mark.
Converted convert_ill_formed(std::string_view bytes, std::optional<Encoding> asked,
                             std::optional<Encoding> declared) {
  if (asked) {
    if (auto converted = convert_as(bytes, *asked, Told::by_user)) return *std::move(converted);
  }
  if (declared && says_nothing(*declared)) declared.reset();
  if (declared && !says_little(*declared)) {
    if (auto converted = convert_as(bytes, *declared, Told::by_declaration)) {
      return *std::move(converted);
    }
    declared.reset();
  }
  if (!declared && !is_mostly_utf_8(bytes)) {
    auto encoding = cyrillic_or_greek(bytes);
    if (!encoding) encoding = japanese_chinese_or_korean(bytes);
    if (encoding) {
      if (auto converted = convert_as(bytes, *encoding, Told::by_bytes)) {
        return *std::move(converted);
      }
    }
  }
  if (auto converted = convert_mixed_lines(bytes)) return *std::move(converted);
  if (declared) {
    if (auto converted = convert_as(bytes, *declared, Told::by_declaration)) {
      return *std::move(converted);
    }
  }
  return convert_untold(bytes);
}

}  // namespace

Converted convert(std::string_view bytes, std::optional<Encoding> asked,
                  std::string_view declared_label) {
  bool const marked = bytes.substr(0, 3) == "\xEF\xBB\xBF"sv;
  if (marked) bytes.remove_prefix(3);
  auto wide = wide_by_mark(bytes);
  if (!wide) wide = wide_by_nuls(bytes);
  if (wide) {
    bytes.remove_prefix(wide->mark);
    return {.text = wide_to_utf_8(bytes, wide->encoding), .encoding = wide->encoding};
  }
  auto const declared = encoding_by_label(declared_label);
  auto const said = asked ? asked : declared;
  if (said && shows_as_ascii(*said) && (asked || !is_wide(*said)) && has_controls(bytes)) {
    auto converted = convert_as(bytes, *said, asked ? Told::by_user : Told::by_declaration);
    if (converted) return *std::move(converted);
  }
  if (first_ill_formed(bytes) == std::string_view::npos) return {.text = std::string{bytes}};
  if (marked) {
    auto mixed = convert_mixed_lines(bytes);
    return mixed ? *std::move(mixed) : convert_untold(bytes);
  }
  auto converted = convert_ill_formed(bytes, asked, declared);
  converted.unknown_label = !asked && !declared && !declared_label.empty();
  bool const counts = said && (asked || (!says_nothing(*said) && !says_little(*said)));
  if (counts && converted.told == Told::by_bytes) converted.unavailable = said;
  return converted;
}

}  // namespace keydrift::encodings
