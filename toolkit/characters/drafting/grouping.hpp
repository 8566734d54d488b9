#pragma once
// Which ways of putting things are states of one character.  Inner header of drafting.

#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/characters/drafting/sayings.hpp"

namespace keydrift::drafting {

// A couplet of an edition (rows).
using CoupletSpot = std::pair<std::uint32_t, std::uint32_t>;

// A state to be: one way of putting one thing of one structure.
struct Wording {
  std::string structure{};  // in the singular
  std::string words{};
  std::map<std::string, std::size_t> printed{};   // as printed, and how often
  std::map<std::string, std::size_t> subjects{};  // the structure as printed, and how often
  std::set<CoupletSpot> said{};
  std::set<CoupletSpot> contrasted{};
  std::set<std::size_t> excludes{};  // rows of Grouping::wordings
  std::set<std::size_t> beside{};    // … that a lead says together with it
  std::set<std::string> languages{};
};

struct Grouping {
  std::vector<Wording> wordings;  // by structure, then words
  // Rows of wordings, ascending; the groups by their first.
  std::vector<std::vector<std::size_t>> characters;
};

// More combinations of states than this are not made one character: its contrasts beyond are let
// go, which claims less.
inline constexpr std::size_t kMostCombinations = 128;

[[nodiscard]] Grouping group_wordings(Sayings const& sayings,
                                      std::span<Edition const* const> editions);

}  // namespace keydrift::drafting
