#include "keydrift/characters/reading/near.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/characters/reading/tokens.hpp"

namespace keydrift::reading {
namespace {

std::string bare(std::string_view name) {
  std::string bare;
  for (auto const c : fold(name)) {
    if (c != ' ' && c != '-' && c != '_') bare += c;
  }
  return bare;
}

// Optimal string alignment: insertions, deletions, replacements, swaps of neighbours.
std::size_t mistypings(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before_last(b.size() + 1), last(b.size() + 1), current(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    current[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      current[j] = std::min({last[j] + 1, current[j - 1] + 1,
                             last[j - 1] + static_cast<std::size_t>(a[i - 1] != b[j - 1])});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        current[j] = std::min(current[j], before_last[j - 2] + 1);
      }
    }
    std::swap(before_last, last);
    std::swap(last, current);
  }
  return last[b.size()];
}

}  // namespace

std::vector<std::string> near_names(std::string_view name,
                                    std::vector<std::string> const& candidates) {
  auto const wanted = bare(name);
  std::vector<std::pair<std::size_t, std::string>> ranked;
  for (auto const& candidate : candidates) {
    auto const other = bare(candidate);
    if (wanted.empty() || other.empty()) continue;
    auto const longer = std::max(wanted.size(), other.size());
    auto const wrong = mistypings(wanted, other);
    bool const contained =
        std::min(wanted.size(), other.size()) >= 3 &&
        (wanted.find(other) != std::string::npos || other.find(wanted) != std::string::npos);
    if (wrong * 3 <= longer) {
      ranked.emplace_back(wrong, candidate);
    } else if (contained) {
      ranked.emplace_back(longer, candidate);
    }
  }
  std::sort(ranked.begin(), ranked.end());
  ranked.erase(std::unique(ranked.begin(), ranked.end()), ranked.end());
  if (ranked.size() > 3) ranked.resize(3);
  std::vector<std::string> names;
  names.reserve(ranked.size());
  for (auto& [wrong, candidate] : ranked) names.push_back(std::move(candidate));
  return names;
}

}  // namespace keydrift::reading
