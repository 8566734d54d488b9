#include "keydrift/formats/printed_indent_course.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostIndentedLeads = 20000;
constexpr std::size_t kMostIndentStates = 32;  // that are followed from lead to lead
constexpr std::uint32_t kMostLevelsUp = 24;    // couplets from the last one up to that of a rival
constexpr std::uint32_t kNoIndex = 0xFFFFFFFFU;

constexpr std::uint32_t kLoneLeadCost = 8;  // a couplet that has but one
constexpr std::uint32_t kBeneathEnd = 9;    // a couplet beneath a lead that leads elsewhere
constexpr std::uint32_t kLeadsNowhere = 7;  // a lead without an end and without a couplet beneath
constexpr std::uint32_t kFurtherLead = 3;   // a third lead, or one behind it
constexpr std::uint32_t kNotDeeper = 5;     // than the lead that it stands beneath
constexpr std::uint32_t kOtherStep = 1;     // deeper by more or less than is usual
constexpr std::uint32_t kUneven = 1;        // rivals that are set in differently, and
constexpr std::uint32_t kPerStep = 4;       // for as much as a couplet is usually set in
constexpr std::uint32_t kMostUneven = 9;
constexpr std::uint32_t kMostPerLead = 2;  // else indentation tells nothing
constexpr std::uint32_t kLeastGain = 4;    // than the levels that indentation alone tells

// A couplet whose leads are being read, above those that it stands beneath.
struct IndentOpen {
  std::uint32_t above{kNoIndex};
  std::uint32_t indent{};  // of its first lead
  std::uint32_t leads{};
  std::uint32_t depth{};  // couplets above it
  std::uint64_t trace{};  // the same for the same couplets with the same leads
};

struct IndentStep {
  std::uint32_t before{kNoIndex};
  std::optional<std::uint32_t> level;
};

struct IndentState {
  Amiss amiss;
  std::uint32_t open{kNoIndex};
  std::uint32_t step{kNoIndex};
};

// A way up to and with a lead.
struct IndentWay {
  IndentState state;
  IndentOpen open;
  std::optional<std::uint32_t> level;
};

class IndentCourse {
 public:
  explicit IndentCourse(std::vector<IndentedLead> const& leads) : leads_{leads} { find_step(); }

  Amiss follow(OpenLevels const& levels) {
    IndentState state;
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      if (!begins_key(i) && levels[i]) {
        while (opens_[state.open].depth > *levels[i]) close(state);
      }
      auto way = begins_key(i) ? first(state, i) : levels[i] ? rival(state, i) : beneath(state, i);
      state = taken(std::move(way));
    }
    close_all(state);
    return state.amiss;
  }

  OpenLevels best() {
    std::vector<IndentState> states{IndentState{}};
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      std::vector<IndentWay> ways;
      for (auto const& state : states) {
        if (begins_key(i)) {
          ways.push_back(first(state, i));
          continue;
        }
        ways.push_back(beneath(state, i));
        auto above = state;
        for (std::uint32_t up = 0; up < kMostLevelsUp && above.open != kNoIndex; ++up) {
          ways.push_back(rival(above, i));
          close(above);
        }
      }
      states.clear();
      for (auto& way : likeliest(std::move(ways))) states.push_back(taken(std::move(way)));
    }
    for (auto& state : states) close_all(state);
    auto const best = std::min_element(
        states.begin(), states.end(),
        [](IndentState const& a, IndentState const& b) { return a.amiss.cost() < b.amiss.cost(); });
    OpenLevels levels(leads_.size());
    auto at = best->step;
    for (auto i = leads_.size(); i-- > 0; at = steps_[at].before) levels[i] = steps_[at].level;
    return levels;
  }

 private:
  // The most usual number of columns that a couplet is set in beneath a lead without an end.
  void find_step() {
    std::map<std::uint32_t, std::size_t> steps;
    for (std::size_t i = 1; i < leads_.size(); ++i) {
      auto const from = leads_[i - 1].indent;
      if (!leads_[i - 1].led && leads_[i].indent > from) ++steps[leads_[i].indent - from];
    }
    std::size_t most = 0;
    for (auto const& [columns, count] : steps) {
      if (count <= most) continue;
      most = count;
      step_ = columns;
    }
  }

  [[nodiscard]] bool begins_key(std::size_t i) const { return i == 0 || leads_[i].opens_part; }

  void close(IndentState& state) const {
    auto const& open = opens_[state.open];
    if (open.leads < 2) state.amiss.structure += kLoneLeadCost;
    state.open = open.above;
  }
  void close_all(IndentState& state) const {
    while (state.open != kNoIndex) close(state);
  }

  [[nodiscard]] IndentWay opening(IndentState state, std::size_t i) const {
    IndentOpen open;
    open.above = state.open;
    open.indent = leads_[i].indent;
    open.leads = 1;
    if (state.open != kNoIndex) {
      open.depth = opens_[state.open].depth + 1;
      open.trace = opens_[state.open].trace;
    }
    open.trace = mixed(open.trace, i);
    return {state, open, std::nullopt};
  }

  [[nodiscard]] IndentWay first(IndentState state, std::size_t i) const {
    close_all(state);
    return opening(state, i);
  }

  // Lead i opens a couplet beneath the lead before.
  [[nodiscard]] IndentWay beneath(IndentState state, std::size_t i) const {
    if (leads_[i - 1].led) state.amiss.structure += kBeneathEnd;
    auto const above = opens_[state.open].indent;
    if (leads_[i].indent <= above) {
      state.amiss.structure += kNotDeeper;
    } else if (leads_[i].indent - above != step_) {
      state.amiss.indentation += kOtherStep;
    }
    return opening(state, i);
  }

  // Lead i is a further lead of the innermost open couplet.
  [[nodiscard]] IndentWay rival(IndentState state, std::size_t i) const {
    if (!leads_[i - 1].led) state.amiss.structure += kLeadsNowhere;
    auto couplet = opens_[state.open];
    auto const [less, more] = std::minmax(leads_[i].indent, couplet.indent);
    if (less < more) {
      auto const apart = more - less < kMostUneven * step_ ? more - less : kMostUneven * step_;
      state.amiss.indentation += std::min(kMostUneven, kUneven + apart * kPerStep / step_);
    }
    if (couplet.leads > 1) state.amiss.structure += kFurtherLead;
    ++couplet.leads;
    couplet.trace = mixed(couplet.trace, kNoIndex);
    return {state, couplet, couplet.depth};
  }

  [[nodiscard]] IndentState taken(IndentWay way) {
    steps_.push_back({way.state.step, way.level});
    opens_.push_back(way.open);
    way.state.step = static_cast<std::uint32_t>(steps_.size() - 1);
    way.state.open = static_cast<std::uint32_t>(opens_.size() - 1);
    return way.state;
  }

  static std::uint64_t mixed(std::uint64_t trace, std::uint64_t with) {
    return (trace ^ (with + 1)) * 0x9E3779B97F4A7C15U ^ (trace >> 29U);
  }

  // Of ways that leave the same couplets open only the likeliest can win.
  [[nodiscard]] static std::vector<IndentWay> likeliest(std::vector<IndentWay> ways) {
    std::stable_sort(ways.begin(), ways.end(), [](IndentWay const& a, IndentWay const& b) {
      return a.state.amiss.cost() < b.state.amiss.cost();
    });
    std::set<std::uint64_t> seen;
    std::vector<IndentWay> kept;
    for (auto const& way : ways) {
      if (kept.size() == kMostIndentStates) break;
      if (seen.insert(way.open.trace).second) kept.push_back(way);
    }
    return kept;
  }

  std::vector<IndentedLead> const& leads_;
  std::uint32_t step_{1};
  std::vector<IndentOpen> opens_;
  std::vector<IndentStep> steps_;
};

// Couplets are set in deeper than what stands above them, but for a few.
bool are_set_in(std::vector<IndentedLead> const& leads, OpenLevels const& levels) {
  std::size_t beneath = 0;
  std::size_t deeper = 0;
  for (std::size_t i = 1; i < leads.size(); ++i) {
    if (levels[i] || leads[i].opens_part) continue;
    ++beneath;
    if (leads[i].indent > leads[i - 1].indent) ++deeper;
  }
  return deeper >= 2 && deeper * 3 > beneath * 2;
}

struct Likeliest {
  OpenLevels levels;
  Amiss amiss;
};
// nullopt where indentation tells too little.
std::optional<Likeliest> likeliest(std::vector<IndentedLead> const& leads) {
  if (leads.size() < 3 || leads.size() > kMostIndentedLeads) return std::nullopt;
  auto levels = IndentCourse{leads}.best();
  if (!are_set_in(leads, levels)) return std::nullopt;
  auto const amiss = amiss_in(leads, levels);
  if (amiss.cost() > leads.size() * kMostPerLead) return std::nullopt;
  return Likeliest{std::move(levels), amiss};
}

}  // namespace

Amiss amiss_in(std::vector<IndentedLead> const& leads, OpenLevels const& levels) {
  return IndentCourse{leads}.follow(levels);
}

std::optional<Amiss> least_amiss(std::vector<IndentedLead> const& leads) {
  auto const found = likeliest(leads);
  return found ? std::optional{found->amiss} : std::nullopt;
}

std::optional<OpenLevels> likelier_levels(std::vector<IndentedLead> const& leads,
                                          OpenLevels const& levels) {
  auto const plain = amiss_in(leads, levels);
  if (plain.structure == 0) return std::nullopt;
  auto found = likeliest(leads);
  if (!found || found->amiss.cost() + kLeastGain > plain.cost()) return std::nullopt;
  return std::move(found->levels);
}

}  // namespace keydrift::printed
