#include "keydrift/formats/printed_prose_numbers.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "12. vii. 1988", "12.vii.1988": a day, the month in roman numerals, the year.
bool begins_with_date(std::string_view text) {
  constexpr std::size_t kLongestMonth = 4;  // "viii"
  auto const day = text.find_first_not_of("0123456789");
  if (day == 0 || day > 2 || text.substr(day, 1) != ".") return false;
  auto const month = skip_blanks(text, day + 1);
  auto const stop = text.find_first_not_of("ivxIVX", month);
  if (stop == std::string_view::npos || stop == month || stop - month > kLongestMonth) return false;
  if (text[stop] != '.') return false;
  auto const year = skip_blanks(text, stop + 1);
  auto const end = std::min(text.find_first_not_of("0123456789", year), text.size());
  return is_year(text.substr(year, end - year));
}

// "no.", "couplet", "fig.", "vol.": words that a number follows.
bool announces_number(std::string_view line) {
  static constexpr std::array kWords{
      "no"sv,       "nos"sv,     "nr"sv,    "nr."sv,    "fig"sv,     "figs"sv,    "couplet"sv,
      "couplets"sv, "lead"sv,    "vol"sv,   "bd"sv,     "part"sv,    "table"sv,   "tables"sv,
      "number"sv,   "numbers"sv, "plate"sv, "plates"sv, "chapter"sv, "section"sv, "tab"sv,
      "abb"sv,      "taf"sv,     "pl"sv,    "station"sv};
  auto word = line.substr(last_word_begin(line));
  if (is_page_word(word)) return true;
  if (word.ends_with('.')) word.remove_suffix(1);
  return is_one_of(kWords, fold(word));
}

// "… 2. A. cusa", "… 2 – pronotum": the text has an item of that number behind its front.
bool holds_item(std::string_view text, std::uint32_t number) {
  auto const digits = std::to_string(number);
  for (auto at = text.find(digits); at != std::string_view::npos; at = text.find(digits, at + 1)) {
    auto const end = at + digits.size();
    if (at < 2 || text[at - 1] != ' ') continue;
    auto const before = text[at - 2];
    if (before != '.' && before != ';' && before != ',') continue;
    auto const next = code_point_at(text, skip_blanks(text, end)).value;
    auto const mark = text.substr(end, 1);
    if (mark == "." || mark == ")" || mark == "," || is_dash(next)) return true;
  }
  return false;
}

// Lines between two blank ones.
class ProseParagraph {
 public:
  explicit ProseParagraph(std::span<SourceLine> lines) : lines_{lines} {}

  void mark() {
    for (auto& line : lines_) {
      if (begins_with_date(line.text)) line.is_no_lead = true;
    }
    mark_captions_within();
    bool const caption = starts_caption(lines_.front().text);
    if (lines_.size() < 2 || (!caption && read_label(lines_.front().text))) return;
    if (!is_prose()) return;
    for (std::size_t i = 1; i < lines_.size(); ++i) {
      auto const label = number_at(i);
      if (!label) continue;
      auto const& above = lines_[i - 1].text;
      bool const item = caption && (holds_item(lines_[i].text, label->number + 1) ||
                                    holds_item(above, label->number - 1));
      if (item || goes_on(i, *label)) lines_[i].is_no_lead = true;
    }
  }

 private:
  [[nodiscard]] std::optional<Label> number_at(std::size_t i) const {
    auto const label = read_label(lines_[i].text);
    bool const plain = label && label->family == LabelFamily::digits && label->letter.empty() &&
                       label->marks == 0 && label->back.empty();
    return plain ? label : std::nullopt;
  }

  // Directly behind a lead: "Figs 3-5. 3. A. busa. 4. A. cusa." / "5. A. dusa."
  void mark_captions_within() {
    for (std::size_t i = 1; i + 1 < lines_.size(); ++i) {
      if (!starts_caption(lines_[i].text)) continue;
      for (auto j = i + 1; j < lines_.size() && is_item_of_caption(j); ++j) {
        lines_[j].is_no_lead = true;
      }
    }
  }

  // "5. A. dusa.", "5, A. dusa.": one before or behind it stands on its line or the line above.
  [[nodiscard]] bool is_item_of_caption(std::size_t i) const {
    auto const text = lines_[i].text;
    auto const digits = text.substr(0, leading_figures(text));
    auto const mark = text.substr(digits.size(), 1);
    constexpr std::size_t kMostDigits = 3;
    if (digits.empty() || digits.size() > kMostDigits || (mark != "." && mark != ",")) return false;
    if (has_row_of_dots(text) || lines_[i].markup.role != LineRole::told_by_text) return false;
    auto const number = number_of(digits);
    return holds_item(text, number + 1) ||
           (number > 1 && holds_item(lines_[i - 1].text, number - 1));
  }

  // No line has leaders, a rival, or a label of its own kind.
  [[nodiscard]] bool is_prose() const {
    std::unordered_set<std::uint32_t> numbers;
    return std::all_of(lines_.begin(), lines_.end(), [&](SourceLine const& line) {
      if (line.markup.role != LineRole::told_by_text || has_row_of_dots(line.text)) return false;
      if (line.text.find('\t') != std::string_view::npos) return false;
      auto const label = read_label(line.text);
      if (!label) return true;
      return !label->is_dash() && label->back.empty() && numbers.insert(label->number).second;
    });
  }

  // The line above has no end, and what stands here is no lead's beginning.
  [[nodiscard]] bool goes_on(std::size_t i, Label const& label) const {
    constexpr std::size_t kShortest = 40;  // bytes of a line that was wrapped
    auto const& above = lines_[i - 1].text;
    bool const lead_above = read_label(above) && !lines_[i - 1].is_no_lead;
    bool const deeper = lines_[i].indent > lines_[i - 1].indent;
    if (above.size() < kShortest || lead_above || deeper) return false;
    if (announces_number(above)) return true;
    if (mentions_key(above)) return false;
    auto const first = code_point_at(lines_[i].text, label.text_at).value;
    // "Annals of Sarn" / "3: 12–45."
    if (label.end == LabelEnd::colon && is_digit(first)) return true;
    return above.ends_with(',') && is_lower(first);
  }

  std::span<SourceLine> lines_;
};

}  // namespace

void mark_numbered_prose(std::vector<SourceLine>& lines) {
  for (std::size_t i = 0; i < lines.size();) {
    auto end = i;
    while (end < lines.size() && !lines[end].text.empty()) ++end;
    if (end > i) ProseParagraph{std::span{lines}.subspan(i, end - i)}.mark();
    i = end + 1;
  }
}

}  // namespace keydrift::printed
