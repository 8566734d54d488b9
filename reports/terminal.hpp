#pragma once
// Reports for a terminal or a printer: plain text, set like a printed key, at most `width` cells
// wide, readable in black and white.

#include <optional>
#include <span>
#include <string>

#include "keydrift/characters/edition_proof.hpp"
#include "keydrift/characters/specimen.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/reasons.hpp"
#include "keydrift/key/source_reading.hpp"
#include "keydrift/redetermination/keyout.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/reports/page.hpp"

namespace keydrift {

// What is wrong or worth knowing in one edition, errors first, remarks on style counted by kind at
// the end, and its numbers in words.
[[nodiscard]] std::string proof_text(Edition const& edition, EditionProof const& proof,
                                     TerminalStyle style);

// What each line of the source was taken for and why; for the leads also the couplet that they were
// given to, where their words end and what their destination was taken for.
[[nodiscard]] std::string reading_text(Edition const& edition, SourceReading const& source,
                                       TerminalStyle style);

struct CollationTextOptions {
  TerminalStyle style;
  bool every_couplet = false;  // set also the couplets whose meaning is unchanged
};
// Summary; characters that became exception notes; other changes of role; taxa that change couplet;
// couplets side by side; findings mended and introduced; how much was understood.
[[nodiscard]] std::string collation_text(Edition const& old_edition, Edition const& new_edition,
                                         Collation const& collation,
                                         CollationTextOptions const& options);

// The reasons of each couplet asked about: the agreement of the pair part by part, and what came
// next; for one without counterpart why nothing fits.
[[nodiscard]] std::string collation_why_text(Edition const& old_edition, Edition const& new_edition,
                                             Collation const& collation,
                                             std::span<CoupletReasons const> reasons,
                                             TerminalStyle style);

// What becomes of the specimens of an archive.  `collation` gives how much of either edition was
// understood.  Long lists are sorted on the disk: `failure` is set where that failed
// (temporary-file) and the text must not be used.
[[nodiscard]] std::string redetermination_text(Edition const& old_edition,
                                               Edition const& new_edition,
                                               Collation const& collation,
                                               Redetermination const& redetermination,
                                               TerminalStyle style,
                                               std::optional<Finding>* failure = nullptr);

// One specimen through one edition: the printed words of each couplet on its way, what is known of
// each statement, and where it may end.  Characters are called by the lexicon's labels.
[[nodiscard]] std::string keyout_text(Edition const& edition, Specimen const& specimen,
                                      KeyOut const& keyout, Lexicon const& lexicon,
                                      TerminalStyle style);

}  // namespace keydrift
