#include "keydrift/key/period.hpp"

#include <algorithm>
#include <array>
#include <chrono>

namespace keydrift {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_digit);
}

std::uint32_t number(std::string_view digits) {
  std::uint32_t value = 0;
  for (char const c : digits) value = value * 10 + static_cast<std::uint32_t>(c - '0');
  return value;
}

// "hh:mm", "hh:mm:ss", "hh:mm:ss.s"; 24:00 is the end of a day.
bool is_clock(std::string_view text) {
  if (text.size() < 5 || text[2] != ':' || !all_digits(text.substr(0, 2)) ||
      !all_digits(text.substr(3, 2))) {
    return false;
  }
  auto const hour = number(text.substr(0, 2));
  auto const minute = number(text.substr(3, 2));
  if (hour > 24 || minute > 59 || (hour == 24 && minute != 0)) return false;
  auto rest = text.substr(5);
  if (rest.empty()) return true;
  if (rest.size() < 3 || rest[0] != ':' || !all_digits(rest.substr(1, 2))) return false;
  if (number(rest.substr(1, 2)) > 60) return false;  // a leap second
  rest.remove_prefix(3);
  if (rest.empty()) return true;
  return (rest[0] == '.' || rest[0] == ',') && all_digits(rest.substr(1));
}

// The same with "Z" or an offset behind it.
bool is_time(std::string_view text) {
  if (text.ends_with('Z')) return is_clock(text.substr(0, text.size() - 1));
  auto const sign = text.find_first_of("+-");
  if (sign == std::string_view::npos) return is_clock(text);
  auto const offset = text.substr(sign + 1);
  bool const hours = offset.size() == 2 && all_digits(offset);
  bool const minutes = offset.size() == 5 && offset[2] == ':' && all_digits(offset.substr(0, 2)) &&
                       all_digits(offset.substr(3));
  return (hours || minutes) && is_clock(text.substr(0, sign));
}

// Year, month, day as far as they are given.
struct Date {
  std::array<std::uint32_t, 3> parts{};
  std::size_t given{};
};

constexpr std::array<std::size_t, 3> kWidths{4, 2, 2};

// Parts from `first` on: all of a date, or what the end of an interval does not have in common with
// the beginning.
std::optional<Date> parts_from(std::string_view text, std::size_t first, Date date) {
  std::size_t at = first;
  while (true) {
    if (at >= kWidths.size()) return std::nullopt;
    auto const width = kWidths[at];
    if (text.size() < width || !all_digits(text.substr(0, width))) return std::nullopt;
    date.parts[at] = number(text.substr(0, width));
    text.remove_prefix(width);
    date.given = ++at;
    if (text.empty()) return date;
    if (text.front() != '-') return std::nullopt;
    text.remove_prefix(1);
  }
}

std::uint32_t last_day_of(std::uint32_t year, std::uint32_t month) {
  using namespace std::chrono;
  auto const last = year_month_day_last{std::chrono::year{static_cast<int>(year)},
                                        month_day_last{std::chrono::month{month}}};
  return static_cast<unsigned>(last.day());
}

std::optional<Period> period_of(Date const& date) {
  auto const [year, month, day] = date.parts;
  if (date.given == 1) return Period{year * 10000 + 101, year * 10000 + 1231};
  if (month < 1 || month > 12) return std::nullopt;
  auto const before = year * 10000 + month * 100;
  auto const last = last_day_of(year, month);
  if (date.given == 2) return Period{before + 1, before + last};
  if (day < 1 || day > last) return std::nullopt;
  return Period{before + day, before + day};
}

// A date, with a time behind a T where it is a whole one.
std::optional<Date> instant(std::string_view text, std::size_t first, Date const& shared) {
  auto const t = text.find('T');
  auto const date = parts_from(text.substr(0, t), first, shared);
  if (!date || t == std::string_view::npos) return date;
  if (date->given != 3 || !is_time(text.substr(t + 1))) return std::nullopt;
  return date;
}

// The end of an interval that begins with `begin`.
std::optional<Date> end_of(std::string_view text, Date const& begin) {
  if (begin.given == 3 && is_time(text)) return begin;  // another time of the same day
  auto const date = text.substr(0, text.find('T'));
  auto const parts = static_cast<std::size_t>(std::count(date.begin(), date.end(), '-')) + 1;
  bool const whole = date.size() >= kWidths[0] && all_digits(date.substr(0, kWidths[0]));
  if (whole) return instant(text, 0, {});
  // What is left out is what the beginning has as well, from the year on.
  if (parts >= begin.given) return std::nullopt;
  return instant(text, begin.given - parts, begin);
}

}  // namespace

std::optional<Period> read_period(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  auto const slash = text.find('/');
  auto const begin = instant(text.substr(0, slash), 0, {});
  if (!begin) return std::nullopt;
  auto period = period_of(*begin);
  if (!period || slash == std::string_view::npos) return period;
  auto const end = end_of(text.substr(slash + 1), *begin);
  if (!end) return std::nullopt;
  auto const last = period_of(*end);
  if (!last || last->last < period->first) return std::nullopt;
  period->last = last->last;
  return period;
}

}  // namespace keydrift
