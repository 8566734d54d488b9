#pragma once
// Digits that are set above or below the line: "m²", "H₂".  Inner header of formats.

#include <array>
#include <string_view>

namespace keydrift {

// By the digit, from 0 to 9; UTF-8.
inline constexpr std::array<std::string_view, 10> kRaisedDigits{"⁰", "¹", "²", "³", "⁴",
                                                                "⁵", "⁶", "⁷", "⁸", "⁹"};
inline constexpr std::array<std::string_view, 10> kLoweredDigits{"₀", "₁", "₂", "₃", "₄",
                                                                 "₅", "₆", "₇", "₈", "₉"};

}  // namespace keydrift
