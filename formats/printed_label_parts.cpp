#include "keydrift/formats/printed_label_parts.hpp"

namespace keydrift::printed {

std::size_t digits_at(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
  return end - at;
}

std::size_t inserted_at(std::string_view text, std::size_t at) {
  for (auto const word : {std::string_view{"bis"}, std::string_view{"ter"}}) {
    if (text.substr(at, word.size()) == word && !is_letter(value_at(text, at + word.size()))) {
      return word.size();
    }
  }
  return 0;
}

bool is_capital_of_word(std::string_view text, std::size_t at) {
  return at + 1 < text.size() && text[at] >= 'A' && text[at] <= 'Z' &&
         is_lower(value_at(text, at + 1));
}

std::size_t letter_at(std::string_view text, std::size_t at) {
  if (auto const inserted = inserted_at(text, at); inserted > 0) return inserted;
  auto const c = value_at(text, at);
  bool const latin = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  // "1aWings clear"
  bool const touched = c >= 'a' && c <= 'z' && is_capital_of_word(text, at + 1);
  return latin && (touched || !is_letter(value_at(text, at + 1))) ? 1 : 0;
}

Marks marks_at(std::string_view text, std::size_t at) {
  Marks marks;
  // "a!'": the first of two primes.
  if (text.substr(at).starts_with("!'") && at > 0) marks = {1, 1};
  for (auto c = code_point_at(text, at + marks.length);
       c.length > 0 && is_mark(c.value) && marks.count < 100;
       c = code_point_at(text, at + marks.length)) {
    bool const twice =
        c.value == '"' || c.value == 0x2033 || c.value == 0x201C || c.value == 0x201D;
    marks.count = static_cast<std::uint8_t>(marks.count + (twice ? 2 : 1));
    marks.length += c.length;
  }
  // "4+  Wings dark": the second lead of some German keys.
  constexpr std::size_t kMostPluses = 3;  // "4++" is the third
  std::size_t pluses = 0;
  while (pluses < kMostPluses && value_at(text, at + pluses) == '+') ++pluses;
  auto const behind = at + pluses;
  bool const plus = marks.count == 0 && pluses > 0 && at > 0 && is_digit(value_at(text, at - 1)) &&
                    is_blank(value_at(text, behind)) &&
                    is_upper(value_at(text, skip_blanks(text, behind)));
  if (plus) return {static_cast<std::uint8_t>(pluses), pluses};
  return marks;
}

}  // namespace keydrift::printed
