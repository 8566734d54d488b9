#pragma once
// What the tests of reading share: two small invented lexicons and a short way of writing
// predicates.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::test {

// Leaves, sheaths, utricles, spikes, stigmas …
[[nodiscard]] Lexicon plant_lexicon();
// Antennae, elytra, carapaces, legs …
[[nodiscard]] Lexicon animal_lexicon();

// An edition of one couplet; its leads lead to Aus, Bus, Cus …
[[nodiscard]] Edition couplet_of(std::vector<std::string> const& leads, std::string language = "");

// "beak-tip = bifid|entire & spike-length >30 mm [usually] & beak = absent [except Aus]".
//   =, ≠      one of the states, none of them
//   3–5       usual range; 3–5 (2–6): with its extremes; ~ in front: approximate
//   or        alternatives of one statement, & between statements
//   [usually] hedged, by that word; [except Aus], [male], [noted]
[[nodiscard]] std::string said(std::vector<Statement> const& statements);
[[nodiscard]] std::string said(Statement const& statement);

// What one lead alone says.
[[nodiscard]] std::string reading_of(std::string_view text, Lexicon const& lexicon,
                                     std::string language = "");
// What the leads of one couplet say, in their order.
[[nodiscard]] std::vector<std::string> readings_of(std::vector<std::string> const& leads,
                                                   Lexicon const& lexicon,
                                                   std::string language = "");

// One row of a table: a lead and what it says.
struct ReadingCase {
  char const* text;
  char const* says;
};

}  // namespace keydrift::test
