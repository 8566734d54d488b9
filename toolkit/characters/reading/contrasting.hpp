#pragma once
// Which statements of two leads contrast.

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
