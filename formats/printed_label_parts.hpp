#pragma once
// What labels and references to couplets are made of: digits, letters, primes.  Inner header of
// formats.

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {

constexpr std::size_t kMaximumDigits = 8;      // keeps numbers within 32 bits
constexpr std::size_t kMaximumRepetition = 6;  // "aaaaaa" is a label, longer is a word

[[nodiscard]] inline char32_t value_at(std::string_view text, std::size_t at) {
  return code_point_at(text, at).value;
}

// The number of digits at `at`.
[[nodiscard]] std::size_t digits_at(std::string_view text, std::size_t at);

// Bytes of "bis" or "ter" behind a number.
[[nodiscard]] std::size_t inserted_at(std::string_view text, std::size_t at);

// "W" of "Wings".
[[nodiscard]] bool is_capital_of_word(std::string_view text, std::size_t at);

// Bytes of a letter that belongs to a number: one Latin letter, or "bis", "ter", with no letter
// after it.
[[nodiscard]] std::size_t letter_at(std::string_view text, std::size_t at);

// Primes and their like.
struct Marks {
  std::uint8_t count{};
  std::size_t length{};  // bytes
};

[[nodiscard]] Marks marks_at(std::string_view text, std::size_t at);

}  // namespace keydrift::printed
