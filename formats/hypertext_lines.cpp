#include "keydrift/formats/hypertext_lines.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <tuple>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/hypertext_beside.hpp"
#include "keydrift/formats/hypertext_frames.hpp"
#include "keydrift/formats/hypertext_letters.hpp"
#include "keydrift/formats/hypertext_line_ends.hpp"
#include "keydrift/formats/hypertext_lists.hpp"
#include "keydrift/formats/hypertext_margins.hpp"
#include "keydrift/formats/hypertext_places.hpp"
#include "keydrift/formats/hypertext_questions.hpp"
#include "keydrift/formats/hypertext_rows.hpp"
#include "keydrift/formats/hypertext_sheet.hpp"
#include "keydrift/formats/hypertext_survey.hpp"
#include "keydrift/formats/marked_ends.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/shifted_digits.hpp"
#include "keydrift/formats/xml_text.hpp"

namespace keydrift::hypertext {
namespace {

using printed::code_point_at;
using printed::is_digit;
using namespace std::string_view_literals;

constexpr std::size_t kIndent = 4;          // blanks a level of lists
constexpr std::size_t kDeepestLevels = 12;  // levels

bool sets_in(std::string_view name) {
  return name == "ul" || name == "ol" || name == "blockquote" || name == "dd" || name == "list";
}

class LineMaker {
 public:
  explicit LineMaker(std::string_view text)
      : text_{text},
        labels_{couplets_in_lists(text)},
        beside_{beside_text(text)},
        placement_{placement_of(text, sheet_)},
        margins_{margins_of(text, sheet_)},
        frames_{frame_cells(text)},
        survey_{survey_of(text)} {
    label_answers(text, labels_);
    survey_.feeds_part_lines = survey_.feeds_part_lines && !placement_.by_coordinates;
  }

  Lines make() && {
    while (at_ < text_.size()) take_next();
    end_line();
    return std::move(made_);
  }

 private:
  void take_next() {
    char const c = text_[at_];
    if (c == '<') {
      auto const tag = tag_at(text_.substr(at_));
      if (tag.length > 0 && (text_[at_ + 1] == '!' || text_[at_ + 1] == '?' || is_known(tag.name) ||
                             survey_.closed.contains(tag.name))) {
        take_tag(tag);
        return;
      }
    }
    if (c == '&') {
      if (auto const found = reference_at(text_.substr(at_)); found.length > 0) {
        ++made_.characters;
        put(found.character, at_);
        broken_ = true;
        at_ += found.length;
        return;
      }
    }
    if (is_white(c)) {
      if (!keeps_blanks() || stands_between_cells()) {
        blank_ = true;
      } else if (c == '\n') {
        line_feed();
      } else {
        put(text_.substr(at_, 1), at_);
      }
      ++at_;
      return;
    }
    if (is_digit(static_cast<unsigned char>(c)) && raised_ + lowered_ > 0) {
      put((raised_ > 0 ? kRaisedDigits : kLoweredDigits)[static_cast<std::size_t>(c - '0')], at_);
      broken_ = true;
      ++at_;
      return;
    }
    if (raised_ > 0 && may_be_raised(c) && is_letter_of_footnote()) {
      put(raised_letter(c), at_);
      broken_ = true;
      ++at_;
      return;
    }
    auto const length = code_point_at(text_, at_).length;
    put(text_.substr(at_, length), at_);
    at_ += length;
  }

  // "<i>A. bus</i><sup>a</sup>"
  [[nodiscard]] bool is_letter_of_footnote() const {
    auto const before = text_.substr(0, at_);
    return !blank_ && before.ends_with('>') && text_.substr(at_ + 1, 1) == "<" &&
           may_bear_footnote(line_.text);
  }

  // Columns and indentation say something where line feeds part lines.
  [[nodiscard]] bool keeps_blanks() const {
    return !in_cell_ && (survey_.feeds_part_lines || preformatted_ > 0);
  }

  // <tr>, <td>1</td> and <td>Wings clear</td> on lines of their own are one row, and no blank line
  // parts it from the next.
  [[nodiscard]] bool stands_between_cells() {
    if (in_cell_ || (started_ && row_cells_ == 0)) return false;
    if (at_ < blanks_end_) return next_is_cell_;
    blanks_end_ = at_;
    while (blanks_end_ < text_.size() && is_white(text_[blanks_end_])) ++blanks_end_;
    auto const next = blanks_end_ < text_.size() && text_[blanks_end_] == '<'
                          ? tag_at(text_.substr(blanks_end_))
                          : Tag{};
    next_is_cell_ = next.length > 0 && (is_cell(next.name) || next.name == "tr");
    return next_is_cell_;
  }

  void take_tag(Tag const& tag) {
    ++made_.tags;
    auto const listed = labels_.find(at_);
    bool const frame = frames_.contains(at_);
    if (take_place()) {
      at_ += tag.length;
      broken_ = true;
      return;
    }
    at_ += tag.length;
    broken_ = true;
    auto const& name = tag.name;
    if (!tag.closes && !tag.empty && (name == "script" || name == "style"))
      return skip_to_end(name);
    if (name == "sup") count(raised_, tag);
    if (name == "sub") count(lowered_, tag);
    if (name == "pre") count(preformatted_, tag);
    if (sets_in(name)) count(depth_, tag);
    if (name == "span") {
      if (take_aside(tag)) return;
      take_span(tag);
    } else if (auto const kind = inline_kind(name)) {
      take_mark(tag.closes, tag.empty, *kind);
    }
    if (frame) {
      in_cell_ = false;
      row_cells_ = 0;
      end_line();
      return;
    }
    if (is_cell(name)) return take_cell(tag);
    if (!breaks_line(name)) return;
    if (placement_.by_coordinates && (name == "p" || name == "div")) return;
    if (take_inner_table(tag)) return;
    // Paragraphs within a cell go on with its words.
    bool const row = name == "tr" || name == "table" || name == "tbody" || name == "thead";
    if (in_cell_ && !row) {
      if (started_) breaks_in_cells_.push_back(line_.text.size());
      blank_ = true;
      return;
    }
    in_cell_ = false;
    lone_cell_ = row && row_cells_ == 1;
    heads_columns_ = row && row_cells_ > 1 && head_cells_ == row_cells_;
    head_cells_ = row_cells_ = 0;
    bool const in_key = listed != labels_.end();
    if (in_key && listed->second.joins) {
      blank_ = started_ && !listed->second.touches;
      if (listed->second.ends) end_joined_ = line_.text.size();
    }
    if (in_key ? listed->second.joins : held_) {
      held_ = held_ && !in_key;
      return;
    }
    end_line();
    titles_couplet_ = in_key && listed->second.beside;
    numbers_couplet_ = in_key && listed->second.numbers;
    drops_sign_ = in_key && listed->second.signless;
    if (in_key) label_ = &listed->second.label;
    held_ = in_key && label_->empty() && !titles_couplet_ && !numbers_couplet_;
    if (is_heading(name)) heading_ = !tag.closes;
    caption_ = name == "caption" && !tag.closes;
    if (name == "table" && tag.closes) key_titled_ = false;
    if (name == "table" || name == "hr" || (name == "p" && survey_.paragraphs_stand_apart))
      leave_gap();
  }

  // <tr><td>1</td><td><table><tr>…: the leads of a couplet as the rows of a table beside its
  // number.
  bool take_inner_table(Tag const& tag) {
    if (tag.name == "table") {
      bool const beside_number = !tag.closes && in_cell_ && row_cells_ > 1 && is_number_alone();
      beside_number_ = inner_table_ = beside_number;
      if (beside_number) in_cell_ = false;
      return beside_number;
    }
    if (!inner_table_ || tag.name != "tr") return false;
    // The first row goes on with the line of the number.
    if (tag.closes || std::exchange(beside_number_, false)) {
      row_cells_ = 0;
      in_cell_ = false;
      return !tag.closes || !started_;
    }
    end_line();
    row_cells_ = 1;  // that of the number
    return true;
  }

  // The element stands where a style sheet sets it.
  bool take_place() {
    if (auto const set_in = margins_.find(at_); set_in != margins_.end()) indent_ = set_in->second;
    auto const placed = placement_.elements.find(at_);
    if (placed == placement_.elements.end()) return false;
    if (placed->second.line) {
      end_line();
      if (placed->second.gap) leave_gap();
      indent_ = placed->second.indent;
    } else if (started_) {
      line_.text += '\t';
    }
    blank_ = false;
    return true;
  }

  // Names and numbers at the ends of leads are often set in italics, or linked.
  static std::optional<xml::InlineKind> inline_kind(std::string_view name) {
    if (name == "i" || name == "em" || name == "cite") return xml::InlineKind::italic;
    if (name == "b" || name == "strong" || name == "u") return xml::InlineKind::emphasis;
    if (name == "a") return xml::InlineKind::pointer;
    return std::nullopt;
  }
  // "Species of Aus <span class="editsection">[edit]</span>", "<span class="pagenum">[218]</span>"
  bool take_aside(Tag const& tag) {
    auto const begin = at_ - tag.length;
    auto const said = attribute_of(text_.substr(begin, tag.length), "class");
    if (!asides_close_ || tag.closes || tag.empty || !is_set_aside(said)) return false;
    auto const end = end_of_element(text_, begin, tag.name);
    asides_close_ = end != std::string_view::npos;
    if (!asides_close_) return false;
    at_ = end;
    return true;
  }
  // <span style="font-style: italic">
  void take_span(Tag const& tag) {
    if (tag.empty) return;
    if (tag.closes) {
      if (italic_spans_.empty()) return;
      if (italic_spans_.back()) take_mark(tag.closes, tag.empty, xml::InlineKind::italic);
      italic_spans_.pop_back();
      return;
    }
    auto const style = attribute_of(text_.substr(at_ - tag.length, tag.length), "style");
    italic_spans_.push_back(style.find("italic") != std::string_view::npos);
    if (italic_spans_.back()) take_mark(tag.closes, tag.empty, xml::InlineKind::italic);
  }
  void take_mark(bool closes, bool empty, xml::InlineKind kind) {
    if (empty) return;
    if (!closes) {
      // The blank that is still to come stands before what is marked.
      open_marks_.push_back({kind, line_.text.size() + (blank_ && started_ ? 1 : 0), 0});
      return;
    }
    while (!open_marks_.empty()) {
      auto mark = open_marks_.back();
      open_marks_.pop_back();
      if (mark.kind != kind) continue;
      mark.end = line_.text.size();
      if (mark.begin < mark.end) marks_.push_back(mark);
      return;
    }
  }

  void take_cell(Tag const& tag) {
    if (tag.closes) {
      in_cell_ = false;
      blank_ = false;
      return;
    }
    head_cells_ = tag.name == "th" ? head_cells_ + 1 : 0;
    if (row_cells_++ > 0) {
      start_line(at_);
      line_.text += '\t';
      broken_ = true;
    }
    in_cell_ = true;
    blank_ = false;
  }

  static void count(std::size_t& depth, Tag const& tag) {
    if (tag.empty) return;
    if (!tag.closes) {
      ++depth;
    } else if (depth > 0) {
      --depth;
    }
  }

  void skip_to_end(std::string const& name) {
    at_ = closing_tag(text_, at_, name);
    if (at_ < text_.size()) at_ += tag_at(text_.substr(at_)).length;
  }

  // --- lines -----------------------------------------------------------------------------------

  void line_feed() {
    bool const empty = !started_;
    end_line();
    row_cells_ = 0;
    if (empty) leave_gap();
  }

  void leave_gap() {
    auto const [number, column] = place_of(at_);
    leave_gap(number, column);
  }
  void leave_gap(std::uint32_t number, std::uint32_t column) {
    if (made_.lines.empty() || made_.lines.back().text.empty()) return;
    ManuscriptLine gap;
    gap.number = number;
    gap.column = column;
    made_.lines.push_back(std::move(gap));
  }

  void start_line(std::size_t at) {
    if (started_) return;
    started_ = true;
    std::tie(line_.number, line_.column) = place_of(at);
    if (label_ != nullptr) {
      line_.text = *label_;
    } else if (depth_ > 0) {
      line_.text.assign(std::min(depth_, kDeepestLevels) * kIndent, ' ');
    } else {
      line_.text.assign(indent_, ' ');
    }
    indent_ = 0;
    label_ = nullptr;
    broken_ = true;
    while (next_beside_ < beside_.size() && beside_[next_beside_].end <= at) {
      ++next_beside_;
    }
    in_beside_ = next_beside_ < beside_.size() && beside_[next_beside_].begin <= at;
  }

  void put(std::string_view characters, std::size_t at) {
    bool const first = !started_;
    if (first && std::exchange(drops_sign_, false)) return;
    start_line(at);
    if (blank_ && !first && !line_.text.empty() && line_.text.back() != '\t' &&
        line_.text.back() != ' ') {
      line_.text += ' ';
      broken_ = true;
    }
    blank_ = false;
    if (broken_) {
      auto const [number, column] = place_of(at);
      line_.stretches.push_back({line_.text.size(), number, column});
      broken_ = false;
    }
    line_.text += characters;
  }

  void end_line() {
    blank_ = false;
    label_ = nullptr;
    if (!started_) return;
    started_ = false;
    broken_ = true;
    while (!line_.text.empty() && is_white(line_.text.back())) line_.text.pop_back();
    drop_link_sign(line_.text, marks_);
    std::erase_if(line_.stretches, [this](ManuscriptStretch const& one) {
      return one.text_begin >= std::max<std::size_t>(line_.text.size(), 1);
    });
    bool const numbers = std::exchange(numbers_couplet_, false);
    if (auto aside = numbers ? back_reference(line_) : ManuscriptLine{}; !aside.text.empty()) {
      leave_gap(line_.number, line_.column);
      made_.lines.push_back(std::move(aside));
      marks_.clear();
    }
    if (auto aside = way_back_in_cell(line_); !aside.text.empty()) {
      made_.lines.push_back(std::move(aside));
      breaks_in_cells_.clear();
    }
    // Over the leads of its couplet; elsewhere a number alone is where a lead leads.
    if (numbers || ((heading_ || lone_cell_) && is_number_alone())) {
      leave_gap(line_.number, line_.column);
    } else if (heading_) {
      // The caption of a table beneath the key's own title says the same, or less.
      bool const less = caption_ && key_titled_;
      line_.markup.role = less ? LineRole::aside : LineRole::heading;
      key_titled_ = key_titled_ || (!caption_ && printed::mentions_key(line_.text));
    }
    bool const numbered = !made_.lines.empty() && is_number_alone(made_.lines.back());
    tell_common_name_below(breaks_in_cells_);
    auto const breaks = std::exchange(breaks_in_cells_, {});
    if (!in_beside_ && rows_.part(line_, breaks, numbered, made_.lines)) {
      marks_.clear();
      open_marks_.clear();
      line_ = {};
      return;
    }
    tell_destination();
    // "Step", "Character", "Result" over their columns, and not a lead set in bold.
    if (heads_columns_ && !printed::read_label(line_.text)) line_.markup.role = LineRole::aside;
    if (in_beside_ || std::exchange(titles_couplet_, false)) line_.markup.role = LineRole::aside;
    if (!line_.text.empty()) made_.lines.push_back(std::move(line_));
    line_ = {};
  }

  // "<h3>3.</h3>" over the leads of couplet 3
  [[nodiscard]] bool is_number_alone() const { return is_number_alone(line_); }
  [[nodiscard]] static bool is_number_alone(ManuscriptLine const& line) {
    auto const label = printed::label_alone(line.text);
    return label && label->family == printed::LabelFamily::digits;
  }

  // "<td><i>Aus bus</i><br>red marshwort</td>" at the end of a row: the name ends above the common
  // one.
  void tell_common_name_below(std::vector<std::size_t> const& breaks) {
    constexpr std::size_t kLongest = 40;  // bytes of a common name
    auto const cell = line_.text.rfind('\t');
    if (cell == std::string::npos || breaks.empty() || marks_.empty()) return;
    auto const begin = cell + 1;
    auto const below = std::upper_bound(breaks.begin(), breaks.end(), begin);
    if (below == breaks.end()) return;
    // "Aus bus*": the sign of a footnote stands behind the name.
    auto const name = marks_.back();
    bool const above = name.kind == xml::InlineKind::italic && name.begin == begin &&
                       name.end <= *below && *below <= name.end + 1;
    auto const common = std::string_view{line_.text}.substr(*below);
    auto const words = printed::skip_blanks(common, 0);
    bool const small = printed::is_lower(code_point_at(common, words).value);
    // "var. cus", "sp. 2", "de Roe, 1900" belong to the name.
    auto const first = common.substr(words, common.find(' ', words) - words);
    bool const of_name = common.find_first_of(".0123456789") != std::string_view::npos ||
                         printed::is_rank(first) || printed::is_particle(first) ||
                         printed::is_limit_word(first);
    if (!above || !small || of_name || common.size() > kLongest) return;
    line_.markup.destination_begin = begin;
    line_.markup.destination_end = name.end;
  }

  // Cells tell more.
  void tell_destination() {
    auto const end_joined = std::exchange(end_joined_, kNotTold);
    open_marks_.clear();
    xml::FlowText words{line_.text, {}, std::exchange(marks_, {})};
    if (heading_ || words.marks.empty() || words.text.find('\t') != std::string::npos) return;
    marked::keep_marks_within(words);
    line_.markup.destination_begin = end_joined == kNotTold ? marked::told_destination(words)
                                                            : end_on_own_line(words, end_joined);
    // Where line feeds part lines, words of a lead may stand in front of a line.
    if (line_.markup.destination_begin == kNotTold && !keeps_blanks()) {
      line_.markup.destination_begin = marked::name_with_remark(words);
    }
  }

  // Asked in ascending order.
  [[nodiscard]] std::pair<std::uint32_t, std::uint32_t> place_of(std::size_t at) {
    for (; counted_ < at;
         counted_ += std::max<std::size_t>(1, code_point_at(text_, counted_).length)) {
      if (text_[counted_] == '\n') {
        ++number_;
        column_ = 1;
      } else {
        ++column_;
      }
    }
    return {number_, column_};
  }

  std::string_view text_;
  std::unordered_map<std::size_t, ListLine> labels_;
  std::vector<Stretch> beside_;
  Sheet sheet_{sheet_of(text_)};
  Placement placement_;
  std::unordered_map<std::size_t, std::uint32_t> margins_;  // of paragraphs
  std::unordered_set<std::size_t> frames_;
  Survey survey_;
  std::size_t indent_{};  // columns that the line to come is set in by
  std::size_t next_beside_{};
  bool in_beside_{false};  // the line is of one of these
  std::size_t at_{};
  Lines made_;
  ManuscriptLine line_;
  bool started_{false};  // the line holds something
  bool blank_{false};    // white space stands before the next character
  bool broken_{true};    // the next character does not stand behind the one before
  std::vector<xml::InlineMark> open_marks_;  // `end` is not known yet
  std::vector<xml::InlineMark> marks_;       // of the line, in order of their ends
  bool asides_close_{true};                  // else their ends are not looked for again
  std::vector<bool> italic_spans_;           // that are open: is what they hold set in italics?
  bool heading_{false};
  bool caption_{false};                // of a table
  bool key_titled_{false};             // a heading has named a key since the last table
  std::string const* label_{nullptr};  // that a list shows before the line to come
  bool titles_couplet_{false};         // the line to come
  bool numbers_couplet_{false};        // the line to come, with the couplet below
  bool drops_sign_{false};             // that the line to come begins with
  std::size_t end_joined_{kNotTold};   // where what stood on a line of its own goes on with words
  bool held_{false};                   // the line is a number, and its words are still to come
  bool in_cell_{false};
  std::vector<std::size_t> breaks_in_cells_;  // bytes of the line
  RowParter rows_;
  std::size_t row_cells_{};   // begun in this row
  std::size_t blanks_end_{};  // between cells and rows, and whether one is next
  bool next_is_cell_{false};
  std::size_t head_cells_{};   // "<th>", the last ones begun in this row
  bool heads_columns_{false};  // the row that ends had no other cells
  bool lone_cell_{false};      // the row that ends had but one
  bool inner_table_{false};    // within a table beside a couplet's number
  bool beside_number_{false};  // before its first row
  std::size_t raised_{};
  std::size_t lowered_{};
  std::size_t preformatted_{};
  std::size_t depth_{};    // of lists and indented blocks
  std::size_t counted_{};  // bytes up to number_, column_
  std::uint32_t number_{1};
  std::uint32_t column_{1};
};

}  // namespace

Lines lines_of(std::string_view text) {
  auto lines = LineMaker{text}.make();
  set_badges_aside(lines.lines);
  join_letters(lines.lines);
  return lines;
}

}  // namespace keydrift::hypertext
