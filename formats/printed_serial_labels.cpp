// Labels of serial keys whose brackets scanning damaged, "2 3) Wings" for "2 (3) Wings", or that
// stand behind their rivals', "(3) 2. Wings".

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"

namespace keydrift::printed {
namespace {

struct SerialStand {
  std::size_t line{};
  std::uint32_t rival{};
};

// Bytes of the number at `at`, letters for its figures among them; 0 where another one stands.
std::size_t figures_at(std::string_view line, std::size_t at, std::uint32_t number) {
  auto const length = figures_of(number, line.substr(at));
  return is_digit(code_point_at(line, at + length).value) ? 0 : length;
}

// "2 3) Wings", "2, (3) Wings", "2 C3) Wings", ".2 (3j Wings" for "2 (3) Wings".
std::optional<Label> damaged_label(std::string_view line, std::uint32_t number,
                                   std::uint32_t rival) {
  constexpr std::size_t kMostSigns = 4;
  std::size_t at = 0;
  if (!line.empty() && std::string_view{".,'`|-"}.find(line[0]) != std::string_view::npos) {
    at = skip_blanks(line, 1);
  }
  auto const own = figures_at(line, at, number);
  if (own == 0) return std::nullopt;
  at += own;
  auto const number_end = at;
  // What is left of the bracket: signs, blanks, and one letter that looks like it.
  static constexpr std::string_view kSigns = " \t.,;:([{'|";
  static constexpr std::string_view kLetters = "CGcftlI";
  std::size_t signs = 0;
  std::size_t letters = 0;
  std::size_t other = 0;
  while (at < line.size() && signs + letters <= kMostSigns) {
    other = figures_at(line, at, rival);
    if (other > 0) break;
    bool const letter = kLetters.find(line[at]) != std::string_view::npos && letters == 0;
    if (!letter && kSigns.find(line[at]) == std::string_view::npos) return std::nullopt;
    ++(letter ? letters : signs);
    ++at;
  }
  if (other == 0 || signs == 0) return std::nullopt;
  auto const inside = line.substr(at, other);
  at += other;
  auto const closed = at;
  while (at < line.size() &&
         std::string_view{" )]}jJ.,;:"}.find(line[at]) != std::string_view::npos) {
    ++at;
  }
  if (at == closed || !is_blank(code_point_before(line, at).value)) return std::nullopt;
  if (auto const dash = code_point_at(line, at); is_dash(dash.value)) {
    at = skip_blanks(line, at + dash.length);
  }
  if (!is_letter(code_point_at(line, at).value)) return std::nullopt;
  return label_with_back(number, line.substr(0, number_end), inside, at);
}

// Of the key on lines [first, last).
void tell_in(std::vector<SourceLine>& lines, std::size_t first, std::size_t last) {
  constexpr std::size_t kFewestPairs = 2;
  std::map<std::uint32_t, SerialStand> stands;  // by number
  std::map<std::uint32_t, std::uint32_t> named_by;
  for (auto i = first; i < last; ++i) {
    auto const label = read_label(lines[i].text);
    if (!label || label->family != LabelFamily::digits || label->back.empty()) continue;
    if (!label->letter.empty()) continue;
    if (!only_figures(label->back)) continue;
    constexpr std::size_t kMostDigits = 4;
    if (label->back.size() > kMostDigits || label->number > kMostCouplets) continue;
    auto const rival = number_of(label->back);
    // Numbers that stand twice tell nothing.
    if (!stands.try_emplace(label->number, SerialStand{i, rival}).second) return;
    named_by[rival] = label->number;
  }
  std::size_t paired = 0;
  std::size_t alone = 0;
  for (auto const& [number, stand] : stands) {
    auto const other = stands.find(stand.rival);
    ++(other != stands.end() && other->second.rival == number ? paired : alone);
  }
  if (paired < kFewestPairs * 2 || alone * 2 > paired) return;
  // "2 (3)" is missing where "3 (2)" stands, and its line between those of the nearest numbers.
  for (auto const& [number, rival] : named_by) {
    if (stands.contains(number)) continue;
    constexpr std::size_t kMostLines = 40;
    auto const behind = stands.upper_bound(number);
    auto const before = behind == stands.begin() ? stands.end() : std::prev(behind);
    auto from = before == stands.end() ? first : before->second.line + 1;
    auto end = behind == stands.end() ? last : behind->second.line;
    if (before == stands.end()) from = std::max(from, end - std::min(end, kMostLines));
    if (behind == stands.end()) end = std::min(end, from + kMostLines);
    if (from + kMostLines < end) continue;
    for (auto i = from; i < end; ++i) {
      if (lines[i].text.empty() || lines[i].told) continue;
      auto label = damaged_label(lines[i].text, number, rival);
      if (!label) continue;
      lines[i].told = label;
      stands[number] = SerialStand{i, rival};
      break;
    }
  }
}

// "(16) 1. Wings": the rival's number before the own one, as some journals of the nineteenth and
// early twentieth century print them (common practice).
std::optional<Label> label_behind_rival(std::string_view line) {
  constexpr std::size_t kMostDigits = 3;
  auto const close = line.starts_with('(') ? line.find(')') : std::string_view::npos;
  if (close == std::string_view::npos || close < 2 || close > kMostDigits + 1) return std::nullopt;
  auto const rival = line.substr(1, close - 1);
  auto const own = skip_blanks(line, close + 1);
  auto const end = own + leading_figures(line.substr(own));
  if (end == own || end - own > kMostDigits || end + 1 >= line.size()) return std::nullopt;
  if (!only_figures(rival) || line[end] != '.') return std::nullopt;
  auto const words = skip_blanks(line, end + 1);
  if (words == end + 1 || !is_upper(code_point_at(line, words).value)) return std::nullopt;
  auto const printed = line.substr(own, end - own);
  return label_with_back(number_of(printed), printed, rival, words);
}

// Where each number is the next one and most rivals name each other.
void tell_labels_behind_rivals(std::vector<SourceLine>& lines) {
  constexpr std::size_t kFewest = 4;
  std::map<std::uint32_t, std::uint32_t> rivals;
  std::vector<std::pair<std::size_t, Label>> found;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].markup.role != LineRole::told_by_text) return;
    auto const label = label_behind_rival(lines[i].text);
    if (!label) continue;
    if (label->number != found.size() + 1) return;
    rivals[label->number] = number_of(label->back);
    found.emplace_back(i, *label);
  }
  auto const paired = static_cast<std::size_t>(
      std::count_if(rivals.begin(), rivals.end(), [&rivals](auto const& one) {
        auto const other = rivals.find(one.second);
        return other != rivals.end() && other->second == one.first;
      }));
  if (found.size() < kFewest || paired * 3 < found.size() * 2) return;
  tell_labels(lines, found);
}

}  // namespace

void tell_serial_labels(std::vector<SourceLine>& lines) {
  tell_labels_behind_rivals(lines);
  // Each key counts from 1.
  std::size_t first = 0;
  std::uint32_t before = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const label = read_label(lines[i].text);
    if (!label || label->family != LabelFamily::digits || label->back.empty()) continue;
    // "1O (9)" is a damaged 10.
    if (label->number == 1 && label->letter.empty() && before > 1) {
      tell_in(lines, first, i);
      first = i;
    }
    before = label->number;
  }
  tell_in(lines, first, lines.size());
}

}  // namespace keydrift::printed
