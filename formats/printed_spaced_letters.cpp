// Labels whose letter or mark stands apart from the number: "1 a Wings clear" / "1 b Wings dark",
// "1 Wings clear" / "1 * Wings dark", "1(a) Wings clear" / "1(b) Wings dark".

#include <cstddef>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestSpacedCouplets = 2;
constexpr std::size_t kLongestSpacedReference = 12;  // bytes, of a back-reference

// "1 a Wings", "1 a. Wings", "1. a) Wings", "1 * Wings" and, as the first of two, "1 Wings".
struct SpacedLabel {
  Label label;
  char sign{};  // 'a', 'b', '*', before a bracket 'c' to 'e'; 0 without
};

// "(a)", "(b)." at `at`: the number's letter in brackets.
std::optional<SpacedLabel> read_bracketed_letter(std::string_view line, std::size_t digits,
                                                 std::size_t at) {
  if (at + 3 >= line.size() || line[at] != '(' || line[at + 2] != ')') return std::nullopt;
  char const letter = line[at + 1];
  if (letter < 'a' || letter > 'e') return std::nullopt;
  SpacedLabel found;
  found.sign = letter;
  found.label.number = number_of(line.substr(0, digits));
  found.label.printed = line.substr(0, at + 3);
  found.label.letter = line.substr(at + 1, 1);
  bool const stop = line[at + 3] == '.';
  if (stop) found.label.end = LabelEnd::dot;
  found.label.text_at = skip_blanks(line, at + (stop ? 4 : 3));
  return is_upper(code_point_at(line, found.label.text_at).value) ? std::optional{found}
                                                                  : std::nullopt;
}

std::optional<SpacedLabel> read_spaced_label(std::string_view line) {
  constexpr std::size_t kMostDigits = 3;
  std::size_t digits = 0;
  while (digits < line.size() && is_digit(static_cast<unsigned char>(line[digits]))) ++digits;
  if (digits == 0 || digits > kMostDigits || digits + 2 >= line.size()) return std::nullopt;
  if (auto const found = read_bracketed_letter(line, digits, skip_blanks(line, digits))) {
    return found;
  }
  std::size_t const number = digits + (line[digits] == '.' ? 1 : 0);
  auto const at = skip_blanks(line, number);
  if (at == number || at + 1 >= line.size()) return std::nullopt;
  bool const bracket = line[at] >= 'a' && line[at] <= 'e' && line[at + 1] == ')';
  if (number > digits && !bracket) return std::nullopt;  // a number as most keys print it
  SpacedLabel found;
  found.label.number = number_of(line.substr(0, digits));
  found.label.printed = line.substr(0, digits);
  found.label.text_at = at;
  if (bracket || line[at] == 'a' || line[at] == 'b' || line[at] == '*') {
    auto const stop = bracket || line.substr(at + 1).starts_with('.');
    auto const words = skip_blanks(line, at + (stop ? 2 : 1));
    if (words == at + (stop ? 2U : 1U) || words >= line.size()) return std::nullopt;
    found.sign = line[at];
    found.label.printed = line.substr(0, at + 1);
    found.label.text_at = words;
    if (stop) found.label.end = bracket ? LabelEnd::parenthesis : LabelEnd::dot;
    // "7 a. (1 b). Wings": what leads there.
    if (line[words] == '(') {
      auto const close = line.find(')', words);
      if (close == std::string_view::npos || close > words + kLongestSpacedReference) {
        return std::nullopt;
      }
      found.label.back = line.substr(words + 1, close - words - 1);
      found.label.text_at =
          skip_blanks(line, close + (line.substr(close + 1).starts_with('.') ? 2 : 1));
    }
    if (found.sign == '*') {
      found.label.marks = 1;
    } else {
      found.label.letter = line.substr(at, 1);
    }
  }
  return is_upper(code_point_at(line, found.label.text_at).value) ? std::optional{found}
                                                                  : std::nullopt;
}

}  // namespace

void tell_spaced_letters(std::vector<SourceLine>& lines) {
  std::vector<std::pair<std::size_t, Label>> spaced;
  std::size_t couplets = 0;  // of which the two stand in order
  std::size_t numbers = 0;   // lines that begin with a label of any other kind
  SpacedLabel before;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].text.empty() || lines[i].markup.role != LineRole::told_by_text) continue;
    auto const found = read_spaced_label(lines[i].text);
    if (!found) {
      auto const label = read_label(lines[i].text);
      bool const counts = label && label->family == LabelFamily::digits && !label->decimal &&
                          label->text_at < lines[i].text.size();
      if (counts && is_upper(code_point_at(lines[i].text, label->text_at).value)) ++numbers;
      continue;
    }
    bool const rival = before.label.number == found->label.number;
    if (found->sign != '\0') spaced.emplace_back(i, found->label);
    bool const answers =
        (before.sign == 'a' && found->sign == 'b') || (before.sign == '\0' && found->sign == '*');
    if (rival && answers) ++couplets;
    before = *found;
  }
  if (couplets < kFewestSpacedCouplets || numbers * 4 > couplets) return;
  tell_labels(lines, spaced);
}

}  // namespace keydrift::printed
