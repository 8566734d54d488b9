#pragma once
// Labels of outlines: letters, numerals and signs that tell a lead's rank.  Inner header of
// formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {

enum class Alphabet : std::uint8_t {
  digits,
  upper,
  lower,  // a, aa, a1
  roman_upper,
  roman_lower,
  greek_upper,
  greek_lower,
  sign,  // * + § = and the like, told apart by their number of strokes
  dash,
};

// A label, and where it stands among those of its rank.
struct RankLabel {
  Label label;
  Alphabet alphabet{Alphabet::digits};
  char32_t sign{};           // for Alphabet::sign
  std::uint32_t ordinal{};   // A, a, α, I, 1, § 1 are 1; other signs and dashes 0
  std::uint32_t repeats{};   // AA, a', ** are 1; 1' and 1* too
  std::string_view decimal;  // "1.2.1", without a full stop at its end; empty for other labels
  // What the labels of one rank have in common: alphabet and punctuation.
  [[nodiscard]] std::uint32_t rank() const;
  static constexpr char32_t kDashAsSign = 0x2014;  // where dashes are the sign of a level
  static constexpr std::uint32_t kFirstSign = 72;  // ranks of signs begin here
  static constexpr std::uint32_t kRanks = 128;     // ranks are below
};

// The ranks of signs that are levels of an outline, each with a sign of its own that answers itself
// ("= Leaves linear" and "= Leaves ovate"), by what is_level(rank) tells; none where they are too
// few to be a habit.
template <typename IsLevel>
[[nodiscard]] std::vector<std::uint32_t> levels_by_sign(IsLevel const& is_level) {
  constexpr std::size_t kFewest = 3;
  std::vector<std::uint32_t> levels;
  for (auto rank = RankLabel::kFirstSign; rank < RankLabel::kRanks; ++rank) {
    if (is_level(rank)) levels.push_back(rank);
  }
  if (levels.size() < kFewest) levels.clear();
  return levels;
}

inline constexpr std::uint32_t kLargestNumeral = 39;  // beyond, a letter is likelier meant

// Of a family or a genus in a flora: "CXLIV. AUSACEAE".
inline constexpr std::uint32_t kLargestGroupNumeral = 399;

// "I" to `largest` (399 at most), upper or lower case; 0 for anything else.
[[nodiscard]] std::uint32_t roman_number(std::string_view letters,
                                         std::uint32_t largest = kLargestNumeral);

// The figure of an index behind a letter, on the line or raised, 1 to 9; 0 for anything else.
[[nodiscard]] std::uint32_t index_figure(char32_t c);

// The readings of the label that the line (trimmed on the left) seems to begin with: none, one, or
// two where letters are a roman numeral as well (I, v), which comes second.
[[nodiscard]] std::vector<RankLabel> read_rank_labels(std::string_view line);

}  // namespace keydrift::printed
