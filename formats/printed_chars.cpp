#include "keydrift/formats/printed_chars.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace keydrift::printed {
namespace {

utf8proc_category_t category(char32_t c) {
  return utf8proc_category(static_cast<utf8proc_int32_t>(c));
}

constexpr char32_t kSoftHyphen = 0xAD;  // at a line's end it says how to join the next

// ASCII, and something to see.
constexpr bool is_plain_sign(char c) { return c > ' ' && c < 0x7F; }

}  // namespace

CodePoint beyond_ascii_at(std::string_view text, std::size_t at) {
  auto const byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
  auto const first = byte(0);
  std::size_t const length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (at + length > text.size()) return {0xFFFD, 1};
  char32_t value = first & (0xFFU >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) value = (value << 6U) | (byte(i) & 0x3FU);
  return {value, length};
}

CodePoint beyond_ascii_before(std::string_view text, std::size_t at) {
  std::size_t begin = at - 1;
  while (begin > 0 && (static_cast<unsigned char>(text[begin]) & 0xC0U) == 0x80) --begin;
  return {code_point_at(text, begin).value, at - begin};
}

bool is_letter_beyond_ascii(char32_t c) {
  auto const kind = category(c);
  return kind >= UTF8PROC_CATEGORY_LU && kind <= UTF8PROC_CATEGORY_LO;
}

bool is_upper_beyond_ascii(char32_t c) {
  auto const kind = category(c);
  return kind == UTF8PROC_CATEGORY_LU || kind == UTF8PROC_CATEGORY_LT;
}

bool is_lower_beyond_ascii(char32_t c) { return category(c) == UTF8PROC_CATEGORY_LL; }

bool is_mark(char32_t c) {
  switch (c) {
    case '\'':
    case '*':
    case '"':
    case '`':
    case '^':     // a raised number, as scans have it
    case '\\':    // a prime, as scans have it
    case 0xB4:    // acute accent
    case 0x2018:  // quotation marks
    case 0x2019:
    case 0x201C:
    case 0x201D:
    case 0x2032:  // prime, double prime
    case 0x2033:
    case 0x2217:  // asterisk operator
      return true;
    default:
      return false;
  }
}

std::string_view trim_left(std::string_view text) {
  for (auto c = code_point_at(text, 0);
       c.length > 0 && (is_blank(c.value) || is_invisible(c.value)); c = code_point_at(text, 0)) {
    text.remove_prefix(c.length);
  }
  return text;
}

std::string_view trim_right(std::string_view text) {
  for (auto c = code_point_before(text, text.size());
       c.length > 0 && (is_blank(c.value) || (is_invisible(c.value) && c.value != kSoftHyphen));
       c = code_point_before(text, text.size())) {
    text.remove_suffix(c.length);
  }
  return text;
}

std::string_view trim(std::string_view text) { return trim_right(trim_left(text)); }

std::string_view without_full_stop(std::string_view text) {
  if (text.ends_with('.')) text.remove_suffix(1);
  return text;
}

std::size_t skip_blanks(std::string_view text, std::size_t at) {
  if (at < text.size() && is_plain_sign(text[at])) return at;
  for (auto c = code_point_at(text, at);
       c.length > 0 && (is_blank(c.value) || is_invisible(c.value)); c = code_point_at(text, at)) {
    at += c.length;
  }
  return at;
}

bool may_have_dash(std::string_view text) {
  // All bytes are looked at, many at a time (a bool would be looked at one by one).
  unsigned dashes = 0;
  for (char const c : text) {
    dashes |= static_cast<unsigned>((c == '-') | (static_cast<unsigned char>(c) >= 0x80));
  }
  return dashes != 0;
}

std::uint32_t number_of(std::string_view digits) {
  std::uint32_t number = 0;
  for (char const c : digits) number = number * 10 + static_cast<std::uint32_t>(c - '0');
  return number;
}

std::size_t last_word_begin(std::string_view text) {
  auto begin = text.size();
  while (begin > 0) {
    auto const c = code_point_before(text, begin);
    if (is_blank(c.value)) break;
    begin -= c.length;
  }
  return begin;
}

std::vector<std::string_view> words_of(std::string_view text, std::size_t most) {
  constexpr std::size_t kUsual = 12;
  std::vector<std::string_view> words;
  words.reserve(std::min(kUsual, most));
  std::size_t at = skip_blanks(text, 0);
  while (at < text.size() && words.size() < most) {
    std::size_t end = at;
    for (;;) {
      end = static_cast<std::size_t>(
          std::find_if_not(text.begin() + end, text.end(), is_plain_sign) - text.begin());
      auto const c = code_point_at(text, end);
      if (c.length == 0 || is_blank(c.value)) break;
      end += c.length;
    }
    words.push_back(text.substr(at, end - at));
    bool const single = end + 1 < text.size() && text[end] == ' ' && is_plain_sign(text[end + 1]);
    at = single ? end + 1 : skip_blanks(text, end);
  }
  return words;
}

std::string_view start_of(std::string_view text, std::size_t bytes) {
  if (bytes >= text.size()) return text;
  while (bytes > 0 && (static_cast<unsigned char>(text[bytes]) & 0xC0U) == 0x80) --bytes;
  return text.substr(0, bytes);
}

std::string fold(std::string_view text) {
  unsigned char all = 0;
  for (char const c : text) all |= static_cast<unsigned char>(c);
  if (all < 0x80) {
    std::string folded{text};
    for (auto& c : folded) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c | 0x20 : c);
    return folded;
  }
  utf8proc_uint8_t* raw = nullptr;
  auto const length = utf8proc_map(
      reinterpret_cast<utf8proc_uint8_t const*>(text.data()),
      static_cast<utf8proc_ssize_t>(text.size()), &raw,
      static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD));
  std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> const owner{raw, &std::free};
  if (length < 0) return std::string{text};
  return {reinterpret_cast<char const*>(raw), static_cast<std::size_t>(length)};
}

std::string squeeze(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  bool gap = false;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    if (is_blank(c.value)) {
      gap = true;
    } else if (!is_invisible(c.value)) {
      if (gap && !out.empty()) out.push_back(' ');
      gap = false;
      // The rest of a word in plain letters goes with its first.
      auto end = at + c.length;
      while (end < text.size() && is_plain_sign(text[end])) ++end;
      out.append(text, at, end - at);
      at = end;
      continue;
    }
    at += c.length;
  }
  return out;
}

bool starts_with_upper(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    if (is_letter(c.value)) return !is_lower(c.value);
    if (is_digit(c.value)) return false;
    at += c.length;
  }
  return false;
}

bool is_in_capitals(std::string_view word, std::size_t fewest) {
  std::size_t letters = 0;
  for (std::size_t at = 0; at < word.size();) {
    auto const c = code_point_at(word, at);
    if (!is_upper(c.value)) return false;
    ++letters;
    at += c.length;
  }
  return letters >= fewest;
}

bool is_cut_short_in_capitals(std::string_view word) {
  constexpr std::size_t kFewest = 3;  // letters
  return word.ends_with('.') && is_in_capitals(word.substr(0, word.size() - 1), kFewest);
}

}  // namespace keydrift::printed
