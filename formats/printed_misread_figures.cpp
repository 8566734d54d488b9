#include "keydrift/formats/printed_misread_figures.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

// How much it takes to read the figure.
enum class Likeness : std::uint8_t {
  usual,  // the character stands for that figure, if for any
  rare,   // it may, where the figure is likely anyway
  faint,  // only where that very figure is missing
};

struct FigureLook {
  char32_t sign{};
  std::uint32_t figure{};
  Likeness likeness{};
};

constexpr std::array kFigureLikenesses{
    FigureLook{U'l', 1, Likeness::usual},      FigureLook{U'I', 1, Likeness::usual},
    FigureLook{U'|', 1, Likeness::usual},      FigureLook{U'!', 1, Likeness::usual},
    FigureLook{U'O', 0, Likeness::usual},      FigureLook{U'o', 0, Likeness::usual},
    FigureLook{U'Q', 0, Likeness::usual},      FigureLook{U'S', 5, Likeness::usual},
    FigureLook{U'B', 8, Likeness::usual},      FigureLook{U'Z', 2, Likeness::usual},
    FigureLook{U'\u0417', 3, Likeness::usual},  // Cyrillic, "З"
    FigureLook{U'\u0437', 3, Likeness::usual}, FigureLook{U'\u041E', 0, Likeness::usual},
    FigureLook{U'\u043E', 0, Likeness::usual}, FigureLook{U'\u0431', 6, Likeness::usual},
    FigureLook{U'\u00F6', 5, Likeness::usual},  // "lö"
    FigureLook{U'S', 8, Likeness::rare},       FigureLook{U's', 8, Likeness::rare},
    FigureLook{U'G', 6, Likeness::rare},       FigureLook{U'b', 6, Likeness::rare},
    FigureLook{U'g', 9, Likeness::rare},       FigureLook{U'q', 9, Likeness::rare},
    FigureLook{U'i', 1, Likeness::faint},      FigureLook{U']', 1, Likeness::faint},
    FigureLook{U'z', 2, Likeness::faint},      FigureLook{U'A', 4, Likeness::faint},
    FigureLook{U's', 5, Likeness::faint},      FigureLook{U'C', 6, Likeness::faint},
    FigureLook{U'Y', 7, Likeness::faint},
};

std::optional<std::uint32_t> figure_seen_as(char32_t c, Likeness likeness) {
  auto const found = std::find_if(
      kFigureLikenesses.begin(), kFigureLikenesses.end(),
      [&](FigureLook const& look) { return look.sign == c && look.likeness == likeness; });
  return found == kFigureLikenesses.end() ? std::nullopt : std::optional{found->figure};
}

bool looks_like(char32_t c, std::uint32_t figure, Likeness least) {
  if (c == U'0' + figure) return true;
  return std::any_of(kFigureLikenesses.begin(), kFigureLikenesses.end(),
                     [&](FigureLook const& look) {
                       return look.sign == c && look.figure == figure && look.likeness <= least;
                     });
}

}  // namespace

std::optional<std::uint32_t> figure_seen_in(char32_t c) {
  if (is_digit(c)) return static_cast<std::uint32_t>(c - U'0');
  return figure_seen_as(c, Likeness::usual);
}

std::optional<std::uint32_t> figure_rarely_seen_in(char32_t c) {
  return figure_seen_as(c, Likeness::rare);
}

bool may_be_figure(char32_t c, std::uint32_t figure) {
  return looks_like(c, figure, Likeness::rare);
}

bool may_replace_figure(char32_t c, std::uint32_t figure) {
  return looks_like(c, figure, Likeness::faint);
}

std::size_t figures_of(std::uint32_t number, std::string_view text) {
  std::size_t at = 0;
  for (char const digit : std::to_string(number)) {
    if (at >= text.size()) return 0;
    auto const c = code_point_at(text, at);
    if (!may_replace_figure(c.value, static_cast<std::uint32_t>(digit - '0'))) return 0;
    at += c.length;
  }
  return at;
}

std::uint32_t figure_behind_letter(std::string_view text) {
  auto const c = code_point_at(text, 0);
  if (c.length != text.size() || !is_letter(c.value)) return 0;
  for (auto const likeness : {Likeness::usual, Likeness::faint, Likeness::rare}) {
    if (auto const figure = figure_seen_as(c.value, likeness)) return *figure;
  }
  return 0;
}

std::uint32_t figure_at_end(std::string_view text) {
  constexpr std::size_t kMostFigures = 3;
  auto const begin = last_word_begin(text);
  if (begin == 0) return 0;
  auto const word = text.substr(begin);
  bool const mixed = word.size() > 1 && word.size() <= kMostFigures && word.back() != '.' &&
                     word.find_first_of("0123456789") != std::string_view::npos;
  return mixed ? misread_number(word).value_or(0) : figure_behind_letter(word);
}

}  // namespace keydrift::printed
