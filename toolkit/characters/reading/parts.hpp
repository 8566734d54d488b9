#pragma once
// The pieces that commas, "or" and parentheses cut a clause into.

#include <cstdint>
#include <vector>

#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/qualifiers.hpp"

namespace keydrift::reading {

// A part is what stands between two "or"s; a segment is a run of parts that "or" joins.
struct Part {
  std::vector<std::uint32_t>
      tokens;  // what is open or read, in order; signs left out but for those of formulas
  // From the comma, "or" or parenthesis in front of it, so that qualifiers there belong to it, to
  // its last token, parentheses inside included.
  std::uint32_t first{};
  std::uint32_t last{};
};

struct Segment {
  std::vector<Part> parts;
  bool parenthesis{false};
};

// The tokens of all its parts, in order.
[[nodiscard]] std::vector<std::uint32_t> tokens_of(Segment const& segment);

// The number of the comma-separated stretch of every token of the clause (by token - clause.begin).
// Commas inside numbers ("3, 5 or 7") do not part; parentheses are stretches of their own.
[[nodiscard]] std::vector<std::uint32_t> stretches(LeadText const& text, Clause const& clause);

// Cuts the clause.  Called when exceptions, limits, numbers, states and hedges have their roles.
// Parts joined: "or" inside a stretch, a stretch that begins with "or", everything behind "either"
// up to its "or", and alternatives in parentheses or behind a comma that begin with a hedge.
[[nodiscard]] std::vector<Segment> cut(LeadText const& text, Clause const& clause,
                                       std::vector<Hedge> const& hedges);

}  // namespace keydrift::reading
