#pragma once
// A lexicon held against the editions that it is to read: what of it is of no use there, what
// contradicts them, and what of them it does not cover.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding_kinds.hpp"

namespace keydrift {

// A couplet of which not every statement was understood.
struct UncoveredCouplet {
  struct Opaque {
    LeadId lead;
    std::uint32_t statement{};  // row of Lead::statements
  };
  std::size_t edition{};  // in the order given
  CoupletId couplet;
  std::size_t statements{};
  std::vector<Opaque> opaque{};  // in printed order
};

struct LexiconUse {
  std::vector<Finding> findings{};        // of the lexicon by its places, then of the editions
  std::vector<Coverage> coverage{};       // by edition
  std::vector<UncoveredCouplet> worst{};  // most words not understood first, then as printed
  std::size_t characters{};
  std::size_t unused_characters{};
  std::size_t states{};
  std::size_t unused_states{};
};

// Reads the editions by the lexicon (their statements are replaced).  Findings:
// lexicon-unused-character (warning), lexicon-unused-state, lexicon-unused-phrase (information):
// no lead speaks of it.
// lexicon-state-on-both-sides (warning): other words in opposed leads are one state.
// lexicon-ambiguous-phrase (warning): a phrase of several characters that share a subject.
// lexicon-unit-disagrees (warning): leads measure the structure in what the lexicon's unit is not.
// lexicon-uncovered-couplet (warning): the lexicon knows nothing of what the couplet says.
// And what reading by the lexicon found (reading.hpp).
[[nodiscard]] LexiconUse check_lexicon_use(Lexicon const& lexicon,
                                           std::span<Edition* const> editions);

[[nodiscard]] std::span<FindingKind const> lexicon_use_finding_kinds();

}  // namespace keydrift
