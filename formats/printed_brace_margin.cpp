#include "keydrift/formats/printed_brace_margin.hpp"

#include <algorithm>
#include <limits>
#include <set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kMostNumbersLost = 3;      // numbers that a scan may have lost in a row
constexpr std::uint32_t kMostCoupletsBehind = 20;  // the last that a brace is left of
constexpr std::size_t kMostAbove = 2000;           // lines between a couplet and what leads to it
constexpr std::size_t kFewestUnsigned = 3;         // couplets, where no piece of a brace is left
constexpr std::uint32_t kNumberSlack = 1;          // columns that a number may be set off by
constexpr auto kAtStart = static_cast<std::size_t>(-1);  // above all lines

class MarginReader {
 public:
  explicit MarginReader(std::vector<SourceLine> const& lines) : lines_{lines} {}

  std::optional<BraceMargin> read() && {
    if (std::any_of(lines_.begin(), lines_.end(), [](SourceLine const& line) {
          return line.markup.role != LineRole::told_by_text;
        })) {
      return std::nullopt;
    }
    fronts_.reserve(lines_.size());
    for (auto const& line : lines_) fronts_.push_back(read_brace_front(line.text));
    count_numbers();
    fill_lost_numbers();
    give_counts_back();
    bool const signs = has_signs();
    if (!signs && !stands_in_the_middle()) return std::nullopt;
    return BraceMargin{std::move(fronts_), std::move(numbers_), signs};
  }

 private:
  [[nodiscard]] bool is_blank_line(std::size_t line) const { return lines_[line].text.empty(); }
  [[nodiscard]] bool is_signed(std::size_t line) const { return fronts_[line].sign != 0; }

  // Numbers beside pieces of braces or alone on their lines carry the count on; others fill its
  // gaps, or make it up where there are none of the former.
  void count_numbers() {
    constexpr auto kAny = std::numeric_limits<std::uint32_t>::max();
    count_from({0, lines_.size(), 0, kAny}, true);
    if (numbers_.size() < 2) {
      numbers_.clear();
      return count_from({0, lines_.size(), 0, kAny}, false);
    }
    sure_ = std::exchange(numbers_, {});
    for (auto const line : sure_) columns_.insert(lines_[line].indent);
    std::size_t from = 0;
    std::uint32_t last = 0;
    for (auto const line : sure_) {
      auto const number = fronts_[line].number;
      if (number > last + 1) count_from({from, line, last, number}, false);
      numbers_.push_back(line);
      from = line + 1;
      last = number;
    }
    // Behind the last of them only those that a lead leads to.
    auto added = numbers_.size();
    count_from({from, lines_.size(), last, last + kMostCoupletsBehind}, false);
    while (added < numbers_.size() && is_led_to(numbers_[added], fronts_[numbers_[added]].number)) {
      ++added;
    }
    numbers_.resize(added);
  }

  // "6 {", where four paragraphs with pieces of braces stand between it and couplet 1.
  [[nodiscard]] bool is_told_by_paragraphs(std::size_t line, std::uint32_t last) const {
    constexpr std::uint32_t kMostTold = 12;  // couplets
    auto const& front = fronts_[line];
    bool const ahead = front.sign != 0 && last > 0 && front.number > last + kMostNumbersLost &&
                       front.number <= last + kMostTold;
    return ahead && !numbers_.empty() && line > numbers_.back() &&
           paragraphs_between(numbers_.back(), line).size() == front.number - last - 1;
  }

  // The paragraphs with pieces of braces between those of couplets 3 and 6, where there are two:
  // their numbers were lost or misread beyond telling.
  void fill_lost_numbers() {
    if (numbers_.size() < 2) return;
    std::vector<std::size_t> filled;
    fill_by_signs(kAtStart, numbers_.front(), filled);
    filled.push_back(numbers_.front());
    for (std::size_t k = 1; k < numbers_.size(); ++k) {
      auto const above = fronts_[numbers_[k - 1]].number;
      auto const below = fronts_[numbers_[k]].number;
      if (below > above + 1 && !fill_by_signs(numbers_[k - 1], numbers_[k], filled)) {
        auto const lost = paragraphs_between(numbers_[k - 1], numbers_[k]);
        if (lost.size() == below - above - 1) {
          for (std::size_t i = 0; i < lost.size(); ++i) {
            filled.push_back(give_number(lost[i], above + 1 + static_cast<std::uint32_t>(i)));
          }
        }
      }
      filled.push_back(numbers_[k]);
    }
    numbers_ = std::move(filled);
    fill_behind_last();
  }

  // "^ f Wings clear", "Q f Legs red" between couplets 2 and 5: as many paragraphs as numbers are
  // missing begin with a sign that stands for theirs, however many others there are.
  bool fill_by_signs(std::size_t above, std::size_t below, std::vector<std::size_t>& filled) {
    auto const before = above == kAtStart ? 0 : fronts_[above].number;
    auto const missing = fronts_[below].number - before - 1;
    std::vector<std::size_t> found;
    for (auto line = above == kAtStart ? 0 : above + 1; line < below; ++line) {
      bool const begins = line == 0 || is_blank_line(line - 1);
      if (!begins || is_blank_line(line) || fronts_[line].number > 0) continue;
      auto const front = read_lost_front(lines_[line].text, 1);
      if (front && front->words_at < lines_[line].text.size() &&
          is_upper(code_point_at(lines_[line].text, front->words_at).value)) {
        found.push_back(line);
      }
    }
    if (found.empty() || found.size() != missing) return false;
    for (std::uint32_t i = 0; i < missing; ++i) {
      fronts_[found[i]] = *read_lost_front(lines_[found[i]].text, before + 1 + i);
      filled.push_back(found[i]);
    }
    return true;
  }

  // The same behind the last number, as far as leads lead there.
  void fill_behind_last() {
    for (auto const first : paragraphs_between(numbers_.back(), lines_.size())) {
      auto const number = fronts_[numbers_.back()].number + 1;
      auto const before = fronts_[first];
      auto const line = give_number(first, number);
      // One that no lead leads to may be a slip, where the next one is led to.
      if (!is_led_to(line, number) && !is_led_to(line, number + 1)) {
        fronts_[first] = before;
        return;
      }
      numbers_.push_back(line);
    }
  }

  // First lines of those that stand wholly between the two lines.
  [[nodiscard]] std::vector<std::size_t> paragraphs_between(std::size_t above,
                                                            std::size_t below) const {
    std::vector<std::size_t> found;
    for (auto line = above + 1; line < below; ++line) {
      if (is_blank_line(line) || !is_blank_line(line - 1)) continue;
      auto end = line;
      bool braced = false;
      for (; end < below && !is_blank_line(end); ++end) {
        braced = braced || is_signed(end) || read_lost_front(lines_[end].text, 1);
      }
      if (braced && (end < below || below == lines_.size())) found.push_back(line);
      line = end;
    }
    return found;
  }

  // To the line of the paragraph where something stands for it, its first line without.
  std::size_t give_number(std::size_t first, std::uint32_t number) {
    // "1 Wings clear": a piece of the brace, which counts nothing.
    for (auto line = first; line < lines_.size() && !is_blank_line(line); ++line) {
      auto& front = fronts_[line];
      if (front.number != 1 || front.sign != 0) continue;
      front.number = 0;
      front.sign = U'1';
    }
    auto given = lines_.size();
    for (auto line = first; line < lines_.size() && !is_blank_line(line); ++line) {
      if (is_signed(line)) continue;
      auto const front = read_lost_front(lines_[line].text, number);
      if (!front) continue;
      fronts_[line] = *front;
      if (given == lines_.size()) {
        given = line;
      } else {  // what is left of the number, on another line
        fronts_[line].number = 0;
      }
    }
    if (given < lines_.size()) return given;
    fronts_[first].number = number;
    fronts_[first].misread = true;
    fronts_[first].printed = {};
    return first;
  }

  // "12 mm long": a number that counts no couplet is one of the words.
  void give_counts_back() {
    auto counted = numbers_.begin();
    for (std::size_t line = 0; line < fronts_.size(); ++line) {
      while (counted != numbers_.end() && *counted < line) ++counted;
      auto& front = fronts_[line];
      if (front.number == 0 || (counted != numbers_.end() && *counted == line)) continue;
      auto const text = lines_[line].text;
      auto const first = code_point_at(text, 0);
      BraceFront without;
      if (front.sign != 0 && first.value == front.sign) {
        without.sign = front.sign;
        without.words_at = skip_blanks(text, first.length);
      }
      front = without;
    }
  }

  // Lines and numbers between which it is counted.
  struct Span {
    std::size_t begin{};
    std::size_t end{};
    std::uint32_t above{};
    std::uint32_t below{};
  };

  void count_from(Span span, bool sure) {
    auto last = span.above;
    for (auto line = span.begin; line < span.end; ++line) {
      auto& front = fronts_[line];
      if (is_blank_line(line)) continue;
      if (front.number == 0) {
        auto const misread = read_misread_front(lines_[line].text, last + 1);
        if (!misread || last + 1 >= span.below) continue;
        front = *misread;
      }
      auto const number = front.number;
      bool const plain = front.sign == 0 && !front.is_number_alone(lines_[line].text);
      if (number >= span.below || (sure && plain)) continue;
      if (plain && !is_beneath_sure(line)) continue;
      bool const next = number == last + 1;
      bool const skips =
          (front.sign != 0 || !sure_.empty()) && number > last && number <= last + kMostNumbersLost;
      bool const again = front.sign != 0 && number == 1 && last > 1;
      if (!next && !skips && !again && !is_told_by_paragraphs(line, last)) continue;
      numbers_.push_back(line);
      last = number;
    }
  }

  // In the column of the numbers beside braces.
  [[nodiscard]] bool is_beneath_sure(std::size_t line) const {
    if (sure_.empty()) return true;
    auto const indent = lines_[line].indent;
    auto const column = columns_.lower_bound(indent - std::min(indent, kNumberSlack));
    return column != columns_.end() && *column <= indent + kNumberSlack;
  }

  // Couplet `number`, on `line`, by a line above it.
  [[nodiscard]] bool is_led_to(std::size_t line, std::uint32_t number) const {
    auto const first = sure_.empty() ? numbers_.front() : sure_.front();
    for (auto at = line - std::min(line - first, kMostAbove); at < line; ++at) {
      auto const text = lines_[at].text.substr(fronts_[at].words_at);
      auto const split = split_at_leader(text, {});
      if (split.kind == LeaderKind::none) {
        auto const trailing = trailing_reference(text);
        if (trailing && trailing->reference.number == number) return true;
        continue;
      }
      auto const led = read_reference(strip_pointer(text.substr(split.destination_begin)));
      if (led && led->number == number) return true;
    }
    return false;
  }

  [[nodiscard]] bool has_signs() const {
    std::size_t found = 0;
    for (auto const line : numbers_) {
      bool const above = line > 0 && is_signed(line - 1);
      bool const below = line + 1 < lines_.size() && is_signed(line + 1);
      if (is_signed(line) || (above && below)) ++found;
    }
    return numbers_.size() >= 2 && found * 2 >= numbers_.size();
  }

  // Each number stands alone in its paragraph, and below its first line.
  [[nodiscard]] bool stands_in_the_middle() const {
    if (numbers_.size() < kFewestUnsigned) return false;
    std::size_t found = 0;
    for (std::size_t k = 0; k < numbers_.size(); ++k) {
      auto const line = numbers_[k];
      auto begin = line;
      while (begin > 0 && !is_blank_line(begin - 1) && line - begin < kLongestBrace) --begin;
      bool const shared = (k > 0 && numbers_[k - 1] >= begin) || begin == line;
      if (!shared) ++found;
    }
    return found * 3 >= numbers_.size() * 2;
  }

  std::vector<SourceLine> const& lines_;
  std::vector<BraceFront> fronts_;
  std::vector<std::size_t> sure_;    // lines of numbers beside pieces of braces or alone
  std::set<std::uint32_t> columns_;  // of those numbers
  std::vector<std::size_t> numbers_;
};

}  // namespace

std::optional<BraceMargin> read_brace_margin(std::vector<SourceLine> const& lines) {
  return MarginReader{lines}.read();
}

}  // namespace keydrift::printed
