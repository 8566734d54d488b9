#pragma once
// What the stretches of a statement's words were taken for: see Statement::pieces.

#include <cstdint>
#include <vector>

#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/matches.hpp"
#include "keydrift/characters/reading/qualifiers.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::reading {

// The pieces of the tokens first … last (inclusive), of a statement that was read from there.
// `subject`: the tokens that an opaque statement speaks of.  `found`: the qualifiers of its clause.
// `matches` may be null where none were looked for.
[[nodiscard]] std::vector<Piece> pieces_of(LeadText const& text, std::uint32_t first,
                                           std::uint32_t last, Origin origin,
                                           std::vector<std::uint32_t> const& subject,
                                           Qualifiers const& found, ClauseMatches const* matches);

// Qualifiers that stand in a clause of their own.
void add_pieces(LeadText const& text, Qualifiers const& qualifiers, std::vector<Piece>& pieces);

// Drops what does not lie within the bytes begin … end, puts the rest in order.
void keep_within(std::vector<Piece>& pieces, std::uint32_t begin, std::uint32_t end);

}  // namespace keydrift::reading
