#include "keydrift/characters/reading/numbers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace keydrift::reading {
namespace {

Interval inverted_interval(Interval const& interval) {
  Interval result;
  // Ratios are positive: an open lower end is 0.
  result.low = std::isinf(interval.high) ? -kInfinity : clean(1 / interval.high);
  result.low_open = interval.high_open && !std::isinf(interval.high);
  result.high = interval.low <= 0 ? kInfinity : clean(1 / interval.low);
  result.high_open = interval.low_open && interval.low > 0;
  return result;
}

Interval widened_interval(Interval interval, double tolerance) {
  if (std::isfinite(interval.low)) {
    interval.low = clean(interval.low - std::abs(interval.low) * tolerance);
  }
  if (std::isfinite(interval.high)) {
    interval.high = clean(interval.high + std::abs(interval.high) * tolerance);
  }
  return interval;
}

}  // namespace

std::vector<Measure> measures_at(LeadText const& text, std::uint32_t at, std::uint32_t stop) {
  if (auto ratio = ratio_at(text, at, stop)) return {std::move(*ratio)};
  return amounts_at(text, at, stop);
}

NumericRange inverted(NumericRange const& range) {
  return {.usual = inverted_interval(range.usual),
          .extreme = inverted_interval(range.extreme),
          .approximate = range.approximate};
}

NumericRange scaled(NumericRange const& range, double factor) {
  auto result = range;
  for (auto* interval : {&result.usual, &result.extreme}) {
    interval->low = clean(interval->low * factor);
    interval->high = clean(interval->high * factor);
  }
  return result;
}

NumericRange widened(NumericRange const& range, double tolerance) {
  if (!range.approximate) return range;
  return {.usual = widened_interval(range.usual, tolerance),
          .extreme = widened_interval(range.extreme, tolerance),
          .approximate = true};
}

int dimension_rank(std::string_view dimension) {
  static constexpr std::array<std::string_view, 7> kOrder{
      "length", "width", "height", "depth", "thickness", "diameter", "size"};
  return static_cast<int>(std::find(kOrder.begin(), kOrder.end(), dimension) - kOrder.begin());
}

}  // namespace keydrift::reading
