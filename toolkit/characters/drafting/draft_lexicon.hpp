#pragma once
// Drafting a lexicon from editions: the contrasting statements of their couplets, lined up.

#include <span>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift {

// Precondition: read_statements() was run on the editions together, with an empty lexicon.
//
// - A character is what statements say of one structure by words that contrast, in whatever couplet
//   of whatever edition; of a structure that two statements of one lead speak of, the two are never
//   one character.  Measurements, counts and ratios are characters by what they measure.
// - Words are one state when they are the same words (hyphens, articles and case aside).  No
//   synonyms are guessed: "round" and "terete" stay two states.
// - Two states exclude each other where a couplet contrasts them, or where one says that the
//   structure is absent and the other does not.  All others are told in
//   LexiconState::not_told_from, so that reading by the draft claims nothing that no couplet says.
// - Marks {character: state} define characters of their own.
// - Words of the editions that the draft would have the reader take for something else than they
//   were drafted from are left out of it, so that what it covers is read as it was meant.
//
// Support::confidence: "high" where two couplets or more contrast the state; "medium" where one
// does; "low" where none does or where the structure is only told by the place of its words.
// Difficulty is told from words that name what needs a lens, a microscope or dissection.
//
// Deterministic.  The order of couplets and of editions does not matter, but that the evidence
// names editions by year, then by name; characters come by id, states by how often they are met.
[[nodiscard]] Lexicon draft_lexicon(std::span<Edition const* const> editions);

}  // namespace keydrift
