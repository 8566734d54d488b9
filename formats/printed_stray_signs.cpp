#include "keydrift/formats/printed_stray_signs.hpp"

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_target.hpp"

namespace keydrift::printed {
namespace {

bool is_letter_or_digit(char32_t c) { return is_digit(c) || is_lower(c) || is_upper(c); }

}  // namespace

std::optional<BehindDots> behind_dots(std::string_view text) {
  constexpr std::size_t kFewest = 3;
  text = trim_right(text);
  auto const longest = text.size() > kLongestTrailingName ? text.size() - kLongestTrailingName : 0;
  std::size_t end = text.size();  // of the row that is looked for
  while (end > longest) {
    auto const dot = text.rfind('.', end - 1);
    if (dot == std::string_view::npos || dot < longest) return std::nullopt;
    auto begin = dot + 1;
    std::size_t dots = 0;
    while (begin > 0 && (text[begin - 1] == '.' || text[begin - 1] == ' ')) {
      if (text[--begin] == '.') ++dots;
    }
    auto const behind = skip_blanks(text, dot + 1);
    if (dots >= kFewest) {
      return behind < text.size() && begin > 0 ? std::optional{BehindDots{begin, behind}}
                                               : std::nullopt;
    }
    end = begin;
  }
  return std::nullopt;
}

std::string_view without_stray_signs(std::string_view text) {
  while (!text.empty()) {
    auto const c = code_point_at(text, 0);
    if (is_letter_or_digit(c.value)) break;
    text.remove_prefix(c.length);
  }
  while (!text.empty()) {
    auto const c = code_point_before(text, text.size());
    if (is_letter_or_digit(c.value)) break;
    text.remove_suffix(c.length);
  }
  return text;
}

std::optional<std::uint32_t> number_beside_specks(std::string_view printed) {
  constexpr std::size_t kLongest = 12;  // bytes
  constexpr std::size_t kMostDigits = 4;
  printed = trim(printed);
  if (printed.empty() || printed.size() > kLongest) return std::nullopt;
  auto bare = without_stray_signs(printed);
  auto const blank = bare.find(' ');
  if (blank != std::string_view::npos) {
    auto const first = bare.substr(0, blank);
    auto const second = trim(bare.substr(blank));
    bool const speck = second.size() == 1 && !is_digit(static_cast<unsigned char>(second[0]));
    if (speck || second == first) bare = first;
  }
  auto const figure = figure_behind_letter(bare);
  if (figure > 0) return figure;
  bool const digits = !bare.empty() && bare.size() <= kMostDigits && only_figures(bare);
  if (digits) return bare == printed ? std::nullopt : std::optional{number_of(bare)};
  // "i5"
  if (bare.size() > 1 && bare.front() == 'i' &&
      bare.find_first_not_of("0123456789", 1) == std::string_view::npos) {
    return number_of(bare.substr(1)) + (bare.size() == 2 ? 10 : 100);
  }
  return bare == printed ? std::nullopt : misread_number(bare);
}

}  // namespace keydrift::printed
