#pragma once
// Characters of printed keys: blanks of every kind, letters, dashes.  Inner header of formats.

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

// One code point of well-formed UTF-8 and its length in bytes; length 0 at the end of the text.
struct CodePoint {
  char32_t value{};
  std::size_t length{};
};

// The same for a place where a code point beyond ASCII stands, or ends.
[[nodiscard]] CodePoint beyond_ascii_at(std::string_view text, std::size_t at);
[[nodiscard]] CodePoint beyond_ascii_before(std::string_view text, std::size_t at);

// Asked of every character of a key many times over, so open to the compiler.
[[nodiscard]] inline CodePoint code_point_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  auto const first = static_cast<unsigned char>(text[at]);
  return first < 0x80 ? CodePoint{first, 1} : beyond_ascii_at(text, at);
}
[[nodiscard]] inline CodePoint code_point_before(std::string_view text, std::size_t at) {
  if (at == 0) return {};
  auto const last = static_cast<unsigned char>(text[at - 1]);
  return last < 0x80 ? CodePoint{last, 1} : beyond_ascii_before(text, at);
}

// Blanks, tabs, form feed, no-break and thin spaces.
[[nodiscard]] inline bool is_blank(char32_t c) {
  if (c < 0x80) return c == ' ' || c == '\t' || c == '\f' || c == '\n';
  return c == 0xA0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F || c == 0x3000;
}
// Soft hyphen, zero-width characters, and those that change the direction of writing.
[[nodiscard]] inline bool is_invisible(char32_t c) {
  return c >= 0xAD && (c == 0xAD || (c >= 0x200B && c <= 0x200F) || (c >= 0x202A && c <= 0x202E) ||
                       (c >= 0x2060 && c <= 0x2069) || c == 0xFEFF);
}
[[nodiscard]] bool is_letter_beyond_ascii(char32_t c);
[[nodiscard]] bool is_upper_beyond_ascii(char32_t c);
[[nodiscard]] bool is_lower_beyond_ascii(char32_t c);
[[nodiscard]] inline bool is_letter(char32_t c) {
  if (c < 0x80) return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  return is_letter_beyond_ascii(c);
}
// Upper or title case.
[[nodiscard]] inline bool is_upper(char32_t c) {
  return c < 0x80 ? c >= 'A' && c <= 'Z' : is_upper_beyond_ascii(c);
}
[[nodiscard]] inline bool is_lower(char32_t c) {
  return c < 0x80 ? c >= 'a' && c <= 'z' : is_lower_beyond_ascii(c);
}
// Hyphen, en and em dashes, minus.
[[nodiscard]] inline bool is_dash(char32_t c) {
  if (c < 0x80) return c == '-';
  return (c >= 0x2010 && c <= 0x2015) || c == 0x2212 || c == 0xFE58 || c == 0xFF0D;
}
// A word that is nothing but a dash.
[[nodiscard]] inline bool is_lone_dash(std::string_view word) {
  auto const c = code_point_at(word, 0);
  return is_dash(c.value) && c.length == word.size();
}
[[nodiscard]] bool is_mark(char32_t c);  // what marks a second lead: ' ’ ′ ´ * " …
[[nodiscard]] inline bool is_digit(char32_t c) { return c >= '0' && c <= '9'; }
// Of the letters without accents.
[[nodiscard]] inline bool is_small(char c) { return c >= 'a' && c <= 'z'; }
[[nodiscard]] inline bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }
// Is it one of these signs?  0 is none.
[[nodiscard]] inline bool is_among(char32_t c, std::u32string_view signs) {
  return c != 0 && signs.find(c) != std::u32string_view::npos;
}

// Without blanks and invisible characters at both ends.
[[nodiscard]] std::string_view trim(std::string_view text);
[[nodiscard]] std::string_view trim_left(std::string_view text);
[[nodiscard]] std::string_view trim_right(std::string_view text);
// Where the words before `end` end, without the blanks behind them.
[[nodiscard]] inline std::size_t end_before_blanks(std::string_view text, std::size_t end) {
  return trim_right(text.substr(0, end)).size();
}
// Without the full stop that ends it, if one does.
[[nodiscard]] std::string_view without_full_stop(std::string_view text);
// Index of the first character at or after `at` that is not blank.
[[nodiscard]] std::size_t skip_blanks(std::string_view text, std::size_t at);

// The number that digits alone print.
[[nodiscard]] std::uint32_t number_of(std::string_view digits);

// Where the last word of the text begins: behind its last blank, 0 where there is none.
[[nodiscard]] std::size_t last_word_begin(std::string_view text);

// Words between blanks, the first `most` of them.
[[nodiscard]] std::vector<std::string_view> words_of(std::string_view text,
                                                     std::size_t most = SIZE_MAX);

// What stands before the first blank.
[[nodiscard]] inline std::string first_word(std::string_view text) {
  return std::string{text.substr(0, text.find(' '))};
}

// The lengths of the words of all lists as bits, by first byte.  Most words of a key are none of a
// list, and told from all of them by one look (may_be_among()).  Precondition: shorter than 32
// bytes.
template <class... Lists>
[[nodiscard]] constexpr std::array<std::uint32_t, 256> lengths_by_beginning(Lists const&... lists) {
  std::array<std::uint32_t, 256> lengths{};
  auto const add = [&](auto const& list) {
    for (std::string_view const word : list) {
      lengths[static_cast<unsigned char>(word[0])] |= 1U << word.size();
    }
  };
  (add(lists), ...);
  return lengths;
}
[[nodiscard]] inline bool may_be_among(std::array<std::uint32_t, 256> const& lengths,
                                       std::string_view word) {
  return !word.empty() && word.size() < 32 &&
         (lengths[static_cast<unsigned char>(word[0])] >> word.size() & 1U) != 0;
}

// False where the text surely has no dash of any kind, which is most of it.
[[nodiscard]] bool may_have_dash(std::string_view text);

// The first `bytes` bytes, fewer where a code point would be cut.
[[nodiscard]] std::string_view start_of(std::string_view text, std::size_t bytes);

// Case-folded.
[[nodiscard]] std::string fold(std::string_view text);

// Blanks of every kind squeezed to one " ", invisible characters dropped, trimmed.
[[nodiscard]] std::string squeeze(std::string_view text);

[[nodiscard]] bool starts_with_upper(std::string_view text);  // first letter or digit is upper case
// Upper-case letters and nothing else, `fewest` of them or more.
[[nodiscard]] bool is_in_capitals(std::string_view word, std::size_t fewest = 1);
[[nodiscard]] inline bool is_all_capitals(std::string_view word) { return is_in_capitals(word, 3); }
// "TRANS.", "ENT.": words in capitals that are cut short, as journals' names have them.
[[nodiscard]] bool is_cut_short_in_capitals(std::string_view word);

}  // namespace keydrift::printed
