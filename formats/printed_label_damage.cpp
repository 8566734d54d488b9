#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestDamagedLabel = 400;  // bytes, with its brackets

std::uint32_t figure_of_digit(char digit) { return static_cast<std::uint32_t>(digit - '0'); }

}  // namespace

std::optional<std::uint32_t> misread_number(std::string_view text) {
  constexpr std::size_t kLongestMisreadNumber = 5;  // characters; longer ones are words
  text = trim(text);
  if (!text.empty() && text.back() == '.') text.remove_suffix(1);
  if (text.empty() || text.size() > kLongestMisreadNumber) return std::nullopt;
  // "n" for 11, as old-style figures have it, or "U"; "П" for 11 in Cyrillic type.
  if (text == "n" || text == "U" || text == "П") return 11;
  std::uint32_t number = 0;
  bool misread = false;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    bool const between = at > 0 && at + 1 < text.size();
    at += c.length;
    if (c.value == ' ' && between) {
      misread = true;
      continue;
    }
    auto figure = figure_seen_in(c.value);
    if (!figure && c.value == 'i' && text.size() > 1) figure = 1;  // "1i"
    if (!figure) return std::nullopt;
    misread = misread || !is_digit(c.value);
    number = number * 10 + *figure;
  }
  if (!misread || number == 0) return std::nullopt;
  return number;
}

std::optional<std::uint32_t> rarely_misread_number(std::string_view text) {
  constexpr std::size_t kLongest = 3;
  text = trim(text);
  if (!text.empty() && text.back() == '.') text.remove_suffix(1);
  if (text.empty() || text.size() > kLongest) return std::nullopt;
  std::string digits;
  for (char const c : text) {
    auto const sign = static_cast<unsigned char>(c);
    auto figure = figure_rarely_seen_in(sign);
    if (!figure) figure = figure_seen_in(sign);
    if (!figure) return std::nullopt;
    digits += static_cast<char>('0' + *figure);
  }
  if (digits == text || digits.front() == '0') return std::nullopt;
  return number_of(digits);
}

std::optional<Label> read_misprinted_label(std::string_view line, std::uint32_t number,
                                           bool bare_allowed) {
  bool const enclosed = !line.empty() && (line[0] == '(' || line[0] == '[');
  std::size_t const begin = enclosed ? 1 : 0;
  auto const wanted = std::to_string(number);
  // As many characters as the number has, with a blank between two of them at most.
  std::size_t end = begin;
  std::size_t matched = 0;
  bool misread = false;
  while (matched < wanted.size() && end < line.size()) {
    char const c = line[end];
    if (c == ' ' && matched > 0 && !misread) {
      misread = true;
      ++end;
      continue;
    }
    auto const sign = static_cast<unsigned char>(c);
    if (!may_be_figure(sign, figure_of_digit(wanted[matched]))) return std::nullopt;
    misread = misread || !is_digit(sign);
    ++matched;
    ++end;
  }
  if (matched < wanted.size()) return std::nullopt;
  // "8, Legs pale", "8, — Legs pale": a comma for the full stop.
  auto words = skip_blanks(line, end + 1);
  if (auto const dash = code_point_at(line, words); is_dash(dash.value)) {
    words = skip_blanks(line, words + dash.length);
  }
  bool const comma = !misread && !enclosed && end + 1 < line.size() && line[end] == ',' &&
                     is_blank(code_point_at(line, end + 1).value) &&
                     is_upper(code_point_at(line, words).value);
  if (!misread && !comma) return std::nullopt;
  // "S. 90": a page.
  bool const page =
      line.starts_with("S. ") && is_digit(code_point_at(line, skip_blanks(line, 2)).value);
  if (page || line.starts_with("sp.")) return std::nullopt;
  // Read the rest as if the digits were right; the views must borrow from `line`.
  auto const behind = line.substr(end, kLongestDamagedLabel);
  auto const rest = comma ? "." + std::string{behind.substr(1)} : std::string{behind};
  auto label = read_label(std::string{line.substr(0, begin)} + wanted + rest);
  if (!label || label->number != number || label->decimal) return std::nullopt;
  bool const bare = label->end == LabelEnd::none && label->letter.empty() && label->marks == 0 &&
                    label->back.empty();
  if (bare && !bare_allowed) return std::nullopt;
  auto const shift = end - begin - wanted.size();  // blanks within the number
  auto const length = label->printed.size() + shift;
  label->printed = line.substr(begin, length);
  label->text_at += shift;
  label->letter =
      label->letter.empty() ? std::string_view{} : line.substr(end, label->letter.size());
  label->back = {};
  return label;
}

std::optional<Label> read_damaged_back_reference(std::string_view line, std::uint32_t number) {
  constexpr std::size_t kMostDigits = 3;
  auto const length = figures_of(number, line);
  if (length == 0) return std::nullopt;
  auto at = length;
  if (line.substr(at).starts_with('.')) ++at;
  at = skip_blanks(line, at);
  if (at >= line.size() || (line[at] != '(' && line[at] != '[' && line[at] != '{')) {
    return std::nullopt;
  }
  auto const begin = ++at;
  bool digit = false;  // one at least was read rightly
  while (at < line.size() && at - begin < kMostDigits &&
         (figure_seen_in(static_cast<unsigned char>(line[at])) || line[at] == 'i')) {
    digit = digit || is_digit(static_cast<unsigned char>(line[at]));
    ++at;
  }
  auto const inside = line.substr(begin, at - begin);
  bool const one = inside == "l" || inside == "I";  // "14 (l)"
  if (!digit && !one) return std::nullopt;
  while (at < line.size() && std::string_view{")]}j.,;"}.find(line[at]) != std::string_view::npos) {
    ++at;
  }
  auto words = skip_blanks(line, at);
  bool const parted = words > at;
  if (auto const dash = code_point_at(line, words); is_dash(dash.value)) {  // "l0 (1). — Wings"
    words = skip_blanks(line, words + dash.length);
  }
  if (!parted || !is_upper(code_point_at(line, words).value)) return std::nullopt;
  return label_with_back(number, line.substr(0, length), inside, words);
}

Label label_with_back(std::uint32_t number, std::string_view printed, std::string_view back,
                      std::size_t text_at) {
  Label label;
  label.number = number;
  label.printed = printed;
  if (only_figures(back)) label.back = back;
  label.text_at = text_at;
  return label;
}

std::optional<Label> read_misread_lettered(std::string_view line) {
  constexpr std::size_t kMostDigits = 3;
  auto const stop = line.find('.');
  if (stop == std::string_view::npos || stop < 2 || stop > kMostDigits + 1) return std::nullopt;
  char const letter = line[stop - 1];
  auto const words = skip_blanks(line, stop + 1);
  bool const parted = words > stop + 1 && is_upper(code_point_at(line, words).value);
  if (letter < 'a' || letter > 'd' || !parted) return std::nullopt;
  auto const number = misread_number(line.substr(0, stop - 1));
  if (!number) return std::nullopt;
  Label label;
  label.number = *number;
  label.end = LabelEnd::dot;
  label.letter = line.substr(stop - 1, 1);
  label.printed = line.substr(0, stop);
  label.text_at = words;
  return label;
}

}  // namespace keydrift::printed
