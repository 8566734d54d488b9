#pragma once
// Reading statements out of lead text.
//
// Editions that are to be compared are read together, so that the same words mean the same
// character in both: a statement that the lexicon does not cover becomes a state of an *opaque
// character*, whose states are the contrasting statements of the couplets where it occurs.  Opaque
// characters are tied across couplets and editions by equal normalised words.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift {

struct ReadOptions {
  double tolerance{0.1};  // widening of "ca." where no lexicon character says otherwise
};

// Fills Lead::statements of every lead of every edition.  Statements that carry an inline
// {character: state} mark, or that came in with predicates (JSON), keep them; the rest is read from
// the words.  Deterministic; independent of the order of couplets and of the order of editions.
// Returns findings (unknown character or state in a mark, unit missing, …) with places.
std::vector<Finding> read_statements(std::span<Edition* const> editions, Lexicon const& lexicon,
                                     ReadOptions const& options = {});

// The same for one edition.
std::vector<Finding> read_statements(Edition& edition, Lexicon const& lexicon,
                                     ReadOptions const& options = {});

// Case-folded, NFC, hyphens and dashes to blanks, punctuation dropped, articles dropped, blanks
// squeezed: what "the same words" means.
[[nodiscard]] std::string normalised_words(std::string_view text);

// How much of an edition was understood.
struct Coverage {
  std::size_t statements{};
  std::size_t by_mark{}, by_lexicon{}, by_number{}, opaque{};
};
[[nodiscard]] Coverage coverage(Edition const& edition);

}  // namespace keydrift
