#pragma once
// What a lexicon is worth for some editions: for a terminal, and as JSON.

#include <span>
#include <string>

#include "keydrift/characters/lexicon_use.hpp"
#include "keydrift/reports/page.hpp"

namespace keydrift {

// How much is understood, the worst couplets with the words that are not, then the findings.
[[nodiscard]] std::string lexicon_use_text(Lexicon const& lexicon,
                                           std::span<Edition const* const> editions,
                                           LexiconUse const& use, TerminalStyle style);

// Schema: reports/schemas/lexicon-check.schema.json.
[[nodiscard]] std::string lexicon_use_json(Lexicon const& lexicon,
                                           std::span<Edition const* const> editions,
                                           LexiconUse const& use);

// What a draft holds: characters and states by confidence, how much of the editions it covers.
// `use`: the draft held against the editions that it was made from.
[[nodiscard]] std::string lexicon_draft_text(Lexicon const& draft,
                                             std::span<Edition const* const> editions,
                                             LexiconUse const& use, TerminalStyle style);

}  // namespace keydrift
