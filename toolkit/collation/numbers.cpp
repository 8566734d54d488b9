#include "keydrift/collation/numbers.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <string_view>

namespace keydrift::collating {
namespace {

constexpr std::string_view dash = "–";
constexpr std::string_view arrow = " → ";

bool has_low(Interval const& i) { return std::isfinite(i.low); }
bool has_high(Interval const& i) { return std::isfinite(i.high); }

std::string with_unit(std::string text, std::string const& unit) {
  if (unit.empty() || unit == "1") return text;
  if (unit == "°") return text + unit;
  return text + ' ' + unit;
}

std::string interval_in_words(Interval const& i) {
  if (has_low(i) && has_high(i)) {
    if (i.low == i.high) return trimmed(i.low);
    // Open ends of a closed range are rare enough to be said in words.
    if (i.low_open || i.high_open) {
      return std::string{i.low_open ? "> " : "≥ "} + trimmed(i.low) + " and " +
             (i.high_open ? "< " : "≤ ") + trimmed(i.high);
    }
    return trimmed(i.low).append(dash) + trimmed(i.high);
  }
  if (has_low(i)) return (i.low_open ? "> " : "≥ ") + trimmed(i.low);
  if (has_high(i)) return (i.high_open ? "< " : "≤ ") + trimmed(i.high);
  return "any";
}

std::string range_in_words(NumericRange const& range) {
  std::string const about = range.approximate ? "ca. " : "";
  auto const& usual = range.usual;
  auto const& extreme = range.extreme;
  bool const both = has_low(usual) && has_high(usual) && has_low(extreme) && has_high(extreme);
  if (usual == extreme || !both || usual.low_open || usual.high_open || extreme.low_open ||
      extreme.high_open) {
    return about + interval_in_words(extreme);
  }
  std::string text = about;
  if (extreme.low < usual.low)
    text.append("(").append(trimmed(extreme.low)).append(dash).append(")");
  text += interval_in_words(usual);
  if (extreme.high > usual.high) {
    text.append("(").append(dash).append(trimmed(extreme.high)).append(")");
  }
  return text;
}

// The one limit of a range open to one side.
bool one_limit(Atom const& atom, double& limit, bool& upper, bool& open) {
  if (atom.negated || atom.ranges.size() != 1) return false;
  auto const& range = atom.ranges.front();
  if (!(range.usual == range.extreme) || range.approximate) return false;
  auto const& i = range.extreme;
  if (has_low(i) == has_high(i)) return false;
  upper = has_high(i);
  limit = upper ? i.high : i.low;
  open = upper ? i.high_open : i.low_open;
  return true;
}

}  // namespace

std::string trimmed(double number) {
  std::array<char, 400> buffer{};
  auto const [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                          std::chars_format::fixed, 6);
  if (error != std::errc{}) return "?";
  std::string_view text{buffer.data(), static_cast<std::size_t>(end - buffer.data())};
  if (text.find('.') != std::string_view::npos) {
    while (text.back() == '0') text.remove_suffix(1);
    if (text.back() == '.') text.remove_suffix(1);
  }
  if (text == "-0") text = "0";
  return std::string{text};
}

std::string in_words(Atom const& atom) {
  std::string text;
  for (auto const& range : atom.ranges) {
    if (!text.empty()) text += " or ";
    text += range_in_words(range);
  }
  text = with_unit(std::move(text), atom.unit);
  return atom.negated ? "not " + text : text;
}

std::string change_in_words(Atom const& old_atom, Atom const& new_atom) {
  double old_limit{};
  double new_limit{};
  bool old_upper{};
  bool new_upper{};
  bool old_open{};
  bool new_open{};
  if (one_limit(old_atom, old_limit, old_upper, old_open) &&
      one_limit(new_atom, new_limit, new_upper, new_open) && old_upper == new_upper &&
      old_open == new_open && (old_limit != new_limit || old_atom.unit != new_atom.unit)) {
    return with_unit(trimmed(old_limit), old_atom.unit).append(arrow) +
           with_unit(trimmed(new_limit), new_atom.unit);
  }
  return in_words(old_atom).append(arrow) + in_words(new_atom);
}

}  // namespace keydrift::collating
