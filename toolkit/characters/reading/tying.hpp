#pragma once
// Opaque characters: which statements contrast, and which are the same in other places.

#include <cstdint>
#include <string>
#include <vector>

#include "keydrift/characters/reading/draft.hpp"

namespace keydrift::reading {

// The drafts of one couplet, lead by lead.
using CoupletDrafts = std::vector<std::vector<Draft>*>;

// The drafts of all leads.
struct AllDrafts {
  std::vector<CoupletDrafts> couplets;
  // Leads of the same words may share their drafts: these are all that there are.
  std::vector<std::vector<Draft>*> each_once;
  std::vector<std::uint32_t> which;  // of each_once, for every lead in the order of couplets
};

// Where the lexicon read the same (or part) out of statements that contrast by other words, those
// words decide: they become opaque statements of their own, wherever they stand.
void keep_deciding_words(AllDrafts const& all);

// "Not as above": the contrary of the other leads' statements.  A lead that says so shares its
// drafts with none.
void read_contraries(std::vector<CoupletDrafts> const& couplets);

// "Spike 3 cm" is the length of the spike, unless the editions speak of one other dimension of it
// only ("plants 20 cm" beside "plants 1 m tall").
void name_bare_numbers(AllDrafts const& all);

// Gives every opaque atom its character.
//
// Equal words are one state.  The statements of a couplet that contrast are states of one
// character: those about the same structure, then those that share most words, then what is left
// over on both sides in the same position.  Two statements of one lead are never states of one
// character.  The character is named "~" and its first state in alphabetical order, so the result
// does not hang on the order of couplets, leads or editions.
void tie_opaque(AllDrafts const& all);

}  // namespace keydrift::reading
