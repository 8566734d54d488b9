#pragma once
// Outlines and lettered keys of every usual way to label their leads, each of another sound tree.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "made_scan.hpp"

namespace keydrift::test {

enum class OutlineLabels : std::uint8_t {
  primes,            // a, a', a" and a'", the letters of each couplet from a
  running_primes,    // the same, the letters of each rank running on through the key
  indices,           // a, a1, a2, …
  running_indices,   // the same, running on
  doubled,           // a and aa, b and bb beneath them
  alphabets,         // A and B, I and II, a and b, 1 and 2
  alphabets_closed,  // the same with signs of their own behind them: A. 1. a) α)
  brackets,          // A. a. 1. (a) (1)
  levels,            // a and a, b and b beneath them
  couplets           // letters of couplets, which leads end in: "a. Wings clear b."
};
inline constexpr std::array kOutlineLabels{
    OutlineLabels::primes,           OutlineLabels::running_primes, OutlineLabels::indices,
    OutlineLabels::running_indices,  OutlineLabels::doubled,        OutlineLabels::alphabets,
    OutlineLabels::alphabets_closed, OutlineLabels::brackets,       OutlineLabels::levels,
    OutlineLabels::couplets};
[[nodiscard]] std::string_view to_word(OutlineLabels labels);

struct MadeOutlineLead {
  std::string words;  // none begins as another one does
  std::string to;     // a name, or the words of the first lead of the couplet
};

struct MadeOutline {
  std::string text;
  std::vector<MadeOutlineLead> leads;
};

// The same for the same labels and seed everywhere.  `scan`: damages labels and letters at ends,
// if there is one.
[[nodiscard]] MadeOutline made_outline(OutlineLabels labels, std::uint32_t seed, Scan* scan);

}  // namespace keydrift::test
