// What to look at next: the question that best separates the possible outcomes for its trouble.
//
// Source of the approach: equivalence class determination (Golovin & Krause 2011, JAIR 42: 427-486,
// read as a summary): hypotheses are grouped by what follows from them, and the question is chosen
// that tells the groups apart, not the single hypotheses.  Information is Shannon's; the cost is
// that of the look (see cost_of).  Every possible result weighs the same, and its weight is spread
// evenly over the answers that it allows: no frequencies are made up.

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "keydrift/redetermination/judge.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kMostQuestions = 12;  // nodes of one decision
constexpr std::size_t kMostInARow = 4;      // a person follows no longer chain at the cabinet

using Set = std::vector<Hypothesis const*>;

// What follows from a hypothesis, as far as the question goes.
using Group = std::pair<Kinship, std::optional<TaxonId>>;

double entropy_of_shares(std::vector<double> const& weights) {
  double total = 0;
  for (auto const weight : weights) total += weight;
  double bits = 0;
  for (auto const weight : weights) {
    if (weight > 0) bits -= weight / total * std::log2(weight / total);
  }
  return bits;
}

struct AnswerCells {
  Cells cells;
  std::vector<std::size_t> allowed;  // hypotheses that this answer leaves possible: rows of the set
};

// Cells of the character grouped by the hypotheses they allow, in the order of their first cells;
// cells that allow none are left out.
std::vector<AnswerCells> answers_for(CharacterSpace const& space, CharacterIndex character,
                                     Set const& set) {
  auto const& domain = space[character];
  std::vector<AnswerCells> answers;
  std::optional<std::size_t> of_other;
  std::vector<std::size_t> allowed;
  for (std::uint32_t cell = 0; cell < domain.cells; ++cell) {
    allowed.clear();
    for (std::size_t i = 0; i < set.size(); ++i) {
      if (has_cell(space.part(set[i]->box, character), cell)) allowed.push_back(i);
    }
    if (allowed.empty()) continue;
    auto at = std::find_if(answers.begin(), answers.end(),
                           [&](AnswerCells const& one) { return one.allowed == allowed; });
    if (at == answers.end()) {
      if (cell == domain.other()) of_other = answers.size();
      answers.push_back({Cells(domain.words), allowed});
      at = answers.end() - 1;
    }
    add_cell(at->cells, cell);
  }
  // "Some other state" is no answer that anybody can be asked to look for, where there are others.
  if (of_other && answers.size() > 2 && count_cells(answers[*of_other].cells) == 1) {
    answers.erase(answers.begin() + static_cast<std::ptrdiff_t>(*of_other));
  }
  return answers;
}

class Asker {
 public:
  Asker(Judge const& judge, Determination const& determination, CharacterSpace const& space)
      : judge_{judge}, determination_{determination}, space_{space} {}

  std::vector<Question> ask(Set const& all) {
    add(all, 0);
    return std::move(questions_);
  }

 private:
  // Adds the best question for the set; nullopt when none separates anything.
  std::optional<std::size_t> add(Set const& set, std::size_t row) {
    if (set.empty() || row >= kMostInARow || questions_.size() >= kMostQuestions)
      return std::nullopt;
    auto const groups = group(set);
    if (*std::max_element(groups.begin(), groups.end()) == 0) return std::nullopt;

    std::optional<CharacterIndex> best;
    std::vector<AnswerCells> best_answers;
    double best_value = 1e-9;
    for (std::uint32_t c = 0; c < space_.size(); ++c) {
      CharacterIndex const character{c};
      bool const differs = std::any_of(set.begin(), set.end(), [&](Hypothesis const* hypothesis) {
        return !std::ranges::equal(space_.part(hypothesis->box, character),
                                   space_.part(set.front()->box, character));
      });
      if (!differs) continue;
      auto answers = answers_for(space_, character, set);
      if (answers.size() < 2) continue;
      double const value = gain(set, groups, answers) / cost_of(space_[character].difficulty);
      // Characters come in order of id, so ties go to the first name.
      if (value > best_value + 1e-9) {
        best_value = value;
        best = character;
        best_answers = std::move(answers);
      }
    }
    if (!best) return std::nullopt;

    auto const at = questions_.size();
    questions_.push_back({.character = space_[*best].id,
                          .label = space_[*best].label,
                          .difficulty = space_[*best].difficulty,
                          .answers = {}});
    for (auto const& one : best_answers) {
      Answer answer;
      answer.words = space_.words(*best, one.cells);
      answer.cells = one.cells;
      Set allowed;
      for (auto const i : one.allowed) allowed.push_back(set[i]);
      answer.outcome = judge_.outcome_of(determination_, allowed);
      std::set<TaxonId> taxa;
      for (auto const* hypothesis : allowed) taxa.insert(hypothesis->new_taxon);
      answer.new_taxa.assign(taxa.begin(), taxa.end());
      bool const settled = taxa.size() == 1 || answer.outcome == Outcome::stands;
      if (!settled) {
        Set narrowed;
        for (auto const* hypothesis : allowed) {
          auto copy = *hypothesis;
          intersect(space_.part(copy.box, *best), one.cells);
          narrowed.push_back(keep(std::move(copy)));
        }
        answer.next = add(narrowed, row + 1);
      }
      questions_[at].answers.push_back(std::move(answer));
    }
    return at;
  }

  // By kinship where that differs within the set, else by name: numbers from 0, by row of the set.
  // Precondition: it is not empty.
  std::vector<std::size_t> group(Set const& set) const {
    std::vector<Group> groups;
    std::set<Kinship> kinds;
    for (auto const* hypothesis : set) {
      auto const kin = judge_.kinship(determination_, hypothesis->old_taxon, hypothesis->new_taxon);
      kinds.insert(kin);
      groups.emplace_back(kin, hypothesis->new_taxon);
    }
    if (kinds.size() > 1) {
      for (auto& one : groups) one.second.reset();
    }
    auto distinct = groups;
    std::sort(distinct.begin(), distinct.end());
    distinct.erase(std::unique(distinct.begin(), distinct.end()), distinct.end());
    std::vector<std::size_t> numbers;
    for (auto const& one : groups) {
      auto const at = std::lower_bound(distinct.begin(), distinct.end(), one);
      numbers.push_back(static_cast<std::size_t>(at - distinct.begin()));
    }
    return numbers;
  }

  static double gain(Set const& set, std::vector<std::size_t> const& groups,
                     std::vector<AnswerCells> const& answers) {
    // Ways to the same terminal share its weight.
    std::map<TaxonId, double> ways_to;
    for (auto const* hypothesis : set) ways_to[hypothesis->new_taxon] += 1;
    std::vector<double> ways;  // by row of the set, as `spread`
    for (auto const* hypothesis : set) ways.push_back(ways_to[hypothesis->new_taxon]);
    std::vector<double> spread(set.size());
    for (auto const& answer : answers) {
      for (auto const i : answer.allowed) spread[i] += 1;
    }
    std::vector<double> before(*std::max_element(groups.begin(), groups.end()) + 1);
    for (std::size_t i = 0; i < set.size(); ++i) before[groups[i]] += 1 / ways[i];
    double const whole = static_cast<double>(ways_to.size());
    double after = 0;
    for (auto const& answer : answers) {
      std::vector<double> weights(before.size());
      double share = 0;
      for (auto const i : answer.allowed) {
        double const weight = 1 / ways[i] / spread[i];
        weights[groups[i]] += weight;
        share += weight;
      }
      after += share / whole * entropy_of_shares(weights);
    }
    return entropy_of_shares(before) - after;
  }

  Hypothesis const* keep(Hypothesis hypothesis) {
    kept_.push_back(std::make_unique<Hypothesis>(std::move(hypothesis)));
    return kept_.back().get();
  }

  Judge const& judge_;
  Determination const& determination_;
  CharacterSpace const& space_;
  std::vector<Question> questions_;
  std::vector<std::unique_ptr<Hypothesis>> kept_;
};

}  // namespace

std::vector<Question> Judge::questions(Determination const& determination,
                                       Possibilities const& possibilities) const {
  Set all;
  for (auto const& hypothesis : possibilities.hypotheses) all.push_back(&hypothesis);
  return Asker{*this, determination, *sides_.new_key->space}.ask(all);
}

}  // namespace keydrift
