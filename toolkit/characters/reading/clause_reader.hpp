#pragma once
// Reading one clause of a lead into drafts of statements.

#include <cstdint>
#include <string>
#include <vector>

#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/characters/reading/draft.hpp"
#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/lexicon_index.hpp"
#include "keydrift/characters/reading/qualifiers.hpp"

namespace keydrift::reading {

// What the words so far leave behind for those that follow in the same lead.
struct Carried {
  std::vector<std::uint32_t> rows;  // lexicon characters whose structure was named last, ascending
  std::string subject;              // the structure in the lead's own words, for opaque statements
  bool subject_is_near{false};      // named in the clause that is read
  std::vector<Limit> limits;        // "Males:", up to the end of the sentence
};

struct ReadingRules {
  LexiconIndex const* lexicon{};
  Genera const* genera{};
  double tolerance{};  // of approximate numbers that the lexicon does not cover
};

// What one clause gave.
struct ClauseReading {
  std::vector<Draft> drafts;
  // A clause that is nothing but qualifiers ("except in Aus") belongs to the statement before it.
  Qualifiers loose;
};

[[nodiscard]] ClauseReading read_clause(LeadText& text, Clause const& clause,
                                        ReadingRules const& rules, Carried& carried);

}  // namespace keydrift::reading
