#include "keydrift/characters/printed_scale.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/characters/reading/number_words.hpp"
#include "keydrift/characters/reading/numbered_parts.hpp"
#include "keydrift/characters/reading/numbers.hpp"
#include "keydrift/characters/units.hpp"

namespace keydrift::contrast {
namespace {

// How far two ratios are from being the same.
double apart(Interval const& a, Interval const& b) {
  constexpr double kOther = 100;
  auto const limits_apart = [](double x, double y) {
    bool const no_x = !std::isfinite(x) || x <= 0;
    bool const no_y = !std::isfinite(y) || y <= 0;
    if (no_x || no_y) return no_x == no_y ? 0.0 : kOther;
    return std::abs(std::log(x / y));
  };
  return limits_apart(a.low, b.low) + limits_apart(a.high, b.high);
}

// nullopt where the statement does not tell: "as long as wide".
std::optional<bool> prints_inverse(Statement const& statement, std::string_view language) {
  auto const& atom = statement.any_of.front();
  if (atom.ranges.empty()) return std::nullopt;
  reading::LeadText text{statement.text, language};
  auto const clauses = reading::split_clauses(text);
  reading::name_numbered_parts(text, clauses);
  for (std::uint32_t i = 0; i < text.size(); ++i) {
    if (!reading::may_begin_measure(text, i)) continue;
    auto const measures = reading::measures_at(text, i, text.size());
    if (measures.empty()) continue;
    if (!measures.front().ratio) {
      i = measures.front().end - 1;
      continue;
    }
    auto const& read = measures.front().ranges.front();
    auto const& meant = atom.ranges.front().usual;
    auto const as_read = apart(read.usual, meant);
    auto const inverse = apart(reading::inverted(read).usual, meant);
    // About as long: the tolerance is not read here.
    constexpr double kUndecided = 0.05;
    if (std::abs(as_read - inverse) < kUndecided) return std::nullopt;
    return inverse < as_read;
  }
  return std::nullopt;
}

// Converting forth and back leaves traces behind the digits that anybody prints.
double readable(double number) {
  if (!std::isfinite(number) || number == 0) return number;
  constexpr int kDigits = 6;
  auto const places = kDigits - 1 - static_cast<int>(std::floor(std::log10(std::abs(number))));
  auto const scale = std::pow(10.0, std::abs(places));
  return places >= 0 ? std::round(number * scale) / scale : std::round(number / scale) * scale;
}

// "Two-thirds as long": nobody prints a ratio to six places.
double readable_ratio(double ratio) {
  constexpr double kExact = 1e4;
  constexpr double kRounded = 1e3;
  if (!std::isfinite(ratio)) return ratio;
  constexpr double kTrace = 1e-7;
  if (std::abs(std::round(ratio * kExact) / kExact - ratio) < kTrace) return readable(ratio);
  return ratio < 1 / kRounded ? readable(ratio) : std::round(ratio * kRounded) / kRounded;
}

}  // namespace

std::map<std::string, std::string> units_printed(std::string_view text) {
  std::map<std::string, std::string> units;
  auto const is_letter = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           (static_cast<unsigned char>(c) >= 0x80U);
  };
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] < '0' || text[at] > '9') continue;
    auto begin = at + 1;
    while (begin < text.size() && (text[begin] == ' ' || text[begin] == ')')) ++begin;
    auto end = begin;
    while (end < text.size() && is_letter(text[end])) ++end;
    auto const word = text.substr(begin, end - begin);
    // "in" is a preposition far more often than the inch.
    if (word.empty() || word == "in") continue;
    if (auto const unit = canonical_unit(word)) units.emplace(unit->unit, word);
  }
  return units;
}

PrintedScale printed_scale(std::span<Statement const* const> statements, Values const& values,
                           std::string_view language) {
  PrintedScale scale;
  if (!values.numeric || values.unit == "1") return scale;
  for (auto const* statement : statements) {
    if (values.unit.empty()) {
      auto const inverse = prints_inverse(*statement, language);
      if (!inverse) continue;
      scale.inverted = *inverse;
      return scale;
    }
    auto const units = units_printed(statement->text);
    auto const printed = units.find(std::string{values.unit});
    if (printed == units.end()) continue;
    scale.unit = printed->second;
    scale.factor = canonical_unit(scale.unit)->factor;
    return scale;
  }
  return scale;
}

Values as_printed(Values const& values, PrintedScale const& scale) {
  if (!values.numeric || values.unit == "1") return values;
  auto printed = values;
  if (!scale.unit.empty()) printed.unit = scale.unit;
  for (auto& interval : printed.intervals) {
    if (scale.inverted) {
      interval = reading::inverted({.usual = interval, .extreme = interval}).usual;
    }
    auto const told = values.unit.empty() ? readable_ratio : readable;
    interval.low = told(interval.low / scale.factor);
    interval.high = told(interval.high / scale.factor);
  }
  if (scale.inverted) std::reverse(printed.intervals.begin(), printed.intervals.end());
  return printed;
}

}  // namespace keydrift::contrast
