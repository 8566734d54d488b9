#include "keydrift/formats/printed_numbers_led_to.hpp"

#include <algorithm>
#include <cstdint>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestLedTo = 3;  // couplets

// The number and its full stop at the end of a line, behind a blank or dots.
std::string_view number_word_at_end(std::string_view line) {
  constexpr std::size_t kLongest = 3;
  line = trim_right(line);
  if (line.ends_with('.')) line.remove_suffix(1);
  auto begin = line.size();
  while (begin > 0 && line[begin - 1] != ' ' && line[begin - 1] != '.') --begin;
  auto const number = line.substr(begin);
  return begin > 0 && !number.empty() && number.size() <= kLongest ? number : std::string_view{};
}

// The number that the line begins with, "12." or "12 ", before a capital; 0 without.
std::uint32_t number_at_front(std::string_view line) {
  constexpr std::size_t kMostFigures = 3;
  auto const figures = leading_figures(line);
  if (figures == 0 || figures > kMostFigures || figures == line.size()) return 0;
  auto const stop = line[figures] == '.' ? figures + 1 : figures;
  auto const words = line.find_first_not_of(' ', stop);
  bool const lead =
      words != std::string_view::npos && words > stop && is_upper(code_point_at(line, words).value);
  return lead ? number_of(line.substr(0, figures)) : 0;
}

}  // namespace

std::size_t restore_numbers_led_to(std::string& text) {
  std::set<std::uint32_t> labels;
  std::set<std::uint32_t> led_to;
  auto const lines = lines_of(text);
  for (auto const& [at, line] : lines) {
    if (auto const number = number_at_front(line); number > 0) labels.insert(number);
    auto const end = number_word_at_end(line);
    if (!end.empty() && only_figures(end) && !ends_in_page_cut_short(without_full_stop(line))) {
      led_to.insert(number_of(end));
    }
  }
  if (labels.size() < kFewestLedTo) return 0;
  std::vector<TextChange> misread;
  std::set<std::uint32_t> meant;
  std::uint32_t couplet = 0;
  for (auto const& [at, line] : lines) {
    if (auto const number = number_at_front(line); number > 0) couplet = number;
    auto const end = number_word_at_end(line);
    if (end.size() < 2) continue;  // "1" for l is as likely a letter
    // Behind a row of dots it is a number in any case, and is mended lead by lead.
    constexpr std::ptrdiff_t kRow = 3;
    auto const before = line.substr(0, static_cast<std::size_t>(end.data() - line.data()));
    auto const dots = before.substr(std::min(before.find_last_not_of(". ") + 1, before.size()));
    if (std::count(dots.begin(), dots.end(), '.') >= kRow) continue;
    auto const number = misread_number(end);
    if (!number || *number <= couplet || !labels.contains(*number)) continue;
    if (led_to.contains(*number) || !meant.insert(*number).second) continue;
    auto digits = std::to_string(*number);
    if (digits.size() != end.size()) continue;
    misread.push_back(
        {at + static_cast<std::size_t>(end.data() - line.data()), end.size(), std::move(digits)});
  }
  make_changes(misread, text);
  return misread.size();
}

}  // namespace keydrift::printed
