#pragma once
// What a lead says: statements, each a predicate on one character (or an either-or over several).
//
// The values here are plain data.  keydrift/characters fills them in from the lead's words;
// keydrift/characters also evaluates them.

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/finding.hpp"

namespace keydrift {

// How much hangs on a statement.
enum class Strength {
  firm,      // its failure refutes the lead
  hedged,    // "usually", "rarely": its failure refutes nothing and it implies nothing
  excepted,  // firm for all but the groups in Statement::except
  noted,     // said beside the key, decides nothing
};
[[nodiscard]] char const* to_word(Strength strength);
[[nodiscard]] std::optional<Strength> strength_from_word(std::string_view word);

// An interval of numbers in the character's unit.  Infinite ends are open by nature.
struct Interval {
  double low{-std::numeric_limits<double>::infinity()};
  double high{std::numeric_limits<double>::infinity()};
  bool low_open{false};   // true: low itself is outside ("more than 3")
  bool high_open{false};  // true: high itself is outside ("less than 5")
  bool operator==(Interval const&) const = default;
};

// "(3-)4-6(-8) mm": usual 4..6, extremes 3..8.  The extremes decide refutation, the usual range
// decides support.  Invariant: the usual interval lies within the extreme one.
struct NumericRange {
  Interval usual;
  Interval extreme;
  bool approximate{false};  // "ca.", "about", "±": already widened by the stated tolerance
  bool operator==(NumericRange const&) const = default;
};

// One predicate on one character.  Either states (categorical) or ranges (numeric) is non-empty.
struct Atom {
  std::string character;             // character id; opaque characters start with "~"
  std::vector<std::string> states;   // allowed state ids, sorted, unique
  std::vector<NumericRange> ranges;  // allowed values, in `unit`
  std::string unit;                  // canonical: "mm", "", "1" (count), "°", "%"; "" for ratios
  bool negated{false};               // "not bifid": any value but those (inapplicable stays out)
  bool operator==(Atom const&) const = default;
};

enum class LimitKind { sex, life_stage, material, season, other };
[[nodiscard]] char const* to_word(LimitKind kind);

// "♂: antennae long": the statement speaks of males only and is silent on the rest.
struct Limit {
  LimitKind kind{LimitKind::other};
  std::string value;  // canonical: "male", "female", "larva", "adult", "fruiting", "dried" …
  bool operator==(Limit const&) const = default;
};

// How the predicate was come by: the share of statements that rest on each is reported.
enum class Origin {
  mark,     // an inline {character: state} mark, or JSON that states it
  lexicon,  // phrases of the lexicon
  number,   // a measurement or count read without the lexicon
  opaque,   // not understood: the statement's own words are the state
};
[[nodiscard]] char const* to_word(Origin origin);

// What a stretch of a statement's words was taken for.
enum class PieceKind {
  subject,    // "Leaf blades": what it speaks of
  state,      // "not flat"; of an opaque statement: what its words say of the subject
  number,     // "(3–)4–6(–8) mm long", "twice as long as wide"
  hedge,      // "usually"
  exception,  // "except in Aus"
  limit,      // "in females", "when dry"
  mark,       // "{leaf-section: flat}"
  unread,     // words beside what was read, that nothing is made of
};
[[nodiscard]] char const* to_word(PieceKind kind);

// Bytes begin … end (half open) of Lead::text; never empty, and blanks at no end.
struct Piece {
  PieceKind kind{PieceKind::unread};
  std::size_t begin{};
  std::size_t end{};
  bool operator==(Piece const&) const = default;
};

struct Statement {
  std::string text;          // verbatim slice of Lead::text
  std::size_t text_begin{};  // its byte offset in Lead::text
  Place place;               // where it stands in the source
  Strength strength{Strength::firm};
  std::vector<Atom> any_of;         // holds when any of these holds; at least one, unless noted
  std::vector<std::string> except;  // groups named by the exception, as printed ("Aus", "A. bus")
  std::string exception_words;      // the exception as printed: "except in Aus"
  std::string hedge;                // the hedge as printed: "usually"
  std::vector<Limit> limits;
  Origin origin{Origin::opaque};
  // In printed order, within the statement's own bytes, none overlapping another; joining words,
  // signs and references to figures are in none.  Empty where the predicate did not come out of
  // words.  A limit that heads a sentence ("Males:") stands in the first statement behind it.
  std::vector<Piece> pieces{};
};

}  // namespace keydrift
