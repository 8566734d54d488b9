#include "keydrift/formats/printed_result_column.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestWithResult = 5;  // with something in the column
constexpr std::size_t kFewestWrappedResults = 2;
constexpr std::size_t kBlanksBeforeResult = 2;     // blanks before the column
constexpr std::size_t kMostLinesOfResultLead = 8;  // of a lead
constexpr std::uint32_t kLeastColumn = 30;

// Where the last words behind a gap begin in the text; its size where there is no gap.
std::size_t behind_last_gap(std::string_view text) {
  auto const gap = text.rfind("  ");
  return gap == std::string_view::npos ? text.size() : gap + kBlanksBeforeResult;
}

class ResultParter {
 public:
  explicit ResultParter(std::vector<SourceLine> const& lines) : lines_{lines} {}

  std::optional<std::vector<SourceLine>> part() && {
    if (!find_column()) return std::nullopt;
    std::vector<SourceLine> parted;
    parted.reserve(lines_.size() * 2);
    bool wrapped = false;
    for (std::size_t i = 0; i < lines_.size();) {
      auto const end = begins_lead(i) ? end_of_lead(i) : i + 1;
      if (end == i + 1 && cut_of(i) == lines_[i].text.size()) {
        parted.push_back(lines_[i++]);
        continue;
      }
      wrapped = take_lead(i, end, parted) || wrapped;
      i = end;
    }
    return wrapped ? std::optional{std::move(parted)} : std::nullopt;
  }

 private:
  [[nodiscard]] bool begins_lead(std::size_t i) const {
    auto const text = lines_[i].text;
    auto const label = read_label(text);
    return label && !lines_[i].is_no_lead && label->text_at < text.size() &&
           is_upper(code_point_at(text, label->text_at).value);
  }

  // "Habitat: fens", "(North: common)" beneath a lead that is complete.
  [[nodiscard]] static bool is_remark(std::string_view text) {
    auto const first = text.substr(0, text.find(' '));
    return starts_note(text) || text.front() == '(' || first.ends_with(':');
  }

  // Behind the last line of the lead that begins with line i.
  [[nodiscard]] std::size_t end_of_lead(std::size_t i) const {
    auto end = i + 1;
    while (end < lines_.size() && end - i < kMostLinesOfResultLead && !lines_[end].text.empty() &&
           !begins_lead(end) && !is_remark(lines_[end].text)) {
      ++end;
    }
    return end;
  }

  [[nodiscard]] std::uint32_t column_of(std::size_t i, std::size_t at) const {
    return lines_[i].indent + count_code_points(lines_[i].text.substr(0, at));
  }

  // Where in the line's text the column begins: 0 where the line has nothing else, its size where
  // it has nothing there.
  [[nodiscard]] std::size_t cut_of(std::size_t i) const {
    auto const text = lines_[i].text;
    if (!text.empty() && lines_[i].indent == column_) return 0;
    auto const at = behind_last_gap(text);
    return at < text.size() && column_of(i, at) == column_ ? at : text.size();
  }

  // The column in which the last cells of most leads begin, while words of some go on beneath.
  bool find_column() {
    std::map<std::uint32_t, std::size_t> columns;
    std::size_t leads = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (!begins_lead(i)) continue;
      ++leads;
      auto const at = behind_last_gap(lines_[i].text);
      if (at < lines_[i].text.size() && !has_row_of_dots(lines_[i].text)) {
        ++columns[column_of(i, at)];
      }
    }
    if (columns.empty()) return false;
    auto const most = std::max_element(
        columns.begin(), columns.end(),
        [](auto const& one, auto const& other) { return one.second < other.second; });
    column_ = most->first;
    return most->second >= kFewestWithResult && most->second * 4 >= leads * 3 &&
           column_ >= kLeastColumn && count_wrapped() >= kFewestWrappedResults;
  }

  // Leads with a destination in the column whose words go on beneath it.
  [[nodiscard]] std::size_t count_wrapped() const {
    std::size_t wrapped = 0;
    for (std::size_t i = 0; i + 1 < lines_.size(); ++i) {
      if (!begins_lead(i) || cut_of(i) == lines_[i].text.size()) continue;
      auto const& below = lines_[i + 1];
      bool const words = !below.text.empty() && !begins_lead(i + 1) && !is_remark(below.text);
      if (words && below.indent + kBlanksBeforeResult < column_) ++wrapped;
    }
    return wrapped;
  }

  // Puts the lead's words first and what stands in the column behind them; whether words went on
  // beneath the destination.
  bool take_lead(std::size_t begin, std::size_t end, std::vector<SourceLine>& parted) const {
    std::vector<SourceLine> results;
    bool wrapped = false;
    for (auto i = begin; i < end; ++i) {
      auto const& line = lines_[i];
      auto const cut = cut_of(i);
      if (cut > 0) {
        wrapped = wrapped || !results.empty();
        parted.push_back(part_of_line(line, 0, cut));
      }
      if (cut < line.text.size()) results.push_back(part_of_line(line, cut, line.text.size()));
    }
    auto const first = parted.size();
    parted.insert(parted.end(), results.begin(), results.end());
    if (!results.empty()) mark_end_over_lines(parted, first, 0, parted.size() - 1);
    return wrapped;
  }

  std::vector<SourceLine> const& lines_;
  std::uint32_t column_{};
};

}  // namespace

std::optional<std::vector<SourceLine>> part_result_column(std::vector<SourceLine> const& lines) {
  return ResultParter{lines}.part();
}

}  // namespace keydrift::printed
