#include "keydrift/characters/coincidence.hpp"

#include <algorithm>
#include <numeric>

namespace keydrift {
namespace {

// A couplet with more statements in a lead is none that somebody wrote; see tying.cpp.
constexpr std::size_t kMostStatementsCompared = 200;

void add_contrasts(Statement const& a, Statement const& b,
                   std::map<std::string, StatePairs>& contrasts) {
  if (a.any_of.size() != 1 || b.any_of.size() != 1) return;
  auto const& left = a.any_of[0];
  auto const& right = b.any_of[0];
  bool const comparable = left.character.starts_with('~') && left.character == right.character &&
                          !left.negated && !right.negated;
  if (!comparable) return;
  for (auto const& state : left.states) {
    if (std::binary_search(right.states.begin(), right.states.end(), state)) return;
  }
  auto& pairs = contrasts[left.character];
  for (auto const& one : left.states) {
    for (auto const& other : right.states) pairs.insert(std::minmax(one, other));
  }
}

}  // namespace

std::map<std::string, StatePairs> opaque_contrasts(std::span<Edition const* const> editions) {
  std::map<std::string, StatePairs> contrasts;
  for (auto const* edition : editions) {
    for (auto const& couplet : edition->couplets) {
      for (std::size_t i = 0; i < couplet.leads.size(); ++i) {
        auto const& left = couplet.leads[i].statements;
        for (std::size_t j = i + 1; j < couplet.leads.size(); ++j) {
          auto const& right = couplet.leads[j].statements;
          if (left.size() > kMostStatementsCompared || right.size() > kMostStatementsCompared) {
            continue;
          }
          for (auto const& a : left) {
            for (auto const& b : right) add_contrasts(a, b, contrasts);
          }
        }
      }
    }
  }
  return contrasts;
}

StatePairs exclusive_states(LexiconCharacter const& character) {
  StatePairs pairs;
  for (auto const& a : character.states) {
    for (auto const& b : character.states) {
      if (a.id < b.id) pairs.emplace(a.id, b.id);
    }
  }
  for (auto const& state : character.states) {
    for (auto const& other : state.not_told_from) {
      pairs.erase(std::pair<std::string, std::string>{std::minmax(state.id, other)});
    }
  }
  return pairs;
}

std::vector<std::vector<std::uint32_t>> states_together(std::vector<std::string> const& states,
                                                        StatePairs const& exclusive) {
  auto const count = static_cast<std::uint32_t>(states.size());
  auto const excludes = [&](std::uint32_t a, std::uint32_t b) {
    return exclusive.contains(
        std::pair<std::string, std::string>{std::minmax(states[a], states[b])});
  };
  std::vector<std::vector<std::uint32_t>> sets;
  // Sets in the order of their sizes: those of one size come from those of the size before.
  std::vector<std::vector<std::uint32_t>> last;
  for (std::uint32_t i = 0; i < count; ++i) last.push_back({i});
  while (!last.empty()) {
    std::vector<std::vector<std::uint32_t>> next;
    for (auto const& set : last) {
      for (auto more = set.back() + 1; more < count; ++more) {
        bool const free = std::none_of(set.begin(), set.end(),
                                       [&](std::uint32_t one) { return excludes(one, more); });
        if (!free) continue;
        if (sets.size() + next.size() == kMostTogether) {
          std::vector<std::uint32_t> all(count);
          std::iota(all.begin(), all.end(), 0U);
          return {all};
        }
        next.push_back(set);
        next.back().push_back(more);
      }
    }
    sets.insert(sets.end(), next.begin(), next.end());
    last = std::move(next);
  }
  return sets;
}

}  // namespace keydrift
