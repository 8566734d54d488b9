#pragma once
// Two small editions for tests.

#include "statements.hpp"
#include "two_editions.hpp"

namespace keydrift::test {

// The worked example of two editions over 18 cells: an awn, present or absent, and a leaf of 1 to 9
// cm.  Old: awn first, then leaf below 5; new: leaf below 4 first, then awn.
inline TwoEditions awn_and_leaf() {
  auto old_edition =
      make_edition("old", {{"1", {{"awn present", "Aus alba"}, {"awn absent", "2"}}},
                           {"2", {{"leaf < 5", "Aus bella"}, {"leaf >= 5", "Aus clara"}}}});
  say(old_edition, 0, 0, {states("awn", {"present"})});
  say(old_edition, 0, 1, {states("awn", {"absent"})});
  say(old_edition, 1, 0, {range("leaf", below(5))});
  say(old_edition, 1, 1, {range("leaf", from(5))});
  auto new_edition =
      make_edition("new", {{"1", {{"leaf < 4", "Aus bella"}, {"leaf >= 4", "2"}}},
                           {"2", {{"awn present", "Aus alba"}, {"awn absent", "Aus clara"}}}});
  say(new_edition, 0, 0, {range("leaf", below(4))});
  say(new_edition, 0, 1, {range("leaf", from(4))});
  say(new_edition, 1, 0, {states("awn", {"present"})});
  say(new_edition, 1, 1, {states("awn", {"absent"})});
  return TwoEditions{std::move(old_edition), std::move(new_edition)};
}

}  // namespace keydrift::test
