#pragma once
// Digits that are set above or below the line: "m²", "H₂", and the letters of footnotes.  Inner
// header of formats.

#include <array>
#include <cstddef>
#include <string_view>

namespace keydrift {

// By the digit, from 0 to 9; UTF-8.
inline constexpr std::array<std::string_view, 10> kRaisedDigits{"⁰", "¹", "²", "³", "⁴",
                                                                "⁵", "⁶", "⁷", "⁸", "⁹"};
inline constexpr std::array<std::string_view, 10> kLoweredDigits{"₀", "₁", "₂", "₃", "₄",
                                                                 "₅", "₆", "₇", "₈", "₉"};

// "busᵃ": from a to h, as the footnotes of tables count; UTF-8.
inline constexpr std::array<std::string_view, 8> kRaisedLetters{"ᵃ", "ᵇ", "ᶜ", "ᵈ",
                                                                "ᵉ", "ᶠ", "ᵍ", "ʰ"};
[[nodiscard]] inline bool may_be_raised(char c) {
  return c >= 'a' && c < 'a' + static_cast<char>(kRaisedLetters.size());
}
[[nodiscard]] inline std::string_view raised_letter(char c) {
  return kRaisedLetters[static_cast<std::size_t>(c - 'a')];
}
// Does a raised letter behind `before` point to a footnote?  "bus", "Roe", not "M" of "Mᵃ".
[[nodiscard]] inline bool may_bear_footnote(std::string_view before) {
  constexpr std::size_t kShortest = 3;  // letters of the word
  std::size_t letters = 0;
  while (letters < before.size() && letters < kShortest) {
    auto const c = static_cast<unsigned char>(before[before.size() - 1 - letters]);
    bool const small = c >= 'a' && c <= 'z';
    bool const capital = c >= 'A' && c <= 'Z';
    if (!small && !(capital && letters > 0)) break;
    ++letters;
  }
  return letters == kShortest;
}

}  // namespace keydrift
