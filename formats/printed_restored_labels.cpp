#include "keydrift/formats/printed_restored_labels.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label_remains.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_second_leads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kMostMissing = 2;     // couplets in a row
constexpr std::size_t kMostLinesAround = 60;  // between the labels around a missing one

// A line that begins with a label.
struct LabelStand {
  std::size_t line{};
  Label label;
};

// How the second lead of most couplets is labelled.
enum class Seconds { other, dash, lettered, marked, repeated };

// "… 4", "… 4.": the number at the line's end; 0 without.
std::uint32_t number_behind_words(std::string_view text) {
  constexpr std::size_t kMostDigits = 3;
  text = without_full_stop(text);
  auto begin = text.size();
  while (begin > 0 && is_digit(static_cast<unsigned char>(text[begin - 1]))) --begin;
  auto const digits = text.substr(begin);
  if (digits.empty() || digits.size() > kMostDigits || begin == 0) return 0;
  auto const before = code_point_before(text, begin).value;
  return is_letter(before) ? 0 : number_of(digits);
}

class Restorer {
 public:
  explicit Restorer(std::vector<SourceLine> const& lines)
      : lines_{lines}, numbering_{decide_numbering(lines)} {}

  std::optional<RestoredLabels> run() {
    bool const counted = numbering_.family == LabelFamily::digits && !numbering_.serial &&
                         !numbering_.decimals_are_leads && !numbering_.numbers.empty();
    if (!counted) return std::nullopt;
    find_stands();
    find_habits();
    // One couplet alone carries no count on: but for the dashes, lines may be numbered otherwise.
    bool const one = numbered_.size() == 1 && seconds_ == Seconds::dash && dashes_.size() > 1;
    if (numbered_.size() < 2 && !one) return std::nullopt;
    find_sought();
    take_numbers_out_of_count();
    restore_first();
    for (std::size_t k = 0; k < numbered_.size(); ++k) {
      restore_behind(k);
      if (begins_couplet(k) && begins_couplet(k + 1)) restore_rival(k);
    }
    if (told_.empty()) return std::nullopt;
    RestoredLabels restored{lines_, shown_};
    for (auto& [line, label] : told_) restored.lines[line].told = label;
    return restored;
  }

 private:
  // --- what stands there ------------------------------------------------------------------------

  void find_stands() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      if (text.empty() || lines_[i].is_no_lead) continue;
      auto const label = numbering_.label_of(lines_[i]);
      if (!label || label->decimal || label->text_at >= text.size()) continue;
      if (label->is_dash()) {
        dashes_.push_back(i);
        continue;
      }
      if (label->family != LabelFamily::digits || label->number > kMostCouplets) continue;
      bool const wrapped =
          numbering_.words_start_upper && !is_upper(code_point_at(text, label->text_at).value);
      if (!wrapped) numbered_.push_back({i, *label});
    }
  }

  void find_habits() {
    std::array<std::size_t, kLabelEnds> ends{};
    std::size_t lettered = 0;
    std::size_t marked = 0;
    std::size_t repeated = 0;
    std::size_t backs = 0;
    std::size_t couplets = 0;
    for (std::size_t k = 0; k < numbered_.size(); ++k) {
      auto const& label = numbered_[k].label;
      ++ends[static_cast<std::size_t>(label.end)];
      if (!label.back.empty()) ++backs;
      if (begins_couplet(k)) {
        ++couplets;
      } else if (label.letter == "b") {
        ++lettered;
      } else if (label.marks == 1 && label.letter.empty()) {
        ++marked;
      } else if (label.marks == 0 && label.letter.empty()) {
        ++repeated;
      }
    }
    end_ = static_cast<LabelEnd>(std::max_element(ends.begin(), ends.end()) - ends.begin());
    back_ = backs * 3 >= numbered_.size();
    auto const most = [couplets](std::size_t seconds) { return seconds * 5 >= couplets * 3; };
    if (most(lettered)) {
      seconds_ = Seconds::lettered;
    } else if (most(marked)) {
      seconds_ = Seconds::marked;
    } else if (most(dashes_.size())) {
      seconds_ = Seconds::dash;
    } else if (most(repeated)) {
      seconds_ = Seconds::repeated;
    }
  }

  void find_sought() {
    for (auto const& stand : numbered_) ++standing_[stand.label.number];
    for (auto const& line : lines_) {
      auto const number = number_behind_words(line.text);
      if (number == 0) continue;
      sought_.insert(number);
    }
    // What is missing is a couplet as well: its number may end a lead.
    auto& numbers = numbering_.numbers;
    for (std::size_t k = 0, size = numbers.size(); k < size; ++k) {
      for (std::uint32_t more = 1; more <= kMostMissing; ++more) {
        auto const number = numbers[k] + more;
        if (is_missing(number)) numbers.push_back(number);
      }
    }
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  }

  [[nodiscard]] bool is_missing(std::uint32_t number) const {
    return sought_.contains(number) && !standing_.contains(number);
  }

  // The first label of its number.
  [[nodiscard]] bool begins_couplet(std::size_t k) const {
    if (k >= numbered_.size()) return true;
    return k == 0 || numbered_[k - 1].label.number != numbered_[k].label.number;
  }

  [[nodiscard]] MissingLabel missing(std::uint32_t number, bool second) const {
    MissingLabel missing;
    missing.number = number;
    missing.end = end_;
    missing.upper = numbering_.words_start_upper;
    missing.back = back_;
    if (seconds_ == Seconds::lettered) missing.letter = second ? 'b' : 'a';
    if (seconds_ == Seconds::marked) missing.marked = second;
    return missing;
  }

  void tell(std::size_t line, Label const& label) { told_.emplace_back(line, label); }

  // --- the second of a couplet, whose mark was taken for a digit --------------------------------

  // "4. Legs pale", "41. Legs dark", "5. Wings clear" for 4'; "46." for 4b.
  void take_numbers_out_of_count() {
    if (seconds_ != Seconds::lettered && seconds_ != Seconds::marked) return;
    std::vector<LabelStand> kept;
    for (std::size_t k = 0; k < numbered_.size(); ++k) {
      auto const& stand = numbered_[k];
      auto const before = kept.empty() ? 0 : kept.back().label.number;
      bool const last = k + 1 == numbered_.size();
      bool const between = before > 0 && stand.label.number / 10 == before &&
                           (last || numbered_[k + 1].label.number == before + 1);
      // A lead may lead to 41, if there is another couplet of that number.
      bool const meant = sought_.contains(stand.label.number) && standing_[stand.label.number] == 1;
      auto const label = between && !meant
                             ? remains_of_label(lines_[stand.line].text, missing(before, true))
                             : std::nullopt;
      kept.push_back(stand);
      if (!label) continue;
      tell(stand.line, *label);
      kept.back().label = *label;
    }
    numbered_ = std::move(kept);
  }

  // --- couplets that are missing ----------------------------------------------------------------

  // Lines between stand k and the next one.
  [[nodiscard]] std::size_t region_end(std::size_t k) const {
    auto const end = k + 1 < numbered_.size() ? numbered_[k + 1].line : lines_.size();
    return std::min(end, numbered_[k].line + kMostLinesAround);
  }

  // "i. Legs pale" above couplet 2.
  void restore_first() {
    if (numbered_.front().label.number != 2 || standing_.contains(1)) return;
    auto const end = numbered_.front().line;
    auto const from = end - std::min(end, kMostLinesAround);
    auto const found = only_remains(from, end, missing(1, false), true);
    if (found) tell(found->line, found->label);
  }

  void restore_behind(std::size_t k) {
    auto const number = numbered_[k].label.number;
    bool const last = k + 1 == numbered_.size();
    auto const next = last ? 0 : numbered_[k + 1].label.number;
    // The last couplet of a key, or one before another that is further on in the count.
    bool const ends = last || next == 1;
    if (!ends && (next <= number + 1 || next > number + 1 + kMostMissing)) return;
    auto const until = ends ? number + 2 : next;
    auto from = numbered_[k].line + 1;
    for (auto wanted = number + 1; wanted < until; ++wanted) {
      if (!is_missing(wanted)) continue;
      auto found = only_remains(from, region_end(k), missing(wanted, false));
      if (!found && until == number + 2) found = unprinted(from, region_end(k), wanted);
      if (!found) continue;
      tell(found->line, found->label);
      from = found->line + 1;
    }
  }

  // The only line of [from, end) that begins a lead with what is left of the label.  `first`: no
  // lead ends above it.
  [[nodiscard]] std::optional<LabelStand> only_remains(std::size_t from, std::size_t end,
                                                       MissingLabel const& missing,
                                                       bool first = false) {
    std::optional<LabelStand> found;
    for (auto i = from; i < end; ++i) {
      auto const text = lines_[i].text;
      if (text.empty()) continue;
      auto label = number_alone(i, end, missing);
      if (!label && is_free(i)) label = remains_of_label(text, missing);
      if (!label || (!first && !ends_before(i) && !ends_before_remark(i))) continue;
      auto const words = label->text_at < text.size() ? i : i + 1;
      if (!goes_somewhere(words, end)) continue;
      if (found) return std::nullopt;
      found = LabelStand{i, *label};
    }
    return found;
  }

  // "4" on a line of its own above the lead's words.
  [[nodiscard]] std::optional<Label> number_alone(std::size_t i, std::size_t end,
                                                  MissingLabel const& missing) const {
    auto const text = lines_[i].text;
    auto const digits = text.ends_with('.') ? text.substr(0, text.size() - 1) : text;
    bool const plain = missing.letter == '\0' && !missing.marked;
    if (!plain || !is_number_only(text) || number_of(digits) != missing.number) {
      return std::nullopt;
    }
    bool const words = i + 1 < end && starts_with_upper(lines_[i + 1].text) && is_free(i + 1);
    if (!words) return std::nullopt;
    auto label = unprinted_label(text, text.size(), missing);
    label.printed = text;
    return label;
  }

  // The lead of a couplet that prints no number, where the dashes of its rival and of the couplet
  // before stand around it.
  [[nodiscard]] std::optional<LabelStand> unprinted(std::size_t from, std::size_t end,
                                                    std::uint32_t number) {
    if (seconds_ != Seconds::dash || dashes_between(from, end) != 2) return std::nullopt;
    auto const first = std::lower_bound(dashes_.begin(), dashes_.end(), from);
    return only_unprinted(*first + 1, *(first + 1), missing(number, false));
  }

  // The only line of [from, end) that begins a lead without a label, whose words go on up to `end`.
  [[nodiscard]] std::optional<LabelStand> only_unprinted(std::size_t from, std::size_t end,
                                                         MissingLabel const& missing) {
    std::optional<LabelStand> found;
    for (auto i = from; i < end; ++i) {
      auto const text = lines_[i].text;
      if (text.empty() || !is_free(i)) continue;
      // ". Legs pale": the full stop behind a number that is lost.
      auto const words = text.starts_with(". ") ? skip_blanks(text, 1) : 0;
      if (!is_upper(code_point_at(text, words).value) || starts_note(text) ||
          starts_caption(text) || mentions_key(text)) {
        continue;
      }
      if (!ends_before(i)) continue;
      if (found || !is_led_somewhere(i, end)) return std::nullopt;
      found = LabelStand{i, unprinted_label(text, words, missing)};
      found->label.printed = text.substr(0, words > 0 ? 1 : 0);
    }
    if (found) shown_ = false;
    return found;
  }

  // No label stands there that the file's leads bear.
  [[nodiscard]] bool is_free(std::size_t i) const {
    return !numbering_.label_of(lines_[i]) && !lines_[i].is_no_lead;
  }

  // The last line of words above line i ends a lead; "(marsh moth)" may stand beneath it.
  [[nodiscard]] bool ends_before(std::size_t i) {
    auto const words_above = [this, &i] {
      while (i > 0 && (lines_[i - 1].text.empty() || is_page_furniture(lines_[i - 1].text))) --i;
      return i > 0 ? lines_[i - 1].text : std::string_view{};
    };
    auto const above = words_above();
    bool const bracket = above.starts_with('(') && above.find(')') + 1 == above.size();
    if (bracket && !ends_lead(i - 1)) {
      --i;
      words_above();
    }
    return i > 0 && ends_lead(i - 1);
  }

  // "..... A. busa Roe" / "    Scattered records in the north." above line i: a sentence or two on
  // the distribution.
  [[nodiscard]] bool ends_before_remark(std::size_t i) {
    constexpr std::size_t kMostOfRemark = 3;  // lines
    for (std::size_t lines = 0; i > 0 && lines < kMostOfRemark; ++lines) {
      auto const text = lines_[i - 1].text;
      bool const remark = !text.empty() && is_free(i - 1) && lines_[i - 1].indent > 0 &&
                          (lines > 0 || text.ends_with('.'));
      if (!remark) return false;
      --i;
      if (i > 0 && !lines_[i - 1].text.empty() && ends_lead(i - 1)) return true;
    }
    return false;
  }

  [[nodiscard]] bool ends_lead(std::size_t i) {
    if (!ends_) ends_.emplace(lines_, numbering_);
    return ends_->ends_lead(i);
  }

  // A line of the paragraph from i on ends a lead, or is its end: "Ausella busa (Roe), marsh moth".
  [[nodiscard]] bool goes_somewhere(std::size_t i, std::size_t end) {
    for (auto at = i; at < end && !lines_[at].text.empty(); ++at) {
      if (at > i && !is_free(at)) return false;
      if (ends_lead(at)) return true;
      auto const text = lines_[at].text;
      if (at > i && is_latin_name(text.substr(0, std::min(text.rfind(", "), text.size())))) {
        return true;
      }
    }
    return false;
  }

  // The same, with leaders between words and a destination: "Ausella busa" alone is a heading.
  [[nodiscard]] bool is_led_somewhere(std::size_t i, std::size_t end) const {
    for (auto at = i; at < end && !lines_[at].text.empty(); ++at) {
      if (at > i && !is_free(at)) return false;
      auto const split = split_at_leader(lines_[at].text, numbering_);
      bool const words = at > i || split.words_end > 0;
      if (split.kind != LeaderKind::none && split.destination_begin < lines_[at].text.size()) {
        return words;
      }
    }
    return false;
  }

  // --- couplets of which one lead is missing ----------------------------------------------------

  // Couplet k bears one label where the others bear two.
  void restore_rival(std::size_t k) {
    if (seconds_ == Seconds::dash) return restore_dash(k);
    if (seconds_ == Seconds::repeated) return restore_repeated(k);
    if (seconds_ == Seconds::other) return;
    auto const& label = numbered_[k].label;
    bool const second = seconds_ == Seconds::lettered ? label.letter == "b" : label.marks > 0;
    auto const number = label.number;
    if (!second) {
      auto const found = only_remains(numbered_[k].line + 1, region_end(k), missing(number, true));
      if (found) tell(found->line, found->label);
      return;
    }
    if (k > 0 && is_first_of_other(k - 1)) {
      auto first = numbered_[k - 1].label;
      first.number = number;
      return tell(numbered_[k - 1].line, first);
    }
    auto const end = numbered_[k].line;
    auto const from = k == 0 ? end - std::min(end, kMostLinesAround) : numbered_[k - 1].line + 1;
    if (from + kMostLinesAround < end) return;
    auto found = only_remains(from, end, missing(number, false), k == 0);
    // The couplet before has both its leads: a third one is this couplet's.
    bool const complete = k >= 2 && !begins_couplet(k - 1);
    if (!found && complete) found = only_unprinted(from, end, missing(number, false));
    if (found) tell(found->line, found->label);
  }

  // "8a. Legs red" for 3a, where 8a and 8b stand as well.
  [[nodiscard]] bool is_first_of_other(std::size_t k) const {
    auto const& label = numbered_[k].label;
    auto const all = standing_.find(label.number);
    return seconds_ == Seconds::lettered && label.letter == "a" && begins_couplet(k) &&
           all != standing_.end() && all->second > 2;
  }

  // "2 Petals red" above "2. Petals white", or beneath it.
  void restore_repeated(std::size_t k) {
    auto const& stand = numbered_[k];
    auto const wanted = missing(stand.label.number, false);
    auto const from =
        k == 0 ? stand.line - std::min(stand.line, kMostLinesAround) : numbered_[k - 1].line + 1;
    if (from + kMostLinesAround < stand.line) return;
    auto const above = only_remains(from, stand.line, wanted, k == 0);
    auto const below = only_remains(stand.line + 1, region_end(k), wanted);
    if (above.has_value() == below.has_value()) return;
    auto const& found = above ? *above : *below;
    tell(found.line, found.label);
  }

  // "3." "-" "-" "4." "5.": a dash that stands before its couplet's number; a sign for the dash.
  void restore_dash(std::size_t k) {
    auto const& stand = numbered_[k];
    auto const end = region_end(k);
    if (dashes_between(stand.line, end) > 0) return;
    if (auto const sign = only_dash_remains(stand.line + 1, end)) {
      tell(sign->line, sign->label);
      return;
    }
    auto const number = stand.label.number;
    bool const first = k == 0;
    auto const from = first ? 0 : numbered_[k - 1].line;
    bool const third = first ? number == 1 && dashes_between(from, stand.line) == 1
                             : numbered_[k - 1].label.number + 1 == number &&
                                   dashes_between(from, stand.line) == 2;
    if (!third || !goes_somewhere(stand.line, end) || has_unlabelled(stand.line + 1, end)) return;
    auto const dash = *std::prev(std::lower_bound(dashes_.begin(), dashes_.end(), stand.line));
    if (!goes_somewhere(dash, stand.line)) return;
    auto const printed = numbering_.label_of(lines_[dash].text);
    auto label = unprinted_label(lines_[dash].text, printed->text_at, missing(number, false));
    label.printed = printed->printed;
    tell(dash, label);
    shown_ = false;
  }

  [[nodiscard]] std::ptrdiff_t dashes_between(std::size_t from, std::size_t end) const {
    return std::lower_bound(dashes_.begin(), dashes_.end(), end) -
           std::lower_bound(dashes_.begin(), dashes_.end(), from);
  }

  [[nodiscard]] std::optional<LabelStand> only_dash_remains(std::size_t from, std::size_t end) {
    std::optional<LabelStand> found;
    for (auto i = from; i < end; ++i) {
      auto const label = is_free(i) ? remains_of_dash(lines_[i].text) : std::nullopt;
      if (!label || !ends_before(i) || !goes_somewhere(i, end)) continue;
      if (found) return std::nullopt;
      found = LabelStand{i, *label};
    }
    return found;
  }

  // A lead without a label seems to begin on one of the lines.
  [[nodiscard]] bool has_unlabelled(std::size_t from, std::size_t end) {
    for (auto i = from; i < end; ++i) {
      if (!lines_[i].text.empty() && starts_with_upper(lines_[i].text) && ends_before(i)) {
        return true;
      }
    }
    return false;
  }

  std::vector<SourceLine> const& lines_;
  Numbering numbering_;
  std::optional<SecondLeads> ends_;   // made when first asked for
  bool shown_{true};                  // each line has something of the label left that is told
  std::vector<LabelStand> numbered_;  // in printed order
  std::vector<std::size_t> dashes_;   // lines that begin with the dash of a further lead
  // Numbers that lines begin with, and how many do.
  std::unordered_map<std::uint32_t, std::size_t> standing_;
  std::unordered_set<std::uint32_t> sought_;  // numbers that lines end in
  Seconds seconds_{Seconds::other};
  LabelEnd end_{LabelEnd::dot};
  bool back_{false};
  std::vector<std::pair<std::size_t, Label>> told_;
};

}  // namespace

std::optional<RestoredLabels> restore_labels(std::vector<SourceLine> const& lines) {
  return Restorer{lines}.run();
}

}  // namespace keydrift::printed
