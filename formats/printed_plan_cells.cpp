// Where leads begin when label, words and destination stand on lines of their own, as the cells of
// a table do that was pasted without its borders.

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLeastCellLeads = 4;
constexpr std::size_t kLinesPerLead = 5;  // at most, on the average; three are the rule
constexpr std::size_t kFewestEmptyCells = 2;

class CellPlanner {
 public:
  explicit CellPlanner(std::vector<SourceLine> const& lines) : lines_{lines} {}

  std::optional<LeadPlan> plan() && {
    for (std::uint32_t i = 0; i < lines_.size(); ++i) {
      if (!lines_[i].text.empty()) filled_.push_back(i);
    }
    drop_pages();
    auto const labels = static_cast<std::size_t>(std::count_if(
        filled_.begin(), filled_.end(), [this](std::uint32_t i) { return label_alone(i); }));
    find_empty_cells();
    auto const leads = labels + empty_cells_;
    if (leads < kLeastCellLeads || leads * kLinesPerLead < filled_.size()) return std::nullopt;
    plan_.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    plan_.parts.assign(lines_.size(), LinePart::other);
    for (std::size_t k = 0; k < filled_.size();) k = begins_lead(k) ? take_lead(k) : k + 1;
    if (plan_.starts.size() < kLeastCellLeads) return std::nullopt;
    return std::move(plan_);
  }

 private:
  // A number far beyond the count of the labels is a page's.
  void drop_pages() {
    auto const labels = static_cast<std::size_t>(std::count_if(
        filled_.begin(), filled_.end(), [this](std::uint32_t i) { return label_alone(i); }));
    std::erase_if(filled_, [this, labels](std::uint32_t i) {
      auto const label = label_of(i);
      return label && label->number > labels + kMostCoupletsLeftOut;
    });
  }

  [[nodiscard]] std::optional<Label> label_of(std::uint32_t line) const {
    auto label = read_label(lines_[line].text);
    if (!label || label->decimal || label->text_at < lines_[line].text.size()) return std::nullopt;
    bool const number_or_dash =
        label->family == LabelFamily::digits ||
        (label->is_dash() && is_dash(code_point_at(label->printed, 0).value));
    return number_or_dash ? label : std::nullopt;
  }
  [[nodiscard]] bool label_alone(std::uint32_t line) const { return label_of(line).has_value(); }
  [[nodiscard]] bool is_dash_alone(std::uint32_t line) const {
    auto const label = label_of(line);
    return label && label->is_dash();
  }

  // Second leads whose label's cell is empty: a blank line beneath a destination, words, and what
  // they lead to.  Dashes would stand there otherwise.
  void find_empty_cells() {
    auto const dash = std::any_of(filled_.begin(), filled_.end(),
                                  [this](auto line) { return is_dash_alone(line); });
    for (std::size_t k = 1; !dash && k < filled_.size(); ++k) {
      if (is_below_empty_cell(k)) ++empty_cells_;
    }
    if (empty_cells_ < kFewestEmptyCells) empty_cells_ = 0;
  }
  [[nodiscard]] bool is_below_empty_cell(std::size_t k) const {
    if (k == 0 || k + 1 >= filled_.size() || filled_[k + 1] != filled_[k] + 1) return false;
    bool const blank_above = filled_[k - 1] + 2 == filled_[k];
    bool const destination_above = label_alone(filled_[k - 1]) || is_name(filled_[k - 1]);
    return blank_above && destination_above && !label_alone(filled_[k]);
  }
  [[nodiscard]] bool begins_lead(std::size_t k) const {
    return label_alone(filled_[k]) || (empty_cells_ > 0 && is_below_empty_cell(k));
  }

  // The lead whose label, or first words, are filled line k.  Returns the filled line after it.
  std::size_t take_lead(std::size_t k) {
    LeadStart start;
    start.line = filled_[k];
    auto const label = label_of(filled_[k]);
    if (label) {
      start.rank.label = *label;
    } else {
      start.rank.label.family = LabelFamily::dash;
      start.unlabelled = true;
    }
    auto const words = label ? k + 1 : k;
    auto end = words;
    bool numbered = false;
    while (end < filled_.size() && !is_dash_alone(filled_[end])) {
      auto const line = filled_[end];
      if (label_alone(line)) {
        // A number after words leads on if the next lead follows it, else it is that one's label.
        bool const lead_next = end + 1 == filled_.size() || begins_lead(end + 1);
        numbered = end > words && lead_next;
        break;
      }
      if (end > words && begins_lead(end)) break;
      if (end > words + 1 && mentions_key(lines_[line].text)) break;
      ++end;
      bool const last_of_all = labels_end(end);
      if (last_of_all && end > words + 1 && is_name(line)) break;
    }
    if (end == words) return end;  // a label without words: a page number
    plan_.start_at[start.line] = static_cast<std::uint32_t>(plan_.starts.size());
    plan_.starts.push_back(start);
    for (auto j = words; j < end; ++j) plan_.parts[filled_[j]] = LinePart::words;
    if (numbered) {
      plan_.parts[filled_[end]] = LinePart::destination;
      return end + 1;
    }
    if (end <= words + 1) return end;
    auto const last = is_title_above_key(end - 1, words) ? end - 2 : end - 1;
    if (last + 1 < end) plan_.parts[filled_[last + 1]] = LinePart::other;
    plan_.parts[filled_[last]] = LinePart::destination;
    return end;
  }

  // "Ausella busa Roe, 1988" / "Females" / "1": filled line k stands between the name that the
  // lead leads to and the first label of the next key.
  [[nodiscard]] bool is_title_above_key(std::size_t k, std::size_t words) const {
    if (k + 1 >= filled_.size() || k < words + 2) return false;
    auto const label = label_of(filled_[k + 1]);
    if (!label || label->is_dash() || label->number != 1) return false;
    return is_latin_name(lines_[filled_[k - 1]].text) && !is_latin_name(lines_[filled_[k]].text);
  }

  // No label stands at or after filled line k.
  [[nodiscard]] bool labels_end(std::size_t k) const {
    if (last_label_ == 0) {
      last_label_ = filled_.size();
      while (last_label_ > 0 && !label_alone(filled_[last_label_ - 1])) --last_label_;
    }
    return k >= last_label_;
  }

  [[nodiscard]] bool is_name(std::uint32_t line) const {
    auto const text = lines_[line].text;
    return is_latin_name(text) ||
           (is_capitalised(text) && text.find(' ') == std::string_view::npos);
  }

  std::vector<SourceLine> const& lines_;
  std::vector<std::uint32_t> filled_;  // lines with text
  mutable std::size_t last_label_{};   // filled lines up to the last label; 0: not yet looked for
  std::size_t empty_cells_{};          // of second leads' labels
  LeadPlan plan_;
};

}  // namespace

std::optional<LeadPlan> plan_by_cells(std::vector<SourceLine> const& lines) {
  return CellPlanner{lines}.plan();
}

}  // namespace keydrift::printed
