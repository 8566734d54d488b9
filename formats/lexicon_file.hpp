#pragma once
// The lexicon's file, as JSON (schemas/lexicon.schema.json) or as CSV for a spreadsheet.  Both hold
// all of a Lexicon: what is written reads back the same.
//
// CSV: UTF-8, a header row, one row per state, one row for a numeric character:
//   character,label,structure,property,subjects,kind,unit,difficulty,applicable
//   if,tolerance,state,phrases,not told apart from,confidence,evidence
// `character` may be blank in further rows of the same character, and so may all but the last two
// columns.  Several subjects or phrases are joined by " | ", each with an optional language in
// front ("de: zweispitzig"; "und: " where the words themselves begin so); a bar within is written
// "\|", a backslash "\\".  `applicable if` reads "beak = present | long".  The last three columns
// come with a drafted lexicon: `not told apart from` names states of the same character, joined by
// " | ", that this one may coincide with; the other two are for people.

#include <string>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// JSON or CSV, told by the first bytes.  What check_lexicon() finds is among the findings.
// Errors of its own, each with line and column: unknown-kind, unknown-difficulty, bad-number,
// bad-applicability, conflicting-cell, missing-name, repeated-state; those of json_tree.hpp,
// json_fields.hpp and side_table.hpp.
[[nodiscard]] Loaded<Lexicon> read_lexicon(Source source);

[[nodiscard]] std::string write_lexicon_json(Lexicon const& lexicon);
[[nodiscard]] std::string write_lexicon_csv(Lexicon const& lexicon);

}  // namespace keydrift
