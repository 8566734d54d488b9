#include "keydrift/formats/text_convert.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "keydrift/formats/text_encodings.hpp"

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

// Line by line, for files that were pasted together.  Windows-1252 forms a UTF-8 sequence only by
// accident; a line that has both is UTF-8 with stray bytes.
Converted convert_lines(std::string_view bytes) {
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
  if (any_utf_8) {
    converted.text = repair_utf_8(bytes);
    return converted;
  }
  converted.other_lines.clear();
  if (looks_like_mac_roman(bytes)) {
    converted.encoding = Encoding::mac_roman;
    converted.text = mac_roman_to_utf_8(bytes);
  } else {
    converted.encoding = Encoding::windows_1252;
    converted.text = windows_1252_to_utf_8(bytes);
  }
  return converted;
}

}  // namespace

Converted convert(std::string_view bytes) {
  if (bytes.substr(0, 3) == "\xEF\xBB\xBF"sv) bytes.remove_prefix(3);
  auto wide = wide_by_mark(bytes);
  if (!wide) wide = wide_by_nuls(bytes);
  if (wide) {
    bytes.remove_prefix(wide->mark);
    bool const four =
        wide->encoding == Encoding::utf_32_le || wide->encoding == Encoding::utf_32_be;
    return {four ? utf_32_to_utf_8(bytes, wide->order) : utf_16_to_utf_8(bytes, wide->order),
            wide->encoding,
            {}};
  }
  if (first_ill_formed(bytes) == std::string_view::npos) {
    return {std::string{bytes}, Encoding::utf_8, {}};
  }
  return convert_lines(bytes);
}

}  // namespace keydrift::encodings
