#include "keydrift/characters/contrast_values.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <iterator>
#include <tuple>

namespace keydrift::contrast {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

// Conversion to canonical units must not part equal limits.
double snapped(double number) {
  if (!std::isfinite(number) || std::abs(number) > 1e6) return number;
  return std::round(number * 1e9) / 1e9;
}

bool hollow(Interval const& interval) {
  return interval.low > interval.high ||
         (interval.low == interval.high && (interval.low_open || interval.high_open));
}

// Counts take whole numbers only.
Interval whole(Interval interval) {
  if (std::isfinite(interval.low)) {
    auto const up = std::ceil(interval.low);
    interval.low = interval.low_open && up == interval.low ? up + 1 : up;
    interval.low_open = false;
  }
  if (std::isfinite(interval.high)) {
    auto const down = std::floor(interval.high);
    interval.high = interval.high_open && down == interval.high ? down - 1 : down;
    interval.high_open = false;
  }
  return interval;
}

bool starts_before(Interval const& a, Interval const& b) {
  return std::tie(a.low, a.low_open) < std::tie(b.low, b.low_open);
}

std::vector<Interval> united(std::vector<Interval> intervals, bool counts) {
  for (auto& interval : intervals) {
    interval.low = snapped(interval.low);
    interval.high = snapped(interval.high);
    if (counts) interval = whole(interval);
  }
  std::erase_if(intervals, hollow);
  std::sort(intervals.begin(), intervals.end(), starts_before);
  std::vector<Interval> result;
  for (auto const& next : intervals) {
    if (!result.empty()) {
      auto& last = result.back();
      bool const meet = next.low < last.high ||
                        (next.low == last.high && !(next.low_open && last.high_open)) ||
                        (counts && next.low <= last.high + 1);
      if (meet) {
        if (std::pair{next.high, !next.high_open} > std::pair{last.high, !last.high_open}) {
          last.high = next.high;
          last.high_open = next.high_open;
        }
        continue;
      }
    }
    result.push_back(next);
  }
  return result;
}

auto order_key(Interval const& i) { return std::tuple{i.low, i.low_open, i.high, i.high_open}; }

StateList both(StateList const& a, StateList const& b) {
  StateList result;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(result));
  return result;
}
StateList either(StateList const& a, StateList const& b) {
  StateList result;
  std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(result));
  return result;
}
StateList first_only(StateList const& a, StateList const& b) {
  StateList result;
  std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(result));
  return result;
}

}  // namespace

bool operator==(Values const& a, Values const& b) {
  return a.numeric == b.numeric && a.unit == b.unit && a.all_but == b.all_but &&
         a.states == b.states && a.intervals == b.intervals;
}

bool operator<(Values const& a, Values const& b) {
  auto const key = [](Values const& v) { return std::tie(v.numeric, v.unit, v.all_but, v.states); };
  if (key(a) != key(b)) return key(a) < key(b);
  return std::lexicographical_compare(
      a.intervals.begin(), a.intervals.end(), b.intervals.begin(), b.intervals.end(),
      [](Interval const& x, Interval const& y) { return order_key(x) < order_key(y); });
}

Values values_of(Atom const& atom, Breadth breadth) {
  Values values;
  if (atom.ranges.empty()) {
    values.states.assign(atom.states.begin(), atom.states.end());
    std::sort(values.states.begin(), values.states.end());
    values.states.erase(std::unique(values.states.begin(), values.states.end()),
                        values.states.end());
  } else {
    values.numeric = true;
    values.unit = atom.unit;
    std::vector<Interval> intervals;
    for (auto const& range : atom.ranges) {
      intervals.push_back(breadth == Breadth::extreme ? range.extreme : range.usual);
    }
    values.intervals = united(std::move(intervals), values.unit == "1");
  }
  return atom.negated ? complement(values) : values;
}

std::optional<Values> values_of(Statement const& statement, Breadth breadth) {
  if (statement.any_of.empty()) return std::nullopt;
  auto const& first = statement.any_of.front();
  auto values = values_of(first, breadth);
  for (std::size_t i = 1; i < statement.any_of.size(); ++i) {
    auto const& atom = statement.any_of[i];
    if (atom.character != first.character) return std::nullopt;
    auto const more = values_of(atom, breadth);
    if (!comparable(values, more)) return std::nullopt;
    values = joined(values, more);
  }
  return values;
}

bool comparable(Values const& a, Values const& b) {
  return a.numeric == b.numeric && a.unit == b.unit;
}

Values intersection(Values const& a, Values const& b) {
  Values result;
  result.numeric = a.numeric;
  result.unit = a.unit;
  if (!a.numeric) {
    result.all_but = a.all_but && b.all_but;
    if (result.all_but) {
      result.states = either(a.states, b.states);
    } else if (a.all_but) {
      result.states = first_only(b.states, a.states);
    } else if (b.all_but) {
      result.states = first_only(a.states, b.states);
    } else {
      result.states = both(a.states, b.states);
    }
    return result;
  }
  std::size_t i = 0, j = 0;
  while (i < a.intervals.size() && j < b.intervals.size()) {
    auto const& x = a.intervals[i];
    auto const& y = b.intervals[j];
    auto const& later = starts_before(x, y) ? y : x;
    bool const x_ends = std::pair{x.high, !x.high_open} < std::pair{y.high, !y.high_open};
    auto const& sooner = x_ends ? x : y;
    Interval const common{.low = later.low,
                          .high = sooner.high,
                          .low_open = later.low_open,
                          .high_open = sooner.high_open};
    if (!hollow(common)) result.intervals.push_back(common);
    ++(x_ends ? i : j);
  }
  return result;
}

Values joined(Values const& a, Values const& b) {
  if (a.numeric) {
    auto result = a;
    result.intervals.insert(result.intervals.end(), b.intervals.begin(), b.intervals.end());
    result.intervals = united(std::move(result.intervals), result.unit == "1");
    return result;
  }
  return complement(intersection(complement(a), complement(b)));
}

Values complement(Values const& values) {
  auto result = values;
  if (!values.numeric) {
    result.all_but = !values.all_but;
    return result;
  }
  result.intervals.clear();
  Interval gap{};
  for (auto const& interval : values.intervals) {
    gap.high = interval.low;
    gap.high_open = !interval.low_open;
    if (interval.low > -kInfinity && !hollow(gap)) result.intervals.push_back(gap);
    gap.low = interval.high;
    gap.low_open = !interval.high_open;
  }
  gap.high = kInfinity;
  gap.high_open = false;
  if (gap.low < kInfinity) result.intervals.push_back(gap);
  result.intervals = united(std::move(result.intervals), result.unit == "1");
  return result;
}

bool is_empty(Values const& values) {
  return values.numeric ? values.intervals.empty() : !values.all_but && values.states.empty();
}

bool is_everything(Values const& values) {
  if (!values.numeric) return values.all_but && values.states.empty();
  return values.intervals.size() == 1 && values.intervals[0].low == -kInfinity &&
         values.intervals[0].high == kInfinity;
}

std::string number_words(double number) {
  std::array<char, 64> buffer{};
  auto const [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(),
                                          snapped(number), std::chars_format::fixed);
  if (error != std::errc{}) return "?";
  return {buffer.data(), end};
}

std::string in_words(Values const& values) {
  std::string words;
  if (!values.numeric) {
    for (auto const& state : values.states) {
      if (!words.empty()) words += " or ";
      words += state;
    }
    return values.all_but ? (words.empty() ? "anything" : "all but " + words) : words;
  }
  std::string const unit = values.unit.empty() || values.unit == "1" ? ""
                           : values.unit == "%" || values.unit == "°"
                               ? std::string{values.unit}
                               : " " + std::string{values.unit};
  for (auto const& interval : values.intervals) {
    if (!words.empty()) words += " or ";
    bool const no_low = interval.low == -kInfinity;
    bool const no_high = interval.high == kInfinity;
    if (no_low && no_high) return "anything";
    if (no_low) {
      words += (interval.high_open ? "less than " : "up to ") + number_words(interval.high);
    } else if (no_high) {
      words += interval.low_open ? "more than " + number_words(interval.low)
                                 : number_words(interval.low) + " or more";
    } else if (interval.low == interval.high) {
      words += number_words(interval.low);
    } else {
      words += number_words(interval.low) + "–" + number_words(interval.high);
    }
  }
  return words.empty() ? words : words + unit;
}

}  // namespace keydrift::contrast
