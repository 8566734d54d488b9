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

double entropy(std::map<Group, double> const& weights) {
  double total = 0;
  for (auto const& [group, weight] : weights) total += weight;
  double bits = 0;
  for (auto const& [group, weight] : weights) {
    if (weight > 0) bits -= weight / total * std::log2(weight / total);
  }
  return bits;
}

struct AnswerCells {
  Cells cells;
  Set allowed;  // hypotheses that this answer leaves possible
};

// Cells of the character grouped by the hypotheses they allow; cells that allow none are left out.
std::vector<AnswerCells> answers_for(CharacterSpace const& space, CharacterIndex character,
                                     Set const& set) {
  auto const& domain = space[character];
  std::map<std::vector<bool>, Cells> groups;
  std::map<std::vector<bool>, std::uint32_t> first_cell;
  for (std::uint32_t cell = 0; cell < domain.cells; ++cell) {
    std::vector<bool> allows;
    for (auto const* hypothesis : set) {
      allows.push_back(has_cell(space.part(hypothesis->box, character), cell));
    }
    if (std::find(allows.begin(), allows.end(), true) == allows.end()) continue;
    auto& cells = groups[allows];
    if (cells.empty()) {
      cells.assign(domain.words, 0);
      first_cell[allows] = cell;
    }
    add_cell(cells, cell);
  }
  std::vector<std::pair<std::uint32_t, AnswerCells>> ordered;
  for (auto& [allows, cells] : groups) {
    AnswerCells answer{std::move(cells), {}};
    for (std::size_t i = 0; i < set.size(); ++i) {
      if (allows[i]) answer.allowed.push_back(set[i]);
    }
    ordered.emplace_back(first_cell[allows], std::move(answer));
  }
  std::sort(ordered.begin(), ordered.end(),
            [](auto const& a, auto const& b) { return a.first < b.first; });
  // "Some other state" is no answer that anybody can be asked to look for, where there are others.
  if (auto const other = domain.other(); other && ordered.size() > 2) {
    std::erase_if(ordered, [&](auto const& one) {
      return one.first == *other && count_cells(one.second.cells) == 1;
    });
  }
  std::vector<AnswerCells> answers;
  for (auto& [cell, answer] : ordered) answers.push_back(std::move(answer));
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
    if (row >= kMostInARow || questions_.size() >= kMostQuestions) return std::nullopt;
    auto const groups = group(set);
    std::set<Group> distinct;
    for (auto const& one : groups) distinct.insert(one);
    if (distinct.size() < 2) return std::nullopt;

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
    for (auto const& cells : best_answers) {
      Answer answer;
      answer.words = space_.words(*best, cells.cells);
      answer.cells = cells.cells;
      answer.outcome = judge_.outcome_of(determination_, cells.allowed);
      std::set<TaxonId> taxa;
      for (auto const* hypothesis : cells.allowed) taxa.insert(hypothesis->new_taxon);
      answer.new_taxa.assign(taxa.begin(), taxa.end());
      bool const settled = taxa.size() == 1 || answer.outcome == Outcome::stands;
      if (!settled) {
        Set narrowed;
        for (auto const* hypothesis : cells.allowed) {
          auto copy = *hypothesis;
          intersect(space_.part(copy.box, *best), cells.cells);
          narrowed.push_back(keep(std::move(copy)));
        }
        answer.next = add(narrowed, row + 1);
      }
      questions_[at].answers.push_back(std::move(answer));
    }
    return at;
  }

  // By kinship where that differs within the set, else by name.
  std::vector<Group> group(Set const& set) const {
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
    return groups;
  }

  static double gain(Set const& set, std::vector<Group> const& groups,
                     std::vector<AnswerCells> const& answers) {
    // Ways to the same terminal share its weight.
    std::map<TaxonId, double> ways;
    for (auto const* hypothesis : set) ways[hypothesis->new_taxon] += 1;
    std::map<Hypothesis const*, double> spread;
    for (auto const& answer : answers) {
      for (auto const* hypothesis : answer.allowed) spread[hypothesis] += 1;
    }
    std::map<Group, double> before;
    std::map<Hypothesis const*, Group> group_of;
    for (std::size_t i = 0; i < set.size(); ++i) {
      before[groups[i]] += 1 / ways[set[i]->new_taxon];
      group_of.emplace(set[i], groups[i]);
    }
    double const whole = static_cast<double>(ways.size());
    double after = 0;
    for (auto const& answer : answers) {
      std::map<Group, double> weights;
      double share = 0;
      for (auto const* hypothesis : answer.allowed) {
        double const weight = 1 / ways[hypothesis->new_taxon] / spread[hypothesis];
        weights[group_of.at(hypothesis)] += weight;
        share += weight;
      }
      after += share / whole * entropy(weights);
    }
    return entropy(before) - after;
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
