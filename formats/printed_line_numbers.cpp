// Numbers of lines in the margin, as manuscripts under review have them.

#include <algorithm>
#include <cstddef>
#include <optional>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewest = 8;         // numbered lines that make a margin
constexpr std::size_t kLongestNumber = 5;  // digits
constexpr std::uint32_t kEvery = 5;        // every fifth line may be numbered

struct MarginNumber {
  std::uint32_t number{};
  std::size_t words_at{};  // behind it and its blanks; the line's end where nothing follows
};

std::optional<MarginNumber> margin_number(std::string_view line) {
  std::size_t end = 0;
  MarginNumber found;
  while (end < line.size() && is_digit(static_cast<unsigned char>(line[end]))) {
    if (end == kLongestNumber) return std::nullopt;
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

bool goes_on(std::uint32_t before, std::uint32_t number) {
  return number == before + 1 || (number % kEvery == 0 && number == before + kEvery);
}

}  // namespace

void take_off_line_numbers(std::vector<SourceLine>& lines) {
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
    bool const carries_on = goes_on(before, margin->number);
    // A page's number stands alone.
    if (!carries_on && before > 0 && margin->words_at == line.text.size()) continue;
    ++numbered;
    if (before > 0 && carries_on) ++steps;
    before = margin->number;
    ++(begins_lead(line.text.substr(margin->words_at)) ? leads : unmarked);
  }
  // Labels go up by one as well, but no labels stand behind them, and no words between them.
  bool const margin = numbered >= kFewest && steps * 20 >= (numbered - 1) * 19 &&
                      numbered * 10 >= filled * 8 && leads * 4 >= numbered && unmarked > 0;
  if (!margin) return;
  before = 0;
  for (auto& line : lines) {
    auto const found = margin_number(line.text);
    if (!found) continue;
    bool const alone = found->words_at == line.text.size();
    if (before > 0 && alone && !goes_on(before, found->number)) continue;
    before = found->number;
    auto const columns = count_code_points(line.text.substr(0, found->words_at));
    line.text.remove_prefix(found->words_at);
    line.begin += found->words_at;
    line.blanks += columns;
    line.indent += columns;
  }
}

}  // namespace keydrift::printed
