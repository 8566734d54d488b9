// Where leads begin when only the first of each couplet bears a label and its rivals' words stand
// beneath its own.

#include <algorithm>

#include "keydrift/formats/printed_breaks.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kPairSlack = 1;  // columns that words may be set off by

class PairPlanner {
 public:
  PairPlanner(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering}, breaks_{lines} {}

  std::optional<LeadPlan> plan() && {
    LeadPlan plan;
    plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    std::size_t unlabelled = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty()) continue;
      LeadStart start;
      start.line = static_cast<std::uint32_t>(i);
      if (auto const label = label_at(i)) {
        start.rank.label = *label;
        number_ = label->number;
        words_column_ =
            lines_[i].indent + count_code_points(lines_[i].text.substr(0, label->text_at));
      } else if (is_second(i)) {
        start.rank.alphabet = Alphabet::dash;
        start.rank.label.family = LabelFamily::dash;
        start.unlabelled = true;
        ++unlabelled;
      } else {
        before_ = i;
        continue;
      }
      plan.start_at[i] = static_cast<std::uint32_t>(plan.starts.size());
      plan.starts.push_back(start);
      before_ = i;
    }
    if (unlabelled < 2 || unlabelled * 4 < plan.starts.size()) return std::nullopt;
    return plan;
  }

 private:
  // A label that carries the count on, or begins it again.
  [[nodiscard]] std::optional<Label> label_at(std::size_t i) const {
    auto label = numbering_.label_of(lines_[i].text);
    if (is_numbered_name(lines_[i].text)) return std::nullopt;
    if (!label || label->is_dash() || label->text_at >= lines_[i].text.size()) return std::nullopt;
    bool const upper = starts_with_upper(lines_[i].text.substr(label->text_at));
    bool const bare = label->style() % 16 == 0;
    bool const counts =
        label->number == number_ || label->number == number_ + 1 || label->number == 1;
    if (bare ? !(upper && counts) : !(upper || counts)) return std::nullopt;
    return label;
  }

  // Words beneath the first lead's words, where a lead has come to its end.
  [[nodiscard]] bool is_second(std::size_t i) const {
    auto const& line = lines_[i];
    if (words_column_ == 0 || !starts_with_upper(line.text)) return false;
    if (!is_upper(code_point_at(line.text, 0).value)) return false;
    bool const beneath = line.indent + kPairSlack >= words_column_ &&
                         line.indent <= words_column_ + kPairSlack && line.indent > 0;
    if (!beneath || starts_note(line.text) || starts_caption(line.text)) return false;
    // "… weakly serrate. 2." / "Ausella busa Roe"
    auto const above = lines_[before_].text;
    if (is_species_number(above.substr(last_word_begin(above))) && is_species_alone(line.text)) {
      return false;
    }
    return ends_lead(before_) || !breaks_.forced(before_, i);
  }

  // The line ends in a destination.
  [[nodiscard]] bool ends_lead(std::size_t i) const {
    auto const text = lines_[i].text;
    auto const split = split_at_leader(text, numbering_);
    if (split.kind != LeaderKind::none) return split.destination_begin < text.size();
    bool const set_apart = lines_[i].indent >= words_column_ + kDestinationIndent;
    return set_apart || is_number_only(text) || trailing_reference(text).has_value();
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LineBreaks breaks_;
  std::uint32_t number_{};        // of the last label
  std::uint32_t words_column_{};  // where its words begin; 0 before the first label
  std::size_t before_{};          // the last line with text
};

}  // namespace

std::optional<LeadPlan> plan_by_words(std::vector<SourceLine> const& lines,
                                      Numbering const& numbering) {
  return PairPlanner{lines, numbering}.plan();
}

}  // namespace keydrift::printed
