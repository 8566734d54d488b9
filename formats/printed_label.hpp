#pragma once
// The label at the front of a lead: number, letter, marks, back-references.  Inner header of
// formats.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

enum class LabelFamily : std::uint8_t {
  digits,  // 7, 7a, 7'
  upper,   // A, AA
  lower,   // a, aa
  dash,    // –, *, '
};

// touching: a capital touches the number, "1Wings clear", as where a column was lost.
enum class LabelEnd : std::uint8_t {
  none,
  dot,
  parenthesis,
  enclosed,
  colon,
  dash,
  degree,
  touching
};
inline constexpr std::uint32_t kLabelEnds = 8;

// Borrows the line that it was read from.
struct Label {
  LabelFamily family{LabelFamily::digits};
  LabelEnd end{LabelEnd::none};
  std::uint8_t marks{};      // primes and stars, and repetitions of a letter (AA: 1)
  std::uint32_t number{};    // A and a are 1; dashes 0
  std::string_view letter;   // after a number: "a" of 7a
  std::string_view printed;  // label as printed, without back-references and punctuation
  std::string_view back;     // what stands in the back-reference's brackets
  std::size_t text_at{};     // where the words begin in the line read
  bool decimal{false};       // 1.1: a numbering by sections

  [[nodiscard]] bool is_dash() const { return family == LabelFamily::dash; }
  // What numbering styles are told apart by.
  [[nodiscard]] unsigned style() const;
  static constexpr unsigned kStyles = 64;
};

// "1889. Aus, Roe, Proc. Marsh. 4, p. 56.": larger numbers are years, unless the count reaches
// them.
inline constexpr std::uint32_t kMostCouplets = 999;

// The label that the line (trimmed on the left) seems to begin with.  Whether it is one is decided
// by its neighbours.
[[nodiscard]] std::optional<Label> read_label(std::string_view line);

// The label that is all of the text, but for blanks around it: "7", "2 (1)", "–", "b.".
[[nodiscard]] std::optional<Label> label_alone(std::string_view text);

// What may follow a label's sign: marks, punctuation, back-references.  `at` stands behind the sign
// and `label` has what is known of it; nullopt when no label ends so.
[[nodiscard]] std::optional<Label> read_label_tail(std::string_view line, std::size_t at,
                                                   bool enclosed, Label label);

// A label with misread digits ("la" for 1a, "1 0." for 10., and S for the 8, G for the 6, g for the
// 9 that is expected) or a comma for its full stop, if it begins with `number` when read as such.
// `bare_allowed`: a number without letter, mark or punctuation will do.
[[nodiscard]] std::optional<Label> read_misprinted_label(std::string_view line,
                                                         std::uint32_t number, bool bare_allowed);

// "30 (31 Wings", "38 (39j Legs", "l6 (17) Head", "12 (I3). Ribs": `number` with the bracket of its
// rival, one of them damaged.
[[nodiscard]] std::optional<Label> read_damaged_back_reference(std::string_view line,
                                                               std::uint32_t number);
// Such a label, its words at `text_at`; the rival's number is left out unless all of `back` is
// figures.  Borrows the texts.
[[nodiscard]] Label label_with_back(std::uint32_t number, std::string_view printed,
                                    std::string_view back, std::size_t text_at);

// "la. Wings" for 1a, "l0b. Legs" for 10b: a number of which a digit was misread, with its letter.
[[nodiscard]] std::optional<Label> read_misread_lettered(std::string_view line);

// The number that `text` may be a misreading of: l, I, | and ! for 1, O and o for 0, S for 5, B for
// 8, Z for 2, a blank between two digits ("l4", "1o", "S", "1 2").  Nothing for a number that is
// read rightly.
[[nodiscard]] std::optional<std::uint32_t> misread_number(std::string_view text);
// The same with the digits that letters less often stand for: "S" for 8, "G" for 6, "q" for 9.
[[nodiscard]] std::optional<std::uint32_t> rarely_misread_number(std::string_view text);

// "7" or "7a": number with its letter, or the letters of a lettered key ("A").
[[nodiscard]] std::string base_name(Label const& label);

// A couplet as it is referred to: "8", "12a", "1´".
struct Reference {
  LabelFamily family{LabelFamily::digits};
  std::uint32_t number{};
  std::string_view letter;
  std::uint8_t marks{};
  std::string_view printed;
};

// A label packed to be looked up: family, number, letter, marks.
using LabelKey = std::uint64_t;
[[nodiscard]] LabelKey key_of(LabelFamily family, std::uint32_t number, std::string_view letter,
                              std::uint8_t marks);
[[nodiscard]] inline LabelKey key_of(Reference const& one) {
  return key_of(one.family, one.number, one.letter, one.marks);
}
// The same without letter and marks: all labels of one number.
[[nodiscard]] inline LabelKey number_key(LabelKey key) { return key & ~LabelKey{0xFFFF}; }
// The same without marks.
[[nodiscard]] inline LabelKey letter_key(LabelKey key) { return key & ~LabelKey{0xFF}; }

// Reads a reference that covers the whole of `text`.
[[nodiscard]] std::optional<Reference> read_reference(std::string_view text);

// "3, 12", "from 7", "1´": nullopt when anything else stands there.
[[nodiscard]] std::optional<std::vector<Reference>> read_references(std::string_view text);

}  // namespace keydrift::printed
