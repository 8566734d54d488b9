// Where leads begin in outlines without labels, ranks told by indentation, whose leads lead to the
// numbered accounts beneath them.

#include <algorithm>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_title_genus.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestLeveledAccounts = 3;  // leads with accounts; fewer are no habit
constexpr std::size_t kLongestLead = 4;            // lines; a longer paragraph is prose

// Blank lines have to stand before each account and between it and the next lead: nothing else
// tells an account's lines from leads.
class LevelPlanner {
 public:
  // `from`: the line with which the key begins at the earliest.
  LevelPlanner(std::vector<SourceLine> const& lines, std::size_t from)
      : lines_{lines}, from_{from} {}

  std::optional<LeadPlan> plan() && {
    plan_.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    plan_.parts.assign(lines_.size(), LinePart::other);
    for (std::size_t i = from_; i < lines_.size();) {
      auto end = i;
      while (end < lines_.size() && !lines_[end].text.empty()) ++end;
      if (end > i && !is_furniture(i, end)) take({i, end});
      i = end + 1;
    }
    if (leaves_ < kFewestLeveledAccounts) return std::nullopt;
    for (std::size_t s = 0; s < plan_.starts.size(); ++s) {
      plan_.start_at[plan_.starts[s].line] = static_cast<std::uint32_t>(s);
    }
    return std::move(plan_);
  }

 private:
  // Lines [begin, end) between blank lines.
  struct Paragraph {
    std::size_t begin{};
    std::size_t end{};
  };

  [[nodiscard]] bool is_furniture(std::size_t begin, std::size_t end) const {
    return end == begin + 1 && is_page_furniture(lines_[begin].text);
  }

  void take(Paragraph paragraph) {
    auto const head = read_account_head(lines_[paragraph.begin].text);
    bool const account = head && carries_on(*head, last_) && (in_account_ || !above_.empty());
    if (account) return take_account(paragraph, *head);
    if (closed_) return;
    if (in_account_ && (titles_genus(lines_[paragraph.begin].text) || !answers(paragraph))) {
      return go_on(paragraph);
    }
    in_account_ = false;
    if (!may_be_leads(paragraph)) {
      above_.clear();
      return;
    }
    above_.push_back(paragraph);
  }

  void take_account(Paragraph paragraph, AccountHead const& head) {
    if (!in_account_) {
      begin_leads();
      ++leaves_;
    }
    in_account_ = true;
    last_ = head.number;
    plan_.accounts.push_back(
        {static_cast<std::uint32_t>(paragraph.begin), head.name_begin, head.name_end, true});
    mark(paragraph);
  }

  // A further paragraph of the account, or what stands behind all of them.
  void go_on(Paragraph paragraph) {
    if (titles_genus(lines_[paragraph.begin].text)) {
      closed_ = true;
    } else {
      mark(paragraph);
    }
  }

  void mark(Paragraph paragraph) {
    std::fill(plan_.parts.begin() + static_cast<std::ptrdiff_t>(paragraph.begin),
              plan_.parts.begin() + static_cast<std::ptrdiff_t>(paragraph.end), LinePart::account);
  }

  // Behind an account only a lead may stand that is set as a lead before it.
  [[nodiscard]] bool answers(Paragraph paragraph) const {
    return may_be_leads(paragraph) && std::find(levels_.begin(), levels_.end(),
                                                lines_[paragraph.begin].indent) != levels_.end();
  }

  [[nodiscard]] bool may_be_leads(Paragraph paragraph) const {
    auto const text = lines_[paragraph.begin].text;
    return paragraph.end - paragraph.begin <= kLongestLead &&
           is_upper(code_point_at(text, 0).value) && !starts_note(text) && !starts_caption(text) &&
           !titles_genus(text) && !is_in_capitals(without_end(words_of(text, 1).front()), 4);
  }

  // The paragraphs directly above the account: from the last one up, each set less far in.
  void begin_leads() {
    std::vector<std::size_t> starts;
    for (auto const& paragraph : above_) {
      for (auto i = paragraph.begin; i < paragraph.end; ++i) {
        if (i == paragraph.begin || begins_lead(i)) starts.push_back(i);
      }
    }
    above_.clear();
    auto first = starts.size();
    while (first > 0 && (first == starts.size() ||
                         lines_[starts[first - 1]].indent < lines_[starts[first]].indent)) {
      --first;
    }
    for (; first < starts.size(); ++first) begin(starts[first]);
  }

  // Within a paragraph: set farther in than the line before, where a sentence ends.
  [[nodiscard]] bool begins_lead(std::size_t i) const {
    auto const last = lines_[i - 1].text.back();
    return lines_[i].indent > lines_[i - 1].indent && (last == '.' || last == ':' || last == ';') &&
           is_upper(code_point_at(lines_[i].text, 0).value);
  }

  void begin(std::size_t line) {
    LeadStart start;
    start.line = static_cast<std::uint32_t>(line);
    start.rank.alphabet = Alphabet::dash;
    start.rank.label.family = LabelFamily::dash;
    start.unlabelled = true;
    plan_.starts.push_back(start);
    while (!levels_.empty() && levels_.back() >= lines_[line].indent) levels_.pop_back();
    levels_.push_back(lines_[line].indent);
  }

  std::vector<SourceLine> const& lines_;
  std::size_t from_;
  LeadPlan plan_;
  std::vector<Paragraph> above_;       // what may be leads, since the last account
  std::vector<std::uint32_t> levels_;  // indentations of the leads on the way to the last one
  bool in_account_{false};             // the last paragraph belongs to one
  bool closed_{false};                 // another genus follows
  std::uint32_t last_{};               // number of the last account
  std::size_t leaves_{};
};

}  // namespace

std::optional<LeadPlan> plan_by_indentation_and_accounts(std::vector<SourceLine> const& lines) {
  constexpr int kMostTries = 4;
  std::size_t from = 0;
  std::optional<LeadPlan> plan;
  for (int tries = 0; tries < kMostTries; ++tries) {
    plan = LevelPlanner{lines, from}.plan();
    if (!plan) break;
    // What stands above the first lead, and farther out than all others, describes the genus.
    auto const& starts = plan->starts;
    auto const first = lines[starts.front().line].indent;
    bool const alone = std::all_of(starts.begin() + 1, starts.end(), [&](LeadStart const& start) {
      return lines[start.line].indent > first;
    });
    if (!alone || starts.size() < 2) break;
    from = starts.front().line + 1;
  }
  return plan;
}

}  // namespace keydrift::printed
