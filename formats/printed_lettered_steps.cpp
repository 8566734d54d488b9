#include "keydrift/formats/printed_lettered_steps.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestSteps = 3;
constexpr std::size_t kLongestStepTitle = 80;  // bytes

struct LetteredLead {
  std::size_t line{};
  Label label;
};

struct LetteredStep {
  std::size_t title{};  // its line
  std::uint32_t number{};
  std::vector<LetteredLead> leads;
};

// What the line leads to, if that is a couplet's number.
std::optional<std::uint32_t> number_of_next_step(std::string_view text) {
  auto const split = split_at_leader(text, Numbering{});
  auto const behind =
      split.kind == LeaderKind::dots || split.kind == LeaderKind::arrow
          ? read_reference(strip_pointer(trim(text.substr(split.destination_begin))))
          : std::nullopt;
  if (behind) return behind->number;
  auto const trailing = trailing_reference(text);
  return trailing ? std::optional{trailing->reference.number} : std::nullopt;
}

// "2. Shape of the shell", which leads nowhere.
bool is_step_title(SourceLine const& line, Label const& label) {
  bool const number = label.family == LabelFamily::digits && !label.decimal &&
                      label.letter.empty() && label.marks == 0 && label.back.empty();
  return number && line.text.size() <= kLongestStepTitle && label.text_at < line.text.size() &&
         line.markup.destination_begin == kNotTold && !has_row_of_dots(line.text) &&
         !number_of_next_step(line.text);
}

// "b) wider than high" behind the leads of `step`.
bool goes_on_with(LetteredStep const& step, Label const& label) {
  return label.family == LabelFamily::lower && label.marks == 0 && label.end != LabelEnd::none &&
         label.number == step.leads.size() + 1;
}

class StepFinder {
 public:
  explicit StepFinder(std::vector<SourceLine>& lines) : lines_{lines} {}

  void tell() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& line = lines_[i];
      if (line.text.empty() || line.told || line.markup.role != LineRole::told_by_text) continue;
      if (auto const label = read_label(line.text)) take(i, *label);
    }
    end_run();
  }

 private:
  void take(std::size_t i, Label const& label) {
    if (!run_.empty() && goes_on_with(run_.back(), label)) {
      run_.back().leads.push_back({i, label});
      if (auto const to = number_of_next_step(lines_[i].text)) led_to_.insert(*to);
    } else if (is_step_title(lines_[i], label) &&
               (label.number == 1 || (!run_.empty() && label.number == run_.back().number + 1))) {
      if (label.number == 1) end_run();
      run_.push_back({.title = i, .number = label.number, .leads = {}});
    } else {
      end_run();
    }
  }

  // The leads of an outline have no numbers to go to; those of steps lead to nearly all of them.
  void end_run() {
    if (!run_.empty() && run_.back().leads.empty()) run_.pop_back();  // a section behind the key
    std::size_t reached = 0;
    bool sound = run_.size() >= kFewestSteps;
    for (auto const& step : run_) {
      sound = sound && step.leads.size() > 1;
      reached += led_to_.contains(step.number) ? 1U : 0U;
    }
    if (sound && (reached + 1) * 4 >= run_.size() * 3) tell_run();
    run_.clear();
    led_to_.clear();
  }

  void tell_run() {
    for (auto& step : run_) {
      lines_[step.title].is_no_lead = lines_[step.title].is_title = true;
      for (auto& [at, label] : step.leads) {
        label.family = LabelFamily::digits;
        label.letter = label.printed;
        label.number = step.number;
        lines_[at].told = label;
        lines_[at].told_as_printed = true;
      }
    }
  }

  std::vector<SourceLine>& lines_;
  std::vector<LetteredStep> run_;
  std::set<std::uint32_t> led_to_;  // numbers at the ends of its leads
};

}  // namespace

void tell_lettered_steps(std::vector<SourceLine>& lines) { StepFinder{lines}.tell(); }

}  // namespace keydrift::printed
