// Where leads begin in a key without labels.

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <string>

#include "keydrift/formats/printed_breaks.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_indent_course.hpp"
#include "keydrift/formats/printed_indent_ends.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLeastLed = 2;  // lines that end in a destination; fewer make no key
constexpr std::size_t kLongestTitleAbove = 160;  // bytes; longer text is no heading

class IndentPlanner {
 public:
  IndentPlanner(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines},
        breaks_{lines},
        found_{find_indent_ends(lines, numbering)},
        marks_(lines.size(), Mark::other) {}

  std::optional<LeadPlan> plan() && {
    if (found_.led.size() < kLeastLed) return std::nullopt;
    apart_ = are_leads_apart();
    begin_ = begin_of_key(found_.led.front());
    lower_starts_ = leads_start_lower();
    flat_ = std::all_of(lines_.begin() + static_cast<std::ptrdiff_t>(begin_),
                        lines_.begin() + static_cast<std::ptrdiff_t>(found_.led.back()),
                        [](SourceLine const& line) { return line.indent == 0; });
    LeadPlan plan;
    plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    mark_certain();
    auto const uncertain = uncertain_lines();
    settle_uncertain();
    reconsider(uncertain);
    drop_prose_before();
    for (std::size_t i = begin_; i <= found_.led.back(); ++i) {
      if (marks_[i] != Mark::start) continue;
      LeadStart start;
      start.line = static_cast<std::uint32_t>(i);
      start.rank.alphabet = Alphabet::dash;
      start.rank.label.family = LabelFamily::dash;
      start.unlabelled = true;
      plan.start_at[i] = static_cast<std::uint32_t>(plan.starts.size());
      plan.starts.push_back(start);
    }
    if (plan.starts.size() < 3 || is_labelled(plan)) return std::nullopt;
    take_bullets(plan);
    return plan;
  }

 private:
  // "• Flowers white" / "  • Leaves ovate": leaflets set one bullet before every lead.
  void take_bullets(LeadPlan& plan) const {
    auto const bullet_at = [this](LeadStart const& start) -> std::size_t {
      auto const text = lines_[start.line].text;
      auto const sign = code_point_at(text, 0);
      bool const bullet = is_bullet(sign.value) && is_blank(code_point_at(text, sign.length).value);
      return bullet ? sign.length : 0;
    };
    bool const all = std::all_of(plan.starts.begin(), plan.starts.end(),
                                 [&](LeadStart const& start) { return bullet_at(start) > 0; });
    if (!all) return;
    for (auto& start : plan.starts) {
      auto const text = lines_[start.line].text;
      start.rank.label.printed = text.substr(0, bullet_at(start));
      start.rank.label.text_at = skip_blanks(text, bullet_at(start));
      start.unlabelled = false;
    }
  }

  // Too many leads begin with what looks like a label for the key to have none.
  [[nodiscard]] bool is_labelled(LeadPlan const& plan) const {
    std::size_t labelled = 0;
    for (auto const& start : plan.starts) {
      auto const readings = read_rank_labels(lines_[start.line].text);
      bool const sure = std::any_of(readings.begin(), readings.end(), [](RankLabel const& rank) {
        return rank.label.end != LabelEnd::none || rank.repeats > 0 || rank.label.is_dash();
      });
      if (sure) ++labelled;
    }
    return labelled * 4 > plan.starts.size();
  }

  enum class Mark : std::uint8_t { other, start, rest, uncertain };

  [[nodiscard]] bool is_blank_line(std::size_t i) const { return lines_[i].text.empty(); }

  [[nodiscard]] bool is_title(std::size_t i) const {
    auto const text = lines_[i].text;
    bool const leads = found_.ends[i];
    return !leads && text.size() <= kLongestTitleAbove && mentions_key(text);
  }

  // Blank lines stand between most lines of the key.
  [[nodiscard]] bool is_spread_out() const {
    std::size_t blank = 0;
    std::size_t filled = 0;
    for (auto i = found_.led.front(); i <= found_.led.back(); ++i)
      ++(is_blank_line(i) ? blank : filled);
    return blank * 2 > filled;
  }

  // A blank line stands behind nearly every line that ends in a destination, or behind the next,
  // where an author or the rest of the name stands.
  [[nodiscard]] bool are_leads_apart() const {
    auto const ends_paragraph = [this](std::size_t i) {
      return i + 1 >= lines_.size() || is_blank_line(i + 1);
    };
    auto const apart = std::count_if(found_.led.begin(), found_.led.end(), [&](std::size_t i) {
      return ends_paragraph(i) || (ends_paragraph(i + 1) && !found_.ends[i + 1]);
    });
    auto const alone = std::count_if(found_.led.begin(), found_.led.end(), ends_paragraph);
    return static_cast<std::size_t>(apart) * 10 >= found_.led.size() * 9 &&
           static_cast<std::size_t>(alone) * 2 >= found_.led.size();
  }

  // Paragraph by paragraph upwards, those that are set in less than all beneath them.
  [[nodiscard]] std::size_t first_ancestor(std::size_t led) const {
    auto const first_of = [this](std::size_t i) {
      while (i > 0 && !is_blank_line(i - 1)) --i;
      return i;
    };
    auto begin = first_of(led);
    auto indent = lines_[begin].indent;
    for (auto i = begin; i > 0 && indent > 0;) {
      --i;
      while (i > 0 && is_blank_line(i)) --i;
      if (is_blank_line(i) || is_title(i) || is_beside_leads(lines_[i].text)) break;
      i = first_of(i);
      if (lines_[i].indent < indent) {
        begin = i;
        indent = lines_[i].indent;
      }
    }
    return begin;
  }

  // "Corolla yellow.": words of a lead without one of its own beside them, and nothing else.
  [[nodiscard]] static bool is_plain_statement(std::string_view text) {
    constexpr std::size_t kLongest = 100;  // bytes
    auto const words = words_of(text);
    if (text.size() > kLongest || words.size() < 2) return false;
    if (!text.ends_with('.') && !text.ends_with(':')) return false;
    return is_capitalised(without_closing_marks(words.front())) &&
           std::none_of(words.begin() + 1, words.end(), [](std::string_view word) {
             auto const first = code_point_at(word, 0).value;
             // "5.", and not "3-5-celled."
             bool const number = is_digit(first) && word.ends_with('.') && is_number_only(word);
             return is_upper(first) || number || first == '(' || first == '&';
           });
  }

  // Where a text layer lost all indentation, the statements directly above are those that the first
  // lead stands beneath.
  [[nodiscard]] std::size_t first_statement(std::size_t begin) const {
    bool const flush =
        std::all_of(lines_.begin() + static_cast<std::ptrdiff_t>(begin),
                    lines_.begin() + static_cast<std::ptrdiff_t>(found_.led.back()) + 1,
                    [](SourceLine const& line) { return line.indent == 0; });
    if (!flush) return begin;
    for (auto i = begin; i-- > 0;) {
      if (is_blank_line(i)) continue;
      if (is_title(i) || is_beside_leads(lines_[i].text) || !is_plain_statement(lines_[i].text)) {
        break;
      }
      begin = i;
    }
    return begin;
  }

  // The first line of the block that the first destination ends.
  [[nodiscard]] std::size_t begin_of_key(std::size_t led) const {
    bool const spread = is_spread_out();
    if (apart_) return first_statement(first_ancestor(led));
    std::size_t begin = led;
    for (std::size_t i = led; i-- > 0;) {
      if (is_blank_line(i)) {
        bool const two = i > 0 && is_blank_line(i - 1);
        if (!spread || two) break;
        continue;
      }
      if (is_title(i) || is_beside_leads(lines_[i].text)) break;
      begin = i;
    }
    return begin;
  }

  // Does the line begin as words go on: with a small letter or a sign?
  [[nodiscard]] static bool begins_small(std::string_view text) {
    auto const c = code_point_at(text, 0).value;
    return is_lower(c) || c == '(' || c == '[' || c == ',' || c == ';' || c == '.' || c == '&';
  }

  // "… stamens 8–10; fruit" / "2-lobed, 6 mm. long", "… flowers over" / "1 in. long": a count in
  // the middle of a sentence.
  [[nodiscard]] static bool counts_on(std::string_view before, std::string_view text) {
    if (!is_letter(code_point_before(before, before.size()).value) ||
        !is_digit(code_point_at(text, 0).value)) {
      return false;
    }
    auto const label = read_label(text);
    return !label ||
           (label->end == LabelEnd::none && is_lower(code_point_at(text, label->text_at).value));
  }

  [[nodiscard]] bool leads_start_lower() const {
    std::size_t lower = 0;
    std::size_t all = 0;
    for (auto i = begin_; i < found_.led.back(); ++i) {
      if (!found_.ends[i] || is_blank_line(i + 1)) continue;
      ++all;
      if (begins_small(lines_[i + 1].text)) ++lower;
    }
    return lower * 2 > all;
  }

  // "… truncate behind (fig." / "4). ..... A. busa"
  [[nodiscard]] bool closes_bracket(std::size_t before, std::size_t i) const {
    auto const text = lines_[i].text;
    auto const bracket = text.find_first_of("()");
    return bracket != std::string_view::npos && text[bracket] == ')' &&
           leaves_bracket_open(lines_[before].text);
  }

  // "… a simple raceme," (a comma for the stop) / "    Raceme terminal   A. busa" / "    Raceme
  // lateral": the line that ends in a name has a rival that begins as it does.
  [[nodiscard]] bool is_answered_below(std::size_t i, std::size_t start) const {
    constexpr std::size_t kShortest = 3;  // bytes
    if (!found_.ends[i] || lines_[i].indent <= lines_[start].indent || i + 1 >= lines_.size()) {
      return false;
    }
    auto const word = first_word(lines_[i].text);
    return word.size() >= kShortest && lines_[i + 1].indent == lines_[i].indent &&
           first_word(lines_[i + 1].text) == word;
  }

  [[nodiscard]] static bool hangs(std::string_view text) {
    auto const c = code_point_before(text, text.size()).value;
    return c == ',' || is_dash(c) || c == '&' || c == '(' || c == 0xAD;
  }

  // "… nearly glabrous." / "      Leaves linear .... A. busa": a sentence further in that leads
  // somewhere, and less far in stands what comes next: no couplet beneath the lead above.
  [[nodiscard]] bool has_no_rival(std::size_t i, std::size_t start) const {
    constexpr std::uint32_t kUneven = 1;  // columns that rivals may stand apart
    if (!found_.ends[i] || lines_[i].indent <= lines_[start].indent) return false;
    auto next = i + 1;
    while (next < lines_.size() && (is_blank_line(next) || is_beside_leads(lines_[next].text))) {
      ++next;
    }
    return next < found_.led.back() && lines_[next].indent + kUneven < lines_[i].indent;
  }

  // "Leaves scales, pressed to the twig" above "  Cones round": a lead, whatever else it looks
  // like.
  [[nodiscard]] bool has_lines_further_in(std::size_t i) const {
    auto next = i + 1;
    while (next < lines_.size() && is_blank_line(next)) ++next;
    return next < lines_.size() && lines_[next].indent > lines_[i].indent;
  }

  // The whole line is a destination of the lead before it: a name of a genus that other leads lead
  // to, or one in capitals.
  [[nodiscard]] bool is_destination(std::size_t i, std::size_t start) const {
    auto const text = lines_[i].text;
    auto const words = words_of(text);
    if (found_.alone[i] || is_numbered_name(text) || is_numbered_epithet(text)) return true;
    if (words.size() > kWordsOfNameAtEnd) return false;
    bool const capitals =
        words.size() <= 2 && is_capitalised(words.front()) &&
        std::none_of(text.begin(), text.end(), [](char c) { return c >= 'a' && c <= 'z'; });
    if (capitals) return lines_[i].indent > lines_[start].indent;
    bool const epithet = words.size() > 1 && is_latin_epithet(without_end(words[1]));
    if (!is_latin_name(text) || (!epithet && has_lines_further_in(i))) return false;
    return is_abbreviated(words.front()) || found_.genera.contains(std::string{words.front()});
  }

  void mark_certain() {
    std::size_t start = lines_.size();   // of the lead being read
    std::size_t before = lines_.size();  // the last line with text
    bool complete = true;                // a destination has been printed
    for (auto i = begin_; i <= found_.led.back(); ++i) {
      auto const text = lines_[i].text;
      if (text.empty() || is_beside_leads(lines_[i].text) || is_title(i)) {
        if (!text.empty()) complete = true;
        continue;
      }
      bool const first = start == lines_.size();
      bool const gap = i > begin_ && is_blank_line(i - 1);
      bool const small = begins_small(text) && !lower_starts_;
      auto& mark = marks_[i];
      bool const goes_on = apart_ && !gap && !first;  // with the author: "Roe &" / "Dorn, 1968"
      if (first || (complete && !small && !goes_on)) {
        mark = Mark::start;
      } else if (small || (complete && goes_on) ||
                 (!gap && (flat_ || lines_[i].indent > lines_[start].indent) &&
                  counts_on(lines_[before].text, text)) ||
                 (!gap && (found_.hanging[before] || closes_bracket(before, i) ||
                           (hangs(lines_[before].text) && !is_answered_below(i, start)))) ||
                 (!complete && is_destination(i, start))) {
        mark = Mark::rest;
      } else if (gap || !(breaks_.forced(before, i) || has_no_rival(i, start))) {
        mark = Mark::start;
      } else {
        mark = Mark::uncertain;
      }
      if (mark == Mark::start) start = i;
      bool const answered = mark == Mark::rest && found_.hanging[before];  // leaders stood above it
      complete = found_.ends[i] || answered || (complete && mark == Mark::rest);
      before = i;
    }
  }

  // Lines that begin with a capital after a full line: leads where leads are indented so and the
  // words before have come to an end.
  void settle_uncertain() {
    std::set<std::uint32_t> levels;
    std::map<std::uint32_t, std::size_t> hangs_by;  // columns that further lines are set in by
    std::size_t start = begin_;
    std::size_t colons = 0;  // that end leads
    for (auto i = begin_; i <= found_.led.back(); ++i) {
      if (marks_[i] == Mark::start) {
        levels.insert(lines_[i].indent);
        if (i > begin_ && lines_[i - 1].text.ends_with(':')) ++colons;
        start = i;
      } else if (marks_[i] == Mark::rest && lines_[i].indent >= lines_[start].indent) {
        ++hangs_by[lines_[i].indent - lines_[start].indent];
      }
    }
    std::uint32_t hang = 0;
    std::size_t most = 0;
    for (auto const& [columns, count] : hangs_by) {
      if (count > most) {
        most = count;
        hang = columns;
      }
    }
    std::size_t before = begin_;
    start = begin_;
    for (auto i = begin_; i <= found_.led.back(); ++i) {
      if (marks_[i] == Mark::other) continue;
      if (marks_[i] == Mark::uncertain) {
        auto const end = code_point_before(lines_[before].text, lines_[before].text.size()).value;
        bool const ended = end == '.' || end == ':';
        bool const hanging = most > 0 && lines_[i].indent == lines_[start].indent + hang;
        // "… imbricate:" above the only leads that are set in so far
        bool const beneath = end == ':' && colons > 1 && lines_[i].indent > lines_[start].indent;
        bool const level = beneath || levels.contains(lines_[i].indent);
        marks_[i] = level && (ended || !hanging) ? Mark::start : Mark::rest;
      }
      if (marks_[i] == Mark::start) start = i;
      before = i;
    }
  }

  [[nodiscard]] std::vector<std::size_t> uncertain_lines() const {
    std::vector<std::size_t> uncertain;
    for (std::size_t i = 0; i < marks_.size(); ++i) {
      if (marks_[i] == Mark::uncertain) uncertain.push_back(i);
    }
    return uncertain;
  }

  [[nodiscard]] std::vector<IndentedLead> leads_as_marked() const {
    std::vector<IndentedLead> leads;
    for (auto i = begin_; i <= found_.led.back(); ++i) {
      if (marks_[i] == Mark::start) leads.push_back({lines_[i].indent, false, leads.empty()});
      if (marks_[i] != Mark::other && !leads.empty()) leads.back().led |= found_.ends[i];
    }
    return leads;
  }

  // Where indentation wavers, couplets tell what lines did not: those are leads, or go on, with
  // which the least is amiss.
  void reconsider(std::vector<std::size_t> const& uncertain) {
    constexpr std::size_t kMostUncertain = 40;
    constexpr std::size_t kMostLeads = 400;
    constexpr std::uint32_t kLeastBetter = 3;
    if (uncertain.empty() || uncertain.size() > kMostUncertain) return;
    auto const leads = leads_as_marked();
    if (leads.size() > kMostLeads) return;
    auto amiss = least_amiss(leads);
    while (amiss && amiss->structure > 0) {
      auto least = amiss;
      std::size_t best = lines_.size();
      for (auto const i : uncertain) {
        turn(i);
        auto const other = least_amiss(leads_as_marked());
        turn(i);
        if (!other || other->structure > amiss->structure) continue;
        auto const by = other->structure < amiss->structure ? 1U : kLeastBetter;
        if (other->cost() + by > amiss->cost() || other->cost() >= least->cost()) continue;
        least = other;
        best = i;
      }
      if (best == lines_.size()) return;
      turn(best);
      amiss = least;
    }
  }
  void turn(std::size_t i) { marks_[i] = marks_[i] == Mark::start ? Mark::rest : Mark::start; }

  // Where leads with others beneath them end in a colon, sentences before the first of those are
  // the account that the key stands in.
  void drop_prose_before() {
    constexpr std::size_t kFewest = 3;  // leads that end in a colon
    struct Lead {
      std::size_t line{};
      bool colon{false};
      bool led{false};
    };
    std::vector<Lead> leads;
    for (auto i = begin_; i <= found_.led.back(); ++i) {
      if (marks_[i] == Mark::other) continue;
      if (marks_[i] == Mark::start) leads.push_back({i, false, false});
      if (leads.empty()) continue;
      leads.back().led = found_.ends[i];
      leads.back().colon = lines_[i].text.ends_with(':');
    }
    auto const first = std::find_if(leads.begin(), leads.end(),
                                    [](Lead const& lead) { return lead.colon || lead.led; });
    auto const colons = static_cast<std::size_t>(
        std::count_if(first, leads.end(), [](Lead const& lead) { return lead.colon; }));
    auto const open = static_cast<std::size_t>(
        std::count_if(first, leads.end(), [](Lead const& lead) { return !lead.led; }));
    if (colons < kFewest || colons * 4 < open * 3) return;
    // What has a lead beneath it is no prose.
    for (auto lead = leads.begin(); lead != first; ++lead) {
      auto const next = std::next(lead);
      if (next != leads.end() && lines_[next->line].indent > lines_[lead->line].indent) return;
    }
    for (auto lead = leads.begin(); lead != first; ++lead) marks_[lead->line] = Mark::other;
  }

  std::vector<SourceLine> const& lines_;
  LineBreaks breaks_;
  IndentEnds found_;
  std::vector<Mark> marks_;
  std::size_t begin_{};
  bool apart_{false};  // blank lines stand between leads
  bool lower_starts_{false};
  bool flat_{false};  // the indentation is lost
};

}  // namespace

std::optional<LeadPlan> plan_by_indentation(std::vector<SourceLine> const& lines,
                                            Numbering const& numbering) {
  return IndentPlanner{lines, numbering}.plan();
}

}  // namespace keydrift::printed
