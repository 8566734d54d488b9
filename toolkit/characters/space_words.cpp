// Values of characters in words.
#include "keydrift/characters/space_words.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace keydrift {
namespace {

std::string number_words(double value) {
  // Up to four decimals, trimmed; enough for any printed limit.
  auto text = std::to_string(std::round(value * 10000) / 10000);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace

std::string with_unit(std::string text, Domain const& domain) {
  if (domain.unit.empty() || domain.unit == "1") return text;
  if (domain.unit == "%" || domain.unit == "°") return text + domain.unit;
  return text + " " + domain.unit;
}

namespace {

std::string interval_words(Interval const& interval, Domain const& domain) {
  bool const from_start = !std::isfinite(interval.low) || (interval.low == 0 && !interval.low_open);
  if (domain.kind == CharacterKind::count && std::isfinite(interval.high)) {
    auto const low = interval.low_open ? std::floor(interval.low) + 1 : std::ceil(interval.low);
    auto const high = interval.high_open ? std::ceil(interval.high) - 1 : std::floor(interval.high);
    if (low == high) return number_words(low);
    return number_words(low) + "–" + number_words(high);
  }
  if (interval.low == interval.high) return with_unit(number_words(interval.low), domain);
  if (!std::isfinite(interval.high)) {
    if (from_start) return "any";
    return with_unit((interval.low_open ? "more than " : "at least ") + number_words(interval.low),
                     domain);
  }
  if (from_start) {
    return with_unit((interval.high_open ? "less than " : "at most ") + number_words(interval.high),
                     domain);
  }
  std::string text = number_words(interval.low) + "–" + number_words(interval.high);
  if (interval.low_open && interval.high_open) {
    return "between " +
           with_unit(number_words(interval.low) + " and " + number_words(interval.high), domain);
  }
  if (interval.low_open) {
    return "more than " + number_words(interval.low) + " to " +
           with_unit(number_words(interval.high), domain);
  }
  if (interval.high_open) {
    return number_words(interval.low) + " to less than " +
           with_unit(number_words(interval.high), domain);
  }
  return with_unit(text, domain);
}

}  // namespace

std::vector<std::string_view> alternatives_in(std::string_view value) {
  constexpr std::string_view kOr = " or ";
  std::vector<std::string_view> items;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < value.size();) {
    bool const sign = value[i] == '|' || value[i] == ';' || value[i] == '/';
    bool const word = value.substr(i, kOr.size()) == kOr;
    auto const size = sign ? 1 : word ? kOr.size() : 0;
    if (size == 0) {
      ++i;
      continue;
    }
    items.push_back(value.substr(begin, i - begin));
    i += size;
    begin = i;
  }
  items.push_back(value.substr(begin));
  return items;
}

std::string join_or(std::vector<std::string> const& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " or " : ", ";
    text += items[i];
  }
  return text;
}

namespace {

// The states whose every cell is among these, and those with none there.
struct Shown {
  std::vector<std::string> in_full;
  std::vector<std::string> not_at_all;
  bool by_in_full{false};     // the cells are those of the states in full, "other" aside
  bool by_not_at_all{false};  // … all but those of the states that are not there, "other" included
};

Shown shown_states(Domain const& domain, std::span<std::uint64_t const> cells) {
  Shown shown;
  Cells in_full(domain.words);
  Cells rest(domain.words);
  for (std::uint32_t cell = 0; cell < domain.inapplicable(); ++cell) add_cell(rest, cell);
  for (std::uint32_t s = 0; s < domain.states.size(); ++s) {
    Cells state(domain.words);
    domain.add_state(state, s);
    if (is_subset(state, cells)) {
      shown.in_full.push_back(domain.states[s]);
      domain.add_state(in_full, s);
    } else if (!meets(state, cells)) {
      shown.not_at_all.push_back(domain.states[s]);
      remove(rest, state);
    }
  }
  shown.by_in_full = true;
  shown.by_not_at_all = true;
  for (std::uint32_t cell = 0; cell < domain.inapplicable(); ++cell) {
    bool const here = has_cell(cells, cell);
    if (cell != *domain.other() && here != has_cell(in_full, cell)) shown.by_in_full = false;
    if (here != has_cell(rest, cell)) shown.by_not_at_all = false;
  }
  return shown;
}

// "not bifid or entire": all but a few states, said by what is excluded.
std::optional<std::string> excluded_words(Domain const& domain,
                                          std::span<std::uint64_t const> cells, bool or_other) {
  bool const other = has_cell(cells, *domain.other());
  if (!other || !or_other) return std::nullopt;
  auto const shown = shown_states(domain, cells);
  if (!shown.by_not_at_all || shown.not_at_all.size() == domain.states.size()) return std::nullopt;
  return "not " + join_or(shown.not_at_all);
}

std::vector<std::string> state_words(Domain const& domain, std::span<std::uint64_t const> cells,
                                     bool or_other) {
  auto const shown = shown_states(domain, cells);
  std::vector<std::string> items;
  if (shown.by_in_full) {
    items = shown.in_full;
  } else {
    for (std::uint32_t s = 0; s < domain.states.size(); ++s) {
      if (has_cell(cells, s)) items.push_back(domain.states[s] + " alone");
    }
    for (std::uint32_t i = 0; i < domain.together.size(); ++i) {
      if (!has_cell(cells, static_cast<std::uint32_t>(domain.states.size()) + i)) continue;
      std::string set;
      for (auto const s : domain.together[i])
        set += (set.empty() ? "" : " with ") + domain.states[s];
      items.push_back(std::move(set));
    }
  }
  if (or_other && has_cell(cells, *domain.other())) items.emplace_back("some other state");
  return items;
}

}  // namespace

std::string CharacterSpace::words(CharacterIndex character, std::span<std::uint64_t const> cells,
                                  bool or_other) const {
  auto const& domain = (*this)[character];
  std::vector<std::string> items;
  bool const inapplicable = has_cell(cells, domain.inapplicable());
  auto const shown = count_cells(cells) - (inapplicable ? 1 : 0);
  if (shown == domain.inapplicable()) return "not recorded";
  if (domain.kind == CharacterKind::categorical) {
    if (auto const all_but = excluded_words(domain, cells, or_other)) return *all_but;
    items = state_words(domain, cells, or_other);
  } else {
    for (std::uint32_t i = 0; i < domain.intervals.size(); ++i) {
      if (!has_cell(cells, i)) continue;
      Interval whole = domain.intervals[i];
      while (i + 1 < domain.intervals.size() && has_cell(cells, i + 1)) {
        ++i;
        whole.high = domain.intervals[i].high;
        whole.high_open = domain.intervals[i].high_open;
      }
      items.push_back(interval_words(whole, domain));
    }
  }
  if (inapplicable) items.emplace_back("inapplicable");
  return join_or(items);
}

}  // namespace keydrift
