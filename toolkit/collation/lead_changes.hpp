#pragma once
// What changed between two leads that answer to each other.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/collation/exceptions.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::collating {

// Statements (ordinals) that answer to each other; an absent side came or went.
struct StatementPair {
  std::optional<std::uint32_t> old_statement;
  std::optional<std::uint32_t> new_statement;
  bool same{false};  // the same predicate, strength, exceptions and limits
};

struct LeadChange {
  bool reworded{false};  // the words differ (as normalised_words() sees them), also those of notes
  bool restated{false};  // a statement that decides something changed, came or went
  std::vector<StatementPair> statements;  // by new statement, those that went last
};

[[nodiscard]] LeadChange compare_leads(Lead const& old_lead, Lead const& new_lead,
                                       Exceptions const& exceptions);

// Characters a statement speaks of, each once, in its own order.  A note without a predicate goes
// by its words, like any other statement that is not understood.
[[nodiscard]] std::vector<std::string> characters_of(Statement const& statement);

// The same predicate, strength, exceptions and limits, of an old and a new statement.
[[nodiscard]] bool same_statement(Statement const& old_statement, Statement const& new_statement,
                                  Exceptions const& exceptions);

// The same atoms in any order.
[[nodiscard]] bool same_atoms(std::vector<Atom> const& a, std::vector<Atom> const& b);

}  // namespace keydrift::collating
