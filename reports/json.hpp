#pragma once
// Results as JSON: direct images of the result values, in the order of their members, two blanks of
// indent, a line feed at the end; the same bytes on every run.
//
// Schemas (JSON Schema 2020-12) are in reports/schemas/.  Rows of the tables of an edition are
// given with what people call them: {"couplet": 6, "label": "7"}, {"couplet": 6, "lead": 0, "name":
// "7a"},
// {"taxon": 3, "name": "Aus bus"}, a statement as its lead's with "statement" and "text".  What is
// absent or empty is left out, lists excepted where the schema asks for them.

#include <optional>
#include <span>
#include <string>

#include "keydrift/characters/edition_proof.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/reasons.hpp"
#include "keydrift/redetermination/keyout.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/reports/text_sink.hpp"

namespace keydrift {

[[nodiscard]] std::string proof_json(Edition const& edition, EditionProof const& proof);

// Holds both editions in full, so that it can be read without their files; `why`: the reasons of
// the couplets asked about.
[[nodiscard]] std::string collation_json(Edition const& old_edition, Edition const& new_edition,
                                         Collation const& collation,
                                         std::span<CoupletReasons const> why = {});

// Its lists may be longer than memory should be, so it is passed on as it is made.
void write_redetermination_json(Edition const& old_edition, Edition const& new_edition,
                                Collation const& collation, Redetermination const& redetermination,
                                TextSink const& sink);

[[nodiscard]] std::string keyout_json(Edition const& edition, Specimen const& specimen,
                                      KeyOut const& keyout);

}  // namespace keydrift
