#include "keydrift/formats/printed_columns.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kNarrowest = 18;    // columns of text that a column of print has at least
constexpr std::uint32_t kWidest = 240;      // columns of a line that are looked at
constexpr std::size_t kFewestTwoSided = 8;  // with words on both sides
constexpr std::uint32_t kGutter = 2;        // blanks between the columns of print

// Where the blanks lie in a line, by column.
struct Gap {
  std::uint32_t begin{};  // columns
  std::uint32_t end{};
  std::size_t left_end{};  // bytes in the line's text
  std::size_t right_begin{};
};

std::vector<Gap> gaps_of(SourceLine const& line) {
  std::vector<Gap> gaps;
  std::uint32_t column = line.indent;
  std::uint32_t blanks = 0;
  std::size_t blanks_at = 0;
  for (std::size_t at = 0; at < line.text.size() && column < kWidest;) {
    auto const c = code_point_at(line.text, at);
    if (c.value == '\t') return {};  // tab stops are nobody's columns
    if (is_blank(c.value)) {
      if (blanks++ == 0) blanks_at = at;
    } else {
      if (blanks >= kGutter) gaps.push_back({column - blanks, column, blanks_at, at});
      blanks = 0;
    }
    ++column;
    at += c.length;
  }
  return gaps;
}

// Half of the lines at least must have a gap for the columns to be told apart; most files have far
// fewer of them.
bool have_gaps(std::vector<SourceLine> const& lines) {
  auto const may_have_gap = [](std::string_view text) {
    // All bytes are looked at, many at a time (a bool would be looked at one by one).
    unsigned wide = 0;
    for (char const c : text) wide |= static_cast<unsigned char>(c) & 0x80U;
    for (std::size_t i = 1; i < text.size(); ++i) {
      auto const blank =
          static_cast<unsigned>(text[i - 1] == ' ') | static_cast<unsigned>(text[i - 1] == '\f');
      auto const another =
          static_cast<unsigned>(text[i] == ' ') | static_cast<unsigned>(text[i] == '\f');
      wide |= blank & another;
    }
    return wide != 0;
  };
  std::size_t filled = 0;
  std::size_t with_gap = 0;
  for (auto const& line : lines) {
    if (line.text.empty()) continue;
    ++filled;
    if (may_have_gap(line.text)) ++with_gap;
  }
  return with_gap >= kFewestTwoSided && with_gap * 2 >= filled;
}

class ColumnParter {
 public:
  explicit ColumnParter(std::vector<SourceLine> const& lines) : lines_{lines} {}

  std::optional<std::vector<SourceLine>> part() && {
    for (auto const& line : lines_) {
      gaps_.push_back(gaps_of(line));
      lengths_.push_back(line.indent + count_code_points(line.text));
    }
    auto const gutter = find_gutter();
    if (!gutter) return std::nullopt;
    gutter_ = *gutter;
    for (std::size_t i = 0; i < lines_.size(); ++i) take(i);
    flush();
    return std::move(parted_);
  }

 private:
  // Is column c blank in line i, or beyond its end?
  [[nodiscard]] Gap const* gap_at(std::size_t i, std::uint32_t c) const {
    for (auto const& gap : gaps_[i]) {
      if (gap.begin <= c && c < gap.end) return &gap;
    }
    return nullptr;
  }

  // The extraction of a page's text may shift words by some columns.
  [[nodiscard]] Gap const* wide_gap_beside(std::size_t i) const {
    constexpr std::uint32_t kMostShift = 4;
    constexpr std::uint32_t kWide = 3;  // more than parts sentences
    for (auto const& gap : gaps_[i]) {
      bool const near = gap.begin <= gutter_ + kMostShift && gutter_ < gap.end + kMostShift;
      if (near && gap.end - gap.begin >= kWide) return &gap;
    }
    return nullptr;
  }

  // The column that most lines with words on both sides have blank, and hardly any line crosses.
  [[nodiscard]] std::optional<std::uint32_t> find_gutter() const {
    std::optional<std::uint32_t> best;
    std::size_t most = 0;
    std::vector<std::size_t> both(kWidest, 0);
    std::vector<std::size_t> crossing(kWidest, 0);
    std::vector<std::size_t> right_columns(kWidest, 0);
    std::size_t filled = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty()) continue;
      ++filled;
      auto const end = std::min(lengths_[i], kWidest);
      auto column = std::min(lines_[i].indent, kWidest);
      for (auto const& gap : gaps_[i]) {
        for (; column < std::min(gap.begin, end); ++column) ++crossing[column];
        for (; column < std::min(gap.end, end); ++column) {
          ++both[column];
          right_columns[column] += end - std::min(gap.end, end);
        }
      }
      for (; column < end; ++column) ++crossing[column];
    }
    for (auto c = kNarrowest; c < kWidest; ++c) {
      if (both[c] < kFewestTwoSided || both[c] * 2 < filled || crossing[c] * 8 > both[c]) continue;
      // Destinations in a column of their own are short; print of a second column is not.
      if (right_columns[c] < both[c] * kNarrowest) continue;
      if (both[c] > most) {
        most = both[c];
        best = c;
      }
    }
    return best;
  }

  void take(std::size_t i) {
    auto const& line = lines_[i];
    if (line.starts_page) flush();
    if (line.text.empty()) {
      left_.push_back(line);
      auto blank = line;
      right_.push_back(blank);
      return;
    }
    if (lengths_[i] <= gutter_) {
      left_.push_back(line);
      return;
    }
    if (line.indent > gutter_) {
      right_.push_back(moved(line, 0, line.indent));
      return;
    }
    auto const* gap = gap_at(i, gutter_);
    if (gap == nullptr) gap = wide_gap_beside(i);
    if (gap == nullptr) {  // runs across both columns
      flush();
      parted_.push_back(line);
      return;
    }
    auto left = line;
    left.text = trim_right(line.text.substr(0, gap->left_end));
    left_.push_back(left);
    right_.push_back(moved(line, gap->right_begin, gap->end));
  }

  // The right part of a line, its indentation counted from the gutter.
  [[nodiscard]] SourceLine moved(SourceLine const& line, std::size_t at,
                                 std::uint32_t column) const {
    auto right = line;
    right.text = line.text.substr(at);
    right.begin = line.begin + at;
    right.blanks = line.blanks + count_code_points(line.text.substr(0, at));
    right.indent = column - std::min(column, gutter_);
    right.starts_page = false;
    return right;
  }

  void flush() {
    // The right column's indentation is counted from where most of its lines begin.
    auto least = kWidest;
    for (auto const& line : right_) {
      if (!line.text.empty()) least = std::min(least, line.indent);
    }
    for (auto& line : right_) line.indent -= std::min(line.indent, least);
    parted_.insert(parted_.end(), left_.begin(), left_.end());
    parted_.insert(parted_.end(), right_.begin(), right_.end());
    left_.clear();
    right_.clear();
  }

  std::vector<SourceLine> const& lines_;
  std::vector<std::vector<Gap>> gaps_;  // by line
  std::vector<std::uint32_t> lengths_;  // by line: columns
  std::uint32_t gutter_{};
  std::vector<SourceLine> left_;
  std::vector<SourceLine> right_;
  std::vector<SourceLine> parted_;
};

}  // namespace

std::optional<std::vector<SourceLine>> part_columns(std::vector<SourceLine> const& lines) {
  if (!have_gaps(lines)) return std::nullopt;
  return ColumnParter{lines}.part();
}

}  // namespace keydrift::printed
