#include "keydrift/formats/hypertext_sheet.hpp"

#include <algorithm>
#include <charconv>
#include <optional>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/hypertext_walk.hpp"
#include "keydrift/formats/hypertext_words.hpp"

namespace keydrift::hypertext {
namespace {

bool is_name_character(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_';
}

// "margin-left: 2.5em" in ems; nullopt for another property, and for shares of the page's width.
std::optional<double> left_margin(std::string_view declaration) {
  if (!declaration.starts_with("margin-left") && !declaration.starts_with("padding-left")) {
    return std::nullopt;
  }
  auto const colon = declaration.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  auto const value = trimmed(declaration.substr(colon + 1));
  double number = 0;
  auto const [end, error] = std::from_chars(value.data(), value.data() + value.size(), number);
  if (error != std::errc{} || number < 0) return std::nullopt;
  constexpr double kPixels = 16;  // of an em, as browsers have it
  constexpr double kPoints = 12;
  auto const unit = value.substr(static_cast<std::size_t>(end - value.data()));
  if (unit.starts_with("em") || unit.starts_with("rem")) return number;
  if (unit.starts_with("px")) return number / kPixels;
  if (unit.starts_with("pt")) return number / kPoints;
  return std::nullopt;
}

// Of "p.k1", ".k1" and "span.k1"; empty for any other selector.
std::string_view class_of(std::string_view selector) {
  auto const dot = selector.find('.');
  if (dot == std::string_view::npos) return {};
  auto const element = selector.substr(0, dot);
  if (!element.empty() && element != "p" && element != "div" && element != "span") return {};
  auto const name = selector.substr(dot + 1);
  return std::all_of(name.begin(), name.end(), is_name_character) ? name : std::string_view{};
}

bool floats_right(std::string_view declaration) {
  auto const colon = declaration.find(':');
  return declaration.starts_with("float") && colon != std::string_view::npos &&
         trimmed(declaration.substr(colon + 1)).starts_with("right");
}

void read_rules(std::string_view rules, Sheet& sheet) {
  while (!rules.empty()) {
    auto const open = rules.find('{');
    auto const close = rules.find('}', std::min(open, rules.size()));
    if (open == std::string_view::npos || close == std::string_view::npos) return;
    std::optional<double> margin;
    bool floats = false;
    for_parts(rules.substr(open + 1, close - open - 1), ';', [&](std::string_view part) {
      if (auto const told = left_margin(part)) margin = told;
      floats = floats || floats_right(part);
    });
    for_parts(rules.substr(0, open), ',', [&](std::string_view selector) {
      auto const name = class_of(selector);
      if (name.empty()) return;
      if (margin) sheet.margins[name] = *margin;
      if (floats) sheet.floating.insert(name);
    });
    rules.remove_prefix(close + 1);
  }
}

}  // namespace

Sheet sheet_of(std::string_view text) {
  Sheet sheet;
  walk(
      text,
      [&](Tag const& tag, std::size_t at) {
        if (tag.closes || tag.empty || tag.name != "style") return;
        auto const begin = at + tag.length;
        read_rules(text.substr(begin, closing_tag(text, begin, tag.name) - begin), sheet);
      },
      [](std::size_t) { return std::size_t{1}; });
  return sheet;
}

}  // namespace keydrift::hypertext
