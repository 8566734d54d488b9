#include "keydrift/characters/drafting/grouping.hpp"

#include "keydrift/characters/drafting/naming.hpp"

#include <algorithm>
#include <numeric>
#include <optional>

namespace keydrift::drafting {
namespace {

using WordingKey = std::pair<std::string, std::string>;
using RowPair = std::pair<std::size_t, std::size_t>;

// Sets of wordings of which no two exclude each other, the empty one among them; counted up to
// `most`.
std::size_t count_combinations(std::vector<Wording> const& wordings,
                               std::vector<std::size_t> const& rows, std::size_t most) {
  std::vector<std::vector<std::size_t>> sets{{}};
  for (auto const row : rows) {
    auto const before = sets.size();
    for (std::size_t i = 0; i < before; ++i) {
      bool const excluded = std::any_of(sets[i].begin(), sets[i].end(), [&](std::size_t other) {
        return wordings[row].excludes.contains(other);
      });
      if (excluded) continue;
      if (sets.size() >= most) return most + 1;
      auto with = sets[i];
      with.push_back(row);
      sets.push_back(std::move(with));
    }
  }
  return sets.size();
}

class Groups {
 public:
  explicit Groups(std::vector<Wording>& wordings)
      : wordings_{wordings}, parent_(wordings.size()), members_(wordings.size()) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
    for (std::size_t i = 0; i < members_.size(); ++i) members_[i] = {i};
  }

  std::size_t root(std::size_t row) {
    while (parent_[row] != row) row = parent_[row] = parent_[parent_[row]];
    return row;
  }

  void join(std::size_t a, std::size_t b) {
    a = root(a);
    b = root(b);
    if (a == b || meet_in_a_lead(a, b)) return;
    auto together = members_[a];
    together.insert(together.end(), members_[b].begin(), members_[b].end());
    std::sort(together.begin(), together.end());
    if (count_combinations(wordings_, together, kMostCombinations) > kMostCombinations) return;
    if (a > b) std::swap(a, b);
    parent_[b] = a;
    members_[a] = std::move(together);
    members_[b].clear();
  }

  [[nodiscard]] std::vector<std::vector<std::size_t>> take() && {
    std::vector<std::vector<std::size_t>> groups;
    for (auto& members : members_) {
      if (!members.empty()) groups.push_back(std::move(members));
    }
    std::sort(groups.begin(), groups.end());
    return groups;
  }

 private:
  // Two things that one lead says side by side are not one character; alternatives of one
  // statement are.
  [[nodiscard]] bool meet_in_a_lead(std::size_t a, std::size_t b) const {
    for (auto const one : members_[a]) {
      for (auto const other : members_[b]) {
        if (wordings_[one].beside.contains(other)) return true;
      }
    }
    return false;
  }

  std::vector<Wording>& wordings_;
  std::vector<std::size_t> parent_;
  std::vector<std::vector<std::size_t>> members_;
};

// What is absent is nothing else: said by the words themselves, whatever the couplets contrast.
void exclude_absence(std::vector<Wording>& wordings) {
  // Wordings of one structure stand together.
  for (std::size_t a = 0; a < wordings.size(); ++a) {
    if (!says_absent(wordings[a].words)) continue;
    auto const& structure = wordings[a].structure;
    auto first = a;
    while (first > 0 && wordings[first - 1].structure == structure) --first;
    for (auto b = first; b < wordings.size() && wordings[b].structure == structure; ++b) {
      if (says_absent(wordings[b].words)) continue;
      wordings[a].excludes.insert(b);
      wordings[b].excludes.insert(a);
    }
  }
}

}  // namespace

Grouping group_wordings(Sayings const& sayings, std::span<Edition const* const> editions) {
  Grouping result;
  std::map<WordingKey, std::size_t> rows;
  for (auto const& saying : sayings.all) {
    if (saying.subject == 0) continue;
    for (auto const& item : saying.items)
      rows.emplace(WordingKey{saying.structure(), item.words}, 0);
  }
  for (auto& [key, row] : rows) {
    row = result.wordings.size();
    result.wordings.push_back({.structure = key.first, .words = key.second});
  }
  auto& wordings = result.wordings;
  std::vector<std::vector<std::size_t>> rows_of(sayings.all.size());
  std::map<std::pair<CoupletSpot, std::uint32_t>, std::vector<std::size_t>> leads;  // sayings
  for (std::size_t s = 0; s < sayings.all.size(); ++s) {
    auto const& saying = sayings.all[s];
    if (saying.subject == 0) continue;
    CoupletSpot const couplet{saying.at.edition, saying.at.couplet};
    for (auto const& item : saying.items) {
      auto const row = rows.at({saying.structure(), item.words});
      rows_of[s].push_back(row);
      auto& wording = wordings[row];
      ++wording.printed[item.printed];
      if (!saying.printed_subject.empty()) ++wording.subjects[saying.printed_subject];
      wording.said.insert(couplet);
      auto const& language = editions[saying.at.edition]->front.language;
      wording.languages.insert(language.substr(0, language.find('-')));
    }
    leads[{couplet, saying.at.lead}].push_back(s);
  }
  for (auto const& [lead, said] : leads) {
    for (std::size_t i = 0; i < said.size(); ++i) {
      for (std::size_t j = i + 1; j < said.size(); ++j) {
        if (sayings.all[said[i]].structure() != sayings.all[said[j]].structure()) continue;
        for (auto const a : rows_of[said[i]]) {
          for (auto const b : rows_of[said[j]]) {
            wordings[a].beside.insert(b);
            wordings[b].beside.insert(a);
          }
        }
      }
    }
  }
  std::map<RowPair, std::size_t> contrasts;
  for (auto const& contrast : sayings.contrasts) {
    auto const& left = rows_of[contrast.first];
    auto const& right = rows_of[contrast.second];
    // Leads that have a state in common do not tell their other states apart.
    bool const overlap = std::any_of(left.begin(), left.end(), [&](std::size_t row) {
      return std::find(right.begin(), right.end(), row) != right.end();
    });
    auto const& at = sayings.all[contrast.first].at;
    for (auto const a : left) {
      for (auto const b : right) {
        if (overlap || wordings[a].beside.contains(b)) continue;
        ++contrasts[a < b ? RowPair{a, b} : RowPair{b, a}];
        for (auto const row : {a, b}) {
          wordings[row].contrasted.insert({at.edition, at.couplet});
          wordings[row].excludes.insert(row == a ? b : a);
        }
      }
    }
  }
  exclude_absence(wordings);
  std::vector<std::pair<std::size_t, RowPair>> ordered;
  for (auto const& [pair, count] : contrasts) ordered.emplace_back(count, pair);
  std::stable_sort(ordered.begin(), ordered.end(),
                   [](auto const& a, auto const& b) { return a.first > b.first; });
  Groups groups{wordings};
  for (auto const& [count, pair] : ordered) groups.join(pair.first, pair.second);
  // Alternatives of one statement belong together, though nothing tells them apart.
  std::set<RowPair> listed;
  for (auto const& some : rows_of) {
    for (std::size_t i = 1; i < some.size(); ++i) {
      listed.insert({std::min(some[0], some[i]), std::max(some[0], some[i])});
    }
  }
  for (auto const& [a, b] : listed) groups.join(a, b);
  result.characters = std::move(groups).take();
  return result;
}

}  // namespace keydrift::drafting
