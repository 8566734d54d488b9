// Numbers of lines in the margin, as manuscripts under review have them, and pages of the original
// that a translation prints there.

#include <algorithm>
#include <cstddef>
#include <optional>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestNumberedLines = 8;  // numbered lines that make a margin
constexpr std::size_t kLongestLineNumber = 5;    // digits
constexpr std::uint32_t kEvery = 5;              // every fifth line may be numbered

struct MarginNumber {
  std::uint32_t number{};
  std::size_t words_at{};  // behind it and its blanks; the line's end where nothing follows
};

std::optional<MarginNumber> margin_number(std::string_view line) {
  std::size_t end = 0;
  MarginNumber found;
  while (end < line.size() && is_digit(static_cast<unsigned char>(line[end]))) {
    if (end == kLongestLineNumber) return std::nullopt;
    found.number = found.number * 10 + static_cast<std::uint32_t>(line[end] - '0');
    ++end;
  }
  if (end == 0) return std::nullopt;
  found.words_at = skip_blanks(line, end);
  if (found.words_at == end && end < line.size()) return std::nullopt;
  return found;
}

// Does a lead begin so?  "(6) Head" is what stands behind the number of a serial key's lead.
bool begins_lead(std::string_view words) {
  auto const label = read_label(words);
  if (!label || label->decimal || label->text_at >= words.size()) return false;
  if (label->end == LabelEnd::enclosed) return false;
  return label->is_dash() || label->family == LabelFamily::digits;
}

void take_off_front(SourceLine& line, std::size_t bytes) {
  auto const columns = count_code_points(line.text.substr(0, bytes));
  line.text.remove_prefix(bytes);
  line.begin += bytes;
  line.blanks += columns;
  line.indent += columns;
}

// "220 – Wings dark": only every fifth line bears its number, and five lines on stands the next
// one.  Where the others are set in beside them two of them will do.
void take_off_every_fifth(std::vector<SourceLine>& lines) {
  constexpr std::size_t kFewestAlike = 3;
  constexpr std::size_t kFewestSetOff = 2;
  std::vector<std::size_t> found;
  std::uint32_t before = 0;
  std::size_t all_since = 0;     // lines
  std::size_t filled_since = 0;  // of them not blank
  bool set_off = true;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    if (line.markup.role != LineRole::told_by_text) return;
    ++all_since;
    if (line.text.empty()) continue;
    ++filled_since;
    auto const margin = margin_number(line.text);
    bool const first = found.empty() && margin && margin->number >= 2 * kEvery;
    bool const next = !found.empty() && margin && margin->number == before + kEvery;
    bool const numbered = margin && margin->number % kEvery == 0 && (first || next);
    if (!numbered) {
      // "10 Wings clear" / "11 Wings dark" are labels.
      bool const counts = margin && margin->number > before && margin->number < before + kEvery;
      if (!found.empty() && counts) return;
      set_off = set_off && line.indent > 2;
      continue;
    }
    if (next && all_since != kEvery && filled_since != kEvery) return;
    set_off = set_off && line.indent <= 2;
    found.push_back(i);
    before = margin->number;
    all_since = filled_since = 0;
  }
  if (found.size() < (set_off ? kFewestSetOff : kFewestAlike)) return;
  // The text goes on for fewer than five lines behind the last of them.
  if (all_since >= kEvery && filled_since >= kEvery) return;
  for (auto const i : found) take_off_front(lines[i], margin_number(lines[i].text)->words_at);
}

// The number of the line that ends "Wings dark ..... 3 213", and the bytes before it.
std::optional<MarginNumber> number_at_right(std::string_view line) {
  auto const last = line.find_last_not_of("0123456789");
  if (last == std::string_view::npos || last + 1 == line.size()) return std::nullopt;
  auto const digits = line.substr(last + 1);
  if (digits.size() > kLongestLineNumber || !is_blank(code_point_before(line, last + 1).value)) {
    return std::nullopt;
  }
  return MarginNumber{number_of(digits), trim_right(line.substr(0, last + 1)).size()};
}

// Each line ends in its number, that of its couplet or its name standing before it.
bool take_off_right(std::vector<SourceLine>& lines) {
  constexpr std::size_t kFewestAtRight = 6;
  std::size_t numbered = 0;
  std::size_t behind_numbers = 0;
  std::uint32_t before = 0;
  for (auto const& line : lines) {
    if (line.markup.role != LineRole::told_by_text) return false;
    if (line.text.empty()) continue;
    auto const right = number_at_right(line.text);
    if (!right || (numbered > 0 && right->number != before + 1)) return false;
    ++numbered;
    before = right->number;
    if (number_at_right(line.text.substr(0, right->words_at))) ++behind_numbers;
  }
  if (numbered < kFewestAtRight || behind_numbers < 2) return false;
  for (auto& line : lines) {
    if (auto const right = number_at_right(line.text)) {
      line.text = line.text.substr(0, right->words_at);
    }
  }
  return true;
}

bool counts_lines_on(std::uint32_t before, std::uint32_t number) {
  return number == before + 1 || (number % kEvery == 0 && number == before + kEvery);
}

// "(102) 15 (14). Mesosome …" beside "14 (15). Mesosome …": translations tell in the margin where a
// page of the original begins (common practice).
void take_off_margin_pages(std::vector<SourceLine>& lines) {
  constexpr std::ptrdiff_t kFewestSerial = 4;  // leads that name their rivals
  auto const names_rival = [](std::string_view text) {
    auto const label = read_label(text);
    return label && label->family == LabelFamily::digits && !label->back.empty();
  };
  if (std::count_if(lines.begin(), lines.end(), [&](SourceLine const& line) {
        return names_rival(line.text);
      }) < kFewestSerial) {
    return;
  }
  for (auto& line : lines) {
    if (line.markup.role != LineRole::told_by_text) continue;
    auto const close = line.text.starts_with('(') ? line.text.find(") ") : std::string_view::npos;
    if (close == std::string_view::npos || close < 2 || close > kLongestLineNumber) continue;
    auto const page = line.text.substr(1, close - 1);
    bool const digits = only_figures(page);
    auto const words = skip_blanks(line.text, close + 1);
    if (digits && names_rival(line.text.substr(words))) take_off_front(line, words);
  }
}

}  // namespace

void take_off_line_numbers(std::vector<SourceLine>& lines) {
  take_off_margin_pages(lines);
  std::size_t filled = 0;
  std::size_t numbered = 0;
  std::size_t leads = 0;
  std::size_t unmarked = 0;  // numbered lines on which no lead begins
  std::uint32_t before = 0;
  std::size_t steps = 0;
  for (auto const& line : lines) {
    if (line.text.empty() || line.markup.role != LineRole::told_by_text) continue;
    ++filled;
    auto const margin = margin_number(line.text);
    if (!margin) continue;
    bool const carries_on = counts_lines_on(before, margin->number);
    // A page's number stands alone.
    if (!carries_on && before > 0 && margin->words_at == line.text.size()) continue;
    ++numbered;
    if (before > 0 && carries_on) ++steps;
    before = margin->number;
    ++(begins_lead(line.text.substr(margin->words_at)) ? leads : unmarked);
  }
  // Labels go up by one as well, but no labels stand behind them, and no words between them.
  bool const margin = numbered >= kFewestNumberedLines && steps * 20 >= (numbered - 1) * 19 &&
                      numbered * 10 >= filled * 8 && leads * 4 >= numbered && unmarked > 0;
  if (!margin) {
    if (!take_off_right(lines)) take_off_every_fifth(lines);
    return;
  }
  before = 0;
  for (auto& line : lines) {
    auto const found = margin_number(line.text);
    if (!found) continue;
    bool const alone = found->words_at == line.text.size();
    if (before > 0 && alone && !counts_lines_on(before, found->number)) continue;
    before = found->number;
    take_off_front(line, found->words_at);
  }
}

}  // namespace keydrift::printed
