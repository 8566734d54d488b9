#pragma once
// Reading statements out of lead text.
//
// Editions that are to be compared are read together, so that the same words mean the same
// character in both: a statement that the lexicon does not cover becomes a state of an *opaque
// character*, whose states are the contrasting statements of the couplets where it occurs.  Opaque
// characters are tied across couplets and editions by equal normalised words.
//
// How words are read (all but the last three rules look at the lead's own text, its language and
// the lexicon only):
//
// - Semicolons, full stops that end a sentence and dashes between blanks part clauses; commas part
//   a clause into statements, but for lists ("ovate, lanceolate or elliptic").  "or", "to", "/" and
//   commas between states of one character widen it; "or" between characters makes alternatives.
// - A state of the lexicon counts beside its subject, or beside none where the words before name
//   one; not where a part is named that the character does not know of ("leaf sheath", "upper
//   leaves" are not "leaf"): such words are opaque.
// - Absence is one thing in all its words ("without hairs", "lacking", "no", "hairless"), also over a
//   list ("without spines or awns"); "un-" denies a state.
// - Parentheses in numbers are extremes; "at least", "up to" … are limits; "ca.", "±" widen by the
//   tolerance.  Comparisons are ratios: what comes first of length, width, height … over the other.
//   A number that the lexicon does not know is a character "~n:<words around it>|<unit>".
// - A hedge before a further state ("flat, rarely rolled") admits that state, and the whole is
//   firm.  So are the extremes in "5, rarely 4".
// - An exception names groups ("except in", "but not in", or "rolled in Aus" behind "leaves flat")
//   and belongs to the statement in front of it; "awns present in Aus only" is the contrary, except
//   in Aus.  One whose group cannot be told ("except in floating forms") makes hedged; one of a part
//   ("except at the base") stays with the words.
// - A limit ("in females", "when dry") is that of its statement; one with a colon ("Males:") goes
//   on to the end of the sentence.
// - "If beaked, then bifid" is "not beaked, or bifid".  "If present" admits what the lexicon says
//   makes the character inapplicable; where it says nothing, and elsewhere, "if" makes hedged.
// - Notes in brackets or behind "Note:" are noted; figure references are nothing.
// - "Not as above" is the contrary of the other leads of its couplet.
// - Words that mean states of several characters mean the one that a sibling lead speaks of.  Words
//   that the lexicon leaves unread beside a state become an opaque statement when they speak of
//   another part, or when they are what contrasts ("deeply bifid" against "shallowly bifid").
// - A count or comparison without the lexicon that contrasts with words only, nowhere with its
//   like, is opaque ("three-sided" against "round").
//
// Findings: ambiguous-words, backwards-range, missing-unit (warnings); malformed-mark,
// unknown-character, unknown-state, mark-without-number, unit-in-mark (errors; the words are read
// instead).
//
// Statement::pieces says which bytes of the lead each of these was read from.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift {

struct ReadOptions {
  double tolerance{0.1};  // widening of "ca." where no lexicon character says otherwise
};

// Fills Lead::statements of every lead of every edition.  Statements that carry an inline
// {character: state} mark, or that came in with predicates (JSON), keep them; the rest is read from
// the words.  Deterministic; independent of the order of couplets and of the order of editions.
// Returns findings (unknown character or state in a mark, unit missing, …) with places.
std::vector<Finding> read_statements(std::span<Edition* const> editions, Lexicon const& lexicon,
                                     ReadOptions const& options = {});

// The same for one edition.
std::vector<Finding> read_statements(Edition& edition, Lexicon const& lexicon,
                                     ReadOptions const& options = {});

// Case-folded, NFC, hyphens and dashes to blanks, punctuation dropped, articles dropped, blanks
// squeezed: what "the same words" means.
[[nodiscard]] std::string normalised_words(std::string_view text);

// How much of an edition was understood.
struct Coverage {
  std::size_t statements{};
  std::size_t by_mark{}, by_lexicon{}, by_number{}, opaque{};
  bool drafted{false};  // the lexicon was drafted from the editions; set by whoever drafted it
};
[[nodiscard]] Coverage coverage(Edition const& edition);

}  // namespace keydrift
