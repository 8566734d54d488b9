#include "keydrift/formats/printed_braces.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "keydrift/formats/printed_brace_fronts.hpp"
#include "keydrift/formats/printed_brace_margin.hpp"
#include "keydrift/formats/printed_brace_parting.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_running_heads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kBraceWordsSlack = 1;  // columns that words may be set off by
constexpr std::uint32_t kHangingColumns = 2;   // columns that make a hanging line

class BracePlanner {
 public:
  BracePlanner(std::vector<SourceLine> const& lines, BraceMargin margin)
      : lines_{lines},
        fronts_{std::move(margin.fronts)},
        numbers_{std::move(margin.numbers)},
        signs_{margin.signs} {}

  std::optional<BracedKey> plan() && {
    for (auto const line : numbers_) numbering_.numbers.push_back(fronts_[line].number);
    std::sort(numbering_.numbers.begin(), numbering_.numbers.end());
    numbering_.numbers.erase(std::unique(numbering_.numbers.begin(), numbering_.numbers.end()),
                             numbering_.numbers.end());
    gather_rows();
    chain_rows();
    look_at_ends();
    look_at_columns();
    part_rows();
    return build();
  }

 private:
  struct Row {
    std::size_t line{};
    bool gap{false};         // blank lines stand before it
    bool ends{false};        // in a destination
    std::size_t before{};    // the row with words before it; itself where there is none
    std::uint32_t column{};  // where its words begin
  };

  [[nodiscard]] std::string_view words_of_line(std::size_t line) const {
    return lines_[line].text.substr(fronts_[line].words_at);
  }
  [[nodiscard]] bool is_blank_line(std::size_t line) const { return lines_[line].text.empty(); }
  [[nodiscard]] bool is_signed(std::size_t line) const { return fronts_[line].sign != 0; }

  // --- the lines of the braces ----------------------------------------------------------------

  [[nodiscard]] bool ends_in_destination(std::string_view text, bool led_only) const {
    auto const split = split_at_leader(text, numbering_);
    if (split.kind != LeaderKind::none) return split.destination_begin < text.size();
    auto const name = trailing_name(text);
    auto const number = trailing_reference(text, &numbering_);
    bool const couplet = number && numbering_.has_number(number->reference.number);
    if (couplet && (number->after_sentence || text.substr(0, number->words_end).ends_with('.'))) {
      return true;
    }
    // "A. bus Roe" on a line of its own
    if (certain_destination(text, numbering_)) return true;
    if (led_only) return name && is_certain_name(text.substr(*name));
    return name || couplet;
  }

  [[nodiscard]] static std::uint32_t column_of(SourceLine const& line, BraceFront const& front) {
    return line.indent + count_code_points(line.text.substr(0, front.words_at));
  }

  // The first line of the first brace of a key, whose number stands on `line`.
  [[nodiscard]] std::size_t begin_before(std::size_t line, std::size_t after,
                                         std::vector<bool> const& heads) const {
    auto begin = line;
    auto const column = column_of(lines_[line], fronts_[line]);
    for (auto at = line; at > after && line - at < kLongestBrace;) {
      bool const opened = opens_brace(fronts_[begin].sign) && begin != line;
      if (opened && !is_signed(at - 1)) break;
      --at;
      if (is_blank_line(at) || heads[at]) {
        // Within a brace: the scan has a gap there, or a page turned.
        auto above = at;
        while (above > after && (is_blank_line(above) || heads[above])) --above;
        bool const goes_on = signs_ && is_signed(above) && !heads[above] &&
                             line - above < kLongestBrace && !opens_brace(fronts_[begin].sign);
        if (!goes_on) break;
        at = above + 1;
        continue;
      }
      auto const text = words_of_line(at);
      if (mentions_key(text) || starts_note(text) || starts_caption(text)) break;
      bool const beneath = column_of(lines_[at], fronts_[at]) + kBraceWordsSlack >= column;
      if (signs_ && !is_signed(at) && !beneath && !ends_in_destination(text, false)) break;
      begin = at;
    }
    return begin;
  }

  // Behind the last line of the last brace of a key.
  [[nodiscard]] std::size_t end_behind(std::size_t line, std::size_t before) const {
    auto end = line + 1;
    for (auto at = line + 1; at < before && at - line < kLongestBrace; ++at) {
      if (is_blank_line(at)) {
        bool const goes_on = signs_ && at + 1 < before && is_signed(at + 1);
        if (!goes_on) break;
        continue;
      }
      bool const goes_on =
          at + 1 < before && is_signed(at + 1) && !opens_brace(fronts_[at + 1].sign);
      if (signs_ && !is_signed(at) && !goes_on &&
          ends_in_destination(words_of_line(end - 1), false) &&
          !ends_in_destination(lines_[at].text, true)) {
        break;
      }
      end = at + 1;
    }
    return end;
  }

  // Paragraphs without sign, number and destination stand between braces, not in them.
  [[nodiscard]] bool is_beside(std::size_t begin, std::size_t end) const {
    for (auto line = begin; line < end; ++line) {
      if (fronts_[line].sign != 0) return false;
      if (std::binary_search(numbers_.begin(), numbers_.end(), line)) return false;
      if (ends_in_destination(lines_[line].text, true)) return false;
    }
    return true;
  }

  void gather_rows() {
    auto const heads = find_running_heads(lines_, numbering_);
    std::size_t from = 0;
    for (std::size_t k = 0; k < numbers_.size();) {
      auto last = k;
      while (last + 1 < numbers_.size() &&
             fronts_[numbers_[last + 1]].number > fronts_[numbers_[last]].number) {
        ++last;
      }
      auto const next = last + 1 < numbers_.size() ? numbers_[last + 1] : lines_.size();
      auto const begin = begin_before(numbers_[k], from, heads);
      auto const end = end_behind(numbers_[last], next);
      key_begins_.push_back(rows_.size());
      gather(begin, end, heads);
      from = end;
      k = last + 1;
    }
  }

  void gather(std::size_t begin, std::size_t end, std::vector<bool> const& heads) {
    bool gap = false;
    for (auto line = begin; line < end;) {
      if (is_blank_line(line)) {
        gap = true;
        ++line;
        continue;
      }
      auto paragraph = line;
      while (paragraph < end && !is_blank_line(paragraph)) ++paragraph;
      bool const beside = is_beside(line, paragraph);
      for (; line < paragraph; ++line) {
        auto const& text = lines_[line].text;
        bool const number = std::binary_search(numbers_.begin(), numbers_.end(), line);
        bool const furniture = heads[line] || is_page_number(text) || starts_caption(text) ||
                               starts_note(text) || is_number_only(text) || is_ruled(text);
        if (!number && (beside || furniture)) continue;
        Row row;
        row.line = line;
        row.gap = gap;
        row.column = column_of(lines_[line], fronts_[line]);
        rows_.push_back(row);
        gap = false;
      }
    }
  }

  void look_at_ends() {
    std::size_t led = 0;
    for (auto& row : rows_) {
      auto const text = words_of_line(row.line);
      bool const told = lines_[row.line].markup.destination_begin != kNotTold;
      row.ends = told || ends_in_destination(text, true);
      auto const split = split_at_leader(text, numbering_);
      if (split.kind != LeaderKind::none && split.destination_begin < text.size()) ++led;
    }
    // Where leaders are the rule, "mit 4" / "Borsten" ends no lead.
    bool const usually_led = led >= numbers_.size();
    bool waits = false;  // leaders to nothing stand on the line before
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      auto& row = rows_[r];
      auto const text = words_of_line(row.line);
      if (text.empty()) continue;
      if (is_rest_of_name(r) || ends_broken_name(r)) row.ends = true;
      if (waits || (!usually_led && !row.ends)) {
        row.ends = waits || ends_in_destination(text, false);
      }
      waits = !row.ends && split_at_leader(text, numbering_).kind == LeaderKind::dots;
    }
  }

  // --- where leads begin ----------------------------------------------------------------------

  [[nodiscard]] bool has_words(Row const& row) const { return !words_of_line(row.line).empty(); }

  // The row with words before row r; r where there is none.
  [[nodiscard]] std::size_t before(std::size_t r) const { return rows_[r].before; }

  void chain_rows() {
    std::optional<std::size_t> above;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      rows_[r].before = above.value_or(r);
      if (has_words(rows_[r])) above = r;
    }
  }

  void look_at_columns() {
    std::size_t lower = 0;
    std::size_t upper = 0;
    for (std::size_t r = 1; r < rows_.size(); ++r) {
      if (!has_words(rows_[r]) || !rows_[before(r)].ends) continue;
      ++(starts_with_upper(words_of_line(rows_[r].line)) ? upper : lower);
    }
    small_ = lower > upper;
    std::map<std::uint32_t, std::size_t> starts;
    std::map<std::uint32_t, std::size_t> rests;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      if (!has_words(rows_[r])) continue;
      auto const above = before(r);
      bool const ended = above == r || rows_[above].ends || rows_[r].gap;
      if (ended && begins_like_a_lead(r)) ++starts[rows_[r].column];
      if (!ended && !begins_like_a_lead(r)) ++rests[rows_[r].column];
    }
    if (starts.empty() || rests.empty()) return;
    auto const most = [](auto const& one, auto const& other) { return one.second < other.second; };
    column_ = std::max_element(starts.begin(), starts.end(), most)->first;
    auto const near = [&](auto const& columns, auto const& is_near) {
      std::size_t all = 0;
      std::size_t some = 0;
      for (auto const& [column, count] : columns) {
        all += count;
        if (is_near(column)) some += count;
      }
      return some * 4 >= all * 3;
    };
    hanging_ =
        near(starts, [this](auto column) { return !is_deep(column) && !is_shallow(column); }) &&
        near(rests, [this](auto column) { return is_deep(column); });
  }
  [[nodiscard]] bool is_deep(std::uint32_t column) const {
    return column >= column_ + kHangingColumns;
  }
  [[nodiscard]] bool is_shallow(std::uint32_t column) const {
    return column + kBraceWordsSlack < column_;
  }

  [[nodiscard]] bool begins_like_a_lead(std::size_t r) const {
    auto const text = words_of_line(rows_[r].line);
    // "2. Cubitalzelle gestielt", "1. rücklaufende Ader": an ordinal.
    bool const ordinal = is_species_number(text.substr(0, text.find(' ')));
    // "B. busa Roe." beneath the words that lead to it.
    constexpr std::size_t kMostOfName = 5;  // words
    auto const words = words_of(text, kMostOfName + 1);
    bool const name = words.size() > 1 && words.size() <= kMostOfName && is_abbreviated(words[0]) &&
                      is_epithet(without_closing_marks(words[1])) && is_latin_name(text);
    if (name) return false;
    return small_ || ordinal || starts_with_upper(text) || own_letter(text).has_value();
  }

  // "b. Wings dark": leads may bear letters within their brace.
  [[nodiscard]] static std::optional<Label> own_letter(std::string_view text) {
    constexpr std::uint32_t kMostLetters = 8;
    auto label = read_label(text);
    bool const letter = label && label->family == LabelFamily::lower && label->marks == 0 &&
                        label->number <= kMostLetters && label->text_at < text.size() &&
                        (label->end == LabelEnd::dot || label->end == LabelEnd::parenthesis);
    return letter ? label : std::nullopt;
  }

  // "… 5. A. bus" / "          Roe.": set far in behind a destination.
  [[nodiscard]] bool is_rest_of_name(std::size_t r) const {
    constexpr std::uint32_t kFar = 8;  // columns
    constexpr std::size_t kMostWords = 3;
    auto const above = before(r);
    return above != r && rows_[above].ends && rows_[r].column >= rows_[above].column + kFar &&
           words_of(words_of_line(rows_[r].line), kMostWords + 1).size() <= kMostWords;
  }

  // "… 4. A. tetra-" / "gonus", "… 4. A." / "tetragonus."
  [[nodiscard]] bool ends_broken_name(std::size_t r) const {
    constexpr std::size_t kMostWords = 3;  // of the epithet with its author
    auto const above = before(r);
    if (above == r) return false;
    auto const begun = words_of_line(rows_[above].line);
    auto const rest = words_of_line(rows_[r].line);
    if (begun.ends_with('-')) {
      auto const whole = std::string{begun.substr(0, begun.size() - 1)} + std::string{rest};
      return ends_in_destination(whole, true);
    }
    auto const words = words_of(rest, kMostWords + 1);
    bool const genus = is_abbreviated(begun.substr(last_word_begin(begun)));
    return genus && words.size() <= kMostWords && is_epithet(without_closing_marks(words[0])) &&
           ends_in_destination(std::string{begun} + ' ' + std::string{rest}, true);
  }

  // A lead begins with row r, no brace.
  [[nodiscard]] bool starts_rival(std::size_t r) const {
    if (!has_words(rows_[r]) || !begins_like_a_lead(r) || is_rest_of_name(r)) return false;
    if (hanging_) {
      if (is_deep(rows_[r].column)) return false;
      if (!is_shallow(rows_[r].column)) return true;
    }
    return rows_[before(r)].ends;
  }

  // --- where braces begin ---------------------------------------------------------------------

  // What speaks against a brace's beginning with row r.
  [[nodiscard]] BraceCost cost_of_begin(std::size_t r) const {
    auto const& row = rows_[r];
    BraceCost cost = row.gap ? 0 : 6;
    auto const sign = fronts_[row.line].sign;
    if (opens_brace(sign)) cost -= 3;
    if (closes_brace(sign)) cost += 3;
    if (r > 0 && closes_brace(fronts_[rows_[r - 1].line].sign)) cost -= 3;
    if (!has_words(row) && !row.gap) cost += 2;
    if (has_words(row)) {
      if (!rows_[before(r)].ends) cost += hanging_ && !is_deep(row.column) ? 3 : 10;
      if (!begins_like_a_lead(r)) cost += 10;
      if (hanging_ && is_deep(row.column)) cost += 8;
    }
    return cost;
  }

  void part_rows() {
    BraceRows rows;
    std::size_t rivals = 0;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      if (starts_rival(r)) ++rivals;
      rows.rivals.push_back(rivals);
      rows.words.push_back(has_words(rows_[r]));
      rows.begin_costs.push_back(cost_of_begin(r));
      auto const led = trailing_reference(words_of_line(rows_[r].line), &numbering_);
      rows.leads_to.push_back(rows_[r].ends && led ? led->reference.number : 0);
      if (std::binary_search(numbers_.begin(), numbers_.end(), rows_[r].line)) {
        rows.numbers.push_back(r);
        rows.couplets.push_back(fronts_[rows_[r].line].number);
      }
    }
    rows.key_begins = key_begins_;
    begins_ = part_braces(rows);
  }

  // --- what comes of it -----------------------------------------------------------------------

  // "(Haare kurz" is closed on the next line.
  [[nodiscard]] bool is_bracket_of_words(std::size_t line) const {
    auto const& front = fronts_[line];
    if (front.sign != '(' && front.sign != '[') return false;
    auto const& text = lines_[line].text;
    if (front.words_at == 0 || is_blank(code_point_before(text, front.words_at).value))
      return false;
    if (line + 1 >= lines_.size()) return false;
    auto const found = lines_[line + 1].text.find_first_of("()[]");
    return found != std::string_view::npos &&
           (lines_[line + 1].text[found] == ')' || lines_[line + 1].text[found] == ']');
  }

  std::optional<BracedKey> build() {
    BracedKey key;
    key.lines = lines_;
    auto& plan = key.found.plan;
    plan.braces = true;
    plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    plan.parts.assign(lines_.size(), LinePart::other);
    for (std::size_t k = 0; k < begins_.size(); ++k) {
      auto const end = k + 1 < begins_.size() ? begins_[k + 1] : rows_.size();
      take_brace(begins_[k], end, numbers_[k], key);
    }
    key.couplets = begins_.size();
    key.signs = signs_;
    if (plan.starts.size() < begins_.size() * 3 / 2) return std::nullopt;
    key.found.numbering = std::move(numbering_);
    return key;
  }

  // "{ Leaves bordered by thickened cells 11" / "{ Leaves not bordered . . . 12" where the brace of
  // couplet 10 would have one lead: the row of the second.  `end` where there is none or several.
  [[nodiscard]] std::size_t rival_behind_bare_number(std::size_t begin, std::size_t end,
                                                     std::uint32_t couplet) const {
    auto found = end;
    for (auto r = begin + 1; r < end; ++r) {
      if (starts_rival(r)) return end;
      auto const above = before(r);
      if (above < begin || above == r || !has_words(rows_[r]) || !begins_like_a_lead(r)) continue;
      auto const led = trailing_reference(words_of_line(rows_[above].line), &numbering_);
      bool const on =
          led && led->reference.number > couplet && numbering_.has_number(led->reference.number);
      if (!on) continue;
      if (found != end) return end;
      found = r;
    }
    return found;
  }

  void take_brace(std::size_t begin, std::size_t end, std::size_t number, BracedKey& key) const {
    auto& plan = key.found.plan;
    auto const lost_rival = rival_behind_bare_number(begin, end, fronts_[number].number);
    std::uint32_t leads = 0;
    for (auto r = begin; r < end; ++r) {
      auto const line = rows_[r].line;
      bool const first = leads == 0;
      if (!has_words(rows_[r])) {
        plan.parts[line] = fronts_[line].number > 0 ? LinePart::number : LinePart::brace;
        continue;
      }
      strip(line, key.lines[line]);
      if (!first && !starts_rival(r) && r != lost_rival) {
        plan.parts[line] = LinePart::words;
        continue;
      }
      LeadStart start;
      start.line = static_cast<std::uint32_t>(line);
      start.rank.alphabet = first ? Alphabet::digits : Alphabet::dash;
      start.rank.label.family = LabelFamily::dash;
      auto const letter = own_letter(words_of_line(line));
      ++leads;
      bool const lettered = letter && letter->number == leads;
      start.unlabelled = !first && !lettered;
      if (!start.unlabelled) {
        auto& label = start.rank.label;
        label.family = LabelFamily::digits;
        label.number = fronts_[number].number;
        label.printed = first ? fronts_[number].printed : letter->printed;
        label.back = fronts_[number].back;
        start.misread = first && fronts_[number].misread;
        if (lettered) {
          label.letter = letter->printed;
          label.text_at = letter->text_at;
        }
      }
      plan.start_at[line] = static_cast<std::uint32_t>(plan.starts.size());
      plan.starts.push_back(start);
    }
  }

  void strip(std::size_t at, SourceLine& line) const {
    auto words_at = fronts_[at].words_at;
    if (fronts_[at].number == 0 && (!signs_ || is_bracket_of_words(at))) words_at = 0;
    auto const columns = count_code_points(line.text.substr(0, words_at));
    line.text.remove_prefix(words_at);
    line.begin += words_at;
    line.blanks += columns;
    line.indent += columns;
  }

  std::vector<SourceLine> const& lines_;
  std::vector<BraceFront> fronts_;    // by line
  std::vector<std::size_t> numbers_;  // lines that bear a couplet's number
  bool signs_{false};                 // pieces of braces stand in the margin
  Numbering numbering_;
  std::vector<Row> rows_;
  std::vector<std::size_t> key_begins_;  // rows with which keys of the file begin
  bool small_{false};                    // leads begin with small letters
  bool hanging_{false};                  // words beneath a lead's first line are set in
  std::uint32_t column_{};               // where leads begin
  std::vector<std::size_t> begins_;      // rows with which braces begin, by number
};

}  // namespace

bool shows_braces(std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 2;
  std::size_t found = 0;
  for (auto const& line : lines) {
    auto const sign = code_point_at(line.text, 0);
    bool const apart = is_plain_brace(sign.value) && sign.length > 0 &&
                       is_blank(code_point_at(line.text, sign.length).value);
    if (apart && ++found == kFewest) return true;
  }
  return false;
}

std::optional<BracedKey> find_braces(std::vector<SourceLine> const& lines) {
  auto margin = read_brace_margin(lines);
  if (!margin) return std::nullopt;
  return BracePlanner{lines, *std::move(margin)}.plan();
}

}  // namespace keydrift::printed
