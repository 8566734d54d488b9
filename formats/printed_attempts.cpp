#include "keydrift/formats/printed_attempts.hpp"

#include <algorithm>
#include <initializer_list>
#include <iterator>
#include <string>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_account_titles.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_ends_by_structure.hpp"
#include "keydrift/formats/printed_exact.hpp"
#include "keydrift/formats/printed_front.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_outline.hpp"
#include "keydrift/formats/printed_repairs.hpp"
#include "keydrift/formats/printed_running_heads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_tail.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_titles_behind.hpp"

namespace keydrift::printed {
namespace {

// A reading has to be better by this share of the leads than one tried before it, and by two leads
// at least: a misprint or two must not decide how a key is read.
constexpr std::int64_t kMarginDivisor = 12;
constexpr std::int64_t kLeastMargin = 3;

// Lines that all readings together may take; beyond, no further one is tried.  A key of 10,000
// lines may be read in twenty ways.
constexpr std::size_t kMostLinesRead = 200'000;

std::int64_t margin(Attempt const& a, Attempt const& b) {
  auto const leads = std::max(a.judgement.leads, b.judgement.leads);
  return std::max(kLeastMargin, static_cast<std::int64_t>(leads) / kMarginDivisor);
}

class AttemptReader {
 public:
  AttemptReader(DecodedText const& text, std::vector<SourceLine> const& lines)
      : text_{text}, lines_{lines}, numbering_{decide_numbering(lines)} {
    ends_ = decide_end_habits(lines, numbering_);
  }

  Attempt choose() && {
    if (auto const layout = declared_layout(lines_)) return as_declared(*layout);
    try_numbers();
    bool const marked = std::any_of(lines_.begin(), lines_.end(), [](SourceLine const& line) {
      return line.markup.role == LineRole::lead;
    });
    if (!marked && !numbers_tell()) try_accounts();
    if (!is_settled() && !marked) try_number_plans();
    if (!is_settled()) try_loose_ends();
    if (!is_settled() && !marked && (!numbers_tell() || is_lopsided())) try_paragraphs();
    if (!is_settled() && !numbers_tell() && !marked) {
      try_nested_numbers();
      try_decimals();
      try_cells();
      try_unlabelled_rivals();
      try_outlines();
    }
    bool const second_fails_less =
        second_ && (!failed_ || second_->judgement.points() > failed_->judgement.points());
    if (best_->read->sorted.leads.empty() && second_fails_less) failed_ = std::move(second_);
    if (best_->read->sorted.leads.empty() && failed_) {
      failed_->refused = true;
      return std::move(*failed_);
    }
    // Other readings were mended when they were offered.
    bool const accounts = !best_->read->sorted.names.empty();
    if (accounts && !best_->judgement.is_faultless()) take_structure_at_its_word(*best_);
    report_close_call();
    if (auto without = without_strays(*best_)) best_ = *std::move(without);
    return std::move(*best_);
  }

  Attempt as_planned(NumberedPlan found) && {
    try_layouts(read(std::move(found.numbering), std::move(found.plan)),
                {Layout::parallel, Layout::indented});
    return std::move(*best_);
  }

 private:
  using Leads = std::shared_ptr<LeadsRead>;

  // The front matter says how to take the labels: there is nothing to choose.
  [[nodiscard]] Attempt as_declared(Layout layout) const {
    Attempt attempt{read(exact_numbering(lines_), std::nullopt), {}, {}};
    auto& sorted = attempt.read->sorted;
    if (!sorted.leads.empty())
      attempt.grouping = group_exact(key_text(*attempt.read), sorted, layout);
    return attempt;
  }

  // The best reading is beyond doubt and leaves no outline of letters unread, in which each rival
  // answers another lead.
  [[nodiscard]] bool is_settled() const {
    return best_->judgement.is_beyond_doubt() && best_->judgement.leads >= lettered_rivals() * 2;
  }
  // Lines that begin with "a'", "aa)" or "**" and a capital, which answer leads of an outline.
  [[nodiscard]] std::size_t lettered_rivals() const {
    if (lettered_rivals_) return *lettered_rivals_;
    lettered_rivals_ = static_cast<std::size_t>(
        std::count_if(lines_.begin(), lines_.end(), [](SourceLine const& line) {
          auto const first = code_point_at(line.text, 0).value;
          if (first == 0 || is_digit(first) || is_dash(first)) return false;
          auto const ranks = read_rank_labels(line.text);
          return !ranks.empty() && ranks.front().repeats > 0 &&
                 starts_with_upper(line.text.substr(ranks.front().label.text_at));
        }));
    return *lettered_rivals_;
  }

  // Many leads lead to couplets by their numbers and most find one: whatever is amiss is damage,
  // and no other layout.
  [[nodiscard]] bool numbers_tell() const {
    auto const& reads = best_->read->reads;
    auto const numbered = static_cast<std::size_t>(std::count_if(
        reads.begin(), reads.end(),
        [](ReadLead const& read) { return read.to.form == DestinationForm::couplet; }));
    return !reads.empty() && best_->grouping.layout == Layout::parallel &&
           numbered * 4 >= reads.size() && best_->judgement.hangs_together() &&
           best_->judgement.strays * 5 <= reads.size();
  }

  [[nodiscard]] bool is_spent() const { return lines_read_ >= kMostLinesRead; }

  [[nodiscard]] KeyText key_text(LeadsRead const& read) const {
    return {text_.name, text_.text, lines_, read.numbering};
  }

  // The first line that bears a label, or is marked up: where the key begins at the latest.
  [[nodiscard]] std::size_t first_labelled(LeadsRead const& read) const {
    if (read.plan) return read.plan->starts.front().line;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].markup.role != LineRole::told_by_text) return i;
      auto const label = read.numbering.label_of(lines_[i]);
      if (label && !label->is_dash()) return i;
    }
    return lines_.size();
  }

  // "A, flower. B, fruit."
  [[nodiscard]] static bool lists_letters(std::string_view text) {
    auto const letter = code_point_at(text, 0);
    if (!is_letter(letter.value) || !text.substr(letter.length).starts_with(", ")) return false;
    auto const next = text.find_first_of(".;", letter.length);
    if (next == std::string_view::npos || has_row_of_dots(text)) return false;
    auto const second = code_point_at(text, skip_blanks(text, next + 1));
    return is_letter(second.value) &&
           text.substr(skip_blanks(text, next + 1) + second.length).starts_with(", ");
  }

  // The lines, those emptied that stand at the head of a page: no lead begins there.
  [[nodiscard]] std::vector<SourceLine> without_running_heads() const {
    auto body = lines_;
    auto const heads = find_running_heads(lines_, numbering_);
    bool above = true;  // of the file's matter that is no key
    for (std::size_t i = 0; i < body.size(); ++i) {
      above = above && (lines_[i].is_no_lead || lines_[i].text.empty());
      auto const& text = lines_[i].text;
      bool const page = is_page_number(text) && is_dash(code_point_at(text, 0).value);
      bool const title = lines_[i].is_title && lines_[i].is_no_lead;
      // "* Known from the female only."
      bool const note = lines_[i].is_no_lead && text.starts_with('*') && !lines_[i].goes_on;
      if (lines_[i].told && !lines_[i].is_no_lead) continue;  // a couplet's number on its own line
      // "A, flower. B, fruit." beneath "Fig. 12. Ausella busa."
      bool const legend = i > 0 && starts_caption(lines_[i - 1].text) && lists_letters(text);
      if (above || heads[i] || page || title || note || legend) body[i].clear();
    }
    return body;
  }

  // The same, and those that title an account of a species behind the key.
  [[nodiscard]] std::vector<SourceLine> const& without_heads() {
    if (!body_.empty()) return body_;
    body_ = without_running_heads();
    auto const titles = find_account_titles(lines_, numbering_);
    for (std::size_t i = 0; i < body_.size(); ++i) {
      if (titles[i]) body_[i].clear();
    }
    return body_;
  }

  [[nodiscard]] Leads read(Numbering numbering, std::optional<LeadPlan> plan) const {
    return read(lines_, std::move(numbering), std::move(plan));
  }
  [[nodiscard]] Leads read(std::vector<SourceLine> const& lines, Numbering numbering,
                           std::optional<LeadPlan> plan) const {
    lines_read_ += lines.size();
    auto read = std::make_shared<LeadsRead>();
    bool const loose = numbering.ends.loose;
    read->numbering = std::move(numbering);
    read->numbering.ends = ends_;
    read->numbering.ends.loose = loose;
    read->plan = std::move(plan);
    read->edition.name = text_.name;
    auto accounts = read_front_matter(lines, first_labelled(*read), read->edition, read->findings);
    auto const first_line = accounts.size();
    read->sorted = sort_lines(lines, read->numbering, first_line, std::move(accounts),
                              read->plan ? &*read->plan : nullptr);
    leave_titles_behind(lines, read->numbering, read->sorted);
    read->reads = read_leads(key_text(*read), read->sorted, read->findings);
    return read;
  }

  void offer(Leads const& read, Grouping grouping) {
    Attempt attempt{read, std::move(grouping), {}};
    attempt.judgement = judge(key_text(*read), attempt.grouping, read->sorted, read->reads);
    if (!attempt.judgement.is_faultless()) mend_destinations(attempt);
    if (!attempt.judgement.is_faultless()) take_structure_at_its_word(attempt);
    if (!best_) {
      best_ = std::move(attempt);
      return;
    }
    // What numbers do not tell has to be told by everything else.
    bool const outline = attempt.grouping.layout == Layout::outline ||
                         attempt.grouping.layout == Layout::by_indentation ||
                         attempt.grouping.layout == Layout::by_order;
    if (outline && attempt.judgement.sound * 3 < attempt.judgement.leads * 2) {
      if (!failed_ || attempt.judgement.points() > failed_->judgement.points()) {
        failed_ = std::move(attempt);
      }
      return;
    }
    if (attempt.grouping.layout != Layout::parallel && !is_nested(*attempt.read) &&
        !attempt.judgement.is_faultless()) {
      return;
    }
    bool const without_labels = attempt.grouping.layout == Layout::by_indentation ||
                                attempt.grouping.layout == Layout::by_order;
    if (without_labels && labels_tell(*best_, attempt)) return;
    if (is_list_beside(*best_, attempt)) return;
    if (outdoes(attempt, *best_) && best_->grouping.layout == Layout::parallel) {
      // "214 Views" / "3 Citations" around a key that is read well are no reason to read another.
      if (auto without = without_strays(*best_)) best_ = *std::move(without);
    }
    if (outdoes(attempt, *best_)) {
      second_ = std::move(best_);
      best_ = std::move(attempt);
    } else if (!second_ || attempt.judgement.points() > second_->judgement.points()) {
      second_ = std::move(attempt);
    }
  }

  [[nodiscard]] static bool outdoes(Attempt const& attempt, Attempt const& best) {
    auto const ahead = attempt.judgement.points() - best.judgement.points();
    return ahead >= margin(attempt, best) || (ahead > 0 && reads_all_and_more(attempt, best));
  }

  // Every lead of the one has a label, a rival and a destination, or nearly every one a label that
  // names its rival: what the other finds besides are lines around the key.
  [[nodiscard]] static bool labels_tell(Attempt const& one, Attempt const& other) {
    constexpr std::size_t kMany = 20;  // leads that are no list within something else
    auto const& judgement = one.judgement;
    bool const whole = judgement.sound == judgement.leads && judgement.orphans == 0 &&
                       (judgement.leads >= kMany || judgement.leads * 2 > other.judgement.leads);
    bool const serial = one.grouping.layout == Layout::serial &&
                        judgement.sound * 5 >= judgement.leads * 4 &&
                        !other.judgement.is_faultless();
    auto const& leads = one.read->sorted.leads;
    return (whole || serial) && std::none_of(leads.begin(), leads.end(),
                                             [](RawLead const& lead) { return lead.unlabelled; });
  }

  // The other one is a list that stands in the same file, as of the species with their maps.
  [[nodiscard]] static bool is_list_beside(Attempt const& one, Attempt const& other) {
    constexpr std::size_t kFewest = 3;  // couplets of a key
    return other.judgement.is_list && one.grouping.couplets.size() >= kFewest &&
           one.judgement.hangs_together();
  }

  // The attempt has every lead of the other and some between them, and nothing is amiss.
  [[nodiscard]] static bool reads_all_and_more(Attempt const& attempt, Attempt const& other) {
    if (!attempt.judgement.is_faultless()) return false;
    auto const& leads = attempt.read->sorted.leads;
    auto const& others = other.read->sorted.leads;
    if (leads.size() <= others.size()) return false;
    std::unordered_set<std::uint32_t> lines;
    for (auto const& lead : leads) lines.insert(lead.line);
    return std::all_of(others.begin(), others.end(),
                       [&lines](RawLead const& lead) { return lines.contains(lead.line); });
  }

  // Cuts the leads again by what their places among the couplets tell, if all hangs together better
  // then.
  void take_structure_at_its_word(Attempt& attempt) const {
    auto read = std::make_shared<LeadsRead>(*attempt.read);
    auto const key = key_text(*read);
    if (!end_by_structure(key, read->sorted, attempt.grouping, read->reads, read->findings)) return;
    auto const judgement = judge(key, attempt.grouping, read->sorted, read->reads);
    bool const sound = judgement.hangs_together();
    if (!sound || judgement.points() <= attempt.judgement.points()) return;
    attempt.read = std::move(read);
    attempt.judgement = judgement;
  }

  // Reads damaged numbers at ends as those that the couplets call for: no other layout is told by
  // them.
  void mend_destinations(Attempt& attempt) const {
    auto read = std::make_shared<LeadsRead>(*attempt.read);
    auto const key = key_text(*read);
    if (!repair_destinations(key, read->sorted, attempt.grouping, read->reads, read->findings))
      return;
    auto judgement = judge(key, attempt.grouping, read->sorted, read->reads);
    if (judgement.points() <= attempt.judgement.points()) return;
    judgement.mended = !attempt.judgement.is_beyond_doubt();
    attempt.read = std::move(read);
    attempt.judgement = judgement;
  }

  // Leads with couplets beneath them print neither leaders nor destination: about half of all in a
  // nested key.
  [[nodiscard]] static bool is_nested(LeadsRead const& read) {
    auto const open =
        static_cast<std::size_t>(std::count_if(read.reads.begin(), read.reads.end(), is_open));
    return open * 5 >= read.reads.size();
  }

  void try_layouts(Leads const& read, std::initializer_list<Layout> layouts) {
    if (read->sorted.leads.empty()) {
      if (!best_) best_ = Attempt{read, {}, {}};
      return;
    }
    for (auto const layout : layouts) {
      if (layout == Layout::serial && !may_be_serial(key_text(*read), read->sorted, read->reads)) {
        continue;
      }
      offer(read, group_leads(key_text(*read), read->sorted, read->reads, layout));
    }
  }

  // The layout that labels and destinations speak for goes first and has the margin for it.
  void try_numbers() {
    auto const leads = read(numbering_, std::nullopt);
    if (leads->sorted.leads.empty()) return try_layouts(leads, {});
    auto const likely = likely_layout(key_text(*leads), leads->sorted, leads->reads);
    try_layouts(leads, {likely});
    if (is_settled() || numbers_tell()) return;
    for (auto const other : {Layout::parallel, Layout::indented, Layout::serial}) {
      if (other != likely) try_layouts(leads, {other});
    }
  }

  // Couplets stand beneath their leads: labels may be indented at will, and no number at a lead's
  // end leads anywhere.
  void try_nested_numbers() {
    if (is_spent()) return;
    auto numbering = numbering_;
    numbering.label_indent = numbering.dash_indent = kNoLimit;
    numbering.numbers.clear();
    try_layouts(read(std::move(numbering), std::nullopt), {Layout::indented, Layout::serial});
  }

  // 1.1 and 1.2 are the leads of couplet 1, where leads lead to numbers.
  void try_decimals() {
    if (is_spent()) return;
    auto numbering = decide_numbering(lines_, DecimalLabels::leads);
    if (!numbering.decimals_are_leads) return;
    try_layouts(read(std::move(numbering), std::nullopt), {Layout::parallel, Layout::indented});
  }

  void try_cells() {
    if (is_spent()) return;
    auto plan = plan_by_cells(lines_);
    if (!plan) return;
    Numbering numbering;
    for (auto const& start : plan->starts) numbering.numbers.push_back(start.rank.label.number);
    std::sort(numbering.numbers.begin(), numbering.numbers.end());
    try_layouts(read(std::move(numbering), std::move(plan)), {Layout::parallel, Layout::indented});
  }

  void try_number_plans() {
    if (is_spent()) return;
    for (auto& found : plans_by_numbers(without_heads())) {
      if (is_spent()) return;
      auto const leads = read(std::move(found.numbering), std::move(found.plan));
      try_layouts(leads, {Layout::parallel, Layout::indented});
    }
  }

  // Couplets stand together and leads end in epithets or genera that nothing sets apart.
  void try_loose_ends() {
    if (is_spent()) return;
    if (best_->read->sorted.leads.empty()) return;
    auto numbering = best_->read->numbering;
    auto plan = best_->read->plan;
    numbering.ends.loose = true;
    try_layouts(read(std::move(numbering), std::move(plan)), {Layout::parallel});
    numbering = numbering_;
    numbering.ends.loose = true;
    try_layouts(read(std::move(numbering), std::nullopt), {Layout::parallel});
    for (auto& found : plans_by_numbers(without_heads())) {
      if (is_spent()) return;
      found.numbering.ends.loose = true;
      try_layouts(read(std::move(found.numbering), std::move(found.plan)), {Layout::parallel});
    }
  }

  // Only the first lead of a couplet bears a label; each is a paragraph.
  void try_paragraphs() {
    for (auto const borders : {LeadBorders::blanks, LeadBorders::ends, LeadBorders::indents}) {
      if (is_spent()) return;
      auto const found = plan_by_paragraphs(without_heads(), borders);
      if (!found) continue;
      for (bool const loose : {false, true}) {
        auto numbering = found->numbering;
        numbering.ends.loose = loose;
        auto const leads = read(std::move(numbering), found->plan);
        try_layouts(leads, {Layout::parallel});
        if (std::none_of(leads->reads.begin(), leads->reads.end(), is_open)) break;
      }
    }
  }

  // Some couplet has one lead only.
  [[nodiscard]] bool is_lopsided() const {
    auto const& couplets = best_->grouping.couplets;
    return std::any_of(couplets.begin(), couplets.end(),
                       [](RawCouplet const& couplet) { return couplet.member_count == 1; });
  }

  void try_unlabelled_rivals() {
    if (is_spent()) return;
    auto plan = plan_by_words(lines_, numbering_);
    if (!plan) return;
    try_layouts(read(numbering_, std::move(plan)), {Layout::parallel, Layout::indented});
  }

  // Numbered accounts beneath leads are clear signs: that reading has to be no worse than others.
  void try_accounts() {
    if (is_spent()) return;
    if (!may_have_accounts(lines_)) return;
    auto const body = without_running_heads();
    Numbering unnumbered;
    unnumbered.label_indent = unnumbered.dash_indent = kNoLimit;
    if (auto plan = plan_by_labels_and_accounts(body); plan && accounts_tell(*plan)) {
      try_accounts_beneath(read(unnumbered, std::move(plan)));
    }
    if (!best_->read->sorted.names.empty()) return;
    if (auto plan = plan_by_indentation_and_accounts(body); plan && accounts_tell(*plan)) {
      try_outline(read(unnumbered, std::move(plan)));
    }
  }

  // Most accounts tell what leads lead to: no line above ends in their species.
  [[nodiscard]] bool accounts_tell(LeadPlan const& plan) const {
    auto const behind = static_cast<std::size_t>(
        std::count_if(plan.accounts.begin(), plan.accounts.end(),
                      [this](AccountName const& name) { return lines_[name.line].is_no_lead; }));
    return behind * 2 <= plan.accounts.size();
  }

  void try_accounts_beneath(Leads const& leads) {
    if (leads->sorted.leads.empty()) return;  // others took the lines of the plan
    auto const& plan = *leads->plan;
    bool const numbered = std::count_if(plan.accounts.begin(), plan.accounts.end(),
                                        [](AccountName const& name) { return name.numbered; }) >= 2;
    bool again = false;  // with other rivals
    for (auto const rivals : {Rivals::by_rank, Rivals::counted, Rivals::repeated}) {
      auto grouping = group_by_ranks(key_text(*leads), leads->sorted, leads->reads, plan, rivals);
      if (!numbered) {
        offer(leads, std::move(grouping));
        continue;
      }
      Attempt attempt{leads, std::move(grouping), {}};
      attempt.judgement = judge(key_text(*leads), attempt.grouping, leads->sorted, leads->reads);
      bool const sound = attempt.judgement.hangs_together();
      auto const ahead = attempt.judgement.points() - best_->judgement.points();
      if (!sound || (again ? ahead <= 0 : ahead < 0)) continue;
      best_ = std::move(attempt);
      again = true;
    }
  }

  void try_outlines() {
    if (is_spent()) return;
    Numbering unnumbered;
    unnumbered.label_indent = unnumbered.dash_indent = kNoLimit;
    if (auto plan = plan_by_labels(without_heads())) try_outline(read(unnumbered, std::move(plan)));
    if (auto plan = plan_by_labels_and_leaves(without_heads(), unnumbered)) {
      try_outline(read(unnumbered, std::move(plan)));
    }
    if (auto plan = plan_by_indentation(without_heads(), unnumbered)) {
      try_outline(read(unnumbered, std::move(plan)));
    }
  }

  void try_outline(Leads const& read) {
    if (read->sorted.leads.empty()) return;
    auto const key = key_text(*read);
    auto const& plan = *read->plan;
    bool const labelled = std::any_of(plan.starts.begin(), plan.starts.end(),
                                      [](LeadStart const& start) { return !start.unlabelled; });
    if (labelled) {
      for (auto const rivals : {Rivals::by_rank, Rivals::counted, Rivals::repeated}) {
        offer(read, group_by_ranks(key, read->sorted, read->reads, plan, rivals));
      }
    }
    auto grouping = group_by_indentation(key, read->sorted, read->reads, plan);
    auto evened = labelled ? std::nullopt
                           : group_by_indentation_and_ends(key, read->sorted, read->reads, plan);
    if (evened) {
      auto const points = [&](Grouping const& one) {
        return judge(key, one, read->sorted, read->reads).points();
      };
      if (points(*evened) >= points(grouping)) grouping = *std::move(evened);
    }
    // One couplet of all leads is a list, not a key.
    if (grouping.couplets.size() > 1) offer(read, std::move(grouping));
    if (labelled) return;
    if (auto ordered = group_by_order(key, read->sorted, read->reads, plan)) {
      offer(read, *std::move(ordered));
    }
  }

  // --- around the key --------------------------------------------------------------------------

  // The attempt without leads that belong with no others: numbered lines of tables, lists and
  // captions, and of outlines what stands behind text.  An outline is read anew, for its plan hangs
  // on all its lines.
  [[nodiscard]] std::optional<Attempt> without_strays(Attempt const& attempt) const {
    auto const layout = attempt.grouping.layout;
    bool const numbered =
        layout == Layout::parallel || layout == Layout::indented || layout == Layout::serial;
    if (lines_.empty() || !may_have_strays_) return std::nullopt;
    auto const strays =
        numbered ? strays_around(attempt, lines_) : strays_behind_text(attempt, lines_);
    if (strays.empty()) return std::nullopt;
    auto lines = lines_;
    for (auto const lead : strays) take_off(attempt, lead, lines);
    if (!numbered) {
      AttemptReader reader{text_, lines};
      reader.may_have_strays_ = false;
      auto other = std::move(reader).choose();
      bool const same = !other.refused && leads_are_same(attempt, other, strays);
      return same ? std::optional{std::move(other)} : std::nullopt;
    }
    auto plan = attempt.read->plan;
    if (plan) take_out(*plan, lines);
    // The strays may have been all that told how leads end.
    auto const holds = [&](std::optional<Attempt> const& one) {
      return one && one->judgement.points() + static_cast<std::int64_t>(strays.size()) >=
                        attempt.judgement.points();
    };
    auto without = read_without(attempt, strays.size(), lines, attempt.read->numbering, plan);
    if (!holds(without) && !attempt.read->numbering.ends.loose) {
      auto numbering = attempt.read->numbering;
      numbering.ends.loose = true;
      auto loose = read_without(attempt, strays.size(), lines, numbering, plan);
      if (holds(loose)) without = std::move(loose);
    }
    if (!without) return std::nullopt;  // others were read in their stead
    auto const& findings = attempt.read->findings;
    std::copy_if(findings.begin(), findings.end(), std::back_inserter(without->read->findings),
                 [](Finding const& one) { return one.code == "ambiguous-layout"; });
    return without;
  }

  // Lets the lead's lines begin none: "214 Views" / "3 Citations".
  static void take_off(Attempt const& attempt, std::uint32_t lead, std::vector<SourceLine>& lines) {
    auto const& sorted = attempt.read->sorted;
    auto i = sorted.leads[lead].line;
    lines[i].is_no_lead = true;
    auto const end = lead + 1 < sorted.leads.size() ? sorted.leads[lead + 1].line : lines.size();
    while (++i < end && sorted.accounts[i].kind == LineKind::continuation) {
      lines[i].is_no_lead = true;
    }
  }

  // The attempt read again from `lines`, of which `strays` leads are taken off; nullopt where other
  // leads are read then.
  [[nodiscard]] std::optional<Attempt> read_without(Attempt const& attempt, std::size_t strays,
                                                    std::vector<SourceLine> const& lines,
                                                    Numbering const& numbering,
                                                    std::optional<LeadPlan> const& plan) const {
    Attempt without{read(lines, numbering, plan), {}, {}};
    auto const& read = *without.read;
    if (read.sorted.leads.size() + strays != attempt.read->sorted.leads.size()) return std::nullopt;
    without.grouping =
        group_leads(key_text(read), read.sorted, read.reads, attempt.grouping.layout);
    without.judgement = judge(key_text(read), without.grouping, read.sorted, read.reads);
    if (!without.judgement.is_faultless()) take_structure_at_its_word(without);
    return without;
  }

  // The other one has every lead but the strays, which ascend, and none besides.
  [[nodiscard]] static bool leads_are_same(Attempt const& attempt, Attempt const& other,
                                           std::vector<std::uint32_t> const& strays) {
    auto const& leads = attempt.read->sorted.leads;
    auto const& others = other.read->sorted.leads;
    if (others.size() + strays.size() != leads.size()) return false;
    std::size_t o = 0;
    for (std::uint32_t lead = 0; lead < leads.size(); ++lead) {
      if (std::binary_search(strays.begin(), strays.end(), lead)) continue;
      if (others[o++].line != leads[lead].line) return false;
    }
    return true;
  }

  // --- close calls -----------------------------------------------------------------------------

  // The line that lead i begins on, and the line that its couplet begins on.
  [[nodiscard]] static std::vector<std::pair<std::uint32_t, std::uint32_t>> rivals_by_line(
      Attempt const& attempt) {
    std::vector<std::pair<std::uint32_t, std::uint32_t>> lines;
    for (auto const& couplet : attempt.grouping.couplets) {
      auto const* members = &attempt.grouping.members[couplet.first_member];
      for (std::uint32_t m = 0; m < couplet.member_count; ++m) {
        lines.emplace_back(attempt.read->sorted.leads[members[m]].line,
                           attempt.read->sorted.leads[members[0]].line);
      }
    }
    std::sort(lines.begin(), lines.end());
    return lines;
  }

  void report_close_call() {
    if (!second_ || best_->judgement.is_beyond_doubt()) return;
    if (best_->read->sorted.leads.empty()) return;  // refused
    if (best_->judgement.points() - second_->judgement.points() > margin(*best_, *second_)) return;
    if (second_->judgement.points() <= 0) return;
    auto const ours = rivals_by_line(*best_);
    auto const theirs = rivals_by_line(*second_);
    auto const size = std::min(ours.size(), theirs.size());
    std::size_t differs = 0;
    while (differs < size && ours[differs] == theirs[differs]) ++differs;
    if (differs == ours.size() && differs == theirs.size()) return;
    auto const& line = lines_[(differs < ours.size() ? ours[differs] : theirs[differs]).first];
    Finding finding;
    finding.code = "ambiguous-layout";
    finding.severity = Severity::information;
    finding.file = text_.name;
    finding.place = place_in(line, line.begin, line.begin + line.text.size());
    finding.printed = std::string{start_of(line.text, 80)};
    finding.message = "the key was read as " + described(*best_) + "; " + described(*second_) +
                      " comes close, and differs from here on";
    finding.remedy = "see with --explain whether the couplets are the right ones";
    best_->read->findings.push_back(std::move(finding));
  }

  [[nodiscard]] static std::string described(Attempt const& attempt) {
    return std::string{to_word(attempt.grouping.layout)} + " (" +
           std::to_string(attempt.judgement.sound) + " of " +
           std::to_string(attempt.judgement.leads) + " leads have a rival and a destination)";
  }

  static constexpr std::uint32_t kNoLimit = 1U << 20U;  // columns

  DecodedText const& text_;
  std::vector<SourceLine> const& lines_;
  Numbering numbering_;
  std::vector<SourceLine> body_;  // empty until it is asked for
  EndHabits ends_;
  mutable std::size_t lines_read_{};                    // by all readings so far
  mutable std::optional<std::size_t> lettered_rivals_;  // counted when first asked for
  std::optional<Attempt> best_;
  std::optional<Attempt> second_;
  std::optional<Attempt> failed_;  // the best outline that hangs together too badly
  bool may_have_strays_{true};     // around the key; false where they have been taken off
};

}  // namespace

Attempt choose_reading(DecodedText const& text, std::vector<SourceLine> const& lines) {
  return AttemptReader{text, lines}.choose();
}

Attempt read_as_planned(DecodedText const& text, std::vector<SourceLine> const& lines,
                        NumberedPlan found) {
  return AttemptReader{text, lines}.as_planned(std::move(found));
}

bool is_clearly_better(Attempt const& one, Attempt const& other) {
  return one.judgement.points() - other.judgement.points() >= margin(one, other);
}

std::string_view to_word(Layout layout) {
  switch (layout) {
    case Layout::parallel:
      return "a parallel key";
    case Layout::indented:
      return "an indented key";
    case Layout::serial:
      return "a serial key";
    case Layout::outline:
      return "an outline with ranks told by labels";
    case Layout::by_indentation:
      return "an outline by indentation";
    case Layout::by_order:
      return "an outline without indentation";
  }
  return "a key";
}

}  // namespace keydrift::printed
