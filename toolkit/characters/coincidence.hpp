#pragma once
// States of one character that may be seen together, because nothing says that they exclude each
// other.  Inner header of space.

#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift {

// Pairs of states, the lesser first.
using StatePairs = std::set<std::pair<std::string, std::string>>;

// By opaque character: the states that the leads of some couplet contrast.  Leads that allow a
// state in common do not tell their other states apart.
[[nodiscard]] std::map<std::string, StatePairs> opaque_contrasts(
    std::span<Edition const* const> editions);

// The states of the lexicon's character that exclude each other: all, but for those that are said
// not to be told apart.
[[nodiscard]] StatePairs exclusive_states(LexiconCharacter const& character);

// Beyond so many combinations one cell stands for all of them: then no state refutes another.
inline constexpr std::size_t kMostTogether = 128;

// Every set of two states or more (rows of `states`, ascending) of which no two exclude each
// other.  When there are more than kMostTogether, the set of all states alone: it claims less.
[[nodiscard]] std::vector<std::vector<std::uint32_t>> states_together(
    std::vector<std::string> const& states, StatePairs const& exclusive);

}  // namespace keydrift
