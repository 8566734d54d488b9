#include "keydrift/formats/printed_label_course.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label_fronts.hpp"
#include "keydrift/formats/printed_label_habits.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_worn_label.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostCourseLines = 20000;
constexpr std::size_t kMostLabelStates = 24;  // that are followed from line to line
constexpr std::size_t kMostCoupletsUp = 16;   // couplets from the last one up to that of a rival
constexpr std::size_t kFewestCourseLeads = 6;
constexpr std::size_t kFewestWorn = 2;         // labels that show that a scan was read
constexpr std::size_t kFewestSoundLabels = 2;  // of so many labels one at least is sound
constexpr std::uint32_t kNoPlace = 0xFFFFFFFFU;

// What a lead is worth, and what is amiss costs.
constexpr float kLeadWorth = 2.5F;
constexpr float kLeastSound = 0.5F;  // of what the leads were worth if nothing was amiss
constexpr float kLostLabel = 3.0F;
constexpr float kUnlabelled = 0.2F;      // where seconds bear no labels
constexpr float kFurther = 0.7F;         // a third lead, or one behind it
constexpr float kPerLineBehind = 0.05F;  // between a first lead without a label and its rival
constexpr float kNoLead = 1.0F;          // a line that was marked so begins one
constexpr float kOtherIndent = 0.6F;     // a rival is set in otherwise than the first lead
constexpr float kOtherRival = 1.5F;      // a label names another rival
constexpr float kDamagedRival = 0.4F;    // the same where its figures are damaged
constexpr float kLoneLeadWorth = 2.0F;   // a couplet that has but one
constexpr float kLostCouplet = 3.5F;     // the count goes on without it
constexpr float kOtherKey = 2.0F;        // begins
constexpr float kLabelLeftOver = 1.2F;   // a line looks like a label and is none
constexpr float kDashLeftOver = 0.8F;    // the same of a dash
constexpr float kUnendedWorn = 1.5F;     // the lead above has no end, and the label is damaged
constexpr float kUnendedSound = 0.4F;    // the same with a sound label
constexpr float kAgainstEnds = 1.2F;     // nested: what follows is not what the end calls for

// By rank, how many letters stand for leads so far.
using RankLetters = std::array<std::uint8_t, 12>;

// A couplet whose leads are being read, above those that it stands beneath.
struct LabelOpen {
  std::uint32_t count{};  // number, rank or place of its first lead
  std::uint32_t half{};   // of the last lead that was read
  std::uint32_t above{kNoPlace};
  std::uint32_t indent{};  // of its first lead
  std::uint32_t before{};  // letters of its rank before it, where they run on
  std::uint32_t depth{1};
  std::uint64_t trace{};  // the same for the same couplets and leads from the first one on
};

// A lead that a way through the lines takes a line for.
struct LabelStep {
  std::uint32_t before{kNoPlace};  // step
  std::uint32_t line{};
  std::uint32_t count{};
  std::uint32_t half{};
  std::uint32_t ordinal{};  // what the habit tells the label by beside the count
  std::uint32_t first{};    // place of the couplet's first lead
  std::uint32_t bytes{};    // of the label as it stands
  float wear{};
};

struct LabelState {
  float worth{};
  std::uint32_t open{kNoPlace};
  std::uint32_t next{1};  // number of the next couplet, place of the next lead
  std::uint32_t step{kNoPlace};
  std::uint32_t leads{};
  RankLetters letters{};
};

// What a label may have suffered.
enum class Damage : std::uint8_t { none, worn, lost };

// A way up to and with a line; `open` and `step` are of the lead that begins there, if one does.
struct LabelWay {
  LabelState state;
  bool begins{};
  LabelOpen open;
  LabelStep step;
};

class Course {
 public:
  Course(std::vector<SourceLine> const& lines, std::vector<LineFront> const& fronts,
         std::vector<bool> const& ended, std::set<std::uint32_t> const& sought,
         LabelHabit const& habit, bool upper)
      : lines_{lines},
        fronts_{fronts},
        ended_{ended},
        sought_{sought},
        habit_{habit},
        upper_{upper} {}

  void run() {
    states_.push_back({});
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (!fronts_[i].empty) pass(static_cast<std::uint32_t>(i));
    }
    for (auto& state : states_) {
      for (auto open = state.open; open != kNoPlace; open = opens_[open].above) {
        if (opens_[open].half < 2) state.worth -= kLoneLeadWorth;
      }
      // Nothing behind it tells that a lead stood there, but for a rival that lacks one.
      bool const lost = state.step != kNoPlace && steps_[state.step].bytes == 0;
      if (lost && steps_[state.step].half != 2) state.worth -= kLostLabel;
    }
    best_ = *std::max_element(
        states_.begin(), states_.end(),
        [](LabelState const& a, LabelState const& b) { return a.worth < b.worth; });
  }
  [[nodiscard]] float worth() const { return best_.worth; }
  [[nodiscard]] std::size_t leads() const { return best_.leads; }

  // `scan`: other damage shows that the text was scanned.
  [[nodiscard]] std::vector<LabelChange> changes(bool scan) const {
    std::vector<LabelChange> changes;
    std::vector<LabelChange> counts;  // one number for another, which a slip of the author may be
    for (auto at = best_.step; at != kNoPlace; at = steps_[at].before) {
      auto const& step = steps_[at];
      if (step.half > 1 && habit_.second == SecondSign::unlabelled) {
        changes.push_back({step.line, 0, "– ", true});
        continue;
      }
      if (step.wear == 0) continue;
      auto const text = lines_[step.line].text;
      auto label = habit_.printed(step.count, step.ordinal, back_of(step));
      if (label.empty() || label == text.substr(0, step.bytes)) continue;
      bool const blank = step.bytes > 0 && step.bytes < text.size() &&
                         is_blank(code_point_at(text, step.bytes).value);
      if (!blank) label += ' ';
      bool const number = is_digit(static_cast<unsigned char>(label[0]));
      auto& kind =
          number && is_number(text.substr(0, step.bytes)) && number_at(text) != number_at(label)
              ? counts
              : changes;
      kind.push_back({step.line, step.bytes, std::move(label), false});
    }
    if (scan || changes.size() >= kFewestWorn) {
      changes.insert(changes.end(), counts.begin(), counts.end());
    }
    std::sort(changes.begin(), changes.end(),
              [](LabelChange const& a, LabelChange const& b) { return a.line < b.line; });
    return changes;
  }

 private:
  // --- from line to line ------------------------------------------------------------------------

  void pass(std::uint32_t i) {
    known_.clear();
    next_.clear();
    auto const left_over = cost_of_passing(i);
    for (auto const& state : states_) {
      LabelWay passed{state, false, {}, {}};
      if (state.leads > 0) passed.state.worth -= left_over;
      // Of all lines that may begin a key without a label the last one is the likeliest.
      bool const begun_unlabelled = state.leads == 1 && steps_[state.step].bytes == 0;
      if (begun_unlabelled) passed.state.worth -= kPerLineBehind;
      next_.push_back(passed);
      begin_lead(i, state);
    }
    keep_best();
  }

  void keep_best() {
    std::stable_sort(next_.begin(), next_.end(), [](LabelWay const& a, LabelWay const& b) {
      return a.state.worth > b.state.worth;
    });
    states_.clear();
    kept_.clear();
    for (auto& way : next_) {
      auto const trace = way.begins                   ? way.open.trace
                         : way.state.open == kNoPlace ? 0
                                                      : opens_[way.state.open].trace;
      if (!kept_.insert({trace, way.state.next, way.state.letters}).second) continue;
      if (way.begins) {
        way.state.open = static_cast<std::uint32_t>(opens_.size());
        opens_.push_back(way.open);
        way.state.step = static_cast<std::uint32_t>(steps_.size());
        steps_.push_back(way.step);
      }
      states_.push_back(way.state);
      if (states_.size() == kMostLabelStates) break;
    }
  }

  // A line that looks like a label of this key.
  [[nodiscard]] float cost_of_passing(std::uint32_t i) {
    auto const& front = fronts_[i];
    auto const& label = front.label;
    if (front.is_no_lead || !label) return 0;
    if (label->is_dash()) return habit_.second == SecondSign::dash ? kDashLeftOver : 0;
    if (!front.may_be_label || label->decimal || label->number > kMostCouplets) return 0;
    bool const digits = label->family == LabelFamily::digits;
    if (habit_.sign != LabelSign::ranks && counts_on() != digits) return 0;
    if (habit_.runs_on && !is_of_a_rank(label->family)) return 0;
    auto const text = lines_[i].text;
    bool const ends = (label->end == LabelEnd::none) == (habit_.end == 0);
    bool const words =
        label->text_at < text.size() && (!upper_ || starts_with_upper(text.substr(label->text_at)));
    return ends && words ? kLabelLeftOver : 0;
  }

  [[nodiscard]] bool is_of_a_rank(LabelFamily family) const {
    return std::any_of(habit_.ranks.begin(), habit_.ranks.end(), [family](RankAlphabet const& one) {
      return family == (one.alphabet == Alphabet::upper   ? LabelFamily::upper
                        : one.alphabet == Alphabet::lower ? LabelFamily::lower
                                                          : LabelFamily::digits);
    });
  }

  // --- the leads that may begin at a line -------------------------------------------------------

  void begin_lead(std::uint32_t i, LabelState const& state) {
    if (state.leads == 0) {
      take(i, state, {1, 1, kNoPlace}, 0, begins_behind_blank(i) ? Damage::lost : Damage::worn);
      return;
    }
    auto const& top = opens_[state.open];
    if (habit_.nested) {
      begin_nested(i, state);
    } else {
      auto const unlabelled = habit_.second == SecondSign::unlabelled;
      auto const further = top.half < 2 ? 0 : kFurther;
      if (!(unlabelled && top.half >= 2)) {
        take(i, state, {top.count, top.half + 1, kNoPlace}, further, Damage::lost);
      }
      auto const lone = top.half < 2 ? kLoneLeadWorth : 0;
      take(i, state, {top.count + 1, 1, kNoPlace}, lone, Damage::lost);
      take(i, state, {top.count + 2, 1, kNoPlace}, lone + kLostCouplet, Damage::none);
    }
    if (top.half >= 2) take(i, state, {1, 1, kNoPlace}, kOtherKey, Damage::none);
  }

  // Nothing stands above, or a blank line.
  [[nodiscard]] bool begins_behind_blank(std::uint32_t i) const {
    return i == 0 || lines_[i - 1].text.empty();
  }

  void begin_nested(std::uint32_t i, LabelState const& state) {
    bool const ended = ended_[i];
    // Beneath the last lead.
    auto const below = ended ? kAgainstEnds : 0;
    auto const count = count_below(state);
    // Without its label it is told by its indentation.
    bool const deeper = lines_[i].indent > lines_[steps_[state.step].line].indent &&
                        (lines_[i - 1].text.empty() || lines_[i].indent != lines_[i - 1].indent);
    take(i, state, {count, 1, state.open}, below, deeper ? Damage::lost : Damage::worn);
    if (counts_on()) {
      take(i, state, {count + 1, 1, state.open}, below + kLostCouplet, Damage::none, 1);
    }
    // Many a count of letters leaves j out.
    bool const j = habit_.sign == LabelSign::lower_counted && count == 'j' - 'a' + 1;
    if (j) take(i, state, {count + 1, 1, state.open}, below, Damage::worn);
    // The rival of that lead, or of one that it stands beneath.
    float lone = ended ? 0 : kAgainstEnds;
    bool const ranks = habit_.sign == LabelSign::ranks;
    std::size_t levels = 0;
    for (auto open = state.open;
         open != kNoPlace && lone <= kLeadWorth * 2 && levels < kMostCoupletsUp;
         open = opens_[open].above, ++levels) {
      auto const& one = opens_[open];
      auto const shifted = one.indent > lines_[i].indent ? one.indent - lines_[i].indent
                                                         : lines_[i].indent - one.indent;
      auto const off = shifted > 2 ? kOtherIndent : 0;
      take(i, state, {one.count, one.half + 1, one.above, one.indent, one.before},
           lone + off + (one.half < 2 || ranks ? 0 : kFurther),
           ended && !(ranks && one.half > 1) ? Damage::lost : Damage::worn);
      if (habit_.sign == LabelSign::place) {
        take(i, state, {one.count, one.half + 1, one.above, one.indent}, lone + off + kLostCouplet,
             Damage::none, 1);
      }
      if (one.half < 2) lone += kLoneLeadWorth;
    }
  }

  [[nodiscard]] bool counts_couplets() const {
    return habit_.sign == LabelSign::number || habit_.sign == LabelSign::lower_counted ||
           habit_.sign == LabelSign::upper_counted;
  }

  // Labels tell more than the rank.
  [[nodiscard]] bool counts_on() const {
    return habit_.sign == LabelSign::number || habit_.sign == LabelSign::place;
  }

  [[nodiscard]] std::uint32_t count_below(LabelState const& state) const {
    switch (habit_.sign) {
      case LabelSign::upper:
      case LabelSign::lower:
      case LabelSign::ranks:
        return state.open == kNoPlace ? 1 : opens_[state.open].depth + 1;
      default:
        return state.next;
    }
  }

  // Takes line i for a lead.  `most`: of its label; `without`: so many leads before it are lost,
  // which places count.
  void take(std::uint32_t i, LabelState const& state, LabelOpen open, float cost, Damage most,
            std::uint32_t without = 0) {
    bool const place = habit_.sign == LabelSign::place;
    bool const restarts =
        open.count == 1 && open.half == 1 && state.leads > 0 && open.above == kNoPlace;
    auto const number = place && !restarts ? state.next + without : open.count;
    bool const first_of_rank =
        habit_.runs_on && open.half == 1 && open.count <= state.letters.size();
    if (first_of_rank) open.before = state.letters[open.count - 1];
    auto const ordinal = open.before + open.half;
    auto const worn = wear_of(i, number, ordinal);
    bool const unlabelled = open.half > 1 && habit_.second == SecondSign::unlabelled;
    auto total = cost;
    LabelStep step{state.step, i, number, open.half, ordinal, open.count, 0, 0};
    if (worn) {
      if (most == Damage::none && worn->wear > 0) return;
      step.wear = worn->wear;
      step.bytes = static_cast<std::uint32_t>(worn->end);
      if (place && names_other(i, worn->end, number, open)) {
        bool const sound =
            lines_[i].text.substr(0, worn->end).find_first_of("loOISB?") == std::string_view::npos;
        total += sound ? kOtherRival : kDamagedRival;
      }
      total += worn->wear + worn->doubt + (fronts_[i].is_no_lead ? kNoLead : 0);
      if (!habit_.nested && state.leads > 0 && !ended_[i]) {
        bool const by_ends = habit_.second == SecondSign::unlabelled;  // nothing else tells leads
        total += worn->wear > 0 || by_ends ? kUnendedWorn : kUnendedSound;
      }
    } else {
      bool const first = state.leads == 0;
      bool const below = habit_.nested && open.half == 1;
      if (most != Damage::lost || !(ended_[i] || first || below)) return;
      if (!fronts_[i].may_be_words) return;
      // No lead leads to such a couplet.
      if (!habit_.nested && !first && open.half == 1 && !sought_.contains(open.count)) return;
      total += unlabelled ? kUnlabelled : kLostLabel;
      if (!unlabelled) step.wear = kLostLabel;
    }
    auto begun = state;
    begun.worth += kLeadWorth - total;
    if (begun.worth <= (state.leads == 0 ? -kLeadWorth : 0)) return;
    begun.leads += 1;
    if (place) {
      begun.next = restarts ? 2 : number + 1;
    } else if (open.half == 1) {
      begun.next = restarts ? 2 : std::max(state.next, open.count + 1);
      if (counts_couplets()) {
        begun.next = open.count + 1;
      }
    }
    if (habit_.runs_on && open.count <= begun.letters.size()) {
      begun.letters[open.count - 1] = static_cast<std::uint8_t>(std::min(ordinal, 255U));
    }
    if (open.half == 1) open.indent = lines_[i].indent;
    std::uint64_t trace = 1;
    if (open.above != kNoPlace) {
      open.depth = opens_[open.above].depth + 1;
      trace = opens_[open.above].trace;
    }
    // The prime of FNV-1a (draft-eastlake-fnv), from memory.
    for (std::uint64_t const part : {open.count, open.half, open.before})
      trace = (trace ^ part) * 0x100000001B3U;
    open.trace = trace;
    next_.push_back({begun, true, open, step});
  }

  // "9 (8)" names the rival before it: it is no first lead, and of no other couplet than that of 8.
  [[nodiscard]] bool names_other(std::uint32_t i, std::size_t bytes, std::uint32_t number,
                                 LabelOpen const& open) const {
    auto const back = figures_in_brackets(lines_[i].text.substr(0, bytes));
    if (back == 0) return false;
    return open.half == 1 ? back < number : back != open.count;
  }

  [[nodiscard]] std::optional<WornLabel> wear_of(std::uint32_t i, std::uint32_t count,
                                                 std::uint32_t ordinal) {
    if (!fronts_[i].may_be_label) return std::nullopt;
    auto const [known, fresh] = known_.try_emplace({count, ordinal});
    if (fresh) {
      auto const expected = habit_.expected(count, ordinal);
      if (!expected.empty()) known->second = worn_label(lines_[i].text, expected, upper_);
    }
    return known->second;
  }

  // "4.", "4a.", "4 (2).", undamaged.
  [[nodiscard]] static bool is_number(std::string_view label) {
    auto const sound = [](char c) {
      return is_digit(static_cast<unsigned char>(c)) || (c >= 'a' && c <= 'e') ||
             std::string_view{".()' "}.find(c) != std::string_view::npos;
    };
    return !label.empty() && is_digit(static_cast<unsigned char>(label[0])) &&
           std::all_of(label.begin(), label.end(), sound);
  }

  [[nodiscard]] static std::uint32_t number_at(std::string_view label) {
    constexpr std::size_t kMostDigits = 4;
    auto const digits = label.substr(0, kMostDigits);
    return number_of(digits.substr(0, leading_figures(digits)));
  }

  [[nodiscard]] static std::uint32_t figures_in_brackets(std::string_view label) {
    auto const open = label.find_first_of("([{<");
    if (open == std::string_view::npos) return 0;
    std::uint32_t number = 0;
    for (std::size_t at = open + 1; at < label.size(); ++at) {
      auto const figure = figure_seen_in(static_cast<unsigned char>(label[at]));
      if (!figure || number > kMostCouplets) break;
      number = number * 10 + *figure;
    }
    return number;
  }

  // The figures in the brackets behind a label, as far as they can be read.
  [[nodiscard]] std::uint32_t back_of(LabelStep const& step) const {
    if (habit_.sign == LabelSign::place) {
      if (step.half > 1) return step.first;
      // The rival of that place.
      for (auto at = best_.step; at != kNoPlace && steps_[at].line > step.line;
           at = steps_[at].before) {
        if (steps_[at].half > 1 && steps_[at].first == step.count) return steps_[at].count;
      }
    }
    auto const number = figures_in_brackets(lines_[step.line].text.substr(0, step.bytes));
    bool const possible = habit_.sign == LabelSign::place || number < step.count;
    return possible ? number : 0;
  }

  std::vector<SourceLine> const& lines_;
  std::vector<LineFront> const& fronts_;
  std::vector<bool> const& ended_;
  std::set<std::uint32_t> const& sought_;  // numbers that lines end in
  LabelHabit const& habit_;
  bool upper_;
  std::vector<LabelOpen> opens_;
  std::vector<LabelStep> steps_;
  std::vector<LabelState> states_;
  std::vector<LabelWay> next_;
  std::set<std::tuple<std::uint64_t, std::uint32_t, RankLetters>> kept_;
  // By what is expected of the line at hand.
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::optional<WornLabel>> known_;
  LabelState best_;
};

// "12 (i)" for "12 (1)": what is damaged is not the number but what stands behind it.
bool names_same_number(std::string_view line, std::string_view label) {
  auto const figures = leading_figures(label);
  return figures > 0 && leading_figures(line) == figures &&
         line.substr(0, figures) == label.substr(0, figures);
}

}  // namespace

std::vector<LabelChange> label_course(std::vector<SourceLine> const& lines, bool scan) {
  if (lines.size() > kMostCourseLines) return {};
  auto const numbering = decide_numbering(lines);
  bool const upper = numbering.words_start_upper || numbering.numbers.empty();
  auto const habits = label_habits(lines, upper);
  if (habits.empty()) return {};
  auto const fronts = line_fronts(lines);
  auto const ended = ended_above(lines, numbering);
  auto const sought = numbers_at_ends(lines);
  std::vector<LabelChange> changes;
  float most = 0;
  for (auto const& habit : habits) {
    Course course{lines, fronts, ended, sought, habit, upper};
    course.run();
    auto const sound = kLeadWorth * static_cast<float>(course.leads());
    if (course.leads() < kFewestCourseLeads || course.worth() <= most) continue;
    if (course.worth() < kLeastSound * sound) continue;
    most = course.worth();
    changes = course.changes(scan);
    // Where so much would have to be amiss the labels are others.
    auto const worn = std::count_if(changes.begin(), changes.end(), [&](LabelChange const& one) {
      auto const first = static_cast<unsigned char>(one.label[0]);
      bool const same = names_same_number(lines[one.line].text, one.label);
      return !same && (is_digit(first) || (first < 0x80 && is_letter(first)));
    });
    if (static_cast<std::size_t>(worn) * kFewestSoundLabels > course.leads()) changes.clear();
  }
  return changes;
}

}  // namespace keydrift::printed
