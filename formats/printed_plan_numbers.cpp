// Where leads begin when their couplet's number is set in a way of its own: in a line above them
// ("Couplet 2", "2."), behind a word ("No. 2"), as a roman numeral, with a comma or a ring for its
// full stop, or once for leads that bear letters of their own ("1 a) …" / "b) …", "Aa" / "Ab").

#include <algorithm>
#include <array>
#include <functional>
#include <string>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_second_leads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::uint32_t kMostNumbersLeftOut = 5;  // numbers that the count may leave out
constexpr std::size_t kLeastNumberedLeads = 4;    // fewer make no key
constexpr std::size_t kLinesToDestination = 8;    // looked at for the end of an unlabelled lead

class NumberPlanner {
 public:
  NumberPlanner(std::vector<SourceLine> const& lines, NumberScheme scheme)
      : lines_{lines}, scheme_{scheme}, reader_{scheme}, seconds_{lines, plan_.numbering} {
    plan_.numbering.family =
        scheme_.script == NumberScript::letters ? LabelFamily::upper : LabelFamily::digits;
    plan_.numbering.roman = scheme_.script == NumberScript::roman;
  }

  // How many couplets it finds with two leads at least.
  [[nodiscard]] std::size_t paired() const { return paired_; }

  std::optional<NumberedPlan> plan() {
    look_at_words();
    if (heads_ < 2) return std::nullopt;
    plan_.plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    plan_.plan.parts.assign(lines_.size(), LinePart::other);
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty() || is_beside(i)) continue;
      take(i);
      bool const title =
          lines_[i].markup.role == LineRole::heading && !reader_.head(lines_[i].text);
      titled_ = titled_ || (title && leads_ >= 2);
      before_ = i;
    }
    close_couplet(lines_.size());
    add_first_couplet();
    if (plan_.plan.starts.size() < kLeastNumberedLeads || paired_ * 2 < couplets_) {
      return std::nullopt;
    }
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
           is_digit(static_cast<unsigned char>(line[at + 1]));
  }

  // "Corolla reflexed ..... 2" / "Corolla erect ..... 6" / "2. Umbels …": couplet 1 prints no
  // number.
  void add_first_couplet() {
    auto& starts = plan_.plan.starts;
    auto& numbers = plan_.numbering.numbers;
    bool const lacking = scheme_.script == NumberScript::digits && !scheme_.worded &&
                         !starts.empty() && starts.front().rank.label.number == 2 &&
                         std::find(numbers.begin(), numbers.end(), 1U) == numbers.end();
    if (!lacking) return;
    std::size_t const end = starts.front().line;
    auto begin = end;
    while (begin > 0 && !lines_[begin - 1].text.empty()) --begin;
    std::vector<std::size_t> first;
    for (auto i = begin; i < end; ++i) {
      bool const behind = i == begin || seconds_.ends_lead(i - 1);
      if (behind && starts_with_upper(lines_[i].text)) first.push_back(i);
    }
    if (first.size() < 2 || !seconds_.ends_lead(end - 1)) return;
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
    if (lines_[i].goes_on && lines_[i].is_no_lead) return;  // "… tip of wings" / "9 mm. or more"
    // "                    11. A. bus Roe." beneath the words that lead to it.
    if (i > 0 && !lines_[i - 1].text.empty()) {
      constexpr std::uint32_t kFarIn = 8;  // columns
      auto const above = lines_[i - 1].indent;
      if (is_numbered_name(text)) return;
      if (lines_[i].indent >= above + kFarIn && is_numbered_taxon(text)) return;
    }
    // "4. Genus AUS Roe." above the key.
    if (plan_.plan.starts.empty()) {
      if (auto const group = read_group_head(text); group && group->sure) return;
    }
    auto head = reader_.head(text);
    bool const misread = !head && ((head = misread_one(i)) || (head = misread_next(i)));
    if (head && carries_on(*head, i)) {
      take_head(i, *head);
      if (misread) plan_.plan.starts.back().misread = true;
      return;
    }
    if (number_ == 0) return;
    if (auto const sub = reader_.sub(text); sub && answers(*sub)) {
      bool const item = sub->ordinal == 0 && is_dated_name(text.substr(sub->label.text_at));
      if (lines_[i].goes_on)
        return;  // "10. Panicle rough." / "– A. bus Roe" / "10* Panicle smooth"
      if (!item) return take_sub(i, *sub);
    }
    if (waiting_ && starts_with_upper(text) && !starts_note(text) && !starts_caption(text)) {
      take_unlabelled(i);
    } else if (unlabelled_ && is_further(i)) {
      take_unlabelled(i);
    }
  }

  // "l5 a Wings" where couplet 15 is due.
  [[nodiscard]] std::optional<NumberHead> misread_next(std::size_t i) const {
    if (scheme_.script != NumberScript::digits || scheme_.worded || number_ == 0)
      return std::nullopt;
    auto const line = lines_[i].text;
    auto const token = line.substr(0, line.find_first_of(" ."));
    if (token == "B" && leads_ == 1) return std::nullopt;  // the second lead of "7. A."
    auto const wanted = std::to_string(number_ + 1);
    if (token.size() != wanted.size() || misread_number(token) != number_ + 1) return std::nullopt;
    auto const mended = wanted + std::string{line.substr(token.size())};
    auto head = reader_.head(mended);
    if (!head || !head->strong) return std::nullopt;
    // Views of the mended text must become those of the line; others stay.
    std::less_equal<char const*> const not_behind;
    auto const in_line = [&](std::string_view part) {
      bool const mine = !part.empty() && not_behind(mended.data(), part.data()) &&
                        not_behind(part.data() + part.size(), mended.data() + mended.size());
      return mine ? line.substr(static_cast<std::size_t>(part.data() - mended.data()), part.size())
                  : part;
    };
    head->label.printed = in_line(head->label.printed);
    head->label.letter = in_line(head->label.letter);
    head->label.back = in_line(head->label.back);
    return head;
  }

  // "I. Wings clear" for couplet 1, below which couplet 2 follows.
  [[nodiscard]] std::optional<NumberHead> misread_one(std::size_t i) const {
    constexpr std::size_t kMostLines = 16;  // of couplet 1
    if (scheme_.script != NumberScript::digits || scheme_.worded) return std::nullopt;
    auto const label = read_misprinted_label(lines_[i].text, 1, false);
    if (!label || !label->letter.empty()) return std::nullopt;
    for (auto j = i + 1; j < std::min(lines_.size(), i + kMostLines); ++j) {
      auto const next = reader_.head(lines_[j].text);
      if (!next) continue;
      if (next->label.number != 2) return std::nullopt;
      NumberHead head;
      head.label = *label;
      head.strong = true;
      head.alone = label->text_at >= lines_[i].text.size();
      return head;
    }
    return std::nullopt;
  }

  [[nodiscard]] bool carries_on(NumberHead const& head, std::size_t i) const {
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
    return (number == 1 && number_ > 1) ||
           (number > number_ && number <= number_ + kMostNumbersLeftOut);
  }

  // A number alone is a couplet's if the count has come to it and a lead's sign or words follow;
  // else it is a destination or a page's.
  // Marked up as what stands beside the leads.
  [[nodiscard]] bool is_beside(std::size_t i) const {
    auto const role = lines_[i].markup.role;
    return role == LineRole::aside || role == LineRole::note;
  }

  [[nodiscard]] bool is_heading(NumberHead const& head, std::size_t i) const {
    auto const number = head.label.number;
    bool const counts = number == number_ + 1 || (number == 1 && number_ != 1);
    if (!counts &&
        !(scheme_.worded && number > number_ && number <= number_ + kMostNumbersLeftOut)) {
      return false;
    }
    auto next = i + 1;
    // "Return to couplet 2" between a number and its leads, or a figure.
    while (next < lines_.size() &&
           (lines_[next].text.empty() || is_beside(next) || starts_note(lines_[next].text))) {
      ++next;
    }
    if (next == lines_.size()) return false;
    auto const text = lines_[next].text;
    if (auto const sub = reader_.sub(text)) {
      // "1. Wings clear" / "2" / "• Wings dark" / "3": the first lead's end, for its rival follows.
      bool const rival = sub->ordinal == 0 && number_ > 0 && leads_ == 1 && !waiting_ &&
                         !plan_.plan.starts.back().unlabelled;
      return sub->ordinal <= 1 && !rival;
    }
    bool const closed = !reader_.head(text) && starts_with_upper(text) &&
                        (head.strong || scheme_.script == NumberScript::digits);
    // "… Aus bus" / "2" / "Legs red … 3": the lead above has its end.
    bool const gap = i == 0 || lines_[i - 1].text.empty() || scheme_.worded || number_ == 0 ||
                     seconds_.ends_lead(i - 1);
    return closed && gap && !starts_caption(text) && !starts_note(text);
  }

  [[nodiscard]] bool answers(LeadSign const& sub) const {
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
    if (leads_ == 0 || titled_ || !starts_with_upper(text) || starts_note(text) ||
        starts_caption(text) || is_author_alone(text) || seconds_.heads_page(i)) {
      return false;
    }
    if (mentions_key(text) && split_at_leader(text, plan_.numbering).kind == LeaderKind::none) {
      return false;
    }
    bool const author = before_ > 0 && is_author_alone(lines_[before_].text);
    if (!seconds_.ends_lead(author ? before_ - 1 : before_)) return false;
    for (auto j = i; j < std::min(lines_.size(), i + kLinesToDestination); ++j) {
      if (lines_[j].text.empty()) return false;
      if (seconds_.ends_lead(j) || seconds_.ends_in_figure(lines_[j].text)) return true;
    }
    return false;
  }
  void open_couplet(NumberHead const& head, std::size_t line) {
    if (head.label.number == number_) return;
    close_couplet(line);
    number_ = head.label.number;
    leads_ = 0;
    titled_ = false;
    ordinal_ = 0;
    family_ = LabelFamily::dash;
    plan_.numbering.numbers.push_back(number_);
  }
  // `end`: the line of the next couplet's number.
  void close_couplet(std::size_t end) {
    if (number_ == 0) return;
    if (unlabelled_ && leads_ == 1) {
      auto const& first = plan_.plan.starts.back();
      auto const second = seconds_.second_of(first.line, first.rank.label.text_at, end);
      if (second) take_unlabelled(*second);
    }
    ++couplets_;
    if (leads_ >= 2) ++paired_;
    if (leads_ == 1) ++single_;
    number_ = 0;
  }

  void take_head(std::size_t i, NumberHead const& head) {
    bool const again = head.label.number == number_ && leads_ > 0;
    open_couplet(head, i);
    if (head.alone) {
      waiting_ = true;
      head_ = head.label;
      plan_.plan.parts[i] = LinePart::number;
      return;
    }
    ordinal_ = again && head.ordinal == 0 ? 0 : head.ordinal;
    start(i, head.label, false);
  }

  void take_sub(std::size_t i, LeadSign const& sub) {
    auto label = sub.label;
    if (waiting_ || sub.ordinal > 0) {
      label.family =
          scheme_.script == NumberScript::letters ? LabelFamily::upper : LabelFamily::digits;
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
  NumberScheme scheme_;
  NumberReader reader_;
  NumberedPlan plan_;
  SecondLeads seconds_;
  std::size_t heads_{};
  bool words_upper_{true};
  bool titled_{false};      // a title that is marked up stands behind the couplet's leads
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
  for (auto const script : {NumberScript::digits, NumberScript::roman, NumberScript::letters}) {
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
