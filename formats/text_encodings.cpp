#include "keydrift/formats/text_encodings.hpp"

#include <utf8proc.h>

#include <array>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <string_view>

namespace keydrift::encodings {
namespace {

// Bytes 0x80 to 0x9F (WHATWG Encoding Standard, index windows-1252, which maps the five bytes that
// Microsoft leaves undefined to controls; here they are damage).
constexpr std::array<char16_t, 32> kWindows1252{
    0x20AC, 0xFFFD, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0xFFFD, 0x017D, 0xFFFD, 0xFFFD, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0xFFFD, 0x017E, 0x0178};

// Bytes 0x80 to 0xFF (Apple's mapping of Mac OS Roman, with the euro sign, from memory).
constexpr std::u16string_view kMacRoman =
    u"ÄÅÇÉÑÖÜáàâäãåçéèêëíìîïñóòôöõúùûü†°¢£§•¶ß®©™´¨≠ÆØ∞±≤≥¥µ∂∑∏π∫ªºΩæø"
    u"¿¡¬√ƒ≈∆«»…\u00A0ÀÃÕŒœ–—“”‘’÷◊ÿŸ⁄€‹›ﬁﬂ‡·‚„‰ÂÊÁËÈÍÎÏÌÓÔ\uF8FFÒÚÛÙıˆ˜¯˘˙˚¸˝˛ˇ";
static_assert(kMacRoman.size() == 128);

unsigned char byte_at(std::string_view bytes, std::size_t i) {
  return static_cast<unsigned char>(bytes[i]);
}

std::size_t ascii_prefix(std::string_view bytes) {
  std::size_t i = 0;
  for (; i + 8 <= bytes.size(); i += 8) {
    std::uint64_t word = 0;
    std::memcpy(&word, bytes.data() + i, 8);
    if ((word & 0x8080808080808080U) != 0) break;
  }
  while (i < bytes.size() && byte_at(bytes, i) < 0x80) ++i;
  return i;
}

// Composes one stretch that starts at an ASCII character or at the text's start; nothing composes
// with what stands before an ASCII character.
void append_composed(std::string& out, std::string_view stretch) {
  utf8proc_uint8_t* raw = nullptr;
  auto const length =
      utf8proc_map(reinterpret_cast<utf8proc_uint8_t const*>(stretch.data()),
                   static_cast<utf8proc_ssize_t>(stretch.size()), &raw,
                   static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE));
  std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> const owner{raw, &std::free};
  if (length < 0) {
    out.append(stretch);
    return;
  }
  out.append(reinterpret_cast<char const*>(raw), static_cast<std::size_t>(length));
}

}  // namespace

void append_code_point(std::string& out, char32_t code_point) {
  auto const put = [&out](char32_t byte) { out.push_back(static_cast<char>(byte)); };
  if (code_point < 0x80) {
    put(code_point);
  } else if (code_point < 0x800) {
    put(0xC0U | (code_point >> 6U));
    put(0x80U | (code_point & 0x3FU));
  } else if (code_point < 0x10000) {
    put(0xE0U | (code_point >> 12U));
    put(0x80U | ((code_point >> 6U) & 0x3FU));
    put(0x80U | (code_point & 0x3FU));
  } else {
    put(0xF0U | (code_point >> 18U));
    put(0x80U | ((code_point >> 12U) & 0x3FU));
    put(0x80U | ((code_point >> 6U) & 0x3FU));
    put(0x80U | (code_point & 0x3FU));
  }
}

std::size_t sequence_length(std::string_view bytes) {
  auto const lead = byte_at(bytes, 0);
  if (lead < 0x80) return 1;
  auto const tail = [bytes](std::size_t i, unsigned low, unsigned high) {
    return i < bytes.size() && byte_at(bytes, i) >= low && byte_at(bytes, i) <= high;
  };
  if (lead >= 0xC2 && lead <= 0xDF) return tail(1, 0x80, 0xBF) ? 2 : 0;
  if (lead >= 0xE0 && lead <= 0xEF) {
    unsigned const low = lead == 0xE0 ? 0xA0 : 0x80;
    unsigned const high = lead == 0xED ? 0x9F : 0xBF;
    return tail(1, low, high) && tail(2, 0x80, 0xBF) ? 3 : 0;
  }
  if (lead >= 0xF0 && lead <= 0xF4) {
    unsigned const low = lead == 0xF0 ? 0x90 : 0x80;
    unsigned const high = lead == 0xF4 ? 0x8F : 0xBF;
    return tail(1, low, high) && tail(2, 0x80, 0xBF) && tail(3, 0x80, 0xBF) ? 4 : 0;
  }
  return 0;
}

std::size_t first_ill_formed(std::string_view bytes) {
  std::size_t i = 0;
  while (i < bytes.size()) {
    i += ascii_prefix(bytes.substr(i));
    if (i == bytes.size()) break;
    auto const length = sequence_length(bytes.substr(i));
    if (length == 0) return i;
    i += length;
  }
  return std::string_view::npos;
}

char32_t windows_1252(unsigned char byte) {
  if (byte < 0x80 || byte >= 0xA0) return byte;
  return kWindows1252[byte - 0x80U];
}

char32_t mac_roman(unsigned char byte) { return byte < 0x80 ? byte : kMacRoman[byte - 0x80U]; }

std::string utf_16_to_utf_8(std::string_view bytes, ByteOrder order) {
  auto const unit = [&](std::size_t i) -> char32_t {
    auto const first = byte_at(bytes, i);
    auto const second = byte_at(bytes, i + 1);
    return order == ByteOrder::little ? (static_cast<char32_t>(second) << 8U) | first
                                      : (static_cast<char32_t>(first) << 8U) | second;
  };
  std::string out;
  out.reserve(bytes.size());
  std::size_t i = 0;
  while (i + 1 < bytes.size()) {
    char32_t code_point = unit(i);
    i += 2;
    if (code_point >= 0xD800 && code_point <= 0xDFFF) {
      bool const high = code_point <= 0xDBFF;
      char32_t const next = high && i + 1 < bytes.size() ? unit(i) : 0;
      if (next >= 0xDC00 && next <= 0xDFFF) {
        code_point = 0x10000 + ((code_point - 0xD800) << 10U) + (next - 0xDC00);
        i += 2;
      } else {
        code_point = kReplacement;
      }
    }
    append_code_point(out, code_point);
  }
  if (i < bytes.size()) append_code_point(out, kReplacement);
  return out;
}

std::string utf_32_to_utf_8(std::string_view bytes, ByteOrder order) {
  std::string out;
  out.reserve(bytes.size() / 2);
  std::size_t i = 0;
  for (; i + 4 <= bytes.size(); i += 4) {
    char32_t code_point = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      code_point = (code_point << 8U) | byte_at(bytes, order == ByteOrder::big ? i + k : i + 3 - k);
    }
    bool const sound = code_point < 0x110000 && (code_point < 0xD800 || code_point > 0xDFFF);
    append_code_point(out, sound ? code_point : kReplacement);
  }
  if (i < bytes.size()) append_code_point(out, kReplacement);
  return out;
}

std::string mac_roman_to_utf_8(std::string_view bytes) {
  std::string out;
  out.reserve(bytes.size() + bytes.size() / 8);
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    append_code_point(out, mac_roman(byte_at(bytes, i)));
  }
  return out;
}

std::string windows_1252_to_utf_8(std::string_view bytes) {
  std::string out;
  out.reserve(bytes.size() + bytes.size() / 8);
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    append_code_point(out, windows_1252(byte_at(bytes, i)));
  }
  return out;
}

std::string repair_utf_8(std::string_view bytes) {
  std::string out;
  out.reserve(bytes.size() + 16);
  while (!bytes.empty()) {
    auto const length = sequence_length(bytes);
    if (length == 0) {
      append_code_point(out, windows_1252(byte_at(bytes, 0)));
      bytes.remove_prefix(1);
    } else {
      out.append(bytes.substr(0, length));
      bytes.remove_prefix(length);
    }
  }
  return out;
}

std::string to_nfc(std::string_view utf8) {
  std::string out;
  out.reserve(utf8.size());
  std::size_t i = 0;
  while (i < utf8.size()) {
    auto const plain = ascii_prefix(utf8.substr(i));
    std::size_t const begin = i;
    i += plain;
    std::size_t end = i;
    bool may_change = false;
    // A lead byte of 0xCC or more begins a code point of U+0300 or more; below, all is composed.
    for (; end < utf8.size() && byte_at(utf8, end) >= 0x80; ++end) {
      may_change = may_change || byte_at(utf8, end) >= 0xCC;
    }
    if (!may_change) {
      out.append(utf8.substr(begin, end - begin));
    } else {
      // The last ASCII character may take the marks that follow it.
      std::size_t const base = plain > 0 ? i - 1 : i;
      out.append(utf8.substr(begin, base - begin));
      append_composed(out, utf8.substr(base, end - base));
    }
    i = end;
  }
  return out;
}

}  // namespace keydrift::encodings
