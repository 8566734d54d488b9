#pragma once
// keydrift's interchange form of an edition: JSON, described by schemas/key.schema.json.
//
//   {"keydrift": 1, "file": "key.txt", "title": …, "edition": …, "year": …, "authors": […],
//    "language": …, "scope": {"taxa", "region", "places", "excludes", "lists", "lifeStage", "sex",
//    "material"}, "synonyms": [{"accepted", "synonym"}], "frontMatter": [{"name", "value"}],
//    "parts": [{"title", "start"}],
//    "couplets": [{"label", "id", "backReferences": [{"label"}], "notes": […], "leads": [{"label",
//      "text", "runs", "destination", "destinationPrinted", "taxonRemark", "statements": [{"text",
//      "textBegin", "strength", "origin", "character", "states", "range", "unit", "negated",
//      "anyOf", "except", "exceptionWords", "hedge", "limits": [{"kind", "value"}]}], "notes",
//      "figures"}]}],
//    "taxa": [{"name", "id", "authorship"}], "notes": [{"text"}], "findings": […]}
//
// "scope", "couplets", "taxa" and "findings" are always written, and so are "label", "text" and
// "destination" of a lead: what there is none of is an empty list or text.  Other fields that would
// be empty are left out.  When read, only "couplets", their "label" and "text" of a lead must be
// there.
//
// Everything that has a place also has "source": {"line", "column", "begin", "end"}, a place in the
// file called "file".  Without it, the place is where the thing stands in the JSON.
//
// A destination is {"couplet": "8"}, {"taxa": ["Aus bus"]}, {"key": "…"} or {"unresolved": "as
// printed"}.  Couplets are named by "id", which is the label unless given: only where a label
// occurs twice (several keys in one file) does the second need one.  Taxa likewise by "id", else
// name.  A taxon that only leads name need not be listed.
//
// A number in a statement is {"usual": [4, 6], "extreme": [3, 8]} as "range" (several: "ranges"),
// in the statement's "unit".  null is an open end: [3, null] is 3 or more.  "extreme" is the usual
// range unless given.  "usualOpen": [true, false] says that the lower limit itself is outside
// ("more than 4"), "extremeOpen" likewise; "approximate": true, that "ca." has widened them.

#include <span>
#include <string>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Edition::name is "file" where given, else the source's name.  "findings" are not read: they
// belong to whoever wrote the file.
//
// Errors, each with the line and column in the JSON: those of decode_text(); malformed-json,
// json-too-deep, repeated-field, no-version, newer-version, wrong-type, missing-field,
// no-couplets, duplicate-label, duplicate-taxon, unknown-couplet, two-destinations, unknown-word,
// bad-range.  unknown-field is a warning.
[[nodiscard]] Loaded<Edition> read_key_json(Source source, ReadLimits const& limits = {});

// All of the edition and, at the end, the findings.  Fields in the order above, indented by two
// blanks, a line feed at the end; the same bytes for the same values.
[[nodiscard]] std::string write_key_json(Edition const& edition,
                                         std::span<Finding const> findings = {});

}  // namespace keydrift
