#pragma once
// Statements on their way: read from one lead's words, not yet tied to opaque characters.

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/key/statement.hpp"

namespace keydrift::reading {

struct DraftAtom {
  Atom atom;  // opaque: no character yet, the normalised words are the one state
  bool opaque{false};
  // The same words mean a state of another character as well: (character, state) ids, by id.
  std::vector<std::pair<std::string, std::string>> rivals;
  std::string printed;  // the words that have rivals
  std::uint32_t state{};  // opaque: the number of its words, while states are tied
  // A number without a character in the lexicon: what it measures ("spike"), for one that prints no
  // dimension ("spike 3 cm").
  std::string bare_of;
};

struct Draft {
  std::uint32_t begin{};  // bytes of the lead's text
  std::uint32_t end{};
  Strength strength{Strength::firm};
  std::vector<DraftAtom> any_of;
  std::vector<std::string> except;
  std::string exception_words;
  std::string hedge;
  std::vector<Limit> limits;
  Origin origin{Origin::opaque};
  std::vector<Piece> pieces{};  // see Statement

  std::string plain;  // a number's statement in words, should nothing but words contrast with it

  bool anaphora{false};   // "not as above": the contrary of the other leads of the couplet
  bool only{false};       // "in Aus only": the contrary, for all but the groups
  bool backwards{false};  // holds a range printed with its limits the wrong way round
  bool unitless{false};   // holds a length, width … without a unit

  std::vector<std::string> stems;  // content words in the singular, for finding what contrasts
  std::string subject;             // the structure spoken of, in the singular, as far as it is told
  // Read by the lexicon, but not all of it: the words without qualifiers, and what was not read.
  std::string whole;
  std::vector<std::string> rest;
};

}  // namespace keydrift::reading
