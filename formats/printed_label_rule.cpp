// The labels that a rule of a key calls for, as text to be expected or to be printed.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label_habits.hpp"
#include "keydrift/formats/printed_worn_label.hpp"
#include "keydrift/formats/text_encodings.hpp"

namespace keydrift::printed {
namespace {

std::u32string in_wide(std::string_view text) { return {text.begin(), text.end()}; }

// Up to 39, which no outline exceeds.
std::string roman_numeral(std::uint32_t number) {
  std::string letters(number / 10, 'X');
  static constexpr std::array<std::string_view, 10> kOnes{"",  "I",  "II",  "III",  "IV",
                                                          "V", "VI", "VII", "VIII", "IX"};
  return letters + std::string{kOnes[number % 10]};
}

// a', a", a'", and a4 from the fourth on, for no printer sets four primes.
void append_marks(RankAlphabet const& rank, std::u32string& label) {
  constexpr std::uint32_t kMostPrimes = 3;
  if (rank.marks == 0) return;
  if (rank.figures || rank.marks > kMostPrimes) {
    label += kIndex + rank.marks;
  } else {
    label += rank.marks == 1 ? kOnePrime : rank.marks == 2 ? kTwoPrimes : kThreePrimes;
  }
}

std::u32string rank_label(RankAlphabet const& rank, std::uint32_t ordinal) {
  constexpr std::uint32_t kLetters = 26;
  constexpr std::uint32_t kGreekLetters = 17;  // up to rho; sigma has two forms
  if (ordinal > kLetters) return {};
  switch (rank.alphabet) {
    case Alphabet::digits:
      return in_wide(std::to_string(ordinal));
    case Alphabet::upper:
      return {U'A' + (ordinal - 1)};
    case Alphabet::lower:
      return {U'a' + (ordinal - 1)};
    case Alphabet::roman_upper:
      return in_wide(roman_numeral(ordinal));
    case Alphabet::roman_lower:
      return in_wide(fold(roman_numeral(ordinal)));
    case Alphabet::greek_lower:
      return ordinal > kGreekLetters ? std::u32string{} : std::u32string{U'α' + (ordinal - 1)};
    case Alphabet::sign:
      return std::u32string(ordinal, rank.sign);
    default:
      return {};
  }
}

}  // namespace

std::u32string LabelHabit::expected(std::uint32_t count, std::uint32_t half) const {
  if (sign == LabelSign::ranks) {
    if (count > ranks.size()) return {};
    auto const& rank = ranks[count - 1];
    auto label = rank_label(rank, half);
    if (label.empty() || rank.alphabet == Alphabet::sign) return label;
    append_marks(rank, label);
    return (rank.enclosed ? U"(" : U"") + label + rank.end;
  }
  if (half > 1 && second == SecondSign::unlabelled) return {};
  if (half > 1 && second == SecondSign::dash) return {is_dash(dash) ? kAnyDash : dash};
  if (half > 1 && second == SecondSign::letter) {
    std::u32string label(1, U'a' + (half - 1));
    if (end != 0) label += end;
    return label;
  }
  std::u32string label;
  if (sign == LabelSign::number || sign == LabelSign::place) {
    label = in_wide(std::to_string(count));
  } else {
    constexpr std::uint32_t kLetters = 26;
    bool const upper = sign == LabelSign::upper || sign == LabelSign::upper_counted;
    auto const first = upper ? U'A' : U'a';
    // "z." and then "aa."
    bool const twice = count > kLetters && second == SecondSign::repeated;
    if (count > kLetters * (twice ? 2 : 1)) return {};
    label.append(twice ? 2 : 1, first + (count - 1) % kLetters);
  }
  switch (second) {
    case SecondSign::lettered:
    case SecondSign::letter:
      label += U'a' + (half - 1);
      break;
    case SecondSign::marked:
      label.append(half - 1, U'\'');
      break;
    case SecondSign::two_and_one:
      label += half == 1 ? kTwoPrimes : kOnePrime;
      break;
    case SecondSign::doubled:
      label.append(half - 1, label[0]);
      break;
    case SecondSign::raised:
      label += half == 1 ? U'¹' : half == 2 ? U'²' : U'³';
      break;
    default:
      break;
  }
  if (enclosed && !back && sign != LabelSign::place) return U'(' + label + U')';
  bool const bracket =
      sign == LabelSign::place || (back && count > 1 && (half == 1 || second_back));
  if (bracket) {
    label += U'(';
    label += kAnyFigures;
    label += U')';
  }
  bool const apart =
      second == SecondSign::repeated || (second == SecondSign::marked && sign == LabelSign::number);
  bool const number = sign == LabelSign::number || sign == LabelSign::place;
  auto const sign_behind = half > 1 && apart && number ? second_end : end;
  if (sign_behind != 0) label += sign_behind;
  return label;
}

std::string LabelHabit::printed(std::uint32_t count, std::uint32_t half,
                                std::uint32_t back_number) const {
  std::string text;
  bool left_out = false;  // within brackets whose figures are not known
  for (auto const c : expected(count, half)) {
    bool const opens = c == U'(';
    if (opens) left_out = back_number == 0 && sign != LabelSign::ranks && !enclosed;
    if (!left_out) {
      if (opens && sign == LabelSign::place) text += ' ';
      if (c == kAnyDash) {
        bool const behind = !text.empty();
        if (behind) text += ' ';
        encodings::append_code_point(text, behind ? U'—' : dash);
      } else if (c == kAnyFigures) {
        text += std::to_string(back_number);
      } else if (c == kOnePrime || c == kTwoPrimes || c == kThreePrimes) {
        text += c == kOnePrime ? "'" : c == kTwoPrimes ? "\"" : "'\"";
      } else if (c > kIndex && c <= kIndex + kMostIndex) {
        text += static_cast<char>('0' + (c - kIndex));
      } else {
        encodings::append_code_point(text, c);
      }
    } else if (c == U')') {
      left_out = false;
    }
  }
  return text;
}

}  // namespace keydrift::printed
