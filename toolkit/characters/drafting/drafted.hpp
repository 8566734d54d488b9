#pragma once
// A draft on its way, and the check that it is read as it was meant.  Inner header of drafting.

#include <span>
#include <string>
#include <vector>

#include "keydrift/characters/drafting/sayings.hpp"
#include "keydrift/characters/lexicon.hpp"

namespace keydrift::drafting {

// What the reader ought to make of a statement that the draft was made from.
struct Expected {
  Spot at;
  std::string character;
  std::vector<std::string> states;  // ascending; none for a number
  bool mixed{false};                // alternatives of several characters
};

struct Drafted {
  Lexicon lexicon;
  std::vector<Expected> expected;
};

// Reads the editions by the draft and takes the characters out of it whose statements come out as
// something else, until none does.  So the draft never makes the reader say what no lead says.
void leave_out_misread(Drafted& drafted, std::span<Edition const* const> editions);

}  // namespace keydrift::drafting
