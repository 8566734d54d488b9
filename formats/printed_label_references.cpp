// Couplets as leads and back-references name them, and the keys by which labels are found.

#include <algorithm>
#include <string>

#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_label_parts.hpp"

namespace keydrift::printed {

std::string base_name(Label const& label) {
  if (label.family == LabelFamily::digits) {
    return std::to_string(label.number) + std::string{label.letter};
  }
  if (label.family == LabelFamily::dash) return {};
  char const first = label.family == LabelFamily::upper ? 'A' : 'a';
  return {static_cast<char>(first + static_cast<char>(label.number - 1))};
}

LabelKey key_of(LabelFamily family, std::uint32_t number, std::string_view letter,
                std::uint8_t marks) {
  // "bis" and "ter" are no letters; any two codes above 'z' will do.
  LabelKey const code = letter.empty()    ? 0U
                        : letter == "bis" ? 0xFEU
                        : letter == "ter" ? 0xFFU
                                          : static_cast<unsigned char>(letter.front());
  return (static_cast<LabelKey>(family) << 48U) | (static_cast<LabelKey>(number) << 16U) |
         (code << 8U) | marks;
}

std::optional<Reference> read_reference(std::string_view text) {
  text = trim(text);
  Reference reference;
  reference.printed = text;
  if (auto const digits = digits_at(text, 0); digits > 0) {
    if (digits > kMaximumDigits) return std::nullopt;
    reference.number = number_of(text.substr(0, digits));
    auto at = digits;
    if (value_at(text, at) == ' ' && inserted_at(text, at + 1) > 0) ++at;  // "9 bis"
    auto const letter = letter_at(text, at);
    reference.letter = text.substr(at, letter);
    auto const marks = marks_at(text, at + letter);
    reference.marks = marks.count;
    if (at + letter + marks.length != text.size()) return std::nullopt;
    return reference;
  }
  auto const first = value_at(text, 0);
  bool const upper = first >= 'A' && first <= 'Z';
  if (!upper && !(first >= 'a' && first <= 'z')) return std::nullopt;
  std::size_t length = 1;
  while (value_at(text, length) == first) ++length;
  auto const marks = marks_at(text, length);
  if (length > kMaximumRepetition || length + marks.length != text.size()) return std::nullopt;
  reference.family = upper ? LabelFamily::upper : LabelFamily::lower;
  reference.number = 1 + first - (upper ? U'A' : U'a');
  reference.marks = static_cast<std::uint8_t>(length - 1 + marks.count);
  return reference;
}

std::optional<std::vector<Reference>> read_references(std::string_view text) {
  for (auto const word : {std::string_view{"from "}, std::string_view{"de "},
                          std::string_view{"von "}, std::string_view{"aus "}}) {
    if (text.substr(0, word.size()) == word) text.remove_prefix(word.size());
  }
  std::vector<Reference> references;
  std::size_t begin = 0;
  while (begin <= text.size()) {
    auto end = text.find_first_of(",;/&", begin);
    if (end == std::string_view::npos) end = text.size();
    auto piece = trim(text.substr(begin, end - begin));
    if (piece.size() > 1 && piece.back() == '.') piece.remove_suffix(1);  // "1. (40.)"
    auto const reference = read_reference(piece);
    if (!reference) return std::nullopt;
    references.push_back(*reference);
    begin = end + 1;
  }
  if (references.empty()) return std::nullopt;
  // A lettered back-reference is a lone capital; "(a)" after a number is more often a remark.
  bool const all_digits = std::all_of(references.begin(), references.end(), [](auto const& one) {
    return one.family == LabelFamily::digits;
  });
  bool const all_upper = std::all_of(references.begin(), references.end(), [](auto const& one) {
    return one.family == LabelFamily::upper;
  });
  if (!all_digits && !all_upper) return std::nullopt;
  return references;
}

}  // namespace keydrift::printed
