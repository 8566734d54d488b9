#pragma once
// Which statements of two leads contrast.

#include <algorithm>
#include <cstddef>
#include <functional>
#include <string>
#include <unordered_set>
#include <vector>

#include "keydrift/characters/reading/draft.hpp"

namespace keydrift::reading {

// A lead with more statements is none that somebody wrote; its statements are compared with
// nothing, so that the cost stays in proportion to the text.
inline constexpr std::size_t kMostStatements = 200;
// A lead is compared with so many rivals behind it: no key has such couplets, damaged files do.
inline constexpr std::size_t kMostRivals = 64;
// One behind the last rival that lead i of a couplet of `leads` leads is compared with.
[[nodiscard]] inline std::size_t end_of_rivals(std::size_t leads, std::size_t i) {
  return std::min(leads, i + 1 + kMostRivals);
}

// Numeric characters whose statements might as well be words.
using WordsOfNumbers = std::unordered_set<std::string>;

// The words of an opaque atom.
[[nodiscard]] inline std::string const& words_of(DraftAtom const& atom) {
  return atom.atom.states.front();
}
// Of a draft whose one atom is opaque or, its number taken for words, plain.
[[nodiscard]] std::string const& words_of(Draft const& draft);

// Calls use(draft of a, draft of b) for the statements of two leads that contrast; each has at most
// one partner.  `as_words`: numeric characters whose statements take part.
void for_contrasts(std::vector<Draft> const& a, std::vector<Draft> const& b,
                   WordsOfNumbers const& as_words,
                   std::function<void(Draft const&, Draft const&)> const& use);

}  // namespace keydrift::reading
