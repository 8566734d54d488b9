#pragma once
// Pieces published between two editions of a key, to an Amendment.
//
// A piece is couplets as any printed key has them, and lines that say what is to be done with them:
// "Replace couplet 12 by", "nach Punkt 15 einfügen", "au lieu de 9 lire 10", "donde dice … debe
// decir …", "suprimir o passo 9", "post numerum 7 inseratur".  Couplets without such a line are
// placed by their numbers.  Front matter ("Edition: 2003", "Amends: 1998") may stand at the top.

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/amendment.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Whatever read_edition reads, and text that holds instructions only.  Codes of errors that leave
// nothing loaded: those of decode_text and of read_edition, line-too-long, no-amendment.  In
// Amendment::not_understood: unread-instruction (words that seem to ask for a change and were not
// understood), unplaced-lead (a line that ends like a lead, without a number that places it),
// instruction-without-couplets.  Text that is neither couplet nor instruction is kept
// in Amendment::kept and said (kept-text, information).  Other findings: those of printed_key.hpp.
[[nodiscard]] Loaded<Amendment> read_amendment(Source source, ReadLimits const& limits = {});

}  // namespace keydrift
