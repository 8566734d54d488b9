#include "keydrift/formats/printed_lines.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <unordered_map>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_target.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kTabStop = 8;
constexpr std::uint32_t kLargestRomanCouplet = 89;
constexpr std::uint32_t kDeepestIndentOfLine = 200;  // deeper is all the same

struct StyleTally {
  std::size_t steps{};  // labels that carry the count on: same number, or the next
  std::size_t labels{};
  std::size_t cells{};  // with a tab and a capital behind them
  std::size_t upper{};  // labels whose words begin with a capital
  std::uint32_t last{};
};

bool starts_upper(SourceLine const& line, Label const& label) {
  return starts_with_upper(line.text.substr(label.text_at));
}

// Markup says that the line is no lead, or what stands around it does.
bool is_marked_otherwise(SourceLine const& line) {
  if (line.is_no_lead) return true;
  return line.markup.role != LineRole::told_by_text && line.markup.role != LineRole::lead;
}

// "1.2" as lead 2 of couplet 1; other labels as they are.
std::optional<Label> read_label_with(std::string_view line, DecimalLabels decimals) {
  auto label = read_label(line);
  if (!label || !label->decimal || decimals == DecimalLabels::sections) return label;
  auto const stop = label->printed.find('.');
  auto const minor = label->printed.substr(stop + 1);
  if (minor.size() != 1 || !is_digit(static_cast<unsigned char>(minor.front()))) return label;
  label->letter = minor;
  label->decimal = false;
  return label;
}

std::optional<Label> read_label_with(SourceLine const& line, DecimalLabels decimals) {
  return line.told ? line.told : read_label_with(line.text, decimals);
}

// A number that fills its line: a page's, a year that was wrapped.
bool is_number_alone(SourceLine const& line, Label const& label) {
  return label.text_at >= line.text.size() && label.style() % 16 == 0 &&
         line.markup.role != LineRole::lead && !line.told;
}

bool is_bare_style(unsigned style) { return style % 16 == 0; }  // a number and nothing else

using StyleTallies = std::array<StyleTally, Label::kStyles>;

void accept_styles(StyleTallies const& tallies, unsigned family, Numbering& numbering) {
  auto const* best = &tallies[family * 16];
  for (unsigned style = family * 16; style < family * 16 + 16; ++style) {
    if (tallies[style].steps > best->steps) best = &tallies[style];
  }
  for (unsigned style = family * 16; style < family * 16 + 16; ++style) {
    auto const& tally = tallies[style];
    bool enough = tally.steps > 0 && tally.steps * 8 >= best->steps;
    // "[1]" begins footnotes.
    bool const enclosed = style % 16 / 2 == static_cast<unsigned>(LabelEnd::enclosed);
    if (enclosed && &tally != best) enough = enough && tally.steps * 3 >= best->steps;
    if (is_bare_style(style) && &tally != best) {
      // A bare number opens many a wrapped line; it has to be the rule, not the exception.
      bool const capitals = tally.upper * best->labels >= best->upper * tally.labels / 2 + 1;
      enough =
          enough && tally.steps * 3 >= best->steps && tally.steps * 2 > tally.labels && capitals;
    }
    // Labels with letters, marks or back-references are unlikely by accident, wherever they count.
    bool const marked = style % 2 == 1 && tally.labels > 0;
    // A piece of a key may start anywhere and skip numbers.
    enough = enough || (best->steps == 0 && !is_bare_style(style) && tally.labels > 0);
    // One couplet alone carries no count on; capitals tell its number from a count of hairs.
    enough = enough || (numbering.extent == Extent::fragment && tally.labels > 0 &&
                        (!is_bare_style(style) || tally.upper * 2 >= tally.labels));
    if (enough || marked) numbering.styles.set(style);
  }
}

// "1 Head …", "– Head …", "2 (1) Legs …": nothing leads to the first couplet, so that it alone
// bears no back-reference.
bool opens_with_bare_number(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  bool opened = false;
  for (auto const& line : lines) {
    auto const label = read_label(line.text);
    if (!label || label->is_dash() || label->decimal || is_number_alone(line, *label)) continue;
    if (opened && label->number == 2 && !label->back.empty()) return true;
    bool const bare = is_bare_style(label->style()) && label->family == numbering.family;
    opened = (bare && label->number == 1 && starts_upper(line, *label)) ||
             (opened && label->number != 2);  // "(Fig." / "3A) ..... 2" is a wrapped line
  }
  return false;
}

// A style used now and then ("2." among "1a / 1b") carries on the count of the others.
void accept_styles_that_fill_gaps(std::vector<SourceLine> const& lines, DecimalLabels decimals,
                                  Numbering& numbering) {
  StyleTallies tallies{};
  std::uint32_t last = 0;
  std::size_t answered = 0;  // bare numbers of which the next label is a dash
  std::size_t due = 0;       // bare numbers that carry the count on
  std::size_t marked = 0;    // of these, the ones that the next label answers with a mark
  std::size_t backs = 0;     // labels with back-references
  bool bare_before = false;
  bool dash_between = false;  // "2 Annual." / "– A. busa Roe" / "2* Perennial"
  for (auto const& line : lines) {
    auto const label = read_label_with(line, decimals);
    if (label && label->is_dash() && bare_before && !std::exchange(dash_between, true)) ++answered;
    if (!label || label->is_dash() || label->decimal || label->family != numbering.family) continue;
    if (bare_before && label->marks > 0 && label->number == last) ++marked;
    dash_between = false;
    bare_before = is_bare_style(label->style()) && starts_upper(line, *label);
    auto& tally = tallies[label->style()];
    ++tally.labels;
    bool const cell = label->text_at > 0 && line.text[label->text_at - 1] == '\t';
    if (cell && starts_upper(line, *label)) ++tally.cells;
    bool const carries_on = label->number == last + 1 || (last != 0 && label->number == last);
    if (carries_on) ++tally.steps;
    if (carries_on && bare_before) ++due;
    if (!label->back.empty()) ++backs;
    if (carries_on || numbering.accepts(*label)) last = label->number;
  }
  for (unsigned style = 0; style < Label::kStyles; ++style) {
    auto const& tally = tallies[style];
    bool const fills = !is_bare_style(style) && tally.steps > 0 && tally.steps * 2 >= tally.labels;
    // A tab between a number and a capital: no line was wrapped so.
    bool const cells = is_bare_style(style) && tally.cells > 1 && tally.cells == tally.labels;
    // "10 Head dull" / "- Head bright" beside "10a Legs long".
    bool const pairs = is_bare_style(style) && answered > 1 && answered == tally.labels;
    // "3 Head dull" / "3* Head bright" beside "2 (1) Legs long".
    bool const answers = is_bare_style(style) && backs * 4 >= marked && backs > 1 && marked > 1 &&
                         marked * 4 >= due * 3;
    if (fills || cells || pairs || answers) numbering.styles.set(style);
  }
}

}  // namespace

namespace {

// "| 1 | Wings clear | 2 |": a row of a table drawn with upright strokes, without the outer ones.
std::string_view without_borders(std::string_view line) {
  if (line.size() < 3 || line.front() != '|' || line.back() != '|') return line;
  return trim(line.substr(1, line.size() - 2));
}

}  // namespace

void tell_labels(std::vector<SourceLine>& lines,
                 std::vector<std::pair<std::size_t, Label>> const& labels) {
  for (auto const& [line, label] : labels) {
    lines[line].told = label;
    lines[line].told_as_printed = true;
  }
}

std::vector<SourceLine> split_lines(std::string_view text) {
  std::vector<SourceLine> lines;
  lines.reserve(static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1);
  std::size_t begin = 0;
  std::uint32_t number = 0;
  while (begin < text.size()) {
    auto end = text.find('\n', begin);
    if (end == std::string_view::npos) end = text.size();
    SourceLine line;
    line.number = ++number;
    auto const whole = text.substr(begin, end - begin);
    line.text = without_borders(trim(whole));
    line.starts_page = whole.find('\f') != std::string_view::npos;
    auto const blanks = whole.substr(0, static_cast<std::size_t>(line.text.data() - whole.data()));
    line.begin = begin + blanks.size();
    auto const behind = whole.substr(blanks.size() + line.text.size());
    line.ends_in_tab = !line.text.empty() && behind.find('\t') != std::string_view::npos;
    for (std::size_t at = 0; at < blanks.size();) {
      auto const c = code_point_at(blanks, at);
      line.indent = c.value == '\t' ? (line.indent / kTabStop + 1) * kTabStop : line.indent + 1;
      ++line.blanks;
      at += c.length;
    }
    lines.push_back(line);
    begin = end + 1;
  }
  return lines;
}

SourceLine part_of_line(SourceLine const& line, std::size_t from, std::size_t to) {
  auto part = line;
  part.text = trim_right(line.text.substr(from, to - from));
  part.ends_in_tab = line.ends_in_tab && to >= line.text.size();
  bool const cut = part.told && part.told->text_at > part.text.size();
  if (from > 0 || cut) part.told.reset();
  part.begin = line.begin + from;
  if (from > 0) part.goes_on = part.is_no_lead = false;
  part.blanks = line.blanks + count_code_points(line.text.substr(0, from));
  auto& destination = part.markup.destination_begin;
  if (destination < part.begin || destination >= part.begin + part.text.size()) {
    destination = part.markup.destination_end = kNotTold;  // it is another part's
  }
  return part;
}

Place place_in(SourceLine const& line, std::size_t begin, std::size_t end) {
  auto const before = line.text.substr(0, begin - line.begin);
  return {.line = line.number,
          .column = line.blanks + 1 + count_code_points(before),
          .begin = begin,
          .end = end};
}

bool Numbering::has_number(std::uint32_t number) const {
  return extent == Extent::fragment || std::binary_search(numbers.begin(), numbers.end(), number);
}

std::optional<Reference> Numbering::read(std::string_view text) const {
  if (roman) {
    auto numeral = trim(text);
    while (!numeral.empty() &&
           std::string_view{"(["}.find(numeral.front()) != std::string_view::npos) {
      numeral.remove_prefix(1);
    }
    while (!numeral.empty() &&
           std::string_view{")].,;:"}.find(numeral.back()) != std::string_view::npos) {
      numeral.remove_suffix(1);
    }
    if (auto const number = roman_number(numeral, kLargestRomanCouplet); number > 0) {
      Reference reference;
      reference.number = number;
      reference.printed = numeral;
      return reference;
    }
  }
  if (decimals_are_leads) {
    // "2.1" leads to the first lead of couplet 2
    auto const whole = trim(text);
    auto const point = whole.find('.');
    bool const lead = point != std::string_view::npos && point > 0 && whole.size() == point + 2 &&
                      is_digit(static_cast<unsigned char>(whole.back()));
    if (auto reference = lead ? read_reference(whole.substr(0, point)) : std::nullopt) {
      reference->printed = whole;
      return reference;
    }
  }
  auto const number = trim(text);
  bool const letter = prefixed && number.size() > 1 && number[0] >= 'A' && number[0] <= 'Z' &&
                      is_digit(static_cast<unsigned char>(number[1]));
  auto reference = read_reference(letter ? number.substr(1) : text);
  if (reference && letter) reference->printed = number;
  return reference;
}

namespace {

// "b Wings dark", "c. Wings dark": as a dash does, the letter alone begins a further lead.  "h." is
// a b that was misread.
std::optional<Label> lettered_second(std::string_view line) {
  if (line.size() < 3 || ((line[0] < 'b' || line[0] > 'e') && !line.starts_with("h. "))) {
    return std::nullopt;
  }
  std::size_t const end = line[1] == '.' || line[1] == ')' ? 2 : 1;
  auto const at = skip_blanks(line, end);
  if (at == end || at >= line.size() || !is_letter(code_point_at(line, at).value)) {
    return std::nullopt;
  }
  Label label;
  label.family = LabelFamily::dash;
  label.printed = line.substr(0, 1);
  label.text_at = at;
  return label;
}

// Hardly a second lead repeats its couplet's number, and letters alone begin about as many lines as
// "1a" does.
bool has_lettered_seconds(std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 3;
  std::size_t firsts = 0;
  std::size_t upper = 0;     // of them, those whose words begin with a capital
  std::size_t numbered = 0;  // "1b"
  std::size_t alone = 0;     // "b"
  std::size_t small = 0;     // "b" before a small letter
  for (auto const& line : lines) {
    auto const label = read_label(line.text);
    if (label && label->family == LabelFamily::digits && label->text_at < line.text.size()) {
      if (label->letter == "b") ++numbered;
      if (label->letter != "a") continue;
      ++firsts;
      if (starts_with_upper(line.text.substr(label->text_at))) ++upper;
    } else if (auto const second = lettered_second(line.text); second && line.text[0] == 'b') {
      ++(starts_with_upper(line.text.substr(second->text_at)) ? alone : small);
    }
  }
  if (upper * 4 <= firsts) alone += small;
  return firsts >= kFewest && alone * 4 >= firsts * 3 && numbered * 4 <= firsts;
}

// Whether nearly all labels are "1a." and "1b.", and whether nearly all are "1" and "1'", or "1\""
// and "1'", several of each; the latter with hardly a dash among them.
void tell_lettered_and_marked(std::vector<SourceLine> const& lines, Numbering& numbering) {
  constexpr std::size_t kFewest = 4;
  std::array<std::size_t, 2> letters{};
  std::size_t unlettered = 0;
  std::array<std::size_t, 3> marks{};
  std::size_t dashes = 0;
  for (auto const& line : lines) {
    auto const label = read_label(line.text);
    if (!label) continue;
    if (label->is_dash()) ++dashes;
    if (label->family != LabelFamily::digits || label->decimal) continue;
    bool const dot = label->end == LabelEnd::dot;
    bool const ab = dot && (label->letter == "a" || label->letter == "b");
    ++(ab ? letters[label->letter == "a" ? 0 : 1] : unlettered);
    // A number alone may be a page.
    if (label->text_at < line.text.size()) ++marks[std::min<std::size_t>(label->marks, 2)];
  }
  numbering.lettered =
      letters[0] >= kFewest && letters[1] >= kFewest && unlettered * 4 <= letters[0] + letters[1];
  auto const firsts = std::max(marks[0], marks[2]);
  auto const others = std::min(marks[0], marks[2]);
  numbering.marked = firsts >= kFewest && marks[1] >= kFewest && marks[1] * 4 >= firsts * 3 &&
                     others * 2 <= firsts && dashes * 4 <= marks[1];
}

}  // namespace

std::optional<Label> Numbering::label_of(std::string_view line) const {
  auto label =
      read_label_with(line, decimals_are_leads ? DecimalLabels::leads : DecimalLabels::sections);
  if (label && accepts(*label)) return label;
  if (label && label->family == LabelFamily::digits && label->end == LabelEnd::none) {
    // "2 – 12 to 14 scales" where labels are "1 –": elsewhere that is a range.
    auto closed = *label;
    closed.end = LabelEnd::dash;
    auto const dash = code_point_at(line, label->text_at);
    auto const behind = label->text_at + dash.length;
    auto const words = skip_blanks(line, behind);
    bool const counts = is_dash(dash.value) && words > behind &&
                        is_digit(code_point_at(line, words).value) && accepts(closed);
    if (counts) {
      closed.text_at = words;
      return closed;
    }
  }
  if (lettered) {
    if (auto const misread = read_misread_lettered(line)) return misread;
  }
  return lettered_seconds ? lettered_second(line) : std::nullopt;
}

namespace {

// Letters count through most of their labels: a, a, b, b, c, c.
bool letters_step(std::array<StyleTally, Label::kStyles> const& tallies,
                  std::array<std::size_t, 3> const& family_steps) {
  constexpr std::size_t kFewest = 6;
  std::array<std::size_t, 3> labels{};
  for (unsigned style = 0; style < 48; ++style) labels[style / 16] += tallies[style].labels;
  auto const counts = [&](unsigned family) {
    return family_steps[family] >= kFewest && family_steps[family] * 5 >= labels[family] * 4;
  };
  return counts(1) || counts(2);
}

// Steps of numbers that do not stand before a species, "9. A. busa" on a line of its own.
std::size_t steps_of_leads(std::vector<SourceLine> const& lines, DecimalLabels decimals) {
  std::size_t steps = 0;
  std::uint32_t last = 0;
  for (auto const& line : lines) {
    if (is_marked_otherwise(line)) continue;
    auto const label = read_label_with(line, decimals);
    bool const number = label && label->family == LabelFamily::digits && !label->decimal &&
                        !is_number_alone(line, *label);
    if (!number || is_numbered_name(line.text) || is_numbered_name_in_full(line.text)) continue;
    bool const starts = last == 0 && label->number == 1;
    if (starts || (last != 0 && (label->number == last || label->number == last + 1))) ++steps;
    last = label->number;
  }
  return steps;
}

}  // namespace

Numbering decide_numbering(std::vector<SourceLine> const& lines, DecimalLabels decimals,
                           Extent extent) {
  std::array<StyleTally, Label::kStyles> tallies{};
  std::size_t decimal_leads = 0;
  for (auto const& line : lines) {
    if (is_marked_otherwise(line)) continue;
    auto const label = read_label_with(line, decimals);
    if (!label || label->is_dash() || label->decimal || is_number_alone(line, *label)) continue;
    if (decimals == DecimalLabels::leads && label->printed.find('.') != std::string_view::npos) {
      ++decimal_leads;
    }
    auto& tally = tallies[label->style()];
    ++tally.labels;
    if (starts_upper(line, *label)) ++tally.upper;
    bool const starts = tally.last == 0 && label->number == 1;
    bool const carries_on =
        tally.last != 0 && (label->number == tally.last || label->number == tally.last + 1);
    if (starts || carries_on) ++tally.steps;
    tally.last = label->number;
  }
  Numbering numbering;
  numbering.decimals_are_leads = decimal_leads > 1;
  numbering.extent = extent;
  // Letters number the couplets only where digits do not.
  std::array<std::size_t, 3> family_steps{};
  for (unsigned style = 0; style < 48; ++style) family_steps[style / 16] += tallies[style].steps;
  unsigned family = 0;
  auto const digit_steps =
      letters_step(tallies, family_steps) ? steps_of_leads(lines, decimals) : family_steps[0];
  if (digit_steps < 2) {
    for (unsigned other = 1; other < 3; ++other) {
      if (family_steps[other] > family_steps[family] && family_steps[other] >= 2) family = other;
    }
  }
  numbering.family = static_cast<LabelFamily>(family);
  accept_styles(tallies, family, numbering);
  accept_styles_that_fill_gaps(lines, decimals, numbering);
  numbering.lettered_seconds = has_lettered_seconds(lines);
  tell_lettered_and_marked(lines, numbering);
  numbering.first_is_bare = opens_with_bare_number(lines, numbering);
  std::size_t upper = 0;
  std::size_t labels = 0;
  std::size_t backed = 0;
  std::unordered_map<std::uint32_t, std::uint32_t> rival_of;  // by number
  using Indents = std::map<std::uint32_t, std::size_t>;
  Indents label_indents;
  Indents dash_indents;
  for (auto const& line : lines) {
    if (is_marked_otherwise(line)) continue;
    auto const label = numbering.label_of(line);
    if (!label || is_number_alone(line, *label)) continue;
    ++(label->is_dash() ? dash_indents
                        : label_indents)[std::min(line.indent, kDeepestIndentOfLine)];
    if (label->is_dash()) continue;
    numbering.numbers.push_back(label->number);
    ++labels;
    if (starts_upper(line, *label)) ++upper;
    if (label->back.empty()) continue;
    ++backed;
    auto const rivals = read_references(label->back);
    if (rivals && rivals->size() == 1) rival_of[label->number] = rivals->front().number;
  }
  numbering.words_start_upper = labels > 0 && upper * 10 >= labels * 9;
  auto const deepest_usual = [](Indents const& indents) {
    std::size_t all = 0;
    for (auto const& [indent, count] : indents) all += count;
    std::uint32_t deepest = 0;
    for (auto const& [indent, count] : indents) {
      if (count * 10 >= all) deepest = indent;
    }
    return deepest;
  };
  numbering.label_indent = deepest_usual(label_indents);
  numbering.dash_indent = std::max(deepest_usual(dash_indents), numbering.label_indent);
  std::sort(numbering.numbers.begin(), numbering.numbers.end());
  numbering.numbers.erase(std::unique(numbering.numbers.begin(), numbering.numbers.end()),
                          numbering.numbers.end());
  constexpr std::size_t kFewest = 6;
  // "3 (8)" and "8 (3)" name each other.
  auto const mutual = static_cast<std::size_t>(
      std::count_if(rival_of.begin(), rival_of.end(), [&rival_of](auto const& one) {
        auto const other = rival_of.find(one.second);
        return other != rival_of.end() && other->second == one.first;
      }));
  numbering.serial = labels >= kFewest && backed * 5 >= labels * 4 && mutual * 3 >= labels * 2;
  return numbering;
}

void mark_end_over_lines(std::vector<SourceLine>& lines, std::size_t first, std::size_t at,
                         std::size_t last) {
  lines[first].markup.destination_begin = lines[first].begin + at;
  for (auto i = first + 1; i <= last; ++i) lines[i].goes_on = lines[i].is_no_lead = true;
}

}  // namespace keydrift::printed
