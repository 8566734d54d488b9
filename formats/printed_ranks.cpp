#include "keydrift/formats/printed_ranks.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostStrokes = 8;           // "********" is a label, more is a ruled line
constexpr std::size_t kLongestNumeral = 7;        // of a label, "xxxviii"
constexpr std::size_t kLongestGroupNumeral = 12;  // "ccclxxxviii"

// Signs that print uses for leads; their place here is their rank.
constexpr std::array<char32_t, 46> kRankSigns{'*',    '+',
                                              0xA7,   '=',
                                              0x2020, 0x2021,
                                              '#',    0xB6,
                                              0x25CB, 0x25CF,
                                              0x25A1, 0x25A0,
                                              0x25CA, 0x25C6,
                                              0x2606, 0x2605,
                                              '|',    0x2217,
                                              0xD7,   0x25B3,
                                              0xB0,   0x273D,
                                              0x2720, 0xF7,
                                              0x2016, 0x2225,
                                              0x2731, 0x2732,
                                              0x2736, 0x273B,
                                              0x274B, 0x2722,
                                              0x271A, 0x25C7,
                                              0x25B2, 0x25BD,
                                              0x25BC, 0x25E6,
                                              0x2299, 0x2609,
                                              0x25CE, 0x2295,
                                              0x2042, 0x203B,
                                              0x2206, RankLabel::kDashAsSign};

std::uint32_t place_among_signs(char32_t c) {
  auto const found = std::find(kRankSigns.begin(), kRankSigns.end(), c);
  return static_cast<std::uint32_t>(found - kRankSigns.begin());
}

bool is_rank_sign(char32_t c) {
  return c != RankLabel::kDashAsSign && place_among_signs(c) < kRankSigns.size();
}

struct Index {
  std::uint32_t value{};
  std::size_t length{};
};

// One digit, on the line or raised.
Index index_at(std::string_view line, std::size_t at) {
  auto const c = code_point_at(line, at);
  if (is_digit(c.value)) return {c.value - U'0', c.length};
  if (auto const raised = index_figure(c.value); raised > 0) return {raised, c.length};
  return {};
}

// "§ 2.", "§ II.": the number counts; returns where it ends, `end` where there is none.
std::size_t behind_section_number(std::string_view line, std::size_t at, std::size_t end,
                                  RankLabel& rank) {
  constexpr std::size_t kMostDigits = 2;
  auto behind = at;
  std::uint32_t number = 0;
  while (behind < line.size() && is_digit(static_cast<unsigned char>(line[behind]))) {
    number = number * 10 + static_cast<std::uint32_t>(line[behind] - '0');
    if (++behind - at > kMostDigits) return end;
  }
  if (number == 0) {
    while (behind < line.size() && line[behind] >= 'A' && line[behind] <= 'Z') ++behind;
    number = roman_number(line.substr(at, behind - at));
  }
  if (number == 0) return end;
  rank.ordinal = number;
  rank.label.printed = line.substr(0, behind);
  return behind;
}

// The same sign some times over, blanks between allowed.
std::optional<RankLabel> read_sign(std::string_view line, bool enclosed) {
  std::size_t at = enclosed ? 1 : 0;
  auto const first = code_point_at(line, at);
  if (!is_rank_sign(first.value)) return std::nullopt;
  std::size_t strokes = 0;
  std::size_t end = at;
  while (code_point_at(line, at).value == first.value && strokes <= kMostStrokes) {
    ++strokes;
    end = at + first.length;
    at = skip_blanks(line, end);
  }
  if (strokes > kMostStrokes || at >= line.size()) return std::nullopt;
  RankLabel rank;
  rank.alphabet = Alphabet::sign;
  rank.sign = first.value;
  rank.repeats = static_cast<std::uint32_t>(strokes - 1);
  rank.label.family = LabelFamily::dash;
  rank.label.printed = line.substr(enclosed ? 1 : 0, end - (enclosed ? 1 : 0));
  if (first.value == 0xA7 && strokes == 1) end = behind_section_number(line, at, end, rank);
  auto label = read_label_tail(line, end, enclosed, rank.label);
  // "+Leaves": the sign may stand close to the words.
  if (!label && !enclosed && is_upper(code_point_at(line, end).value)) {
    label = rank.label;
    label->text_at = end;
  }
  if (!label) return std::nullopt;
  rank.repeats += label->marks;
  rank.label = *label;
  return rank;
}

// German printers set "ß" for a beta; no word begins with it.
constexpr char32_t kSharpSForBeta = 0xDF;

std::optional<RankLabel> read_greek(std::string_view line, bool enclosed) {
  std::size_t at = enclosed ? 1 : 0;
  auto const first = code_point_at(line, at);
  bool const sharp = first.value == kSharpSForBeta;
  bool const upper = first.value >= 0x391 && first.value <= 0x3A9;
  bool const lower =
      sharp || (first.value >= 0x3B1 && first.value <= 0x3C9 && first.value != 0x3C2);
  if (!upper && !lower) return std::nullopt;
  std::size_t letters = 0;
  while (code_point_at(line, at).value == first.value) {
    ++letters;
    at += first.length;
  }
  if (letters > kMostStrokes || is_letter(code_point_at(line, at).value)) return std::nullopt;
  RankLabel rank;
  rank.alphabet = upper ? Alphabet::greek_upper : Alphabet::greek_lower;
  // The code points have a second sigma (or a gap) behind the rho.
  auto const place = sharp ? 1U : first.value - (upper ? 0x391U : 0x3B1U);
  rank.ordinal = place > 16 ? place : place + 1;
  rank.label.family = LabelFamily::dash;
  rank.label.printed = line.substr(enclosed ? 1 : 0, at - (enclosed ? 1 : 0));
  auto const label = read_label_tail(line, at, enclosed, rank.label);
  if (!label) return std::nullopt;
  rank.repeats = static_cast<std::uint32_t>(letters - 1 + label->marks);
  rank.label = *label;
  return rank;
}

// "a1", "b²": a letter with an index that tells its rank.
std::optional<RankLabel> read_indexed_rank(std::string_view line, bool enclosed) {
  std::size_t at = enclosed ? 1 : 0;
  auto const first = code_point_at(line, at).value;
  bool const upper = first >= 'A' && first <= 'Z';
  if (!upper && !(first >= 'a' && first <= 'z')) return std::nullopt;
  ++at;
  auto const index = index_at(line, at);
  if (index.length == 0) return std::nullopt;
  RankLabel rank;
  rank.alphabet = upper ? Alphabet::upper : Alphabet::lower;
  rank.ordinal = 1 + first - (upper ? U'A' : U'a');
  rank.label.family = LabelFamily::dash;
  rank.label.printed = line.substr(enclosed ? 1 : 0, 1 + index.length);
  auto const label = read_label_tail(line, at + index.length, enclosed, rank.label);
  if (!label) return std::nullopt;
  rank.repeats = index.value + label->marks;
  rank.label = *label;
  return rank;
}

std::optional<RankLabel> read_roman(std::string_view line, bool enclosed) {
  std::size_t const begin = enclosed ? 1 : 0;
  std::size_t end = begin;
  while (end < line.size() && end - begin <= kLongestNumeral &&
         is_letter(static_cast<unsigned char>(line[end])))
    ++end;
  auto const letters = line.substr(begin, end - begin);
  auto const number = roman_number(letters);
  if (number == 0) return std::nullopt;
  bool const upper = is_upper(static_cast<unsigned char>(letters.front()));
  bool const mixed = std::any_of(letters.begin(), letters.end(), [upper](char c) {
    return is_upper(static_cast<unsigned char>(c)) != upper;
  });
  if (mixed) return std::nullopt;
  RankLabel rank;
  rank.alphabet = upper ? Alphabet::roman_upper : Alphabet::roman_lower;
  rank.ordinal = number;
  rank.label.family = LabelFamily::dash;
  rank.label.printed = letters;
  auto const label = read_label_tail(line, end, enclosed, rank.label);
  if (!label) return std::nullopt;
  rank.repeats = label->marks;
  rank.label = *label;
  return rank;
}

RankLabel rank_of(Label const& label) {
  RankLabel rank;
  rank.label = label;
  rank.repeats = label.marks;
  switch (label.family) {
    case LabelFamily::digits:
      rank.alphabet = Alphabet::digits;
      rank.ordinal = label.number;
      if (label.decimal) {
        rank.decimal = label.printed;
        while (!rank.decimal.empty() &&
               !is_digit(static_cast<unsigned char>(rank.decimal.back()))) {
          rank.decimal.remove_suffix(1);
        }
      }
      // "1a" and "1b" are rivals as 1 and 1' are.
      if (!label.letter.empty()) {
        auto const c = static_cast<unsigned char>(label.letter.front());
        rank.repeats += 1U + c - (c >= 'a' ? 'a' : 'A');
      }
      break;
    case LabelFamily::upper:
      rank.alphabet = Alphabet::upper;
      rank.ordinal = label.number;
      break;
    case LabelFamily::lower:
      rank.alphabet = Alphabet::lower;
      rank.ordinal = label.number;
      break;
    case LabelFamily::dash:
      rank.alphabet = Alphabet::dash;
      break;
  }
  return rank;
}

}  // namespace

std::uint32_t index_figure(char32_t c) {
  constexpr std::u32string_view kRaised = U"¹²³⁴⁵⁶⁷⁸⁹";
  if (c >= U'1' && c <= U'9') return c - U'0';
  auto const raised = kRaised.find(c);
  return raised == std::u32string_view::npos ? 0 : static_cast<std::uint32_t>(raised) + 1;
}

std::uint32_t roman_number(std::string_view letters, std::uint32_t largest) {
  if (letters.empty() || letters.size() > kLongestGroupNumeral) return 0;
  auto const folded = fold(letters);
  std::uint32_t number = 0;
  std::uint32_t next = 0;
  for (auto letter = folded.rbegin(); letter != folded.rend(); ++letter) {
    std::uint32_t const value = *letter == 'i'   ? 1U
                                : *letter == 'v' ? 5U
                                : *letter == 'x' ? 10U
                                : *letter == 'l' ? 50U
                                : *letter == 'c' ? 100U
                                                 : 0U;
    if (value == 0) return 0;
    number = value < next ? number - value : number + value;
    next = std::max(next, value);
  }
  // Only what a numeral of that number looks like: no "IIII", no "VX".
  static constexpr std::array<char const*, 10> kOnes{"",  "i",  "ii",  "iii",  "iv",
                                                     "v", "vi", "vii", "viii", "ix"};
  static constexpr std::array<char const*, 10> kTens{"",  "x",  "xx",  "xxx",  "xl",
                                                     "l", "lx", "lxx", "lxxx", "xc"};
  static constexpr std::array<char const*, 4> kHundreds{"", "c", "cc", "ccc"};
  if (number > largest || number / 100 >= kHundreds.size()) return 0;
  auto const printed =
      std::string{kHundreds[number / 100]} + kTens[number / 10 % 10] + kOnes[number % 10];
  return printed == folded ? number : 0;
}

static_assert((static_cast<std::uint32_t>(Alphabet::dash) + 1) * kLabelEnds <=
              RankLabel::kFirstSign);
static_assert(RankLabel::kFirstSign + kRankSigns.size() <= RankLabel::kRanks);

std::uint32_t RankLabel::rank() const {
  if (alphabet == Alphabet::sign) return kFirstSign + place_among_signs(sign);
  return static_cast<std::uint32_t>(alphabet) * kLabelEnds + static_cast<std::uint32_t>(label.end);
}

std::vector<RankLabel> read_rank_labels(std::string_view line) {
  std::vector<RankLabel> readings;
  if (line.empty()) return readings;
  bool const enclosed = line.front() == '(' || line.front() == '[';
  if (auto const sign = read_sign(line, enclosed)) {
    readings.push_back(*sign);
    return readings;
  }
  if (auto const greek = read_greek(line, enclosed)) {
    readings.push_back(*greek);
    return readings;
  }
  if (auto const indexed = read_indexed_rank(line, enclosed)) {
    readings.push_back(*indexed);
    return readings;
  }
  if (auto const label = read_label(line)) readings.push_back(rank_of(*label));
  if (auto const roman = read_roman(line, enclosed)) readings.push_back(*roman);
  return readings;
}

}  // namespace keydrift::printed
