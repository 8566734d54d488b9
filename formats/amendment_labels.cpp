#include "keydrift/formats/amendment_labels.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "6bis a." is {"6bis", 'a', 7}: what is put behind the number, the letter, and the bytes of all.
struct LetteredLabel {
  std::string_view base;
  char letter{};
  std::size_t end{};
};

std::size_t end_of_suffix(std::string_view text, std::size_t at) {
  static constexpr std::array kSuffixes{"bis"sv, "ter"sv, "quater"sv, "’"sv, "'"sv, "′"sv};
  for (auto const suffix : kSuffixes) {
    if (text.substr(at).starts_with(suffix)) return at + suffix.size();
  }
  return at;
}

// The letter may stand apart from "bis", and stands close to a prime.
std::optional<LetteredLabel> lettered_label(std::string_view text) {
  std::size_t digits = 0;
  while (digits < text.size() && is_digit(static_cast<unsigned char>(text[digits]))) ++digits;
  auto const base = end_of_suffix(text, digits);
  if (digits == 0 || base == digits) return std::nullopt;
  auto at = base;
  if (at < text.size() && text[at] == ' ') ++at;
  bool const word = is_letter(static_cast<unsigned char>(text[base - 1]));
  if (at >= text.size() || text[at] < 'a' || text[at] > 'h' || (word && at == base)) {
    return std::nullopt;
  }
  return LetteredLabel{text.substr(0, base), text[at], at + 1};
}

// With its stop, before the words of a lead.
std::optional<LetteredLabel> label_of_line(std::string_view text) {
  auto label = lettered_label(text);
  if (!label || label->end + 1 >= text.size()) return std::nullopt;
  if (text[label->end] != '.' && text[label->end] != ')') return std::nullopt;
  ++label->end;
  bool const apart = skip_blanks(text, label->end) > label->end;
  return apart ? label : std::nullopt;
}

// As many bytes and code points as were there.
std::string in_place_of(std::string_view printed, std::string sign) {
  auto const characters = count_code_points(printed);
  if (sign == "-" && printed.size() == characters + 2) sign = "–";
  while (sign.size() < printed.size()) sign += ' ';
  return sign;
}

// "… 3’a" leads to the first lead of 3’.
void take_letter_from_end(std::string& text, std::set<std::string, std::less<>> const& bases) {
  auto const words = trim_right(text);
  auto begin = words.size();
  for (std::size_t parts = 0; parts < 2; ++parts) {
    while (begin > 0 && words[begin - 1] != ' ' && words[begin - 1] != '\t' &&
           words[begin - 1] != '.') {
      --begin;
    }
    auto const label = lettered_label(words.substr(begin));
    bool const whole = label && begin + label->end == words.size() && begin > 0;
    if (whole && label->letter == 'a' && bases.count(label->base) != 0) {
      text.resize(begin + label->end - 1);
      return;
    }
    if (begin == 0) return;
    --begin;
  }
}

}  // namespace

std::vector<std::size_t> take_letters_from_labels(std::vector<SourceLine>& lines,
                                                  std::deque<std::string>& made) {
  std::set<std::string, std::less<>> firsts;
  std::set<std::string, std::less<>> bases;
  for (auto const& line : lines) {
    auto const label = label_of_line(line.text);
    if (!label) continue;
    if (label->letter == 'a') firsts.emplace(label->base);
    if (label->letter == 'b' && firsts.count(label->base) != 0) bases.emplace(label->base);
  }
  std::vector<std::size_t> begins;
  if (bases.empty()) return begins;
  bool within = false;
  for (auto& line : lines) {
    std::string text{line.text};
    auto const label = label_of_line(line.text);
    bool const lettered = label && bases.count(label->base) != 0;
    auto const other = read_label(line.text);
    bool const starts = lettered ? label->letter == 'a' : within && other && !other->is_dash();
    if (starts) begins.push_back(line.begin);
    within = lettered || (within && !starts);
    if (lettered) {
      auto const printed = line.text.substr(0, label->end);
      auto const sign = label->letter == 'a' ? std::string{label->base} + "." : std::string{"-"};
      text.replace(0, label->end, in_place_of(printed, sign));
    }
    take_letter_from_end(text, bases);
    if (text == line.text) continue;
    made.push_back(std::move(text));
    line.text = made.back();
  }
  return begins;
}

}  // namespace keydrift::printed
