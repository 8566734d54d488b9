#pragma once
// Characters of printed keys: blanks of every kind, letters, dashes.  Inner header of formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

// One code point of well-formed UTF-8 and its length in bytes; length 0 at the end of the text.
struct CodePoint {
  char32_t value{};
  std::size_t length{};
};
[[nodiscard]] CodePoint code_point_at(std::string_view text, std::size_t at);
[[nodiscard]] CodePoint code_point_before(std::string_view text, std::size_t at);

[[nodiscard]] bool is_blank(char32_t c);      // blanks, tabs, form feed, no-break and thin spaces
[[nodiscard]] bool is_invisible(char32_t c);  // soft hyphen, zero-width characters
[[nodiscard]] bool is_letter(char32_t c);
[[nodiscard]] bool is_upper(char32_t c);  // upper or title case
[[nodiscard]] bool is_lower(char32_t c);
[[nodiscard]] bool is_dash(char32_t c);  // hyphen, en and em dashes, minus
[[nodiscard]] bool is_mark(char32_t c);  // what marks a second lead: ' ’ ′ ´ * " …
[[nodiscard]] inline bool is_digit(char32_t c) { return c >= '0' && c <= '9'; }

// Without blanks and invisible characters at both ends.
[[nodiscard]] std::string_view trim(std::string_view text);
[[nodiscard]] std::string_view trim_left(std::string_view text);
[[nodiscard]] std::string_view trim_right(std::string_view text);
// Index of the first character at or after `at` that is not blank.
[[nodiscard]] std::size_t skip_blanks(std::string_view text, std::size_t at);

// Words between blanks.
[[nodiscard]] std::vector<std::string_view> words_of(std::string_view text);

// The first `bytes` bytes, fewer where a code point would be cut.
[[nodiscard]] std::string_view start_of(std::string_view text, std::size_t bytes);

// Case-folded.
[[nodiscard]] std::string fold(std::string_view text);

// Blanks of every kind squeezed to one " ", invisible characters dropped, trimmed.
[[nodiscard]] std::string squeeze(std::string_view text);

[[nodiscard]] bool starts_with_upper(std::string_view text);  // first letter or digit is upper case

}  // namespace keydrift::printed
