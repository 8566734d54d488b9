#pragma once
// Which numbers state something, and of what.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/reading/clause_reader.hpp"
#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/matches.hpp"
#include "keydrift/characters/reading/numbers.hpp"

namespace keydrift::reading {

// Cheap test before measures_at().
[[nodiscard]] bool may_begin_measure(LeadText const& text, std::uint32_t at);

// Not the label of a part ("tergite 2 black"), a page, a couplet or a year.
[[nodiscard]] bool counts_or_measures(LeadText const& text, Clause const& clause,
                                      Measure const& measure);

struct NumberAtom {
  Atom atom;
  std::optional<std::uint32_t> row;  // the lexicon's character, if it has one
  // Words in front that describe the part and do not name the character ("tufted" of "plants
  // tufted 5–20 cm tall"): tokens.
  std::vector<std::uint32_t> description;
  std::string bare_of;   // see DraftAtom
  bool unitless{false};  // "3–4 long"
};

// The predicate of a measure.  Without a character of the lexicon the words around the number name
// one: "spike 2–3 cm long" -> "~n:spike length|mm", "twice as long as wide" -> "~n:…
// length/width|". `tokens`: those of the comma-separated stretch around it.
[[nodiscard]] NumberAtom number_atom(Measure const& measure, LeadText const& text,
                                     std::vector<std::uint32_t> const& tokens,
                                     ClauseMatches const& matches, LexiconIndex const& lexicon,
                                     Carried const& carried, double tolerance);

}  // namespace keydrift::reading
