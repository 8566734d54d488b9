#include "keydrift/formats/docx_paragraph.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <utility>

#include "keydrift/formats/marked_ends.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/xml_text.hpp"

namespace keydrift::docx {
namespace {

// Half the height of the usual 11-point type is the usual width of a character (common practice).
constexpr std::int32_t kCharacterWidth = 110;  // twips
// Cells of a row that holds a whole couplet have a line for each of its leads; cells of more lines
// are columns of a page.
constexpr std::size_t kLinesOfCouplet = 4;
constexpr std::string_view kLeader = " ..... ";

// Where the text stands within its line of print, by estimate, to tell which stop a tab meets.
class Ruler {
 public:
  explicit Ruler(ParagraphProperties const& look) : left_{look.left.value_or(0)} {
    for (auto const& stop : look.tabs) {
      if (!stop.cleared) stops_.push_back(stop);
    }
    begin_ = left_ + look.first_line.value_or(0);
    // The first line's hanging text goes on at the left border as if a stop were there (17.3.1.12).
    if (begin_ < left_) {
      TabStop const hanging{.at = left_, .leader = false, .cleared = false};
      stops_.insert(std::upper_bound(stops_.begin(), stops_.end(), left_,
                                     [](std::int32_t at, TabStop const& b) { return at < b.at; }),
                    hanging);
    }
    at_ = begin_;
  }
  [[nodiscard]] bool has_leaders() const {
    return std::any_of(stops_.begin(), stops_.end(), [](TabStop const& a) { return a.leader; });
  }
  void start_line() { at_ = left_; }
  void advance() {
    // Far beyond any page there is nothing to tell.
    if (at_ < 1'000'000'000) at_ += kCharacterWidth;
  }
  // Moves to the stop that a tab meets and says whether it draws a leader.
  bool tab() {
    if (stops_.empty()) return false;
    auto const last = stops_.back().at;
    if (at_ >= last && last > left_) at_ = left_ + (at_ - left_) % (last - left_);
    auto const stop = std::upper_bound(stops_.begin(), stops_.end(), at_,
                                       [](std::int32_t at, TabStop const& b) { return at < b.at; });
    if (stop == stops_.end()) return stops_.back().leader;
    at_ = stop->at;
    return stop->leader;
  }

 private:
  std::int32_t left_{};
  std::int32_t begin_{};
  std::int32_t at_{};
  std::vector<TabStop> stops_;
};

bool is_start(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80; }

void trim_end(std::string& text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.pop_back();
}

bool says_anything(Line const& line) { return !printed::trim(line.text).empty(); }

void append(Line& line, Line const& more) {
  for (auto stretch : more.stretches) {
    stretch.text_begin += line.text.size();
    line.stretches.push_back(stretch);
  }
  line.text += more.text;
}

std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> cells;
  for (;;) {
    auto const tab = line.find('\t');
    cells.push_back(line.substr(0, tab));
    if (tab == std::string_view::npos) return cells;
    line.remove_prefix(tab + 1);
  }
}

bool is_label(std::string_view cell) { return printed::label_alone(cell).has_value(); }

struct RowShape {
  bool lead{false};  // a label or nothing, words, and anything
  bool label{false};
  bool destination{false};
};

// "b" beside a number that reaches down from the row above.
bool is_letter_alone(Cell const& cell) {
  if (cell.lines.size() != 1) return false;
  auto text = printed::trim(cell.lines.front().text);
  if (text.ends_with('.') || text.ends_with(')')) text.remove_suffix(1);
  return text.size() == 1 && printed::is_lower(printed::code_point_at(text, 0).value);
}

RowShape shape_of(Line const& line) {
  if (!line.in_row) return {};
  auto const cells = cells_of(line.text);
  if (cells.size() != 3) return {};
  RowShape shape;
  shape.label = is_label(cells[0]);
  shape.lead = (shape.label || printed::trim(cells[0]).empty()) && !printed::trim(cells[1]).empty();
  shape.destination = !printed::trim(cells[2]).empty();
  return shape;
}

// What is set in a type of its own in a line, and where its end in smaller type begins.
struct LineType {
  TypedSpans italics;
  TypedSpans emphases;
  std::size_t small_begin{std::string::npos};

  // Those that begin first, and of these the longest, first.
  [[nodiscard]] std::vector<xml::InlineMark> marks() const {
    std::vector<xml::InlineMark> marks;
    auto const add = [&marks](TypedSpans const& spans, xml::InlineKind kind) {
      for (auto const& one : spans) marks.push_back({kind, one.begin, one.end});
    };
    add(emphases, xml::InlineKind::emphasis);
    add(italics, xml::InlineKind::italic);
    std::stable_sort(marks.begin(), marks.end(), [](auto const& a, auto const& b) {
      return a.begin != b.begin ? a.begin < b.begin : a.end > b.end;
    });
    return marks;
  }
};

// The lines' destinations, where names in italics or bold type tell them.  Columns tell more.
void tell_destinations(std::vector<Line>& lines, std::vector<LineType> const& types) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto& line = lines[i];
    if (line.text.find('\t') != std::string::npos) continue;
    xml::FlowText words{line.text.substr(0, types[i].small_begin), {}, types[i].marks()};
    if (words.marks.empty()) continue;
    marked::keep_marks_within(words);
    line.markup.destination_begin = marked::told_destination(words);
    bool const told = line.markup.destination_begin != kNotTold;
    if (told && types[i].small_begin < line.text.size()) {
      line.markup.destination_end = types[i].small_begin;
    }
  }
}

// Whether byte `at` is within one of the spans, of which those before `next` end before it.
bool is_within(TypedSpans const& spans, std::size_t& next, std::size_t at) {
  while (next < spans.size() && spans[next].end <= at) ++next;
  return next < spans.size() && spans[next].begin <= at;
}

// "1" beside cells of the same few lines, each of which begins as leads and destinations do.
bool holds_couplet(std::vector<std::vector<Line const*>> const& said, std::size_t most) {
  std::size_t full = 0;
  for (auto const& lines : said) {
    if (lines.size() > 1 && lines.size() != most) return false;
    if (lines.size() == most) ++full;
    for (auto const* const line : lines) {
      if (!marked::begins_lead_or_end(printed::trim(line->text))) return false;
    }
  }
  return full >= 2 && said.back().size() == most && said.front().size() == 1 &&
         is_label(said.front().front()->text);
}

}  // namespace

void extend(TypedSpans& spans, std::size_t begin, std::size_t size) {
  bool const goes_on = !spans.empty() && spans.back().end == begin;
  if (!goes_on) spans.push_back({begin, begin});
  spans.back().end += size;
}

std::vector<Line> lines_of(TypedText const& typed, std::string_view number,
                           ParagraphLook const& look) {
  Ruler ruler{look.properties};
  bool const leaders = ruler.has_leaders();
  std::vector<Line> lines(1);
  auto const first_line = look.properties.left.value_or(0) + look.properties.first_line.value_or(0);
  lines.back().indent = first_line;
  lines.back().text = number;
  for (char const c : number) {
    if (is_start(c)) ruler.advance();
  }
  if (!number.empty()) {
    auto const& first = typed.stretches.front();
    lines.back().stretches.push_back({0, first.number, 1});
    if (leaders && number.back() == ' ') ruler.tab();  // what follows a number is a tab
  }
  std::size_t stretch = 0;
  std::size_t italic = 0;
  std::size_t emphasis = 0;
  std::vector<LineType> types(1);  // by line
  std::uint32_t column = 1;
  bool after_leader = false;
  bool resume = true;  // the next character begins a stretch of the line
  for (std::size_t i = 0; i < typed.text.size(); ++i) {
    while (stretch < typed.stretches.size() && typed.stretches[stretch].begin == i) {
      column = typed.stretches[stretch++].column;
      resume = true;
    }
    char const c = typed.text[i];
    auto& line = lines.back();
    if (i == typed.small_begin) types.back().small_begin = line.text.size();
    if (c == '\n') {
      trim_end(line.text);
      lines.emplace_back();
      types.emplace_back();
      lines.back().indent = look.properties.left.value_or(0);
      ruler.start_line();
      resume = true;
      ++column;
      continue;
    }
    if (resume) {
      line.stretches.push_back({line.text.size(), typed.stretches[stretch - 1].number, column});
      resume = false;
    }
    if (c == '\t' && leaders && ruler.tab()) {
      if (!after_leader) {  // several tabs before a destination draw one
        trim_end(line.text);
        line.text += kLeader;
      }
      after_leader = true;
      resume = true;
    } else {
      auto const begin = line.text.size();
      if (is_within(typed.italics, italic, i)) extend(types.back().italics, begin, 1);
      if (is_within(typed.emphases, emphasis, i)) extend(types.back().emphases, begin, 1);
      line.text += c;
      after_leader = after_leader && (c == ' ' || c == '\t');
      if (c != '\t' && is_start(c)) ruler.advance();
    }
    if (is_start(c)) ++column;
  }
  trim_end(lines.back().text);
  auto const& first = typed.stretches.front();
  constexpr std::uint32_t kBodyText = 9;  // 17.3.1.20
  for (auto& line : lines) {
    line.heading = look.properties.outline.value_or(kBodyText) < kBodyText;
    line.centred = look.properties.centred.value_or(false);
    line.kept = look.properties.kept.value_or(false);
    line.emphatic = typed.emphatic;
    if (line.stretches.empty()) line.stretches.push_back({0, first.number, first.column});
    // What was trimmed may have been a stretch of its own.
    for (auto& one : line.stretches) one.text_begin = std::min(one.text_begin, line.text.size());
  }
  tell_destinations(lines, types);
  return lines;
}

std::vector<Line> lines_of(std::vector<Cell> const& row) {
  std::vector<std::vector<Line const*>> said(row.size());  // what each cell says, without blanks
  std::vector<Line> nested;
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (row[i].from_above && i + 1 < row.size() && is_letter_alone(row[i + 1])) continue;
    for (auto const& line : row[i].lines) {
      if (line.in_row) nested.push_back(line);
      if (!line.in_row && says_anything(line)) said[i].push_back(&line);
    }
  }
  if (row.size() == 1) return row[0].lines;
  std::size_t filled = 0;
  std::size_t most = 0;
  std::size_t fewest = 0;  // of the cells that say anything
  std::size_t last_filled = 0;
  for (std::size_t i = 0; i < said.size(); ++i) {
    if (said[i].empty()) continue;
    fewest = filled == 0 ? said[i].size() : std::min(fewest, said[i].size());
    most = std::max(most, said[i].size());
    last_filled = i;
    ++filled;
  }
  if (nested.empty() && filled == 1 && most > 1) return row[last_filled].lines;
  std::vector<Line> lines;
  auto const add = [&](std::size_t first, std::size_t last) {
    Line line;
    line.in_row = true;
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) line.text += '\t';
      for (std::size_t k = first; k < std::min(last, said[i].size()); ++k) {
        if (k > first) line.text += ' ';
        append(line, *said[i][k]);
      }
    }
    lines.push_back(std::move(line));
  };
  if (nested.empty() && most > 1 && most <= kLinesOfCouplet &&
      (most == fewest || holds_couplet(said, most))) {
    for (std::size_t k = 0; k < most; ++k) add(k, k + 1);
  } else if (nested.empty() && fewest > kLinesOfCouplet) {
    for (auto const& cell : row) lines.insert(lines.end(), cell.lines.begin(), cell.lines.end());
  } else {
    add(0, most);
  }
  std::move(nested.begin(), nested.end(), std::back_inserter(lines));
  return lines;
}

bool set_list_aside(std::vector<Line>& lines, std::size_t first) {
  constexpr std::size_t kFewest = 3;
  std::vector<Line*> rows;
  std::set<std::uint32_t> numbers;
  std::set<std::uint32_t> led_to;
  for (std::size_t i = first; i < lines.size(); ++i) {
    auto const cells = cells_of(lines[i].text);
    if (cells.size() < 3) continue;
    auto const number = printed::read_reference(printed::trim(cells[0]));
    bool const plain = number && number->family == printed::LabelFamily::digits &&
                       number->letter.empty() && number->marks == 0;
    // Second leads have no number, a letter or a mark; what stands over the columns has words.
    auto const head = numbers.empty() && !is_label(cells[0]) && !printed::trim(cells[0]).empty();
    if (!plain && head) {
      rows.push_back(&lines[i]);
      continue;
    }
    if (!plain || !lines[i].in_row || !numbers.insert(number->number).second) return false;
    rows.push_back(&lines[i]);
    for (auto const cell : cells) {
      if (cell.data() == cells[0].data()) continue;
      auto const to = printed::read_reference(printed::strip_pointer(printed::trim(cell)));
      if (to) led_to.insert(to->number);
    }
  }
  bool const leads = std::any_of(led_to.begin(), led_to.end(),
                                 [&numbers](auto to) { return numbers.contains(to); });
  if (numbers.size() < kFewest || leads) return false;
  for (auto* const row : rows) row->markup.role = LineRole::aside;
  return true;
}

void mark_up_leads(std::vector<Line>& lines, std::size_t first) {
  std::size_t rows = 0;
  std::size_t leads = 0;
  std::size_t labels = 0;
  std::size_t destinations = 0;
  for (std::size_t i = first; i < lines.size(); ++i) {
    if (!says_anything(lines[i])) continue;
    auto const shape = shape_of(lines[i]);
    ++rows;
    leads += shape.lead ? 1U : 0U;
    labels += shape.label ? 1U : 0U;
    destinations += shape.destination ? 1U : 0U;
  }
  // Headings of columns and cross-headings stand in some rows; labels may be printed once a
  // couplet.
  if (leads < 2 || leads * 10 < rows * 7 || labels * 3 < leads || destinations * 2 < leads) return;
  for (std::size_t i = first; i < lines.size(); ++i) {
    auto const shape = shape_of(lines[i]);
    if (!shape.lead || !(shape.label || shape.destination)) continue;
    auto const words = lines[i].text.find('\t') + 1;
    lines[i].markup = {.role = LineRole::lead,
                       .words_begin = words,
                       .destination_begin = lines[i].text.find('\t', words) + 1};
  }
}

}  // namespace keydrift::docx
