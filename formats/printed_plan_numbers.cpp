// Where leads begin when their couplet's number is set in a way of its own: in a line above them
// ("Couplet 2", "2."), behind a word ("No. 2"), as a roman numeral, with a comma or a ring for its
// full stop, or once for leads that bear letters of their own ("1 a) …" / "b) …", "Aa" / "Ab").

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::uint32_t kMostSkipped = 5;       // numbers that the count may leave out
constexpr std::uint32_t kMostLetters = 8;       // leads of a couplet that bear letters
constexpr std::size_t kLeastLeads = 4;          // fewer make no key
constexpr std::size_t kLongestNumber = 4;       // digits
constexpr std::uint32_t kLargestRoman = 89;     // beyond, letters are likelier meant
constexpr std::size_t kLinesToDestination = 8;  // looked at for the end of an unlabelled lead

// Words before a couplet's number.
constexpr std::array kNumberWords{
    "couplet"sv,   "couple"sv, "no"sv,      "nr"sv,    "n"sv,      "step"sv,        "schritt"sv,
    "question"sv,  "frage"sv,  "dilemma"sv, "pair"sv,  "paar"sv,   "coppia"sv,      "par"sv,
    "dicotomía"sv, "paso"sv,   "étape"sv,   "point"sv, "punkt"sv,  "alternative"sv, "stage"sv,
    "choice"sv,    "dilema"sv, "passo"sv,   "lead"sv,  "number"sv, "character"sv};

enum class Script : std::uint8_t { digits, roman, letters };

struct Scheme {
  Script script{Script::digits};
  bool worded{false};
};

// What a line begins with where it begins with a couplet's number.
struct Head {
  Label label;              // family and number of the couplet; the letter of the lead, if any
  bool strong{false};       // a word, a sign or a letter goes with the number
  bool alone{false};        // nothing follows on the line
  std::uint32_t ordinal{};  // of the lead's letter; 0 without
};

// A lead's own sign under a number: "a)", "B.", "ii)", "–", "•".
struct Sub {
  Label label;
  std::uint32_t ordinal{};  // 0 for dashes and bullets
  bool like_name{false};    // "A. wings" or "A. bus"
};

std::size_t digits_at(std::string_view line, std::size_t at) {
  std::size_t end = at;
  while (end < line.size() && is_digit(static_cast<unsigned char>(line[end]))) ++end;
  return end - at;
}

bool is_word_end(std::string_view line, std::size_t at) {
  auto const c = code_point_at(line, at).value;
  return !is_letter(c);
}

// Behind "Couplet ", "No. ", "n°"; 0 where no such word stands.
std::size_t behind_number_word(std::string_view line) {
  std::size_t end = 0;
  while (is_letter(code_point_at(line, end).value)) end += code_point_at(line, end).length;
  if (end == 0) return 0;
  auto const word = fold(line.substr(0, end));
  if (std::find(kNumberWords.begin(), kNumberWords.end(), word) == kNumberWords.end()) return 0;
  auto sign = code_point_at(line, end);
  bool const ring = sign.value == 0xB0 || sign.value == 0xBA;
  if (word == "n" && !ring && sign.value != '.') return 0;
  if (ring || sign.value == '.' || sign.value == ':') end += sign.length;
  auto const number = skip_blanks(line, end);
  return number > end || ring ? number : 0;
}

// Signs that close a number besides those of every label: "1,", "1°", "1;", "1>".
std::size_t odd_close_at(std::string_view line, std::size_t at) {
  auto const c = code_point_at(line, at);
  bool const ring = c.value == 0xB0 || c.value == 0xBA || c.value == 0xAA;
  bool const sign = c.value == ',' || c.value == ';' || c.value == '>' || c.value == '/';
  if (!ring && !sign) return 0;
  auto const next = code_point_at(line, at + c.length).value;
  return is_digit(next) ? 0 : c.length;
}

bool is_bullet(char32_t c) {
  return c == 0x2022 || c == 0x25CB || c == 0x25CF || c == 0x25AA || c == 0x25E6;
}

class NumberReader {
 public:
  explicit NumberReader(Scheme scheme) : scheme_{scheme} {}

  [[nodiscard]] std::optional<Head> head(std::string_view line) const {
    std::size_t at = 0;
    Head head;
    if (scheme_.worded) {
      at = behind_number_word(line);
      if (at == 0) return std::nullopt;
      head.strong = true;
    }
    auto const open = code_point_at(line, at).value;
    bool const enclosed = open == '(' || open == '[';
    if (enclosed || open == '#' || open == 0xA7) ++at;
    if (open == 0xA7) ++at;  // two bytes
    head.strong = head.strong || enclosed || open == '#' || open == 0xA7;
    auto const begin = at;
    if (!read_number(line, at, head.label)) return std::nullopt;
    head.label.printed = line.substr(0, at);
    if (auto const odd = odd_close_at(line, at); odd > 0) {
      at += odd;
      head.label.end = LabelEnd::dot;
    } else {
      take_close_letter(line, at, head);
    }
    if (scheme_.script == Script::letters && head.ordinal == 0 &&
        code_point_at(line, at).value == '.') {
      return std::nullopt;  // "A. bus"
    }
    auto const label = read_label_tail(line, at, enclosed, head.label);
    if (!label) return std::nullopt;
    head.label = *label;
    head.label.printed = trim_right(head.label.printed);
    if (begin > head.label.printed.size()) return std::nullopt;
    take_spaced_letter(line, head);
    head.alone = head.label.text_at >= line.size();
    head.strong = head.strong || head.label.end != LabelEnd::none || head.ordinal > 0;
    if (scheme_.script == Script::letters && head.ordinal == 0 && !head.strong) return std::nullopt;
    return head;
  }

  [[nodiscard]] std::optional<Sub> sub(std::string_view line) const {
    auto const bullet = code_point_at(line, 0);
    Sub sub;
    if (is_bullet(bullet.value) && is_blank(code_point_at(line, bullet.length).value)) {
      sub.label.family = LabelFamily::dash;
      sub.label.printed = line.substr(0, bullet.length);
      sub.label.text_at = skip_blanks(line, bullet.length);
      return sub;
    }
    auto const label = read_label(line);
    if (!label || label->text_at >= line.size()) return std::nullopt;
    sub.label = *label;
    if (label->is_dash()) return sub;
    if (label->family == LabelFamily::digits) {
      bool const own = scheme_.script != Script::digits && label->end != LabelEnd::none;
      if (!own || label->decimal || !label->letter.empty()) return std::nullopt;
    }
    // "a … aa": the letter once more is the next lead.
    sub.ordinal = label->family == LabelFamily::digits     ? label->number
                  : label->marks > 0 && label->number == 1 ? 1U + label->marks
                                                           : label->number;
    if (sub.ordinal > kMostLetters) return std::nullopt;
    auto const words = code_point_at(line, label->text_at).value;
    // "A. bus" is a name, "a leaf" goes on with a sentence.
    sub.like_name = label->family == LabelFamily::upper && is_lower(words);
    if (label->end == LabelEnd::none && !is_upper(words)) return std::nullopt;
    return sub;
  }

 private:
  [[nodiscard]] bool read_number(std::string_view line, std::size_t& at, Label& label) const {
    if (scheme_.script == Script::digits) {
      // "Step A1"
      bool const letter = scheme_.worded && at + 1 < line.size() && line[at] >= 'A' &&
                          line[at] <= 'Z' && digits_at(line, at + 1) > 0;
      if (letter) ++at;
      auto const digits = digits_at(line, at);
      if (digits == 0 || digits > kLongestNumber) return false;
      label.family = LabelFamily::digits;
      for (std::size_t i = 0; i < digits; ++i) {
        label.number = label.number * 10 + static_cast<std::uint32_t>(line[at + i] - '0');
      }
      at += digits;
      // "1.2" is a measure or a section.
      bool const decimal = code_point_at(line, at).value == '.' && digits_at(line, at + 1) > 0;
      return !decimal && label.number > 0;
    }
    if (scheme_.script == Script::roman) {
      auto end = at;
      while (end < line.size() && "IVXLivxl"sv.find(line[end]) != std::string_view::npos) ++end;
      label.family = LabelFamily::digits;
      label.number = roman_number(line.substr(at, end - at), kLargestRoman);
      if (label.number == 0 || is_lower(static_cast<unsigned char>(line[at]))) return false;
      at = end;
      return true;
    }
    auto const c = code_point_at(line, at).value;
    if (c < 'A' || c > 'Z') return false;
    label.family = LabelFamily::upper;
    label.number = 1 + c - U'A';
    ++at;
    return true;
  }

  // "1a", "Ab", "IIb", "A1": the lead's own sign, close to the number.
  void take_close_letter(std::string_view line, std::size_t& at, Head& head) const {
    auto const c = code_point_at(line, at).value;
    bool const lower = c >= 'a' && c < U'a' + kMostLetters;
    bool const upper = c >= 'A' && c < U'A' + kMostLetters && scheme_.script == Script::digits;
    bool const digit = scheme_.script != Script::digits && c >= '1' && c <= '9';
    if (!(lower || upper || digit) || !is_word_end(line, at + 1)) return;
    if (digit && is_digit(code_point_at(line, at + 1).value)) return;
    head.label.letter = line.substr(at, 1);
    head.ordinal = digit ? c - U'0' : 1 + c - (lower ? U'a' : U'A');
    ++at;
    head.label.printed = line.substr(0, at);
  }

  // "1 a) Wings", "II. A. Wings": the lead's own sign behind the number.
  void take_spaced_letter(std::string_view line, Head& head) const {
    if (head.ordinal > 0) return;
    auto const rest = line.substr(head.label.text_at);
    auto const sub = this->sub(rest);
    if (!sub || sub->ordinal != 1 || sub->label.family == LabelFamily::digits) return;
    if (sub->like_name) return;
    head.ordinal = sub->ordinal;
    head.label.letter = "a";
    head.label.printed = trim_right(line.substr(0, head.label.text_at + sub->label.printed.size()));
    if (!sub->label.back.empty()) head.label.back = sub->label.back;
    head.label.text_at += sub->label.text_at;
  }

  Scheme scheme_;
};

class NumberPlanner {
 public:
  NumberPlanner(std::vector<SourceLine> const& lines, Scheme scheme)
      : lines_{lines}, scheme_{scheme}, reader_{scheme} {
    plan_.numbering.family =
        scheme_.script == Script::letters ? LabelFamily::upper : LabelFamily::digits;
    plan_.numbering.roman = scheme_.script == Script::roman;
  }

  // How many couplets it finds with two leads at least.
  [[nodiscard]] std::size_t paired() const { return paired_; }

  std::optional<NumberedPlan> plan() {
    look_at_words();
    if (heads_ < 2) return std::nullopt;
    plan_.plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    plan_.plan.parts.assign(lines_.size(), LinePart::other);
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty()) continue;
      take(i);
      before_ = i;
    }
    close_couplet();
    add_first_couplet();
    if (plan_.plan.starts.size() < kLeastLeads || paired_ * 2 < couplets_) return std::nullopt;
    plan_.numbering.prefixed = std::any_of(
        plan_.plan.starts.begin(), plan_.plan.starts.end(), [this](LeadStart const& start) {
          return starts_with_prefix(lines_[start.line].text) ||
                 (start.line > 0 && starts_with_prefix(lines_[start.line - 1].text));
        });
    auto& numbers = plan_.numbering.numbers;
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    return std::move(plan_);
  }

 private:
  // "Step A1"
  [[nodiscard]] static bool starts_with_prefix(std::string_view line) {
    auto const at = behind_number_word(line);
    return at > 0 && at + 1 < line.size() && line[at] >= 'A' && line[at] <= 'Z' &&
           digits_at(line, at + 1) > 0;
  }

  // "Corolla reflexed ..... 2" / "Corolla erect ..... 6" / "2. Umbels …": couplet 1 prints no
  // number.
  void add_first_couplet() {
    auto& starts = plan_.plan.starts;
    auto& numbers = plan_.numbering.numbers;
    bool const lacking = scheme_.script == Script::digits && !scheme_.worded && !starts.empty() &&
                         starts.front().rank.label.number == 2 &&
                         std::find(numbers.begin(), numbers.end(), 1U) == numbers.end();
    if (!lacking) return;
    std::size_t const end = starts.front().line;
    auto begin = end;
    while (begin > 0 && !lines_[begin - 1].text.empty()) --begin;
    std::vector<std::size_t> first;
    for (auto i = begin; i < end; ++i) {
      bool const behind = i == begin || ends_lead(i - 1);
      if (behind && starts_with_upper(lines_[i].text)) first.push_back(i);
    }
    if (first.size() < 2 || !ends_lead(end - 1)) return;
    std::vector<LeadStart> before;
    for (auto const line : first) {
      LeadStart start;
      start.line = static_cast<std::uint32_t>(line);
      start.rank.alphabet = Alphabet::digits;
      start.rank.label.number = 1;
      start.unlabelled = true;
      before.push_back(start);
    }
    starts.insert(starts.begin(), before.begin(), before.end());
    for (std::size_t s = 0; s < starts.size(); ++s) {
      plan_.plan.start_at[starts[s].line] = static_cast<std::uint32_t>(s);
    }
    numbers.push_back(1);
    ++couplets_;
    ++paired_;
  }

  // Do words begin with capitals where numbers stand before them?
  void look_at_words() {
    std::size_t upper = 0;
    std::size_t full = 0;
    for (auto const& line : lines_) {
      auto const head = reader_.head(line.text);
      if (!head) continue;
      ++heads_;
      if (head->alone) continue;
      ++full;
      if (starts_with_upper(line.text.substr(head->label.text_at))) ++upper;
    }
    words_upper_ = upper * 5 >= full * 4;
  }

  void take(std::size_t i) {
    auto const text = lines_[i].text;
    // "                    11. A. bus Roe." beneath the words that lead to it.
    if (i > 0 && !lines_[i - 1].text.empty()) {
      constexpr std::uint32_t kFarIn = 8;  // columns
      auto const above = lines_[i - 1].indent;
      if (lines_[i].indent > above && is_numbered_name(text)) return;
      if (lines_[i].indent >= above + kFarIn && is_numbered_taxon(text)) return;
    }
    // "4. Genus AUS Roe." above the key.
    if (plan_.plan.starts.empty()) {
      if (auto const group = read_group_head(text); group && group->sure) return;
    }
    if (auto const head = reader_.head(text); head && carries_on(*head, i))
      return take_head(i, *head);
    if (number_ == 0) return;
    if (auto const sub = reader_.sub(text); sub && answers(*sub)) {
      bool const item = sub->ordinal == 0 && is_dated_name(text.substr(sub->label.text_at));
      if (!item) return take_sub(i, *sub);
    }
    if (waiting_ && starts_with_upper(text) && !starts_note(text) && !starts_caption(text)) {
      take_unlabelled(i);
    } else if (unlabelled_ && is_further(i)) {
      take_unlabelled(i);
    }
  }

  [[nodiscard]] bool carries_on(Head const& head, std::size_t i) const {
    auto const number = head.label.number;
    auto const text = lines_[i].text;
    auto const words = text.substr(std::min(head.label.text_at, text.size()));
    // "7. a) 3 or more spines"
    bool const count = head.ordinal > 0 && is_digit(code_point_at(words, 0).value);
    if (!head.alone && words_upper_ && !starts_with_upper(words) && !count) return false;
    if (head.alone) return is_heading(head, i);
    if (number == number_) {
      return head.ordinal == 0 ? ordinal_ == 0 : head.ordinal == ordinal_ + 1;
    }
    if (head.ordinal > 1) return false;
    if (number == number_ + 1) return true;
    if (!head.strong) return false;
    return (number == 1 && number_ > 1) || (number > number_ && number <= number_ + kMostSkipped);
  }

  // A number alone is a couplet's if the count has come to it and a lead's sign or words follow;
  // else it is a destination or a page's.
  [[nodiscard]] bool is_heading(Head const& head, std::size_t i) const {
    auto const number = head.label.number;
    bool const counts = number == number_ + 1 || (number == 1 && number_ != 1);
    if (!counts && !(scheme_.worded && number > number_ && number <= number_ + kMostSkipped)) {
      return false;
    }
    auto next = i + 1;
    // "Return to couplet 2" between a number and its leads.
    while (next < lines_.size() && (lines_[next].text.empty() || starts_note(lines_[next].text))) {
      ++next;
    }
    if (next == lines_.size()) return false;
    auto const text = lines_[next].text;
    if (auto const sub = reader_.sub(text)) return sub->ordinal <= 1;
    bool const closed = !reader_.head(text) && starts_with_upper(text) &&
                        (head.strong || scheme_.script == Script::digits);
    bool const gap = i == 0 || lines_[i - 1].text.empty() || scheme_.worded;
    return closed && gap && !starts_caption(text) && !starts_note(text);
  }

  [[nodiscard]] bool answers(Sub const& sub) const {
    if (sub.ordinal == 0) {
      // "+ Wings dark" and, behind the key, "• Maps".
      bool const list =
          sign_ != 0 && !is_bullet(sign_) && is_bullet(code_point_at(sub.label.printed, 0).value);
      return waiting_ || (leads_ > 0 && !list);
    }
    if (waiting_) {
      return sub.ordinal == 1;
    }
    if (sub.like_name && !like_names_) return false;
    return ordinal_ > 0 && sub.ordinal == ordinal_ + 1 &&
           (family_ == sub.label.family || family_ == LabelFamily::dash);
  }

  // The line before ends a lead, this one begins as leads do.
  [[nodiscard]] bool is_further(std::size_t i) const {
    auto const text = lines_[i].text;
    if (leads_ == 0 || !starts_with_upper(text) || starts_note(text) || starts_caption(text)) {
      return false;
    }
    if (mentions_key(text) && split_at_leader(text, plan_.numbering).kind == LeaderKind::none) {
      return false;
    }
    if (!ends_lead(before_)) return false;
    for (auto j = i; j < std::min(lines_.size(), i + kLinesToDestination); ++j) {
      if (lines_[j].text.empty()) return false;
      if (ends_lead(j)) return true;
    }
    return false;
  }
  [[nodiscard]] bool ends_lead(std::size_t i) const {
    auto const text = lines_[i].text;
    auto const split = split_at_leader(text, plan_.numbering);
    if (split.kind != LeaderKind::none) return split.destination_begin < text.size();
    return trailing_reference(text, &plan_.numbering).has_value() ||
           trailing_name(text).has_value();
  }

  void open_couplet(Head const& head) {
    if (head.label.number == number_) return;
    close_couplet();
    number_ = head.label.number;
    leads_ = 0;
    ordinal_ = 0;
    family_ = LabelFamily::dash;
    plan_.numbering.numbers.push_back(number_);
  }
  void close_couplet() {
    if (number_ == 0) return;
    ++couplets_;
    if (leads_ >= 2) ++paired_;
    if (leads_ == 1) ++single_;
    number_ = 0;
  }

  void take_head(std::size_t i, Head const& head) {
    bool const again = head.label.number == number_ && leads_ > 0;
    open_couplet(head);
    if (head.alone) {
      waiting_ = true;
      head_ = head.label;
      plan_.plan.parts[i] = LinePart::number;
      return;
    }
    ordinal_ = again && head.ordinal == 0 ? 0 : head.ordinal;
    start(i, head.label, false);
  }

  void take_sub(std::size_t i, Sub const& sub) {
    auto label = sub.label;
    if (waiting_ || sub.ordinal > 0) {
      label.family = scheme_.script == Script::letters ? LabelFamily::upper : LabelFamily::digits;
      label.number = number_;
      label.marks = 0;
      label.decimal = false;
      static constexpr std::string_view kLetters = "abcdefgh";
      label.letter = sub.ordinal == 0 ? std::string_view{} : kLetters.substr(sub.ordinal - 1, 1);
      if (waiting_ && label.back.empty()) label.back = head_.back;
    }
    if (waiting_) like_names_ = sub.like_name;
    family_ = sub.label.family;
    if (sub.ordinal == 0) sign_ = code_point_at(sub.label.printed, 0).value;
    ordinal_ = sub.ordinal;
    start(i, label, false);
  }

  void take_unlabelled(std::size_t i) {
    Label label;
    label.family = LabelFamily::dash;
    if (waiting_) {
      label = head_;
      label.printed = {};
      label.text_at = 0;
    }
    start(i, label, true);
  }

  void start(std::size_t i, Label const& label, bool unlabelled) {
    waiting_ = false;
    ++leads_;
    LeadStart start;
    start.line = static_cast<std::uint32_t>(i);
    start.rank.alphabet = label.is_dash() ? Alphabet::dash : Alphabet::digits;
    start.rank.label = label;
    start.unlabelled = unlabelled;
    plan_.plan.start_at[i] = static_cast<std::uint32_t>(plan_.plan.starts.size());
    plan_.plan.starts.push_back(start);
  }

 public:
  void allow_unlabelled() { unlabelled_ = true; }
  [[nodiscard]] bool wants_unlabelled() const { return single_ * 2 > couplets_; }

 private:
  std::vector<SourceLine> const& lines_;
  Scheme scheme_;
  NumberReader reader_;
  NumberedPlan plan_;
  std::size_t heads_{};
  bool words_upper_{true};
  bool unlabelled_{false};  // further leads may bear no sign
  // The couplet that is being read.
  std::uint32_t number_{};
  std::uint32_t ordinal_{};  // of its last lead's letter
  LabelFamily family_{LabelFamily::dash};
  std::size_t leads_{};
  bool like_names_{false};  // its leads' words begin with small letters
  bool waiting_{false};     // its number stands alone, its first lead is to come
  Label head_;
  std::size_t before_{};  // the last line with text
  // Over all.
  char32_t sign_{};  // of the last lead that bears a dash or a bullet
  std::size_t couplets_{};
  std::size_t paired_{};
  std::size_t single_{};
};

}  // namespace

std::vector<NumberedPlan> plans_by_numbers(std::vector<SourceLine> const& lines) {
  std::vector<NumberedPlan> plans;
  for (auto const script : {Script::digits, Script::roman, Script::letters}) {
    for (bool const worded : {false, true}) {
      NumberPlanner planner{lines, {script, worded}};
      auto plan = planner.plan();
      if (planner.wants_unlabelled()) {
        NumberPlanner again{lines, {script, worded}};
        again.allow_unlabelled();
        plan = again.plan();
      }
      if (plan) plans.push_back(std::move(*plan));
    }
  }
  return plans;
}

}  // namespace keydrift::printed
