#include "keydrift/formats/written_day.hpp"

#include <array>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <vector>

#include "keydrift/formats/side_table.hpp"
#include "keydrift/key/fold.hpp"

namespace keydrift {
namespace {

using namespace std::chrono;

constexpr std::string_view kRemedy = "; write it as 2024-05-17";

bool is_digit_of_date(char c) { return c >= '0' && c <= '9'; }

struct DayPiece {
  std::string_view text;
  std::optional<unsigned> number;
};

// "17. May 2024" -> 17, May, 2024; `separators` gets the first byte between each two.
std::vector<DayPiece> pieces_of(std::string_view text, std::string& separators) {
  std::vector<DayPiece> pieces;
  std::size_t at = 0;
  auto const between = [](char c) {
    return c == ' ' || c == '.' || c == '/' || c == '-' || c == ',' || c == '\t';
  };
  while (at < text.size()) {
    if (between(text[at])) {
      if (!pieces.empty() && separators.size() < pieces.size()) separators += text[at];
      ++at;
      continue;
    }
    auto const from = at;
    bool const digits = is_digit_of_date(text[at]);
    while (at < text.size() && !between(text[at]) && is_digit_of_date(text[at]) == digits) ++at;
    DayPiece piece{text.substr(from, at - from), std::nullopt};
    unsigned value = 0;
    auto const [end, error] =
        std::from_chars(piece.text.data(), piece.text.data() + piece.text.size(), value);
    if (error == std::errc{} && end == piece.text.data() + piece.text.size()) piece.number = value;
    pieces.push_back(piece);
  }
  separators.resize(pieces.empty() ? 0 : pieces.size() - 1, ' ');
  return pieces;
}

// Names of months; a word of three letters or more that begins one of a single month means it.
std::optional<unsigned> month_of(std::string_view word) {
  constexpr std::array<std::string_view, 12> kMonths{
      "january januar janvier enero janeiro gennaio jänner",
      "february februar février fevrier febrero fevereiro febbraio",
      "march märz maerz mars marzo março marco mrz",
      "april avril abril aprile",
      "may mai mayo maio maggio",
      "june juni juin junio junho giugno",
      "july juli juillet julio julho luglio",
      "august août aout agosto",
      "september septembre septiembre setembro settembre",
      "october oktober octobre octubre outubro ottobre",
      "november novembre noviembre novembro",
      "december dezember décembre decembre diciembre dezembro dicembre"};
  auto const wanted = fold_words(word);
  if (wanted.size() < 3) return std::nullopt;
  std::optional<unsigned> found;
  for (unsigned month = 1; month <= kMonths.size(); ++month) {
    std::string_view names = kMonths[month - 1];
    bool begins = false;
    while (!names.empty() && !begins) {
      auto const end = std::min(names.find(' '), names.size());
      begins = names.substr(0, wanted.size()) == wanted;
      names.remove_prefix(std::min(end + 1, names.size()));
    }
    if (!begins) continue;
    if (found) return std::nullopt;
    found = month;
  }
  return found;
}

WrittenDay wrong(std::string problem) {
  return {.problem = std::move(problem) + std::string{kRemedy}};
}

WrittenDay day_of(std::string_view text, unsigned y, unsigned m, unsigned d) {
  year_month_day const date{year{static_cast<int>(y)}, month{m}, day{d}};
  if (y < 1000 || y > 9999)
    return wrong("\"" + std::string{text} + "\" has no year of four digits");
  if (!date.ok()) return wrong("there is no day \"" + std::string{text} + "\"");
  std::array<char, 40> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%04u-%02u-%02u", y, m, d);
  return {.iso = buffer.data(), .rewritten = buffer.data() != std::string{text}};
}

WrittenDay month_only(std::string_view text, unsigned y, unsigned m) {
  if (y < 1000 || y > 9999)
    return wrong("\"" + std::string{text} + "\" has no year of four digits");
  if (m < 1 || m > 12) return wrong("there is no month \"" + std::string{text} + "\"");
  std::array<char, 40> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%04u-%02u", y, m);
  return {.iso = buffer.data(), .rewritten = buffer.data() != std::string{text}};
}

WrittenDay counted_day(unsigned days) {
  // Day 1 is 1900-01-01 and 1900 is taken for a leap year, so from March 1900 the count runs from
  // 1899-12-30.
  year_month_day const date{sys_days{year{1899} / December / 30} + std::chrono::days{days}};
  std::array<char, 40> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%04d-%02u-%02u", static_cast<int>(date.year()),
                static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
  return {.iso = buffer.data(), .rewritten = true};
}

// The part before a time of day.
std::string_view without_time(std::string_view text) {
  auto const colon = text.find(':');
  if (colon == std::string_view::npos) return text;
  auto const gap = text.find_last_of("T ", colon);
  return gap == std::string_view::npos ? text : tables::trimmed(text.substr(0, gap));
}

}  // namespace

std::optional<DayOrder> order_shown_by(std::string_view text) {
  std::string separators;
  auto const pieces = pieces_of(without_time(tables::trimmed(text)), separators);
  if (pieces.size() != 3 || !pieces[0].number || !pieces[1].number || !pieces[2].number ||
      pieces[2].text.size() != 4 || separators[0] == '.') {
    return std::nullopt;
  }
  auto const first = *pieces[0].number;
  auto const second = *pieces[1].number;
  if (first > 12 && first <= 31 && second >= 1 && second <= 12) return DayOrder::day_first;
  if (second > 12 && second <= 31 && first >= 1 && first <= 12) return DayOrder::month_first;
  return std::nullopt;
}

WrittenDay read_day(std::string_view text, DayOrder order) {
  auto const whole = tables::trimmed(text);
  auto const date = without_time(whole);
  auto const unclear = [&] { return wrong("\"" + std::string{whole} + "\" is no date"); };
  std::string separators;
  auto const pieces = pieces_of(date, separators);
  if (pieces.empty() || pieces.size() > 3) return unclear();
  for (auto const& piece : pieces) {
    if (piece.text.size() > 12) return unclear();
  }
  bool const counted_with_point = pieces.size() == 2 && pieces[0].text.size() == 5 &&
                                  pieces[1].number == 0U &&
                                  (separators[0] == '.' || separators[0] == ',');  // "45429.0"
  if (pieces.size() == 1 || counted_with_point) {
    if (!pieces[0].number) return unclear();
    if (pieces[0].text.size() == 4 && *pieces[0].number >= 1000) {
      return {.iso = std::string{date}, .rewritten = date != whole};
    }
    constexpr unsigned kFirst = 10'000;
    constexpr unsigned kLast = 60'000;
    if (pieces[0].text.size() == 5 && *pieces[0].number >= kFirst && *pieces[0].number <= kLast) {
      return counted_day(*pieces[0].number);
    }
    return unclear();
  }
  if (pieces.size() == 2) {
    if (pieces[0].number && pieces[1].number) {
      if (pieces[0].text.size() == 4)
        return month_only(whole, *pieces[0].number, *pieces[1].number);
      if (pieces[1].text.size() == 4)
        return month_only(whole, *pieces[1].number, *pieces[0].number);
      return unclear();
    }
    auto const name = month_of(pieces[0].text);
    if (name && pieces[1].number) return month_only(whole, *pieces[1].number, *name);
    return unclear();
  }
  auto const& [a, b, c] = std::array{pieces[0], pieces[1], pieces[2]};
  if (a.number && !b.number && c.number) {
    auto const month = month_of(b.text);
    if (!month) return unclear();
    return a.text.size() == 4 ? day_of(whole, *a.number, *month, *c.number)
                              : day_of(whole, *c.number, *month, *a.number);
  }
  if (!a.number && b.number && c.number) {
    auto const month = month_of(a.text);
    return month ? day_of(whole, *c.number, *month, *b.number) : unclear();
  }
  if (!a.number || !b.number || !c.number) return unclear();
  if (a.text.size() == 4) return day_of(whole, *a.number, *b.number, *c.number);
  if (c.text.size() != 4) {
    return wrong("\"" + std::string{whole} + "\" has no year of four digits");
  }
  if (separators[0] == '.') return day_of(whole, *c.number, *b.number, *a.number);
  if (auto const shown = order_shown_by(whole)) order = *shown;
  if (*a.number == *b.number) order = DayOrder::day_first;
  if (order == DayOrder::unknown) {
    return {.problem = "\"" + std::string{whole} +
                       "\" may be two days; say --dates day-first or --dates month-first",
            .needs_order = true};
  }
  return order == DayOrder::day_first ? day_of(whole, *c.number, *b.number, *a.number)
                                      : day_of(whole, *c.number, *a.number, *b.number);
}

}  // namespace keydrift
