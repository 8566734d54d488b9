#pragma once
// How much a line's front has to be damaged to be a label that is expected there.  Inner header of
// formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace keydrift::printed {

// Signs of an expected label that stand for several.
inline constexpr char32_t kAnyDash = 1;
inline constexpr char32_t kAnyFigures = 2;  // one to three, "12" of "6 (12)"
inline constexpr char32_t kOnePrime = 3;    // 4', beside labels with two
inline constexpr char32_t kTwoPrimes = 4;   // 4" and 4''
inline constexpr char32_t kThreePrimes = 5;
inline constexpr char32_t kIndex = 16;  // and 1 to 9: that figure, on the line or raised
inline constexpr char32_t kMostIndex = 9;

// Primes that the character is: 2 of ", 1 of ', 0 of any other.
[[nodiscard]] int primes_in(char32_t c);

// What is left of a label at a line's front.
struct WornLabel {
  float wear{};         // 0: as expected; about 1 for each damaged sign
  float doubt{};        // whether words follow
  std::size_t end{};    // bytes of the line, behind the label
  std::size_t words{};  // where the words begin; the line's end where none follow
};

// The least damage that makes `expected` of the line's front: letters and signs taken for others,
// specks, lost signs, blanks within.  `upper`: words begin with a capital.  nullopt where too much
// would have to be amiss.  The likelihoods are common practice, not measured.
[[nodiscard]] std::optional<WornLabel> worn_label(std::string_view line,
                                                  std::u32string_view expected, bool upper);

// The least damage that makes `sign` of the whole text: "h" of 4, "1 5" of 15, "/" of f.  nullopt
// where too much would have to be amiss, or where the text is the sign.
[[nodiscard]] std::optional<float> worn_sign(std::string_view text, std::string_view sign);

}  // namespace keydrift::printed
