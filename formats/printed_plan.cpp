#include "keydrift/formats/printed_plan.hpp"

#include <algorithm>
#include <array>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_breaks.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

// What the labels of one rank are like over the whole file.
struct RankTally {
  std::size_t labels{};
  std::size_t firsts{};   // A, a, I, 1
  std::size_t seconds{};  // B, b, II, 2
  std::size_t repeats{};  // AA, a', **
  std::size_t twice{};    // AAA, a'', a2
  std::size_t upper{};    // words begin with a capital
  std::size_t full{};     // words stand on the label's line

  [[nodiscard]] std::size_t plain() const { return labels - repeats; }
  [[nodiscard]] bool mostly_upper() const { return upper * 2 > labels; }
};

using Tallies = std::array<RankTally, RankLabel::kRanks>;

bool is_bare(RankLabel const& rank) { return rank.label.end == LabelEnd::none; }

bool words_upper(SourceLine const& line, Label const& label) {
  return starts_with_upper(line.text.substr(label.text_at));
}

class LabelPlanner {
 public:
  explicit LabelPlanner(std::vector<SourceLine> const& lines) : lines_{lines}, breaks_{lines} {}

  std::optional<LeadPlan> plan() && {
    read_all();
    settle_numerals();
    tally();
    LeadPlan plan;
    plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    std::size_t before = lines_.size();  // the last line with text
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].text.empty()) continue;
      bool const gap = i == 0 || lines_[i - 1].text.empty();
      // "5. AUS Roe" above "I. …": the genus has its number in a book.
      bool const title = plan.starts.empty() && ranks_[i] && ranks_[i]->ordinal > 1 &&
                         ranks_[i]->alphabet == Alphabet::digits && i + 1 < lines_.size() &&
                         lines_[i + 1].text.empty();
      if (ranks_[i] && !title && is_start(i, gap ? lines_.size() : before)) {
        plan.start_at[i] = static_cast<std::uint32_t>(plan.starts.size());
        plan.starts.push_back({static_cast<std::uint32_t>(i), *ranks_[i], false});
      }
      before = i;
    }
    if (plan.starts.size() < 2) return std::nullopt;
    return plan;
  }

 private:
  void read_all() {
    ranks_.resize(lines_.size());
    numerals_.resize(lines_.size());
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      for (auto& reading : read_rank_labels(lines_[i].text)) {
        bool const roman =
            reading.alphabet == Alphabet::roman_upper || reading.alphabet == Alphabet::roman_lower;
        (roman ? numerals_ : ranks_)[i] = reading;
      }
    }
  }

  // Are I, V and X numerals, or the letters after H, U and W?  Decided for each kind of label: they
  // are numerals where one and two occur and no H does.
  void settle_numerals() {
    Tallies numerals{};
    std::array<bool, RankLabel::kRanks> has_h{};
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (auto const& numeral = numerals_[i]) {
        auto& tally = numerals[numeral->rank()];
        if (numeral->ordinal == 1) ++tally.firsts;
        if (numeral->ordinal == 2 || (numeral->ordinal == 1 && numeral->repeats > 0)) {
          ++tally.seconds;
        }
      }
      if (auto const& letter = ranks_[i]; letter && letter->ordinal == 8) {
        bool const upper = letter->alphabet == Alphabet::upper;
        if (upper || letter->alphabet == Alphabet::lower) {
          auto numeral = *letter;
          numeral.alphabet = upper ? Alphabet::roman_upper : Alphabet::roman_lower;
          has_h[numeral.rank()] = true;
        }
      }
    }
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& numeral = numerals_[i];
      if (!numeral) continue;
      auto const& tally = numerals[numeral->rank()];
      if (tally.firsts > 0 && tally.seconds > 0 && !has_h[numeral->rank()]) ranks_[i] = numeral;
    }
  }

  void tally() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& rank = ranks_[i];
      if (!rank) continue;
      auto& tally = tallies_[rank->rank()];
      ++tally.labels;
      bool const decimal = !rank->decimal.empty();
      if (rank->repeats > 0 || decimal) ++tally.repeats;
      if (rank->repeats > 1) ++tally.twice;
      if (rank->repeats == 0 && rank->ordinal == 1) ++tally.firsts;
      if (rank->repeats == 0 && rank->ordinal == 2) ++tally.seconds;
      if (words_upper(lines_[i], rank->label)) ++tally.upper;
      if (rank->label.text_at < lines_[i].text.size()) ++tally.full;
    }
    for (std::uint32_t rank = 0; rank < RankLabel::kRanks; ++rank) {
      accepted_[rank] = is_in_use(tallies_[rank]);
    }
  }

  [[nodiscard]] static bool is_in_use(RankTally const& tally) {
    if (tally.labels < 2) return false;
    bool const counted = tally.firsts > 0 && (tally.seconds > 0 || tally.firsts > 1);
    bool const repeated =
        tally.repeats > 0 && tally.plain() > 0 && tally.repeats * 4 >= tally.plain();
    bool const indexed = tally.plain() == 0 && tally.twice > 0;
    return counted || repeated || indexed;
  }

  [[nodiscard]] bool is_start(std::size_t i, std::size_t before) const {
    auto const& rank = *ranks_[i];
    auto const& line = lines_[i];
    if (starts_caption(line.text) || is_ruled(line.text)) return false;
    bool const upper = words_upper(line, rank.label);
    bool const alone = rank.label.text_at >= line.text.size();
    if (rank.alphabet == Alphabet::dash) {
      // A dash answers labels; a line that goes on with one is not set so.
      return !alone && (upper || before == lines_.size() || !breaks_.forced(before, i));
    }
    if (!accepted_[rank.rank()]) return false;
    auto const& tally = tallies_[rank.rank()];
    bool const letter = rank.alphabet == Alphabet::upper || rank.alphabet == Alphabet::lower;
    if (alone) return !is_bare(rank) || rank.repeats > 0;
    // "A. bus" is a name, "a leaf" and "5 spines" go on with a sentence.
    if (tally.mostly_upper() && !upper) return false;
    if (letter && is_bare(rank) && tally.upper * 5 < tally.labels * 4 &&
        tally.repeats * 3 < tally.labels) {
      return false;
    }
    if (before == lines_.size()) return true;
    auto const hyphen = code_point_before(lines_[before].text, lines_[before].text.size()).value;
    if (is_dash(hyphen) || hyphen == ',') return false;
    return !is_bare(rank) || rank.repeats > 0 || upper || !breaks_.forced(before, i);
  }

  std::vector<SourceLine> const& lines_;
  LineBreaks breaks_;
  std::vector<std::optional<RankLabel>> ranks_;     // by line
  std::vector<std::optional<RankLabel>> numerals_;  // the same read as roman numerals
  Tallies tallies_{};
  std::array<bool, RankLabel::kRanks> accepted_{};
};

}  // namespace

std::optional<LeadPlan> plan_by_labels(std::vector<SourceLine> const& lines) {
  return LabelPlanner{lines}.plan();
}

}  // namespace keydrift::printed
