#pragma once
// Exceptions, limits and hedges inside one clause.

#include <cstdint>
#include <string>
#include <unordered_set>
#include <vector>

#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::reading {

struct Exception {
  std::uint32_t begin{};  // tokens, half open; enclosing parentheses included
  std::uint32_t end{};
  std::vector<std::string> groups;  // as printed
  std::string words;                // as printed
  // "present in Aus only": what is said holds for the groups and for nobody else.
  bool only{false};
};

struct FoundLimit {
  std::uint32_t begin{};
  std::uint32_t end{};
  Limit limit;
  bool heading{false};  // "Males: …": for all that follows up to the end of the sentence
};

enum class HedgeKind { majority, minority, nearly, condition, unnamed_exception };

struct Hedge {
  std::uint32_t begin{};
  std::uint32_t end{};
  HedgeKind kind{};
  std::string words;
};

struct Qualifiers {
  std::vector<Exception> exceptions;
  std::vector<FoundLimit> limits;
  std::vector<Hedge> hedges;
};

// First words of the taxa that the editions know, folded: "aus".  In German, where all nouns are
// printed with a capital, only these are groups.
using Genera = std::unordered_set<std::string>;

// Tokens that the lexicon's phrases of two words and more cover: hedges and limits inside them
// belong to the phrase.
using Covered = std::vector<bool>;

// Finds exceptions and limits, and gives their tokens the roles.
void find_exceptions_and_limits(LeadText& text, Clause const& clause, Genera const& genera,
                                Covered const& covered, Qualifiers& found);

// Finds hedges among what is still open.
void find_hedges(LeadText& text, Clause const& clause, Covered const& covered, Qualifiers& found);

// Takes out what has since been read as part of a number ("nearly 5 mm", "3, rarely 4").
void drop_numbers(LeadText const& text, std::vector<Hedge>& hedges);

}  // namespace keydrift::reading
